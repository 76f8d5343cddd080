// What the rooms of a day share.
#pragma once

#include <string>

#include <ferment/base/error.hpp>
#include <ferment/day/day.hpp>

namespace ferment {

inline constexpr double assumed_flour_g = 500;  ///< where the day does not say: percentages need none

/// Whether the day says how much flour there is.
bool knows_flour(const Day& day);

/// Throws the error again, at the day's way to what is wrong.
[[noreturn]] void throw_at(const std::string& path, const Error& error);

/// The way in a day to what its process says at a path: "stage[1].folds_h" of "steps[2].folds_h".
std::string path_of_step(const std::string& path);

}  // namespace ferment
