// Model §1, the clock in a drifting dough. Times in units of the time constant, u = t/τ; x = e^(−u) falls from 1.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <type_traits>

#include "base/math.hpp"
#include "clock/temperature_law_formula.hpp"

namespace ferment::formula {

/// e^(−u), and 1 − e^(−u) without cancellation.
template <class T>
struct Decay {
  T left;
  T gone;
};

template <class T>
FERMENT_INLINE Decay<T> decay(T u) {
  if constexpr (std::is_same_v<T, double>) {
    const math::ExpParts p = math::exp_parts(-u);
    return {p.scale + p.scale * p.reduced, (1 - p.scale) - p.scale * p.reduced};
  } else {
    return {exp(T(-u)), T(-expm1(T(-u)))};
  }
}

/// log1p(z)/z, 1 at 0.
template <class T>
FERMENT_INLINE T log1p_over(T z) {
  using math::log1p;
  const bool none = z == 0;
  const T safe = math::select<T>(none, T(1), z);
  return math::select<T>(none, T(1), log1p(safe) / safe);
}

/// The cardinal law split by partial fractions about the pole of its denominator, T* = Topt + ab/(a − 2b) with a = Topt
/// − Tmin and b = Tmax − Topt: factor/per_norm = (Tmax − T)(T − Tmin)²/(T − T*) = quotient(T) + residue/(T − T*).
template <class T>
struct SplitCardinal {
  T t_min, t_max, pole, residue, per_norm;

  explicit SplitCardinal(const CardinalFactor<T>& f) : t_min(f.t_min), t_max(f.t_max) {
    const T slope = 2 * f.above - f.below;
    pole = f.t_opt - f.below * f.above / slope;
    residue = (t_max - pole) * (pole - t_min) * (pole - t_min);
    per_norm = 1 / (slope * f.at_reference);
  }
  /// With the pole far away the split cancels; the law is then so smooth that quadrature is exact.
  static bool is_useful(const CardinalFactor<T>& f) {
    const T slope = 2 * f.above - f.below;
    const T steep = slope < 0 ? T(-slope) : slope;
    return steep * 8 * (f.below + f.above) > f.below * f.above;
  }
  FERMENT_INLINE T quotient(T t) const {
    const T s = t - t_min;
    const T over = pole - t_max;
    return -(s * (s + over) + over * (pole - t_min));
  }
  FERMENT_INLINE T quotient_slope(T t) const { return -(2 * (t - t_min) + (pole - t_max)); }
  /// The factor and its slope, per K.
  struct Speed {
    T factor, slope;
  };
  FERMENT_INLINE Speed speed(T t) const {
    const T s = t - t_min, left = t_max - t;
    const T per_pole = 1 / (t - pole);
    const T top = left * s * s * per_pole;
    return {top * per_norm, (2 * left * s - s * s - top) * per_pole * per_norm};
  }
};

/// ∫ factor du from 0 to u along room + gap·e^(−u), all of it between Tmin and Tmax.
/// ∫ du/(h + D·e^(−u)) with h = room − T* is log1p(z)/h, z = h·(e^u − 1)/(h + D): early, when h may vanish; later
/// (u + log1p(−D·(1 − e^(−u))/(h + D)))/h, when e^u may overflow.
template <class T>
FERMENT_INLINE T drifted_clock(const SplitCardinal<T>& c, T room, T gap, T u, const Decay<T>& d) {
  using math::log1p;
  const T polynomial = c.quotient(room) * u + gap * d.gone * (c.quotient_slope(room) - gap * (2 - d.gone) / 2);
  const T h = room - c.pole;
  const T start = h + gap;
  const bool early = u < T(16);
  const T share = d.gone / math::select<T>(early, d.left * start, start);
  const T z = math::select<T>(early, h, -gap) * share;
  const T logarithm = log1p(z);
  const bool level = early & (z == 0);
  const T over = math::select<T>(level, T(1), math::select<T>(early, z, h));
  const T ratio = math::select<T>(level, T(1), math::select<T>(early, logarithm, u + logarithm)) / over;
  return (polynomial + c.residue * math::select<T>(early, share, T(1)) * ratio) * c.per_norm;
}

/// Mean factor along a straight line of temperature from a to b, both between Tmin and Tmax.
template <class T>
FERMENT_INLINE T mean_over_line(const SplitCardinal<T>& c, T a, T b) {
  const T polynomial =
      (c.quotient(a) + 4 * c.quotient((a + b) / 2) + c.quotient(b)) / 6;  // Simpson's rule is exact for a quadratic
  const T from_pole = a - c.pole;
  return (polynomial + c.residue / from_pole * log1p_over<T>((b - a) / from_pole)) * c.per_norm;
}

// Gauss–Legendre, 16 points on [−1, 1], the positive half (Abramowitz & Stegun 1964, table 25.4).
inline constexpr std::array<double, 8> gauss_points{0.0950125098376374402, 0.2816035507792589132, 0.4580167776572273863,
                                                    0.6178762444026437484, 0.7554044083550030339, 0.8656312023878317439,
                                                    0.9445750230732325761, 0.9894009349916499326};
inline constexpr std::array<double, 8> gauss_weights{0.1894506104550684963, 0.1826034150449235889,
                                                     0.1691565193950025382, 0.1495959888165767321,
                                                     0.1246289712555338720, 0.0951585116824927848,
                                                     0.0622535239386478929, 0.0271524594117540949};

/// ∫ of(v) dv from a to b in pieces of at most `longest`, 16 points each.
template <class Of>
double quadrature(double a, double b, double longest, Of of) {
  const double pieces = std::max(1.0, std::ceil((b - a) / longest));
  const double half = (b - a) / pieces / 2;
  double sum = 0;
  for (double piece = 0; piece < pieces; ++piece) {
    const double middle = a + (2 * piece + 1) * half;
    for (std::size_t i = 0; i < gauss_points.size(); ++i) {
      sum += gauss_weights[i] * (of(middle - half * gauss_points[i]) + of(middle + half * gauss_points[i]));
    }
  }
  return half * sum;
}

}  // namespace ferment::formula
