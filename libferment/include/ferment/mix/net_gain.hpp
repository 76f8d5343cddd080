// The net mixing gain that explains a batch, and what it says of the next.
#pragma once

#include <span>

#include <ferment/base/export.hpp>
#include <ferment/mix/batches.hpp>
#include <ferment/mix/mix.hpp>

namespace ferment {

/// Net mixing gain of a batch, kJ per kg of dough: what work, hydration and losses together must have been, given
/// everything's temperature, the main water's included, and the dough's at the end of mixing. Of mix.mixing only the
/// minutes are read: with a method, or a net gain with minutes, the exchange with the room is reckoned apart.
/// @throws InvalidInput, also if the gain lies outside the field table
FERMENT_API double net_gain_from_batch(const Mix& mix, double dough_c);

/// The same from several batches on one mixer, with their spread: mean, sd and each one.
/// @throws InvalidInput, naming the batch
FERMENT_API BatchMean net_gain_from_batches(std::span<const Mix> mixes, std::span<const double> dough_c);

/// Mixing heat as a mix takes it: the mean, and the spread that the next batch will show, √(variance·(1 + 1/n)). Few
/// batches tell little of their spread, so the variance is drawn toward that of 1 kJ/kg with the weight of four
/// batches.
/// @param minutes  of the mixing to come, if the batches' mixing said theirs; else 0
/// @throws InvalidInput without a batch, or for minutes outside the field table
FERMENT_API ByNetGain net_gain_of(const BatchMean& batches, double minutes = 0);

/// Net mixing gain worth a friction, kJ/kg: the friction was found for such a mix, for a dough of desired_c, in a room
/// where flour, room and everything else but the portions of water had measured_at_c.
/// @throws InvalidInput
FERMENT_API double net_gain_from_friction(const Mix& mix, double friction_k, double desired_c, double measured_at_c);

}  // namespace ferment
