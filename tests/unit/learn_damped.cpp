#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <set>
#include <string>
#include <vector>

#include "learn/damped.hpp"
#include "strd.hpp"

using namespace ferment;

namespace {

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;
using Index = Eigen::Index;

constexpr double infinity = std::numeric_limits<double>::infinity();

Vector vector(const std::vector<double>& values) {
  return Eigen::Map<const Vector>(values.data(), static_cast<Index>(values.size()));
}

enum class Observed { gauss_newton, exact };

/// A regression as a cost, n/2 ln(residual sum of squares), in coordinates that start at ±width. A cost is told as what
/// it is more than at the place linearised last: so it has its digits where it hardly changes any more.
class Regression {
 public:
  Regression(const strd::Problem& problem, const std::vector<double>& start, Observed observed, double width = 1)
      : problem_(problem), n_(static_cast<double>(problem.y.size())), width_(width), start_(vector(start)),
        unit_(start_.cwiseAbs() / width), observed_(observed) {}

  DampedMinimum minimum(const DampedOptions& options) {
    return damped_minimum({.linearise = [this](const Vector& z, double) { return linearised(z); },
                           .cost = [this](const Vector& z) { return cost(z); }},
                          start_.cwiseQuotient(unit_), options);
  }

  Vector parameters(const DampedMinimum& found) const { return found.at.cwiseProduct(unit_); }
  /// By the curvature that was expected there.
  Vector sds(const DampedMinimum& found) const {
    const double freedom = n_ - static_cast<double>(start_.size());
    return (found.local.expected.inverse().diagonal() * n_ / freedom).cwiseSqrt().cwiseProduct(unit_);
  }
  double rss(const Vector& parameters) const { return residuals(parameters.cwiseQuotient(unit_)).squaredNorm(); }

 private:
  strd::Complex modelled(const strd::Parameters& b, Index i) const {
    const auto k = static_cast<std::size_t>(i);
    return problem_.model(b, problem_.x[k], problem_.x2[k]);
  }
  strd::Parameters at(const Vector& z) const {
    strd::Parameters b;
    for (Index k = 0; k < z.size(); ++k) b.emplace_back(unit_[k] * z[k]);
    return b;
  }
  /// Infinite where the model is not real.
  Vector residuals(const Vector& z) const {
    const strd::Parameters b = at(z);
    Vector all = vector(problem_.y);
    for (Index i = 0; i < all.size(); ++i) {
      const strd::Complex y = modelled(b, i);
      all[i] = y.imag() == 0 && std::isfinite(y.real()) ? all[i] - y.real() : infinity;
    }
    return all;
  }
  /// Of the model, by steps into the imaginary, which lose nothing to a difference.
  Matrix slopes(const Vector& z) const {
    constexpr double step = 1e-30;
    Matrix all(static_cast<Index>(problem_.y.size()), z.size());
    for (Index k = 0; k < z.size(); ++k) {
      strd::Parameters b = at(z);
      b[static_cast<std::size_t>(k)] += strd::Complex(0, step * unit_[k]);
      for (Index i = 0; i < all.rows(); ++i) all(i, k) = modelled(b, i).imag() / step;
    }
    return all;
  }
  Vector downhill(const Vector& z) const {
    const Vector left = residuals(z);
    return n_ / left.squaredNorm() * slopes(z).transpose() * left;
  }
  LocalCost linearised(const Vector& z) {
    last_ = residuals(z);
    const Matrix slope = slopes(z);
    const double scale = n_ / last_.squaredNorm();
    LocalCost local{.cost = 0,
                    .downhill = scale * slope.transpose() * last_,
                    .expected = scale * slope.transpose() * slope,
                    .observed = {}};
    local.observed = observed_ == Observed::exact ? curvature(z) : local.expected;
    return local;
  }
  /// The true one, by central differences of the gradient.
  Matrix curvature(const Vector& z) const {
    const double step = 1e-5 * width_;
    Matrix all(z.size(), z.size());
    for (Index k = 0; k < z.size(); ++k) {
      Vector before = z, after = z;
      before[k] -= step;
      after[k] += step;
      all.col(k) = (downhill(before) - downhill(after)) / (2 * step);
    }
    return (all + all.transpose()) / 2;
  }
  double cost(const Vector& z) const {
    const Vector left = residuals(z);
    if (!left.allFinite()) return infinity;
    return n_ / 2 * std::log1p((left - last_).dot(left + last_) / last_.squaredNorm());
  }

