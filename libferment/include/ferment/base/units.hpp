// Conversions at the edge. Inside, everything is °C, K (differences), hours, grams, percent of flour.
#pragma once

#include <ferment/base/export.hpp>

namespace ferment {

/// A temperature point in °F as °C: (F − 32)/1.8, exact by definition of the scales.
/// @param fahrenheit  °F, at or above absolute zero (−459.67 °F)
/// @throws InvalidInput if not finite or below absolute zero
FERMENT_API double celsius(double fahrenheit);

/// A temperature point in °C as °F: 1.8·C + 32.
/// @param celsius  °C, at or above absolute zero (−273.15 °C)
/// @throws InvalidInput if not finite or below absolute zero
FERMENT_API double fahrenheit(double celsius);

/// A *difference* of temperatures in Fahrenheit degrees as K: F/1.8. 20 °F of friction are 11.1 K.
/// @throws InvalidInput if not finite
FERMENT_API double kelvins(double fahrenheit_degrees);

/// A weight in avoirdupois ounces as grams: 28.349523125 g each, exact by definition (international pound, 1959).
/// @throws InvalidInput if not finite or negative
FERMENT_API double grams(double ounces);

/// The inverse. @throws InvalidInput if not finite or negative
FERMENT_API double ounces(double grams);

}  // namespace ferment
