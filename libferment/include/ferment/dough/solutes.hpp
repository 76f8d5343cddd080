// Salt, sugar and stiffness as one physical rule: the water activity of the dough's water.
#pragma once

#include <ferment/base/export.hpp>
#include <ferment/base/parameters.hpp>

namespace ferment {

/// Osmolality of the dough's water, mol of particles per kg of water: salt counts twice with an osmotic
/// coefficient of 0.92, sucrose twice because yeast splits it within minutes, less the first 4 % of the flour's
/// weight, which feed more than they press.
/// @param salt_percent, water_percent, sugar_percent  percent of flour weight, scalars
/// @throws InvalidInput outside the field table's bounds
/// Source: ideal dilute solution; constant osmotic coefficient within 0.005 in a_w of Robinson & Stokes 1959
/// (from memory).
FERMENT_API double osmolality(double salt_percent, double water_percent, double sugar_percent = 0);

/// Water activity, exp(−0.0180153 · osmolality), a ratio. Arguments and errors as osmolality.
FERMENT_API double water_activity(double salt_percent, double water_percent, double sugar_percent = 0);

/// Speed of the yeast in this dough over its speed in the reference dough (2 % salt, 65 % water, no sugar):
/// linear in water activity from 0 at kitchen.aw_min, never below 0. Arguments and errors as osmolality.
FERMENT_API double solute_factor(double salt_percent, double water_percent, double sugar_percent = 0,
                                 const Kitchen& kitchen = {});

}  // namespace ferment
