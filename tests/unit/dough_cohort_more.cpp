#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include <ferment/dough/cohort.hpp>

#include "box.hpp"
#include "dough/cohort_formula.hpp"
#include "naive.hpp"

using namespace ferment;
using formula::CohortCurve;
using naive::Real;

namespace {

Cohort straight(double percent, Yeast yeast, const Kitchen& in) {
  const Cohort dose = new_cohort(percent, yeast);
  return mixed_cohorts({}, {&dose, 1}, in).at(0);
}

/// Half grown, diluted, and of an age.
Cohort any_cohort(box::Numbers& n, const Kitchen& in) {
  const Cohort old = aged(straight(n.magnitude(0.01, 4), box::all_yeasts[n.index(4)], in), n.between(0, in.growth_lag_h + 2 / in.growth_rate));
  if (n.index(2) == 0) return old;
  const CohortPart part{n.between(0.05, 0.95), {old}};
  const Cohort fresh = new_cohort(n.magnitude(0.01, 4), Yeast::compressed);
  return aged(mixed_cohorts({&part, 1}, {&fresh, 1}, in)[0], n.between(0, 3));
}

}  // namespace

TEST_CASE("work is the integral of the pace") {
  box::Numbers n(811);
  double worst = 0;
  for (int i = 0; i < 400; ++i) {
    const Kitchen in = i % 2 ? box::any_kitchen(n) : Kitchen{};
    const Cohort cohort = any_cohort(n, in);
    const CohortCurve curve(cohort, in);
    const double hours = n.magnitude(0.1, 60), begins = curve.until_growth();
    std::vector<double> ends{0, hours};
    if (begins > 0 && begins < hours) ends.push_back(begins);  // the pace has a kink there
    std::sort(ends.begin(), ends.end());
    using Gauss = boost::math::quadrature::gauss_kronrod<double, 31>;
    double integral = 0;
    for (std::size_t k = 1; k < ends.size(); ++k) {
      integral += Gauss::integrate([&](double h) { return curve.pace_at(h); }, ends[k - 1], ends[k], 15, 1e-12);
    }
    worst = std::max(worst, std::abs(curve.work_until(hours) / integral - 1));
  }
  MESSAGE("work against the integral of the pace: worst relative difference ", worst);
  CHECK(worst <= 1e-10);
}

TEST_CASE("mass follows the logistic with the start-up of its dose, against 100 digits") {
  box::Numbers n(812);
  double worst_mass = 0, worst_pace = 0;
  for (int i = 0; i < 2000; ++i) {
    const Kitchen in = i % 2 ? box::any_kitchen(n) : Kitchen{};
    const Yeast yeast = box::all_yeasts[n.index(4)];
    const double percent = n.magnitude(0.011, 4.9) * box::per_instant(yeast), hours = n.magnitude(1e-2, 200);
    const naive::Curve curve = naive::curve_of(in, percent, yeast, 0);
    Real grown = curve.x0;
    if (hours > in.growth_lag_h) {
      const Real most = curve.x0 + curve.increment;
      grown = most / (1 + curve.increment / curve.x0 * exp(-curve.mu * most / curve.increment * (Real(hours) - curve.lag)));
    }
    const Cohort cohort = aged(straight(percent, yeast, in), hours);
    worst_mass = std::max(worst_mass, naive::relative_error(mass_now(cohort, in), grown));
    // Against the mass: at first the pace is a small difference.
    worst_pace = std::max(worst_pace, std::abs(CohortCurve(cohort, in).pace_at(0) - static_cast<double>(naive::yeast_at_work(hours, curve))) /
                                          static_cast<double>(grown));
  }
  MESSAGE("logistic: worst relative error of the mass ", worst_mass, ", of the pace ", worst_pace);
  CHECK(worst_mass <= 1e-13);
  CHECK(worst_pace <= 1e-13);
}

TEST_CASE("young yeasts share the growth by their doses, a grown one by its mass") {
  const Kitchen in;
  const std::vector<Cohort> doses{new_cohort(0.2, Yeast::instant), new_cohort(0.4, Yeast::compressed), new_cohort(0.3, Yeast::active_dry)};
  const std::vector<Cohort> together = mixed_cohorts({}, doses);
  REQUIRE(together.size() == 3);
  double all = 0;
  for (const Cohort& dose : doses) all += dose.dose_g;
  for (std::size_t i = 0; i < doses.size(); ++i) {
    CHECK(together[i].room_g == doctest::Approx(doses[i].dose_g / all * in.growth_increment).epsilon(1e-14));
    CHECK(together[i].increment_g == doctest::Approx(doses[i].dose_g / all * in.growth_increment).epsilon(1e-14));
  }
  // One that came in an hour before, still young, into fresh flour with another: each by its dose.
  const CohortPart young{0.4, {aged(straight(0.5, Yeast::instant, in), 1)}};
  const std::vector<Cohort> both = mixed_cohorts({&young, 1}, {doses.data() + 1, 1});
  REQUIRE(both.size() == 2);
  const double old_dose = 0.4 * young.cohorts[0].dose_g, sum = old_dose + doses[1].dose_g;
  CHECK(both[0].room_g == doctest::Approx(old_dose / sum * in.growth_increment).epsilon(1e-14));
  CHECK(both[1].room_g == doctest::Approx(doses[1].dose_g / sum * in.growth_increment).epsilon(1e-14));
  // A grown one: by its mass, and only what it and the fresh flour have left to give.
  const CohortPart grown{0.4, {aged(straight(0.5, Yeast::instant, in), 6)}};
  const double mass = 0.4 * mass_now(grown.cohorts[0]), dose = doses[1].dose_g;
  const double left = 0.4 * (grown.cohorts[0].dose_g + in.growth_increment - mass_now(grown.cohorts[0])) + 0.6 * in.growth_increment;
  const std::vector<Cohort> mixed = mixed_cohorts({&grown, 1}, {&doses[1], 1});
  CHECK(mixed[0].room_g == doctest::Approx(mass / (mass + dose) * left).epsilon(1e-13));
  CHECK(mixed[1].room_g == doctest::Approx(dose / (mass + dose) * left).epsilon(1e-13));
  CHECK(mixed[1].increment_g == doctest::Approx(dose / (mass + dose) * in.growth_increment).epsilon(1e-13));
}

TEST_CASE("doughs of one age and different doses keep their yeast, its pace and its room") {
  const Kitchen in;
  for (const double age : {1.0, 4.0, 6.0, 12.0, 40.0}) {
    const Cohort weak = aged(straight(0.1, Yeast::instant, in), age), strong = aged(straight(1, Yeast::instant, in), age);
    const std::vector<CohortPart> parts{{0.6, {weak}}, {0.4, {strong}}};
    double mass = 0, pace = 0, room = 0;
    for (const Cohort& cohort : mixed_cohorts(parts, {})) {
      mass += mass_now(cohort);
      pace += CohortCurve(cohort, in).pace_at(0);
      room += cohort.mass_g + cohort.room_g - mass_now(cohort);
    }
    const double mass_before = 0.6 * mass_now(weak) + 0.4 * mass_now(strong);
    CHECK(mass == doctest::Approx(mass_before).epsilon(1e-13));
    CHECK(pace == doctest::Approx(0.6 * CohortCurve(weak, in).pace_at(0) + 0.4 * CohortCurve(strong, in).pace_at(0)).epsilon(1e-13));
    CHECK(mass + room == doctest::Approx(0.6 * weak.dose_g + 0.4 * strong.dose_g + in.growth_increment).epsilon(1e-13));
  }
}
