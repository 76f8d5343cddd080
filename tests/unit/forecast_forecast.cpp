#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <tuple>
#include <vector>

#include <ferment/ferment.hpp>

#include "rolls.hpp"

using namespace ferment;

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

/// The day with a bulk that ends by a time.
void end_bulk(Process& day, double until_h) {
  Stage& bulk = std::get<Stage>(day.steps[1]);
  bulk.until_h = until_h;
  bulk.until_rise_percent.reset();
}

Process a_day() { return day_of_rolls(Surroundings::room(18), {.until_rise_percent = 90}); }

}  // namespace

TEST_CASE("quantiles of rising values, some of them never") {
  const std::vector<double> values{1, 2, 4, 8, never};
  CHECK(quantile(values, 0) == 1);
  CHECK(quantile(values, 0.5) == 4);
  CHECK(quantile(values, 0.125) == 1.5);
  CHECK(quantile(values, 0.8) == never);
  CHECK(quantile(values, 1) == never);
  CHECK_THROWS_AS(quantile(values, 1.1), InvalidInput);
  CHECK_THROWS_AS(quantile({}, 0.5), InvalidInput);
}

TEST_CASE("draws follow a covariance that is not diagonal") {
  const std::vector<Parameter> rows = learnable();
  const std::size_t n = rows.size();
  Kitchen kitchen{.bake_sd = 0, .model_sd = 0};
  kitchen.covariance = covariance_of(kitchen);
  std::size_t rate = 0, capacity = 0;
  for (std::size_t i = 0; i < n; ++i) {
    if (rows[i].value == &Kitchen::gassing_rate) rate = i;
    if (rows[i].value == &Kitchen::gas_capacity) capacity = i;
  }
  const double joint = -0.8 * 0.3 * 0.2;
  kitchen.covariance[rate * n + capacity] = kitchen.covariance[capacity * n + rate] = joint;
  double sum_xx = 0, sum_yy = 0, sum_xy = 0;
  const std::vector<Kitchen> draws = draws_of(kitchen, {.draws = 4096});
  for (const Kitchen& draw : draws) {
    const double x = std::log(draw.gassing_rate / kitchen.gassing_rate),
                 y = std::log(draw.gas_capacity / kitchen.gas_capacity);
    sum_xx += x * x, sum_yy += y * y, sum_xy += x * y;
    CHECK_NOTHROW(require_parameters(draw));
  }
  CHECK(sum_xx / 4096 == doctest::Approx(0.09).epsilon(0.03));
  CHECK(sum_yy / 4096 == doctest::Approx(0.04).epsilon(0.03));
  CHECK(sum_xy / 4096 == doctest::Approx(joint).epsilon(0.05));
}

TEST_CASE("a kitchen without uncertainty has a forecast without width: the simulation") {
  const std::size_t n = learnable().size();
  Kitchen sure{.bake_sd = 0, .model_sd = 0};
  sure.covariance.assign(n * n, 0.0);
  const Process day = a_day();
  const Forecast told = forecast(day, sure, std::nullopt, {.draws = 8, .tolerance = 1e-5});
  const Timeline timeline = simulate(day, sure);
  REQUIRE(told.stages.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(interval_h(told.stages[i]) == std::pair(told.stages[i].ready_h, told.stages[i].ready_h));
    CHECK(told.stages[i].ready_h == doctest::Approx(timeline.stages[i].end_h).epsilon(1e-12));
    CHECK(told.stages[i].over_proofed_h == doctest::Approx(*timeline.stages[i].over_proofed_h).epsilon(1e-9));
    CHECK(told.stages[i].be_back_by_h == doctest::Approx(*timeline.stages[i].be_back_by_h).epsilon(1e-9));
  }
  // The window is 75 to 150 % of a rise, 80 to 133 % of a final proof's (common practice, no source); read
  // off the legs as they are, not solved anew.
  const auto hour_of = [&](std::size_t stage, double share) {
    Process asked = day;
    *std::get<Stage>(asked.steps[stage + 1]).until_rise_percent *= share;
    return simulate(asked, sure).stages[stage].end_h;
  };
  const std::pair<double, double> shares[] = {{0.75, 1.5}, {0.80, 1.33}};
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(told.stages[i].window_h.first == doctest::Approx(hour_of(i, shares[i].first)).epsilon(1e-5));
    CHECK(told.stages[i].window_h.second == doctest::Approx(hour_of(i, shares[i].second)).epsilon(1e-5));
  }
}

