// Numbers in messages: as few digits as show the value, never more than twelve.
#pragma once

#include <cmath>
#include <sstream>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/values.hpp>

namespace ferment {

inline std::string number(double value, int digits = 6) {
  if (std::isnan(value)) return "not a number (NaN)";
  if (std::isinf(value)) return value > 0 ? "infinity" : "minus infinity";
  if (value == 0) return "0";  // a minus zero is none
  if (value < 0) {
    std::string text = "−";  // a minus sign is not a hyphen
    return text.append(number(-value, digits));
  }
  std::ostringstream out;
  out.imbue(std::locale::classic());
  out.precision(digits);
  out << value;
  return out.str();
}

/// A temperature as people read it: one decimal, "24.5 °C".
inline std::string degrees(double temperature_c) { return number(std::round(10 * temperature_c) / 10) + " °C"; }

}  // namespace ferment
