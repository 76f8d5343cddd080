// A value with its derivative along one direction: local temperature coefficients come from the same formula.
#pragma once

#include <cmath>

namespace ferment {

struct Dual {
  double value = 0;
  double slope = 0;

  constexpr Dual() = default;
  constexpr Dual(double v) : value(v) {}  // NOLINT(google-explicit-constructor): a constant has slope 0
  constexpr Dual(double v, double s) : value(v), slope(s) {}

  friend constexpr Dual operator-(Dual a) { return {-a.value, -a.slope}; }
  friend constexpr Dual operator+(Dual a, Dual b) { return {a.value + b.value, a.slope + b.slope}; }
  friend constexpr Dual operator-(Dual a, Dual b) { return {a.value - b.value, a.slope - b.slope}; }
  friend constexpr Dual operator*(Dual a, Dual b) { return {a.value * b.value, a.slope * b.value + a.value * b.slope}; }
  friend constexpr Dual operator/(Dual a, Dual b) {
    const double quotient = a.value / b.value;
    return {quotient, (a.slope - quotient * b.slope) / b.value};
  }
  friend constexpr bool operator<(Dual a, Dual b) { return a.value < b.value; }
  friend constexpr bool operator>(Dual a, Dual b) { return a.value > b.value; }
  friend constexpr bool operator<=(Dual a, Dual b) { return a.value <= b.value; }
  friend constexpr bool operator>=(Dual a, Dual b) { return a.value >= b.value; }
};

inline Dual exp(Dual x) {
  const double e = std::exp(x.value);
  return {e, e * x.slope};
}
inline Dual expm1(Dual x) { return {std::expm1(x.value), std::exp(x.value) * x.slope}; }
inline Dual log(Dual x) { return {std::log(x.value), x.slope / x.value}; }
inline Dual log1p(Dual x) { return {std::log1p(x.value), x.slope / (1 + x.value)}; }

}  // namespace ferment
