#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <boost/math/quadrature/gauss.hpp>

#include <ferment/base/error.hpp>
#include <ferment/clock/drift.hpp>

#include "box.hpp"
#include "naive.hpp"

using namespace ferment;
using naive::Real;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

Real factor(const TemperatureLaw& law, const Real& t) {
  if (const auto* c = std::get_if<Cardinal>(&law)) return naive::cardinal(t, c->t_min_c, c->t_opt_c, c->t_max_c);
  if (const auto* s = std::get_if<SquareRoot>(&law))
    return naive::square_root(t, s->t_min_c, s->t_max_c, s->decline_per_k);
  if (const auto* a = std::get_if<Arrhenius>(&law)) return naive::arrhenius(t, a->activation_energy_kj);
  return naive::constant_q10(t, std::get<ConstantQ10>(law).q10);
}

/// The integral of the factor over the drift, by Gauss–Legendre quadrature in 100-digit arithmetic over pieces that end
/// where the temperature passes a limit of the law.
Real reference(const TemperatureLaw& law, const Drift& d, const Real& time_h, double low, double high) {
  const Real room = d.surroundings_c.value, gap = d.start_c.value - room, tau = d.time_constant_h.value;
  std::vector<Real> ends{0, time_h};
  for (const double limit : {low, high}) {
    if (!std::isfinite(limit) || gap == 0) continue;
    const Real left = (limit - room) / gap;
    if (left > 0 && left < 1 && -log(left) * tau < time_h) ends.push_back(-log(left) * tau);
  }
  const Real level = 250 * tau;  // the gap is below the last digit
  if (level < time_h) ends.push_back(level);
  std::sort(ends.begin(), ends.end());
  const auto at = [&](const Real& t) { return factor(law, room + gap * exp(-t / tau)); };
  using Gauss = boost::math::quadrature::gauss<Real, 20>;
  Real sum = 0;
  for (std::size_t i = 1; i < ends.size(); ++i) {
    const Real a = ends[i - 1], b = ends[i];
    if (a >= level) {
      sum += (b - a) * factor(law, room);
      continue;
    }
    const int pieces = std::max(1, static_cast<int>(ceil((b - a) / (tau / 4))));
    for (int p = 0; p < pieces; ++p)
      sum += Gauss::integrate(at, Real(a + (b - a) * p / pieces), Real(a + (b - a) * (p + 1) / pieces));
  }
  return sum;
}

Real reference(const Cardinal& law, const Drift& d, const Real& time_h) {
  return reference(law, d, time_h, law.t_min_c, law.t_max_c);
}

Drift any_drift(box::Numbers& n) { return {n.between(1, 44), n.between(1, 44), n.magnitude(0.01, 20)}; }

}  // namespace

TEST_CASE("the exact clock against quadrature in 100 digits, and its inverse") {
  box::Numbers n(701);
  double worst = 0, worst_back = 0;
  for (int i = 0; i < 80; ++i) {
    Drift d = any_drift(n);
    if (i % 4 == 0) d.surroundings_c = 46.5625;  // the pole of the default law
    if (i % 4 == 1) d.surroundings_c = 46.5625 + n.between(-1, 1) * std::pow(10, -n.between(0, 12));
    const double time = d.time_constant_h * n.magnitude(1e-3, 8);
    const double got = drift_equivalent_h(Cardinal{}, d, time);
    const Real wanted = reference(Cardinal{}, d, time);
    worst = std::max(worst, naive::relative_error(got, wanted));
    if (d.surroundings_c > 45 && got >= drift_equivalent_h(Cardinal{}, d, 1000) * (1 - 1e-9))
      continue;  // the clock has stopped by then
    const double back = drift_hours(Cardinal{}, d, got);
    worst_back = std::max(worst_back, std::abs(back / time - 1));
  }
  MESSAGE("drift: worst relative error ", worst, ", of the inverse ", worst_back);
  CHECK(worst < 1e-12);
  CHECK(worst_back < 1e-11);
}

