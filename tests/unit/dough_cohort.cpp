#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include <ferment/base/error.hpp>
#include <ferment/dough/cohort.hpp>
#include <ferment/dough/gas.hpp>

#include "box.hpp"
#include "dough/cohort_formula.hpp"
#include "dough/gas_formula.hpp"
#include "naive.hpp"
#include "refusal.hpp"

using namespace ferment;
using formula::CohortCurve;
using naive::Real;

namespace {

const Kitchen kitchen;

using Cohorts = std::vector<Cohort>;

Cohorts mix(std::vector<CohortPart> parts, Cohorts added = {}, const Kitchen& in = kitchen) {
  return mixed_cohorts(parts, added, in);
}

/// A dose mixed into fresh flour.
Cohort straight(double percent, Yeast yeast = Yeast::instant, const Kitchen& in = kitchen) {
  const Cohorts dough = mix({}, {new_cohort(percent, yeast)}, in);
  REQUIRE(dough.size() == 1);
  return dough[0];
}

Cohorts later(Cohorts cohorts, double hours) {
  for (Cohort& cohort : cohorts) cohort = aged(cohort, hours);
  return cohorts;
}

double mass(const Cohorts& cohorts, const Kitchen& in = kitchen) {
  double sum = 0;
  for (const Cohort& cohort : cohorts) sum += mass_now(cohort, in);
  return sum;
}
double room_left(const Cohorts& cohorts, const Kitchen& in = kitchen) {
  double sum = 0;
  for (const Cohort& cohort : cohorts) sum += cohort.mass_g + cohort.room_g - mass_now(cohort, in);
  return sum;
}
double work(const Cohorts& cohorts, double hours, const Kitchen& in = kitchen) {
  double sum = 0;
  for (const Cohort& cohort : cohorts) sum += CohortCurve(cohort, in).work_until(hours);
  return sum;
}
/// About the work since the yeast came in. Work from now is the difference of two such sums: what it is measured
/// against.
double all_work(const Cohorts& cohorts, double hours) {
  double oldest = 0;
  for (const Cohort& cohort : cohorts) oldest = std::max(oldest, cohort.equivalent_h);
  return mass(cohorts) * (oldest + hours);
}
double pace(const Cohorts& cohorts, double hours, const Kitchen& in = kitchen) {
  double sum = 0;
  for (const Cohort& cohort : cohorts) sum += CohortCurve(cohort, in).pace_at(hours);
  return sum;
}

double apart(double a, double b) { return std::abs(a / b - 1); }

Yeast any_yeast(box::Numbers& n) { return box::all_yeasts[n.index(4)]; }

/// Young before its lag, half grown, or old.
double any_age(box::Numbers& n, const Kitchen& in = kitchen) {
  switch (n.index(3)) {
    case 0: return in.growth_lag_h * n.unit();
    case 1: return in.growth_lag_h + n.between(0, 2) / in.growth_rate;
    default: return in.growth_lag_h + n.between(5, 100) / in.growth_rate;
  }
}

/// A dough of one or two additions, the second made when the first had an age.
Cohorts any_cohorts(box::Numbers& n, const Kitchen& in = kitchen) {
  Cohorts dough{straight(n.magnitude(0.01, 4), any_yeast(n), in)};
  dough = later(dough, any_age(n, in));
  if (n.index(2) == 0) return dough;
  return later(mix({{n.between(0.05, 1), dough}}, {new_cohort(n.magnitude(0.01, 4), any_yeast(n))}, in),
               any_age(n, in));
}

/// Half grown, diluted, and of an age.
Cohort any_cohort(box::Numbers& n, const Kitchen& in) {
  const Cohort old = aged(straight(n.magnitude(0.01, 4), box::all_yeasts[n.index(4)], in),
                          n.between(0, in.growth_lag_h + 2 / in.growth_rate));
  if (n.index(2) == 0) return old;
  const CohortPart part{n.between(0.05, 0.95), {old}};
  const Cohort fresh = new_cohort(n.magnitude(0.01, 4), Yeast::compressed);
  return aged(mixed_cohorts({&part, 1}, {&fresh, 1}, in)[0], n.between(0, 3));
}

}  // namespace

