#include <ferment/dough/state.hpp>

#include <cmath>
#include <string>
#include <utility>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/form.hpp>

#include "base/text.hpp"
#include "dough/shell.hpp"

namespace ferment {
namespace {

constexpr Field saved(std::string_view name, std::string_view label, std::string_view unit, double low, double high,
                      std::string_view meaning) {
  return {name, label, unit, low, high, {}, Quantity::ratio, meaning, {}, "a saved state must not be changed by hand"};
}
constexpr Field heat_capacity =
    saved("heat_capacity_kj_k", "heat capacity of the dough", "kJ/K", 0, 1e5, "of all of the dough");
constexpr Field perishable =
    saved("perishable_h", "hours with perishable food", "h", 0, 1e5, "between 5 and 60 °C with milk or egg in it");
constexpr Field heat_made =
    saved("heat_made_j", "heat of the stage", "J", -1e12, 1e12, "by fermentation, so far, per piece");
constexpr Field heat_lost =
    saved("heat_lost_j", "heat of the stage", "J", -1e12, 1e12, "to the surroundings, so far, per piece");
constexpr Field shell_share = saved("share", "share of a shell", "", 0, 1, "of the dough");
constexpr Field inside = saved("inside_k", "temperature within the dough", "K", -1e3, 1e3,
                               "mean of the dough less its surface as the core feels it");
constexpr Field anchor = saved("anchor_ratio", "volume", "times the mixed volume", 0.1, 1000,
                               "volume over mixed volume at the last handling or mixing");

[[noreturn]] void refuse(const std::string& what, const char* path) {
  throw InvalidInput("the state is damaged: " + what,
                     {.path = path, .advice = "simulate the process again from its start"});
}

void require_amounts(const Amounts& a) {
  if (a.gluten_g > a.flour_g) refuse("it has more added gluten than flour", "amounts");
  const std::pair<double, const char*> parts[] = {{a.flour_g, "flour"},
                                                  {a.water_g, "water"},
                                                  {a.salt_g, "salt"},
                                                  {a.sugar_g, "sugar"},
                                                  {a.perishable_g, "milk and egg"}};
  for (const auto& [grams, name] : parts) {
    if (grams > a.dough_g * (1 + 1e-9)) refuse(std::string("it has more ") + name + " than dough", "amounts");
  }
}

void require_progress(const StageProgress& progress, double time_h) {
  if (progress.start_h > time_h) refuse("its stage begins after its moment", "stage");
  if (progress.over_proofed_h &&
      !(*progress.over_proofed_h >= progress.start_h - 1e-9 && *progress.over_proofed_h <= time_h + 1e-9)) {
    refuse("it was over-proofed outside of its stage", "stage");
  }
}

/// A dough has one shell; the list is for doughs that are resolved finer.
void require_shells(const State& state) {
  if (state.shells.size() != 1) refuse("it has " + std::to_string(state.shells.size()) + " shells, not one", "shells");
  for (const Shell& shell : state.shells) {
    if (shell.gas.co2_mmol > shell.made_mmol * (1 + 1e-9) + 1e-9)
      refuse("it holds more CO2 than its yeast has made", "shells[0].co2_mmol");
    if (shell.share != 1) refuse("its shells are not all of it", "shells[0].share");
  }
}

void contradictions(const State& state) {
  require_amounts(state.amounts);
  if (state.stage) require_progress(*state.stage, state.time_h);
  if (!(state.amounts.dough_g > 0)) {
    if (!state.shells.empty() || !state.cohorts.empty() || state.stage)
      refuse("it has yeast or a stage but no dough", "amounts");
    return;
  }
  if (!(state.amounts.flour_g > 0)) refuse("its dough has no flour", "amounts");
  if (!(state.heat_capacity_kj_k > 0)) refuse("its dough has no heat capacity", "heat_capacity_kj_k");
  require_shells(state);
  require(field::mixed_volume_ml, state.mixed_volume_ml);
}

}  // namespace

template <>
const Form& form_of<StageProgress>() {
  using S = StageProgress;
  static const Form form = [] {
    Form form = made_form<S>("StageProgress", "How far a stage has come that is not over.", {},
                             {row<&S::start_h>(field::start_h), row<&S::start_c>("start_c", field::dough_c),
                              row<&S::start_ratio>("start_ratio", field::volume_ratio),
                              row<&S::folds_done>("folds_done", "folds made"),
                              row<&S::over_proofed_h>("over_proofed_h", field::start_h),
                              row<&S::heat_made_j>(heat_made), row<&S::heat_lost_j>(heat_lost)});
    form.complete = true;
    return form;
  }();
  return form;
}

template <>
const Form& form_of<Shell>() {
  using S = Shell;
  static const Form form = [] {
    Form form =
        made_form<S>("Shell", "A layer of the dough with a temperature of its own: how far it has come.", {},
                     joined({row<&S::share>(shell_share), row<&S::temperature_c>("temperature_c", field::dough_c),
                             row<&S::equivalent_h>(field::equivalent_h),
                             row<&S::made_mmol>("made_mmol", field::co2_mmol)},
                            rows_of_part<&S::gas>()));
    form.complete = true;
    return form;
  }();
  return form;
}

template <>
const Form& form_of<State>() {
  using S = State;
  static const Form form = [] {
    Form form =
        made_form<S>("State", "Everything there is to know of a dough at a moment; simulate makes it.", {},
                     {row<&S::time_h>("time_h", field::start_h), row<&S::altitude_m>(field::altitude_m),
                      row<&S::steps_done>("steps_done", "steps of its process that are over"),
                      row<&S::amounts>("amounts", "what the dough holds, g"),
                      row<&S::heat_capacity_kj_k>(heat_capacity), row<&S::inside_k>(inside),
                      row<&S::shells>("shells", "its layers from the core to the surface, one today"),
                      row<&S::cohorts>("cohorts", "the yeast of each addition"),
                      row<&S::mixed_volume_ml>("mixed_volume_ml", "volume just after mixing, mL per 100 g of flour"),
                      row<&S::anchor_ratio>(anchor), row<&S::perishable_h>(perishable),
                      row<&S::stage>("stage", "of the stage that is under way")},
                     contradictions);
    form.complete = true;
    return form;
  }();
  return form;
}

Shell whole_of(const State& state) {
  require(state);
  if (state.shells.empty())
    throw InvalidInput("the state has no dough", {.path = "state", .advice = "mix flour and water first"});
  return only_shell(state);
}

State part_of(const State& state, double mass_g) {
  require(state);
  require(field::dough_g, mass_g);
  const double whole = state.amounts.dough_g;
  if (mass_g > whole * (1 + 1e-9)) {
    throw InvalidInput("a part of " + number(mass_g) + " g is more than the dough, " + number(whole) + " g",
                       {.path = "mass_g", .value = mass_g, .high = whole, .advice = "take less"});
  }
  State part = state;
  const double share = mass_g / whole;
  for (double Amounts::*grams : {&Amounts::flour_g, &Amounts::gluten_g, &Amounts::water_g, &Amounts::salt_g,
                                 &Amounts::sugar_g, &Amounts::perishable_g, &Amounts::dough_g}) {
    part.amounts.*grams *= share;
  }
  part.heat_capacity_kj_k *= share;
  part.inside_k = 0;
  return part;
}

State as_beginning(State state) {
  require(state);
  if (state.stage) {
    throw InvalidInput("the state is in the middle of a stage",
                       {.path = "state", .advice = "end the stage before another process begins with it"});
  }
  state.steps_done = 0;
  return state;
}

}  // namespace ferment
