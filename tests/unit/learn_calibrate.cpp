#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>
#include <string>
#include <vector>

#include <ferment/ferment.hpp>

#include "refusal.hpp"

using namespace ferment;

namespace {

struct Rise {
  double dough_c, yeast_percent, rise_percent;
};

Log log_of(const Rise& rise, double time_h, SeenAs was = SeenAs::at) {
  Mix mix;
  mix.formula = {.flour_g = 1000, .water_g = 650, .salt_g = 20, .instant_g = 10 * rise.yeast_percent};
  mix.dough_c = rise.dough_c;
  Stage bulk;
  bulk.surroundings = Surroundings::dough(rise.dough_c);
  bulk.until_h = time_h;
  return {.process = {.steps = {mix, bulk}}, .seen = {{"bulk", time_h, rise.rise_percent, was}}};
}

double hours(const Rise& rise, const Kitchen& kitchen) {
  return hours_to_rise(rise.rise_percent, {.dough_c = rise.dough_c, .yeast_percent = rise.yeast_percent}, kitchen);
}

std::size_t index_of(std::string_view name) {
  const std::vector<Parameter> rows = learnable();
  return static_cast<std::size_t>(
      std::find_if(rows.begin(), rows.end(), [&](const auto& p) { return p.name == name; }) - rows.begin());
}

/// A kitchen of which nothing but the gassing rate is unknown.
Kitchen sure_but_for_its_rate() {
  const std::size_t n = learnable().size(), rate = index_of("gassing_rate");
  Kitchen kitchen;
  kitchen.covariance.assign(n * n, 0.0);
  kitchen.covariance[rate * n + rate] = 0.3 * 0.3;
  return kitchen;
}

double share_of(const Calibration& told, std::string_view name = "gassing_rate") {
  return learned_of(told.kitchen)[index_of(name)].share;
}

double log_t4(double x) { return std::log(0.375) - 2.5 * std::log1p(x * x / 4); }

constexpr Rise usual{24, 0.7, 90};

}  // namespace

TEST_CASE("one unknown: mode and width by brute force over rate and bake") {
  const Kitchen prior = sure_but_for_its_rate();
  const double bake_sd = std::hypot(prior.bake_sd, prior.model_sd);
  const std::vector<Rise> rises{usual, {19, 0.4, 60}, {26, 1.1, 120}};
  std::vector<Log> logs;
  std::vector<double> seen;
  for (const Rise& rise : rises) {
    seen.push_back(0.8 * hours(rise, prior));  // a quick yeast
    logs.push_back(log_of(rise, seen.back()));
  }
  const Calibration told = calibrate(logs, prior);
  // ln of the posterior at ln rate = ln 11 + 0.3 z, the bake integrated by a fine sum.
  std::vector<double> z_of, log_posterior;
  for (double z = -1; z <= 2.5; z += 0.02) {
    double sum = -0.5 * z * z;
    for (std::size_t i = 0; i < rises.size(); ++i) {
      double marginal = 0;
      for (double b = -3.5; b <= 3.5; b += 0.1) {
        Kitchen kitchen = prior;
        kitchen.gassing_rate *= std::exp(0.3 * z + bake_sd * b);
        const double x = std::log(seen[i] / hours(rises[i], kitchen)) / 0.10;
        marginal += std::exp(log_t4(x) - 0.5 * b * b) * 0.1;
      }
      sum += std::log(marginal);
    }
    z_of.push_back(z);
    log_posterior.push_back(sum);
  }
  const auto top =
      static_cast<std::size_t>(std::max_element(log_posterior.begin(), log_posterior.end()) - log_posterior.begin());
  // The parabola through the top three.
  const double low = log_posterior[top - 1], middle = log_posterior[top], high = log_posterior[top + 1];
  const double mode = z_of[top] + 0.02 * 0.5 * (low - high) / (low - 2 * middle + high);
  double weight = 0, mean = 0, square = 0;
  for (std::size_t i = 0; i < z_of.size(); ++i) {
    const double w = std::exp(log_posterior[i] - middle);
    weight += w, mean += w * z_of[i], square += w * z_of[i] * z_of[i];
  }
  mean /= weight;
  const double sd = std::sqrt(square / weight - mean * mean);
  const Learned rate = learned_of(told.kitchen)[index_of("gassing_rate")];
  MESSAGE("mode ", mode, ", mean ", mean, ", sd ", sd, "; share ", rate.share);
  // The fit takes ln time as linear in the bake, which is right to second order in its spread: to a twentieth of an sd.
  CHECK(std::abs(std::log(told.kitchen.gassing_rate / 11) / 0.3 - mode) < 0.05 * sd);
  CHECK(rate.share == doctest::Approx(sd).epsilon(0.05));
  CHECK(told.kitchen.covariance[index_of("gassing_rate") * learnable().size() + index_of("gassing_rate")] ==
        doctest::Approx(rate.sd * rate.sd).epsilon(1e-12));
  CHECK(has_learned(told.kitchen));
  // Corrected by importance weights it is the posterior's own mean and width, whose skewness Laplace does not see.
  const Calibration corrected = calibrate(logs, prior, {.importance = 4000});
  CHECK(std::abs(std::log(corrected.kitchen.gassing_rate / 11) / 0.3 - mean) < 0.03 * sd);
  CHECK(share_of(corrected) == doctest::Approx(sd).epsilon(0.02));
  REQUIRE(corrected.k_hat.has_value());
  CHECK(*corrected.k_hat < 0.7);
  // What cannot be learned stays where it was.
  for (const Learned& row : learned_of(told.kitchen)) {
    if (row.name == "gassing_rate") continue;
    CHECK(row.sd == 0);
  }
}