TEST_CASE("a dose mixed into fresh flour works as the one-dose gas curve") {
  box::Numbers n(801);
  double worst = 0, worst_gas = 0, worst_pace = 0;
  for (int i = 0; i < 5000; ++i) {
    Kitchen in;
    if (i % 2) in = box::any_kitchen(n);
    const Yeast yeast = any_yeast(n);
    const double percent = n.magnitude(0.0100001, 4.9999) * box::per_instant(yeast);
    const double hours = i % 10 == 2 ? in.growth_lag_h : n.magnitude(1e-3, 1e4), sugar = n.between(0, 40);
    const Cohort cohort = straight(percent, yeast, in);
    CHECK(cohort.dose_g == doctest::Approx(gassing_dry_matter(percent, yeast)).epsilon(1e-15));
    const CohortCurve curve(cohort, in);
    const double done = curve.work_until(hours);
    const double wanted =
        formula::work_after(hours, cohort.dose_g, formula::GasCurve<double>(in, start_up_h(yeast, in)));
    worst = std::max(worst, apart(done, wanted));
    const double gas =
        formula::gas_for_work(done, gas_capacity(sugar, in), formula::GasCurve<double>(in, start_up_h(yeast, in)));
    worst_gas = std::max(worst_gas, apart(gas, gas_made(hours, percent, yeast, sugar, in)));
    // The pace is the slope of the work.
    if (std::abs(hours - in.growth_lag_h) < 1e-3 * hours) continue;
    const double step = 1e-4 * hours;
    const double slope = (curve.work_until(hours + step) - curve.work_until(hours - step)) / (2 * step);
    if (hours < 100) worst_pace = std::max(worst_pace, apart(slope, curve.pace_at(hours)));
  }
  MESSAGE("one cohort: worst relative difference of work ", worst, ", of gas ", worst_gas, ", of pace ", worst_pace);
  CHECK(worst <= 1e-13);
  CHECK(worst_gas <= 1e-13);
  CHECK(worst_pace <= 1e-5);
}

namespace {

/// work_at and along with what is known beforehand, against those that know nothing.
template <formula::StartUp start, bool grows>
void check_knowing(const CohortCurve& curve, double later, double& worst_work, double& worst_pace, double& worst_bend) {
  const formula::WorkAlong along = curve.along<start, grows>(later);
  const double work = curve.work_at(later) - curve.work_so_far, pace = curve.pace_at(later);
  const double size = std::abs(curve.work_at(later)) + curve.dose * later;
  worst_work = std::max({worst_work, std::abs(along.work - curve.work_so_far - work) / size,
                         std::abs(curve.work_at<start, grows>(later) - curve.work_at(later)) / size});
  worst_pace = std::max(worst_pace, std::abs(along.pace - pace) / (curve.mass + curve.room));
  const double step = 1e-4 * std::min(curve.start_up, 1 / curve.growth);
  const bool kink = std::abs(curve.growing + later - curve.lag) < 2 * step;
  const double slope = (curve.pace_at(later + step) - curve.pace_at(later - step)) / (2 * step);
  if (!kink) worst_bend = std::max(worst_bend, std::abs(along.bend - slope) / ((curve.mass + curve.room) / step));
}

}  // namespace

TEST_CASE("work along a curve: value, pace and bend, with and without what is known of the cohort's life") {
  using formula::StartUp;
  box::Numbers n(804);
  double work = 0, pace = 0, bend = 0;
  std::size_t seen[6] = {};
  for (int i = 0; i < 20000; ++i) {
    Kitchen in;
    if (i % 2) in = box::any_kitchen(n);
    Cohort cohort = straight(n.magnitude(0.05, 4), Yeast::instant, in);
    cohort = aged(cohort, i % 3 == 0 ? 0 : n.magnitude(0.01, 30));
    const CohortCurve curve(cohort, in);
    const double later = n.magnitude(1e-3, 40);
    const bool grows = curve.grows_by(later);
    const StartUp start = curve.start_up_from(later);
    ++seen[2 * static_cast<int>(start) + grows];
    check_knowing<StartUp::begins, true>(curve, later, work, pace, bend);
    if (!grows) check_knowing<StartUp::begins, false>(curve, later, work, pace, bend);
    if (start != StartUp::begins) check_knowing<StartUp::goes_on, true>(curve, later, work, pace, bend);
    if (start != StartUp::begins && !grows) check_knowing<StartUp::goes_on, false>(curve, later, work, pace, bend);
    if (start == StartUp::is_over) check_knowing<StartUp::is_over, true>(curve, later, work, pace, bend);
    if (start == StartUp::is_over && !grows) check_knowing<StartUp::is_over, false>(curve, later, work, pace, bend);
  }
  MESSAGE("work ", work, ", pace ", pace, ", bend ", bend, " of their sizes");
  for (const std::size_t times : seen) CHECK(times > 50);
  CHECK(work <= 1e-15);
  CHECK(pace <= 1e-14);
  CHECK(bend <= 1e-8);
}

