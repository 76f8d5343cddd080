// How the core follows: what it lags behind settles exponentially towards what the surface has at once.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace ferment {

/// The solution of settling_h·dI/dt = S(t) − I over some hours, exact at any moment for an S that is the polynomial
/// through its values at the five quarters, so that a series of rows and a leg cut in two give the same. (Exponential
/// integrator: integrals of powers with an exponential kernel.)
class Settling {
 public:
  static constexpr std::size_t quarters = 5;  ///< 0, 1/4, 1/2, 3/4, 1
  Settling(double now, double settling_h, double hours, std::array<double, quarters> towards)
      : now_(now), settling_h_(settling_h), hours_(hours) {
    // Newton's forward differences, then by powers of x = hours/length; 4x over k, written out.
    for (std::size_t order = 1; order < quarters; ++order) {
      for (std::size_t i = quarters - 1; i >= order; --i) towards[i] -= towards[i - 1];
    }
    const auto& d = towards;
    by_power_ = {d[0], 4 * (d[1] - d[2] / 2 + d[3] / 3 - d[4] / 4), 16 * (d[2] / 2 - d[3] / 2 + d[4] * 11 / 24),
                 64 * (d[3] / 6 - d[4] / 4), 256 * d[4] / 24};
  }

  double at(double after_h) const {
    if (!(after_h > 0)) return now_;
    const double z = after_h / settling_h_, x = after_h / hours_;
    double sum = now_ * std::exp(-z), power = 1;
    for (std::size_t k = 0; k < quarters; ++k, power *= x) sum += by_power_[k] * power * kernel(static_cast<int>(k), z);
    return sum;
  }

 private:
  /// ∫ y^k·z·e^(−z(1 − y)) dy from 0 to 1: by its series where the recursion would cancel.
  static double kernel(int k, double z) {
    if (z < 5) {
      double term = z / (k + 1), sum = term;
      for (int n = 2; std::abs(term) > 1e-17 * std::abs(sum); ++n) sum += term *= -z / (k + n);
      return sum;
    }
    double value = -std::expm1(-z);
    for (int j = 1; j <= k; ++j) value = 1 - j / z * value;
    return value;
  }

  double now_, settling_h_, hours_;
  std::array<double, quarters> by_power_{};
};

}  // namespace ferment
