#include "learn/importance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace ferment {
namespace {

struct Pareto {
  double shape, scale;
};

/// Of rising excesses, by the profile posterior of Zhang & Stephens.
Pareto fitted(const std::vector<double>& excess) {
  const auto n = static_cast<double>(excess.size());
  const auto candidates = static_cast<std::size_t>(30 + std::floor(std::sqrt(n)));
  const double m = static_cast<double>(candidates);
  const double quarter = excess[static_cast<std::size_t>(std::floor(n / 4 + 0.5)) - 1];
  const auto shape_of = [&](double theta) {
    double sum = 0;
    for (const double x : excess) sum += std::log1p(-theta * x);
    return sum / n;
  };
  std::vector<double> theta(candidates), log_profile(candidates);
  for (std::size_t j = 0; j < candidates; ++j) {
    theta[j] = 1 / excess.back() + (1 - std::sqrt(m / (static_cast<double>(j) + 0.5))) / (3 * quarter);
    const double shape = shape_of(theta[j]);
    log_profile[j] = n * (std::log(-theta[j] / shape) - shape - 1);
  }
  double mean = 0;
  for (std::size_t j = 0; j < candidates; ++j) {
    double total = 0;
    for (const double other : log_profile) total += std::exp(other - log_profile[j]);
    mean += theta[j] / total;
  }
  const double shape = shape_of(mean);
  return {(n * shape + 10 * 0.5) / (n + 10), -shape / mean};
}

}  // namespace

double smooth_tail(std::vector<double>& log_weights) {
  const std::size_t n = log_weights.size();
  const double most = *std::max_element(log_weights.begin(), log_weights.end());
  for (double& weight : log_weights) weight -= most;
  const auto tail = static_cast<std::size_t>(
      std::ceil(std::min(0.2 * static_cast<double>(n), 3 * std::sqrt(static_cast<double>(n)))));
  constexpr std::size_t too_few = 5;
  if (tail < too_few) return -std::numeric_limits<double>::infinity();
  std::vector<std::size_t> order(n);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return log_weights[a] < log_weights[b]; });
  const double cut = std::exp(log_weights[order[n - tail - 1]]);
  std::vector<double> excess;
  for (std::size_t i = n - tail; i < n; ++i) excess.push_back(std::exp(log_weights[order[i]]) - cut);
  if (!(excess.back() > excess.front() && excess.front() >= 0)) return -std::numeric_limits<double>::infinity();
  const Pareto pareto = fitted(excess);
  for (std::size_t i = 0; i < tail; ++i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(tail);
    const double quantile = std::abs(pareto.shape) < 1e-12
                                ? -pareto.scale * std::log1p(-share)
                                : pareto.scale / pareto.shape * std::expm1(-pareto.shape * std::log1p(-share));
    log_weights[order[n - tail + i]] = std::min(std::log(cut + quantile), 0.0);
  }
  return pareto.shape;
}

Corrected importance_corrected(const Eigen::VectorXd& centre, const Eigen::MatrixXd& covariance,
                               const std::vector<double>& normal,
                               const std::function<double(const Eigen::VectorXd&)>& log_density) {
  constexpr double wider = 1.2;
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(covariance);
  Eigen::VectorXd sds = solver.eigenvalues().cwiseMax(0).cwiseSqrt();
  for (double& sd : sds) sd = std::max(sd, std::min(wider * sd, 1.0));
  const Eigen::MatrixXd root = solver.eigenvectors() * sds.asDiagonal();
  const auto n = static_cast<std::size_t>(centre.size()), draws = normal.size() / n;
  std::vector<Eigen::VectorXd> places;
  std::vector<double> log_weights;
  for (std::size_t draw = 0; draw < draws; ++draw) {
    const Eigen::Map<const Eigen::VectorXd> own(normal.data() + draw * n, centre.size());
    places.push_back(centre + root * own);
    log_weights.push_back(log_density(places.back()) + 0.5 * own.squaredNorm());
  }
  Corrected corrected{Eigen::VectorXd::Zero(centre.size()), Eigen::MatrixXd::Zero(centre.size(), centre.size()), 0};
  corrected.k_hat = smooth_tail(log_weights);
  double total = 0;
  for (std::size_t i = 0; i < draws; ++i) {
    const double weight = std::exp(log_weights[i]);
    total += weight;
    corrected.mean += weight * places[i];
  }
  corrected.mean /= total;
  for (std::size_t i = 0; i < draws; ++i) {
    const Eigen::VectorXd apart = places[i] - corrected.mean;
    corrected.covariance += std::exp(log_weights[i]) / total * apart * apart.transpose();
  }
  return corrected;
}

}  // namespace ferment
