#include <ferment/mix/ice.hpp>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/heat/properties.hpp>

#include "base/text.hpp"

namespace ferment {
namespace {

void require_warmer_tap(double tap_c, double wanted_c) {
  if (wanted_c <= tap_c) return;
  throw NoSolution("ice cannot make water of " + number(wanted_c) + " °C from a tap of " + number(tap_c) + " °C",
                   {.path = "wanted_c", .value = wanted_c, .high = tap_c, .advice = "warm the water instead"});
}

}  // namespace

double ice_by_trade_rule(double water_g, double tap_c, double wanted_c) {
  require(field::water_g, water_g);
  require(field::tap_c, tap_c);
  Field wanted = field::water_c;
  wanted.name = "wanted_c";
  wanted.label = "wanted water temperature";
  require(wanted, wanted_c);
  require_warmer_tap(tap_c, wanted_c);
  return water_g * (tap_c - wanted_c) / (tap_c + 80);
}

double ice_by_heat_balance(double water_g, double tap_c, double wanted_c, double ice_c) {
  require(field::water_g, water_g);
  require(field::tap_c, tap_c);
  require(field::ice_c, ice_c);
  require(Field{"wanted_c", "wanted water temperature", "°C", -1e6, 60, field::must_be_given, Quantity::temperature},
          wanted_c);
  require_warmer_tap(tap_c, wanted_c);
  const double per_g_tap = water::specific_heat_kj * tap_c;
  const double per_g_ice = water::melting_heat_kj - water::ice_specific_heat_kj * ice_c;
  return water_g * water::specific_heat_kj * (tap_c - wanted_c) / (per_g_tap + per_g_ice);
}

}  // namespace ferment
