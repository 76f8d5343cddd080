// Numbers in messages: as few digits as show the value, never more than twelve.
#pragma once

#include <string>

namespace ferment {

/// The number with at most so many digits, 1 to 17, in the shortest writing of C's "%g", and a minus sign that is not a
/// hyphen. Without the standard library's streams, which would be half of the WebAssembly module.
std::string number(double value, int digits = 6);

/// A temperature as people read it: one decimal, "24.5 °C".
std::string degrees(double temperature_c);

/// Hours in words: "1 h 05 min", "20 min".
std::string in_hours(double hours);

}  // namespace ferment
