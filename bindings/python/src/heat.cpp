#include <pybind11/stl.h>

#include <ferment/heat/bowl.hpp>
#include <ferment/heat/properties.hpp>
#include <ferment/mix/factor_rule.hpp>
#include <ferment/mix/ice.hpp>
#include <ferment/mix/mixing.hpp>

#include "form.hpp"
#include "inputs.hpp"
#include "rooms.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

/// A property of a composition at a temperature, for numbers and arrays of temperatures.
auto property(double (*of)(const Composition&, double)) {
  return [of](const Composition& composition, const Number& temperature_c) {
    return Inputs()
        .add(field::temperature_c, temperature_c)
        .run([&](std::span<const Values> in, std::span<double> out) {
          for_each_value(in[0], out, [&](double t) { return of(composition, t); });
        });
  };
}

void bind_properties(py::module_& module) {
  bind_form<Composition>(module)
      .def_static(
          "of", [](const std::string& ingredient) { return ingredient_named(ingredient).composition; }, "ingredient"_a,
          "That of an ingredient of the table: bread, whole_wheat, milk, egg, butter, ... Raises InvalidInput naming "
          "the known ones.")
      .def("with_moisture", &with_moisture, "moisture_percent"_a,
           "The same dry matter with another moisture, 5 to 20 %. Raises InvalidInput.")
      .def("specific_heat", property(specific_heat), "temperature_c"_a,
           "kJ/(kg K); temperature_c: °C, a number or an array. Raises InvalidInput.")
      .def("density", property(density), "temperature_c"_a,
           "kg/m³; temperature_c: °C, a number or an array. Raises InvalidInput.")
      .def("conductivity", property(conductivity), "temperature_c"_a,
           "W/(m K), mean of the bounds along and across layers; temperature_c: °C, a number or an array. Raises "
           "InvalidInput.")
      .def("diffusivity", property(diffusivity), "temperature_c"_a,
           "m²/s, conductivity/(density specific heat); temperature_c: °C, a number or an array. Raises InvalidInput.");
  py::class_<Ingredient>(module, "Ingredient", "A row of the table of ingredients: what it is made of, and the source.")
      .def_property_readonly("name", [](const Ingredient& i) { return std::string(i.name); })
      .def_property_readonly("label", [](const Ingredient& i) { return std::string(i.label); })
      .def_readonly("is_flour", &Ingredient::is_flour, "counts in the 100 % of baker's percent")
      .def_readonly("composition", &Ingredient::composition, "mass fractions")
      .def_property_readonly("source", [](const Ingredient& i) { return std::string(i.source); })
      .def("__repr__", [](const Ingredient& i) { return "<Ingredient " + std::string(i.name) + ">"; });
  module.def(
      "ingredients", [] { return std::vector<Ingredient>(ingredients().begin(), ingredients().end()); },
      "All ingredients with their composition: flours first. Source: USDA FoodData Central, by row.");
  module.def("conductivity_with_gas", &conductivity_with_gas, "conductivity_w_per_m_k"_a, "gas_fraction"_a,
             R"(Conductivity of dough with gas cells, W/(m K): Maxwell and Eucken's rule.

Args: numbers: W/(m K) of the dough without gas; share of gas in the volume, 0 to 1. Raises InvalidInput.
Source: Maxwell and Eucken's rule as in ASHRAE Handbook - Refrigeration (from memory), gas 0.026 W/(m K).)");
  module.def("heat_of_hydration", &heat_of_hydration, "moisture_percent"_a,
             R"(Heat that flour gives off when it is wetted, kJ per kg of flour as weighed, ± 40 %.

Args: moisture_percent: a number, 5 to 20 % of the flour's weight. Raises InvalidInput.
Source: fit of this project through 15.1 kJ/kg at 11.5 % (baking trade dictionary) and 105 kJ/kg of dry matter (from
memory).)");
}

void bind_mixing(py::module_& module) {
  bind_form<Bowl>(module, 2);
  module.def(
      "bowl_materials",
      [] {
        NumbersByName values;
        for (const BowlMaterial& material : bowl_materials())
          values[py::str(std::string(material.name))] = material.specific_heat_kj;
        return values;
      },
      "Materials of bowls and their specific heats, kJ/(kg K). Source: Incropera, Perry's (from memory).");

  py::class_<MixingMethod>(
      module, "MixingMethod",
      "A way of mixing and the work it leaves in the dough as heat, kJ per kg of dough, in its usual time.")
      .def_property_readonly("name", [](const MixingMethod& m) { return std::string(m.name); })
      .def_property_readonly("label", [](const MixingMethod& m) { return std::string(m.label); })
      .def_readonly("work_kj_per_kg", &MixingMethod::work_kj_per_kg)
      .def_readonly("low_kj_per_kg", &MixingMethod::low_kj_per_kg)
      .def_readonly("high_kj_per_kg", &MixingMethod::high_kj_per_kg)
      .def_readonly("usual_min", &MixingMethod::usual_min)
      .def_property_readonly("source", [](const MixingMethod& m) { return std::string(m.source); })
      .def("__repr__", [](const MixingMethod& m) {
        return "<MixingMethod " + std::string(m.name) + ": " + short_number(m.work_kj_per_kg) + " kJ/kg in " +
               short_number(m.usual_min) + " min>";
      });
  module.def(
      "mixing_methods", [] { return std::vector<MixingMethod>(mixing_methods().begin(), mixing_methods().end()); },
      "All ways of mixing, with the work each leaves in the dough, kJ/kg, and where it is from.");

  bind_form<ByMethod>(module, 2);
  bind_form<ByWork>(module, 1);
  bind_form<ByNetGain>(module, 3);

  py::class_<BatchMean> batches(module, "BatchMean",
                                "A number found from several batches: mean, sd (None from one batch) and each.");
  batches
      .def(py::init([](const std::vector<double>& each) { return mean_of_batches(each); }), "each"_a,
           "From the numbers of the batches. Raises InvalidInput.")
      .def_readonly("mean", &BatchMean::mean)
      .def_readonly("sd", &BatchMean::sd, "from batch to batch; None from one batch")
      .def_readonly("each", &BatchMean::each);
  batches
      .def(
          "to_dict", [](const BatchMean& b) { return Document("mean"_a = b.mean, "sd"_a = b.sd, "each"_a = b.each); },
          "mean, sd and each.")
      .def("__eq__",
           [](const BatchMean& a, const py::object& b) {
             return py::isinstance<BatchMean>(b) && a.each == py::cast<const BatchMean&>(b).each;
           })
      .def("__hash__", [](const BatchMean& b) { return py::hash(py::tuple(py::cast(b.each))); })
      .def("__repr__",
           [](const BatchMean& b) {
             return "BatchMean(each=" + py::cast<std::string>(py::repr(py::cast(b.each))) + ")";
           })
      .def(py::pickle([](const BatchMean& b) { return py::make_tuple(b.each); },
                      [](const py::tuple& t) { return mean_of_batches(py::cast<std::vector<double>>(t[0])); }))
      .def("__str__", [](const BatchMean& b) {
        return short_number(b.mean) + (b.sd ? " ± " + short_number(*b.sd) : "") + " from " +
               std::to_string(b.each.size()) + (b.each.size() == 1 ? " batch" : " batches");
      });
  module.def("mixing_minutes", &mixing_minutes, "mixing"_a,
             R"(Minutes of mixing in the room that a way of mixing says; 0 if it says none.

Args: mixing: ByMethod, ByWork or ByNetGain. Raises InvalidInput. Source: usual times are common practice.)");
}

}  // namespace