  const strd::Problem& problem_;
  double n_, width_;
  Vector start_, unit_;
  Observed observed_;
  Vector last_;  ///< residuals where it was linearised last
};

/// Coordinates that have no spread of their own: no step is too long for them.
constexpr DampedOptions to_the_end{.settled = 1e-13,
                                   .nearly_settled = 1e-11,
                                   .most_linearisations = 1000,
                                   .longest_step = infinity};

double furthest(const Vector& found, const std::vector<double>& certified) {
  return (found.cwiseQuotient(vector(certified)).array() - 1).abs().maxCoeff();
}

const strd::Problem& problem(const std::string& name) {
  static const std::vector<strd::Problem> all = strd::problems();
  return *std::find_if(all.begin(), all.end(), [&](const strd::Problem& its) { return its.name == name; });
}

/// x − ln x + (y − x)²/2 where x is positive: its least, 1, at (1, 1).
double walled(const Vector& z) {
  return z[0] > 0 ? z[0] - std::log(z[0]) + (z[1] - z[0]) * (z[1] - z[0]) / 2 : infinity;
}

LocalCost walled_locally(const Vector& z) {
  LocalCost local{.cost = walled(z), .downhill = Vector(2), .expected = Matrix(2, 2), .observed = {}};
  local.downhill << 1 / z[0] - 1 + (z[1] - z[0]), z[0] - z[1];
  local.expected << 1 / (z[0] * z[0]) + 1, -1, -1, 1;
  local.observed = local.expected;
  return local;
}

}  // namespace

TEST_CASE("damped scoring: 26 regressions of NIST StRD from both starts, six digits of parameters and sds") {
  const std::vector<strd::Problem> problems = strd::problems();
  REQUIRE(problems.size() == 26);
  std::multiset<std::string> difficulties;
  for (const strd::Problem& its : problems) {
    CAPTURE(its.name);
    difficulties.insert(its.difficulty);
    CHECK(Regression(its, its.starts[0], Observed::exact).rss(vector(its.certified)) ==
          doctest::Approx(its.rss).epsilon(2e-10));
    for (const std::vector<double>& start : its.starts) {
      for (const Observed observed : {Observed::gauss_newton, Observed::exact}) {
        CAPTURE(start[0]);
        CAPTURE(static_cast<int>(observed));
        Regression regression(its, start, observed);
        const DampedMinimum found = regression.minimum(to_the_end);
        CAPTURE(found.linearisations);
        CAPTURE(found.decrement);
        CHECK((found.is_settled || found.is_nearly_settled));  // the cost's own rounding ends it
        CHECK(furthest(regression.parameters(found), its.certified) < 1e-6);
        CHECK(furthest(regression.sds(found), its.sd) < 1e-6);
        CHECK(regression.rss(regression.parameters(found)) == doctest::Approx(its.rss).epsilon(2e-10));
      }
    }
  }
  CHECK(difficulties.count("higher") == 8);
  CHECK(difficulties.count("average") == 10);
  CHECK(difficulties.count("lower") == 8);
}

TEST_CASE("damped scoring: the unit of the coordinates is nothing to it") {
  for (const std::string name : {"Kirby2", "Rat43", "Hahn1", "MGH10"}) {
    CAPTURE(name);
    const strd::Problem& its = problem(name);
    for (const double width : {1.0 / 1024, 1024.0}) {
      for (const double longest : {infinity, 0.5}) {
        DampedOptions narrow = to_the_end, wide = to_the_end;
        narrow.most_linearisations = wide.most_linearisations = 40;
        narrow.longest_step = longest;
        wide.longest_step = longest * width;
        const DampedMinimum found = Regression(its, its.starts[0], Observed::exact).minimum(narrow);
        const DampedMinimum other = Regression(its, its.starts[0], Observed::exact, width).minimum(wide);
        CHECK(other.linearisations == found.linearisations);
        CHECK((other.at / width - found.at).cwiseAbs().maxCoeff() == 0);
      }
    }
  }
}

