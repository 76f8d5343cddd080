// How likely a look at a dough is, where a kitchen expects its rise at another time.
#pragma once

#include <ferment/process/seen.hpp>

namespace ferment {

/// Scale of the noise of the logarithm of a seen time: Student's t with 4 degrees of freedom, whose sd is √2 of it.
/// Source: own estimate; a look is right to a few minutes of the first hour.
inline constexpr double log_time_scale = 0.10;

/// Noise of ln time: Student's t with 4 degrees of freedom, or normal.
struct Noise {
  double scale = log_time_scale;
  bool is_normal = false;
};

/// A look beside what a kitchen makes of it: logarithms of hours since the stage began.
struct Look {
  SeenAs was = SeenAs::at;
  double seen = 0;     ///< ln of the hour of the look
  double not_yet = 0;  ///< ln of the hour at which it was not yet there; −infinity if none was given
};

/// ln of the likelihood of a look where the rise comes at ln time `expected`, and its first and second derivative by
/// that.
struct LookAt {
  double log_likelihood = 0, slope = 0, bend = 0;
};
LookAt look_at(const Look& look, double expected, const Noise& noise);

}  // namespace ferment
