// Scoring with damped steps: the minimum of a cost whose curvature is known twice, as it is and as it is expected.
#pragma once

#include <cstddef>
#include <functional>

#include <Eigen/Dense>

namespace ferment {

/// A cost at a place.
struct LocalCost {
  double cost = 0;
  Eigen::VectorXd downhill;  ///< minus its gradient
  Eigen::MatrixXd expected;  ///< a curvature that is never negative
  Eigen::MatrixXd observed;  ///< the true one, as closely as it is known
};

struct DampedCost {
  /// At a place, with differences of such a width.
  std::function<LocalCost(const Eigen::VectorXd& at, double difference)> linearise;
  /// The cost alone, comparable with that of the place linearised last; infinite where it cannot be.
  std::function<double(const Eigen::VectorXd& at)> cost;
};

struct DampedOptions {
  double settled = 1e-6, nearly_settled = 1e-3;  ///< of the decrement
  std::size_t most_linearisations = 40;
  double widest_difference = 0.03, least_difference = 1e-4;
  double longest_step = 2;  ///< of any coordinate
};

struct DampedMinimum {
  Eigen::VectorXd at;
  LocalCost local;  ///< there
  std::size_t linearisations = 0;
  double decrement = 0;  ///< what a further step would gain, twice: gradient'·expected⁻¹·gradient; below 0: not known
  bool is_settled = false;
  bool is_nearly_settled = false;  ///< little is left, at the narrowest differences or after all linearisations: a kink
};

/// Steps along (curvature + damping)⁻¹·downhill, the observed curvature where it is positive enough; the damping
/// follows how much of the foreseen gain a step brings and grows faster with each step that fails (Nielsen 1999,
/// IMM-REP-1999-05), in units of the least curvature. Where no step gains, the differences straddle a kink and are
/// narrowed. What is left when the linearisations are used up is told, not thrown.
DampedMinimum damped_minimum(const DampedCost& of, Eigen::VectorXd start, const DampedOptions& options = {});

}  // namespace ferment
