// Model §1, solute factor.
#pragma once

#include <cmath>

#include <ferment/base/parameters.hpp>

#include "base/math.hpp"

namespace ferment::formula {

/// mol/kg; salt, water, sugar in percent of flour.
template <class T>
FERMENT_INLINE T osmolality(T salt, T water, T sugar) {
  const T pressing_sugar = math::larger<T>(sugar - 4, T(0));
  return (salt * T(2 * 0.92 / 58.443) + pressing_sugar * T(2 / 342.3)) * 1000 / water;
}

template <class T>
FERMENT_INLINE T water_activity(T salt, T water, T sugar) {
  using math::exp;
  return exp(T(-0.0180153) * osmolality<T>(salt, water, sugar));
}

/// The reference dough: 2 % salt, 65 % water, no sugar.
template <class T>
FERMENT_INLINE T reference_water_activity() {
  return water_activity<T>(T(2), T(65), T(0));
}

/// What of a kitchen makes the solute factor, the same for a whole call.
struct SoluteRule {
  double aw_min, per_span, water_exponent, log_sweet;

  explicit SoluteRule(const Kitchen& kitchen)
      : aw_min(kitchen.aw_min), per_span(1 / (reference_water_activity<double>() - kitchen.aw_min)),
        water_exponent(kitchen.water_exponent), log_sweet(std::log(kitchen.high_sugar_factor)) {}
};

FERMENT_INLINE double activity_factor(double aw, const SoluteRule& rule) {
  return math::larger<double>(aw - rule.aw_min, 0) * rule.per_span;
}

constexpr double reference_water_percent = 65;

/// (water/65)^exponent; the usual square root by itself, because that is the quickest.
FERMENT_INLINE double water_factor(double water, double exponent) {
  const double share = water / reference_water_percent;
  return exponent == 0.5 ? std::sqrt(share) : exponent == 0 ? 1 : math::exp(exponent * math::log(share));
}

/// A very sweet dough's own factor, phased in from 10 to 20 % of sugar.
FERMENT_INLINE double sweet_factor(double sugar, double log_sweet) {
  const double in = math::smaller<double>(math::larger<double>(0.1 * sugar - 1, 0), 1);
  return log_sweet == 0 ? 1 : math::exp(in * log_sweet);
}

FERMENT_INLINE double solute_factor(double aw, double water, double sugar, const SoluteRule& rule) {
  return activity_factor(aw, rule) * water_factor(water, rule.water_exponent) * sweet_factor(sugar, rule.log_sweet);
}

}  // namespace ferment::formula
