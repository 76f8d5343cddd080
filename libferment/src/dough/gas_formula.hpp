// Model §2, gas over equivalent hours. Everything per 100 g of flour.
//
// The inverse is split so that each part is closed: with Y = J/X0 the *full-rate hours* y solve
//   y − τ(1 − e^(−h(y)/τ)) = Y,      h(y) = y before the lag, and after it the hours in which a growing
// population does the work of y hours at the first dose. Before the lag h(y) = y and Lambert's W solves it;
// after it the start-up term is nearly spent, and a Halley step from the same start settles y.
#pragma once

#include <cmath>
#include <limits>
#include <type_traits>

#include <boost/math/special_functions/lambert_w.hpp>

#include <ferment/base/error.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/dough/yeast.hpp>

#include "base/math.hpp"

namespace ferment::formula {

/// The parameters of the gas curve for one addition of yeast, with the reciprocals that loops need: a division costs as
/// much as half an exponential.
template <class T>
struct GasCurve {
  T rate;       ///< q, mmol/(g·h)
  T growth;     ///< μ, 1/h
  T lag;        ///< h
  T increment;  ///< ΔX, g per 100 g flour
  T start_up;   ///< τ, h
  T per_rate, per_growth, per_increment, per_start_up;

  GasCurve(const Kitchen& kitchen, double start_up_hours)
      : rate(kitchen.gassing_rate), growth(kitchen.growth_rate), lag(kitchen.growth_lag_h),
        increment(kitchen.growth_increment), start_up(start_up_hours), per_rate(1 / rate), per_growth(1 / growth),
        per_increment(1 / increment), per_start_up(1 / start_up) {}
};

template <class T>
FERMENT_INLINE T gas_capacity(T lean, T sugar) {
  return lean + T(11.10) * sugar;
}

/// J of a gas: g·h of work at the first dose's rate.
template <class T>
FERMENT_INLINE T work_for_gas(T gas, T capacity, const GasCurve<T>& c) {
  using math::log1p;
  return T(0) - capacity * c.per_rate * log1p(-gas / capacity);  // 0 for 0, not −0
}

template <class T>
FERMENT_INLINE T gas_for_work(T work, T capacity, const GasCurve<T>& c) {
  using math::expm1;
  return T(0) - capacity * expm1(-c.rate * work / capacity);
}

/// u − 1 + e^(−u): hours at full rate that a start-up of unit time constant gives. For double a Taylor series where the
/// difference would cancel (the next term is below 2^-57 of the sum).
template <class T>
FERMENT_INLINE T start_up_hours(T u) {
  using math::expm1;
  if constexpr (std::is_same_v<T, double>) {
    const double series =
        u * u *
        (1.0 / 2 -
         u * (1.0 / 6 -
              u * (1.0 / 24 -
                   u * (1.0 / 120 -
                        u * (1.0 / 720 - u * (1.0 / 5040 -
                                              u * (1.0 / 40320 -
                                                   u * (1.0 / 362880 -
                                                        u * (1.0 / 3628800 -
                                                             u * (1.0 / 39916800 -
                                                                  u * (1.0 / 479001600 -
                                                                       u * (1.0 / 6227020800 -
                                                                            u * (1.0 / 87178291200 -
                                                                                 u * (1.0 / 1307674368000))))))))))))));
    return math::select(u < 0.5, series, u + expm1(-u));
  } else {
    return u + expm1(-u);
  }
}

/// J(θ), the integral of the yeast mass less the start-up deficit.
template <class T>
FERMENT_INLINE T work_after(T hours, T dose, const GasCurve<T>& c) {
  using math::expm1;
  using math::log1p;
  const T capacity = dose + c.increment;
  const T grown_h = math::larger<T>(hours - c.lag, T(0));
  const T grown = grown_h * c.growth * capacity * c.per_increment;  // r·s
  // ln(1 + f·(e^(rs) − 1)) without overflow and without a branch: rs + ln(1 − (1 − f)(1 − e^(−rs))).
  const T logarithm = grown + log1p(c.increment / capacity * expm1(-grown));
  const T by_growth = c.increment * c.per_growth * logarithm - dose * grown_h;
  return dose * c.start_up * start_up_hours<T>(hours * c.per_start_up) + by_growth;
}

/// Work after the lag in units of the growth increment, E, and how much of the increment it has used, 1 − e^(−E).
template <class T>
struct GrowthWork {
  T work;
  T spent;
};

/// y ≥ lag.
template <class T>
FERMENT_INLINE GrowthWork<T> growth_work(T full_rate_hours, T dose, const GasCurve<T>& c) {
  using math::expm1;
  const T work = (full_rate_hours - c.lag) * c.growth * dose * c.per_increment;
  return {work, -expm1(-work)};
}

/// h(y) with its first two derivatives.
template <class T>
struct Growth {
  T hours;
  T first;
  T second;
};

template <class T>
FERMENT_INLINE Growth<T> growing_hours(const GrowthWork<T>& done, T dose, T per_dose, const GasCurve<T>& c) {
  using math::log1p;
  const auto [work, spent] = done;
  const T added = c.increment * per_dose * spent;  // X/X0 − 1
  const T first = 1 / (1 + added);
  const T per_r = c.increment * c.per_growth / (dose + c.increment);
  return {c.lag + (work + log1p(added)) * per_r, first, -c.growth * (1 - spent) * first * first};
}

/// Solves u − 1 + e^(−u) = v for v ≥ 0 near v = 0, from the series of Lambert's W at its branch point
/// (Corless et al. 1996, eq. 4.22), in w = √(2v).
template <class T>
FERMENT_INLINE T start_up_series(T w) {
  return w * (1 + w * (T(1) / 6 + w * (T(1) / 36 + w * (T(1) / 270 + w * (T(1) / 4320 - w * (T(1) / 17010))))));
}

/// Solves u − 1 + e^(−u) = v, v ≥ 0, without branches, for loops: a rational start in √(2v), own fit, relative
/// error 7e-5, then one Householder step of third order (error 1e-16). `late`: for v from `late_from` on, where no
/// series is needed; the digits are the same.
inline constexpr double late_from = 0.11;  // u is ½ at 0.1065
template <bool late = false>
FERMENT_INLINE double start_up_inverse_in_loops(double v) {
  using std::sqrt;
  const double w = sqrt(2 * v);
  const double w2 = w * w;
  const double top = (1 + w * 0.241634) + w2 * ((0.109461 + w * 0.0374729) + w2 * (0.00833788 + w * 0.00330706));
  const double bottom = (1 + w * 0.0747676) + w2 * ((0.0707412 + w * 0.0163658) + w2 * 0.00661732);
  const double u = w * top / bottom;
  const double first = -math::expm1(-u);
  const double f = (late ? u - first : start_up_hours(u)) - v;
  const double second = 1 - first;
  // Householder, third order: f''' = −f'' here.
  const double step =
      f * (first * first - 0.5 * f * second) / (first * (first * first - f * second) - f * f * second * (1.0 / 6));
  if constexpr (late) return u - step;
  return math::select(w < 0.01, start_up_series(w), u - step);
}

/// The same for one number of any type, by Lambert's W: u = 1 + v + W0(−e^(−1−v)), polished near the branch point.
template <class T>
T start_up_inverse(const T& v) {
  using math::exp;
  using math::expm1;
  using std::sqrt;
  const T w = sqrt(T(2 * v));
  if constexpr (std::is_same_v<T, double>) {
    if (w < 0.01) return start_up_series(w);
  } else {
    if (w == 0) return w;
  }
  T u = 1 + v + boost::math::lambert_w0(T(-exp(T(-1 - v))));
  for (int polish = 0; polish < 3; ++polish) {
    const T first = -expm1(T(-u));
    if (!(first > 0)) break;
    u -= (start_up_hours<T>(u) - v) / first;
  }
  return u;
}

/// One Halley step for the full-rate hours after the lag, and the hours there; g is the growth at y.
template <class T>
struct Settled {
  T full_rate_hours;
  T hours;
  T leftover;  ///< what the next step would still change, in hours, at most
};

template <class T>
FERMENT_INLINE Settled<T> settle(T y, T target, const Growth<T>& g, const GasCurve<T>& c) {
  using math::exp;
  const T left = exp(-g.hours * c.per_start_up);
  const T f = y - c.start_up * (1 - left) - target;
  const T first = 1 - left * g.first;
  const T second = left * (g.first * g.first * c.per_start_up - g.second);
  const T step = 2 * f * first / (2 * first * first - f * second);
  // A Halley step, and the second-order h(y) beside it, leave an error that goes with the cube of the step: the
  // start-up term has the third derivative left/τ², growth at most μ².
  const T third = left * c.per_start_up * c.per_start_up + c.growth * c.growth;
  const T leftover = third * step * step * math::larger<T>(step, -step);
  return {y - step, g.hours + step * (-g.first + step * g.second * T(0.5)), leftover};
}

/// Settled when this share of the hours is left over, at the most: half a unit in the last place of a double.
inline constexpr double settled_share = 1e-16;
/// Halley from above on a convex function closes in without overshooting; parameters at the corners of the table
/// need six steps.
inline constexpr int most_settling_steps = 40;

/// θ(J): equivalent hours after which the work is done. Scalars of any type.
template <class T>
T hours_for_work(const T& work, const T& dose, const GasCurve<T>& c) {
  const T per_dose = 1 / dose;
  const T target = work * per_dose;
  T y = c.start_up * start_up_inverse<T>(target * c.per_start_up);
  if (y <= c.lag) return y;
  const T share = std::is_same_v<T, double> ? T(settled_share) : std::numeric_limits<T>::epsilon();
  for (int step = 0; step < most_settling_steps; ++step) {
    const Settled<T> next = settle<T>(y, target, growing_hours<T>(growth_work<T>(y, dose, c), dose, per_dose, c), c);
    if (next.leftover <= share * next.hours) return next.hours;
    y = math::larger<T>(next.full_rate_hours, c.lag);
  }
  throw NotConverged("the hours for a given gas did not settle", {.advice = "please report the input that led here"});
}

}  // namespace ferment::formula
