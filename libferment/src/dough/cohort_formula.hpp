// Model §2 for several cohorts, each with its own clocks: the work of a cohort as a function of equivalent hours from
// now.
#pragma once

#include <ferment/dough/cohort.hpp>

#include "dough/gas_formula.hpp"

namespace ferment::formula {

/// What is known of a start-up over some hours: it has hardly begun (u < ½, where its formula needs a series), it is
/// under way, or over (e^(−u) is below half a unit in the last place of u − 1).
enum class StartUp { begins, goes_on, is_over };

/// Work with its first and second derivative by equivalent hours.
struct WorkAlong {
  double work, pace, bend;
};

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

  StartUp start_up_from(double later) const {
    const double u = (age + later) * per_start_up;
    return u < 0.5 ? StartUp::begins : u < 40 ? StartUp::goes_on : StartUp::is_over;
  }
  bool grows_by(double later) const { return growing + later > lag; }

  /// Up to a constant: the start-up of the dose, and what growth adds to it. As in work_after, of which this is the
  /// general form; what is known beforehand leaves out what is nothing.
  template <StartUp start = StartUp::begins, bool grows = true>
  FERMENT_INLINE double work_at(double later) const {
    const double u = (age + later) * per_start_up;
    const double started = start == StartUp::begins    ? start_up_hours(u)
                           : start == StartUp::goes_on ? u + math::expm1(-u)
                                                       : u - 1;
    if constexpr (!grows) return dose * start_up * started;
    const double s = hours_of_growth(later);
    const double grown = rate * s;
    const double logarithm = grown + math::log1p(room / (mass + room) * math::expm1(-grown));
    return dose * start_up * started + increment / growth * logarithm - dose * s;
  }

  /// work_at with its derivatives: pace_at, and how that changes.
  template <StartUp start = StartUp::begins, bool grows = true>
  FERMENT_INLINE WorkAlong along(double later) const {
    const double u = (age + later) * per_start_up;
    const double gone = start == StartUp::is_over ? -1 : math::expm1(-u);
    const double started = start == StartUp::begins ? start_up_hours(u) : u + gone;
    const double starting = dose * (1 + gone);
    if constexpr (!grows) return {dose * start_up * started, mass - starting, starting * per_start_up};
    const double s = hours_of_growth(later);
    const double grown = rate * s, left = math::expm1(-grown);
    const double logarithm = grown + math::log1p(room / (mass + room) * left);
    const double now = (mass + room) / (1 + room / mass * (1 + left));
    const double growing_on = math::select(s > 0, rate * now * (1 - now / (mass + room)), 0.0);
    return {dose * start_up * started + increment / growth * logarithm - dose * s, now - starting,
            growing_on + starting * per_start_up};
  }
};

}  // namespace ferment::formula
