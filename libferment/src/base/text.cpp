#include "base/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

namespace ferment {
namespace {

constexpr int largest_exact_power = 22;  // 10^22 is the last one that a double holds

double power_of_ten(int exponent) {
  double power = 1;
  for (; exponent > 0; --exponent) power *= 10;
  return power;
}

/// |value|·10^shift, and what rounding took from it: the sign of the remainder decides where the product is a tie.
struct Scaled {
  double product, remainder;
};
Scaled scaled(double value, int shift) {
  if (std::abs(shift) > largest_exact_power) {
    const int most = shift > 0 ? largest_exact_power : -largest_exact_power;
    return scaled(scaled(value, most).product, shift - most);
  }
  const double power = power_of_ten(std::abs(shift));
  if (shift >= 0) {
    const double product = value * power;
    return {product, std::fma(value, power, -product)};
  }
  const double product = value / power;
  return {product, -std::fma(product, power, -value)};
}

/// To the nearest whole number; ties, which are ties exactly, to the even one.
std::uint64_t rounded(const Scaled& s) {
  const double below = std::floor(s.product);
  const auto whole = static_cast<std::uint64_t>(below);
  if (below > 4503599627370496.0)  // no double has a fraction there; what is left is all in the remainder
    return whole + static_cast<std::uint64_t>(static_cast<std::int64_t>(std::nearbyint(s.remainder)));
  const double beyond = (s.product - below) - 0.5;
  const bool up = beyond > 0 || (beyond == 0 && (s.remainder > 0 || (s.remainder == 0 && whole % 2 == 1)));
  return whole + (up ? 1 : 0);
}

std::string whole_text(std::uint64_t value) {
  std::string text;
  do {
    text.insert(text.begin(), static_cast<char>('0' + value % 10));
    value /= 10;
  } while (value > 0);
  return text;
}

/// Digits and the exponent of ten of the first one.
struct Decimal {
  std::string digits;
  int exponent;
};
Decimal decimal(double value, int digits) {
  int exponent = static_cast<int>(std::floor(std::log10(value)));
  std::uint64_t whole = rounded(scaled(value, digits - 1 - exponent));
  std::string text = whole_text(whole);
  if (static_cast<int>(text.size()) != digits) {  // the logarithm was rounded over a power of ten, or the digits were
    exponent += static_cast<int>(text.size()) - digits;
    text = whole_text(rounded(scaled(value, digits - 1 - exponent)));
    if (static_cast<int>(text.size()) > digits) text.resize(static_cast<std::size_t>(digits));
  }
  return {text, exponent};
}

}  // namespace

std::string number(double value, int digits) {
  if (std::isnan(value)) return "not a number (NaN)";
  if (std::isinf(value)) return value > 0 ? "infinity" : "minus infinity";
  if (value == 0) return "0";  // a minus zero is none
  if (value < 0) {
    std::string text = "−";  // a minus sign is not a hyphen
    return text.append(number(-value, digits));
  }
  auto [text, exponent] = decimal(value, digits);
  text.resize(std::max<std::size_t>(text.find_last_not_of('0') + 1, 1));
  const auto size = static_cast<int>(text.size());
  if (exponent < -4 || exponent >= digits) {
    if (size > 1) text.insert(1, 1, '.');
    const int power = std::abs(exponent);
    text.append(exponent < 0 ? "e-" : "e+").append(power < 10 ? "0" : "");
    return text.append(whole_text(static_cast<std::uint64_t>(power)));
  }
  if (exponent < 0) {
    std::string small = "0.";
    return small.append(static_cast<std::size_t>(-exponent - 1), '0').append(text);
  }
  if (size <= exponent + 1) return text.append(static_cast<std::size_t>(exponent + 1 - size), '0');
  return text.insert(static_cast<std::size_t>(exponent) + 1, 1, '.');
}

std::string degrees(double temperature_c) { return number(std::round(10 * temperature_c) / 10) + " °C"; }

std::string in_hours(double hours) {
  const double minutes = std::round(60 * hours), whole = std::floor(minutes / 60), left = minutes - 60 * whole;
  if (whole == 0) return number(left) + " min";
  return number(whole) + " h " + (left < 10 ? "0" : "") + number(left) + " min";
}

}  // namespace ferment
