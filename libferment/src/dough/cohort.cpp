#include <ferment/dough/cohort.hpp>

#include <algorithm>
#include <cmath>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"
#include "dough/cohort_formula.hpp"
#include "dough/yeast_formula.hpp"

namespace ferment {
namespace {

/// Takes the cohort into a dough of which its own is a share.
Cohort diluted(Cohort cohort, double share) {
  for (double Cohort::*amount : {&Cohort::dose_g, &Cohort::mass_g, &Cohort::room_g, &Cohort::increment_g})
    cohort.*amount *= share;
  return cohort;
}

/// What the cohort can still grow.
double room_now(const Cohort& cohort, const Kitchen& kitchen) {
  return cohort.mass_g + cohort.room_g - mass_now(cohort, kitchen);
}

bool of_one_age(const Cohort& a, const Cohort& b) {
  return a.yeast == b.yeast && a.equivalent_h == b.equivalent_h && a.growing_h == b.growing_h &&
         a.past_lag == b.past_lag;
}

/// Adds a cohort, to one of its kind and age if there is one.
void add(std::vector<Cohort>& cohorts, const Cohort& cohort) {
  const auto same =
      std::find_if(cohorts.begin(), cohorts.end(), [&](const Cohort& other) { return of_one_age(other, cohort); });
  if (same == cohorts.end()) {
    cohorts.push_back(cohort);
    return;
  }
  for (double Cohort::*amount : {&Cohort::dose_g, &Cohort::mass_g, &Cohort::room_g, &Cohort::increment_g})
    *same.*amount += cohort.*amount;
}

/// Whether the parts have the same yeast: the same dough, taken apart.
bool are_one_dough(std::span<const CohortPart> parts) {
  const auto alike = [](const Cohort& a, const Cohort& b) {
    constexpr double rounding = 1e-13;
    return of_one_age(a, b) && std::abs(a.dose_g - b.dose_g) <= rounding * a.dose_g &&
           std::abs(a.mass_g - b.mass_g) <= rounding * a.mass_g &&
           std::abs(a.room_g - b.room_g) <= rounding * a.increment_g &&
           std::abs(a.increment_g - b.increment_g) <= rounding * a.increment_g;
  };
  return std::all_of(parts.begin(), parts.end(), [&](const CohortPart& part) {
    return std::equal(part.cohorts.begin(), part.cohorts.end(), parts[0].cohorts.begin(), parts[0].cohorts.end(),
                      alike);
  });
}

}  // namespace

double mass_now(const Cohort& cohort, const Kitchen& kitchen) {
  require_parameters(kitchen);
  const formula::CohortCurve curve(cohort, kitchen);
  return curve.until_growth() < 0 ? curve.mass_at(0) : cohort.mass_g;
}

Cohort aged(const Cohort& cohort, double equivalent_h) {
  require(field::equivalent_h, equivalent_h);
  Cohort older = cohort;
  older.equivalent_h += equivalent_h;
  older.growing_h += equivalent_h;
  return older;
}

Cohort new_cohort(double yeast_percent, Yeast yeast) {
  name_of(yeast);
  if (!(yeast_percent > 0 && yeast_percent <= field::yeast_percent.high)) require(field::yeast_percent, yeast_percent);
  const double dose = formula::dry_matter_share(yeast) * yeast_percent;
  return {.yeast = yeast, .dose_g = dose, .mass_g = dose};
}

std::vector<Cohort> mixed_cohorts(std::span<const CohortPart> parts, std::span<const Cohort> added,
                                  const Kitchen& kitchen) {
  require_parameters(kitchen);
  constexpr double rounding = 1e-12;
  double old_flour = 0;
  for (const CohortPart& part : parts) {
    if (!(part.flour_share >= 0)) {
      throw InvalidInput(
          "a dough's share of the flour is " + number(part.flour_share),
          {.path = "flour_share", .value = part.flour_share, .low = 0.0, .high = 1.0, .advice = "it must be 0 to 1"});
    }
    old_flour += part.flour_share;
  }
  if (old_flour > 1 + rounding) {
    throw InvalidInput("the doughs' shares of the flour sum to " + number(old_flour) + ", more than 1",
                       {.path = "flour_share", .value = old_flour, .low = 0.0, .high = 1.0});
  }
  const double fresh_flour = old_flour > 1 - rounding ? 0 : 1 - old_flour;
  if (fresh_flour == 0 && added.empty() && are_one_dough(parts)) {
    std::vector<Cohort> same;
    for (const CohortPart& part : parts) {
      for (const Cohort& cohort : part.cohorts)
        add(same, parts.size() == 1 ? cohort : diluted(cohort, part.flour_share));
    }
    return same;
  }

  double room = fresh_flour * kitchen.growth_increment;
  std::vector<Cohort> all;
  for (const CohortPart& part : parts) {
    if (part.flour_share == 0) continue;
    if (part.cohorts.empty()) room += part.flour_share * kitchen.growth_increment;
    for (const Cohort& old : part.cohorts) {
      Cohort cohort = diluted(old, part.flour_share);
      const double left = room_now(cohort, kitchen);
      room += left;
      if (formula::CohortCurve(cohort, kitchen).until_growth() < 0) {
        cohort.mass_g += cohort.room_g - left;
        cohort.growing_h = 0;
        cohort.past_lag = true;
      }
      add(all, cohort);
    }
  }
  for (const Cohort& cohort : added) add(all, cohort);

  double mass = 0;
  for (const Cohort& cohort : all) mass += cohort.mass_g;
  for (Cohort& cohort : all) {
    const double share = cohort.mass_g / mass;
    cohort.room_g = share * room;
    cohort.increment_g = share * kitchen.growth_increment;
  }
  return all;
}

}  // namespace ferment