TEST_CASE("a look at what one expects moves nothing and narrows; bounds count by their side") {
  const Kitchen prior;
  const double expected_h = hours(usual, prior);
  const Calibration exact = calibrate({log_of(usual, expected_h)});
  CHECK(exact.kitchen.gassing_rate == doctest::Approx(11).epsilon(2e-3));
  CHECK(share_of(exact) < 0.8);
  CHECK(share_of(exact) > 0.5);
  CHECK(share_of(exact, "q10") == 1);  // of another law
  const double slower = calibrate({log_of(usual, expected_h, SeenAs::not_yet)}).kitchen.gassing_rate;
  const double faster = calibrate({log_of(usual, expected_h, SeenAs::past)}).kitchen.gassing_rate;
  CHECK(slower < 11);
  CHECK(faster > 11);
  // What is far from a bound says next to nothing.
  CHECK(calibrate({log_of(usual, 0.2 * expected_h, SeenAs::not_yet)}).kitchen.gassing_rate ==
        doctest::Approx(11).epsilon(5e-3));
  // Between two hours is more than either of them.
  Log between = log_of(usual, 1.05 * expected_h, SeenAs::past);
  between.seen[0].not_yet_h = 0.95 * expected_h;
  CHECK(share_of(calibrate({between})) < share_of(calibrate({log_of(usual, expected_h, SeenAs::past)})));
}

TEST_CASE("two looks at one bake tell less of the kitchen than looks at two bakes") {
  const Kitchen prior;
  const double first_h = hours({24, 0.7, 60}, prior), second_h = hours(usual, prior);
  Log both = log_of(usual, 0.8 * second_h);
  both.seen.push_back({"bulk", 0.8 * first_h, 60});
  const Calibration one_bake = calibrate({both}),
                    two_bakes = calibrate({log_of(usual, 0.8 * second_h), log_of({24, 0.7, 60}, 0.8 * first_h)});
  CHECK(share_of(one_bake) > share_of(two_bakes));
  CHECK(one_bake.kitchen.gassing_rate < two_bakes.kitchen.gassing_rate);
  CalibrateOptions alone{.bake_effect = false};
  CHECK(share_of(calibrate({both}, prior, alone)) < share_of(one_bake));
}

