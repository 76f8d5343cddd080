// Model §1, solute factor.
#pragma once

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

/// per_span = 1/(aw_reference − aw_min), the same for a whole call.
template <class T>
FERMENT_INLINE T solute_factor(T aw, T aw_min, T per_span) {
  return math::larger<T>(aw - aw_min, T(0)) * per_span;
}

}  // namespace ferment::formula