TEST_CASE("yeast for an hour, and the hour with that yeast") {
  const Process day = a_day();
  const ForecastOptions few{.draws = 32};
  const double ready_h = forecast(day, {}, std::nullopt, few).stages[1].ready_h + 1;
  const Choice choice = yeast_for(day, {"proof", ready_h}, 0.1, {}, std::nullopt, few);
  CHECK(choice.ready_h == doctest::Approx(ready_h).epsilon(1e-8));
  CHECK(choice.value < 5);
  CHECK(choice.rounded == doctest::Approx(std::round(10 * choice.value) / 10).epsilon(1e-12));
  CHECK(forecast(choice.process, {}, std::nullopt, few).stages[1].ready_h ==
        doctest::Approx(choice.rounded_ready_h).epsilon(1e-9));
  CHECK_THROWS_AS(yeast_for(day, {"proof", 0.2}, 0, {}, std::nullopt, few), NoSolution);
  CHECK_THROWS_AS(yeast_for(day, {"oven", 5}, 0, {}, std::nullopt, few), InvalidInput);
}

TEST_CASE("asked for the hour that the forecast gives, the present choice is an answer") {
  const ForecastOptions few{.draws = 64};
  for (const auto& [until_h, instant_g, dough_c] :
       {std::tuple{2.4, 1.84, 24.0}, std::tuple{13.0, 0.65, 24.0}, std::tuple{9.0, 0.6, 22.0}}) {
    const double hours = until_h;
    CAPTURE(hours);
    Process day = a_day();
    Mix& mix = std::get<Mix>(day.steps[0]);
    mix.formula = {.flour_g = 500, .water_g = 325, .salt_g = 10, .instant_g = instant_g};
    mix.dough_c.reset();
    mix.room_c = 23.2;
    mix.formula.water_c = dough_c + 6.5;
    end_bulk(day, until_h);
    for (const std::size_t step : {std::size_t{1}, std::size_t{2}})
      std::get<Stage>(day.steps[step]).surroundings = Surroundings::room(23.2);
    const double ready_h = forecast(day, {}, std::nullopt, few).stages[1].ready_h;
    const auto has = [](const Choice& choice, double present) {
      return std::any_of(choice.all.begin(), choice.all.end(),
                         [&](double each) { return std::abs(each - present) <= 1e-6 * present; });
    };
    CHECK(has(yeast_for(day, {"proof", ready_h}, 0, {}, std::nullopt, few), instant_g));
    CHECK(has(water_for(day, {"proof", ready_h}, {}, std::nullopt, few), dough_c + 6.5));
    CHECK(has(room_for(day, {"proof", ready_h}, Air::room, {}, std::nullopt, few), 23.2));
  }
}

TEST_CASE("of a stage that ends by a time any dose is on time, or none") {
  Process day = a_day();
  end_bulk(day, 6);
  const ForecastOptions few{.draws = 32};
  const Choice any = yeast_for(day, {"bulk", 6}, 0, {}, std::nullopt, few);
  CHECK(any.value == doctest::Approx(5));
  REQUIRE(any.notices.size() >= 1);
  CHECK(any.notices.back().code == "any_choice");
  try {
    yeast_for(day, {"bulk", 7}, 0, {}, std::nullopt, few);
    FAIL("7 h cannot be had");
  } catch (const NoSolution& refused) {
    CHECK(refused.problem().find("stage \"bulk\" ends by a time: with any dose of yeast it is ready at 6 h") == 0);
    CHECK(refused.detail().ranges == std::vector<std::pair<double, double>>{{6.0, 6.0}});
  }
}

