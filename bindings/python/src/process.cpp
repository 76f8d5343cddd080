#include <pybind11/stl.h>

#include <cmath>

#include <ferment/base/error.hpp>
#include <ferment/process/cautions.hpp>
#include <ferment/process/step.hpp>
#include <ferment/process/water.hpp>

#include "numbers.hpp"
#include "values.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

using Optional = std::optional<double>;
using AnyMixing = std::variant<std::string, ByMethod, ByWork, ByNetGain>;

std::optional<Mixing> mixing_of(const std::optional<AnyMixing>& given) {
  if (!given) return std::nullopt;
  return std::visit(
      [](const auto& mixing) -> Mixing {
        if constexpr (std::is_same_v<std::decay_t<decltype(mixing)>, std::string>) {
          mixing_method_named(mixing);
          return ByMethod{.method = mixing};
        } else {
          return mixing;
        }
      },
      *given);
}

/// The grams of a formula that stand alone, by name.
constexpr std::array formula_grams{
    std::pair{"flour_g", &Formula::flour_g},
    std::pair{"water_g", &Formula::water_g},
    std::pair{"ice_g", &Formula::ice_g},
    std::pair{"gluten_g", &Formula::gluten_g},
    std::pair{"salt_g", &Formula::salt_g},
    std::pair{"sugar_g", &Formula::sugar_g},
    std::pair{"milk_g", &Formula::milk_g},
    std::pair{"egg_g", &Formula::egg_g},
    std::pair{"butter_g", &Formula::butter_g},
    std::pair{"oil_g", &Formula::oil_g},
    std::pair{"instant_g", &Formula::instant_g},
    std::pair{"active_dry_g", &Formula::active_dry_g},
    std::pair{"compressed_g", &Formula::compressed_g},
};

Mix with_formula(Mix mix, Formula formula) {
  mix.formula = std::move(formula);
  require_mix(mix);
  return mix;
}

