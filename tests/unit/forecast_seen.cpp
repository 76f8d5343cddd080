#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include <ferment/ferment.hpp>

#include "refusal.hpp"

using namespace ferment;

namespace {

Process bread() {
  Mix mix;
  mix.formula = {.flour_g = 900, .water_g = 600, .salt_g = 18, .instant_g = 5};
  mix.dough_c = 24;
  Stage bulk, proof;
  bulk.surroundings = proof.surroundings = Surroundings::room(19);
  bulk.until_rise_percent = 90;
  bulk.handling = {Handling::divide, Handling::round, Handling::mould};
  proof.name = "proof";
  proof.piece = {.shape = Shape::oblong, .pieces = 2};
  proof.until_rise_percent = 75;
  return {.steps = {mix, bulk, proof}};
}

double width(const StageForecast& stage) {
  const auto [early, late] = interval_h(stage);
  return late - early;
}

double log_t4(double x) { return std::log(0.375) - 2.5 * std::log1p(x * x / 4); }

}  // namespace

TEST_CASE("a forecast of a seen dough: every draw counts as the look is likely in it") {
  const Process process = bread();
  const Sighting seen{"bulk", 1.5, 60};
  const Forecast told = forecast(process, {}, std::nullopt, {.draws = 2048, .seen = {seen}});
  // The same by hand: each draw run to 60 %, then to the end.
  std::vector<std::pair<double, double>> weighted;
  double total = 0, squares = 0;
  for (const Kitchen& kitchen : draws_of({}, {.draws = 2048})) {
    Process to_look = process;
    to_look.steps.resize(2);
    std::get<Stage>(to_look.steps[1]).until_rise_percent = 60;
    const double look_h = simulate(to_look, kitchen, std::nullopt, {.every_min = 0}).stages[0].end_h;
    const double weight = std::exp(log_t4(std::log(1.5 / look_h) / 0.10));
    double ready_h = 1e9;
    try {
      ready_h = simulate(process, kitchen, std::nullopt, {.every_min = 0, .be_back_by = false}).stages[1].end_h;
    } catch (const NoSolution&) {  // its rise is never reached
    }
    weighted.emplace_back(ready_h, weight);
    total += weight;
    squares += weight * weight;
  }
  CHECK(told.effective_draws == doctest::Approx(total * total / squares).epsilon(1e-3));
  std::sort(weighted.begin(), weighted.end());
  for (const double share : {0.05, 0.5, 0.95}) {
    double below = 0;
    auto draw = weighted.begin();
    while (below + draw->second < share * total) below += (draw++)->second;
    CHECK(quantile(told.stages[1].ready, share) == doctest::Approx(draw->first).epsilon(5e-3));
  }
}

TEST_CASE("what was seen narrows what comes, and a look at what is known little") {
  const Process process = bread();
  const Forecast before = forecast(process), after = forecast(process, {}, std::nullopt, {.seen = {{"bulk", 1.5, 60}}});
  CHECK(before.effective_draws == 512);
  CHECK(after.effective_draws > 100);
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(width(after.stages[i]) < 0.65 * width(before.stages[i]));
    CHECK(after.stages[i].ready.size() == 512);
    CHECK(std::is_sorted(after.stages[i].ready.begin(), after.stages[i].ready.end()));
  }
  // Not yet there far too early says nothing; not yet there late is slow.
  const Forecast early = forecast(process, {}, std::nullopt, {.seen = {{"bulk", 0.2, 90, SeenAs::not_yet}}});
  CHECK(early.stages[1].ready_h == doctest::Approx(before.stages[1].ready_h).epsilon(2e-3));
  const Forecast late = forecast(process, {}, std::nullopt, {.seen = {{"bulk", 3, 90, SeenAs::not_yet}}});
  CHECK(late.stages[1].ready_h > before.stages[1].ready_h + 0.5);
}

