#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/rise/rise.hpp>

#include "box.hpp"
#include "refusal.hpp"

using namespace ferment;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

std::string shown(double value) {
  std::ostringstream out;
  out << std::abs(value);
  return (value < 0 ? "−" : "") + out.str();
}
std::optional<InvalidInput> refusal(const Kitchen& kitchen) {
  try {
    require_kitchen(kitchen);
  } catch (const InvalidInput& error) {
    return error;
  }
  return std::nullopt;
}

/// A kitchen in which this one parameter may take any value of its own range without breaking a rule between two.
Kitchen roomy(std::string_view name) {
  Kitchen kitchen;
  if (name == "retention_onset") kitchen.retention_limit = 9;
  if (name == "retention_limit") kitchen.retention_onset = 1.2;
  return kitchen;
}

struct Pinned {
  double value;
  Scale scale;
  double prior_sd;
};

/// The frozen sets with their priors, written out once more: a change of a default is a new named set, not an edit.
const std::map<std::string, Pinned> set_2026_1{
    {"t_min_c", {-2, Scale::linear, 1.5}},
    {"t_opt_c", {40, Scale::linear, 2}},
    {"t_max_above_opt_k", {5, Scale::logarithmic, 0.3}},
    {"q10", {2.2, Scale::logarithmic, 0.15}},
    {"activation_energy_kj", {60, Scale::logarithmic, 0.25}},
    {"root_t_min_c", {-2, Scale::fixed, 0}},
    {"root_t_max_c", {47, Scale::fixed, 0}},
    {"root_decline_per_k", {0.37, Scale::fixed, 0}},
    {"aw_min", {0.92, Scale::linear, 0.012}},
    {"gassing_rate", {11, Scale::logarithmic, 0.30}},
    {"start_up_compressed_h", {0.2, Scale::logarithmic, 0.5}},
    {"start_up_instant_h", {0.25, Scale::logarithmic, 0.5}},
    {"start_up_active_dry_h", {0.25, Scale::logarithmic, 0.5}},
    {"start_up_active_dry_unwetted_h", {0.8, Scale::logarithmic, 0.5}},
    {"growth_rate", {0.24, Scale::logarithmic, 0.3}},
    {"growth_lag_h", {2.7, Scale::logarithmic, 0.35}},
    {"growth_increment", {0.18, Scale::logarithmic, 0.5}},
    {"gas_capacity", {45, Scale::logarithmic, 0.20}},
    {"retention_onset", {2.6, Scale::linear, 0.3}},
    {"retention_limit", {4.8, Scale::linear, 0.5}},
    {"void_fraction", {0.06, Scale::linear, 0.02}},
    {"gas_free_density", {1.26, Scale::linear, 0.015}},
    {"water_exponent", {0, Scale::linear, 0}},
    {"high_sugar_factor", {1, Scale::logarithmic, 0}},
    {"kept_by_fold", {0.85, Scale::logit, 0}},
    {"kept_by_divide", {0.5, Scale::logit, 0}},
    {"kept_by_round", {0.4, Scale::logit, 0}},
    {"kept_by_mould", {0.2, Scale::logit, 0}},
    {"kept_by_machine_mould", {0.2, Scale::logit, 0}},
    {"piece_heat_loss_factor", {1, Scale::logarithmic, 0}},
    {"over_proof_tin", {0.87, Scale::fixed, 0}},
    {"over_proof_free", {0.65, Scale::fixed, 0}},
    {"over_proof_bulk", {0.87, Scale::fixed, 0}},
    {"over_proof_rise_free_percent", {130, Scale::fixed, 0}},
    {"over_proof_rise_tin_percent", {130, Scale::fixed, 0}},
    {"bake_sd", {0.12, Scale::fixed, 0}},
    {"model_sd", {0, Scale::fixed, 0}},
    {"packet_sd", {0, Scale::fixed, 0}},
    {"log_time_scale", {0.10, Scale::fixed, 0}},
};

/// What differs in 2026-2.
const std::map<std::string, Pinned> set_2026_2{
    {"aw_min", {0.88, Scale::linear, 0.02}},
    {"gas_capacity", {50, Scale::logarithmic, 0.20}},
    {"water_exponent", {0.5, Scale::linear, 0.3}},
    {"high_sugar_factor", {1, Scale::logarithmic, 0.5}},
    {"kept_by_fold", {0.85, Scale::logit, 0.6}},
    {"kept_by_divide", {0.70, Scale::logit, 0.8}},
    {"kept_by_round", {0.60, Scale::logit, 0.6}},
    {"kept_by_mould", {0.40, Scale::logit, 0.5}},
    {"kept_by_machine_mould", {0.20, Scale::logit, 0.5}},
    {"piece_heat_loss_factor", {1, Scale::logarithmic, 0.2}},
    {"over_proof_bulk", {0.60, Scale::fixed, 0}},
    {"over_proof_rise_tin_percent", {200, Scale::fixed, 0}},
    {"model_sd", {0.08, Scale::fixed, 0}},
    {"packet_sd", {0.15, Scale::fixed, 0}},
};

}  // namespace

