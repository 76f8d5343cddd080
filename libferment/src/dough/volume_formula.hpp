// Model §3, gas to volume. mmol, mL, g per 100 g flour; Pa; °C.
#pragma once

#include <cmath>

#include "base/math.hpp"

namespace ferment::formula {

inline constexpr double gas_constant = 8.314462618;  // J/(mol·K), CODATA 2018
inline constexpr double zero_celsius = 273.15;       // K
inline constexpr double atmosphere = 101325;         // Pa

/// ISO 2533, troposphere: P0·(1 − 0.0065·H/288.15)^(g0/(R·0.0065)); H is taken as the altitude.
template <class T>
FERMENT_INLINE T air_pressure(T altitude) {
  using math::exp;
  using math::log;
  return T(atmosphere) * exp(T(5.255876) * log(T(1 - T(0.0065 / 288.15) * altitude)));
}

/// Buck 1996, over water.
template <class T>
FERMENT_INLINE T saturation_pressure(T t) {
  using math::exp;
  return T(611.21) * exp((T(18.678) - t * T(1 / 234.5)) * (t / (T(257.14) + t)));
}

/// Weiss 1974, Mar Chem 2:203, table 1, ln of mol/(kg·atm), fresh water.
template <class T>
FERMENT_INLINE T log_co2_solubility(T t) {
  using math::log;
  const T hundreds = (t + T(zero_celsius)) * T(0.01);
  return T(-60.2409) + T(93.4517) / hundreds + T(23.3585) * log(hundreds);
}

template <class T>
FERMENT_INLINE T co2_solubility(T t) {
  using math::exp;
  return exp(log_co2_solubility<T>(t));
}

/// Pressure and volume per mmol of the gas in the cells, and the water's capacity for CO2.
template <class T>
struct CellAir {
  T molar_volume;  ///< mL per mmol
  T capacity;      ///< a = K0·(pd/1 atm)·water, mmol dissolved if the cells held nothing but CO2
};

template <class T>
FERMENT_INLINE CellAir<T> cell_air(T t, T pressure, T water_activity, T water, T saturation, T solubility) {
  const T dry = pressure - water_activity * saturation;
  return {T(1e3 * gas_constant) * (t + T(zero_celsius)) / dry, solubility * dry * water * T(1 / atmosphere)};
}

/// n held → n in the cells. The quadratic's root is taken in the form that does not cancel.
template <class T>
FERMENT_INLINE T in_cells(T held, T air, T capacity) {
  using std::sqrt;
  const T b = air + capacity - held;
  const T root = sqrt(T(b * b + 4 * held * air));
  return math::select<T>(b > 0, 2 * held * air / (b + root), (root - b) / 2);
}

/// n in the cells → n held.
template <class T>
FERMENT_INLINE T held_for_cells(T cells, T air, T capacity) {
  return cells + capacity * cells / (air + cells);
}

/// Where gas begins to leak and where it all does, in mixed volumes, seen from an anchor.
template <class T>
struct Retention {
  T from;   ///< u = w: onset, or the anchor's volume if that is larger
  T limit;  ///< φM
  T span;   ///< φM − φC
};

template <class T>
FERMENT_INLINE Retention<T> retention(T onset, T limit, T gluten, T anchor) {
  const T stronger = 1 + T(0.05) * gluten;
  return {math::larger<T>(onset * stronger, anchor), limit * stronger, (limit - onset) * stronger};
}

// Both ways in growth, volume over mixed volume less 1: a small rise keeps its digits.

template <class T>
FERMENT_INLINE T held_growth(T free, const Retention<T>& r) {
  using math::expm1;
  const T beyond = math::larger<T>(free - (r.from - 1), T(0));
  return math::smaller<T>(free, r.from - 1) - (r.limit - r.from) * expm1(-beyond / r.span);
}

/// Finite only below r.limit − 1.
template <class T>
FERMENT_INLINE T free_growth(T held, const Retention<T>& r) {
  using math::log1p;
  const T beyond = math::larger<T>(held - (r.from - 1), T(0));
  return math::smaller<T>(held, r.from - 1) - r.span * log1p(-beyond / (r.limit - r.from));
}

template <class T>
FERMENT_INLINE T held_ratio(T free, const Retention<T>& r) {
  return 1 + held_growth<T>(free - 1, r);
}

template <class T>
FERMENT_INLINE T free_ratio(T held, const Retention<T>& r) {
  return 1 + free_growth<T>(held - 1, r);
}

}  // namespace ferment::formula
