#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/dough/gas.hpp>

#include "box.hpp"
#include "dough/gas_formula.hpp"
#include "naive.hpp"

using namespace ferment;
using naive::Real;

namespace {

constexpr double epsilon = 0x1p-52;

struct Case {
  Kitchen kitchen;
  Yeast yeast;
  double percent, sugar;
  naive::Curve curve;
};

Case any_case(box::Numbers& numbers, bool default_kitchen) {
  Case c;
  if (!default_kitchen) c.kitchen = box::any_kitchen(numbers);
  c.yeast = box::all_yeasts[numbers.index(4)];
  c.percent = numbers.magnitude(0.0100001, 4.9999) * box::per_instant(c.yeast);
  c.sugar = box::edgy(numbers, 0, 40);
  c.curve = naive::curve_of(c.kitchen, c.percent, c.yeast, c.sugar);
  return c;
}

/// θ·J′/J: a relative error of the hours in the work.
double work_condition(const Real& hours, const naive::Curve& c) {
  return static_cast<double>(hours * naive::yeast_at_work(hours, c) / naive::work(hours, c));
}
/// A relative error of the gas in −ln(1 − G/Gmax): large where the gas is nearly spent.
double spent_condition(const Real& gas, const Real& capacity) {
  const Real share = gas / capacity;
  return static_cast<double>(share / ((1 - share) * -log(1 - share)));
}

}  // namespace

TEST_CASE("gas over equivalent hours against 100 digits") {
  box::Numbers numbers(51);
  double worst = 0;
  std::string where;
  for (int i = 0; i < 3000; ++i) {
    const Case c = any_case(numbers, i % 3 == 0);
    // From the first seconds to weeks; the lag itself and its neighbours, where the two branches meet.
    double hours = numbers.magnitude(1e-3, 1e4);
    if (i % 10 == 1) hours = c.kitchen.growth_lag_h;
    if (i % 10 == 2) hours = std::nextafter(c.kitchen.growth_lag_h, 100);
    if (i % 10 == 3) hours = c.kitchen.growth_lag_h * (1 + numbers.magnitude(1e-12, 1e-3));
    const double error =
        naive::relative_error(gas_made(hours, c.percent, c.yeast, c.sugar, c.kitchen), naive::gas(hours, c.curve));
    if (!(error <= worst)) {
      worst = error;
      where = "hours " + std::to_string(hours) + ", start-up " + std::to_string(static_cast<double>(c.curve.tau));
    }
  }
  MESSAGE("gas made: worst relative error ", worst, " at ", where);
  CHECK(worst <= 1e-12);
}

TEST_CASE("gas of the first instants, where full rate and start-up deficit cancel") {
  box::Numbers numbers(52);
  double worst = 0;
  double at = 0;
  for (int i = 0; i < 1000; ++i) {
    const Case c = any_case(numbers, false);
    const double hours = numbers.magnitude(1e-9, 1e-3);
    const double error =
        naive::relative_error(gas_made(hours, c.percent, c.yeast, c.sugar, c.kitchen), naive::gas(hours, c.curve));
    if (!(error <= worst)) worst = error, at = hours;
  }
  MESSAGE("gas made in the first seconds: worst relative error ", worst, " at ", at, " h");
  CHECK(worst <= 1e-12);
  CHECK(gas_made(0, 1) == 0);
}

TEST_CASE("equivalent hours of a gas against bisection in 100 digits") {
  box::Numbers numbers(53);
  double worst = 0;
  double worst_spent = 0;
  int plain = 0;
  int spent = 0;
  for (int i = 0; i < 480; ++i) {
    const Case c = any_case(numbers, i % 3 == 0);
    const double capacity = gas_capacity(c.sugar, c.kitchen);
    double gas = i % 4 == 0   ? capacity * numbers.magnitude(1e-9, 1e-2)
                 : i % 4 == 1 ? capacity * (1 - numbers.magnitude(1e-12, 1e-1))
                              : capacity * numbers.between(0.001, 0.999);
    if (i % 8 == 5) gas = static_cast<double>(naive::gas(c.kitchen.growth_lag_h, c.curve));  // where growth begins
    if (!(gas < capacity)) continue;
    const Real wanted = naive::hours_of_work(naive::work_of_gas(gas, c.curve.capacity, c.curve.q), c.curve);
    const double got = equivalent_hours_for_gas(gas, c.percent, c.yeast, c.sugar, c.kitchen);
    const double error = naive::relative_error(got, wanted);
    // What an error of half a unit in the last place of gas and capacity does to the hours.
    const double condition = spent_condition(gas, c.curve.capacity) / work_condition(wanted, c.curve);
    INFO("gas ", gas, " of ", capacity, ", yeast ", c.percent, ", hours ", got, ", condition ", condition);
    if (condition < 100) {
      ++plain;
      CHECK(error <= 1e-12);
      worst = std::max(worst, error);
    } else {
      ++spent;
      CHECK(error <= std::max(1e-12, 8 * epsilon * condition));
      worst_spent = std::max(worst_spent, error / (epsilon * condition));
    }
  }
  MESSAGE("hours for a gas: worst relative error ", worst, " in ", plain, " cases; with the gas nearly spent ",
          worst_spent, " epsilon × condition in ", spent);
  CHECK(plain > 320);
  CHECK(spent > 30);
}

