#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include <ferment/ferment.hpp>

#include "heat/condensed.hpp"
#include "rolls.hpp"

using namespace ferment;

namespace {

/// Even numbers from −1 to 1 (a linear congruence: Knuth's MMIX constants).
class Noise {
 public:
  double operator()() {
    bits_ = bits_ * 6364136223846793005u + 1442695040888963407u;
    return static_cast<double>(static_cast<std::int64_t>(bits_)) / 9223372036854775808.0;
  }

 private:
  std::uint64_t bits_ = 1;
};

Course every_second(std::size_t n, const std::function<double(double)>& c_at) {
  Course course;
  for (std::size_t i = 0; i < n; ++i) {
    course.time_h.push_back(static_cast<double>(i) / 3600);
    course.temperature_c.push_back(c_at(course.time_h.back()));
  }
  return course;
}

double tenths(double c) { return std::round(10 * c) / 10; }

Course noisy(std::size_t n) {
  Noise noise;
  return every_second(n, [&](double h) { return tenths(21 + 2 * std::sin(h) + 0.2 * noise()); });
}

/// A refrigerator that swings ±2 K every 20 min about a warm 16 °C, so that the dough is ready.
Course sawtooth(std::size_t n) {
  return every_second(n, [](double h) { return 16 + 2 * (2 * std::fmod(3 * h, 1.0) - 1); });
}

/// A door that is open for three minutes.
Course door(std::size_t n) {
  Noise noise;
  return every_second(n, [&](double h) { return tenths((h > 1 && h < 1.05 ? 32 : 20) + 0.1 * noise()); });
}

Process process_in(Course course, bool is_dough = false) {
  return day_of_rolls({{{.course = std::move(course), .is_dough = is_dough}}}, {.until_h = 0.75}, 9);
}

}  // namespace

TEST_CASE("a straight series needs little but its ends, and one with corners keeps them") {
  const Course straight = every_second(5000, [](double h) { return 20 - 3 * h; });
  const Course ends = condensed(straight, 6e-4);
  CHECK(ends.time_h.size() <= 4);
  CHECK(ends.time_h.front() == 0);
  CHECK(ends.time_h.back() == straight.time_h.back());
  CHECK(ends.temperature_c.front() == 20);
  CHECK(ends.temperature_c.back() == straight.temperature_c.back());
  const Course few{{0, 1, 3}, {20, 25, 5}};
  CHECK(condensed(few, 6e-4).time_h == few.time_h);
  CHECK(condensed(few, 6e-4).temperature_c == few.temperature_c);
}

TEST_CASE("a condensed series has the integral of all its readings, up to any moment") {
  for (const Course& course : {noisy(20000), sawtooth(20000), door(20000)}) {
    const Course few = condensed(course, 6e-4);
    CHECK(few.time_h.size() < 200);
    const Place place{.course = few};
    double off_k_h = 0, worst = 0;
    for (std::size_t k = 1; k < course.time_h.size(); ++k) {
      const double h = course.time_h[k] - course.time_h[k - 1];
      off_k_h += h * (course.temperature_c[k - 1] + course.temperature_c[k]) / 2;
      off_k_h -= h * (temperature_at(place, course.time_h[k - 1]) + temperature_at(place, course.time_h[k])) / 2;
      worst = std::max(worst, std::abs(off_k_h));
    }
    CHECK(worst < 2 * 6e-4);
  }
}

namespace {

/// How far hours of any draw, and be back by, are from those with every reading, which a tolerance below 1e-3 takes.
std::pair<double, double> moved_by_condensing(const Process& process) {
  const auto of = [&](double tolerance) {
    return forecast(process, {}, std::nullopt, {.draws = 8, .tolerance = tolerance}).stages[1];
  };
  const StageForecast every = of(0.9e-3), few = of(3e-2);
  double ready_h = 0;
  for (std::size_t i = 0; i < every.ready.size(); ++i)
    ready_h = std::max(ready_h, std::abs(every.ready[i] - few.ready[i]));
  return {ready_h, std::abs(every.be_back_by_h - few.be_back_by_h)};
}

}  // namespace

TEST_CASE("a forecast with a condensed series is that with every reading") {
  for (const Course& course : {noisy(8000), sawtooth(8000), door(8000)}) {
    const auto [ready_h, back_h] = moved_by_condensing(process_in(course));
    MESSAGE("ready moves by ", ready_h, " h, be back by by ", back_h, " h");
    CHECK(ready_h < 1e-4);
    CHECK(back_h < 1e-3);
  }
  // A dough whose own temperature jumps by tenths of a degree rises and falls with it: it is ready at the first warm
  // reading.
  const auto [ready_h, back_h] = moved_by_condensing(process_in(noisy(8000), true));
  MESSAGE("a dough's own: ready moves by ", ready_h, " h, be back by by ", back_h, " h");
  CHECK(ready_h < 1.0 / 60);
}

TEST_CASE("a series with a wrong reading is refused with its stage, also where it would be condensed") {
  Course course = noisy(100);
  course.temperature_c[7] = 400;
  const Process process = process_in(course);
  try {
    forecast(process);
    FAIL("400 °C is no room");
  } catch (const InvalidInput& error) {
    CHECK(error.problem().find("stage \"bulk\"") == 0);
    CHECK(std::string(error.what()).find("index 7") != std::string::npos);
  }
}
