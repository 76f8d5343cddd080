#include <doctest/doctest.h>

#include <functional>
#include <limits>
#include <stdexcept>
#include <string>
#include <vector>

#include <ferment/ferment.hpp>

using namespace ferment;

namespace {

Process a_day(double room_c = 21) {
  Mix mix;
  mix.formula = {.flour_g = 900, .water_g = 600, .salt_g = 18, .instant_g = 5};
  mix.dough_c = 24;
  Stage bulk;
  bulk.surroundings = Surroundings::room(room_c);
  bulk.until = UntilTime{2};
  bulk.handling = {Handling::divide, Handling::round};
  Stage proof = bulk;
  proof.name = "proof";
  proof.piece.shape = Ball{};
  proof.piece.pieces = 12;
  proof.until = UntilRise{65};
  return {.steps = {mix, bulk, proof}};
}

std::string refusal_of(const std::function<void()>& call) {
  try {
    call();
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "";
}

}  // namespace

TEST_CASE("every tolerance that is allowed ends, and at the same hours") {
  const double ready_h = simulate(a_day()).stages[1].end_h;
  for (const double tolerance : {1e-12, 1e-11, 1e-9, 1e-7, 1e-3, 1e-1}) {
    CAPTURE(tolerance);
    int legs = 0;
    const SimulateOptions options{.every_min = 0, .tolerance = tolerance, .interrupt = [&] {
                                    if (++legs > 20000) throw std::runtime_error("it creeps");
                                  }};
    CHECK(simulate(a_day(), {}, std::nullopt, options).stages[1].end_h == doctest::Approx(ready_h).epsilon(tolerance < 1e-4 ? 1e-10 : 1e-5));
  }
}

TEST_CASE("a timeline has a million rows at the most") {
  CHECK(refusal_of([] { simulate(a_day(), {}, std::nullopt, {.every_min = 1e-9}); }) ==
        "stage \"bulk\": a row every 1e-09 min makes more than 1000000 rows; take a longer every_min, or 0 for starts and ends alone [every_min]");
}

TEST_CASE("what an interrupt throws ends simulate, forecast and questions, on several threads too") {
  struct Stop {};
  const auto now = [] { throw Stop(); };
  int calls = 0;
  const auto later = [&calls] {
    if (++calls > 1000) throw Stop();
  };
  CHECK_THROWS_AS(simulate(a_day(), {}, std::nullopt, {.interrupt = now}), Stop);
  CHECK_THROWS_AS(forecast(a_day(), {}, std::nullopt, {.interrupt = later}), Stop);
  calls = 0;
  CHECK_THROWS_AS(yeast_for(a_day(), {"proof", 6}, 0, {}, std::nullopt, {.interrupt = later}), Stop);
  std::size_t begun = 0;
  const ForEach for_each = [&](std::size_t count, const std::function<void(std::size_t)>& work) {
    for (std::size_t i = 0; i < count; ++i) {
      const int before = calls;
      work(i);
      if (calls > before) ++begun;  // a draw that is left does not call
    }
  };
  calls = 900;
  CHECK_THROWS_AS(forecast(a_day(), {}, std::nullopt, {.interrupt = later, .for_each = for_each}), Stop);
  CHECK(begun < 512);
}

TEST_CASE("hours of surroundings are numbers") {
  for (const double hour : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    for (const Surroundings& where : {Surroundings::room(20), Surroundings::daily_swing(20, 3), Surroundings::measured({0, 1}, {20, 21})}) {
      CHECK_THROWS_AS(place_at(where, hour), InvalidInput);
      CHECK_THROWS_AS(temperature_at(where.places[0], hour), InvalidInput);
    }
  }
}

TEST_CASE("the place at an hour, of many") {
  std::vector<std::pair<double, Surroundings>> parts;
  for (int i = 0; i < 50; ++i) parts.emplace_back(i, Surroundings::room(10 + 0.5 * i));
  const Surroundings many = Surroundings::sequence(parts);
  for (int i = 0; i < 50; ++i) {
    CHECK(temperature_at(place_at(many, i), i) == 10 + 0.5 * i);
    CHECK(temperature_at(place_at(many, i + 0.999), i) == 10 + 0.5 * i);
    CHECK(next_place_h(many, i) == (i < 49 ? i + 1 : std::numeric_limits<double>::infinity()));
  }
  CHECK(&place_at(many, -3) == &many.places.front());
}

TEST_CASE("a state whose yeast has shrunk, or could grow out of nothing, is refused") {
  const Timeline timeline = simulate(a_day(), {}, std::nullopt, {.stop_h = 1});
  State state = timeline.state;
  REQUIRE(state.cohorts.size() == 1);
  CHECK_NOTHROW(check_state(state));
  state.cohorts[0].mass_g = 1e-20;
  CHECK(refusal_of([&] { check_state(state); }).find("a cohort has less yeast than was put in") != std::string::npos);
  state.cohorts[0].dose_g = 1e-20;
  CHECK(refusal_of([&] { check_state(state); }).find("a cohort could grow to a million million times its yeast") != std::string::npos);
}