TEST_CASE("work goes on where it was: ages add up") {
  box::Numbers n(802);
  double worst = 0;
  for (int i = 0; i < 2000; ++i) {
    const Cohorts dough = any_cohorts(n);
    const double first = n.magnitude(1e-2, 50), then = n.magnitude(1e-2, 50);
    const double error = std::abs(work(dough, first) + work(later(dough, first), then) - work(dough, first + then));
    worst = std::max(worst, error / all_work(dough, first + then));
  }
  MESSAGE("work in two steps: worst difference relative to all work ", worst);
  CHECK(worst <= 1e-14);
}

TEST_CASE("the mass is the dose before the lag, and grows to dose and increment") {
  box::Numbers n(803);
  for (int i = 0; i < 300; ++i) {
    Kitchen in;
    if (i % 2) in = box::any_kitchen(n);
    const Cohort fresh = straight(n.magnitude(0.01, 4), any_yeast(n), in);
    CHECK(fresh.mass_g == fresh.dose_g);
    CHECK(fresh.room_g == doctest::Approx(in.growth_increment).epsilon(1e-15));
    CHECK(fresh.increment_g == doctest::Approx(in.growth_increment).epsilon(1e-15));
    CHECK_FALSE(fresh.past_lag);
    CHECK(mass_now(fresh, in) == fresh.dose_g);
    CHECK(mass_now(aged(fresh, in.growth_lag_h * n.unit()), in) == fresh.dose_g);
    CHECK(mass_now(aged(fresh, in.growth_lag_h), in) == fresh.dose_g);
    double before = fresh.dose_g;
    for (const double hours : {0.1, 0.5, 1.0, 2.0}) {
      const double now = mass_now(aged(fresh, in.growth_lag_h + hours / in.growth_rate), in);
      CHECK(now >= before * (1 - 1e-14));
      before = now;
    }
    CHECK(before > fresh.dose_g);
    CHECK(before <= (fresh.dose_g + in.growth_increment) * (1 + 1e-14));
    CHECK(mass_now(aged(fresh, 1e5), in) == doctest::Approx(fresh.dose_g + in.growth_increment).epsilon(1e-14));
  }
}

TEST_CASE("two equal doughs are the dough") {
  box::Numbers n(804);
  double worst = 0, worst_relative = 0;
  for (int i = 0; i < 3000; ++i) {
    const Cohort old = aged(straight(n.magnitude(0.01, 4), any_yeast(n)), any_age(n));
    const Cohorts joined = mix({{0.5, {old}}, {0.5, {old}}});
    REQUIRE(joined.size() == 1);
    CHECK(joined[0].yeast == old.yeast);
    CHECK(joined[0].equivalent_h == old.equivalent_h);
    CHECK(joined[0].dose_g == doctest::Approx(old.dose_g).epsilon(1e-15));
    CHECK(mass_now(joined[0]) == doctest::Approx(mass_now(old)).epsilon(1e-14));
    for (const double hours : {0.01, 0.3, 1.0, 3.0, 10.0, 100.0}) {
      const double got = work(joined, hours), wanted = work({old}, hours);
      worst = std::max(worst, std::abs(got - wanted) / all_work({old}, hours));
      if (hours >= 1) worst_relative = std::max(worst_relative, apart(got, wanted));
    }
  }
  MESSAGE("two equal doughs: worst difference relative to all work ", worst, ", to the work of an hour or more ",
          worst_relative);
  CHECK(worst <= 1e-13);
  CHECK(worst_relative <= 1e-12);
}

TEST_CASE("a dough with nothing mixed in stays as it is") {
  box::Numbers n(805);
  for (int i = 0; i < 300; ++i) {
    const Cohorts dough = any_cohorts(n);
    const Cohorts same = mix({{1, dough}});
    REQUIRE(same.size() == dough.size());
    for (std::size_t k = 0; k < dough.size(); ++k) {
      CHECK(same[k].yeast == dough[k].yeast);
      CHECK(same[k].past_lag == dough[k].past_lag);
      for (double Cohort::*number : {&Cohort::dose_g, &Cohort::mass_g, &Cohort::room_g, &Cohort::increment_g,
                                     &Cohort::equivalent_h, &Cohort::growing_h}) {
        CHECK(same[k].*number == dough[k].*number);
      }
    }
  }
  CHECK(mix({}).empty());
  CHECK(mix({{0.3, {}}}).empty());
  CHECK(mix({{1, {}}}).empty());
}

