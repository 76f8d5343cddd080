#include "learn/bake.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;
using Index = Eigen::Index;

/// Nodes and weights of Gauss–Hermite quadrature, ∫ exp(−t²) f (Abramowitz & Stegun 1964, table 25.10).
constexpr std::array<double, 7> node{-2.651961356835233, -1.673551628767471, -0.816287882858965, 0,
                                     0.816287882858965,  1.673551628767471,  2.651961356835233};
constexpr std::array<double, 7> weight{9.717812450995192e-4, 5.451558281912703e-2, 4.256072526101278e-1,
                                       8.102646175568073e-1, 4.256072526101278e-1, 5.451558281912703e-2,
                                       9.717812450995192e-4};

/// How much an exact look tells in the mean, weighted by how likely this one is; a bound's own curvature.
double information(const Look& look, const LookAt& at, double expected, const Noise& noise) {
  if (look.was != SeenAs::at || noise.is_normal) return std::max(-at.bend, 0.0);
  const double s = look.scale.value_or(noise.scale), r = (look.seen - expected) / s;
  return 5.0 / 7 * 5 / (4 + r * r) / (s * s);
}

class BakeIntegral {
 public:
  BakeIntegral(const Looks& looks, const Vector& expected, const Vector& by_bake, double bake_sd, const Noise& noise)
      : looks_(looks), expected_(expected), by_bake_(by_bake), sd_(bake_sd), noise_(noise) {}

  Integrated operator()() const {
    const Index n = expected_.size();
    Integrated all{0, Vector::Zero(n), Matrix::Zero(n, n), Matrix::Zero(n, n)};
    const auto [middle, spread] = mode();
    const std::size_t nodes = sd_ > 0 ? node.size() : 1;
    std::array<double, node.size()> place{}, log_weight{};
    std::vector<LookAt> at(nodes * looks_.size());
    double largest = -never;
    for (std::size_t k = 0; k < nodes; ++k) {
      const double t = sd_ > 0 ? node[k] : 0, x = middle + std::sqrt(2.0) * spread * t;
      double sum = sd_ > 0 ? std::log(weight[k]) + t * t - 0.5 * x * x + std::log(spread) - 0.5 * std::log(pi) : 0;
      for (Index i = 0; i < n; ++i) sum += (at[index(k, i)] = look(i, x)).log_likelihood;
      place[k] = x;
      log_weight[k] = sum;
      largest = std::max(largest, sum);
    }
    if (!(largest > -never)) {
      all.log_likelihood = -never;
      return all;
    }
    double total = 0;
    for (std::size_t k = 0; k < nodes; ++k) total += std::exp(log_weight[k] - largest);
    all.log_likelihood = largest + std::log(total);
    Vector told = Vector::Zero(n);
    for (std::size_t k = 0; k < nodes; ++k) {
      const double share = std::exp(log_weight[k] - largest) / total;
      for (Index i = 0; i < n; ++i) {
        const LookAt& its = at[index(k, i)];
        all.slope[i] += share * its.slope;
        all.observed(i, i) -= share * its.bend;
        for (Index j = 0; j < n; ++j) all.observed(i, j) -= share * its.slope * at[index(k, j)].slope;
        told[i] += share * information(looks_[static_cast<std::size_t>(i)], its, expected_at(i, place[k]), noise_);
      }
    }
    all.observed += all.slope * all.slope.transpose();
    const Vector pull = told.cwiseProduct(by_bake_);
    all.expected = told.asDiagonal();
    if (sd_ > 0) all.expected -= pull * pull.transpose() / (1 / (sd_ * sd_) + by_bake_.dot(pull));
    return all;
  }

 private:
  static constexpr double pi = 3.14159265358979323846;

  std::size_t index(std::size_t k, Index i) const { return k * looks_.size() + static_cast<std::size_t>(i); }
  double expected_at(Index i, double x) const { return expected_[i] + by_bake_[i] * sd_ * x; }
  LookAt look(Index i, double x) const {
    return look_at(looks_[static_cast<std::size_t>(i)], expected_at(i, x), noise_);
  }
  /// The bake that explains the looks best, in its sds, and the width about it.
  std::pair<double, double> mode() const {
    double x = 0, width = 1;
    if (!(sd_ > 0)) return {x, width};
    for (int newton = 0; newton < 4; ++newton) {
      double slope = -x, curvature = 1;
      for (Index i = 0; i < expected_.size(); ++i) {
        if (!(expected_[i] < never)) continue;
        const LookAt at = look(i, x);
        const double by_x = by_bake_[i] * sd_;
        slope += at.slope * by_x;
        curvature += information(looks_[static_cast<std::size_t>(i)], at, expected_at(i, x), noise_) * by_x * by_x;
      }
      width = 1 / std::sqrt(curvature);
      if (newton < 3) x = std::clamp(x + slope / curvature, -6.0, 6.0);
    }
    return {x, width};
  }

  const Looks& looks_;
  const Vector& expected_;
  const Vector& by_bake_;
  double sd_;
  const Noise& noise_;
};

}  // namespace

Integrated without_bake(const Looks& looks, const Vector& expected, const Vector& by_bake, double bake_sd,
                        const Noise& noise) {
  return BakeIntegral(looks, expected, by_bake, bake_sd, noise)();
}

}  // namespace ferment
