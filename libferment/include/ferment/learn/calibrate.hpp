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
#include <ferment/process/seen.hpp>
#include <ferment/process/step.hpp>

namespace ferment {

/// A bake as it was really done, with what was seen of it. Its stages end by the hours at which they really ended: a
/// dough that was divided late is no slow yeast.
struct Log {
  std::string name = {};  ///< for reports
  Process process = {};
  std::vector<Sighting> seen = {};
};

struct CalibrateOptions {
  bool bake_effect = true;       ///< each bake's yeast differs by the kitchen's bake_sd and model_sd; integrated out
  bool is_normal = false;        ///< noise of ln time is normal instead of Student's t with 4 degrees of freedom
  double log_time_scale = 0.10;  ///< scale of that noise; the sd of the t is √2 of it
  bool heat_of_fermentation = true;
  std::function<void()> interrupt = {};  ///< called very often; what it throws ends the call
};

/// What was learned of a parameter.
struct Learned {
  std::string name = {};
  double value = 0;
  double sd = 0;  ///< in the coordinate in which it is learned
  double prior_sd = 0;
  double share = 1;  ///< of the prior's sd that is left: 1 is nothing learned
};

/// What a look says beside the kitchen that was learned from it.
struct Residual {
  std::size_t log = 0;           ///< from 0
  std::size_t look = 0;          ///< of the log, from 0
  double expected_h = 0;         ///< median hours since the stage began
  double seen_h = 0;             ///< the look's
  double standardised = 0;       ///< of ln time, by noise and bake; 0 for a bound that holds
  std::string explanation = {};  ///< what would explain a surprise, such as "2 min instead of 2 h"; often none
};

struct Calibration {
  Kitchen kitchen = {};  ///< its values and its covariance
  std::vector<Learned> learned = {};
  std::vector<Residual> residuals = {};
  std::size_t linearisations = 0;
  double decrement = 0;  ///< what a further step would gain, in ln of the posterior
  std::vector<Notice> notices = {};
};

/// Maximum a posteriori with the Laplace covariance. Everything with a prior sd that a look touches is free: fixing the
/// start-up and the lag would bias the gassing rate.
///
/// A look at a rise says that ln time since its stage began is the model's and Student-t noise of scale 0.10 (ν 4, sd
/// 0.141); "not yet", "past" and "between" count by the distribution function. The bake's own effect on ln gassing rate
/// is integrated by adaptive Gauss–Hermite quadrature of seven nodes, shared by all looks of a log. The model is
/// linearised by central differences in the fitted coordinates; steps are damped by the gain ratio; the curvature of
/// the covariance is that of the expected information, weighted by how likely each look is.
/// @param prior  the kitchen before, with its covariance; frozen sets have their prior
/// @throws InvalidInput naming the log and the look; NotConverged, with what is left, after 40 linearisations
/// Source: design and measured coverage of this project's simulations; Student-t noise: Lange et al. 1989, JASA 84:881;
/// adaptive quadrature: Liu & Pierce 1994, Biometrika 81:624; damping by the gain ratio: Nielsen 1999.
FERMENT_API Calibration calibrate(const std::vector<Log>& logs, const Kitchen& prior = {},
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

}  // namespace ferment