TEST_CASE("start-up inverse: Lambert's W, the loop's version and bisection") {
  box::Numbers numbers(54);
  double worst_between = 0;
  double worst_loop = 0;
  double worst_lambert = 0;
  for (int i = 0; i < 4000; ++i) {
    const double v = i % 2 ? numbers.magnitude(1e-16, 1e4) : numbers.magnitude(1e-6, 20);
    const double loop = formula::start_up_inverse_in_loops(v);
    const double lambert = formula::start_up_inverse<double>(v);
    worst_between = std::max(worst_between, std::abs(loop - lambert) / lambert);
    if (i % 10) continue;
    const Real exact =
        naive::bisect([&](const Real& u) { return Real(u - 1 + exp(-u) - v); }, 0, Real(v) + 2 + sqrt(Real(2 * v)));
    worst_loop = std::max(worst_loop, naive::relative_error(loop, exact));
    worst_lambert = std::max(worst_lambert, naive::relative_error(lambert, exact));
  }
  // Both sides of the switch to the series at √(2v) = 0.01.
  for (const double w : {0.01, 0.0099999999999, 0.0100000000001}) {
    const double v = w * w / 2;
    worst_between =
        std::max(worst_between,
                 std::abs(formula::start_up_inverse_in_loops(v) - formula::start_up_inverse<double>(v)) / w);
  }
  MESSAGE("start-up inverse: loop against Lambert's W ", worst_between, ", against 100 digits ", worst_loop, " and ",
          worst_lambert);
  CHECK(worst_between <= 1e-14);
  CHECK(worst_loop <= 1e-14);
  CHECK(worst_lambert <= 1e-14);
  CHECK(formula::start_up_inverse_in_loops(0) == 0);
  CHECK(formula::start_up_inverse<double>(0.0) == 0);
}

TEST_CASE("the generic inverse runs in 100 digits as well") {
  const Kitchen kitchen;
  for (const double percent : {0.02, 0.3, 2.0}) {
    for (const double gas : {0.01, 5.0, 30.0, 44.9}) {
      const formula::GasCurve<Real> curve(kitchen, 0.25);
      const Real dose = Real(gassing_dry_matter(percent, Yeast::instant));
      const Real work = formula::work_for_gas<Real>(gas, Real(45), curve);
      const Real hours = formula::hours_for_work<Real>(work, dose, curve);
      const Real back = formula::work_after<Real>(hours, dose, curve);
      CHECK(static_cast<double>(abs(back / work - 1)) < 1e-60);
    }
  }
}

TEST_CASE("gas to hours and back") {
  box::Numbers numbers(55);
  double worst = 0;
  for (int i = 0; i < 20000; ++i) {
    const Case c = any_case(numbers, i % 3 == 0);
    const double capacity = gas_capacity(c.sugar, c.kitchen);
    const double gas = capacity * (i % 2 ? numbers.magnitude(1e-6, 0.99) : numbers.between(0.001, 0.99));
    const double hours = equivalent_hours_for_gas(gas, c.percent, c.yeast, c.sugar, c.kitchen);
    if (hours > 1e5) continue;
    worst = std::max(worst, std::abs(gas_made(hours, c.percent, c.yeast, c.sugar, c.kitchen) / gas - 1));
  }
  MESSAGE("gas → hours → gas: worst relative error ", worst);
  CHECK(worst <= 1e-9);
  CHECK(equivalent_hours_for_gas(0, 1) == 0);
}

TEST_CASE("gas capacity and its end") {
  CHECK(gas_capacity() == 50);
  CHECK(gas_capacity(1) == doctest::Approx(61.10).epsilon(1e-15));
  for (const double sugar : {0.0, 7.0, 40.0}) {
    Kitchen kitchen;
    kitchen.gas_capacity = 30;
    CHECK(naive::relative_error(gas_capacity(sugar, kitchen), 30 + Real("11.10") * sugar) < 1e-15);
  }
  for (const double gas : {50.0, 51.0, 1000.0}) {
    try {
      equivalent_hours_for_gas(gas, 1);
      FAIL("accepted");
    } catch (const NoSolution& error) {
      CHECK(std::string(error.what()).find("50 mmol") != std::string::npos);
      CHECK(error.detail().high == 50.0);
      CHECK(error.detail().value == gas);
    }
  }
  CHECK(equivalent_hours_for_gas(std::nextafter(50.0, 0.0), 1) > 0);
  CHECK(gas_made(1e5, 5) == 50);
}

TEST_CASE("gas only grows with time, dose and sugar") {
  double before = 0;
  for (double hours = 0.01; hours < 60; hours *= 1.05) {
    const double gas = gas_made(hours, 0.3);
    CHECK(gas > before);
    CHECK(gas_made(hours, 0.31) > gas);
    CHECK(gas_made(hours, 0.3, Yeast::instant, 5) > gas);
    before = gas;
  }
}