TEST_CASE("a typo among ten logs counts little and is named") {
  std::mt19937 random(20267);
  std::normal_distribution<double> normal;
  Kitchen truth;
  truth.gassing_rate = 13;
  std::vector<Log> logs;
  for (int i = 0; i < 10; ++i) {
    const Rise rise{18.0 + i, 0.3 + 0.1 * i, 50.0 + 10 * i};
    logs.push_back(log_of(rise, hours(rise, truth) * std::exp(0.1 * normal(random))));
  }
  const Calibration without = calibrate({logs.begin() + 1, logs.end()});
  for (const auto& [factor, words] : {std::pair{1.0 / 60, "hours for minutes"}, std::pair{0.1, "a digit lost"}}) {
    std::vector<Log> wrong = logs;
    const Rise first{18, 0.3, 50};
    wrong[0] = log_of(first, factor * hours(first, truth));
    const Calibration told = calibrate(wrong);
    const std::size_t rate = index_of("gassing_rate");
    const double moved_by = std::log(told.kitchen.gassing_rate / without.kitchen.gassing_rate);
    CHECK(std::abs(moved_by) < 0.3 * learned_of(without.kitchen)[rate].sd);
    REQUIRE(told.notices.size() == 1);
    CHECK(told.notices[0].code == "surprising_log");
    CHECK(told.notices[0].values[0].second == 0);
    CHECK(told.residuals[0].explanation == words);
    CHECK(told.residuals[0].standardised < -3);
  }
}

TEST_CASE("intervals of a learned kitchen hold the truth as often as they say") {
  // Logbooks of the prior, every parameter drawn; of 60 logbooks with a coverage of 0.5 and 0.9, between these bounds
  // with a probability of 0.999 (binomial).
  constexpr int books = 60;
  std::mt19937 random(20268);
  std::normal_distribution<double> normal;
  std::student_t_distribution<double> t4(4);
  std::uniform_real_distribution<double> uniform;
  const std::vector<Parameter> rows = learnable();
  std::vector<int> in_half(rows.size()), in_nine(rows.size());
  int next_in_half = 0, next_in_nine = 0;
  double share = 0;
  for (int book = 0; book < books; ++book) {
    Kitchen truth;
    for (bool is_inside = false; !is_inside;) {
      truth = {};
      is_inside = true;
      for (const Parameter& p : rows) {
        double& value = truth.*p.value;
        value = moved(p, value, p.prior_sd * normal(random));
        is_inside &= value > p.low && value < p.high;
      }
      is_inside &= truth.retention_limit > truth.retention_onset + 0.3;
    }
    const auto of_a_bake = [&](const Rise& rise) {
      Kitchen kitchen = truth;
      kitchen.gassing_rate *= std::exp(std::hypot(0.12, 0.08) * normal(random));
      try {
        return hours(rise, kitchen);
      } catch (const NoSolution&) {
        return 1e6;
      }
    };
    const auto a_rise = [&] {
      return Rise{16 + 12 * uniform(random), 0.1 * std::pow(15, uniform(random)), 30 + 90 * uniform(random)};
    };
    std::vector<Log> logs;
    for (int i = 0; i < 5; ++i) {
      const Rise rise = a_rise();
      const double logged_h = of_a_bake(rise) * std::exp(0.1 * t4(random));
      if (logged_h > 20) {
        logs.push_back(log_of(rise, 20, SeenAs::not_yet));
      } else if (uniform(random) < 0.3) {  // one look by the clock
        const double look_h = hours(rise, {}) * std::exp(0.4 * normal(random));
        logs.push_back(log_of(rise, look_h, logged_h > look_h ? SeenAs::not_yet : SeenAs::past));
      } else {
        logs.push_back(log_of(rise, logged_h));
      }
    }
    const Calibration told = calibrate(logs);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const Parameter& p = rows[i];
      const double off = learned_of(told.kitchen)[i].sd;
      const auto between = [&](double sds) {
        const double learned = told.kitchen.*p.value, value = truth.*p.value;
        return value > moved(p, learned, -sds * off) && value < moved(p, learned, sds * off);
      };
      in_half[i] += between(0.6745);
      in_nine[i] += between(1.6449);
    }
    share += share_of(told);
    const Rise next = a_rise();
    const double true_h = of_a_bake(next);
    Mix mix = std::get<Mix>(log_of(next, 1).process.steps[0]);
    Stage bulk = std::get<Stage>(log_of(next, 1).process.steps[1]);
    bulk.until_h.reset();
    bulk.until_rise_percent = next.rise_percent;
    const StageForecast foretold =
        forecast({.steps = {mix, bulk}}, told.kitchen, std::nullopt, {.draws = 128}).stages[0];
    const auto holds = [&](double level) {
      const auto [early, late] = interval_h(foretold, level);
      return early < true_h && true_h < late;
    };
    next_in_half += holds(0.5);
    next_in_nine += holds(0.9);
  }
  const auto check = [&](const std::string& what, int half, int nine) {
    INFO(what, ": ", half, " and ", nine, " of ", books);
    CHECK(half >= 17);
    CHECK(half <= 43);
    CHECK(nine >= 45);
  };
  for (std::size_t i = 0; i < rows.size(); ++i) check(std::string(rows[i].name), in_half[i], in_nine[i]);
  check("next rise", next_in_half, next_in_nine);
  MESSAGE("next rise: ", next_in_half, " and ", next_in_nine, " of ", books, " in their intervals; share of the rate ",
          share / books);
  CHECK(share / books < 0.6);
}

