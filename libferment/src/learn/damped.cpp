#include "learn/damped.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace ferment {
namespace {

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;

/// A place that costs less, as far along the step as the damping leaves it.
std::optional<Vector> next(const DampedCost& of, const Vector& here, const LocalCost& local, double longest,
                           double& damping) {
  constexpr double least_eigenvalue = 0.5;
  const double smallest =
      Eigen::SelfAdjointEigenSolver<Matrix>(local.observed, Eigen::EigenvaluesOnly).eigenvalues().minCoeff();
  const Matrix& curvature = smallest > least_eigenvalue ? local.observed : local.expected;
  for (int tried = 0; tried < 12; ++tried) {
    const Matrix damped = curvature + damping * Matrix::Identity(curvature.rows(), curvature.cols());
    Vector step = damped.ldlt().solve(local.downhill);
    step *= std::min(1.0, longest / std::max(step.cwiseAbs().maxCoeff(), 1e-300));
    Vector there = here + step;
    const double cost = of.cost(there);
    const double foreseen = local.downhill.dot(step) - 0.5 * step.dot(curvature * step);
    const double gain = (local.cost - cost) / foreseen;
    if (!(gain > 0.4)) damping = std::max(4 * damping, 0.3);
    if (gain > 0.75) damping *= 0.3;
    if (cost < local.cost) return there;
  }
  return std::nullopt;
}

}  // namespace

DampedMinimum damped_minimum(const DampedCost& of, Vector start, const DampedOptions& options) {
  DampedMinimum found{.at = std::move(start), .local = {}};
  double difference = options.widest_difference, damping = 0;
  for (;;) {
    found.local = of.linearise(found.at, difference);
    ++found.linearisations;
    found.decrement = found.local.downhill.dot(found.local.expected.ldlt().solve(found.local.downhill));
    found.is_settled = found.decrement < options.settled;
    found.is_nearly_settled = found.decrement < options.nearly_settled && difference <= options.least_difference;
    if (found.is_settled || found.is_nearly_settled || found.linearisations >= options.most_linearisations)
      return found;
    if (std::optional<Vector> better = next(of, found.at, found.local, options.longest_step, damping)) {
      found.at = *std::move(better);
    } else {
      difference = std::max(difference / 4, options.least_difference);
      damping = 0;
    }
  }
}

}  // namespace ferment
