// Ice for a tap that is too warm.
#pragma once

#include <ferment/base/export.hpp>

namespace ferment {

/// How much of the water to replace by ice at 0 °C when the tap is too warm, g, by the trade's rule:
/// water · (tap − wanted)/(tap + 80) in °C, which is (tap − wanted)/(tap + 112) in °F. Pour water_g less the ice.
/// @throws InvalidInput; NoSolution if the wanted water is warmer than the tap
FERMENT_API double ice_by_trade_rule(double water_g, double tap_c, double wanted_c);

/// Ice in place of that much of the water, g, from the enthalpies: water·c·(tap − wanted)/(c·tap + L − c_ice·ice).
/// Valid for wanted water below 0 °C too, which is a way to say how much cold is wanted. More than water_g: not enough
/// even as ice.
/// @throws InvalidInput; NoSolution if the wanted water is warmer than the tap
FERMENT_API double ice_by_heat_balance(double water_g, double tap_c, double wanted_c, double ice_c = 0);

}  // namespace ferment
