// A number without a default.
#pragma once

namespace ferment {

/// A number that must be given: a program that leaves it out does not compile. Else it is a double.
struct Given {
  constexpr Given(double number) : value(number) {}    // NOLINT(google-explicit-constructor)
  constexpr operator double() const { return value; }  // NOLINT(google-explicit-constructor)
  constexpr Given& operator*=(double factor) {
    value *= factor;
    return *this;
  }

  double value;
};

}  // namespace ferment