TEST_CASE("mixing keeps the yeast, what it can still grow, and its pace") {
  box::Numbers n(806);
  double worst_mass = 0, worst_room = 0, worst_pace = 0, worst_dose = 0, worst_increment = 0;
  for (int i = 0; i < 5000; ++i) {
    Kitchen in;
    if (i % 2) in = box::any_kitchen(n);
    std::vector<CohortPart> parts(n.index(4));
    double flour = 0;
    for (CohortPart& part : parts) {
      part.flour_share = n.magnitude(1e-3, 1);
      flour += part.flour_share;
      if (n.index(8) > 0) part.cohorts = any_cohorts(n, in);  // else flour and water without yeast
    }
    const double all_old = i % 5 == 0 ? 1 : n.unit();
    for (CohortPart& part : parts) part.flour_share *= all_old / flour;
    Cohorts added;
    for (std::size_t k = n.index(3); k > 0; --k) added.push_back(new_cohort(n.magnitude(0.01, 4), any_yeast(n)));
    const Cohorts all = mix(parts, added, in);
    if (all.empty()) continue;

    double fresh = 1, mass_before = 0, room_before = 0, pace_before = 0, dose_before = 0;
    for (const CohortPart& part : parts) {
      if (part.cohorts.empty()) continue;
      fresh -= part.flour_share;
      mass_before += part.flour_share * mass(part.cohorts, in);
      room_before += part.flour_share * room_left(part.cohorts, in);
      pace_before += part.flour_share * pace(part.cohorts, 0, in);
      for (const Cohort& cohort : part.cohorts) dose_before += part.flour_share * cohort.dose_g;
    }
    for (const Cohort& cohort : added) {
      mass_before += cohort.mass_g;
      dose_before += cohort.dose_g;
    }
    room_before += fresh * in.growth_increment;
    double dose = 0, increment = 0;
    for (const Cohort& cohort : all) {
      dose += cohort.dose_g;
      increment += cohort.increment_g;
    }
    worst_mass = std::max(worst_mass, apart(mass(all, in), mass_before));
    worst_dose = std::max(worst_dose, apart(dose, dose_before));
    // What is left of the room of an old dough is a difference of masses.
    worst_room = std::max(worst_room, std::abs(room_left(all, in) - room_before) / (mass_before + room_before));
    // New yeast starts at rest; a pace is a difference of masses too.
    worst_pace = std::max(worst_pace, std::abs(pace(all, 0, in) - pace_before) / mass_before);
    const bool whole = parts.size() == 1 && fresh == 0 && added.empty();
    if (!whole) worst_increment = std::max(worst_increment, apart(increment, in.growth_increment));
  }
  MESSAGE("mixing: worst relative difference of mass ", worst_mass, ", of dose ", worst_dose, ", of room ", worst_room,
          ", of pace ", worst_pace, ", of increment ", worst_increment);
  CHECK(worst_mass <= 1e-13);
  CHECK(worst_dose <= 1e-13);
  CHECK(worst_room <= 1e-13);
  CHECK(worst_pace <= 1e-13);
  CHECK(worst_increment <= 1e-13);
}

TEST_CASE("just after dilution every cohort works at its share of the pace") {
  box::Numbers n(807);
  double worst = 0;
  for (int i = 0; i < 2000; ++i) {
    const Cohort old = aged(straight(n.magnitude(0.01, 4), any_yeast(n)), n.magnitude(0.05, 60));
    const double share = n.between(0.02, 0.98);
    const Cohorts all = mix({{share, {old}}}, {new_cohort(n.magnitude(0.01, 4), any_yeast(n))});
    REQUIRE(all.size() == 2);
    worst =
        std::max(worst, apart(CohortCurve(all[0], kitchen).pace_at(0), share * CohortCurve(old, kitchen).pace_at(0)));
    CHECK(std::abs(CohortCurve(all[1], kitchen).pace_at(0)) <= 1e-14 * all[1].dose_g);
    CHECK(mass_now(all[0]) == doctest::Approx(share * mass_now(old)).epsilon(1e-14));
    CHECK(all[0].equivalent_h == old.equivalent_h);
  }
  MESSAGE("diluted: worst relative difference of pace ", worst);
  CHECK(worst <= 1e-12);
}

