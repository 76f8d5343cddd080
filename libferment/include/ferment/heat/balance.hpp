// The heat balance of mixing.
#pragma once

#include <span>
#include <string>
#include <vector>

#include <ferment/base/export.hpp>

namespace ferment {

/// What the plan must find again among the portions.
enum class PortionKind { other, main_water, flour, preferment };

/// Something that comes into the bowl, or the bowl itself.
struct HeatPortion {
  std::string name = {};
  PortionKind kind = PortionKind::other;
  double mass_g = 0;         ///< of dough; 0 for the bowl
  double capacity_kj_k = 0;  ///< heat it takes per K
  double temperature_c = 0;  ///< as it comes
  double uptake_kj = 0;      ///< taken up on joining: heat of solution, melting of ice
  bool after_rest = false;   ///< joins when flour and water have rested
};

/// The heat of mixing and of the rest before it.
struct HeatSources {
  double hydration_kj = 0;       ///< given off when flour and water meet
  double work_kj = 0;            ///< by mixing, after the rest, evenly over mixing_h
  double room_c = 0;             ///< what the bowl stands in
  double loss_w_per_k = 0;       ///< heat lost to the room per K while mixing
  double rest_loss_w_per_k = 0;  ///< and while resting, when not all is in the bowl
  double rest_h = 0;
  double mixing_h = 0;
};

/// The balance as a weighted mean: dough_c = Σ weights·temperature + room_weight·room + gain_k, and all weights sum
/// to 1.
struct HeatBalance {
  double dough_c = 0;                ///< at the end of mixing
  double wetted_c = 0;               ///< when flour and water have met, before the rest
  double rested_c = 0;               ///< at the end of the rest
  double capacity_kj_k = 0;          ///< dough and bowl
  double wetted_capacity_kj_k = 0;   ///< what flour and water meet with
  std::vector<double> weights = {};  ///< one for each portion: K of dough per K of the portion
  double room_weight = 0;            ///< by exchange with the room
  double gain_k = 0;                 ///< by work, hydration, solution and melting
  double k_per_kj_wetted = 0;        ///< K of dough per kJ given off when flour and water meet
  double k_per_kj_work = 0;          ///< K of dough per kJ of mixing
};

/// The enthalpy balance of mixing, exact for constant heat capacities: portions come together, wetted flour gives off
/// heat, the rest relaxes to the room exponentially, the others join, and work comes in evenly while the room takes its
/// share.
/// @throws InvalidInput if nothing has a heat capacity, or for a number that is not finite or a negative capacity, loss
/// or time Source: conservation of energy; relaxation by Newton's law of cooling.
FERMENT_API HeatBalance heat_balance(std::span<const HeatPortion> portions, const HeatSources& sources);

}  // namespace ferment
