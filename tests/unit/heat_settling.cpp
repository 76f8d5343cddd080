#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include "box.hpp"
#include "heat/settling.hpp"

using namespace ferment;

TEST_CASE("what settles towards a polynomial, against the integral with the exponential kernel") {
  box::Numbers n(521);
  double worst = 0;
  for (int i = 0; i < 400; ++i) {
    const double settling_h = n.magnitude(1e-3, 10), hours = n.magnitude(1e-4, 24), now = n.between(-5, 5);
    std::array<double, 5> c{};
    for (double& each : c) each = n.between(-5, 5);
    const auto polynomial = [&](double x) { return c[0] + x * (c[1] + x * (c[2] + x * (c[3] + x * c[4]))); };
    const Settling settling(now, settling_h, hours,
                            {polynomial(0), polynomial(0.25), polynomial(0.5), polynomial(0.75), polynomial(1)});
    const double after_h = n.between(0, hours);
    // In units of the settling time, no further back than e^-60 is something.
    const double z = after_h / settling_h, from = std::fmax(0, z - 60);
    const double integral = boost::math::quadrature::gauss_kronrod<double, 61>::integrate(
        [&](double s) { return polynomial(s * settling_h / hours) * std::exp(s - z); }, from, z, 12, 1e-13);
    worst = std::fmax(worst, std::abs(settling.at(after_h) - (now * std::exp(-z) + integral)));
    CHECK(settling.at(0) == now);
  }
  MESSAGE("settling: worst difference ", worst, " K");
  CHECK(worst <= 1e-10);
}

TEST_CASE("the long settling is where it settles, and cutting it changes nothing") {
  CHECK(Settling(3, 0.1, 10, {2, 2, 2, 2, 2}).at(10) == doctest::Approx(2).epsilon(1e-14));
  const Settling whole(3, 0.5, 2, {1, 1.5, 2, 2.5, 3});  // towards 1 + t
  const Settling second(whole.at(0.7), 0.5, 1.3, {1.7, 2.025, 2.35, 2.675, 3});
  CHECK(second.at(1.3) == doctest::Approx(whole.at(2)).epsilon(1e-13));
}