TEST_CASE("a whole day: what was seen of bulk and proof, with the hours at which the dough was really handled") {
  Process day;
  Mix mix;
  mix.formula = {.flour_g = 900, .water_g = 600, .salt_g = 18, .instant_g = 5};
  mix.dough_c = 24;
  Stage bulk, rest, proof;
  bulk.surroundings = rest.surroundings = proof.surroundings = Surroundings::room(19);
  bulk.until_h = 2.5;
  bulk.handling = {Handling::divide, Handling::round};
  rest = bulk;
  rest.name = "rest";
  rest.until_h = 0.3;
  rest.handling = {Handling::mould};
  proof.name = "proof";
  proof.piece = {.shape = Shape::oblong, .pieces = 2};
  proof.until_h = 1.5;
  day.steps = {mix, bulk, rest, proof};
  Kitchen truth;
  truth.gassing_rate = 14;
  truth.kept_by_mould = 0.3;
  const Timeline real = simulate(day, truth);
  std::vector<Sighting> seen;
  for (std::size_t row = 0; row < real.time_h.size(); ++row) {
    const double hour = real.time_h[row];
    const bool is_look = std::abs(hour - 1) < 1e-9 || std::abs(hour - 2) < 1e-9 || std::abs(hour - 4) < 1e-9;
    if (is_look) seen.push_back({real.stages[real.stage[row]].name, hour, real.rise_percent[row]});
  }
  REQUIRE(seen.size() == 3);
  const std::vector<Log> logs(5, Log{.process = day, .seen = seen});
  const Calibration told = calibrate(logs);
  CHECK(told.kitchen.gassing_rate > 12);
  CHECK(told.kitchen.kept_by_mould < 0.4);
  CHECK(share_of(told, "kept_by_mould") < 0.99);
  REQUIRE(told.notices.size() == 1);
  CHECK(told.notices[0].code == "one_temperature");
  for (const Residual& residual : told.residuals) CHECK(std::abs(residual.standardised) < 1);
}

TEST_CASE("what cannot be learned from is refused") {
  CHECK(says(refusal([] { calibrate({}); }, "logs"), "there are no logs"));
  Log log = log_of(usual, 1);
  log.seen[0].stage = "dough";
  CHECK(says(refusal([&] { calibrate({log_of(usual, 1), log}); }, "logs[1].seen[0].stage"), "no stage is named"));
  CHECK(says(refusal([] { calibrate({log_of(usual, 1)}, {.log_time_scale = 0}); }, "log_time_scale"), "noise"));
}