TEST_CASE("a grown preferment does not lag again, a young one keeps its lag") {
  const Cohort grown = aged(straight(0.5), kitchen.growth_lag_h + 4);
  const Cohort diluted = mix({{0.3, {grown}}})[0];
  CHECK(diluted.past_lag);
  CHECK(diluted.growing_h == 0);
  CHECK(CohortCurve(diluted, kitchen).until_growth() <= 0);
  CHECK(mass_now(diluted) == doctest::Approx(0.3 * mass_now(grown)).epsilon(1e-14));
  CHECK(mass_now(aged(diluted, 1e-3)) > mass_now(diluted));
  CHECK(mass_now(aged(diluted, 1)) > 1.1 * mass_now(diluted));
  CHECK(
      mass_now(aged(diluted, 1e4)) ==
      doctest::Approx(0.3 * (grown.dose_g + kitchen.growth_increment) + 0.7 * kitchen.growth_increment).epsilon(1e-13));
  // Mixed again at once, and again later: it still goes on.
  const Cohort again = mix({{0.5, {diluted}}})[0];
  CHECK(again.past_lag);
  CHECK(mass_now(again) == doctest::Approx(0.5 * mass_now(diluted)).epsilon(1e-14));
  CHECK(mass_now(aged(again, 0.1)) > mass_now(again));

  const Cohort young = aged(straight(0.5), 1);
  const Cohort kept = mix({{0.3, {young}}})[0];
  CHECK_FALSE(kept.past_lag);
  CHECK(kept.growing_h == 1);
  CHECK(mass_now(aged(kept, kitchen.growth_lag_h - 1.001)) == doctest::Approx(0.3 * young.dose_g).epsilon(1e-15));
  CHECK(mass_now(aged(kept, kitchen.growth_lag_h - 0.9)) > 0.3 * young.dose_g);
}

TEST_CASE("doses of one kind added together are one cohort") {
  const Cohorts both = mix({}, {new_cohort(0.25, Yeast::instant), new_cohort(0.5, Yeast::instant)});
  const Cohort once = straight(0.75);
  REQUIRE(both.size() == 1);
  CHECK(both[0].dose_g == doctest::Approx(once.dose_g).epsilon(1e-15));
  CHECK(work(both, 9) == doctest::Approx(work({once}, 9)).epsilon(1e-14));
  CHECK(mix({}, {new_cohort(0.25, Yeast::instant), new_cohort(0.5, Yeast::compressed)}).size() == 2);
}

TEST_CASE("cohorts and shares that cannot be are refused") {
  const double not_a_number = std::numeric_limits<double>::quiet_NaN(),
               infinity = std::numeric_limits<double>::infinity();
  const Cohort old = aged(straight(0.5), 3);
  for (const double share : {-0.1, -1e-300, not_a_number}) {
    const std::string text = refusal([&] { mix({{share, {old}}}); }, "flour_share");
    CHECK(says(text, "a dough's share of the flour"));
    CHECK(says(text, "it must be 0 to 1"));
  }
  CHECK(says(refusal([&] { mix({{0.7, {old}}, {0.4, {old}}}); }, "flour_share"), "sum to 1.1, more than 1"));
  CHECK(says(refusal([&] { mix({{infinity, {old}}}); }, "flour_share"), "more than 1"));
  CHECK_NOTHROW(mix({{0.7, {old}}, {0.3, {old}}}));

  for (const double hours : {-1.0, 2e5, not_a_number, infinity}) refusal([&] { aged(old, hours); }, "equivalent_h");
  for (const double percent : {0.0, -1.0, 16.5, not_a_number, infinity})
    refusal([&] { new_cohort(percent, Yeast::instant); }, "yeast_percent");
  CHECK(new_cohort(1e-4, Yeast::compressed).dose_g == doctest::Approx(3e-5));  // a pinch in a large dough
  CHECK_THROWS_AS(new_cohort(1, static_cast<Yeast>(9)), InvalidInput);

  Kitchen wrong;
  wrong.growth_rate = -1;
  CHECK_THROWS_AS(mix({}, {new_cohort(1, Yeast::instant)}, wrong), InvalidInput);
  CHECK_THROWS_AS(mass_now(old, wrong), InvalidInput);
}

