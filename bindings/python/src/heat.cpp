#include <pybind11/stl.h>

#include <ferment/heat/bowl.hpp>
#include <ferment/heat/properties.hpp>

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

}  // namespace

void bind_heat(py::module_& module) {
  bind_properties(module);
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
}
