#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <vector>

#include <ferment/ferment.hpp>

using namespace ferment;

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

Process a_day() {
  Mix mix;
  mix.formula = {.flour_g = 900, .water_g = 600, .salt_g = 18, .instant_g = 5};
  mix.dough_c = 24;
  Stage bulk;
  bulk.surroundings = Surroundings::room(18);
  bulk.until = UntilRise{90};
  bulk.handling = {Handling::divide, Handling::round};
  Stage proof = bulk;
  proof.name = "proof";
  proof.piece.shape = Ball{};
  proof.piece.pieces = 12;
  proof.until = UntilRise{65};
  proof.final_proof = true;
  return {.steps = {mix, bulk, proof}};
}

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
  Kitchen kitchen;
  kitchen.covariance = covariance_of(kitchen);
  std::size_t rate = 0, capacity = 0;
  for (std::size_t i = 0; i < n; ++i) {
    if (rows[i].value == &Kitchen::gassing_rate) rate = i;
    if (rows[i].value == &Kitchen::gas_capacity) capacity = i;
  }
  const double joint = -0.8 * 0.3 * 0.2;
  kitchen.covariance[rate * n + capacity] = kitchen.covariance[capacity * n + rate] = joint;
  double sum_xx = 0, sum_yy = 0, sum_xy = 0;
  const std::vector<Kitchen> draws = draws_of(kitchen, 4096, 0);
  for (const Kitchen& draw : draws) {
    const double x = std::log(draw.gassing_rate / kitchen.gassing_rate), y = std::log(draw.gas_capacity / kitchen.gas_capacity);
    sum_xx += x * x, sum_yy += y * y, sum_xy += x * y;
    CHECK_NOTHROW(check_parameters(draw));
  }
  CHECK(sum_xx / 4096 == doctest::Approx(0.09).epsilon(0.03));
  CHECK(sum_yy / 4096 == doctest::Approx(0.04).epsilon(0.03));
  CHECK(sum_xy / 4096 == doctest::Approx(joint).epsilon(0.05));
}

TEST_CASE("a kitchen without uncertainty has a forecast without width: the simulation") {
  const std::size_t n = learnable().size();
  Kitchen sure;
  sure.covariance.assign(n * n, 0.0);
  const Process day = a_day();
  const Forecast told = forecast(day, sure, std::nullopt, {.draws = 8, .batch_sd = 0, .tolerance = 1e-5});
  const Timeline timeline = simulate(day, sure);
  REQUIRE(told.stages.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(told.stages[i].interval_h == 0);
    CHECK(told.stages[i].ready_h == doctest::Approx(timeline.stages[i].end_h).epsilon(1e-12));
    CHECK(told.stages[i].over_proofed_h == doctest::Approx(*timeline.stages[i].be_back_by_h).epsilon(1e-9));
    CHECK(told.stages[i].be_back_by_h == told.stages[i].over_proofed_h);
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
  CHECK(forecast(choice.process, {}, std::nullopt, few).stages[1].ready_h == doctest::Approx(choice.rounded_ready_h).epsilon(1e-9));
  CHECK_THROWS_AS(yeast_for(day, {"proof", 0.2}, 0, {}, std::nullopt, few), NoSolution);
  CHECK_THROWS_AS(yeast_for(day, {"oven", 5}, 0, {}, std::nullopt, few), InvalidInput);
}