TEST_CASE("parts of a dough with several cohorts come together as they were; a part without flour is none") {
  Cohort old = new_cohort(0.1, Yeast::instant);
  std::vector<Cohort> dough = mixed_cohorts({}, std::span(&old, 1));
  for (Cohort& cohort : dough) cohort = aged(cohort, 6);
  const std::vector<CohortPart> preferment{{0.3, dough}};
  const Cohort fresh = new_cohort(0.5, Yeast::compressed);
  dough = mixed_cohorts(preferment, std::span(&fresh, 1));
  for (Cohort& cohort : dough) cohort = aged(cohort, 1);

  const std::vector<CohortPart> halves{{0.5, dough}, {0.5, dough}};
  const std::vector<Cohort> whole = mixed_cohorts(halves, {});
  REQUIRE(whole.size() == dough.size());
  for (std::size_t i = 0; i < dough.size(); ++i) {
    CHECK(whole[i].mass_g == doctest::Approx(dough[i].mass_g).epsilon(1e-15));
    CHECK(whole[i].room_g == doctest::Approx(dough[i].room_g).epsilon(1e-15));
    CHECK(whole[i].increment_g == doctest::Approx(dough[i].increment_g).epsilon(1e-15));
  }
  const std::vector<CohortPart> with_nothing{{0, dough}, {0.4, dough}};
  for (const Cohort& cohort : mixed_cohorts(with_nothing, std::span(&fresh, 1))) CHECK(cohort.room_g > 0);
}

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
      grown =
          most / (1 + curve.increment / curve.x0 * exp(-curve.mu * most / curve.increment * (Real(hours) - curve.lag)));
    }
    const Cohort cohort = aged(straight(percent, yeast, in), hours);
    worst_mass = std::max(worst_mass, naive::relative_error(mass_now(cohort, in), grown));
    // Against the mass: at first the pace is a small difference.
    worst_pace = std::max(worst_pace, std::abs(CohortCurve(cohort, in).pace_at(0) -
                                               static_cast<double>(naive::yeast_at_work(hours, curve))) /
                                          static_cast<double>(grown));
  }
  MESSAGE("logistic: worst relative error of the mass ", worst_mass, ", of the pace ", worst_pace);
  CHECK(worst_mass <= 1e-13);
  CHECK(worst_pace <= 1e-13);
}

TEST_CASE("young yeasts share the growth by their doses, a grown one by its mass") {
  const Kitchen in;
  const std::vector<Cohort> doses{new_cohort(0.2, Yeast::instant), new_cohort(0.4, Yeast::compressed),
                                  new_cohort(0.3, Yeast::active_dry)};
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
  const double left =
      0.4 * (grown.cohorts[0].dose_g + in.growth_increment - mass_now(grown.cohorts[0])) + 0.6 * in.growth_increment;
  const std::vector<Cohort> mixed = mixed_cohorts({&grown, 1}, {&doses[1], 1});
  CHECK(mixed[0].room_g == doctest::Approx(mass / (mass + dose) * left).epsilon(1e-13));
  CHECK(mixed[1].room_g == doctest::Approx(dose / (mass + dose) * left).epsilon(1e-13));
  CHECK(mixed[1].increment_g == doctest::Approx(dose / (mass + dose) * in.growth_increment).epsilon(1e-13));
}

TEST_CASE("doughs of one age and different doses keep their yeast, its pace and its room") {
  const Kitchen in;
  for (const double age : {1.0, 4.0, 6.0, 12.0, 40.0}) {
    const Cohort weak = aged(straight(0.1, Yeast::instant, in), age),
                 strong = aged(straight(1, Yeast::instant, in), age);
    const std::vector<CohortPart> parts{{0.6, {weak}}, {0.4, {strong}}};
    double mass = 0, pace = 0, room = 0;
    for (const Cohort& cohort : mixed_cohorts(parts, {})) {
      mass += mass_now(cohort);
      pace += CohortCurve(cohort, in).pace_at(0);
      room += cohort.mass_g + cohort.room_g - mass_now(cohort);
    }
    const double mass_before = 0.6 * mass_now(weak) + 0.4 * mass_now(strong);
    CHECK(mass == doctest::Approx(mass_before).epsilon(1e-13));
    CHECK(pace == doctest::Approx(0.6 * CohortCurve(weak, in).pace_at(0) + 0.4 * CohortCurve(strong, in).pace_at(0))
                      .epsilon(1e-13));
    CHECK(mass + room == doctest::Approx(0.6 * weak.dose_g + 0.4 * strong.dose_g + in.growth_increment).epsilon(1e-13));
  }
}
