#include "process/mix_in.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"
#include "dough/shell.hpp"
#include "dough/sums.hpp"
#include "mix/filling.hpp"
#include "process/dough_physics.hpp"

namespace ferment {
namespace {

void add(Amounts& to, const Amounts& more) {
  for (double Amounts::*grams : {&Amounts::flour_g, &Amounts::gluten_g, &Amounts::water_g, &Amounts::salt_g,
                                 &Amounts::sugar_g, &Amounts::perishable_g, &Amounts::dough_g}) {
    to.*grams += more.*grams;
  }
}

/// The old dough's yeast goes on working while it is mixed.
State aged_by(const State& dough, double equivalent_h, const Kitchen& kitchen) {
  State older = dough;
  Shell& shell = only_shell(older);
  shell.made_mmol = GasMaking(dough, kitchen).made_after(equivalent_h);
  shell.gas.co2_mmol += shell.made_mmol - only_shell(dough).made_mmol;
  for (Cohort& cohort : older.cohorts) cohort = aged(cohort, equivalent_h);
  return older;
}

/// CO2 that stays when a dough is mixed: what is dissolved.
double dissolved_mmol(const State& dough, const Kitchen& kitchen) {
  const DoughVolume volume(dough, kitchen);
  const Shell& shell = only_shell(dough);
  const Gas held = volume.held(shell.gas, shell.temperature_c, dough.anchor_ratio);
  return volume.pressed(held, shell.temperature_c, 0).co2_mmol;
}

std::vector<Cohort> new_yeast(const Mix& mix, double flour_g) {
  const Formula& f = mix.formula;
  const Yeast active_dry = mix.yeast_unwetted ? Yeast::active_dry_unwetted : Yeast::active_dry;
  std::vector<Cohort> added;
  for (const auto& [grams, kind] : {std::pair{f.instant_g, Yeast::instant}, std::pair{f.active_dry_g, active_dry},
                                    std::pair{f.compressed_g, Yeast::compressed}}) {
    if (grams > 0) added.push_back(new_cohort(100 * grams / flour_g, kind));
  }
  return added;
}

void require_no_rest(const Mix& mix) {
  if (mix.rest_h == 0) return;
  throw InvalidInput("a mix that joins a dough cannot rest first",
                     {.path = "rest_h",
                      .value = mix.rest_h,
                      .low = 0.0,
                      .high = 0.0,
                      .advice = "let flour and water rest in a stage of their own, and mix the other dough in then"});
}

}  // namespace

State mixed_in(const State& state, const Mix& mix, const Kitchen& kitchen) {
  std::vector<const State*> doughs;
  if (state.amounts.dough_g > 0) doughs.push_back(&state);
  for (const State& dough : mix.doughs) {
    if (dough.amounts.dough_g > 0) doughs.push_back(&dough);
    if (dough.stage) {
      throw InvalidInput("a dough that is mixed in is in the middle of a stage",
                         {.path = "doughs", .advice = "end its stage first"});
    }
  }
  if (state.amounts.dough_g > 0) require_no_rest(mix);

  State mixed = state;
  mixed.amounts = sums_of(mix.formula);
  if (mix.perishable) mixed.amounts.perishable_g = mixed.amounts.dough_g;
  for (const State* dough : doughs) add(mixed.amounts, dough->amounts);
  if (!(mixed.amounts.flour_g > 0)) {
    throw InvalidInput("the first mix has no flour", {.path = "flour_g",
                                                      .value = 0.0,
                                                      .low = field::flour_g.low,
                                                      .advice = "begin with flour and water"});
  }
  const Contents contents = contents_of(mix, portion_of(state, "dough"));
  Shell shell;
  shell.temperature_c = mix.dough_c ? *mix.dough_c : mixed_c(mix, contents);
  mixed.inside_k = 0;
  mixed.heat_capacity_kj_k = 0;
  for (const HeatPortion& portion : contents.portions) {
    if (portion.mass_g > 0) mixed.heat_capacity_kj_k += portion.capacity_kj_k;
  }
  const double mixing_h = mix.mixing ? mixing_minutes(*mix.mixing) / 60 : 0;
  mixed.time_h += mix.rest_h + mixing_h;

  std::vector<CohortPart> parts;
  for (const State* dough : doughs) {
    const double share = dough->amounts.flour_g / mixed.amounts.flour_g;
    const Speed speed(*dough, kitchen);
    const double passed = speed.solutes() * speed.factor(shell.temperature_c) * mixing_h;
    const State older = passed > 0 ? aged_by(*dough, passed, kitchen) : *dough;
    if (dough == &state) shell.equivalent_h = only_shell(state).equivalent_h + passed;
    shell.made_mmol += share * only_shell(older).made_mmol;
    shell.gas.co2_mmol += share * dissolved_mmol(older, kitchen);
    parts.push_back({share, older.cohorts});
    if (dough != &state) mixed.perishable_h = std::max(mixed.perishable_h, dough->perishable_h);
  }
  const std::vector<Cohort> added = new_yeast(mix, mixed.amounts.flour_g);
  mixed.cohorts = mixed_cohorts(parts, added, kitchen);

  const Kitchen& k = kitchen;
  mixed.mixed_volume_ml = percent_of_flour(mixed, mixed.amounts.dough_g) / k.gas_free_density / (1 - k.void_fraction);
  const DoughVolume volume(mixed, k);
  shell.gas.air_mmol = k.void_fraction * mixed.mixed_volume_ml / volume.cells_at(shell.temperature_c).molar_volume;
  mixed.anchor_ratio = volume.free_ratio(shell.gas, shell.temperature_c);
  mixed.shells = {shell};
  ++mixed.steps_done;
  return mixed;
}

}  // namespace ferment
