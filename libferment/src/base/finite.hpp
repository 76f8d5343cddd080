// A plain number of a balance or a mean: finite, and at least so much.
#pragma once

#include <string>

#include <ferment/base/error.hpp>

#include "base/text.hpp"

namespace ferment {

inline void require_at_least(double least, double value, const char* what) {
  if (value >= least && value < 1e300) return;
  throw InvalidInput(
      std::string(what) + " " + number(value) + " is no number of a heat balance",
      {.path = what, .value = value, .low = least, .advice = "give a finite one, at least " + number(least)});
}

}  // namespace ferment
