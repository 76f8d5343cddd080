#include "process/dough_physics.hpp"

#include "heat/node.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/loops.hpp"
#include "clock/line.hpp"
#include "dough/shell.hpp"

namespace ferment {

DoughVolume::DoughVolume(const State& state, const Kitchen& kitchen)
    : gas_free_ml(percent_of_flour(state, state.amounts.dough_g) / kitchen.gas_free_density),
      mixed_ml(state.mixed_volume_ml), water_g(percent_of_flour(state, state.amounts.water_g)),
      water_activity(formula::water_activity(percent_of_flour(state, state.amounts.salt_g), water_g,
                                             percent_of_flour(state, state.amounts.sugar_g))),
      pressure_pa(formula::air_pressure(state.altitude_m)), onset(kitchen.retention_onset),
      limit(kitchen.retention_limit), gluten_percent(percent_of_flour(state, state.amounts.gluten_g)) {}

namespace {

FERMENT_INLINE double free_ratio_of(const DoughVolume& v, double co2, double air,
                                    const formula::CellAir<double>& cells) {
  return (v.gas_free_ml + (air + formula::in_cells(co2, air, cells.capacity)) * cells.molar_volume) / v.mixed_ml;
}

FERMENT_INLINE formula::CellAir<double> cells_of(const DoughVolume& v, double t) {
  return formula::cell_air(t, v.pressure_pa, v.water_activity, v.water_g, formula::saturation_pressure(t),
                           formula::co2_solubility(t));
}

FERMENT_WIDE_LOOPS void ratios_of(const DoughVolume& volume, formula::Retention<double> retention, double air,
                                  const Four& co2, const Four& t, Four& ratio) {
  const DoughVolume v = volume;
  for (std::size_t i = 0; i < ratio.size(); ++i) {
    ratio[i] = formula::held_ratio(free_ratio_of(v, co2[i], air, cells_of(v, t[i])), retention);
  }
}

}  // namespace

formula::CellAir<double> DoughVolume::cells_at(double t) const { return cells_of(*this, t); }

double DoughVolume::free_ratio(const Gas& gas, double t) const {
  return free_ratio_of(*this, gas.co2_mmol, gas.air_mmol, cells_of(*this, t));
}

Four DoughVolume::ratios(const Four& co2_mmol, double air_mmol, const Four& t, double anchor_ratio) const {
  Four ratio;
  ratios_of(*this, retention(anchor_ratio), air_mmol, co2_mmol, t, ratio);
  return ratio;
}

Gas DoughVolume::held(const Gas& gas, double t, double anchor_ratio) const {
  const double free = free_ratio(gas, t);
  const auto r = retention(anchor_ratio);
  if (free <= r.from) return gas;
  const auto cells = cells_at(t);
  const double in_cells = (formula::held_ratio(free, r) * mixed_ml - gas_free_ml) / cells.molar_volume - gas.air_mmol;
  return {in_cells > 0 ? formula::held_for_cells(in_cells, gas.air_mmol, cells.capacity) : 0, gas.air_mmol};
}

Gas DoughVolume::pressed(const Gas& held, double t, double kept) const {
  return {held.co2_mmol - (1 - kept) * formula::in_cells(held.co2_mmol, held.air_mmol, cells_at(t).capacity),
          held.air_mmol * kept};
}

namespace {

using formula::CohortCurve;
using formula::StartUp;

/// Calls work<start, grows>() with what is known of a curve from `first` to `last` equivalent hours on.
template <class Work>
FERMENT_INLINE void knowing_its_life(const CohortCurve& curve, double first, double last, Work work) {
  const bool grows = curve.grows_by(last);
  switch (curve.start_up_from(first)) {
    case StartUp::begins:
      return grows ? work.template operator()<StartUp::begins, true>()
                   : work.template operator()<StartUp::begins, false>();
    case StartUp::goes_on:
      return grows ? work.template operator()<StartUp::goes_on, true>()
                   : work.template operator()<StartUp::goes_on, false>();
    case StartUp::is_over:
      return grows ? work.template operator()<StartUp::is_over, true>()
                   : work.template operator()<StartUp::is_over, false>();
  }
}

struct Sugars {
  double made, capacity, rate;  ///< rate: over capacity, per g·h of work
};

FERMENT_WIDE_LOOPS void made_of(const CohortCurve* curves, std::size_t count, Sugars sugars, const Four& hours,
                                double first, double last, Four& made) {
  Four work{};
  for (std::size_t k = 0; k < count; ++k) {
    const CohortCurve c = curves[k];
    knowing_its_life(c, first, last, [&]<StartUp start, bool grows>() FERMENT_INLINED {
      for (std::size_t i = 0; i < hours.size(); ++i) work[i] += c.work_at<start, grows>(hours[i]) - c.work_so_far;
    });
  }
  for (std::size_t i = 0; i < hours.size(); ++i)
    made[i] = sugars.made - (sugars.capacity - sugars.made) * math::expm1(-sugars.rate * work[i]);
}

FERMENT_WIDE_LOOPS void along_of(const CohortCurve* curves, std::size_t count, Sugars sugars, const Four& hours,
                                 double first, double last, MadeAlong& along) {
  Four work{}, pace{}, bend{};
  for (std::size_t k = 0; k < count; ++k) {
    const CohortCurve c = curves[k];
    knowing_its_life(c, first, last, [&]<StartUp start, bool grows>() FERMENT_INLINED {
      for (std::size_t i = 0; i < hours.size(); ++i) {
        const formula::WorkAlong its = c.along<start, grows>(hours[i]);
        work[i] += its.work - c.work_so_far;
        pace[i] += its.pace;
        bend[i] += its.bend;
      }
    });
  }
  for (std::size_t i = 0; i < hours.size(); ++i) {
    const double made = sugars.made - (sugars.capacity - sugars.made) * math::expm1(-sugars.rate * work[i]);
    const double left = sugars.rate * (sugars.capacity - made);
    along.made[i] = made;
    along.slope[i] = left * pace[i];
    along.bend[i] = left * (bend[i] - sugars.rate * pace[i] * pace[i]);
  }
}

/// The same hours from the curves' own moment on, and the earliest and latest.
struct Later {
  Four hours;
  double first, last;
};
Later later_by(double passed_h, const Four& equivalent_h) {
  Later later{equivalent_h, 0, 0};
  for (double& h : later.hours) h += passed_h;
  const auto [first, last] = std::minmax_element(later.hours.begin(), later.hours.end());
  later.first = *first;
  later.last = *last;
  return later;
}

}  // namespace

bool MadeAlong::reaches(const Four& hours, double within_mmol) const {
  for (std::size_t i = 0; i < hours.size(); ++i) {
    const double away = hours[i] - equivalent_h[i];
    if (!(std::abs(0.5 * bend[i] * away * away) <= within_mmol)) return false;
  }
  return true;
}

GasMaking::GasMaking(const State& state, const Kitchen& kitchen)
    : made_then_(state.shells.empty() ? 0 : only_shell(state).made_mmol), made_(made_then_),
      capacity_(formula::gas_capacity(kitchen.gas_capacity, percent_of_flour(state, state.amounts.sugar_g))),
      rate_over_capacity_(kitchen.gassing_rate / capacity_) {
  for (const Cohort& cohort : state.cohorts) curves_.emplace_back(cohort, kitchen);
}

void GasMaking::go_on(double equivalent_h, double made_mmol) {
  passed_h_ += equivalent_h;
  made_ = made_mmol;
}

Four GasMaking::made_after(const Four& equivalent_h) const {
  const Later later = later_by(passed_h_, equivalent_h);
  Four made;
  made_of(curves_.data(), curves_.size(), {made_then_, capacity_, rate_over_capacity_}, later.hours, later.first,
          later.last, made);
  return made;
}

MadeAlong GasMaking::made_along(const Four& equivalent_h) const {
  const Later later = later_by(passed_h_, equivalent_h);
  MadeAlong along;
  along.equivalent_h = equivalent_h;
  along_of(curves_.data(), curves_.size(), {made_then_, capacity_, rate_over_capacity_}, later.hours, later.first,
           later.last, along);
  return along;
}

double GasMaking::until_growth() const {
  double soonest = std::numeric_limits<double>::infinity();
  for (const auto& curve : curves_) {
    const double until = curve.until_growth() - passed_h_;
    if (until > 1e-12 * curve.lag) soonest = std::min(soonest, until);
  }
  return soonest;
}

namespace {

template <class Any>
Any prepared(const TemperatureLaw& law) {
  return std::visit([](const auto& kind) -> Any { return formula::factor_of<double>(kind); }, law);
}

double solute_factor_of(const State& state, const Kitchen& kitchen) {
  if (state.cohorts.empty()) return 0;  // no clock runs; and its water may be outside what the yeast bears
  const double water = percent_of_flour(state, state.amounts.water_g),
               sugar = percent_of_flour(state, state.amounts.sugar_g);
  const double activity = formula::water_activity(percent_of_flour(state, state.amounts.salt_g), water, sugar);
  return formula::solute_factor(activity, water, sugar, formula::SoluteRule(kitchen));
}

}  // namespace

Speed::Speed(const State& state, const Kitchen& kitchen)
    : law_(law_of_checked(kitchen)), factor_(prepared<AnyFactor>(law_)), solutes_(solute_factor_of(state, kitchen)) {}

Node node_of_checked(const Piece& piece, const State& state, const Place& place, const Kitchen& kitchen) {
  // With the void of mixing: that of the stage's start would make the same dough another one when a stage is split.
  const double density = percent_of_flour(state, state.amounts.dough_g) / state.mixed_volume_ml;
  const DoughVolume volume(state, kitchen);
  Node node = node_of_checked(piece,
                              {.mass_g = state.amounts.dough_g,
                               .specific_heat_kj = 1000 * state.heat_capacity_kj_k / state.amounts.dough_g,
                               .density_g_per_ml = density,
                               .water_activity = volume.water_activity},
                              place, volume.pressure_pa);
  if (!piece.heat_loss_w_per_k) lose_heat_times(kitchen.piece_heat_loss_factor, node);
  return node;
}

}  // namespace ferment
