#include <ferment/process/state.hpp>

#include <cmath>
#include <string>
#include <utility>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"

namespace ferment {
namespace {

constexpr Field range(std::string_view name, std::string_view label, std::string_view unit, double low, double high) {
  return {name,
          label,
          unit,
          low,
          high,
          field::must_be_given,
          Quantity::ratio,
          {},
          {},
          "a saved state must not be changed by hand"};
}
constexpr double most_g = 1e7;
constexpr Field heat_capacity = range("heat_capacity_kj_k", "heat capacity of the dough", "kJ/K", 0, 1e5);
constexpr Field perishable = range("perishable_h", "hours with perishable food", "h", 0, 1e5);
constexpr Field dry_matter = range("cohorts", "yeast of a cohort", "g per 100 g flour", 0, 10);
constexpr Field heat = range("stage", "heat of the stage", "J", -1e12, 1e12);
constexpr Field inside = range("inside_k", "temperature within the dough", "K", -1e3, 1e3);
constexpr Field age = range("cohorts", "age of a cohort", "h", 0, 1e5);

void require_grams(std::string_view label, double grams) { require(range("amounts", label, "g", 0, most_g), grams); }

[[noreturn]] void refuse(const std::string& what, const char* field) {
  throw InvalidInput("the state is damaged: " + what,
                     {.path = field, .advice = "simulate the process again from its start"});
}

void require_amounts(const Amounts& a) {
  require_grams("flour of the state", a.flour_g);
  require_grams("gluten of the state", a.gluten_g);
  require_grams("water of the state", a.water_g);
  require_grams("salt of the state", a.salt_g);
  require_grams("sugar of the state", a.sugar_g);
  require_grams("milk and egg of the state", a.perishable_g);
  require_grams("dough of the state", a.dough_g);
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

void require_cohort(const Cohort& cohort) {
  name_of(cohort.yeast);
  for (const double grams : {cohort.dose_g, cohort.mass_g, cohort.room_g, cohort.increment_g})
    require(dry_matter, grams);
  require(age, cohort.equivalent_h);
  require(age, cohort.growing_h);
  if (!(cohort.dose_g > 0 && cohort.mass_g > 0 && cohort.increment_g > 0))
    refuse("a cohort has no yeast in it", "cohorts");
  // Yeast only grows, and shares what it can grow by its mass: a cohort of next to none would have a logarithm of
  // nothing.
  constexpr double rounding = 1e-9, least_of_its_room = 1e-12;
  if (cohort.mass_g < cohort.dose_g * (1 - rounding)) refuse("a cohort has less yeast than was put in", "cohorts");
  if (cohort.mass_g < least_of_its_room * cohort.room_g)
    refuse("a cohort could grow to a million million times its yeast", "cohorts");
}

void require_progress(const StageProgress& progress, double time_h) {
  require(field::start_h, progress.start_h);
  require(field::dough_c, progress.start_c);
  require(field::volume_ratio, progress.start_ratio);
  require(heat, progress.heat_made_j);
  require(heat, progress.heat_lost_j);
  if (progress.over_proofed_h) require(field::start_h, *progress.over_proofed_h);
  if (progress.start_h > time_h) refuse("its stage begins after its moment", "stage");
  if (progress.over_proofed_h &&
      !(*progress.over_proofed_h >= progress.start_h - 1e-9 && *progress.over_proofed_h <= time_h + 1e-9)) {
    refuse("it was over-proofed outside of its stage", "stage");
  }
}

}  // namespace

void require_state(const State& state) {
  require(field::start_h, state.time_h);
  require(field::altitude_m, state.altitude_m);
  require_amounts(state.amounts);
  require(heat_capacity, state.heat_capacity_kj_k);
  require(inside, state.inside_k);
  require(perishable, state.perishable_h);
  require(field::equivalent_h, state.equivalent_h);
  require(field::co2_mmol, state.made_mmol);
  require(field::co2_mmol, state.gas.co2_mmol);
  require(field::air_mmol, state.gas.air_mmol);
  if (state.gas.co2_mmol > state.made_mmol * (1 + 1e-9) + 1e-9)
    refuse("it holds more CO2 than its yeast has made", "co2_mmol");
  for (const Cohort& cohort : state.cohorts) require_cohort(cohort);
  if (state.stage) require_progress(*state.stage, state.time_h);
  if (!(state.amounts.dough_g > 0)) {
    if (!state.cohorts.empty() || state.stage) refuse("it has yeast or a stage but no dough", "amounts");
    return;
  }
  require(field::dough_c, state.temperature_c);
  require(field::volume_ratio, state.anchor_ratio);
  if (!(state.amounts.flour_g > 0)) refuse("its dough has no flour", "amounts");
  if (!(state.heat_capacity_kj_k > 0)) refuse("its dough has no heat capacity", "heat_capacity_kj_k");
  require(field::mixed_volume_ml, state.mixed_volume_ml);
}

State part_of(const State& state, double mass_g) {
  require_state(state);
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
  require_state(state);
  if (state.stage) {
    throw InvalidInput("the state is in the middle of a stage",
                       {.path = "state", .advice = "end the stage before another process begins with it"});
  }
  state.steps_done = 0;
  return state;
}

}  // namespace ferment
