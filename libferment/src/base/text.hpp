// Numbers in messages: as few digits as show the value, never more than twelve.
#pragma once

#include <cmath>
#include <sstream>
#include <string>

namespace ferment {

inline std::string number(double value, int digits = 6) {
  if (std::isnan(value)) return "not a number (NaN)";
  if (std::isinf(value)) return value > 0 ? "infinity" : "minus infinity";
  std::ostringstream out;
  out.imbue(std::locale::classic());
  out.precision(digits);
  out << value;
  std::string text = out.str();
  if (!text.empty() && text.front() == '-') text.replace(0, 1, "−");  // a minus sign is not a hyphen
  return text;
}

}  // namespace ferment