void bind_heat(py::module_& module) {
  bind_properties(module);
  bind_mixing(module);
  module.def(
      "friction_from_batches",
      [](const Number& dough_c, const Number& flour_c, const Number& room_c, const Number& water_c,
         const std::optional<Number>& preferment_c) {
        BatchMean result;
        Inputs inputs;
        inputs.add(field::dough_c, dough_c)
            .add(field::flour_c, flour_c)
            .add(field::room_c, room_c)
            .add(field::water_c, water_c);
        const bool with_preferment = preferment_c.has_value();
        if (with_preferment) inputs.add(field::preferment_c, *preferment_c);
        inputs.run([&](std::span<const Values> in, std::span<double> out) {
          result =
              friction_from_batches(in[0], in[1], in[2], in[3], with_preferment ? std::optional(in[4]) : std::nullopt);
          std::copy(result.each.begin(), result.each.end(), out.begin());
        });
        return result;
      },
      py::kw_only(), "dough_c"_a, "flour_c"_a, "room_c"_a, "water_c"_a, "preferment_c"_a = py::none(),
      R"(Friction from several batches on one mixer, K: their mean, spread and each one.

Args: °C, arrays with one value for each batch, or numbers for all. Returns: BatchMean.
Raises InvalidInput, also if a friction lies outside -10 to 25 K. Source: trade textbooks.)");
  module.def("ice_by_heat_balance", &ice_by_heat_balance, "water_g"_a, py::kw_only(), "tap_c"_a, "wanted_c"_a,
             "ice_c"_a = 0.0,
             R"(Ice in place of that much of the water, g, from the enthalpies of ice and water.

Args: numbers; water_g all of the water, g; temperatures °C; wanted_c may lie below 0. More than water_g: not enough
even as ice. Raises InvalidInput; NoSolution if wanted is warmer than the tap. Source: enthalpy balance, c 4.186 and
2.05 kJ/(kg K), 333.55 kJ/kg.)");
  module.def(
      "water_by_factor_rule",
      [](const Number& desired_c, const Number& flour_c, const Number& room_c, const Number& friction_k,
         const std::optional<Number>& preferment_c, const std::string& missing) {
        Inputs inputs;
        inputs.missing(missing);
        inputs.add(field::desired_c, desired_c)
            .add(field::flour_c, flour_c)
            .add(field::room_c, room_c)
            .add(field::friction_k, friction_k);
        const bool with_preferment = preferment_c.has_value();
        if (with_preferment) inputs.add(field::preferment_c, *preferment_c);
        return inputs.run([with_preferment](std::span<const Values> in, std::span<double> out) {
          water_by_factor_rule(in[0], in[1], in[2], in[3], with_preferment ? std::optional(in[4]) : std::nullopt, out);
        });
      },
      "desired_c"_a, py::kw_only(), "flour_c"_a, "room_c"_a, "friction_k"_a, "preferment_c"_a = py::none(),
      "missing"_a = "raise",
      R"(Water temperature by the trade's factor rule, °C: n desired - flour - room (- preferment) - friction.

Args: numbers or arrays that broadcast, °C; friction_k in K, a *difference* of temperatures; n = 3, or 4 with a
preferment. Returns: a number, or an array of the common shape; may lie below 0 or above 60 °C: see
cautions(water_c=...). Raises InvalidInput. Source: trade textbooks.)");
  module.def("dough_by_factor_rule", &dough_by_factor_rule, "water_c"_a, py::kw_only(), "flour_c"_a, "room_c"_a,
             "friction_k"_a, "preferment_c"_a = py::none(),
             R"(Dough temperature the factor rule expects, °C: the mean of the known temperatures and friction.

Args: numbers, °C; friction_k in K. Raises InvalidInput. Source: trade textbooks.)");
  module.def("friction_from_batch", &friction_from_batch, py::kw_only(), "dough_c"_a, "flour_c"_a, "room_c"_a,
             "water_c"_a, "preferment_c"_a = py::none(),
             R"(Friction of a batch, K: n dough - flour - room - water (- preferment).

Args: numbers, °C, measured at one batch; use the result for the next batch of the same size on the same mixer.
Raises InvalidInput, also if the friction lies outside -10 to 25 K. Source: trade textbooks.)");
  module.def("ice_by_trade_rule", &ice_by_trade_rule, "water_g"_a, py::kw_only(), "tap_c"_a, "wanted_c"_a,
             R"(Ice at 0 °C to put in place of that much of the water, g: water (tap - wanted)/(tap + 80).

Args: numbers; water_g all of the water, g; temperatures °C. Raises InvalidInput; NoSolution if wanted is warmer than
the tap. Source: trade textbooks, in °F (tap - wanted)/(tap + 112).)");
}