TEST_CASE("an hour that the median jumps over is refused with what is left on both sides") {
  // The dough goes into the refrigerator: half of the doughs are ready before that, the others long after.
  Process day = a_day();
  end_bulk(day, 6);
  const double ready_h = forecast(day).stages[1].ready_h;
  const auto moved_for = [&](double wanted_h) {
    return refrigerate_from(day, {"proof", wanted_h}, "proof", Surroundings::refrigerator(3));
  };
  try {
    moved_for(ready_h + 3);
    FAIL("the median jumps over this hour");
  } catch (const NoSolution& refused) {
    const auto& ranges = refused.detail().ranges;
    const auto after =
        std::find_if(ranges.begin(), ranges.end(), [&](const auto& range) { return range.second > ready_h + 3; });
    REQUIRE((after != ranges.begin() && after != ranges.end()));
    CHECK(after->first > ready_h + 3);
    CHECK(std::string(refused.what()).find(" h, or ") != std::string::npos);
    CHECK((after - 1)->second < ready_h + 3);
  }
}

TEST_CASE("a dough that is over-proofed after days is told so alike by simulation and forecast") {
  Process day = a_day();
  std::get<Mix>(day.steps[0]).formula = {.flour_g = 500, .water_g = 325, .salt_g = 10, .instant_g = 1.5};
  end_bulk(day, 2);
  std::get<Stage>(day.steps[1]).handling = {};
  Stage& proof = std::get<Stage>(day.steps[2]);
  proof.surroundings = Surroundings::refrigerator(4);
  proof.until_rise_percent = 40;
  const StageResult central = simulate(day).stages[1];
  const StageForecast told = forecast(day).stages[1];
  CHECK_FALSE(central.over_proofed_h.has_value());  // more than 48 h after its end
  CHECK(*central.be_back_by_h < central.end_h + 48);
  CHECK(told.be_back_by_h < told.ready_h + 48);    // one dough in ten is sooner
  CHECK(told.over_proofed_h > told.ready_h + 48);  // and half of them are followed until they are
  CHECK(told.over_proofed_h < never);
  proof.surroundings = Surroundings::refrigerator(1);
  const StageForecast colder = forecast(day).stages[1];
  CHECK((colder.be_back_by_h < never || colder.over_proofed_h == never));
}

namespace {

/// A kitchen of which nothing but the gassing rate is unknown.
Kitchen sure_but_for_its_rate(double ln_sd) {
  const std::vector<Parameter> rows = learnable();
  Kitchen kitchen;
  kitchen.covariance.assign(rows.size() * rows.size(), 0.0);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].value == &Kitchen::gassing_rate) kitchen.covariance[i * rows.size() + i] = ln_sd * ln_sd;
  }
  return kitchen;
}

}  // namespace

TEST_CASE("be back by is the hour by which nine in ten draws are not too late, draw by draw") {
  const Process day = a_day();
  const Kitchen kitchen = sure_but_for_its_rate(0.3);
  std::vector<double> over_h, late_h, ready_h;
  for (const Kitchen& draw : draws_of(kitchen, {.draws = 64})) {
    const StageResult proof = simulate(day, draw, std::nullopt, {.every_min = 0}).stages[1];
    over_h.push_back(*proof.over_proofed_h);
    late_h.push_back(*proof.be_back_by_h);
    ready_h.push_back(proof.end_h);
    CHECK(*proof.be_back_by_h <= *proof.over_proofed_h);
  }
  const StageForecast told = forecast(day, kitchen, std::nullopt, {.draws = 64, .tolerance = 1e-5}).stages[1];
  // Of the doughs that are ready at an hour, those that are past their window by then do not count.
  for (double hour = ready_h.front() - 1; hour < ready_h.front() + 4; hour += 0.125) {
    double in_time = 0;
    for (std::size_t i = 0; i < 64; ++i) in_time += ready_h[i] <= hour && hour < late_h[i];
    CHECK(share_ready(told, hour) == in_time / 64);
  }
  CHECK(share_ready(told, never) == 0);
  CHECK_THROWS_AS(share_ready(told, std::nan("")), InvalidInput);
  std::sort(over_h.begin(), over_h.end());
  std::sort(late_h.begin(), late_h.end());
  const double at = 0.1 * 63, below = late_h[6], above = late_h[7];
  CHECK(told.be_back_by_h == doctest::Approx(below + (at - 6) * (above - below)).epsilon(1e-3));
  CHECK(told.over_proofed_h == doctest::Approx((over_h[31] + over_h[32]) / 2).epsilon(1e-3));
}

