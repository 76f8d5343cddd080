#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

#include <ferment/ferment.hpp>

#include "forecast/look.hpp"
#include "refusal.hpp"

using namespace ferment;

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

Process bulk_for(double until_h) {
  Mix mix;
  mix.formula = {.flour_g = 1000, .water_g = 650, .salt_g = 20, .instant_g = 7};
  mix.dough_c = 24;
  Stage bulk;
  bulk.surroundings = Surroundings::dough(24);
  bulk.until_h = until_h;
  return {.steps = {mix, bulk}};
}

}  // namespace

TEST_CASE("the likelihood of a look, against Boost's distributions") {
  const boost::math::students_t t(4);
  const boost::math::normal z;
  for (const bool is_normal : {false, true}) {
    const Noise noise{.scale = 0.1, .is_normal = is_normal};
    const auto density = [&](double x) { return is_normal ? pdf(z, x) : pdf(t, x); };
    const auto below = [&](double x) { return is_normal ? cdf(z, x) : cdf(t, x); };
    for (const double x : {-40.0, -31.0, -29.0, -8.0, -3.0, -0.4, 0.0, 0.7, 2.5, 6.0}) {
      if (is_normal && x < -30) continue;  // below the smallest double's share
      const double seen = 0.3, expected = seen - 0.1 * x;
      CAPTURE(x);
      CHECK(look_at({SeenAs::at, seen, -never}, expected, noise).log_likelihood ==
            doctest::Approx(std::log(density(x) / 0.1)).epsilon(1e-12));
      CHECK(look_at({SeenAs::past, seen, -never}, expected, noise).log_likelihood ==
            doctest::Approx(std::log(below(x))).epsilon(1e-12));
      CHECK(look_at({SeenAs::not_yet, seen, -never}, expected, noise).log_likelihood ==
            doctest::Approx(std::log(is_normal ? cdf(complement(z, x)) : cdf(complement(t, x)))).epsilon(1e-10));
      CHECK(look_at({SeenAs::past, seen, seen - 0.05}, expected, noise).log_likelihood ==
            doctest::Approx(std::log(x > 0 ? below(0.5 - x) - below(-x) : below(x) - below(x - 0.5))).epsilon(1e-6));
    }
  }
}

TEST_CASE("slope and bend of a look are its derivatives") {
  for (const bool is_normal : {false, true}) {
    const Noise noise{.scale = 0.12, .is_normal = is_normal};
    for (const Look look : {Look{SeenAs::at, 0.4, -never}, Look{SeenAs::not_yet, 0.4, -never},
                            Look{SeenAs::past, 0.4, -never}, Look{SeenAs::past, 0.4, 0.25}}) {
      for (const double expected : {-0.3, 0.2, 0.33, 0.5, 0.9}) {
        const double h = 1e-5;
        const LookAt before = look_at(look, expected - h, noise), at = look_at(look, expected, noise),
                     after = look_at(look, expected + h, noise);
        CHECK(at.slope == doctest::Approx((after.log_likelihood - before.log_likelihood) / (2 * h)).epsilon(1e-6));
        CHECK(at.bend == doctest::Approx((after.slope - before.slope) / (2 * h)).epsilon(1e-5));
      }
    }
  }
}

TEST_CASE("a rise that never comes: not yet is certain, anything else cannot be") {
  CHECK(look_at({SeenAs::not_yet, 1, -never}, never, {}).log_likelihood == 0);
  CHECK(look_at({SeenAs::at, 1, -never}, never, {}).log_likelihood == -never);
  CHECK(look_at({SeenAs::past, 1, -never}, never, {}).log_likelihood == -never);
}

namespace {

/// Hours since the stage began at which a kitchen expects each look's rise: what is left of it where nothing is
/// unknown.
std::vector<double> expected_h(Kitchen kitchen, const Process& process, const std::vector<Sighting>& seen) {
  const std::size_t n = learnable().size();
  kitchen.covariance.assign(n * n, 0.0);
  std::vector<double> hours;
  for (const Residual& residual : calibrate({{.process = process, .seen = seen}}, kitchen).residuals)
    hours.push_back(residual.expected);
  return hours;
}

}  // namespace

TEST_CASE("what a kitchen expects of a look is when its dough has the rise, also beyond the stage's end") {
  const Kitchen kitchen{.gassing_rate = 9};
  const double wanted_h =
      hours_to_rise(90, {.dough_c = 24, .yeast_percent = 0.7, .salt_percent = 2, .water_percent = 65}, kitchen);
  for (const double until_h : {0.25, 1.0, 3.0}) {
    const std::vector<double> expected =
        expected_h(kitchen, bulk_for(until_h), {{"bulk", 0.2, 90}, {"bulk", 0.2, 20, SeenAs::not_yet}});
    CHECK(expected[0] == doctest::Approx(wanted_h).epsilon(1e-9));
    CHECK(expected[1] < expected[0]);
  }
}

