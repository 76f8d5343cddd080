#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/base/values.hpp>
#include <ferment/mix/factor_rule.hpp>
#include <ferment/mix/ice.hpp>

#include "box.hpp"
#include "naive.hpp"

using namespace ferment;
using naive::Real;

TEST_CASE("the factor rule and its inverses") {
  box::Numbers numbers(111);
  double worst = 0;
  for (int i = 0; i < 5000; ++i) {
    const double desired = numbers.between(0, 45), flour = numbers.between(-30, 60), room = numbers.between(-30, 60),
                 friction = numbers.between(-10, 25);
    std::optional<double> preferment;
    if (i % 2) preferment = numbers.between(-2, 45);
    const Real wanted = Real(preferment ? 4 : 3) * desired - flour - room - preferment.value_or(0) - friction;
    const double water = water_by_factor_rule(desired, flour, room, friction, preferment);
    // Sums of temperatures may cancel: the error is measured against the largest term.
    const double scale =
        4 * desired + std::abs(flour) + std::abs(room) + std::abs(friction) + std::abs(preferment.value_or(0));
    worst = std::max(worst, static_cast<double>(abs(Real(water) - wanted)) / scale);
    if (water < 0 || water > 60) continue;
    CHECK(dough_by_factor_rule(water, flour, room, friction, preferment) == doctest::Approx(desired).epsilon(1e-12));
    CHECK(friction_from_batch(desired, flour, room, water, preferment) == doctest::Approx(friction).epsilon(1e-11));
  }
  MESSAGE("factor rule: worst error relative to its terms ", worst);
  CHECK(worst <= 1e-15);
  CHECK(water_by_factor_rule(25, 20, 22, 5) == 28);
  CHECK(water_by_factor_rule(25, 20, 22, 5, 24) == 29);
  CHECK(water_by_factor_rule(45, -30, -30, -10) == 205);  // an impossible water is an answer, with its notice
}

TEST_CASE("factor rule: arrays of every length equal the scalar bit for bit, single values and arrays mixed") {
  box::Numbers numbers(112);
  for (const std::size_t n : {std::size_t{0}, std::size_t{1}, std::size_t{2}, std::size_t{127}, std::size_t{128},
                              std::size_t{129}, std::size_t{256}, std::size_t{257}, std::size_t{1000}}) {
    std::vector<double> desired(n), flour(n), room(n), friction(n), preferment(n), out(n, -1);
    for (std::size_t i = 0; i < n; ++i) {
      desired[i] = numbers.between(0, 45);
      flour[i] = numbers.between(-30, 60);
      room[i] = numbers.between(-30, 60);
      friction[i] = numbers.between(-10, 25);
      preferment[i] = numbers.between(-2, 45);
    }
    water_by_factor_rule(desired, flour, room, friction, Values(preferment), out);
    for (std::size_t i = 0; i < n; ++i)
      CHECK(out[i] == water_by_factor_rule(desired[i], flour[i], room[i], friction[i], preferment[i]));
    water_by_factor_rule(desired, flour, room, friction, std::nullopt, out);
    for (std::size_t i = 0; i < n; ++i)
      CHECK(out[i] == water_by_factor_rule(desired[i], flour[i], room[i], friction[i]));
    water_by_factor_rule(25.0, flour, 21.0, friction, Values(18.0), out);
    for (std::size_t i = 0; i < n; ++i) CHECK(out[i] == water_by_factor_rule(25, flour[i], 21, friction[i], 18.0));
  }
  std::vector<double> out(4);
  const std::vector<double> three(3, 20.0);
  CHECK_THROWS_AS(water_by_factor_rule(three, 20, 20, 0, std::nullopt, out), InvalidInput);
  CHECK_THROWS_AS(water_by_factor_rule(25, three, 20, 0, std::nullopt, out), InvalidInput);
  CHECK_THROWS_AS(water_by_factor_rule(25, 20, three, 0, std::nullopt, out), InvalidInput);
  CHECK_THROWS_AS(water_by_factor_rule(25, 20, 20, three, std::nullopt, out), InvalidInput);
  CHECK_THROWS_AS(water_by_factor_rule(25, 20, 20, 0, Values(three), out), InvalidInput);
}

TEST_CASE("a batch whose friction cannot be is refused without talk of units") {
  for (const double dough : {44.0, 1.0}) {
    try {
      friction_from_batch(dough, 20, 20, 20);
      FAIL("accepted");
    } catch (const InvalidInput& error) {
      const std::string text = error.what();
      CHECK(text.find("friction of this batch") != std::string::npos);
      CHECK(text.find("kelvins(") == std::string::npos);
      CHECK(text.find("measure") != std::string::npos);
    }
  }
}

TEST_CASE("ice for a tap that is too warm") {
  CHECK(ice_by_trade_rule(1000, 20, 20) == 0);
  CHECK(ice_by_trade_rule(1000, 20, 0) == 200);
  CHECK(ice_by_trade_rule(500, 20, 10) == 50);
  CHECK(ice_by_trade_rule(1000, 0, 0) == 0);
  try {
    ice_by_trade_rule(1000, 10, 12);
    FAIL("accepted");
  } catch (const NoSolution& error) {
    CHECK(error.detail().path == "wanted_c");
    CHECK(error.detail().high == 10.0);
    CHECK(std::string(error.what()).find("warm the water") != std::string::npos);
  }
  for (const double bad :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(), -1.0, 61.0}) {
    CHECK_THROWS_AS(ice_by_trade_rule(1000, 20, bad), InvalidInput);
  }
}
