// How likely a look at a dough is, where a kitchen expects its rise at another time.
#pragma once

#include <optional>

#include <ferment/process/seen.hpp>

namespace ferment {

/// Noise of ln time: Student's t with 4 degrees of freedom, whose sd is √2 of its scale; or normal.
struct Noise {
  double scale = 0.10;
  bool is_normal = false;
};

/// A look beside what a kitchen makes of it: of a rise, logarithms of hours since the stage began; of a height, percent
/// of rise; of a temperature, °C.
struct Look {
  SeenAs was = SeenAs::at;  ///< at, not_yet or past
  double seen = 0;
  double not_yet = 0;                ///< ln of the hour at which it was not yet there; −infinity if none was given
  std::optional<double> scale = {};  ///< of its noise, where it is another than the time's
};

/// ln of the likelihood of a look where `expected` is what a kitchen makes of it, and its first and second derivative
/// by that.
struct LookAt {
  double log_likelihood = 0, slope = 0, bend = 0;
};
LookAt look_at(const Look& look, double expected, const Noise& noise);

}  // namespace ferment
