// Model §1, temperature factor. Each law is prepared once (its value at 25 °C) and then called per temperature.
#pragma once

#include <ferment/clock/temperature_law.hpp>

#include "base/math.hpp"
#include "dough/volume_formula.hpp"

namespace ferment::formula {

inline constexpr double reference_c = 25;

template <class T>
struct ConstantQ10Factor {
  T log_q10_per_k;
  explicit ConstantQ10Factor(const ConstantQ10& law) {
    using math::log;
    log_q10_per_k = log(T(law.q10)) / 10;
  }
  FERMENT_INLINE T operator()(T t) const {
    using math::exp;
    return exp(log_q10_per_k * (t - reference_c));
  }
};

template <class T>
struct ArrheniusFactor {
  T energy_over_r;  ///< K
  explicit ArrheniusFactor(const Arrhenius& law)
      : energy_over_r(T(law.activation_energy_kj) * 1000 / T(gas_constant)) {}
  FERMENT_INLINE T operator()(T t) const {
    using math::exp;
    return exp(energy_over_r * (1 / T(reference_c + zero_celsius) - 1 / (t + T(zero_celsius))));
  }
};

template <class T>
struct SquareRootFactor {
  T t_min, t_max, decline, at_reference;
  explicit SquareRootFactor(const SquareRoot& law)
      : t_min(law.t_min_c), t_max(law.t_max_c), decline(law.decline_per_k), at_reference(1) {
    at_reference = root(T(reference_c));
  }
  FERMENT_INLINE T root(T t) const {
    using math::expm1;
    return -(t - t_min) * expm1(decline * math::smaller<T>(t - t_max, T(0)));
  }
  FERMENT_INLINE T operator()(T t) const {
    const T share = math::larger<T>(root(t), T(0)) / at_reference;
    return share * share;
  }
};

template <class T>
struct CardinalFactor {
  T t_min, t_opt, t_max, above, below, at_reference;
  explicit CardinalFactor(const Cardinal& law)
      : t_min(law.t_min_c), t_opt(law.t_opt_c), t_max(law.t_max_c), above(t_max - t_opt), below(t_opt - t_min),
        at_reference(1) {
    at_reference = (*this)(T(reference_c));
  }
  /// Product form: exact zeros at the ends and no cancellation near them.
  FERMENT_INLINE T operator()(T t) const {
    const T inside_t = math::smaller<T>(math::larger<T>(t, t_min), t_max);
    const T above_min = inside_t - t_min;
    const T bracket = below * (t_opt - inside_t) + above * (2 * inside_t - t_opt - t_min);
    return (t_max - inside_t) * above_min * above_min / (bracket * at_reference);
  }
};

template <class T>
ConstantQ10Factor<T> factor_of(const ConstantQ10& law) {
  return ConstantQ10Factor<T>(law);
}
template <class T>
ArrheniusFactor<T> factor_of(const Arrhenius& law) {
  return ArrheniusFactor<T>(law);
}
template <class T>
SquareRootFactor<T> factor_of(const SquareRoot& law) {
  return SquareRootFactor<T>(law);
}
template <class T>
CardinalFactor<T> factor_of(const Cardinal& law) {
  return CardinalFactor<T>(law);
}

}  // namespace ferment::formula