TEST_CASE("other cardinal laws: the pole near, far and gone") {
  box::Numbers n(702);
  double worst = 0;
  const std::array laws{Cardinal{0, 30, 45},       // a = 2b: no pole
                        Cardinal{0, 30, 44.9999},  // far away
                        Cardinal{0, 30, 43.8},     // below Tmin
                        Cardinal{-9, 44, 44.6},    // close above Tmax
                        Cardinal{7, 29, 43}};
  for (int i = 0; i < 40; ++i) {
    const Cardinal& law = laws[static_cast<std::size_t>(i) % laws.size()];
    const Drift d{n.between(9, 42), n.between(-10, 60), n.magnitude(0.05, 10)};
    const double time = d.time_constant_h * n.magnitude(0.01, 6);
    worst = std::max(worst, naive::relative_error(drift_equivalent_h(law, d, time), reference(law, d, time)));
  }
  MESSAGE("drift, other cardinal laws: worst relative error ", worst);
  CHECK(worst < 1e-12);
}

TEST_CASE("the other laws against quadrature in 100 digits, and their inverses") {
  box::Numbers n(703);
  double worst = 0, worst_back = 0;
  const std::array<TemperatureLaw, 6> laws{ConstantQ10{},  ConstantQ10{6}, Arrhenius{},
                                           Arrhenius{150}, SquareRoot{},   SquareRoot{-2, 47, 2}};
  for (int i = 0; i < 48; ++i) {
    const TemperatureLaw& law = laws[static_cast<std::size_t>(i) % laws.size()];
    const Drift d = any_drift(n);
    const double time = d.time_constant_h * n.magnitude(1e-3, 6);
    const auto* root = std::get_if<SquareRoot>(&law);
    const double got = drift_equivalent_h(law, d, time);
    worst = std::max(worst, naive::relative_error(got, reference(law, d, time, root ? root->t_min_c : -infinity,
                                                                 root ? root->t_max_c : infinity)));
    worst_back = std::max(worst_back, std::abs(drift_hours(law, d, got) / time - 1));
  }
  MESSAGE("drift, other laws: worst relative error ", worst, ", of the inverse ", worst_back);
  CHECK(worst < 1e-12);
  CHECK(worst_back < 1e-11);
}

TEST_CASE("no drift is the constant temperature; parts of a drift add up") {
  box::Numbers n(704);
  for (int i = 0; i < 2000; ++i) {
    const Drift d = any_drift(n);
    const double time = n.magnitude(1e-3, 100);
    const Drift level{d.start_c, d.start_c, d.time_constant_h};
    CHECK(drift_equivalent_h(Cardinal{}, level, time) ==
          doctest::Approx(time * temperature_factor(Cardinal{}, d.start_c)).epsilon(1e-13));
    const double first = n.unit() * time;
    Drift then = d;
    then.start_c = drifted_c(d, first);
    const double parts = drift_equivalent_h(Cardinal{}, d, first) + drift_equivalent_h(Cardinal{}, then, time - first);
    CHECK(parts == doctest::Approx(drift_equivalent_h(Cardinal{}, d, time)).epsilon(1e-12));
  }
  CHECK(drift_equivalent_h(Cardinal{}, {20, 10, 1}, 0) == 0);
  CHECK(drift_hours(Cardinal{}, {20, 10, 1}, 0) == 0);
  CHECK(drifted_c({20, 10, 2}, 0) == 20);
  CHECK(drifted_c({20, 10, 2}, 2) == doctest::Approx(10 + 10 * std::exp(-1.0)).epsilon(1e-15));
}