TEST_CASE("looks that cannot be are refused, with the way to them") {
  const auto refused = [](const std::vector<Sighting>& seen, const std::string& path) {
    return refusal([&] { calibrate({{.process = bulk_for(2), .seen = seen}}); }, "logs[0]." + path);
  };
  CHECK(says(refused({{"proof", 1, 60}}, "seen[0].stage"), "no stage is named \"proof\"; known: bulk"));
  CHECK(says(refused({{"bulk", 0, 60}}, "seen[0].time_h"), "begins at 0 h"));
  CHECK(says(refused({{"bulk", 1, -5}}, "seen[0].rise_percent"), "rise"));
  CHECK(says(refused({{"bulk", 1, 60, SeenAs::at, 0.5}}, "seen[0].not_yet_h"), "belongs to a rise that was past"));
  CHECK(says(refused({{"bulk", 1, 60, SeenAs::past, 1.5}}, "seen[0].not_yet_h"), "was not yet there at 1.5 h"));
  CHECK(says(refused({{"bulk", 1, 60, SeenAs::past}, {"bulk", 2, 50, SeenAs::not_yet}}, "seen[1]"),
             "a rise does not fall"));
  Process process = bulk_for(2);
  Stage& bulk = std::get<Stage>(process.steps[1]);
  bulk.until_h.reset();
  bulk.until_rise_percent = 90;
  Stage proof = bulk;
  proof.name = "proof";
  process.steps.emplace_back(proof);
  const std::vector<Sighting> late{{"proof", 3, 40}};
  CHECK(says(refusal([&] { calibrate({{.process = process, .seen = late}}); }, "steps[1].until_rise_percent"),
             "when stage \"bulk\" ended"));
}

TEST_CASE(
    "a height and a temperature are those of the dough at that hour, an over-proofed one is past its highest rise") {
  Mix mix;
  mix.formula = {.flour_g = 1000, .water_g = 650, .salt_g = 20, .instant_g = 7};
  mix.dough_c = 25;
  Stage bulk;
  bulk.surroundings = Surroundings::room(18);
  bulk.until_rise_percent = 100;
  bulk.folds_h = {0.5};
  const Process process{.steps = {mix, bulk}};
  Process watched = process;
  std::get<Stage>(watched.steps[1]).until_rise_percent.reset();
  std::get<Stage>(watched.steps[1]).until_h = 1.75;
  const Timeline told = simulate(watched);
  const Calibration learned =
      calibrate({{.process = process,
                  .seen = {{"bulk", 1.75, told.rise_percent.back(), SeenAs::height},
                           {.stage = "bulk", .time_h = 1.75, .was = SeenAs::dough, .dough_c = told.mean_c.back()}}}});
  // What the default kitchen would have made of it is what it makes of it now: nothing was to be learned.
  CHECK(learned.residuals[0].expected == doctest::Approx(told.rise_percent.back()).epsilon(1e-5));
  CHECK(learned.residuals[1].expected == doctest::Approx(told.mean_c.back()).epsilon(1e-6));
  CHECK(learned.kitchen.gassing_rate == doctest::Approx(11).epsilon(1e-4));
  const std::vector<Learned> rows = learned_of(learned.kitchen);
  const auto share = [&](std::string_view name) {
    for (const Learned& row : rows) {
      if (row.name == name) return row.share;
    }
    return 0.0;
  };
  CHECK(share("gassing_rate") < 0.8);
  CHECK(share("piece_heat_loss_factor") < 0.97);
  // Over-proofed at an hour is late by the highest acceptable rise, 150 % of 100.
  const Timeline whole = simulate(process, {}, std::nullopt, {.every_min = 0});
  Process further = process;
  std::get<Stage>(further.steps[1]).until_rise_percent = 150;
  const double highest_h = simulate(further, {}, std::nullopt, {.every_min = 0}).stages[0].end_h;
  const double look_h = whole.stages[0].end_h;
  const Calibration over =
      calibrate({{.process = process, .seen = {{.stage = "bulk", .time_h = look_h, .was = SeenAs::over_proofed}}}});
  CHECK(over.residuals[0].expected == doctest::Approx(highest_h).epsilon(1e-4));
  CHECK(over.kitchen.gassing_rate > 11);
}

TEST_CASE("looks without what belongs to them, and after the end of their stage") {
  const auto refused = [](const Sighting& seen, double until_h = 1) {
    return refusal([&] { calibrate({{.process = bulk_for(until_h), .seen = {seen}}}); }, "logs[0].seen[0].dough_c");
  };
  CHECK(says(refused({.stage = "bulk", .time_h = 0.5, .was = SeenAs::dough}), "temperature is not given"));
  CHECK(says(refused({.stage = "bulk", .time_h = 0.5, .rise_percent = 20, .dough_c = 22}), "says nothing of a rise"));
  const auto at = [](const std::string& path, const Sighting& seen) {
    return refusal([&] { calibrate({{.process = bulk_for(1), .seen = {seen}}}); }, path);
  };
  CHECK(says(at("logs[0].seen[0].rise_percent", {.stage = "bulk", .time_h = 0.5}), "which rise was seen"));
  CHECK(says(at("logs[0].seen[0].time_h", {.stage = "bulk", .time_h = 2, .rise_percent = 20}), "ended at 1 h"));
  CHECK(says(at("logs[0].seen[0].was", {.stage = "bulk", .time_h = 0.9, .was = SeenAs::over_proofed}),
             "which ends by a time, is not known"));
}