TEST_CASE("what one log leaves of the interval, by the normal law") {
  // Hours go with the rate's power e, by hand from two doses of the rate; the log has a scale of 0.10 of the hours.
  Process day = a_day();
  day.steps.resize(2);
  const auto hours_at = [&](double factor) {
    Kitchen kitchen;
    kitchen.gassing_rate *= factor;
    return simulate(day, kitchen, std::nullopt, {.every_min = 0}).stages[0].end_h;
  };
  const double hours = hours_at(1), e = std::log(hours_at(0.95) / hours_at(1.05)) / std::log(1.05 / 0.95);
  for (const double ln_sd : {0.15, 0.3}) {
    const StageForecast told = forecast(day, sure_but_for_its_rate(ln_sd)).stages[0];
    const double kitchens = std::pow(e * ln_sd * hours, 2), batch = std::pow(e * 0.12 * hours, 2),
                 log = batch + std::pow(0.10 * hours, 2);
    const double left = std::sqrt((kitchens * log / (kitchens + log) + batch) / (kitchens + batch));
    CHECK(told.interval_length_after_one_log_h / (interval_h(told).second - interval_h(told).first) ==
          doctest::Approx(left).epsilon(0.05));
  }
}

TEST_CASE("a dough goes into the refrigerator at the hour that is told, no sooner") {
  const Process day = a_day();
  const ForecastOptions few{.draws = 64};
  const double wanted_h = forecast(day, {}, std::nullopt, few).stages[0].ready_h + 0.5;
  const Choice choice = refrigerate_from(day, {.stage = "bulk", .ready_h = wanted_h}, "bulk",
                                         Surroundings::refrigerator(8), {}, std::nullopt, few);
  const auto& places = std::get<Stage>(choice.process.steps[1]).surroundings.places;
  REQUIRE(places.size() == 2);
  CHECK(places[1].from_h == choice.value);
  CHECK(forecast(choice.process, {}, std::nullopt, few).stages[0].ready_h == doctest::Approx(wanted_h).epsilon(1e-5));
}

TEST_CASE("what the default tolerance leaves of the hours, in rooms that are steady, that swing and that change") {
  const Surroundings cold_night = Surroundings::sequence(
      {{-100, Surroundings::room(21)}, {2, Surroundings::refrigerator(5)}, {11, Surroundings::room(21)}});
  double ready = 0, window = 0, over = 0;
  std::size_t hours = 0;
  const auto apart = [&](double& worst, double a, double b) {
    CHECK((a < never) == (b < never));
    if (!(a < never && b < never)) return;
    worst = std::max(worst, std::abs(a - b));
    ++hours;
  };
  for (const Surroundings& around : {Surroundings::room(16), Surroundings::room(24), Surroundings::room(30),
                                     Surroundings{{{.swing = DailySwing{19, 3}}}}, cold_night}) {
    for (const BulkEnd& end : {BulkEnd{.until_h = 3}, BulkEnd{.until_rise_percent = 80}}) {
      const Process day = day_of_rolls(around, end);
      const Forecast usual = forecast(day, {}, {}, {.draws = 64});
      const Forecast close = forecast(day, {}, {}, {.draws = 64, .tolerance = 1e-7});
      for (std::size_t i = 0; i < usual.stages.size(); ++i) {
        const StageForecast &a = usual.stages[i], &b = close.stages[i];
        apart(ready, a.ready_h, b.ready_h);
        apart(window, a.window_h.first, b.window_h.first);
        apart(window, a.window_h.second, b.window_h.second);
        apart(window, a.look_first_h, b.look_first_h);
        apart(over, a.be_back_by_h, b.be_back_by_h);
        apart(over, a.over_proofed_h, b.over_proofed_h);
      }
    }
  }
  MESSAGE(hours, " hours; worst: ready ", ready, " h, window ", window, " h, over-proofed ", over, " h");
  CHECK(hours > 100);
  CHECK(ready <= 1e-6);
  CHECK(window <= 5e-4);
  CHECK(over <= 5e-4);
}