TEST_CASE("the named sets, value by value") {
  const Kitchen older = kitchen_named("2026-1"), kitchen = kitchen_named("2026-2");
  CHECK(name_of(older) == "2026-1");
  CHECK(name_of(kitchen) == "2026-2");
  CHECK(older.law == Law::cardinal);
  CHECK(kitchen.law == Law::cardinal);
  CHECK(kitchen.covariance.empty());
  CHECK_FALSE(has_learned(older));
  CHECK_FALSE(has_learned(kitchen));
  CHECK(parameters().size() == set_2026_1.size());
  const std::vector<double> priors = covariance_of(older);
  const std::size_t n = learnable().size();
  std::set<std::string> seen;
  std::size_t learned = 0;
  for (const Parameter& p : parameters()) {
    const std::string name(p.name);
    INFO(name);
    const auto was = set_2026_1.find(name);
    REQUIRE(was != set_2026_1.end());
    const auto changed = set_2026_2.find(name);
    const Pinned& is = changed != set_2026_2.end() ? changed->second : was->second;
    CHECK(seen.insert(name).second);
    CHECK(older.*p.value == was->second.value);
    CHECK(kitchen.*p.value == is.value);
    CHECK(Kitchen{}.*p.value == is.value);
    CHECK(p.initial == is.value);
    CHECK(p.scale == is.scale);
    CHECK(p.prior_sd == is.prior_sd);
    if (p.scale == Scale::fixed) continue;
    CHECK(priors[learned * n + learned] == was->second.prior_sd * was->second.prior_sd);
    ++learned;
  }
  try {
    kitchen_named("2025-9");
    FAIL("accepted");
  } catch (const InvalidInput& error) {
    CHECK(says(error.what(), "2025-9"));
    CHECK(says(error.what(), "2026-1"));
    CHECK(says(error.what(), "2026-2"));
  }
  CHECK_FALSE(refusal(kitchen));
  CHECK_FALSE(refusal(older));
}

TEST_CASE("a parameter moves in its own coordinate and stays inside its bounds") {
  for (const Parameter& p : parameters()) {
    INFO(std::string(p.name));
    const double value = Kitchen{}.*p.value, there = moved(p, value, 0.01);
    switch (p.scale) {
      case Scale::fixed: CHECK(there == value); continue;
      case Scale::linear: CHECK(there == doctest::Approx(value + 0.01).epsilon(1e-14)); break;
      case Scale::logarithmic: CHECK(std::log(there / value) == doctest::Approx(0.01).epsilon(1e-11)); break;
      case Scale::logit:
        CHECK(std::log(there / (1 - there)) - std::log(value / (1 - value)) == doctest::Approx(0.01).epsilon(1e-11));
    }
    CHECK(moved(p, there, -0.01) == doctest::Approx(value).epsilon(1e-14));
    CHECK(moved(p, value, 1e3) == p.high);
    CHECK(moved(p, value, -1e3) == p.low);
  }
}

TEST_CASE("every row of the parameter table") {
  for (const Parameter& p : parameters()) {
    INFO(std::string(p.name));
    CHECK_FALSE(p.label.empty());
    CHECK_FALSE(p.meaning.empty());
    CHECK_FALSE(p.source.empty());
    CHECK((p.prior_sd > 0) == (p.scale != Scale::fixed));
    if (p.scale == Scale::logarithmic) CHECK(p.low > 0);
    CHECK(find_field(p.name) == &p);
    Kitchen kitchen = roomy(p.name);
    for (const double good :
         {p.low, p.high, *p.initial, std::nextafter(p.low, infinity), std::nextafter(p.high, -infinity)}) {
      kitchen.*p.value = good;
      const auto refused = refusal(kitchen);
      CHECK_MESSAGE(!refused, good, ": ", std::string(refused ? refused->what() : ""));
    }
    for (const double bad :
         {std::numeric_limits<double>::quiet_NaN(), infinity, -infinity, std::nextafter(p.low, -infinity),
          std::nextafter(p.high, infinity), p.low - 1, p.high + 1}) {
      kitchen.*p.value = bad;
      const auto refused = refusal(kitchen);
      REQUIRE_MESSAGE(refused, "accepts ", bad);
      const std::string text = refused->what();
      INFO(text);
      CHECK(says(text, std::string(p.label)));
      if (!p.unit.empty()) CHECK(says(text, std::string(p.unit)));
      CHECK(says(text, shown(p.low) + " to " + shown(p.high)));
      CHECK(text.starts_with(std::string(p.name) + ": "));
      CHECK(refused->detail().path == p.name);
      CHECK(refused->detail().low == p.low);
      CHECK(refused->detail().high == p.high);
      // A kitchen is checked wherever it is used.
      CHECK_THROWS_AS(hours_to_rise(50, {.dough_c = 25, .yeast_percent = 1}, kitchen), InvalidInput);
      CHECK_THROWS_AS(rise_after(1, {.dough_c = 25, .yeast_percent = 1}, kitchen), InvalidInput);
    }
  }
}