void bind_mix(py::module_& module) {
  py::class_<Mix> mix(module, "Mix",
                      R"(One addition of ingredients: what comes into the bowl, how warm, and how it is mixed. A value.

Args:
    room_c: °C; whatever has no temperature of its own has the room's. Needed unless dough_c is given.
    flour_g, gluten_g, water_g, ice_g, salt_g, sugar_g, milk_g, egg_g, butter_g, oil_g, instant_g, active_dry_g,
compressed_g: g. flour_g is bread flour; water_g the main water, whose temperature is asked for. flours, waters,
preferments: lists of Flour, Water and Preferment besides. flour_c, water_c, tap_c, ice_c, milk_c, egg_c, butter_c: °C;
tap_c is needed to plan ice. bowl: Bowl. mixing: the name of a method, ByMethod, ByWork or ByNetGain; kneading by hand
if not given. heat_of_solution: salt and sugar cool as they dissolve. rest_h: h or a timedelta that flour, water, milk
and egg rest before all else joins. heat_loss_w_per_k: W/K of the covered dough in its bowl, estimated from its weight
if not given. doughs: list of State, doughs of other processes that are mixed in as they are. dough_c: °C measured at
the end of mixing, in place of the heat balance's. yeast_unwetted: active dry yeast is stirred in dry. In a process it
joins the dough that is there, and takes its rest and the minutes that its mixing says; only the first needs flour.
Raises InvalidInput.)");
  mix.def(py::init(
              [](Optional room_c, double flour_g, const std::vector<Flour>& flours, double gluten_g, double water_g,
                 const std::vector<Water>& waters, double ice_g, const std::vector<Preferment>& preferments,
                 double salt_g, double sugar_g, double milk_g, double egg_g, double butter_g, double oil_g,
                 double instant_g, double active_dry_g, double compressed_g, Optional flour_c, Optional water_c,
                 Optional tap_c, double ice_c, Optional milk_c, Optional egg_c, Optional butter_c, const Bowl& bowl,
                 const std::optional<AnyMixing>& mixing, bool heat_of_solution, const Duration& rest_h,
                 Optional heat_loss_w_per_k, const std::vector<State>& doughs, Optional dough_c, bool yeast_unwetted) {
                const Mix made{.formula = {.flour_g = flour_g,
                                           .flours = flours,
                                           .gluten_g = gluten_g,
                                           .water_g = water_g,
                                           .waters = waters,
                                           .ice_g = ice_g,
                                           .preferments = preferments,
                                           .salt_g = salt_g,
                                           .sugar_g = sugar_g,
                                           .milk_g = milk_g,
                                           .egg_g = egg_g,
                                           .butter_g = butter_g,
                                           .oil_g = oil_g,
                                           .instant_g = instant_g,
                                           .active_dry_g = active_dry_g,
                                           .compressed_g = compressed_g},
                               .room_c = room_c.value_or(Mix{}.room_c),
                               .flour_c = flour_c,
                               .water_c = water_c,
                               .tap_c = tap_c,
                               .ice_c = ice_c,
                               .milk_c = milk_c,
                               .egg_c = egg_c,
                               .butter_c = butter_c,
                               .bowl = bowl,
                               .mixing = mixing_of(mixing),
                               .heat_of_solution = heat_of_solution,
                               .rest_h = hours_of(field::rest_h, rest_h),
                               .heat_loss_w_per_k = heat_loss_w_per_k,
                               .doughs = doughs,
                               .dough_c = dough_c,
                               .yeast_unwetted = yeast_unwetted};
                if (!room_c && !dough_c) {
                  throw InvalidInput("a mix needs the temperature of the room, room_c",
                                     {.path = "room_c", .advice = "or dough_c, measured at the end of mixing"});
                }
                require_mix(made);
                return made;
              }),
          py::kw_only(), "room_c"_a = py::none(), "flour_g"_a = 0.0, "flours"_a = std::vector<Flour>{},
          "gluten_g"_a = 0.0, "water_g"_a = 0.0, "waters"_a = std::vector<Water>{}, "ice_g"_a = 0.0,
          "preferments"_a = std::vector<Preferment>{}, "salt_g"_a = 0.0, "sugar_g"_a = 0.0, "milk_g"_a = 0.0,
          "egg_g"_a = 0.0, "butter_g"_a = 0.0, "oil_g"_a = 0.0, "instant_g"_a = 0.0, "active_dry_g"_a = 0.0,
          "compressed_g"_a = 0.0, "flour_c"_a = py::none(), "water_c"_a = py::none(), "tap_c"_a = py::none(),
          "ice_c"_a = Mix{}.ice_c, "milk_c"_a = py::none(), "egg_c"_a = py::none(), "butter_c"_a = py::none(),
          "bowl"_a = Bowl{}, "mixing"_a = py::none(), "heat_of_solution"_a = true, "rest_h"_a = 0.0,
          "heat_loss_w_per_k"_a = py::none(), "doughs"_a = std::vector<State>{}, "dough_c"_a = py::none(),
          "yeast_unwetted"_a = false);
  std::vector<std::string> names{"room_c"};
  for (const auto& [name, member] : formula_grams) {
    mix.def_property_readonly(name, [member = member](const Mix& m) { return m.formula.*member; });
    names.emplace_back(name);
  }
  mix.def_property_readonly("flours", [](const Mix& m) { return m.formula.flours; })
      .def_property_readonly("waters", [](const Mix& m) { return m.formula.waters; })
      .def_property_readonly("preferments", [](const Mix& m) { return m.formula.preferments; })
      .def_property_readonly("room_c",
                             [](const Mix& m) { return std::isnan(m.room_c) ? std::nullopt : Optional(m.room_c); })
      .def_readonly("flour_c", &Mix::flour_c)
      .def_readonly("water_c", &Mix::water_c)
      .def_readonly("tap_c", &Mix::tap_c)
      .def_readonly("ice_c", &Mix::ice_c)
      .def_readonly("milk_c", &Mix::milk_c)
      .def_readonly("egg_c", &Mix::egg_c)
      .def_readonly("butter_c", &Mix::butter_c)
      .def_readonly("bowl", &Mix::bowl)
      .def_readonly("mixing", &Mix::mixing)
      .def_readonly("heat_of_solution", &Mix::heat_of_solution)
      .def_readonly("rest_h", &Mix::rest_h)
      .def_readonly("heat_loss_w_per_k", &Mix::heat_loss_w_per_k)
      .def_readonly("doughs", &Mix::doughs)
      .def_readonly("dough_c", &Mix::dough_c)
      .def_readonly("yeast_unwetted", &Mix::yeast_unwetted)
      .def_property_readonly(
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
            return with_formula(m, with_yeast(m.formula, yeast_named(yeast)));
          },
          "yeast"_a, "The mix with all its yeast as one kind, by the trade's weight ratios. Raises InvalidInput.")
      .def("with_water", &with_water, "plan"_a, "The mix with a plan's water and ice in it.");
  for (const char* name :
       {"flours", "waters", "preferments", "flour_c", "water_c", "tap_c", "ice_c", "milk_c", "egg_c", "butter_c",
        "bowl", "mixing", "heat_of_solution", "rest_h", "heat_loss_w_per_k", "doughs", "dough_c", "yeast_unwetted"}) {
    names.emplace_back(name);
  }
  add_value_methods(mix, 0, names);

  mix.def_static(
      "from_percent",
      [](double flour_g, const std::vector<FlourShare>& flours, double water_percent, const std::vector<Water>& waters,
         const std::vector<Preferment>& preferments, double salt_percent, double sugar_percent, double gluten_percent,
         double milk_percent, double egg_percent, double butter_percent, double oil_percent, double instant_percent,
         double active_dry_percent, double compressed_percent, const py::KWArgs<py::object>& others) {
        const Formula formula = formula_from_percent({.flour_g = flour_g,
                                                      .flours = flours,
                                                      .water_percent = water_percent,
                                                      .waters = waters,
                                                      .preferments = preferments,
                                                      .salt_percent = salt_percent,
                                                      .sugar_percent = sugar_percent,
                                                      .gluten_percent = gluten_percent,
                                                      .milk_percent = milk_percent,
                                                      .egg_percent = egg_percent,
                                                      .butter_percent = butter_percent,
                                                      .oil_percent = oil_percent,
                                                      .instant_percent = instant_percent,
                                                      .active_dry_percent = active_dry_percent,
                                                      .compressed_percent = compressed_percent});
        for (const auto& [name, member] : formula_grams) {
          if (others.contains(name)) {
            throw InvalidInput(std::string(name) + " beside percent: the formula is in percent of flour_g",
                               {.path = name, .advice = "give the percent, or all in grams with Mix(...)"});
          }
        }
        const py::object bare = py::module_::import("libferment._core").attr("Mix")("flour_g"_a = 1.0, **others);
        return with_formula(py::cast<Mix>(bare), formula);
      },
      py::kw_only(), "flour_g"_a, "flours"_a = std::vector<FlourShare>{},
      "water_percent"_a = PercentFormula{}.water_percent, "waters"_a = std::vector<Water>{},
      "preferments"_a = std::vector<Preferment>{}, "salt_percent"_a = PercentFormula{}.salt_percent,
      "sugar_percent"_a = 0.0, "gluten_percent"_a = 0.0, "milk_percent"_a = 0.0, "egg_percent"_a = 0.0,
      "butter_percent"_a = 0.0, "oil_percent"_a = 0.0, "instant_percent"_a = 0.0, "active_dry_percent"_a = 0.0,
      "compressed_percent"_a = 0.0,
      R"(A Mix from baker's percent: percent of flour_g, which is all flour, added gluten included.

Args: flour_g: g. flours: list of FlourShare that make 100 %, gluten and preferments apart; bread flour if empty.
water_percent: water poured, of which waters and preferments (lists of Water and Preferment, g) are a part. Others as
Mix. Raises InvalidInput, also for percent of the whole dough.)");
}

