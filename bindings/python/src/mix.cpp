#include <pybind11/stl.h>

#include <cmath>

#include <ferment/base/error.hpp>
#include <ferment/mix/factor_rule.hpp>
#include <ferment/mix/ice.hpp>
#include <ferment/mix/mix.hpp>
#include <ferment/mix/mixing.hpp>
#include <ferment/mix/net_gain.hpp>
#include <ferment/mix/water_plan.hpp>

#include "form.hpp"
#include "inputs.hpp"
#include "rooms.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

Mix with_formula(Mix mix, Formula formula) {
  mix.formula = std::move(formula);
  require(mix);
  return mix;
}

void copy_member(const Row& row, const void* from, void* to) {
  row.clear(to);
  for (std::size_t i = 0; i < row.size(from); ++i) row.add(to, row.item(from, i), row.choice(from, i));
}

/// The formula of a mix given in percent of the flour, and what else the mix has.
Mix from_percent(const py::kwargs& keywords) {
  const Form& percent_form = form_of<PercentFormula>();
  py::dict percents, others;
  for (const auto& [name, value] : keywords) {
    const auto text = py::cast<std::string>(name);
    if (find_row(percent_form, text) != nullptr) {
      percents[name] = value;
    } else if (find_row(form_of<Formula>(), text) != nullptr && text.ends_with("_g")) {
      throw InvalidInput(text + " beside percent: the formula is in percent of flour_g",
                         {.path = text, .advice = "give the percent, or all in grams with Mix(...)"});
    } else {
      others[name] = value;
    }
  }
  PercentFormula percent = *static_cast<const PercentFormula*>(percent_form.blank.get());
  fill(percent_form, &percent, 0, py::args(), percents);
  const Formula made = formula_from_percent(percent);
  Mix mix = *static_cast<const Mix*>(form_of<Mix>().blank.get());
  mix.formula.flour_g = 1;  // stands in while the others are read
  fill(form_of<Mix>(), &mix, 0, py::args(), others);
  for (const Row& row : form_of<Formula>().rows) {
    if (!row.name.ends_with("_c")) copy_member(row, &made, &mix.formula);
  }
  require(mix);
  return mix;
}

void bind_its_mix(py::module_& module) {
  py::class_<Mix> mix = bind_form<Mix>(module);
  mix.def_property_readonly(
         "percent", [](const Mix& m) { return percent_of(m.formula); }, "the mix in baker's percent")
      .def(
          "scaled_to",
          [](const Mix& m, double pieces, double piece_g, double loss_percent) {
            return with_formula(m, scaled_to(m.formula, pieces, piece_g, loss_percent));
          },
          "pieces"_a, "piece_g"_a, "loss_percent"_a = 0.0,
          R"(The mix for a number of pieces of a weight: every ingredient by one factor; bowl, times and temperatures
stay.

Args: piece_g: g as divided. loss_percent: dough that stays on bowl, hands and table, percent of the dough (1 to 3 is
usual). Raises InvalidInput.)")
      .def(
          "with_yeast",
          [](const Mix& m, const std::string& yeast) {
            return with_formula(m, with_yeast(m.formula, named<Yeast>(yeast)));
          },
          "yeast"_a, "The mix with all its yeast as one kind, by the trade's weight ratios. Raises InvalidInput.")
      .def("with_water", &with_water, "plan"_a, "The mix with a plan's water and ice in it.");
  py::options options;
  options.disable_function_signatures();
  mix.def_static("from_percent", &from_percent,
                 (signature_of(form_of<PercentFormula>(), "from_percent", 0, {}, ", **others") +
                  R"(A Mix from baker's percent: percent of flour_g, which is all flour, added gluten included.

Args: flour_g: g. flours: list of FlourShare that make 100 %, gluten and preferments apart; bread flour if empty.
water_percent: water poured, of which waters and preferments (lists of Water and Preferment, g) are a part. Others as
Mix. Raises InvalidInput, also for percent of the whole dough.)")
                     .c_str());
}

void bind_plan(py::module_& module) {
  bind_form<HeatShare>(module).def("__repr__", Worded{"share_text"}, py::prepend());
  bind_form<WaterPlan>(module)
      .def("to_frame", Framed{"plan_frame"}, "The shares as a pandas DataFrame.")
      .def("__repr__", Worded{"plan_text"}, py::prepend())
      .def("_repr_html_", Worded{"plan_html"});
}

void bind_mixing(py::module_& module) {
  py::class_<MixingMethod>(
      module, "MixingMethod",
      "A way of mixing and the work it leaves in the dough as heat, kJ per kg of dough, in its usual time; "
      "or its net gain, which holds the flour's heat of hydration, too.")
      .def_property_readonly("name", [](const MixingMethod& m) { return std::string(m.name); })
      .def_property_readonly("label", [](const MixingMethod& m) { return std::string(m.label); })
      .def_readonly("work_kj_per_kg", &MixingMethod::work_kj_per_kg)
      .def_readonly("low_kj_per_kg", &MixingMethod::low_kj_per_kg)
      .def_readonly("high_kj_per_kg", &MixingMethod::high_kj_per_kg)
      .def_readonly("usual_min", &MixingMethod::usual_min)
      .def_readonly("is_net_gain", &MixingMethod::is_net_gain)
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

  bind_form<BatchMean>(module).def("__str__", [](const BatchMean& b) {
    return short_number(b.mean) + (b.sd ? " ± " + short_number(*b.sd) : "") + " from " + std::to_string(b.each.size()) +
           (b.each.size() == 1 ? " batch" : " batches");
  });
  module.def(
      "mean_of_batches", [](const std::vector<double>& each) { return mean_of_batches(each); }, "each"_a,
      "The mean of a number found from several batches, and its spread. Raises InvalidInput without a batch.");
  module.def("mixing_minutes", &mixing_minutes, "mixing"_a,
             R"(Minutes of mixing in the room that a way of mixing says; 0 if it says none.

Args: mixing: ByMethod, ByWork or ByNetGain. Raises InvalidInput. Source: usual times are common practice.)");
}

