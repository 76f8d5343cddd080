// A kitchen gets to know itself: its parameters from what was seen of its bakes.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/forecast/forecast.hpp>
#include <ferment/process/seen.hpp>
#include <ferment/process/step.hpp>

namespace ferment {

/// A bake as it was really done, with what was seen of it. Its stages end by the hours at which they really ended: a
/// dough that was divided late is no slow yeast.
struct Log {
  std::string name = {};    ///< for reports
  std::string date = {};    ///< such as 2026-11-29
  std::string packet = {};  ///< of yeast; that of the latest log is the one the kitchen knows
  Process process = {};
  std::vector<Sighting> seen = {};
};

struct CalibrateOptions {
  bool bake_effect = true;     ///< each bake's yeast differs by the kitchen's bake_sd and model_sd; integrated out
  bool is_normal = false;      ///< noise of ln time is normal instead of Student's t with 4 degrees of freedom
  bool flat_prior = false;     ///< the kitchen's uncertainty does not count: what has one is free
  bool learn_spreads = true;   ///< from ten logs on, bake_sd and log_time_scale are learned, too
  std::size_t importance = 0;  ///< draws that correct the Laplace approximation; 0: it is not corrected
  bool heat_of_fermentation = true;
  std::function<void()> interrupt = {};  ///< called very often; what it throws ends the call
  ForEach for_each = {};                 ///< how logs are worked off; one after the other if empty
};

/// What was learned of a parameter.
struct Learned {
  std::string name = {};
  double value = 0;
  double sd = 0;  ///< in the coordinate in which it is learned
  double prior_sd = 0;
  double share = 1;  ///< of the prior's sd that is left: 1 is nothing learned
};

/// What a look says beside the kitchen that was learned from it. With fewer than three bakes in the kitchen a fit
/// follows whatever it is told: then beside the kitchen before, with all that was not known.
struct Residual {
  std::size_t log = 0;   ///< from 0
  std::size_t look = 0;  ///< of the log, from 0
  SeenAs was = SeenAs::at;
  double expected = 0;      ///< of a rise median hours since the stage began; of a height %; of a dough °C
  double seen = 0;          ///< the look's
  double standardised = 0;  ///< difference (of ln time) by noise and bake; 0 for a bound that holds
  bool surprising = false;
  std::string explanation = {};  ///< what would explain a surprise, such as "hours for minutes"; often none
};

struct Calibration {
  Kitchen kitchen = {};  ///< its values, its covariance, its spreads and its history
  std::vector<Residual> residuals = {};
  std::size_t linearisations = 0;
  double decrement = 0;              ///< what a further step would gain, in ln of the posterior, twice
  std::optional<double> k_hat = {};  ///< shape of the tail of the importance weights: below 0.7 they can be trusted
  /// ln of the likelihood of each log at the kitchen's values, the bake integrated out.
  std::vector<double> log_likelihood = {};
  double effective_parameters = 0;   ///< how many the logs have pinned
  std::vector<Notice> notices = {};  ///< those of the kitchen, and what did not settle
};

/// Maximum a posteriori with the Laplace covariance. Everything with a prior sd that a look touches is free: fixing the
/// start-up and the lag would bias the gassing rate.
///
/// A look at a rise says that ln time since its stage began is the model's and Student-t noise of the kitchen's
/// log_time_scale (ν 4, sd √2 of it); "not yet", "past" and "between" count by the distribution function; a height in
/// straight sides has a noise of 6 % of rise, a temperature of 0.5 K, an over-proofed dough 0.2 of ln time. The bake's
/// own effect on ln gassing rate is integrated by adaptive Gauss–Hermite quadrature of seven nodes, shared by all looks
/// of a log. A packet of yeast other than the latest has an effect of its own, shared by its logs. The model is
/// linearised by central differences in the fitted coordinates; steps are damped by the gain ratio; the curvature of
/// the covariance is that of the expected information, weighted by how likely each look is. From ten logs on bake_sd
/// and log_time_scale are learned on a grid, with half-normal priors of their sizes and without the logs that surprise;
/// their squares are the means of the posterior.
/// @param prior  the kitchen before, with its covariance; frozen sets have their prior. To learn one bake more, give
///   the kitchen learned before
/// @throws InvalidInput naming the log and the look; NotConverged, with what is left, after 40 linearisations
/// Source: design and measured coverage of this project's simulations; Student-t noise: Lange et al. 1989, JASA 84:881;
/// adaptive quadrature: Liu & Pierce 1994, Biometrika 81:624; damping by the gain ratio: Nielsen 1999; importance
/// weights smoothed after Vehtari et al. 2024, JMLR 25:72.
FERMENT_API Calibration calibrate(const std::vector<Log>& logs, const Kitchen& prior = {},
                                  const CalibrateOptions& options = {});

/// How much a kitchen knows of each parameter beside the frozen set that it was learned from.
FERMENT_API std::vector<Learned> learned_of(const Kitchen& kitchen);

/// What a kitchen's history warns of: bakes that surprise, and what they could not teach.
FERMENT_API std::vector<Notice> notices_of(const Kitchen& kitchen);

/// The kitchen for a packet of yeast that it does not know: its gassing rate is less certain by packet_sd.
FERMENT_API Kitchen with_packet(const Kitchen& kitchen, const std::string& packet);

/// How well a temperature law explains logs.
struct LawFit {
  Law law = Law::cardinal;
  double criterion = 0;   ///< −2·ln likelihood + 2·effective parameters: the least is the best
  double difference = 0;  ///< from the best
  double sd = 0;          ///< of the difference, by the spread of the logs' parts of it
};

/// The laws beside each other, each with its own fit, the best first. A difference below twice its sd decides nothing.
/// @throws as calibrate; InvalidInput for fewer than three logs
/// Source: information criterion with effective parameters, Spiegelhalter et al. 2002; its sd, Vehtari et al. 2017.
FERMENT_API std::vector<LawFit> compare_laws(const std::vector<Log>& logs, const Kitchen& prior = {},
                                             const CalibrateOptions& options = {});

template <>
FERMENT_API const Form& form_of<Log>();

template <>
FERMENT_API const Form& form_of<CalibrateOptions>();

template <>
FERMENT_API const Form& form_of<Learned>();

template <>
FERMENT_API const Form& form_of<Residual>();

template <>
FERMENT_API const Form& form_of<Calibration>();

template <>
FERMENT_API const Form& form_of<LawFit>();

}  // namespace ferment