struct PlanNumber {
  const char* name;
  double WaterPlan::*member;
  const char* doc;
};

constexpr std::array plan_numbers{
    PlanNumber{"desired_c", &WaterPlan::desired_c, "°C of the dough at the end of mixing"},
    PlanNumber{"water_c", &WaterPlan::water_c,
               "°C the main water must have, ice in it counted; below 0 °C only with ice"},
    PlanNumber{"water_g", &WaterPlan::water_g, "g of main water, ice included"},
    PlanNumber{"pour_c", &WaterPlan::pour_c, "°C of the water to pour: water_c, or the tap's if there is ice"},
    PlanNumber{"pour_g", &WaterPlan::pour_g, "g to pour: water_g less the ice"},
    PlanNumber{"ice_g", &WaterPlan::ice_g, "g of ice"},
    PlanNumber{"factor_rule_c", &WaterPlan::factor_rule_c,
               "°C of water by the trade's factor rule, for the same dough"},
    PlanNumber{"friction_k", &WaterPlan::friction_k, "K of friction the rule was asked with"},
    PlanNumber{"difference_k", &WaterPlan::difference_k, "K of water: factor_rule_c less water_c"},
    PlanNumber{"dough_by_rule_c", &WaterPlan::dough_by_rule_c, "°C of the dough that the rule's water would make"},
    PlanNumber{"gain_k", &WaterPlan::gain_k, "K of dough by work, hydration and dissolving"},
    PlanNumber{"k_per_kj_per_kg", &WaterPlan::k_per_kj_per_kg, "K of dough per kJ of mixing per kg of dough"},
    PlanNumber{"low_c", &WaterPlan::low_c, "°C, lower end of the likely dough temperatures (90 %)"},
    PlanNumber{"high_c", &WaterPlan::high_c, "°C, upper end"},
    PlanNumber{"wetted_c", &WaterPlan::wetted_c, "°C when flour and water have met, before the rest"},
    PlanNumber{"rested_c", &WaterPlan::rested_c, "°C at the end of the rest"},
    PlanNumber{"dough_g", &WaterPlan::dough_g, "g of dough"},
};

