// When each stage will be ready, as a distribution: the process run through with the kitchen's uncertainty.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/process/seen.hpp>
#include <ferment/process/simulate.hpp>

namespace ferment {

/// Hours of the process's axis; infinite where it never happens. Beyond a stage's end a dough is followed for 48 h: an
/// infinite `be_back_by_h` is after more than two days. Where one in ten is over-proofed sooner, all are followed until
/// the median one is.
struct StageForecast {
  std::string name = {};
  bool by_rise = false;                        ///< ends by a rise; else by a time
  std::vector<double> ready = {};              ///< when it is ready, of every draw, rising
  std::vector<double> too_late = {};           ///< when it is too late then: past the highest rise or over-proofed
  double ready_h = 0;                          ///< their median
  std::pair<double, double> likely_h = {};     ///< between which it is ready in nine of ten draws
  std::pair<double, double> window_h = {};     ///< median hours of the lowest and the highest acceptable rise
  double look_first_h = 0;                     ///< one in ten doughs has the lowest acceptable rise by then
  double be_back_by_h = 0;                     ///< by then nine in ten are neither past that rise nor over-proofed
  double over_proofed_h = 0;                   ///< the median dough is
  double never_ready = 0;                      ///< share of the draws in which its rise is never reached
  double rise_percent = 0;                     ///< median rise at its end
  double interval_length_after_one_log_h = 0;  ///< what one logged rise of this stage would leave of the 90 % interval
};

struct Forecast {
  std::vector<StageForecast> stages = {};  ///< those that are not over yet
  double effective_draws = 0;              ///< that are left by what was seen; all of them if nothing was
  std::vector<Notice> notices = {};
};

/// Calls work(0), …, work(count − 1), in any order and on any threads, and returns when all are done.
using ForEach = std::function<void(std::size_t count, const std::function<void(std::size_t)>& work)>;

struct ForecastOptions {
  std::size_t draws = 512;
  /// Of simulate. What 3e-2 means, against 1e-7 in 400 random processes: in 99 of 100 `ready_h` is right to 1e-6 h and
  /// all other hours to 5e-4 h; where a measured series is condensed, up to 2e-2 h.
  double tolerance = 3e-2;
  bool heat_of_fermentation = true;
  /// What was seen of this dough: the draws are weighted by its likelihood. The process is then the whole of it, its
  /// stages that are over ended by the hours at which they did.
  std::vector<Sighting> seen = {};
  std::size_t seed = 3;  ///< of the scrambling; the evenest of 32 on five doughs that no test has
  std::function<void()> interrupt =
      {};  ///< called very often, on the threads of `for_each`; what it throws ends the call
  ForEach for_each =
      {};  ///< how the draws are worked off: the library has no threads, the caller may; one after the other if empty
};

/// The forecast. The draws are Sobol's sequence in the kitchen's covariance and the bake's spread, the same every time.
/// In every draw each stage ends when it is ready, so one stage's uncertainty carries into the next.
///
/// Where looks leave fewer than 100 draws, 2048 are drawn; where that is not enough, a notice says so.
///
/// Acceptable rises that a stage does not give are 75 to 150 % of its rise, 80 to 133 % for a final proof (common
/// practice). Warmer dough is ready some 7 to 10 % per °C sooner near dough temperature. After a bulk of a fixed
/// *time*, though, a warmer room can make the final proof longer: more of the sugars are spent and more gas is pressed
/// out with the handling.
/// @throws as simulate for the kitchen's central values; in a draw a dough that leaves −2 to 45 °C is never ready
/// Source: model of this library; Sobol points of Joe & Kuo 2008, scrambled after Owen 1995 (by hash,
/// Burley 2020).
FERMENT_API Forecast forecast(const Process& process, const Kitchen& kitchen = {},
                              const std::optional<State>& state = std::nullopt, const ForecastOptions& options = {});

/// The hours between which a stage is ready with a probability, 0 < level < 1: as many doughs are ready before as
/// after.
/// @throws InvalidInput
FERMENT_API std::pair<double, double> interval_h(const StageForecast& stage, double level = 0.9);

/// Share of the doughs that are ready at an hour and not yet too late: past their highest acceptable rise or
/// over-proofed.
/// @throws InvalidInput unless the hour is a number
FERMENT_API double share_ready(const StageForecast& stage, double time_h);

/// Quantile of rising values by linear interpolation, 0 ≤ share ≤ 1; infinite if it falls on an infinite one. @throws
/// InvalidInput
FERMENT_API double quantile(const std::vector<double>& rising, double share);

/// The kitchens of the draws: central values moved by the covariance and the bake's spread, kept inside the table's
/// bounds.
/// @throws InvalidInput from require_kitchen, or unless 2 ≤ draws ≤ 65536
FERMENT_API std::vector<Kitchen> draws_of(const Kitchen& kitchen, const ForecastOptions& options = {});

template <>
FERMENT_API const Form& form_of<StageForecast>();

template <>
FERMENT_API const Form& form_of<Forecast>();

template <>
FERMENT_API const Form& form_of<ForecastOptions>();

}  // namespace ferment
