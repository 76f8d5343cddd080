// The first pass of every array function: speed and water activity of a block of doughs.
#pragma once

#include <cstddef>

#include <ferment/clock/temperature_law.hpp>

#include "dough/solutes_formula.hpp"

namespace ferment {

/// Scenarios are worked off in blocks that fit the first-level cache together with their intermediate results.
inline constexpr std::size_t block_size = 128;

/// A block's inputs, one array per quantity.
struct SoluteBlock {
  const double* salt;
  const double* water;
  const double* sugar;
};

void water_activities(const SoluteBlock& solutes, double* water_activity, std::size_t n);
void temperature_factors(const TemperatureLaw& checked_law, const double* dough_c, double* factor, std::size_t n);
/// speed = factor · solute factor, in place of factor.
void times_solute_factors(const SoluteBlock& solutes, const double* water_activity, const formula::SoluteRule& rule,
                          double* factor, std::size_t n);

}  // namespace ferment
