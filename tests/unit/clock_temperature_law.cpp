#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/clock/temperature_law.hpp>

#include "box.hpp"
#include "naive.hpp"

using namespace ferment;
using naive::Real;

namespace {

constexpr double epsilon = 0x1p-52;
constexpr double infinity = std::numeric_limits<double>::infinity();

Real factor(const TemperatureLaw& law, const Real& t) {
  if (const auto* l = std::get_if<Cardinal>(&law)) return naive::cardinal(t, l->t_min_c, l->t_opt_c, l->t_max_c);
  if (const auto* l = std::get_if<SquareRoot>(&law))
    return naive::square_root(t, l->t_min_c, l->t_max_c, l->decline_per_k);
  if (const auto* l = std::get_if<Arrhenius>(&law)) return naive::arrhenius(t, l->activation_energy_kj);
  return naive::constant_q10(t, std::get<ConstantQ10>(law).q10);
}

/// exp(10·d ln f/dT) by a central difference, whose error at 1e-25 K is 1e-50.
Real q10_of(const TemperatureLaw& law, const Real& t) {
  const Real step("1e-25");
  return exp(10 * (log(factor(law, t + step)) - log(factor(law, t - step))) / (2 * step));
}

std::vector<TemperatureLaw> laws() {
  std::vector<TemperatureLaw> all{Cardinal{}, SquareRoot{}, Arrhenius{}, ConstantQ10{}};
  box::Numbers numbers(71);
  for (int i = 0; i < 60; ++i) {
    Kitchen kitchen = box::any_kitchen(numbers);
    kitchen.law = box::all_laws[i % 4];
    all.push_back(law_of(kitchen));
  }
  all.push_back(Cardinal{.t_min_c = -2,
                         .t_opt_c = 28,
                         .t_max_c = 43});  // below = 2·above: the partial fractions of drift degenerate here
  return all;
}

double low_end(const TemperatureLaw& law) {
  if (const auto* l = std::get_if<Cardinal>(&law)) return l->t_min_c;
  if (const auto* l = std::get_if<SquareRoot>(&law)) return l->t_min_c;
  return -50;
}
double high_end(const TemperatureLaw& law) {
  if (const auto* l = std::get_if<Cardinal>(&law)) return l->t_max_c;
  if (const auto* l = std::get_if<SquareRoot>(&law)) return l->t_max_c;
  return 120;
}
bool has_ends(const TemperatureLaw& law) {
  return std::holds_alternative<Cardinal>(law) || std::holds_alternative<SquareRoot>(law);
}

}  // namespace

TEST_CASE("the four laws against 100 digits") {
  double worst = 0;
  for (const TemperatureLaw& law : laws()) {
    for (double t = -50; t <= 120; t += 0.37) {
      const Real wanted = factor(law, t);
      const double got = temperature_factor(law, t);
      if (wanted == 0) {
        CHECK(got == 0);
        continue;
      }
      worst = std::max(worst, naive::relative_error(got, wanted));
    }
  }
  MESSAGE("temperature factor: worst relative error ", worst);
  CHECK(worst <= 1e-12);
}

TEST_CASE("the product forms keep their digits at the very ends") {
  double worst = 0;
  for (const TemperatureLaw& law : laws()) {
    if (!has_ends(law)) continue;
    for (double distance = 1e-9; distance < 1; distance *= 3) {
      for (const double t : {low_end(law) + distance, high_end(law) - distance}) {
        worst = std::max(worst, naive::relative_error(temperature_factor(law, t), factor(law, t)));
      }
    }
  }
  MESSAGE("temperature factor next to the limits: worst relative error ", worst);
  CHECK(worst <= 1e-12);
}

