// Numbers in messages: as few digits as show the value, never more than twelve.
#pragma once

#include <cmath>
#include <sstream>
#include <string>

namespace ferment {

inline std::string number(double value, int digits = 6) {
  if (std::isnan(value)) return "not a number (NaN)";
  if (std::isinf(value)) return value > 0 ? "infinity" : "minus infinity";
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

}  // namespace ferment