TEST_CASE("where the clock stands still: passed on the way, never left, reached for good") {
  const Cardinal law{};
  // From −2 °C, where it stands, to a warm room: it begins at once.
  CHECK(drift_equivalent_h(law, {-2, 30, 1}, 5) > 0);
  // Into ice: it stops when the dough passes −2 °C, and what it reaches is named.
  const Drift into_ice{20, -20, 2};
  const double reached = drift_equivalent_h(law, into_ice, 1000);
  CHECK(reached == drift_equivalent_h(law, into_ice, 2 * std::log(40.0 / 18)));
  CHECK(drift_hours(law, into_ice, 0.99 * reached) < 2 * std::log(40.0 / 18));
  try {
    drift_hours(law, into_ice, reached * 1.01);
    FAIL("accepted");
  } catch (const NoSolution& error) {
    CHECK(error.detail().high == reached);
    CHECK(error.problem().starts_with("the clock stops before"));
  }
  // Between laws' limits nothing ever runs.
  CHECK(drift_equivalent_h(Cardinal{7, 29, 43}, {1, 5, 1}, 100) == 0);
  CHECK_THROWS_AS(drift_hours(Cardinal{7, 29, 43}, {1, 5, 1}, 0.1), NoSolution);
  // A warm law's clock that begins late: from 1 °C it waits until 7 °C.
  const Drift late{1, 25, 1};
  const double begins = std::log(24.0 / 18);
  CHECK(drift_equivalent_h(Cardinal{7, 29, 43}, late, begins) == 0);
  CHECK(drift_equivalent_h(Cardinal{7, 29, 43}, late, begins + 0.1) > 0);
  CHECK(drift_hours(Cardinal{7, 29, 43}, late, 1e-6) > begins);
}

TEST_CASE("arrays of every length equal the scalar bit for bit, whatever the neighbours; none is left unconverged") {
  box::Numbers n(705);
  for (const std::size_t size : {std::size_t{0}, std::size_t{1}, std::size_t{5}, std::size_t{127}, std::size_t{128},
                                 std::size_t{129}, std::size_t{700}}) {
    std::vector<double> start(size), room(size), tau(size), wanted(size), hours(size), clock(size);
    for (std::size_t i = 0; i < size; ++i) {
      const Drift d = any_drift(n);
      start[i] = d.start_c;
      room[i] = n.unit() < 0.1 ? n.between(-30, 70) : d.surroundings_c.value;
      tau[i] = d.time_constant_h;
      wanted[i] = n.magnitude(1e-4, 30);
    }
    drift_equivalent_h(Cardinal{}, {start, room, tau}, wanted, clock);
    drift_hours(Cardinal{}, {start, room, tau}, wanted, hours, Unreachable::infinity);
    for (std::size_t i = 0; i < size; ++i) {
      const Drift d{start[i], room[i], tau[i]};
      CHECK(clock[i] == drift_equivalent_h(Cardinal{}, d, wanted[i]));
      double one = 0;
      drift_hours(Cardinal{}, {start[i], room[i], tau[i]}, wanted[i], {&one, 1}, Unreachable::infinity);
      CHECK(hours[i] == one);
      if (hours[i] > 1000) continue;
      CHECK(drift_equivalent_h(Cardinal{}, d, hours[i]) == doctest::Approx(wanted[i]).epsilon(2e-12));
    }
  }
}

TEST_CASE("a measured series: straight lines, exactly") {
  // A line is the drift with an endless time constant; reference by quadrature in 100 digits.
  box::Numbers n(706);
  double worst = 0;
  using Gauss = boost::math::quadrature::gauss<Real, 30>;
  for (int i = 0; i < 60; ++i) {
    std::vector<double> time{0}, temperature{n.between(-5, 47)};
    for (int k = 0; k < 4; ++k) {
      time.push_back(time.back() + n.magnitude(0.01, 3));
      temperature.push_back(i % 5 == 0 ? temperature.back() : n.between(-5, 47));
    }
    std::vector<double> got(time.size());
    series_equivalent_h(Cardinal{}, time, temperature, got);
    Real wanted = 0;
    for (std::size_t k = 1; k < time.size(); ++k) {
      const Real a = temperature[k - 1], b = temperature[k], hours = Real(time[k]) - Real(time[k - 1]);
      if (a == b) {
        wanted += hours * factor(Cardinal{}, a);
      } else {
        const auto within = [](const Real& t) { return Real(std::max(Real(-2), std::min(Real(45), t))); };
        const Real low = within(std::min<Real>(a, b)), high = within(std::max<Real>(a, b));
        const auto f = [](const Real& t) { return factor(Cardinal{}, t); };
        for (int p = 0; p < 8; ++p) {
          wanted += hours / abs(b - a) *
                    Gauss::integrate(f, Real(low + (high - low) * p / 8), Real(low + (high - low) * (p + 1) / 8));
        }
      }
      if (wanted > 1e-6) worst = std::max(worst, naive::relative_error(got[k], wanted));
    }
  }
  MESSAGE("series: worst relative error ", worst);
  CHECK(worst < 1e-12);
}

