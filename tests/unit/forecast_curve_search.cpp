#include "forecast/curve_search.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <optional>
#include <vector>

using namespace ferment;

namespace {

constexpr double never = std::numeric_limits<double>::infinity();
using Curve = std::function<double(double)>;

/// Searches a curve whose rough one is some percent beside it, in the value and in the place.
CurveSearch search_of(const Curve& curve, double low, double high, std::optional<double> present = {}) {
  return CurveSearch({.low = low,
                      .high = high,
                      .value = curve,
                      .rough =
                          [curve, low, high](const std::vector<double>& xs) {
                            std::vector<double> rough;
                            for (const double x : xs)
                              rough.push_back(1.02 * curve(x + 0.004 * (high - low) * std::sin(7 * x)));
                            return rough;
                          },
                      .present = present});
}

double wave(double x) { return 10 + 4 * std::sin(x); }

}  // namespace

TEST_CASE("every place of a value on a curve that turns five times") {
  for (const double wanted : {6.001, 6.5, 8.0, 9.9, 12.0, 13.5, 13.999}) {
    CAPTURE(wanted);
    // 10 + 4 sin x = wanted: x and π − x, and again every 2π.
    const double first = std::asin((wanted - 10) / 4), pi = std::acos(-1.0);
    std::vector<double> expected;
    for (const double base : {first, pi - first}) {
      for (int turn = -1; turn < 4; ++turn) {
        const double x = base + 2 * pi * turn;
        if (x >= 0 && x <= 16) expected.push_back(x);
      }
    }
    std::sort(expected.begin(), expected.end());
    const std::vector<double> found = search_of(wave, 0, 16).solutions(wanted);
    REQUIRE(found.size() == expected.size());
    for (std::size_t i = 0; i < found.size(); ++i) CHECK(wave(found[i]) == doctest::Approx(wanted).epsilon(1e-8));
    for (std::size_t i = 0; i < found.size(); ++i) CHECK(found[i] == doctest::Approx(expected[i]).epsilon(1e-4));
  }
  CHECK(search_of(wave, 0, 16).solutions(14.1).empty());
  CHECK(search_of(wave, 0, 16).solutions(5.9).empty());
}

TEST_CASE("a turn within a millionth of the value is a place, one farther off is none") {
  const auto bowl = [](double x) { return 5 + (x - 0.3137) * (x - 0.3137); };
  const std::vector<double> touched = search_of(bowl, -2, 2).solutions(5 - 9e-7);
  REQUIRE(touched.size() == 1);
  CHECK(touched[0] == doctest::Approx(0.3137).epsilon(1e-2));
  CHECK(search_of(bowl, -2, 2).solutions(5 - 2e-6).empty());
  CHECK(search_of(bowl, -2, 2).solutions(5 + 1e-4).size() == 2);
}

TEST_CASE("the present choice is found, whatever the curve does around it") {
  const double present = 1.0123456789;
  const auto rough = [](double x) { return 3 + 0.01 * std::sin(400 * x) + 0.1 * x; };
  const std::vector<double> found = search_of(rough, 0, 3, present).solutions(rough(present));
  CHECK(std::any_of(found.begin(), found.end(), [&](double x) { return x == present; }));
}

TEST_CASE("a curve that grows to infinity, and one that jumps there") {
  const auto grows = [](double x) { return x < 2.3456 ? 4 - 3 * std::log(2.3456 - x) : never; };
  for (const double wanted : {3.0, 10.0, 40.0, 80.0}) {
    const std::vector<double> found = search_of(grows, 0, 5).solutions(wanted);
    REQUIRE(found.size() == 1);
    CHECK(grows(found[0]) == doctest::Approx(wanted).epsilon(1e-7));
  }
  const auto jumps = [](double x) { return x < 2.3456 ? 9 - x : never; };
  const std::vector<ValueRange> ranges = search_of(jumps, 0, 5).ranges();
  REQUIRE(ranges.size() == 1);
  CHECK(ranges[0].low == doctest::Approx(9 - 2.3456).epsilon(1e-7));
  CHECK(ranges[0].high == 9);
  CHECK(ranges[0].at_high == 0);
  CHECK(search_of(jumps, 0, 5).solutions(6.6).empty());
  CHECK(search_of(jumps, 0, 5).solutions(6.7).size() == 1);
}

TEST_CASE("the values in reach: outermost turns, and what jumps and infinite stretches leave out") {
  const std::vector<ValueRange> of_wave = search_of(wave, 0, 16).ranges();
  REQUIRE(of_wave.size() == 1);
  CHECK(of_wave[0].low == doctest::Approx(6).epsilon(1e-8));
  CHECK(of_wave[0].high == doctest::Approx(14).epsilon(1e-8));

  const auto steps = [](double x) { return x < 1.7 ? 12 - x : 6 - x; };
  const std::vector<ValueRange> of_steps = search_of(steps, 0, 4).ranges();
  REQUIRE(of_steps.size() == 2);
  CHECK(of_steps[0].low == 2);
  CHECK(of_steps[0].high == doctest::Approx(4.3).epsilon(1e-6));
  CHECK(of_steps[1].low == doctest::Approx(10.3).epsilon(1e-6));
  CHECK(of_steps[1].high == 12);
  CHECK(search_of(steps, 0, 4).solutions(7).empty());

  const auto gap = [](double x) { return x > 1 && x < 3 ? never : x < 2 ? 20 + x : 2 + x; };
  const std::vector<ValueRange> of_gap = search_of(gap, 0, 4).ranges();
  REQUIRE(of_gap.size() == 2);
  CHECK(of_gap[0].low == doctest::Approx(5).epsilon(1e-6));
  CHECK(of_gap[1].high == doctest::Approx(21).epsilon(1e-6));

  CHECK(search_of([](double) { return never; }, 0, 1).ranges().empty());
  CHECK(search_of([](double) { return never; }, 0, 1).solutions(3).empty());
}

TEST_CASE("a jump of less than a minute is passed") {
  const auto step = [](double x) { return x < 1.7 ? 12 - x : 11.99 - x; };
  const std::vector<double> found = search_of(step, 0, 4).solutions(10.295);
  REQUIRE(found.size() == 1);
  CHECK(found[0] == doctest::Approx(1.7).epsilon(1e-6));
}

TEST_CASE("a value that is the same throughout") {
  CHECK(search_of([](double) { return 6.5; }, 0, 1).only_value().has_value());
  CHECK_FALSE(search_of([](double x) { return 6.5 + 0.01 * x; }, 0, 1).only_value().has_value());
  CHECK_FALSE(search_of([](double) { return never; }, 0, 1).only_value().has_value());
}
