// A process run through: the fold of a state over its steps, and what it did on the way.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/process/step.hpp>

namespace ferment {

/// What a stage came to. Hours are of the process's axis; rises are those of the stage before the handling that ends
/// it.
struct StageResult {
  std::string name = {};
  double start_h = 0;
  double end_h = 0;
  double start_c = 0;
  double end_c = 0;
  double rise_percent = 0;
  double equivalent_h = 0;     ///< equivalent hours that the stage took
  std::size_t folds_done = 0;  ///< folds planned after its end are not made
  /// When the dough has passed its highest acceptable rise, or is over-proofed: or would be, with nothing done to it at
  /// the stage's end. Nothing if not within 48 h of that.
  std::optional<double> be_back_by_h = {};
  /// When it is over-proofed, or would be: above 0.87 of the largest volume in a tin or tub, 0.65 standing free; in a
  /// bulk above its highest acceptable rise, or 0.60 if it ends by time and is no preferment; in a final proof above a
  /// rise of 130 % standing free, 200 % in a tin. Common practice, no source; parameters of the kitchen.
  std::optional<double> over_proofed_h = {};
  std::optional<double> time_constant_h =
      {};                  ///< of the piece in its first surroundings; nothing if the dough's temperature is given
  double heat_made_j = 0;  ///< by fermentation, per piece
  double heat_lost_j = 0;  ///< to the surroundings, per piece
  bool ended = false;      ///< false if the simulation stopped before
};

/// What a process did. The columns have one value for each moment: every stage's start and end and the full minutes
/// between.
struct Timeline {
  std::vector<double> time_h = {};
  std::vector<double> mean_c = {};     ///< of the dough
  std::vector<double> core_c = {};     ///< an estimate: a parabolic profile that settles after each change
  std::vector<double> surface_c = {};  ///< as if settled at once
  std::vector<double> air_c = {};      ///< of the surroundings; the dough's where that is given
  std::vector<double> equivalent_h = {};
  std::vector<double> co2_mmol = {};      ///< made so far, mmol per 100 g flour
  std::vector<double> rise_percent = {};  ///< since the start of the stage
  std::vector<std::size_t> stage = {};    ///< index in `stages`
  std::vector<StageResult> stages = {};
  State state = {};
  std::vector<Notice> notices = {};
};

struct Progress {
  std::size_t step = 0;  ///< under way, from 0
  std::size_t steps = 0;
  double time_h = 0;
};

struct SimulateOptions {
  bool heat_of_fermentation = true;
  double every_min = 1;               ///< grid of the timeline, at most a million rows; 0: only starts and ends
  bool be_back_by = true;             ///< follow a stage beyond its end to the over-proofed dough
  std::optional<double> stop_h = {};  ///< stop at this hour, also in the middle of a stage
  double tolerance = 1e-5;            ///< of the speeds along a step; the result is far closer
  std::function<void(const Progress&)> progress = {};  ///< called before each step; what it throws ends the simulation
  std::function<void()> interrupt = {};  ///< called very often, so make it quick; what it throws ends the simulation
};

template <>
FERMENT_API const Form& form_of<StageResult>();

template <>
FERMENT_API const Form& form_of<Timeline>();

template <>
FERMENT_API const Form& form_of<SimulateOptions>();

/// One step: a mix joins what is there, a stage lets time pass.
/// @throws InvalidInput; NoSolution for a rise that is never reached, with what it reaches and when; OutsideModel if
/// the dough
///         leaves −2 to 45 °C, with the hour
FERMENT_API State advance(const State& state, const Step& step, const Kitchen& kitchen = {},
                          const SimulateOptions& options = {});

/// The whole process, or what a state has left of it.
///
/// A stage's dough is one node that relaxes to its surroundings and is warmed by its fermentation (50.7 kJ per mol
/// CO2). Where the dough's temperature is given, or relaxes to a constant one without that heat, the clock is exact.
/// Else temperature and clock go together in steps by Gauss collocation of order eight, with the heat that was made
/// entering exactly through the gas; steps end where yeast begins to grow, at readings of a measured temperature and at
/// folds, so that splitting a stage changes nothing beyond 1e-9. (A constant mean source for each step, with the exact
/// clock, is second order: a hundred times the steps.)
/// @throws as advance, naming the step
FERMENT_API Timeline simulate(const Process& process, const Kitchen& kitchen = {},
                              const std::optional<State>& state = std::nullopt, const SimulateOptions& options = {});

/// Volume over the volume just after mixing. @throws InvalidInput
FERMENT_API double volume_ratio(const State& state, const Kitchen& kitchen = {});

/// The piece as heat sees it where the dough is now, with the size it had just after mixing: what gas adds to its
/// surface, it takes from its conductivity. @throws InvalidInput
FERMENT_API Node node_of(const Piece& piece, const State& state, const Place& place, const Kitchen& kitchen = {});

}  // namespace ferment
