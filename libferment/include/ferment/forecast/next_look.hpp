// What to look at next: the look that would narrow a forecast most while there is still time to act on it.
#pragma once

#include <string>

#include <ferment/base/export.hpp>
#include <ferment/forecast/forecast.hpp>

namespace ferment {

/// A look that is worth its while. Told is the share of the variance of ln time to the stage that is asked about which
/// it would take away: 0 is nothing, 1 all of it.
struct NextLook {
  std::string stage = {};   ///< to look at: the first one that ends by a rise
  double time_h = 0;        ///< of the process
  double rise_percent = 0;  ///< what the usual dough has by then
  double told = 0;          ///< by this look
  double told_at_end = 0;   ///< by seeing when that stage is ready
};

/// The earliest look at the stage under way that tells four fifths of what its end would tell of `stage`.
///
/// Reckoned from the draws of a forecast: with ψ the ln time to the stage and η that to the rise which the usual dough
/// has at the hour of the look, cov(ψ, η)²/((var η + 2·scale²)·var ψ), the noise of a look by the kitchen's
/// log_time_scale; draws weighted by what was seen. Looks are later than those already seen.
/// @param stage  that is asked about; the last one if empty
/// @throws as forecast; InvalidInput if no stage ends by a rise
/// Source: linear-Gaussian value of information; equal to nested re-weighting within 0.03 in this project's
/// simulations.
FERMENT_API NextLook next_look(const Process& process, const std::string& stage = {}, const Kitchen& kitchen = {},
                               const ForecastOptions& options = {});

template <>
FERMENT_API const Form& form_of<NextLook>();

}  // namespace ferment
