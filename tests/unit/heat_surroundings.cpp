#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <string>
#include <variant>

#include <ferment/base/error.hpp>
#include <ferment/heat/surroundings.hpp>

#include "refusal.hpp"

using namespace ferment;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

}  // namespace

TEST_CASE("surroundings: one place after another") {
  const Surroundings day = Surroundings::sequence(
      {{0, Surroundings::room(22)}, {2.5, Surroundings::refrigerator(4, true)}, {14, Surroundings::proof_box(28, 80)}});
  REQUIRE(day.places.size() == 3);
  const auto at = [&](double hour) { return temperature_at(place_at(day, hour), hour); };
  CHECK(at(-100) == 22);  // before it begins, as where it begins
  CHECK(at(0) == 22);
  CHECK(at(std::nextafter(2.5, 0)) == 22);
  CHECK(at(2.5) == 4);
  CHECK(at(std::nextafter(2.5, 3)) == 4);
  CHECK(at(std::nextafter(14, 0)) == 4);
  CHECK(at(14) == 28);
  CHECK(at(1e6) == 28);
  CHECK(place_at(day, 1).air == Air::room);
  CHECK(place_at(day, 3).air == Air::fan_refrigerator);
  CHECK(place_at(day, 20).air == Air::proof_box);
  CHECK(place_at(day, 20).humidity_percent == 80.0);
  CHECK(Surroundings::refrigerator(4).places[0].air == Air::refrigerator);
  CHECK(Surroundings::dough(24).places[0].is_dough);
  CHECK(Surroundings::dough_measured({0, 1}, {24, 25}).places[0].is_dough);

  // A sequence in a sequence keeps its own hours, and none earlier than its turn.
  const Surroundings nested = Surroundings::sequence({{0, Surroundings::room(20)}, {5, day}});
  CHECK(temperature_at(place_at(nested, 4), 4) == 20);
  CHECK(temperature_at(place_at(nested, 5), 5) == 4);  // the first place is over by then
  CHECK(temperature_at(place_at(nested, 14), 14) == 28);
  // Of two that begin together the later one counts.
  const Surroundings together = Surroundings::sequence({{1, Surroundings::room(20)}, {1, Surroundings::room(30)}});
  CHECK(temperature_at(place_at(together, 1), 1) == 30);
}

TEST_CASE("surroundings: lines between readings, and a daily swing") {
  const Surroundings room = Surroundings::measured({1, 3, 3.5, 10}, {20, 26, 24, 24});
  const auto at = [&](double hour) { return temperature_at(place_at(room, hour), hour); };
  CHECK(at(-5) == 20);
  CHECK(at(1) == 20);
  CHECK(at(1.5) == 21.5);
  CHECK(at(2) == 23);
  CHECK(at(3) == 26);
  CHECK(at(3.25) == 25);
  CHECK(at(3.5) == 24);
  CHECK(at(7) == 24);
  CHECK(at(10) == 24);
  CHECK(at(1e5) == 24);
  // Over a reading without a jump.
  CHECK(at(std::nextafter(3, 0)) == doctest::Approx(26).epsilon(1e-14));
  CHECK(at(std::nextafter(3, 4)) == doctest::Approx(26).epsilon(1e-14));

  for (const double warmest : {16.0, 3.0, -40.0}) {
    const Surroundings swing = Surroundings::daily_swing(21, 4, warmest);
    const auto then = [&](double hour) { return temperature_at(place_at(swing, hour), hour); };
    CHECK(then(warmest) == 25);
    CHECK(then(warmest + 12) == doctest::Approx(17).epsilon(1e-14));
    CHECK(then(warmest - 12) == doctest::Approx(17).epsilon(1e-14));
    CHECK(then(warmest + 6) == doctest::Approx(21).epsilon(1e-14));
    CHECK(then(warmest + 24) == doctest::Approx(25).epsilon(1e-14));
    CHECK(then(warmest + 8) == doctest::Approx(19).epsilon(1e-14));  // cos 120° is −1/2
  }
  CHECK(Surroundings::daily_swing(20, 2).places[0].swing->warmest_h == 16);
}