TEST_CASE("parameters in °C and in K are told how to convert") {
  Kitchen kitchen;
  kitchen.t_opt_c = 104;  // 40 °C
  CHECK(says(refusal(kitchen)->what(), "did you mean 104 °F?"));
  kitchen = {};
  kitchen.t_max_above_opt_k = 18;  // 10 K
  CHECK(says(refusal(kitchen)->what(), "did you mean a difference of 18 °F?"));
}

TEST_CASE("an optimum must lie above the middle of the cardinal law's limits") {
  Kitchen kitchen;
  kitchen.t_min_c = 8;
  kitchen.t_opt_c = 28;
  for (const double above : {0.5, 5.0, 15.0}) {
    kitchen.t_max_above_opt_k = above;
    CHECK_FALSE(refusal(kitchen));  // 28 − 8 = 20 is more than any of these
  }
  // The table's own bounds keep the rule: the narrowest is 28 − 8 = 20 K below and 15 K above.
  double narrowest = infinity;
  const Parameter* low = nullptr;
  for (const Parameter& p : parameters()) {
    if (p.name == "t_min_c") low = &p;
  }
  REQUIRE(low != nullptr);
  for (const Parameter& p : parameters()) {
    if (p.name == "t_opt_c") narrowest = p.low - low->high;
  }
  CHECK(narrowest == 20);
}

TEST_CASE("the largest volume must lie above the volume at which gas leaks") {
  Kitchen kitchen;
  for (const double limit : {2.6, 2.5, 1.5}) {
    kitchen.retention_limit = limit;
    const auto refused = refusal(kitchen);
    REQUIRE(refused);
    CHECK(refused->detail().path == "retention_limit");
    CHECK(says(refused->what(), shown(limit)));
    CHECK(refused->detail().value == limit);
    CHECK(refused->detail().low == 2.6);
  }
  kitchen.retention_limit = std::nextafter(2.6, 3);
  CHECK_FALSE(refusal(kitchen));
}

TEST_CASE("learnable parameters are those with a prior, in the table's order") {
  const std::vector<Parameter> rows = learnable();
  CHECK(rows.size() == 27);
  std::size_t i = 0;
  for (const Parameter& p : parameters()) {
    if (p.scale == Scale::fixed) continue;
    REQUIRE(i < rows.size());
    CHECK(rows[i++].name == p.name);
  }
  CHECK(i == rows.size());
}

TEST_CASE("the covariance of a kitchen") {
  const std::vector<Parameter> rows = learnable();
  const std::size_t n = rows.size();
  SUBCASE("without one: the prior, independent") {
    const std::vector<double> prior = covariance_of({});
    REQUIRE(prior.size() == n * n);
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = 0; j < n; ++j) CHECK(prior[i * n + j] == (i == j ? rows[i].prior_sd * rows[i].prior_sd : 0));
    }
  }
  Kitchen kitchen;
  kitchen.covariance = covariance_of({});
  SUBCASE("its own") {
    kitchen.covariance[1] = kitchen.covariance[n] = 0.3;  // corr(t_min, t_opt) 0.1
    CHECK(covariance_of(kitchen) == kitchen.covariance);
  }
  SUBCASE("semi-definite is allowed: a parameter known exactly, two that move together") {
    kitchen.covariance.assign(n * n, 0.0);
    CHECK_FALSE(refusal(kitchen));
    kitchen.covariance.assign(n * n, 1.0);
    CHECK_FALSE(refusal(kitchen));
  }
  const auto refuses = [&](const char* why) {
    const auto refused = refusal(kitchen);
    REQUIRE(refused);
    INFO(std::string(refused->what()));
    CHECK(says(refused->what(), why));
    CHECK(refused->detail().path == "covariance");
    CHECK_THROWS_AS(covariance_of(kitchen), InvalidInput);
  };
  SUBCASE("wrong size") {
    kitchen.covariance.pop_back();
    refuses("must have");
    kitchen.covariance = {1};
    refuses("has 1 numbers");
  }
  SUBCASE("not symmetric") {
    kitchen.covariance[1] = 0.1;
    refuses("not symmetric");
  }
  SUBCASE("not positive semi-definite") {
    kitchen.covariance[0] = -0.1;
    refuses("not positive semi-definite");
    kitchen.covariance = covariance_of({});
    kitchen.covariance[1] = kitchen.covariance[n] = 3.1;  // sd 1.5 and 2: the correlation would be above 1
    refuses("not positive semi-definite");
  }
  SUBCASE("not finite") {
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), infinity}) {
      kitchen.covariance[n + 1] = bad;
      refuses("not a finite number");
    }
  }
}

TEST_CASE("kitchens at all their bounds are accepted") {
  box::Numbers numbers(31);
  for (int i = 0; i < 200; ++i) CHECK_FALSE(refusal(box::any_kitchen(numbers)));
}
