// What the rooms of a day share.
#pragma once

#include <ferment/day/day.hpp>

namespace ferment {

inline constexpr double assumed_flour_g = 500;  ///< where the day does not say: percentages need none

/// Whether the day says how much flour there is.
bool knows_flour(const Day& day);

}  // namespace ferment
