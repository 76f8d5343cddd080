// The clock in a dough that drifts: towards its room, or along a measured temperature.
#pragma once

#include <span>

#include <ferment/base/export.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/base/values.hpp>
#include <ferment/clock/temperature_law.hpp>

namespace ferment {

/// A temperature that relaxes: surroundings_c + (start_c − surroundings_c)·e^(−t/time_constant_h).
struct Drift {
  Given start_c;          ///< °C at the start
  Given surroundings_c;   ///< °C it nears
  Given time_constant_h;  ///< h
};

/// Many drifts: every member has one value for all or one for each.
struct Drifts {
  Values start_c;
  Values surroundings_c;
  Values time_constant_h;
};

/// Temperature after time_h hours, °C. @throws InvalidInput
FERMENT_API double drifted_c(const Drift& drift, double time_h);

/// The same for arrays: every input has one value or out.size() values. @throws InvalidInput
FERMENT_API void drifted_c(const Drifts& drifts, const Values& time_h, std::span<double> out);

/// Equivalent hours of temperature that pass in time_h hours: the integral of the temperature factor over the drift.
/// Where the temperature is outside the law's limits the clock stands still. The cardinal law is a cubic over a linear
/// function of the temperature, so its integral is closed: partial fractions give exponentials and one logarithm; the
/// constant Q10 integrates to the exponential integral's entire part, summed by Gauss–Legendre quadrature over short
/// pieces to rounding, as are the other laws. Salt and sugar multiply the result by solute_factor.
/// @throws InvalidInput outside the field table
FERMENT_API double drift_equivalent_h(const TemperatureLaw& law, const Drift& drift, double time_h);

/// The same for arrays: every input has one value or out.size() values. @throws InvalidInput
FERMENT_API void drift_equivalent_h(const TemperatureLaw& law, const Drifts& drifts, const Values& time_h,
                                    std::span<double> out);

/// The inverse: hours until equivalent_h have passed. Halley's method with a bracket; every answer's residual is
/// checked.
/// @throws InvalidInput; NoSolution if the clock stops before, naming the equivalent hours it reaches
FERMENT_API double drift_hours(const TemperatureLaw& law, const Drift& drift, double equivalent_h);

/// The same for arrays. With Unreachable::infinity out is infinite where the clock stops before.
/// @throws as above, naming the first offending index and the count
FERMENT_API void drift_hours(const TemperatureLaw& law, const Drifts& drifts, const Values& equivalent_h,
                             std::span<double> out, Unreachable unreachable = Unreachable::raise);

/// Equivalent hours over a temperature that is linear between readings, exact for the cardinal law.
/// @param time_h         hours of the readings, rising
/// @param temperature_c  °C, one for each
/// @param equivalent_h   out: equivalent hours from the first reading to each
/// @throws InvalidInput for fewer than two readings, times that do not rise, or another length
FERMENT_API void series_equivalent_h(const TemperatureLaw& law, std::span<const double> time_h,
                                     std::span<const double> temperature_c, std::span<double> equivalent_h);

}  // namespace ferment
