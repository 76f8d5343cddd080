#include <doctest/doctest.h>

#include <cmath>

#include "base/math.hpp"

#include "box.hpp"
#include "naive.hpp"

// The functions are the model's own, so their error is theirs to prove: worst error in units of the last place.

namespace {

using naive::Real;

struct Worst {
  double ulps = 0;
  double at = 0;
  void see(double got, const Real& wanted, double x) {
    const double error = naive::ulps(got, wanted);
    if (!(error <= ulps)) ulps = error, at = x;
  }
};

constexpr int many = 8000;

}  // namespace

TEST_CASE("exp over its whole range") {
  box::Numbers numbers(1);
  Worst worst;
  const auto see = [&](double x) { worst.see(ferment::math::exp(x), exp(Real(x)), x); };
  for (int i = 0; i < many; ++i) see(numbers.between(-700, 700));
  for (int i = 0; i < many; ++i) see(numbers.between(-1, 1));
  for (int i = 0; i < 1000; ++i) see(numbers.magnitude(1e-300, 1) * (i % 2 ? 1 : -1));
  // Half-way between two powers of two the reduced argument is largest.
  for (int k = -1009; k <= 1009; ++k) {
    const double middle = (k + 0.5) * 0.69314718055994530942;
    for (const double x : {middle, std::nextafter(middle, 1e4), std::nextafter(middle, -1e4)}) see(x);
  }
  MESSAGE("exp: worst error ", worst.ulps, " ulp at ", worst.at);
  CHECK(worst.ulps < 1);
  CHECK(ferment::math::exp(0.0) == 1);
  CHECK(ferment::math::exp(-800.0) == ferment::math::exp(-708.0));
  CHECK(ferment::math::exp(-INFINITY) == ferment::math::exp(-708.0));
}

TEST_CASE("expm1 over its whole range") {
  box::Numbers numbers(2);
  Worst small;
  Worst negative;
  Worst large;
  const auto see = [](Worst& worst, double x) {
    // 100 digits do not hold 1 + 1e-300: there the first terms of the series are exact to more than a double.
    const Real r(x);
    const Real wanted = std::abs(x) < 1e-20 ? Real(r + r * r / 2 + r * r * r / 6) : Real(exp(r) - 1);
    worst.see(ferment::math::expm1(x), wanted, x);
  };
  for (int i = 0; i < many; ++i) see(small, numbers.magnitude(1e-300, 0.34) * (i % 2 ? 1 : -1));
  for (int i = 0; i < many; ++i) see(negative, -numbers.magnitude(0.34, 700));
  for (int i = 0; i < many; ++i) see(large, numbers.magnitude(0.34, 700));
  MESSAGE("expm1: worst error ", small.ulps, " ulp at ", small.at, " (small), ", negative.ulps, " at ", negative.at,
          " (negative), ", large.ulps, " at ", large.at, " (large)");
  CHECK(small.ulps < 1);
  CHECK(negative.ulps < 3);
  CHECK(large.ulps < 3);
  CHECK(ferment::math::expm1(0.0) == 0);
  CHECK(ferment::math::expm1(-800.0) == -1);
}

TEST_CASE("log over all magnitudes") {
  box::Numbers numbers(3);
  Worst worst;
  Worst near_one;
  const auto see = [](Worst& w, double x) { w.see(ferment::math::log(x), log(Real(x)), x); };
  for (int i = 0; i < many; ++i) see(worst, numbers.magnitude(1e-300, 1e300));
  for (int i = 0; i < many; ++i) see(near_one, numbers.between(0.5, 2));
  for (int i = 0; i < 2000; ++i) see(near_one, 1 + numbers.magnitude(0x1p-52, 0.1) * (i % 2 ? 1 : -1));
  for (int k = -996; k <= 996; ++k) {
    for (const double x : {std::ldexp(1.0, k), std::ldexp(0.70710678118654746, k), std::ldexp(0.70710678118654757, k),
                           std::ldexp(1.9999999999999998, k)}) {
      if (x != 1) see(worst, x);
    }
  }
  MESSAGE("log: worst error ", worst.ulps, " ulp at ", worst.at, ", between 0.5 and 2 ", near_one.ulps, " at ",
          near_one.at);
  CHECK(worst.ulps < 1);
  CHECK(near_one.ulps < 1);
  CHECK(ferment::math::log(1.0) == 0);
}

TEST_CASE("log1p near -1, near 0 and beyond") {
  box::Numbers numbers(4);
  Worst near_minus_one;
  Worst near_zero;
  Worst worst;
  const auto see = [](Worst& w, double x) {
    const Real r(x);
    const Real wanted = std::abs(x) < 1e-20 ? Real(r - r * r / 2 + r * r * r / 3) : log(1 + r);
    w.see(ferment::math::log1p(x), wanted, x);
  };
  for (int i = 0; i < many; ++i) see(near_minus_one, -1 + numbers.magnitude(0x1p-53, 0.3));
  for (int i = 0; i < many; ++i) see(near_zero, numbers.magnitude(1e-300, 0.3) * (i % 2 ? 1 : -1));
  for (int i = 0; i < many; ++i) see(near_zero, numbers.between(-0.3, 0.42));
  for (int i = 0; i < many; ++i) see(worst, numbers.magnitude(0.3, 1e300));
  for (int i = 0; i < many; ++i) see(worst, numbers.between(0.3, 100));
  // 1 + x crosses a power of two or √2·2^k.
  for (int k = 0; k <= 60; ++k) {
    for (const double u : {std::ldexp(1.0, k), std::ldexp(1.4142135623730951, k)}) {
      for (const double x : {u - 1, std::nextafter(u - 1, 0), std::nextafter(u - 1, 1e300)}) {
        if (x > 0.3) see(worst, x);
      }
    }
  }
  MESSAGE("log1p: worst error ", near_minus_one.ulps, " ulp at -1 + ", 1 + near_minus_one.at, ", ", near_zero.ulps,
          " at ", near_zero.at, ", ", worst.ulps, " at ", worst.at);
  CHECK(near_minus_one.ulps < 1);
  CHECK(near_zero.ulps < 1);
  CHECK(worst.ulps < 1);
  CHECK(ferment::math::log1p(0.0) == 0);
}
