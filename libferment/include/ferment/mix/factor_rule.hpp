// The trade's factor rule with its friction: how warm the water, what the mixer adds.
#pragma once

#include <optional>
#include <span>

#include <ferment/base/export.hpp>
#include <ferment/base/values.hpp>
#include <ferment/mix/batches.hpp>

namespace ferment {

/// Water temperature by the factor rule, °C: n · desired − flour − room (− preferment) − friction, n = 3, or 4 with a
/// preferment. The answer may lie below 0 or above 60 °C; `cautions` has them.
/// Source: trade textbooks (see tests/reference/water_temperature.csv).
/// @throws InvalidInput outside the field table's bounds
FERMENT_API double water_by_factor_rule(double desired_c, double flour_c, double room_c, double friction_k,
                                        std::optional<double> preferment_c = std::nullopt);

/// The same for arrays: every input has one value or out.size() values. @throws InvalidInput
FERMENT_API void water_by_factor_rule(const Values& desired_c, const Values& flour_c, const Values& room_c,
                                      const Values& friction_k, const std::optional<Values>& preferment_c,
                                      std::span<double> out);

/// Dough temperature that the factor rule expects, °C: (flour + room + water (+ preferment) + friction)/n.
/// @throws InvalidInput
FERMENT_API double dough_by_factor_rule(double water_c, double flour_c, double room_c, double friction_k,
                                        std::optional<double> preferment_c = std::nullopt);

/// Friction of a batch, K: n · dough − flour − room − water (− preferment). Use it for the next batch of the same size
/// on the same mixer. @throws InvalidInput, also if the batch's friction lies outside −10 to 25 K
FERMENT_API double friction_from_batch(double dough_c, double flour_c, double room_c, double water_c,
                                       std::optional<double> preferment_c = std::nullopt);

/// Friction from several batches, K: friction_from_batch of each, their mean and spread.
/// @throws InvalidInput, naming the batch
FERMENT_API BatchMean friction_from_batches(const Values& dough_c, const Values& flour_c, const Values& room_c,
                                            const Values& water_c,
                                            const std::optional<Values>& preferment_c = std::nullopt);

}  // namespace ferment
