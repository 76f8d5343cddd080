#include "process/dough_physics.hpp"

#include "heat/node.hpp"

#include <algorithm>
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

formula::CellAir<double> DoughVolume::cells_at(double t) const {
  return formula::cell_air(t, pressure_pa, water_activity, water_g, formula::saturation_pressure(t),
                           formula::co2_solubility(t));
}

double DoughVolume::free_ratio(const Gas& gas, double t) const {
  const auto cells = cells_at(t);
  return (gas_free_ml +
          (gas.air_mmol + formula::in_cells(gas.co2_mmol, gas.air_mmol, cells.capacity)) * cells.molar_volume) /
         mixed_ml;
}

Gas DoughVolume::held(const Gas& gas, double t, double anchor_ratio) const {
  const double free = free_ratio(gas, t);
  const auto r = retention(anchor_ratio);
  if (free <= r.from) return gas;
  const auto cells = cells_at(t);
  const double in_cells = (formula::held_ratio(free, r) * mixed_ml - gas_free_ml) / cells.molar_volume - gas.air_mmol;
  return {in_cells > 0 ? formula::held_for_cells(in_cells, gas.air_mmol, cells.capacity) : 0, gas.air_mmol};
}

Gas DoughVolume::pressed(const Gas& held, double t, double loss_fraction) const {
  return {held.co2_mmol - loss_fraction * formula::in_cells(held.co2_mmol, held.air_mmol, cells_at(t).capacity),
          held.air_mmol * (1 - loss_fraction)};
}

namespace {

FERMENT_WIDE_LOOPS void add_work(const formula::CohortCurve& curve, const double* equivalent_h, double* work,
                                 std::size_t n) {
  const formula::CohortCurve c = curve;
  for (std::size_t i = 0; i < n; ++i) work[i] += c.work_until(equivalent_h[i]);
}

/// In place: work → CO2 made.
FERMENT_WIDE_LOOPS void made_of_work(double made, double capacity, double rate, double* work, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) work[i] = made - (capacity - made) * math::expm1(-rate * work[i]);
}

}  // namespace

GasMaking::GasMaking(const State& state, const Kitchen& kitchen)
    : kitchen_(&kitchen),
      capacity_(formula::gas_capacity(kitchen.gas_capacity, percent_of_flour(state, state.amounts.sugar_g))),
      rate_over_capacity_(kitchen.gassing_rate / capacity_) {
  restart(state);
}

void GasMaking::restart(const State& state) {
  curves_.clear();
  for (const Cohort& cohort : state.cohorts) curves_.emplace_back(cohort, *kitchen_);
  made_ = only_shell(state).made_mmol;
}

void GasMaking::made_after(const double* equivalent_h, double* made, std::size_t n) const {
  std::fill_n(made, n, 0.0);
  for (const auto& curve : curves_) add_work(curve, equivalent_h, made, n);
  made_of_work(made_, capacity_, rate_over_capacity_, made, n);
}

double GasMaking::until_growth() const {
  double soonest = std::numeric_limits<double>::infinity();
  for (const auto& curve : curves_) {
    if (curve.until_growth() > 0) soonest = std::min(soonest, curve.until_growth());
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
  const double activity = formula::water_activity(percent_of_flour(state, state.amounts.salt_g),
                                                  percent_of_flour(state, state.amounts.water_g),
                                                  percent_of_flour(state, state.amounts.sugar_g));
  return formula::solute_factor(activity, kitchen.aw_min,
                                1 / (formula::reference_water_activity<double>() - kitchen.aw_min));
}

}  // namespace

Speed::Speed(const State& state, const Kitchen& kitchen)
    : law_(law_of_checked(kitchen)), factor_(prepared<AnyFactor>(law_)), solutes_(solute_factor_of(state, kitchen)) {}

Node node_of_checked(const Piece& piece, const State& state, const Place& place, const Kitchen& kitchen) {
  // With the void of mixing: that of the stage's start would make the same dough another one when a stage is split.
  const double density = percent_of_flour(state, state.amounts.dough_g) / state.mixed_volume_ml;
  const DoughVolume volume(state, kitchen);
  return node_of_checked(piece,
                         {.mass_g = state.amounts.dough_g,
                          .specific_heat_kj = 1000 * state.heat_capacity_kj_k / state.amounts.dough_g,
                          .density_g_per_ml = density,
                          .water_activity = volume.water_activity},
                         place, volume.pressure_pa);
}

}  // namespace ferment
