// A state's dough as the formulas take it: its gas, volume, yeast and clock between two mixes. Per 100 g of flour.
#pragma once

#include <array>
#include <cstddef>
#include <variant>
#include <vector>

#include <ferment/base/parameters.hpp>
#include <ferment/dough/state.hpp>
#include <ferment/heat/piece.hpp>

#include "clock/temperature_law_formula.hpp"
#include "dough/cohort_formula.hpp"
#include "dough/solutes_formula.hpp"
#include "dough/volume_formula.hpp"

namespace ferment {

/// Four moments at once: one vector of a processor.
using Four = std::array<double, 4>;

/// Volume from gas and back, at any temperature.
struct DoughVolume {
  double gas_free_ml, mixed_ml, water_g, water_activity, pressure_pa, onset, limit, gluten_percent;

  DoughVolume(const State& state, const Kitchen& kitchen);

  formula::CellAir<double> cells_at(double t) const;
  formula::Retention<double> retention(double anchor_ratio) const {
    return formula::retention(onset, limit, gluten_percent, anchor_ratio);
  }
  /// Volume over mixed volume if all of the gas were held.
  double free_ratio(const Gas& gas, double t) const;
  /// Volume over mixed volume.
  double ratio(const Gas& gas, double t, double anchor_ratio) const {
    return formula::held_ratio(free_ratio(gas, t), retention(anchor_ratio));
  }
  /// The same at four moments.
  Four ratios(const Four& co2_mmol, double air_mmol, const Four& t, double anchor_ratio) const;
  /// The gas that is really there: what leaked is gone.
  Gas held(const Gas& gas, double t, double anchor_ratio) const;
  /// What is dissolved and a share of the gas in the cells: what handling leaves.
  Gas pressed(const Gas& held, double t, double kept) const;
};

/// CO2 made about four moments: near them by value, slope and bend.
struct MadeAlong {
  Four equivalent_h, made, slope, bend;

  /// Whether the straight lines serve for such hours, to so many mmol.
  bool reaches(const Four& hours, double within_mmol) const;
  double at(std::size_t i, double hours) const { return made[i] + slope[i] * (hours - equivalent_h[i]); }
};

/// The yeast of a dough from a moment on: CO2 made as a function of equivalent hours.
class GasMaking {
 public:
  GasMaking(const State& state, const Kitchen& kitchen);
  /// Such hours have passed, and so much is made since.
  void go_on(double equivalent_h, double made_mmol);
  bool has_yeast() const { return !curves_.empty(); }
  /// CO2 made of the dough's sugars when equivalent_h have passed, mmol.
  Four made_after(const Four& equivalent_h) const;
  double made_after(double h) const { return made_after(Four{h, h, h, h})[0]; }
  MadeAlong made_along(const Four& equivalent_h) const;
  double made_now() const { return made_; }
  /// Equivalent hours until the next cohort begins to grow; infinite if none will.
  double until_growth() const;

 private:
  std::vector<formula::CohortCurve> curves_;  ///< from the moment they were made for
  double passed_h_ = 0;                       ///< since then
  double made_then_, made_;
  double capacity_, rate_over_capacity_;
};

/// Equivalent hours per hour in this dough.
class Speed {
 public:
  Speed(const State& state, const Kitchen& kitchen);
  double factor(double t) const {
    return std::visit([t](const auto& of) { return of(t); }, factor_);
  }
  double solutes() const { return solutes_; }
  const TemperatureLaw& law() const { return law_; }

 private:
  using AnyFactor = std::variant<formula::CardinalFactor<double>, formula::SquareRootFactor<double>,
                                 formula::ArrheniusFactor<double>, formula::ConstantQ10Factor<double>>;
  TemperatureLaw law_;
  AnyFactor factor_;
  double solutes_;
};

/// Percent of the flour.
inline double percent_of_flour(const State& state, double grams) { return 100 * grams / state.amounts.flour_g; }

/// The piece where the dough is now, as the public node_of, without a look at the piece's own members.
Node node_of_checked(const Piece& piece, const State& state, const Place& place, const Kitchen& kitchen);

}  // namespace ferment
