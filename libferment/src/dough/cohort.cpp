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

namespace {

constexpr Field saved(std::string_view label, std::string_view unit, double high, std::string_view meaning) {
  return {"cohorts", label,           unit,    0,  high,
          {},        Quantity::ratio, meaning, "", "a saved state must not be changed by hand"};
}
constexpr Field dose = saved("yeast of a cohort", "g per 100 g flour", 10, "gassing dry matter as it came in");
constexpr Field mass = saved("yeast of a cohort", "g per 100 g flour", 10, "when its growth clock began");
constexpr Field room = saved("yeast of a cohort", "g per 100 g flour", 10, "what it can still grow from there");
constexpr Field increment = saved("yeast of a cohort", "g per 100 g flour", 10, "its share of the growth increment");
constexpr Field age = saved("age of a cohort", "h", 1e5, "equivalent hours since it met flour and water");
constexpr Field growing = saved("age of a cohort", "h", 1e5, "equivalent hours of its growth clock");

[[noreturn]] void refuse(const char* what) {
  throw InvalidInput(std::string("the state is damaged: a cohort ") + what,
                     {.advice = "simulate the process again from its start"});
}

void contradictions(const Cohort& cohort) {
  if (!(cohort.dose_g > 0 && cohort.mass_g > 0 && cohort.increment_g > 0)) refuse("has no yeast in it");
  // Yeast only grows, and shares what it can grow by its mass: a cohort of next to none would have a logarithm of
  // nothing.
  constexpr double last_digits = 1e-9, least_of_its_room = 1e-12;
  if (cohort.mass_g < cohort.dose_g * (1 - last_digits)) refuse("has less yeast than was put in");
  if (cohort.mass_g < least_of_its_room * cohort.room_g) refuse("could grow to a million million times its yeast");
}

}  // namespace

template <>
const Form& form_of<Cohort>() {
  using C = Cohort;
  static const Form form = [] {
    Form form = made_form<C>(
        "Cohort",
        "The yeast of one addition, with its own clock: g of gassing dry matter per 100 g of flour, equivalent hours.",
        {},
        {row<&C::yeast>("yeast", "its kind, which decides its start-up"), row<&C::dose_g>("dose_g", dose),
         row<&C::mass_g>("mass_g", mass), row<&C::room_g>("room_g", room),
         row<&C::increment_g>("increment_g", increment), row<&C::equivalent_h>("equivalent_h", age),
         row<&C::growing_h>("growing_h", growing),
         row<&C::past_lag>("past_lag", "it grows at once: it had begun before it was mixed into a new dough")},
        contradictions);
    form.complete = true;
    return form;
  }();
  return form;
}

}  // namespace ferment
