#include "forecast/look.hpp"

#include <cmath>
#include <limits>
#include <utility>

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr double pi = 3.14159265358979323846;
constexpr double nu = 4;

/// A distribution of zero mean and unit scale: what the likelihoods need of it.
struct Spread {
  bool is_normal;

  double log_density(double x) const {
    if (is_normal) return -0.5 * x * x - 0.5 * std::log(2 * pi);
    return std::log(3.0 / 8) - 2.5 * std::log1p(x * x / 4);
  }
  double density(double x) const { return std::exp(log_density(x)); }
  /// d ln f/dx and d² ln f/dx².
  std::pair<double, double> score(double x) const {
    if (is_normal) return {-x, -1};
    const double below = nu + x * x;
    return {-(nu + 1) * x / below, -(nu + 1) * (nu - x * x) / (below * below)};
  }
  /// Distribution function, with all digits in the lower tail, whose upper twin is below(−x). Of the t with s =
  /// x/√(4 + x²) it is (2 + 3s − s³)/4 = (1 + s)²(2 − s)/4.
  double below(double x) const {
    if (is_normal) return 0.5 * std::erfc(-x / std::sqrt(2.0));
    const double root = std::sqrt(4 + x * x), s = x / root;
    const double one_and_s = x < 0 ? 4 / (root * (root - x)) : 1 + s;
    return one_and_s * one_and_s * (2 - s) / 4;
  }
};

/// A bound: ln F(x), with derivatives by x.
LookAt bound(const Spread& law, double x) {
  const double share = law.below(x);
  if (!(share > 0)) return {-never, 0, 0};
  const double m = law.density(x) / share;
  return {std::log(share), m, m * law.score(x).first - m * m};
}

}  // namespace

LookAt look_at(const Look& look, double expected, const Noise& noise) {
  const Spread law{noise.is_normal};
  const double s = look.scale.value_or(noise.scale);
  const bool comes = expected < never;
  if (look.was == SeenAs::not_yet) {
    if (!comes) return {};
    const LookAt at = bound(law, (expected - look.seen) / s);
    return {at.log_likelihood, at.slope / s, at.bend / (s * s)};
  }
  if (!comes) return {-never, 0, 0};
  const double x = (look.seen - expected) / s;
  if (look.was == SeenAs::at) {
    const auto [slope, bend] = law.score(x);
    return {law.log_density(x) - std::log(s), -slope / s, bend / (s * s)};
  }
  if (!(look.not_yet > -never)) {
    const LookAt at = bound(law, x);
    return {at.log_likelihood, -at.slope / s, at.bend / (s * s)};
  }
  // Between two hours. In the upper tail both are turned round, so that their difference keeps its digits.
  double upper = x, lower = (look.not_yet - expected) / s, turn = 1;
  if (lower > 0) {
    std::swap(upper, lower);
    upper = -upper;
    lower = -lower;
    turn = -1;
  }
  const double share = law.below(upper) - law.below(lower);
  if (!(share > 0)) return {-never, 0, 0};
  const double at_upper = law.density(upper) / share, at_lower = law.density(lower) / share;
  const double m = at_upper - at_lower;
  const double bend = at_upper * law.score(upper).first - at_lower * law.score(lower).first - m * m;
  return {std::log(share), -turn * m / s, bend / (s * s)};
}

}  // namespace ferment