TEST_CASE("a finely measured drift is the drift, for every law") {
  const Drift d{27, 9, 1.7};
  std::vector<double> time, temperature;
  for (int i = 0; i <= 20000; ++i) {
    time.push_back(i * 5e-4);
    temperature.push_back(drifted_c(d, time.back()));
  }
  std::vector<double> got(time.size());
  for (const TemperatureLaw& law : {TemperatureLaw(Cardinal{}), TemperatureLaw(SquareRoot{}),
                                    TemperatureLaw(Arrhenius{}), TemperatureLaw(ConstantQ10{})}) {
    series_equivalent_h(law, time, temperature, got);
    CHECK(got.back() == doctest::Approx(drift_equivalent_h(law, d, 10)).epsilon(1e-7));
  }
}

TEST_CASE("drifts and series that cannot be are refused") {
  CHECK_THROWS_AS(drift_equivalent_h(Cardinal{}, {46, 20, 1}, 1), InvalidInput);
  CHECK_THROWS_AS(drift_equivalent_h(Cardinal{}, {20, 20, 0}, 1), InvalidInput);
  CHECK_THROWS_AS(drift_equivalent_h(Cardinal{}, {20, 20, 1}, -1), InvalidInput);
  CHECK_THROWS_AS(drift_hours(Cardinal{}, {20, 20, 1}, -1), InvalidInput);
  CHECK_THROWS_AS(drift_hours(Cardinal{20, 10, 45}, {20, 20, 1}, 1), InvalidInput);
  const auto text = [](std::vector<double> time, std::vector<double> temperature) {
    std::vector<double> out(time.size());
    try {
      series_equivalent_h(Cardinal{}, time, temperature, out);
    } catch (const InvalidInput& error) {
      return std::string(error.what());
    }
    return std::string("accepted");
  };
  CHECK(text({0}, {20}).find("at least two readings, got 1") != std::string::npos);
  CHECK(text({0, 1}, {20}).find("2 times, 1 temperatures") != std::string::npos);
  CHECK(text({0, 1, 0.5}, {20, 20, 20}).find("time_h: time goes from 1 h to 0.5 h at reading 3 of 3") == 0);
  CHECK(text({0, 1, std::nan("")}, {20, 20, 20}).find("must be finite and rise") != std::string::npos);
  CHECK(text({0, 1}, {20, 200}).find("temperature_c: temperature 200 °C is outside") == 0);
}

TEST_CASE("at the very edge of a law the clock neither runs back nor fails to settle") {
  const double t = -1.9999999999999998;  // the first number above −2 °C
  const Drift still{.start_c = t, .surroundings_c = t, .time_constant_h = .001738095417404786};
  const double passed = drift_equivalent_h(Cardinal{}, still, 1000);
  CHECK(passed > 0);
  CHECK(passed < 1e-30);
  CHECK(drift_hours(Cardinal{}, still, passed) == doctest::Approx(1000).epsilon(1e-9));
  for (const double limit_c : {-2.0, 45.0}) {
    for (const double off_k : {1e-14, 1e-9, 1e-5, 0.009, 0.011, 0.3}) {
      for (const double gap_k : {0.0, 1e-12, 1e-4, 5.0}) {
        const double inwards = limit_c < 0 ? 1 : -1, room_c = limit_c + inwards * off_k;
        const Drift drift{.start_c = room_c + inwards * gap_k, .surroundings_c = room_c, .time_constant_h = 0.7};
        CAPTURE(room_c);
        CAPTURE(drift.start_c);
        double before = 0;
        for (const double hours : {0.01, 1.0, 30.0, 900.0}) {
          const double now = drift_equivalent_h(Cardinal{}, drift, hours);
          CHECK(now >= before);
          before = now;
          // There and back in the clock's own hours: it may all but stand still.
          if (now > 1e-12)
            CHECK(drift_equivalent_h(Cardinal{}, drift, drift_hours(Cardinal{}, drift, now)) ==
                  doctest::Approx(now).epsilon(1e-9));
        }
      }
    }
  }
}