Document share_to_dict(const HeatShare& s) {
  return Document("name"_a = s.name, "mass_g"_a = s.mass_g, "temperature_c"_a = s.temperature_c,
                  "dough_k_per_k"_a = s.dough_k_per_k, "water_k_per_k"_a = s.water_k_per_k);
}

Document to_dict(const WaterPlan& plan) {
  Document values;
  for (const PlanNumber& number : plan_numbers) values[number.name] = plan.*number.member;
  values["friction_given"] = plan.friction_given;
  values["reason"] = plan.reason;
  py::list shares, notices;
  for (const HeatShare& share : plan.shares) shares.append(share_to_dict(share));
  for (const Notice& notice : plan.notices) notices.append(py::cast(notice).attr("to_dict")());
  values["shares"] = shares;
  values["notices"] = notices;
  return values;
}

std::string degrees(double temperature_c) {
  return py::cast<std::string>(py::str("{:.1f} °C").attr("format")(temperature_c));
}

/// The plan's lines, name and value, for repr and the notebook.
std::vector<std::pair<std::string, std::string>> lines_of(const WaterPlan& plan) {
  const auto grams = [](double g) { return py::cast<std::string>(py::str("{:.0f} g").attr("format")(g)); };
  std::vector<std::pair<std::string, std::string>> lines{{"water", degrees(plan.water_c) + " for a dough of " +
                                                                       degrees(plan.desired_c)},
                                                         {"pour", grams(plan.pour_g) + " at " + degrees(plan.pour_c)}};
  if (plan.ice_g > 0) lines.emplace_back("ice", grams(plan.ice_g));
  lines.emplace_back("likely dough", degrees(plan.low_c) + " to " + degrees(plan.high_c));
  lines.emplace_back("factor rule",
                     degrees(plan.factor_rule_c) + "; it would make the dough " + degrees(plan.dough_by_rule_c));
  lines.emplace_back("why", plan.reason);
  for (const Notice& notice : plan.notices)
    lines.emplace_back(notice.severity == Severity::warning ? "warning" : "note", notice.text);
  return lines;
}

std::string repr(const WaterPlan& plan) {
  std::string text;
  for (const auto& [name, value] : lines_of(plan)) text += (text.empty() ? "" : "\n") + name + ": " + value;
  return text;
}

std::string repr_html(const WaterPlan& plan) {
  const py::object escape = py::module_::import("html").attr("escape");
  std::string text = "<table>";
  for (const auto& [name, value] : lines_of(plan)) {
    text += "<tr><th style=\"text-align:left\">" + name + "</th><td style=\"text-align:left\">" +
            py::cast<std::string>(escape(value)) + "</td></tr>";
  }
  return text + "</table>";
}

