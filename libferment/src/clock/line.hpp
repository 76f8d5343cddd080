// The clock along pieces of temperature whose inputs are checked already.
#pragma once

#include <ferment/clock/temperature_law.hpp>

namespace ferment {

/// Refuses the parameters that a kitchen with this law would refuse. @throws InvalidInput
void require_law(const TemperatureLaw& law);

/// The law of a kitchen that is checked already.
TemperatureLaw law_of_checked(const Kitchen& kitchen);

/// Mean factor while the temperature goes from a to b on a straight line; the clock stands still outside the law's
/// limits.
double mean_factor_over_line(const TemperatureLaw& law, double a, double b);

/// ∫ factor du from 0 to u along room + gap·e^(−u).
double factor_integral(const TemperatureLaw& law, double room, double gap, double u);

}  // namespace ferment