TEST_CASE("each law is 1 at 25 °C, laws with limits are 0 outside them and continuous there") {
  for (const TemperatureLaw& law : laws()) {
    CHECK(temperature_factor(law, 25) == doctest::Approx(1).epsilon(1e-15));
    if (!has_ends(law)) {
      CHECK(temperature_factor(law, -50) > 0);
      CHECK(temperature_factor(law, 120) > 0);
      continue;
    }
    const double low = low_end(law);
    const double high = high_end(law);
    for (const double t :
         {low, std::nextafter(low, -100), low - 1, -50.0, high, std::nextafter(high, 100), high + 1, 120.0}) {
      CHECK(temperature_factor(law, t) == 0);
    }
    // Continuous: quadratic at the lower end, at the upper one linear (cardinal) or quadratic (square root).
    const auto shrinks = [&](double near, double nearer, double power) {
      CHECK(temperature_factor(law, nearer) > 0);
      CHECK(std::log10(temperature_factor(law, near) / temperature_factor(law, nearer)) ==
            doctest::Approx(3 * power).epsilon(1e-3));
    };
    shrinks(low + 1e-5, low + 1e-8, 2);
    shrinks(high - 1e-5, high - 1e-8, std::holds_alternative<Cardinal>(law) ? 1 : 2);
  }
}

TEST_CASE("default values of the cardinal law") {  // model of this library, ± 1e-4
  const std::pair<double, double> values[] = {{4, 0.0513},  {10, 0.2039}, {15, 0.4062}, {20, 0.6737},
                                              {30, 1.3715}, {35, 1.7510}, {40, 1.9877}};
  for (const auto& [t, wanted] : values) CHECK(std::abs(temperature_factor(Cardinal{}, t) - wanted) <= 1e-4);
}

TEST_CASE("the cardinal law is largest at its optimum, the square-root law where its slope is 0") {
  for (const TemperatureLaw& law : laws()) {
    if (const auto* l = std::get_if<Cardinal>(&law)) {
      const double best = temperature_factor(law, l->t_opt_c);
      for (double t = -10; t < 60; t += 0.25) CHECK(temperature_factor(law, t) <= best * (1 + 4 * epsilon));
      CHECK(local_q10(law, l->t_opt_c) == doctest::Approx(1).epsilon(1e-13));
    }
  }
}

TEST_CASE("local temperature coefficient against a derivative in 100 digits") {
  double worst = 0;
  for (const TemperatureLaw& law : laws()) {
    for (double t = -1.9; t < 44.9; t += 0.73) {
      if (!(temperature_factor(law, t) > 0)) continue;
      const Real wanted = q10_of(law, t);
      // 10·f′/f stands in an exponent: next to the limits it reaches thousands.
      const double exponent = std::abs(static_cast<double>(log(wanted)));
      if (wanted > 1e6) {  // next to the lower limit a coefficient says nothing any more
        CHECK_THROWS_AS(local_q10(law, t), OutsideModel);
        continue;
      }
      if (exponent > 600) continue;  // next to the upper limit: smaller than a double can hold
      const double error = naive::relative_error(local_q10(law, t), wanted);
      CHECK(error <= std::max(1e-12, 16 * epsilon * exponent));
      if (exponent < 100) worst = std::max(worst, error);
    }
  }
  MESSAGE("local Q10: worst relative error ", worst);
  CHECK(worst <= 1e-12);
  CHECK(local_q10(ConstantQ10{2.2}, 3) == doctest::Approx(2.2).epsilon(1e-14));
  CHECK(local_q10(ConstantQ10{2.2}, 30) == doctest::Approx(2.2).epsilon(1e-14));
  for (const double t : {-2.0, -10.0, 45.0, 60.0}) CHECK_THROWS_AS(local_q10(Cardinal{}, t), OutsideModel);
  for (const double t : {-2.0, 47.0}) CHECK_THROWS_AS(local_q10(SquareRoot{}, t), OutsideModel);
}