void bind_factor_rule(py::module_& module) {
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

void bind_water(py::module_& module) {
  module.def(
      "water_by_heat_balance", &water_by_heat_balance, py::call_guard<py::gil_scoped_release>(), "mix"_a, "desired_c"_a,
      py::kw_only(), "friction_k"_a = py::none(),
      R"(Water temperature for a dough temperature, by the heat balance, with the factor rule beside it: a WaterPlan.

Args: mix: Mix, its main water's temperature is not read. desired_c: °C at the end of mixing. friction_k: K, for the
factor rule; alone; if not given, what the balance itself needs where everything is at 21 °C. For the balance a
friction counts by net_gain_from_friction. Raises InvalidInput; NoSolution naming the reachable dough temperatures.
Source: enthalpy balance with constant specific heats.)");
  module.def("dough_by_heat_balance", &dough_by_heat_balance, "mix"_a,
             R"(Dough temperature at the end of mixing, °C: the balance forward; the mix's water_c must be given.

Raises InvalidInput; OutsideModel if ice would not melt or the dough be outside -2 to 45 °C. Source: as
water_by_heat_balance.)");
  module.def(
      "water_map",
      [](const Mix& mix, const Number& desired_c, const std::optional<Number>& flour_c, const Number& room_c,
         const std::string& missing) {
        return Inputs()
            .missing(missing)
            .add(field::desired_c, desired_c)
            .add(field::flour_c, flour_c ? *flour_c : room_c)
            .add(field::room_c, room_c)
            .run([&](std::span<const Values> in, std::span<double> out) { water_map(mix, in[0], in[1], in[2], out); });
      },
      "mix"_a, "desired_c"_a, py::kw_only(), "flour_c"_a = py::none(), "room_c"_a, "missing"_a = "raise",
      R"(Water temperatures by the heat balance for many rooms, °C; like the factor rule they may lie below 0 or above
60.

Args: mix: Mix, whose flour_c and room_c are replaced. desired_c, flour_c, room_c: °C, numbers or arrays that
broadcast; flour_c is room_c if not given. Returns: a number, or an array of the common shape. Raises InvalidInput.
Source: as water_by_heat_balance.)");
  module.def("net_gain_from_batch", &net_gain_from_batch, "mix"_a, "dough_c"_a,
             R"(Net mixing gain of a batch, kJ per kg of dough: work, hydration and losses together.

Args: mix: Mix with the water_c it was mixed with; of its mixing only the minutes are read: with a method, or a net
gain with minutes, exchange with the room is reckoned apart. dough_c: °C at the end of mixing. Raises InvalidInput,
also if the gain lies outside -30 to 120. Source: enthalpy balance.)");
  module.def(
      "net_gain_from_batches",
      [](const std::vector<Mix>& mixes, const std::vector<double>& dough_c) {
        return net_gain_from_batches(mixes, dough_c);
      },
      "mixes"_a, "dough_c"_a,
      R"(Net mixing gain from several batches on one mixer, kJ per kg: a BatchMean; for a mix take net_gain_of of it.

Args: mixes: list of Mix with their water_c. dough_c: list of °C. Raises InvalidInput, naming the batch. Source:
enthalpy balance.)");
  module.def("net_gain_of", &net_gain_of, "batches"_a, "minutes"_a = 0.0,
             R"(Mixing heat as a Mix takes it, from batches: their mean, and the spread that the next batch will show.

Args: batches: BatchMean of net_gain_from_batches. minutes: min of mixing that the batches' mixing said, 0 if none.
Returns: ByNetGain, kJ/kg. Few batches tell little of their spread: it is drawn toward 1 kJ/kg with the weight of four
batches. Raises InvalidInput. Source: engineering estimate of the usual spread, no source.)");
  module.def("net_gain_from_friction", &net_gain_from_friction, "mix"_a, "friction_k"_a, "desired_c"_a, py::kw_only(),
             "measured_at_c"_a,
             R"(Net mixing gain worth a friction, kJ per kg of dough.

Args: friction_k: K, found for such a mix, for a dough of desired_c (°C), in a room where flour, room and bowl had
measured_at_c (°C). Raises InvalidInput. Source: the rule and the balance agree there.)");
}

}  // namespace

void bind_mix(py::module_& module) {
  bind_mixing(module);
  bind_factor_rule(module);
  bind_plan(module);  // first: a mix's signature names it
  bind_its_mix(module);
  bind_water(module);
}
