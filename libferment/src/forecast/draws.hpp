// The draws of a forecast, and what each makes of a process.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <ferment/forecast/forecast.hpp>

#include "process/stage_run.hpp"

namespace ferment {

/// Standard normal numbers, draws × dimensions, row by row: Sobol's points, scrambled, each moved to the middle of its
/// cell, so that every dimension alone is evenly covered.
std::vector<double> normals(std::size_t draws, std::size_t dimensions, std::uint32_t seed);

/// A kitchen of a draw and the bake's part of it.
struct Draw {
  Kitchen kitchen;
  double bake_z = 0;  ///< standard normal
};
/// @throws InvalidInput for the kitchen or the options
std::vector<Draw> drawn(const Kitchen& kitchen, const ForecastOptions& options);

/// A stage in one draw; infinite where it never happens.
struct DrawnStage {
  double ready_h, lowest_h, highest_h, over_proofed_h, too_late_h, rise_percent;
};

/// The stages of one draw from `state` on; `last` ends it after the stage at that step. `watch`: acceptable rises and
/// over-proofing, so many hours beyond a stage's end.
std::vector<DrawnStage> run_draw(const Process& process, const State& state, const Kitchen& kitchen,
                                 const SimulateOptions& options, bool watch, std::size_t last,
                                 double ahead_h = look_ahead_h);

/// The process with what it was measured in as closely as such a tolerance needs it. @throws InvalidInput from
/// require_stage, of a stage still to come
Process condensed(const Process& process, std::size_t steps_done, double tolerance);

/// Works off the draws as the caller wants it; after an error the rest is left, and it is thrown again.
void for_each_draw(const ForEach& for_each, std::size_t count, const std::function<void(std::size_t)>& work);

}  // namespace ferment
