// Temperature and clock of a dough over a piece of time in which nothing is done to it.
//
// Three kinds: the dough's temperature is given (a straight line), or relaxes to a constant one without heat of its own
// (both exact), or takes part with clock and gas in one system. That one is solved by Gauss collocation with four
// abscissae (order eight):
//   T(t) = T0 + ∫ λ·(A − T) − vapour dt + warming·(M(θ(t)) − M(0)),   θ(t) = ∫ solutes·factor(T) dt,
// where the CO2 made, M, is a closed function of θ: the heat of fermentation enters exactly. The temperatures at them
// are linear in each other but for M, so Picard's iteration runs on the clock alone and closes in fast.
#pragma once

#include <array>
#include <cstddef>
#include <variant>

#include <ferment/heat/piece.hpp>

#include "process/dough_physics.hpp"

namespace ferment {

inline constexpr std::size_t abscissae = 4;
using AtAbscissae = Four;

/// What acts on the dough in a leg.
struct Setting {
  const Speed* speed;
  const GasMaking* making;
  const Place* place;
  Node node = {};                 ///< not read where the dough's temperature is given
  double warming_k_per_mmol = 0;  ///< by CO2 made; 0 without heat of fermentation
  double settled_k = 1e-12;       ///< change of such a temperature below which an iteration ends
};

struct Line {
  double from_c, per_h;
};
struct Relaxation {
  double air_c, gap_k, time_constant_h;
};
struct Coupled {
  double start_c;
  AtAbscissae clock_rate;  ///< equivalent hours per hour
  AtAbscissae air_rate;    ///< K per hour, by air and vapour
};

/// A dough somewhere on a leg.
struct Point {
  double after_h = 0, equivalent_h = 0, made_mmol = 0, temperature_c = 0;
};

/// A leg's first quarter, its middle, third quarter and end: moments at which events are looked for.
using Quarters = std::array<Point, 4>;

class Leg {
 public:
  /// Solves a leg of that length from a temperature at an hour. Coupled ones may not settle: see `error`.
  Leg(const Setting& setting, double start_h, double start_c, double hours);

  double hours() const { return hours_; }
  double start_h() const { return start_h_; }
  Point at(double after_h) const;
  Point end() const { return is_coupled() ? quarters_.back() : at(hours_); }
  Quarters quarters() const;
  /// How far the speeds at the end are from those the abscissae foresee, relative; 0 for exact legs.
  double error() const { return error_; }
  bool is_coupled() const { return std::holds_alternative<Coupled>(path_); }
  /// Heat lost to the surroundings over the whole leg, J; 0 where the dough's temperature is given.
  double heat_lost_j() const;
  /// The same leg, ended sooner: exact ones are cut, coupled ones solved anew.
  Leg until(double hours) const;

 private:
  void solve_coupled(double start_c);
  Quarters points_at(const std::array<AtAbscissae, 4>& weights, const Four& after_h) const;
  Point exact_at(double after_h) const;

  const Setting* setting_;
  double start_h_, hours_, error_ = 0;
  std::variant<Line, Relaxation, Coupled> path_;
  Quarters quarters_ = {};  ///< of a coupled leg, which needs its end in any case
};

}  // namespace ferment
