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
