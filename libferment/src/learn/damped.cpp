#include "learn/damped.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace ferment {
namespace {

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;

Vector eigenvalues(const Matrix& of) {
  return Eigen::SelfAdjointEigenSolver<Matrix>(of, Eigen::EigenvaluesOnly).eigenvalues();
}

/// A place that costs less, as far along the step as the damping leaves it.
std::optional<Vector> next(const DampedCost& of, const Vector& here, const LocalCost& local, double longest,
                           double& damping) {
  const Vector expected = eigenvalues(local.expected);
  // What there is of curvature in every direction, or would be but for rounding: the unit of what is compared with one.
  const double least = std::max(expected.minCoeff(), 1e-15 * expected.maxCoeff());
  const Matrix& curvature = eigenvalues(local.observed).minCoeff() > 0.5 * least ? local.observed : local.expected;
  double growth = 4;
  for (int tried = 0; tried < 12; ++tried) {
    const Matrix damped = curvature + damping * Matrix::Identity(curvature.rows(), curvature.cols());
    Vector step = damped.ldlt().solve(local.downhill);
    step *= std::min(1.0, longest / std::max(step.cwiseAbs().maxCoeff(), 1e-300));
    Vector there = here + step;
    const double cost = of.cost(there);
    const double foreseen = local.downhill.dot(step) - 0.5 * step.dot(curvature * step);
    const double gain = (local.cost - cost) / foreseen;
    if (!(foreseen > 0 && gain > 0.4)) {
      damping = std::max(growth * damping, 0.3 * least);
      growth *= 2;
    } else if (gain > 0.75) {
      damping *= 0.3;
    }
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
    const bool is_narrowest = difference <= options.least_difference, is_known = found.decrement >= 0;
    const bool is_last = found.linearisations >= options.most_linearisations;
    found.is_settled = is_known && found.decrement < options.settled;
    found.is_nearly_settled = is_known && found.decrement < options.nearly_settled && (is_narrowest || is_last);
    if (found.is_settled || found.is_nearly_settled || is_last) return found;
    if (std::optional<Vector> better = next(of, found.at, found.local, options.longest_step, damping)) {
      found.at = *std::move(better);
    } else if (is_narrowest) {
      return found;  // no step gains, however short, and none will
    } else {
      difference = std::max(difference / 4, options.least_difference);
      damping = 0;
    }
  }
}

}  // namespace ferment
