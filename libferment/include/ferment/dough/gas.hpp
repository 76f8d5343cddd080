// Gas over equivalent hours: one closed-form curve, both ways. Per 100 g of flour.
#pragma once

#include <ferment/base/export.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/dough/yeast.hpp>

namespace ferment {

/// CO2 the dough can make at most, mmol per 100 g flour: kitchen.gas_capacity + 11.10 per percent of sugar
/// (1.0526 g hexose per g sucrose, 11.101 mmol/g, yield 0.95).
/// @throws InvalidInput
FERMENT_API double gas_capacity(double sugar_percent = 0, const Kitchen& kitchen = {});

/// CO2 made by one addition of yeast, mmol per 100 g flour, `equivalent_h` equivalent hours after it met the
/// flour and water: a start-up deficit, a lag, growth by a fixed increment, and exhaustion of the sugars.
/// Scalars in, scalar out. Source: model of this library; growth increment fitted to dough data, exhaustion
/// first order in what is left.
/// @throws InvalidInput outside the field table's bounds
FERMENT_API double gas_made(double equivalent_h, double yeast_percent, Yeast yeast = Yeast::instant,
                            double sugar_percent = 0, const Kitchen& kitchen = {});

/// The inverse: equivalent hours until that much CO2 is made. Closed form with Lambert's W before the yeast
/// grows (Boost.Math lambert_w0), a logarithm after, and Halley steps for the small start-up deficit.
/// @throws InvalidInput; NoSolution if the sugars do not give that much gas, naming the most they give
FERMENT_API double equivalent_hours_for_gas(double co2_mmol, double yeast_percent, Yeast yeast = Yeast::instant,
                                            double sugar_percent = 0, const Kitchen& kitchen = {});

}  // namespace ferment