TEST_CASE("a surprising look is named, and what is unlike any forecast said to be") {
  const auto has = [](const Forecast& told, std::string_view code) {
    return std::any_of(told.notices.begin(), told.notices.end(), [&](const Notice& its) { return its.code == code; });
  };
  // A slip: it counts little.
  const Forecast slip = forecast(bread(), {}, std::nullopt, {.seen = {{"bulk", 0.1, 90}}});
  CHECK(has(slip, "surprising_look"));
  const StageForecast before = forecast(bread()).stages[1];
  CHECK(std::abs(slip.stages[1].ready_h - before.ready_h) < 0.25 * width(before));
  CHECK(!has(forecast(bread(), {}, std::nullopt, {.seen = {{"bulk", 1.5, 60}}}), "surprising_look"));
  // Three looks agree on a very quick dough: few draws are left, however many are drawn.
  const Forecast quick =
      forecast(bread(), {}, std::nullopt, {.seen = {{"bulk", 0.45, 30}, {"bulk", 0.6, 60}, {"bulk", 0.8, 90}}});
  CHECK(quick.stages[0].ready.size() == 2048);
  CHECK(quick.effective_draws < 100);
  CHECK(has(quick, "unlike_any_forecast"));
}

TEST_CASE("the bulk has ended: the proof is told by the hours that were") {
  Process process = bread();
  std::get<Stage>(process.steps[1]).until_rise_percent.reset();
  std::get<Stage>(process.steps[1]).ends_h = 2;
  const Forecast told = forecast(process, {}, std::nullopt, {.seen = {{"bulk", 2, 70}, {"proof", 2.5, 25}}});
  CHECK(told.stages[0].ready_h == 2);
  CHECK(width(told.stages[1]) < 0.8 * width(forecast(process).stages[1]));
  CHECK(says(refusal(
                 [] {
                   forecast(bread(), {}, std::nullopt, {.seen = {{"proof", 2.5, 25}}});
                 },
                 "steps[1].until_rise_percent"),
             "when stage \"bulk\" ended is not known"));
  CHECK(says(refusal(
                 [] {
                   const State state = simulate(bread(), {}, std::nullopt, {.stop_h = 1}).state;
                   forecast(bread(), {}, state, {.seen = {{"bulk", 1.5, 25}}});
                 },
                 "seen"),
             "does not remember"));
}

TEST_CASE("the next look is early enough to act and tells most of what the end would tell") {
  const NextLook look = next_look(bread());
  const double ready_h = forecast(bread()).stages[0].ready_h;
  CHECK(look.stage == "bulk");
  CHECK(look.time_h < 0.7 * ready_h);
  CHECK(look.told >= 0.8 * look.told_at_end);
  CHECK(look.told_at_end < 1);
  // What it foretells is what seeing it does to the variance of ln time.
  const auto variance = [](const StageForecast& stage) {
    double n = 0, sum = 0, squares = 0;
    for (const double hour : stage.ready) {
      if (!(hour < 1e6)) continue;
      n += 1;
      sum += std::log(hour);
      squares += std::log(hour) * std::log(hour);
    }
    return squares / n - sum / n * (sum / n);
  };
  double after = 0;
  constexpr int kitchens = 24;
  for (const Kitchen& truth : draws_of({}, {.draws = kitchens})) {
    Process to_look = bread();
    to_look.steps.resize(2);
    std::get<Stage>(to_look.steps[1]).until_rise_percent = look.rise_percent;
    const double seen_h = simulate(to_look, truth, std::nullopt, {.every_min = 0}).stages[0].end_h;
    after += variance(forecast(bread(), {}, std::nullopt, {.seen = {{"bulk", seen_h, look.rise_percent}}}).stages[1]);
  }
  CHECK(after / kitchens / variance(forecast(bread()).stages[1]) == doctest::Approx(1 - look.told).epsilon(0.25));
  // Looks that are over are not asked for again.
  const NextLook later = next_look(bread(), "proof", {}, {.seen = {{"bulk", look.time_h, look.rise_percent}}});
  CHECK(later.time_h > look.time_h);
  Process timed = bread();
  timed.steps.resize(2);
  std::get<Stage>(timed.steps[1]).until_rise_percent.reset();
  std::get<Stage>(timed.steps[1]).until_h = 2;
  CHECK(says(refusal([&] { next_look(timed); }, "steps"), "no stage ends by a rise"));
}