TEST_CASE("damped scoring: linearisations used up, and what is left is told") {
  const strd::Problem& its = problem("Thurber");
  DampedOptions few = to_the_end;
  double rss = infinity;
  for (const std::size_t most : {1U, 2U, 3U, 5U}) {
    CAPTURE(most);
    few.most_linearisations = most;
    Regression regression(its, its.starts[0], Observed::gauss_newton);
    const DampedMinimum found = regression.minimum(few);
    CHECK(found.linearisations == most);
    CHECK(!found.is_settled);
    CHECK(!found.is_nearly_settled);
    const Vector step = found.local.expected.inverse() * found.local.downhill;
    CHECK(found.decrement == doctest::Approx(found.local.downhill.dot(step)).epsilon(1e-4));
    CHECK(found.decrement > few.nearly_settled);
    const double left = regression.rss(regression.parameters(found));
    CHECK(left < rss);
    CHECK(left > its.rss);
    rss = left;
    if (most == 1) CHECK(furthest(regression.parameters(found), its.starts[0]) < 1e-15);
  }
}

TEST_CASE("damped scoring: a cost that is infinite on a side") {
  for (const double start : {1e-6, 0.3, 1.9, 2.5, 40.0, 1e6}) {
    CAPTURE(start);
    bool was_beyond = false;
    const auto cost = [&](const Vector& z) {
      was_beyond |= !(z[0] > 0);
      return walled(z);
    };
    const DampedOptions free{.settled = 1e-12, .longest_step = infinity};
    const DampedMinimum found =
        damped_minimum({.linearise = [](const Vector& z, double) { return walled_locally(z); }, .cost = cost},
                       vector({start, 5}), free);
    CHECK(was_beyond == (start > 2));  // Newton's step of x − ln x leads to 2 x − x²
    CHECK(found.is_settled);
    CHECK((found.at - vector({1, 1})).norm() < 2e-6);  // √(1e-12 / the least curvature there, 0.38)
  }
}

TEST_CASE("damped scoring: a curvature that is singular but for rounding settles nothing") {
  // Falls along (1, −1), where the expected curvature is a rounding below 0.
  const auto linearise = [](const Vector& z, double) {
    LocalCost local{.cost = z[1] - z[0], .downhill = vector({1, -1}), .expected = Matrix::Ones(2, 2), .observed = {}};
    local.expected(0, 1) = local.expected(1, 0) = 1 + 2e-16;
    local.observed = local.expected;
    return local;
  };
  DampedOptions few;
  few.most_linearisations = 3;
  const DampedMinimum found =
      damped_minimum({.linearise = linearise, .cost = [](const Vector& z) { return z[1] - z[0]; }}, vector({0, 0}),
                     few);
  CHECK(found.decrement < 0);
  CHECK(!found.is_settled);
  CHECK(!found.is_nearly_settled);
  CHECK(found.linearisations == 3);
  CHECK(found.local.cost < -1);
}

TEST_CASE("damped scoring: where no step gains, narrower differences, and no trial a second time") {
  // A gradient of the wrong sign until the differences are narrow: |z − 3| seen from afar.
  std::vector<double> differences;
  const auto cost = [](const Vector& z) { return (z[0] - 3) * (z[0] - 3) / 2; };
  const auto linearise = [&](const Vector& z, double difference) {
    differences.push_back(difference);
    const double downhill = difference > 0.005 ? z[0] - 3 : 3 - z[0];
    return LocalCost{cost(z), vector({downhill}), Matrix::Ones(1, 1), Matrix::Ones(1, 1)};
  };
  const DampedMinimum found = damped_minimum({.linearise = linearise, .cost = cost}, vector({0}));
  CHECK(found.is_settled);
  CHECK(found.at[0] == doctest::Approx(3));
  CHECK(differences.at(0) == 0.03);
  CHECK(differences.at(1) == 0.0075);
  CHECK(differences.at(2) == 0.001875);
  CHECK(differences.back() == 0.001875);

  // It never gains: every step that is tried at the least difference is shorter than those before.
  std::vector<double> tried;
  const DampedOptions exact{.most_linearisations = 4, .widest_difference = 1, .least_difference = 1};
  const DampedMinimum stuck =
      damped_minimum({.linearise =
                          [](const Vector&, double) {
                            return LocalCost{0, vector({1}), Matrix::Ones(1, 1), Matrix::Ones(1, 1)};
                          },
                      .cost = [&](const Vector& z) { return tried.push_back(z[0]), infinity; }},
                     vector({0}), exact);
  CHECK(!stuck.is_settled);
  CHECK(!stuck.is_nearly_settled);
  CHECK(stuck.at[0] == 0);
  CHECK(tried.size() == 12);
  CHECK(std::adjacent_find(tried.begin(), tried.end(), std::less_equal<>()) == tried.end());
}