TEST_CASE("an array is the scalar, bit for bit, at every length") {
  box::Numbers numbers(72);
  for (const TemperatureLaw& law : laws()) {
    for (const std::size_t n : {std::size_t{0}, std::size_t{1}, std::size_t{2}, std::size_t{7}, std::size_t{127},
                                std::size_t{128}, std::size_t{129}, std::size_t{1000}}) {
      std::vector<double> t(n);
      std::vector<double> out(n, -1);
      for (double& x : t) x = numbers.between(-50, 120);
      temperature_factor(law, t, out);
      for (std::size_t i = 0; i < n; ++i) CHECK(out[i] == temperature_factor(law, t[i]));
    }
  }
  std::vector<double> short_out(2);
  CHECK_THROWS_AS(temperature_factor(Cardinal{}, std::vector{20.0, 21.0, 22.0}, short_out), InvalidInput);
}

TEST_CASE("names of the laws, law of a kitchen and back") {
  for (const Law law : box::all_laws) CHECK(named<Law>(name_of(law)) == law);
  CHECK(name_of(Law::cardinal) == "cardinal");
  CHECK(name_of(Law::square_root) == "square_root");
  CHECK(name_of(Law::arrhenius) == "arrhenius");
  CHECK(name_of(Law::constant_q10) == "constant_q10");
  CHECK_THROWS_AS(named<Law>("linear"), InvalidInput);
  CHECK_THROWS_AS(name_of(static_cast<Law>(9)), InvalidInput);
  Kitchen strange;
  strange.law = static_cast<Law>(9);
  CHECK_THROWS_AS(law_of(strange), InvalidInput);
  for (const TemperatureLaw& law : laws()) {
    const Kitchen kitchen = with_law({}, law);
    CHECK(law_of(kitchen).index() == law.index());
    for (const double t : {5.0, 22.0, 33.0})
      CHECK(temperature_factor(law_of(kitchen), t) == doctest::Approx(temperature_factor(law, t)).epsilon(1e-13));
  }
}

TEST_CASE("a law refuses the parameters that a kitchen refuses") {
  const double nan_ = std::numeric_limits<double>::quiet_NaN();
  for (const double bad : {nan_, infinity, -100.0, 200.0}) {
    CHECK_THROWS_AS(temperature_factor(Cardinal{.t_min_c = bad}, 20), InvalidInput);
    CHECK_THROWS_AS(temperature_factor(Cardinal{.t_opt_c = bad}, 20), InvalidInput);
    CHECK_THROWS_AS(temperature_factor(Cardinal{.t_max_c = bad}, 20), InvalidInput);
    CHECK_THROWS_AS(temperature_factor(SquareRoot{.t_min_c = bad}, 20), InvalidInput);
    CHECK_THROWS_AS(temperature_factor(SquareRoot{.t_max_c = bad}, 20), InvalidInput);
    CHECK_THROWS_AS(temperature_factor(SquareRoot{.decline_per_k = bad}, 20), InvalidInput);
    CHECK_THROWS_AS(temperature_factor(Arrhenius{.activation_energy_kj = bad}, 20), InvalidInput);
    CHECK_THROWS_AS(temperature_factor(ConstantQ10{.q10 = bad}, 20), InvalidInput);
    CHECK_THROWS_AS(local_q10(ConstantQ10{.q10 = bad}, 20), InvalidInput);
    CHECK_THROWS_AS(with_law({}, ConstantQ10{.q10 = bad}), InvalidInput);
  }
  CHECK_THROWS_AS(temperature_factor(Cardinal{.t_opt_c = 40, .t_max_c = 40}, 20), InvalidInput);
}

TEST_CASE("laws that are honest in a range say so outside it") {
  CHECK_FALSE(law_notice(Cardinal{}, -50));
  CHECK_FALSE(law_notice(SquareRoot{}, 80));
  const auto edges = [](const TemperatureLaw& law, double low, double high) {
    for (const double inside : {low, high}) CHECK_FALSE(law_notice(law, inside));
    for (const double outside : {std::nextafter(low, -infinity), std::nextafter(high, infinity)}) {
      const auto notice = law_notice(law, outside);
      REQUIRE(notice);
      CHECK(notice->code == "law_outside_range");
      CHECK(notice->severity == Severity::caution);
      CHECK_FALSE(notice->text.empty());
    }
  };
  edges(ConstantQ10{}, 15, 32);
  edges(Arrhenius{}, 18, 32);
}
