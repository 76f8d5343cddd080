#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <stdexcept>
#include <string>
#include <vector>

#include <ferment/ferment.hpp>

#include "dough/shell.hpp"
#include "refusal.hpp"
#include "rolls.hpp"

using namespace ferment;

namespace {

Process a_day() { return day_of_rolls(Surroundings::room(21), {.until_h = 2}); }

}  // namespace

TEST_CASE("every tolerance that is allowed ends, and at the same hours") {
  const double ready_h = simulate(a_day()).stages[1].end_h;
  for (const double tolerance : {1e-12, 1e-11, 1e-9, 1e-7, 1e-3, 1e-1}) {
    CAPTURE(tolerance);
    int legs = 0;
    const SimulateOptions options{.every_min = 0, .tolerance = tolerance, .interrupt = [&] {
                                    if (++legs > 20000) throw std::runtime_error("it creeps");
                                  }};
    CHECK(simulate(a_day(), {}, std::nullopt, options).stages[1].end_h ==
          doctest::Approx(ready_h).epsilon(tolerance < 1e-4 ? 1e-10 : 1e-5));
  }
}

TEST_CASE("a timeline has a million rows at the most") {
  CHECK(said([] { simulate(a_day(), {}, std::nullopt, {.every_min = 1e-9}); }) ==
        "every_min: a row every 1e-09 min makes more than 1000000 rows; take a longer every_min, or 0 "
        "for starts and ends alone");
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
    for (const Surroundings& where :
         {Surroundings::room(20), Surroundings::daily_swing(20, 3), Surroundings::measured({0, 1}, {20, 21})}) {
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
  CHECK_NOTHROW(require(state));
  state.cohorts[0].mass_g = 1e-20;
  CHECK(said([&] { require(state); }).find("a cohort has less yeast than was put in") != std::string::npos);
  state.cohorts[0].dose_g = 1e-20;
  CHECK(said([&] { require(state); }).find("a cohort could grow to a million million times its yeast") !=
        std::string::npos);
}

TEST_CASE(
    "the core of a ball follows a change of air by and by, from the mean's temperature towards the settled profile") {
  Process day = a_day();
  Stage& ball = std::get<Stage>(day.steps[1]);
  ball.piece.shape = Shape::ball;
  ball.surroundings = Surroundings::refrigerator(4);
  ball.until_h = 1.5;
  day.steps.resize(2);
  const Timeline timeline = simulate(day, {}, std::nullopt, {.heat_of_fermentation = false});
  // By hand: a sphere with its size after mixing, k 0.40 W/(m·K); of Biot number 1, 1 − λ·cot λ = 1, the second root is
  // 3π/2.
  const double density = 1260 * (1 - Kitchen{}.void_fraction), mass_kg = 1.523, pi = std::acos(-1.0);
  const double c = 1000 * timeline.state.heat_capacity_kj_k / mass_kg;
  const double radius_m = std::cbrt(mass_kg / density * 3 / (4 * pi)), eigenvalue = 1.5 * pi;
  const double settling_h = radius_m * radius_m / (eigenvalue * eigenvalue) * density * c / 0.40 / 3600;
  const double tau_h = *timeline.stages[0].time_constant_h, first_k = timeline.mean_c[0] - timeline.surface_c[0];
  CHECK(timeline.core_c[0] == doctest::Approx(timeline.mean_c[0]).epsilon(1e-12));
  for (std::size_t row = 10; row < timeline.time_h.size(); row += 10) {
    const double t = timeline.time_h[row];
    const double inside_k = first_k * tau_h / (tau_h - settling_h) * (std::exp(-t / tau_h) - std::exp(-t / settling_h));
    CAPTURE(t);
    CHECK(timeline.core_c[row] - timeline.mean_c[row] == doctest::Approx(1.5 * inside_k).epsilon(0.05));
    CHECK(timeline.surface_c[row] < timeline.mean_c[row]);
  }
}

namespace {

/// The gas in the cells and the dissolved, by Henry's and the gas law: of a dough at rest, per 100 g of flour.
double cells_after(Handling handling) {
  Process day = a_day();
  std::get<Stage>(day.steps[1]).handling = {};
  day.steps.resize(2);
  const State before = simulate(day).state;
  std::get<Stage>(day.steps[1]).handling = {handling};
  const State after = simulate(day).state;
  CHECK(only_shell(after).gas.co2_mmol < only_shell(before).gas.co2_mmol);
  return only_shell(after).gas.air_mmol / only_shell(before).gas.air_mmol;
}

}  // namespace

TEST_CASE("every handling leaves its own share of the cells, air and CO2 alike") {
  const Kitchen kitchen;
  CHECK(cells_after(Handling::fold) == doctest::Approx(kitchen.kept_by_fold).epsilon(1e-12));
  CHECK(cells_after(Handling::divide) == doctest::Approx(kitchen.kept_by_divide).epsilon(1e-12));
  CHECK(cells_after(Handling::round) == doctest::Approx(kitchen.kept_by_round).epsilon(1e-12));
  CHECK(cells_after(Handling::mould) == doctest::Approx(kitchen.kept_by_mould).epsilon(1e-12));
  CHECK(cells_after(Handling::machine_mould) == doctest::Approx(kitchen.kept_by_machine_mould).epsilon(1e-12));
  CHECK(kitchen.kept_by_divide != kitchen.kept_by_round);
}

TEST_CASE("the yeast's weight counts in the dough's gas-free volume") {
  Mix mix;
  mix.formula = {.flour_g = 900, .water_g = 600, .salt_g = 18, .compressed_g = 45};
  mix.dough_c = 24;
  const State state = advance(State{}, mix);
  const Kitchen kitchen;
  const double by_hand_ml =
      100.0 / 900 * (900 + 600 + 18 + 45) / kitchen.gas_free_density / (1 - kitchen.void_fraction);
  CHECK(state.mixed_volume_ml == doctest::Approx(by_hand_ml).epsilon(1e-12));
  // Of a dough without CO2 in it the volume over the mixed one is 1, the yeast's share of the gas-free volume included.
  CHECK(volume_ratio(state) == doctest::Approx(1).epsilon(1e-12));
}

TEST_CASE("while doughs are mixed the old one works at the new temperature") {
  Mix poolish;
  poolish.formula = {.flour_g = 300, .water_g = 300, .instant_g = 1};
  poolish.dough_c = 12;
  Mix rest;
  rest.formula = {.flour_g = 600, .water_g = 300, .salt_g = 18};
  rest.dough_c = 30;
  rest.room_c = 22;
  rest.mixing = ByMethod{"stand_mixer", 12};
  const State before = advance(State{}, poolish), after = advance(before, rest);
  CHECK(after.time_h - before.time_h == doctest::Approx(0.2).epsilon(1e-12));
  CHECK(only_shell(after).equivalent_h - only_shell(before).equivalent_h ==
        doctest::Approx(0.2 * speed(30, 0, 100)).epsilon(1e-9));
}

TEST_CASE("a dough with milk gathers hours, held at a temperature or not, and mixed doughs have the longer time") {
  const auto kept = [](double dough_c, double hours) {
    Mix mix;
    mix.formula = {.flour_g = 500, .water_g = 100, .salt_g = 10, .milk_g = 230};
    mix.dough_c = dough_c;
    Stage stage;
    stage.surroundings = Surroundings::dough(dough_c);
    stage.until_h = hours;
    return simulate({.steps = {mix, stage}});
  };
  CHECK(kept(24, 3).state.perishable_h == doctest::Approx(3).epsilon(1e-12));
  CHECK(kept(4, 3).state.perishable_h == 0);
  CHECK(kept(5, 3).state.perishable_h == doctest::Approx(3).epsilon(1e-12));
  const auto warns = [](const Timeline& timeline) {
    return std::any_of(timeline.notices.begin(), timeline.notices.end(),
                       [](const Notice& n) { return n.code == "perishable_held"; });
  };
  CHECK_FALSE(warns(kept(24, 3.9)));
  CHECK(warns(kept(24, 4.1)));

  State base = kept(24, 1).state;
  base = as_beginning(base);
  Mix both;
  both.formula = {.flour_g = 200, .water_g = 130};
  both.dough_c = 22;
  both.doughs = {as_beginning(kept(24, 3).state)};
  CHECK(advance(base, both).perishable_h == doctest::Approx(3).epsilon(1e-12));
  both.doughs = {as_beginning(kept(24, 0.5).state)};
  CHECK(advance(base, both).perishable_h == doctest::Approx(1).epsilon(1e-12));
}

TEST_CASE(
    "a fold presses out a share of the cells: what had leaked is gone, the dissolved gas stays, the yeast goes on") {
  const auto folded = [](double hours, double loss) {
    Kitchen kitchen;
    kitchen.kept_by_fold = 1 - loss;
    Process day = a_day();
    std::get<Mix>(day.steps[0]).dough_c = 27;
    Stage& bulk = std::get<Stage>(day.steps[1]);
    bulk.surroundings = Surroundings::dough(27);
    bulk.until_h = hours;
    bulk.handling = {Handling::fold};
    day.steps.resize(2);
    return std::pair(simulate(day, kitchen), kitchen);
  };
  for (const double hours : {1.0, 12.0}) {  // before it leaks, and after
    const auto [rested, kitchen] = folded(hours, 0);
    const double stood = 1 + rested.stages[0].rise_percent / 100;
    CHECK(volume_ratio(rested.state, kitchen) == doctest::Approx(stood).epsilon(1e-12));
    for (const double loss : {0.2, 0.6}) {
      const auto [pressed, of] = folded(hours, loss);
      CHECK(only_shell(pressed.state).made_mmol == only_shell(rested.state).made_mmol);
      CHECK(only_shell(pressed.state).gas.air_mmol ==
            doctest::Approx((1 - loss) * only_shell(rested.state).gas.air_mmol).epsilon(1e-12));
      const double ratio = volume_ratio(pressed.state, of);
      CHECK(ratio < stood);
      CHECK(ratio > 1 - kitchen.void_fraction);
    }
    // Gas is held, dissolved or in the cells; the rest leaked and does not come back.
    CHECK((only_shell(rested.state).gas.co2_mmol < 0.999 * only_shell(rested.state).made_mmol) == (hours > 10));
  }
}

TEST_CASE("a colder dough stands lower at equal gas and springs up when it warms") {
  State state = simulate(a_day(), {}, std::nullopt, {.stop_h = 1.2}).state;
  double before = 0;
  for (double t = 0; t <= 40; t += 2) {
    only_shell(state).temperature_c = t;
    const double ratio = volume_ratio(state);
    CHECK(ratio > before);
    before = ratio;
  }
}
