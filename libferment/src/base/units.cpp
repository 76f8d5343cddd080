#include <ferment/base/units.hpp>

#include <cmath>

#include <ferment/base/error.hpp>

#include "base/text.hpp"

namespace ferment {
namespace {

void require_point(const char* label, double value, const char* unit, double zero) {
  if (std::isfinite(value) && value >= zero) return;
  throw InvalidInput(std::string(label) + " " + number(value) + " " + unit +
                         " is not a temperature: it must be a number at or above " + number(zero) + " " + unit +
                         " (absolute zero)",
                     {.value = value, .low = zero});
}

constexpr double grams_per_ounce = 28.349523125;

void require_weight(double value, const char* unit) {
  if (std::isfinite(value) && value >= 0) return;
  throw InvalidInput("weight " + number(value) + " " + unit + " is not a weight: it must be a number at or above 0",
                     {.value = value, .low = 0.0});
}

}  // namespace

double celsius(double fahrenheit) {
  require_point("temperature", fahrenheit, "°F", -459.67);
  return (fahrenheit - 32) / 1.8;
}

double fahrenheit(double celsius) {
  require_point("temperature", celsius, "°C", -273.15);
  return 1.8 * celsius + 32;
}

double kelvins(double fahrenheit_degrees) {
  if (!std::isfinite(fahrenheit_degrees)) {
    throw InvalidInput("difference of " + number(fahrenheit_degrees) + " Fahrenheit degrees is not a number",
                       {.value = fahrenheit_degrees, .advice = "give a finite difference"});
  }
  return fahrenheit_degrees / 1.8;
}

double grams(double ounces) {
  require_weight(ounces, "oz");
  return grams_per_ounce * ounces;
}

double ounces(double grams) {
  require_weight(grams, "g");
  return grams / grams_per_ounce;
}

}  // namespace ferment
