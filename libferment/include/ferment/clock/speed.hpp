// The clock: equivalent hours per hour.
#pragma once

#include <span>

#include <ferment/base/export.hpp>
#include <ferment/base/parameters.hpp>

namespace ferment {

/// What sets the clock's speed, one value for all scenarios or one for each.
struct ClockInputs {
  Values dough_c;
  Values salt_percent = *field::salt_percent.initial;
  Values water_percent = *field::water_percent.initial;
  Values sugar_percent = *field::sugar_percent.initial;
};

/// Equivalent hours per hour: temperature factor × solute factor, 1 at the reference dough (25 °C, 2 % salt, 65 %
/// water, no sugar); 0 where the yeast stands still. Model §1.
/// @throws InvalidInput outside the field table's bounds
FERMENT_API double speed(double dough_c, double salt_percent = *field::salt_percent.initial,
                         double water_percent = *field::water_percent.initial,
                         double sugar_percent = *field::sugar_percent.initial, const Kitchen& kitchen = {});

/// The same for arrays: every input has one value or out.size() values. @throws InvalidInput
FERMENT_API void speed(const ClockInputs& inputs, std::span<double> out, const Kitchen& kitchen = {});

/// A known time at another dough temperature, hours: time · factor(from)/factor(to). The dose, salt and formula
/// cancel as long as they are the same; equal gas, and a colder dough stands a little lower at equal gas.
/// @throws InvalidInput; OutsideModel where the yeast stands still at to_c or from_c
FERMENT_API double same_rise(double time_h, double from_c, double to_c, const Kitchen& kitchen = {});

/// The same for arrays. @throws InvalidInput; OutsideModel
FERMENT_API void same_rise(const Values& time_h, const Values& from_c, const Values& to_c, std::span<double> out,
                           const Kitchen& kitchen = {});

}  // namespace ferment
