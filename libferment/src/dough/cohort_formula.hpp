// Model §2 for several cohorts, each with its own clocks: the work of a cohort as a function of equivalent hours from
// now.
#pragma once

#include <ferment/dough/cohort.hpp>

#include "dough/gas_formula.hpp"

namespace ferment::formula {

/// A cohort prepared for many evaluations.
struct CohortCurve {
  double dose, mass, room, increment;
  double age, growing, lag;
  double start_up, per_start_up, growth, rate;  ///< rate: of the logistic, 1/h
  double work_so_far = 0;

  CohortCurve(const Cohort& c, const Kitchen& kitchen)
      : dose(c.dose_g), mass(c.mass_g), room(c.room_g), increment(c.increment_g), age(c.equivalent_h),
        growing(c.growing_h), lag(c.past_lag ? 0 : kitchen.growth_lag_h), start_up(start_up_h(c.yeast, kitchen)),
        per_start_up(1 / start_up), growth(kitchen.growth_rate), rate(growth * (mass + room) / increment) {
    work_so_far = work_at(0);
  }

  FERMENT_INLINE double hours_of_growth(double later) const { return math::larger(growing + later - lag, 0.0); }

  /// Equivalent hours until it begins to grow; negative or 0 if it has.
  double until_growth() const { return lag - growing; }

  double mass_at(double later) const {
    return (mass + room) / (1 + room / mass * math::exp(-rate * hours_of_growth(later)));
  }

  /// g·h of work per equivalent hour.
  double pace_at(double later) const { return mass_at(later) - dose * math::exp(-(age + later) * per_start_up); }

  /// g·h of work from now.
  FERMENT_INLINE double work_until(double later) const { return work_at(later) - work_so_far; }

 private:
  /// Up to a constant: the start-up of the dose, and what growth adds to it. As in work_after, of which this is the
  /// general form.
  FERMENT_INLINE double work_at(double later) const {
    const double s = hours_of_growth(later);
    const double grown = rate * s;
    const double logarithm = grown + math::log1p(room / (mass + room) * math::expm1(-grown));
    return dose * start_up * start_up_hours((age + later) * per_start_up) + increment / growth * logarithm - dose * s;
  }
};

}  // namespace ferment::formula
