#include <ferment/heat/balance.hpp>

#include <cmath>

#include <ferment/base/error.hpp>

#include "base/finite.hpp"

namespace ferment {
namespace {

constexpr double kj_per_wh = 3.6;

/// (1 − e^(−x))/x, 1 at 0: what is left of heat that came in evenly while it was lost.
double mean_decay(double x) { return x < 1e-12 ? 1 : -std::expm1(-x) / x; }

void require_balance(std::span<const HeatPortion> portions, const HeatSources& sources) {
  for (const HeatPortion& p : portions) {
    require_at_least(0, p.capacity_kj_k, "capacity_kj_k");
    require_at_least(-1e300, p.temperature_c, "temperature_c");
    require_at_least(-1e300, p.uptake_kj, "uptake_kj");
  }
  require_at_least(-1e300, sources.hydration_kj, "hydration_kj");
  require_at_least(-1e300, sources.work_kj, "work_kj");
  require_at_least(-1e300, sources.room_c, "room_c");
  require_at_least(0, sources.loss_w_per_k, "loss_w_per_k");
  require_at_least(0, sources.rest_loss_w_per_k, "rest_loss_w_per_k");
  require_at_least(0, sources.rest_h, "rest_h");
  require_at_least(0, sources.mixing_h, "mixing_h");
}

}  // namespace

HeatBalance heat_balance(std::span<const HeatPortion> portions, const HeatSources& sources) {
  require_balance(portions, sources);
  double wetted_capacity = 0, wetted_heat = sources.hydration_kj, capacity = 0, joining_heat = 0, joining_uptake = 0,
         wetting_uptake = 0;
  for (const HeatPortion& p : portions) {
    capacity += p.capacity_kj_k;
    const double heat = p.capacity_kj_k * p.temperature_c - p.uptake_kj;
    if (p.after_rest) {
      joining_heat += heat;
      joining_uptake += p.uptake_kj;
    } else {
      wetted_capacity += p.capacity_kj_k;
      wetted_heat += heat;
      wetting_uptake += p.uptake_kj;
    }
  }
  if (!(capacity > 0))
    throw InvalidInput("nothing in the bowl has a heat capacity",
                       {.path = "portions", .advice = "give flour and water"});

  const bool wets = wetted_capacity > 0;  // else a dough is there already, and something joins it
  const double kept_in_rest =
      wets ? std::exp(-kj_per_wh * sources.rest_loss_w_per_k * sources.rest_h / wetted_capacity) : 1;
  const double mixing = kj_per_wh * sources.loss_w_per_k * sources.mixing_h / capacity;
  const double kept_in_mixing = std::exp(-mixing);

  HeatBalance b;
  b.capacity_kj_k = capacity;
  b.wetted_capacity_kj_k = wetted_capacity;
  b.wetted_c = wets ? wetted_heat / wetted_capacity : sources.room_c;
  b.rested_c = sources.room_c + (b.wetted_c - sources.room_c) * kept_in_rest;
  const double joined_c = (wetted_capacity * b.rested_c + joining_heat) / capacity;
  b.k_per_kj_work = mean_decay(mixing) / capacity;
  b.dough_c = sources.room_c + (joined_c - sources.room_c) * kept_in_mixing + sources.work_kj * b.k_per_kj_work;

  const double per_joined = kept_in_mixing / capacity;
  const double per_wetted = kept_in_rest * per_joined;
  b.k_per_kj_wetted = per_wetted;
  for (const HeatPortion& p : portions) b.weights.push_back(p.capacity_kj_k * (p.after_rest ? per_joined : per_wetted));
  b.room_weight = wetted_capacity * (1 - kept_in_rest) * per_joined + (1 - kept_in_mixing);
  b.gain_k = (sources.hydration_kj - wetting_uptake) * per_wetted - joining_uptake * per_joined +
             sources.work_kj * b.k_per_kj_work;
  return b;
}

}  // namespace ferment