TEST_CASE("surroundings that cannot be are refused") {
  for (const double bad : {-31.0, 61.0, not_a_number, infinity}) {
    refusal([&] { Surroundings::room(bad); }, "room_c");
    refusal([&] { Surroundings::measured({0, 1}, {20, bad}); }, "course.temperature_c");
    refusal([&] { Surroundings::daily_swing(bad, 1); }, "swing.mean_c");
    refusal([&] { Surroundings::refrigerator(bad); }, "refrigerator_c");
    refusal([&] { Surroundings::proof_box(bad); }, "proof_box_c");
    refusal([&] { Surroundings::dough(bad); }, "dough_c");
    refusal([&] { Surroundings::dough_measured({0, 1}, {20, bad}); }, "course.temperature_c");
  }
  refusal([] { Surroundings::refrigerator(31, true); }, "refrigerator_c");
  refusal([] { Surroundings::daily_swing(55, 6); }, "swing.mean_c");   // too warm at its warmest
  refusal([] { Surroundings::daily_swing(-25, 6); }, "swing.mean_c");  // too cold at its coldest
  for (const double bad : {-1.0, 21.0, not_a_number})
    refusal([&] { Surroundings::daily_swing(20, bad); }, "half_range_k");
  for (const double bad : {-1001.0, 1001.0, not_a_number})
    refusal([&] { Surroundings::daily_swing(20, 2, bad); }, "warmest_h");
  for (const double bad : {-1.0, 101.0, not_a_number})
    refusal([&] { Surroundings::proof_box(28, bad); }, "humidity_percent");

  Surroundings wrong = Surroundings::room(20);
  wrong.places[0].heat_transfer_w_per_m2_k = 0.1;
  refusal([&] { require(wrong); }, "heat_transfer_w_per_m2_k");
  wrong = Surroundings::room(20);
  wrong.places[0].air = static_cast<Air>(5);
  CHECK(says(refusal([&] { require(wrong); }, "air"), "air 5 is unknown"));
  wrong = Surroundings::daily_swing(20, 3);
  wrong.places[0].is_dough = true;
  CHECK(says(refusal([&] { require(wrong); }, "places[0].swing"),
             "own temperature is a number or a measured one, not a daily swing"));
  CHECK_THROWS_AS(require(Surroundings{{Place{}}}), InvalidInput);  // a temperature must be given

  CHECK(says(refusal([] { Surroundings::measured({}, {}); }, "time_h"),
             "at least two readings, a time and a temperature for each; got 0 times"));
  CHECK(says(refusal([] { Surroundings::measured({1}, {20}); }, "time_h"), "got 1 times and 1 temperatures"));
  CHECK(says(refusal([] { Surroundings::measured({0, 1, 2}, {20, 21}); }, "time_h"), "got 3 times and 2 temperatures"));
  CHECK(says(refusal(
                 [] {
                   Surroundings::measured({0, 2, 2}, {20, 21, 22});
                 },
                 "time_h"),
             "time goes from 2 h to 2 h at reading 3 of 3; the times must rise"));
  CHECK(says(refusal(
                 [] {
                   Surroundings::measured({0, 2, 1}, {20, 21, 22});
                 },
                 "time_h"),
             "time goes from 2 h to 1 h at reading 3 of 3"));
  refusal([] { Surroundings::measured({0, not_a_number}, {20, 21}); }, "course.time_h[1]");
  refusal([] { Surroundings::measured({0, 20000}, {20, 21}); }, "course.time_h[1]");

  CHECK(says(refusal(
                 [] {
                   Surroundings::sequence({{5, Surroundings::room(20)}, {3, Surroundings::room(22)}});
                 },
                 "places"),
             "a place begins at 3 h, after one that begins at 5 h; give them in the order of time"));
  refusal([] { Surroundings::sequence({{not_a_number, Surroundings::room(20)}}); }, "start_h");
  refusal([] { Surroundings::sequence({{0, Surroundings::room(20)}, {infinity, Surroundings::room(20)}}); }, "start_h");
  for (const auto& call :
       {+[] { require(Surroundings{}); }, +[] { place_at({}, 0); }, +[] { Surroundings::sequence({}); }}) {
    try {
      call();
      FAIL("accepted");
    } catch (const InvalidInput& error) {
      CHECK(says(error.what(), "surroundings have no place; give a room, a refrigerator or another"));
    }
  }
}

TEST_CASE(
    "surroundings never restart: measured and swinging rooms keep the process's hours, wherever they stand in a "
    "sequence") {
  const Surroundings log = Surroundings::measured({0, 10}, {10, 20}), swing = Surroundings::daily_swing(20, 4, 16);
  const Surroundings day = Surroundings::sequence(
      {{0, Surroundings::room(25)}, {5, log}, {12, Surroundings::refrigerator(4)}, {14, swing}, {30, log}});
  CHECK(temperature_at(place_at(day, 5), 5) == 15);
  CHECK(temperature_at(place_at(day, 7), 7) == 17);
  CHECK(temperature_at(place_at(day, 11), 11) == 20);
  CHECK(temperature_at(place_at(day, 16), 16) == doctest::Approx(24).epsilon(1e-15));
  CHECK(temperature_at(place_at(day, 28), 28) == doctest::Approx(16).epsilon(1e-14));
  CHECK(temperature_at(place_at(day, 31), 31) == 20);
}
