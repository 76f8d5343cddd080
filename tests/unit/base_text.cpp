#include <doctest/doctest.h>

#include <cstdio>
#include <limits>
#include <string>

#include "base/text.hpp"
#include "box.hpp"

using namespace ferment;

namespace {

/// C's own writing of the number, the reference.
std::string printed(double value, int digits) {
  char text[64];
  std::snprintf(text, sizeof text, "%.*g", digits, value);
  return text;
}

}  // namespace

TEST_CASE("numbers are written as C's %g writes them, ties and powers of ten included") {
  box::Numbers n(77);
  int different = 0;
  const auto check = [&](double value, int digits) {
    const std::string ours = number(value, digits), wanted = printed(value, digits);
    if (ours == wanted) return;
    INFO(digits, " digits of ", printed(value, 17), ": ", ours, " for ", wanted);
    CHECK(++different == 0);
  };
  for (int i = 0; i < 100'000; ++i) {
    const int digits = 1 + i % 12;
    check(n.magnitude(1e-12, 1e12), digits);
    check(n.magnitude(1e-5, 1e5), 13 + i % 5);
    check(n.magnitude(1e-100, 1e100), digits);
    // Ties and their neighbours: a half of the last digit, as near as a double comes.
    const double tie = (std::floor(n.between(1, 1e4)) + 0.5) * (i % 2 == 0 ? 1.0 : 0.001);
    for (const double value : {tie, std::nextafter(tie, 0.0), std::nextafter(tie, 1e9), tie / 8}) check(value, digits);
  }
  for (int power = -30; power <= 30; ++power) {
    const double ten = std::stod("1e" + std::to_string(power));
    for (int digits = 1; digits <= 12; ++digits) {
      for (const double value : {ten, std::nextafter(ten, 0.0), std::nextafter(ten, 1e300), 9.9999999 * ten})
        check(value, digits);
    }
  }
}

TEST_CASE("what is no usual number is written in words") {
  const double infinity = std::numeric_limits<double>::infinity();
  CHECK(number(std::numeric_limits<double>::quiet_NaN()) == "not a number (NaN)");
  CHECK(number(infinity) == "infinity");
  CHECK(number(-infinity) == "minus infinity");
  CHECK(number(-0.0) == "0");
  CHECK(number(-3.5) == "−3.5");
  CHECK(degrees(24.449) == "24.4 °C");
  CHECK(degrees(-0.04) == "0 °C");
}