void bind_plan(py::module_& module) {
  py::class_<HeatShare>(module, "HeatShare", "How much one thing counts for the dough's temperature.")
      .def_readonly("name", &HeatShare::name)
      .def_readonly("mass_g", &HeatShare::mass_g, "g of dough; 0 for bowl and room")
      .def_readonly("temperature_c", &HeatShare::temperature_c, "°C, as it comes")
      .def_readonly("dough_k_per_k", &HeatShare::dough_k_per_k, "K of dough per K of this; all of them sum to 1")
      .def_readonly("water_k_per_k", &HeatShare::water_k_per_k, "K by which the main water must change per K of this")
      .def("to_dict", &share_to_dict, "All of it.")
      .def("__repr__",
           [](const HeatShare& s) { return "<HeatShare " + s.name + " " + short_number(s.dough_k_per_k) + ">"; });
  py::class_<WaterPlan> plan(
      module, "WaterPlan",
      R"(How warm the main water must be, by the heat balance and by the trade's rule, and why they differ.

water_c: what the main water must have, °C. pour_g, pour_c, ice_g: what to pour, how warm, and how much ice.
factor_rule_c: the rule's water. low_c, high_c: likely dough temperature, 90 %. wetted_c, rested_c: dough before and
after the rest.)");
  for (const PlanNumber& number : plan_numbers) plan.def_readonly(number.name, number.member, number.doc);
  plan.def_readonly("friction_given", &WaterPlan::friction_given)
      .def_readonly("reason", &WaterPlan::reason)
      .def_readonly("shares", &WaterPlan::shares)
      .def_readonly("notices", &WaterPlan::notices)
      .def("to_dict", &to_dict)
      .def(
          "to_frame",
          [](const WaterPlan& p) {
            return py::module_::import("pandas").attr("DataFrame")(to_dict(p)["shares"]).attr("set_index")("name");
          },
          "The shares as a pandas DataFrame.")
      .def("__repr__", &repr)
      .def("_repr_html_", &repr_html);
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
      [](const Mix& mix, const Number& desired_c, const std::optional<Number>& flour_c, const Number& room_c) {
        return Inputs()
            .add(field::desired_c, desired_c)
            .add(field::flour_c, flour_c ? *flour_c : room_c)
            .add(field::room_c, room_c)
            .run([&](std::span<const Values> in, std::span<double> out) { water_map(mix, in[0], in[1], in[2], out); });
      },
      "mix"_a, "desired_c"_a, py::kw_only(), "flour_c"_a = py::none(), "room_c"_a,
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

void bind_process(py::module_& module) {
  bind_plan(module);  // first: a mix's signature names it
  bind_mix(module);
  bind_water(module);
  module.def(
      "cautions",
      [](Optional dough_c, Optional yeast_percent, const std::string& yeast, Optional salt_percent,
         Optional water_percent, Optional sugar_percent, Optional gluten_percent, Optional altitude_m,
         Optional rise_percent, Optional water_c, Optional refrigerator_c, Optional perishable_h,
         const std::optional<Kitchen>& kitchen) {
        return cautions({.dough_c = dough_c,
                         .yeast_percent = yeast_percent,
                         .yeast = yeast_named(yeast),
                         .salt_percent = salt_percent,
                         .water_percent = water_percent,
                         .sugar_percent = sugar_percent,
                         .gluten_percent = gluten_percent,
                         .altitude_m = altitude_m,
                         .rise_percent = rise_percent,
                         .water_c = water_c,
                         .refrigerator_c = refrigerator_c,
                         .perishable_h = perishable_h},
                        kitchen_or_default(kitchen));
      },
      py::kw_only(), "dough_c"_a = py::none(), "yeast_percent"_a = py::none(), "yeast"_a = "instant",
      "salt_percent"_a = py::none(), "water_percent"_a = py::none(), "sugar_percent"_a = py::none(),
      "gluten_percent"_a = py::none(), "altitude_m"_a = py::none(), "rise_percent"_a = py::none(),
      "water_c"_a = py::none(), "refrigerator_c"_a = py::none(), "perishable_h"_a = py::none(),
      "kitchen"_a = py::none(),
      R"(The notices that belong to plain numbers, most severe first; an empty list if there is nothing to say.

Args: numbers, all optional: °C, percent of flour, m, h. perishable_h: hours a dough with egg, milk or other perishable
food is held at dough_c. Raises InvalidInput outside the field table, but answers any finite water_c.
Source: limits of the trade (common practice) and of the laws; food safety defers to the local food code.)");
}
