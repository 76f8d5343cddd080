#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/units.hpp>

using namespace ferment;

namespace {
constexpr double nan_ = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();
}  // namespace

TEST_CASE("fixed points of the temperature scales") {
  CHECK(celsius(32) == 0);
  CHECK(celsius(212) == 100);
  CHECK(celsius(-40) == -40);
  CHECK(fahrenheit(0) == 32);
  CHECK(fahrenheit(100) == 212);
  CHECK(fahrenheit(-40) == -40);
  CHECK(kelvins(0) == 0);
  CHECK(kelvins(1.8) == 1);
  CHECK(kelvins(20) == doctest::Approx(11.1).epsilon(0.002));  // the trade's 20 °F of friction
  CHECK(celsius(20) != kelvins(20));                           // a point is no difference
}

TEST_CASE("there and back") {
  for (double c = -273; c < 300; c += 0.37) CHECK(std::abs(celsius(fahrenheit(c)) - c) < 2e-13);
}

TEST_CASE("what is no temperature is refused with value, unit and absolute zero") {
  for (const double bad : {nan_, infinity, -infinity, -459.68}) {
    CHECK_THROWS_AS(celsius(bad), InvalidInput);
  }
  for (const double bad : {nan_, infinity, -infinity, -273.16}) CHECK_THROWS_AS(fahrenheit(bad), InvalidInput);
  for (const double bad : {nan_, infinity, -infinity}) CHECK_THROWS_AS(kelvins(bad), InvalidInput);
  CHECK(celsius(-459.67) == doctest::Approx(-273.15));
  CHECK(fahrenheit(-273.15) == doctest::Approx(-459.67));
  CHECK(kelvins(-500) == doctest::Approx(-277.78));  // a difference has no absolute zero
  try {
    celsius(-500);
    FAIL("accepted");
  } catch (const InvalidInput& error) {
    const std::string text = error.what();
    CHECK(text.find("−500 °F") != std::string::npos);
    CHECK(text.find("−459.67 °F") != std::string::npos);
    CHECK(error.status() == Status::invalid_input);
    CHECK(error.detail().value == -500.0);
  }
}

TEST_CASE("an ounce is 28.349523125 g, exact by the international pound of 1959") {
  CHECK(grams(1) == 28.349523125);
  CHECK(grams(16) == doctest::Approx(453.59237).epsilon(1e-15));
  CHECK(ounces(453.59237) == doctest::Approx(16).epsilon(1e-15));
  CHECK(grams(ounces(123.4)) == doctest::Approx(123.4).epsilon(1e-15));
}
