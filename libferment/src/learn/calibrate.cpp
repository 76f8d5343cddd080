#include <ferment/learn/calibrate.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include <Eigen/Dense>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"
#include "forecast/sighting.hpp"
#include "learn/damped.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;
using Index = Eigen::Index;

constexpr Field log_time_scale_field{"log_time_scale",
                                     "noise of a logged time",
                                     "of ln time",
                                     0.005,
                                     1,
                                     0.10,
                                     Quantity::ratio,
                                     "scale of the noise of ln time",
                                     "",
                                     "0.10 is a look that is right to a few minutes of the first hour"};

/// Parameters in coordinates in which the prior is a standard normal: x = centre + root·z, each x in the coordinate of
/// its parameter.
class Coordinates {
 public:
  explicit Coordinates(const Kitchen& prior) : prior_(prior), rows_(learnable()) {
    const auto n = static_cast<Index>(rows_.size());
    const std::vector<double> covariance = covariance_of(prior);
    const Eigen::Map<const Matrix> matrix(covariance.data(), n, n);
    if (matrix.isDiagonal()) {
      root_ = matrix.diagonal().cwiseMax(0).cwiseSqrt().asDiagonal();
    } else {
      const Eigen::SelfAdjointEigenSolver<Matrix> solver(matrix);
      root_ = solver.eigenvectors() * solver.eigenvalues().cwiseMax(0).cwiseSqrt().asDiagonal();
    }
  }
  Index size() const { return root_.cols(); }
  const std::vector<Parameter>& rows() const { return rows_; }
  const Matrix& root() const { return root_; }

  /// The kitchen at z, its gassing rate moved once more by the bake.
  Kitchen at(const Vector& z, double bake = 0) const {
    const Vector by = root_ * z;
    Kitchen kitchen = prior_;
    kitchen.covariance.clear();
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      double& value = kitchen.*rows_[i].value;
      const bool is_rate = rows_[i].value == &Kitchen::gassing_rate;
      value = moved(rows_[i], value, by[static_cast<Index>(i)] + (is_rate ? bake : 0));
    }
    kitchen.t_max_above_opt_k = std::min(kitchen.t_max_above_opt_k, 0.99 * (kitchen.t_opt_c - kitchen.t_min_c));
    kitchen.retention_limit = std::max(kitchen.retention_limit, kitchen.retention_onset + 0.1);
    return kitchen;
  }

 private:
  Kitchen prior_;
  std::vector<Parameter> rows_;
  Matrix root_;
};

/// The looks of one log along a line in z: what is expected, and how it goes with z and with the bake.
struct Linear {
  Vector expected;
  Matrix by_z;
  Vector by_bake;
};

/// A bake's effect integrated: ln of the likelihood, its slope by each look's expectation, and three curvatures.
struct Integrated {
  double log_likelihood = 0;
  Vector slope;
  Matrix observed;  ///< minus the second derivative (Louis 1982)
  Matrix expected;  ///< of the information that exact looks carry in the mean: never negative
};

/// Nodes and weights of Gauss–Hermite quadrature, ∫ exp(−t²) f (Abramowitz & Stegun 1964, table 25.10).
constexpr std::array<double, 7> node{-2.651961356835233, -1.673551628767471, -0.816287882858965, 0,
                                     0.816287882858965,  1.673551628767471,  2.651961356835233};
constexpr std::array<double, 7> weight{9.717812450995192e-4, 5.451558281912703e-2, 4.256072526101278e-1,
                                       8.102646175568073e-1, 4.256072526101278e-1, 5.451558281912703e-2,
                                       9.717812450995192e-4};

/// How much an exact look tells in the mean, weighted by how likely this one is; a bound's own curvature.
double information(const Look& look, const LookAt& at, double expected, const Noise& noise) {
  if (look.was != SeenAs::at || noise.is_normal) return std::max(-at.bend, 0.0);
  const double r = (look.seen - expected) / noise.scale;
  return 5.0 / 7 * 5 / (4 + r * r) / (noise.scale * noise.scale);
}

class BakeIntegral {
 public:
  BakeIntegral(const Looks& looks, const Vector& expected, const Vector& by_bake, double bake_sd, const Noise& noise)
      : looks_(looks), expected_(expected), by_bake_(by_bake), sd_(bake_sd), noise_(noise) {}

  Integrated operator()() const {
    const auto n = static_cast<Index>(looks_.size());
    Integrated all{0, Vector::Zero(n), Matrix::Zero(n, n), Matrix::Zero(n, n)};
    const auto [middle, spread] = mode();
    const std::size_t nodes = sd_ > 0 ? node.size() : 1;
    std::array<double, node.size()> log_weight{};
    std::array<std::vector<LookAt>, node.size()> at;
    double largest = -never;
    for (std::size_t k = 0; k < nodes; ++k) {
      const double t = sd_ > 0 ? node[k] : 0, x = middle + std::sqrt(2.0) * spread * t;
      double sum = sd_ > 0 ? std::log(weight[k]) + t * t - 0.5 * x * x + std::log(spread) - 0.5 * std::log(pi) : 0;
      at[k] = looks_at(x);
      for (const LookAt& look : at[k]) sum += look.log_likelihood;
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
    Matrix slopes = Matrix::Zero(n, n);
    for (std::size_t k = 0; k < nodes; ++k) {
      const double share = std::exp(log_weight[k] - largest) / total;
      const double x = middle + std::sqrt(2.0) * spread * (sd_ > 0 ? node[k] : 0);
      Vector slope(n);
      for (Index i = 0; i < n; ++i) {
        const LookAt& look = at[k][static_cast<std::size_t>(i)];
        slope[i] = look.slope;
        all.observed(i, i) -= share * look.bend;
        told[i] += share * information(looks_[static_cast<std::size_t>(i)], look, expected_at(i, x), noise_);
      }
      all.slope += share * slope;
      slopes += share * slope * slope.transpose();
    }
    all.observed -= slopes - all.slope * all.slope.transpose();
    const Vector pull = told.cwiseProduct(by_bake_);
    all.expected = told.asDiagonal();
    if (sd_ > 0) all.expected -= pull * pull.transpose() / (1 / (sd_ * sd_) + by_bake_.dot(pull));
    return all;
  }

 private:
  static constexpr double pi = 3.14159265358979323846;

  double expected_at(Index i, double x) const { return expected_[i] + by_bake_[i] * sd_ * x; }
  std::vector<LookAt> looks_at(double x) const {
    std::vector<LookAt> all;
    for (Index i = 0; i < expected_.size(); ++i)
      all.push_back(look_at(looks_[static_cast<std::size_t>(i)], expected_at(i, x), noise_));
    return all;
  }
  /// The bake that explains the looks best, in its sds, and the width about it.
  std::pair<double, double> mode() const {
    double x = 0, width = 1;
    if (!(sd_ > 0)) return {x, width};
    for (int newton = 0; newton < 4; ++newton) {
      double slope = -x, curvature = 1;
      const std::vector<LookAt> at = looks_at(x);
      for (Index i = 0; i < expected_.size(); ++i) {
        const auto k = static_cast<std::size_t>(i);
        if (!(expected_[i] < never)) continue;
        const double by_x = by_bake_[i] * sd_;
        slope += at[k].slope * by_x;
        curvature += information(looks_[k], at[k], expected_at(i, x), noise_) * by_x * by_x;
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

class Search {
 public:
  Search(const std::vector<Log>& logs, const Kitchen& prior, const CalibrateOptions& options)
      : coordinates_(prior), noise_{options.log_time_scale, options.is_normal},
        bake_sd_(options.bake_effect ? std::hypot(prior.bake_sd, prior.model_sd) : 0) {
    simulation_.heat_of_fermentation = options.heat_of_fermentation;
    simulation_.every_min = 0;
    simulation_.tolerance = 1e-4;
    simulation_.interrupt = options.interrupt;
    for (std::size_t i = 0; i < logs.size(); ++i) {
      try {
        looks_.emplace_back(logs[i].process, logs[i].seen);
      } catch (const Error& error) {
        throw_within("logs[" + std::to_string(i) + "]", error);
      }
    }
  }

  Calibration operator()() {
    const DampedMinimum found =
        damped_minimum({.linearise = [this](const Vector& z, double difference) { return linearised(z, difference); },
                        .cost = [this](const Vector& z) { return cost(z, expected_at(z)); }},
                       start());
    if (!found.is_settled && !found.is_nearly_settled) {
      throw NotConverged("the calibration is not settled after " + std::to_string(found.linearisations) +
                             " linearisations; a further step would gain " + number(found.decrement, 3),
                         {.path = "logs", .advice = "look for a log that contradicts the others"});
    }
    Calibration told{.linearisations = found.linearisations, .decrement = found.decrement};
    if (!found.is_settled) {
      told.notices.push_back({"calibration_nearly_settled",
                              Severity::info,
                              {{"decrement", found.decrement}},
                              "the last hundredth of the calibration is rough: a log is just where yeast begins to "
                              "grow; what that moves is far below the uncertainty"});
    }
    finish(told, found);
    return told;
  }

 private:
  std::vector<Vector> expected_at(const Vector& z) const {
    const Kitchen kitchen = coordinates_.at(z);
    std::vector<Vector> all;
    for (const Looks& looks : looks_) all.push_back(as_vector(looks.expected(kitchen, simulation_)));
    return all;
  }
  static Vector as_vector(const std::vector<double>& values) {
    return Eigen::Map<const Vector>(values.data(), static_cast<Index>(values.size()));
  }

  /// The prior's centre; or near it, with more gas and room for it, where a rise that was seen could not be else.
  Vector start() const {
    Vector z = Vector::Zero(coordinates_.size());
    for (double more = 0; more <= 3; more += 0.1) {
      const Matrix& root = coordinates_.root();
      for (std::size_t i = 0; i < coordinates_.rows().size(); ++i) {
        const auto value = coordinates_.rows()[i].value;
        const auto k = static_cast<Index>(i);
        if ((value == &Kitchen::gas_capacity || value == &Kitchen::retention_limit) && root(k, k) > 0) z[k] = more;
      }
      if (all_can_be(expected_at(z))) return z;
    }
    throw NoSolution("a rise that was seen is beyond what a dough can hold by this kitchen's parameters",
                     {.path = "logs", .advice = "look for a rise that was mistyped"});
  }
  bool all_can_be(const std::vector<Vector>& expected) const {
    for (std::size_t j = 0; j < looks_.size(); ++j) {
      for (std::size_t i = 0; i < looks_[j].size(); ++i) {
        if (looks_[j][i].was != SeenAs::not_yet && !(expected[j][static_cast<Index>(i)] < never)) return false;
      }
    }
    return true;
  }

  /// A difference quotient; one-sided beside a rise that is never reached, which says nothing itself.
  static double slope(double before, double middle, double after, double step) {
    const bool low = before < never, high = after < never;
    if (low && high) return (after - before) / (2 * step);
    if (!(middle < never)) return 0;
    return high ? (after - middle) / step : low ? (middle - before) / step : 0;
  }

  LocalCost linearised(const Vector& z, double step) {
    const std::vector<Vector> here = expected_at(z);
    set_slopes(z, here, step);
    const Index n = coordinates_.size();
    LocalCost local{0.5 * z.squaredNorm(), -z, Matrix::Identity(n, n), Matrix::Identity(n, n)};
    for (std::size_t j = 0; j < looks_.size(); ++j) {
      const Integrated its = BakeIntegral(looks_[j], here[j], linear_[j].by_bake, bake_sd_, noise_)();
      const Matrix& by_z = linear_[j].by_z;
      local.cost -= its.log_likelihood;
      local.downhill += by_z.transpose() * its.slope;
      local.expected += by_z.transpose() * its.expected * by_z;
      local.observed += by_z.transpose() * its.observed * by_z;
    }
    return local;
  }

  void set_slopes(const Vector& z, const std::vector<Vector>& here, double step) {
    const Index n = coordinates_.size();
    if (touched_.empty()) touched_.assign(static_cast<std::size_t>(n), true);
    linear_.clear();
    for (const Vector& expected : here)
      linear_.push_back({expected, Matrix::Zero(expected.size(), n), Vector::Zero(expected.size())});
    const auto differences = [&](const std::vector<Vector>& before, const std::vector<Vector>& after, double by,
                                 const auto& put) {
      bool any = false;
      for (std::size_t j = 0; j < linear_.size(); ++j) {
        for (Index i = 0; i < linear_[j].expected.size(); ++i) {
          const double quotient = slope(before[j][i], here[j][i], after[j][i], by);
          any |= quotient != 0;
          put(linear_[j], i, quotient);
        }
      }
      return any;
    };
    for (Index k = 0; k < n; ++k) {
      if (!touched_[static_cast<std::size_t>(k)]) continue;
      Vector before = z, after = z;
      before[k] -= step;
      after[k] += step;
      const bool any = differences(expected_at(before), expected_at(after), step,
                                   [&](Linear& its, Index i, double quotient) { its.by_z(i, k) = quotient; });
      touched_[static_cast<std::size_t>(k)] = any;
    }
    const auto with_bake = [&](double bake) {
      const Kitchen kitchen = coordinates_.at(z, bake);
      std::vector<Vector> all;
      for (const Looks& looks : looks_) all.push_back(as_vector(looks.expected(kitchen, simulation_)));
      return all;
    };
    const double bake_step = step / 3;
    differences(with_bake(-bake_step), with_bake(bake_step), bake_step,
                [&](Linear& its, Index i, double quotient) { its.by_bake[i] = quotient; });
  }

  double cost(const Vector& z, const std::vector<Vector>& expected) const {
    double sum = 0.5 * z.squaredNorm();
    for (std::size_t j = 0; j < looks_.size(); ++j)
      sum -= BakeIntegral(looks_[j], expected[j], linear_[j].by_bake, bake_sd_, noise_)().log_likelihood;
    return sum;
  }

  void finish(Calibration& told, const DampedMinimum& found) const {
    const Matrix& root = coordinates_.root();
    const Matrix in_z = found.local.expected.inverse(), covariance = root * in_z * root.transpose();
    told.kitchen = coordinates_.at(found.at);
    const Index n = covariance.rows();
    told.kitchen.covariance.resize(static_cast<std::size_t>(n * n));
    Eigen::Map<Matrix>(told.kitchen.covariance.data(), n, n) = (covariance + covariance.transpose()) / 2;
    const Matrix before = root * root.transpose();
    for (std::size_t i = 0; i < coordinates_.rows().size(); ++i) {
      const auto k = static_cast<Index>(i);
      const Parameter& row = coordinates_.rows()[i];
      const double prior_sd = std::sqrt(before(k, k)), sd = std::sqrt(covariance(k, k));
      told.learned.push_back(
          {std::string(row.name), told.kitchen.*row.value, sd, prior_sd, prior_sd > 0 ? sd / prior_sd : 1});
    }
    for (std::size_t j = 0; j < looks_.size(); ++j) {
      for (std::size_t i = 0; i < looks_[j].size(); ++i) add_residual(told, linear_[j].expected, j, i);
    }
  }

  void add_residual(Calibration& told, const Vector& expected_of, std::size_t j, std::size_t i) const {
    const Look& look = looks_[j][i];
    const double expected = expected_of[static_cast<Index>(i)];
    const double by_bake = linear_[j].by_bake[static_cast<Index>(i)] * bake_sd_;
    const double sd = std::hypot((noise_.is_normal ? 1 : std::sqrt(2.0)) * noise_.scale, by_bake);
    const auto standardised = [&](double moved_by) {
      const double r = (look.seen + moved_by - expected) / sd;
      if (look.was == SeenAs::not_yet) return std::max(r, 0.0);
      if (look.was == SeenAs::at) return r;
      const double early = (look.not_yet + moved_by - expected) / sd;
      return r < 0 ? r : std::max(early, 0.0);
    };
    Residual its{.log = j,
                 .look = i,
                 .expected_h = std::exp(expected),
                 .seen_h = std::exp(look.seen),
                 .standardised = standardised(0)};
    constexpr double surprising = 3, explained = 1.5;
    if (std::abs(its.standardised) > surprising) {
      struct Typo {
        double factor;
        const char* words;
      };
      for (const Typo typo : {Typo{60, "minutes for hours"}, Typo{1.0 / 60, "hours for minutes"}, Typo{10, "a tenth"},
                              Typo{0.1, "ten times"}}) {
        if (its.explanation.empty() && std::abs(standardised(std::log(typo.factor))) < explained)
          its.explanation = typo.words;
      }
      const double other_h = its.seen_h + (its.seen_h < its.expected_h ? 12 : -12);
      if (its.explanation.empty() && other_h > 0 && std::abs(standardised(std::log(other_h / its.seen_h))) < explained)
        its.explanation = "twelve hours";
      const std::string how = its.explanation.empty() ? "" : ": perhaps " + its.explanation;
      told.notices.push_back({"surprising_log",
                              Severity::caution,
                              {{"log", static_cast<double>(j)},
                               {"look", static_cast<double>(i)},
                               {"seen_h", its.seen_h},
                               {"expected_h", its.expected_h}},
                              "log " + std::to_string(j + 1) + ": after " + number(its.seen_h, 3) +
                                  " h where this kitchen expects " + number(its.expected_h, 3) + " h" + how +
                                  "; it counts little"});
    }
    told.residuals.push_back(std::move(its));
  }

  Coordinates coordinates_;
  Noise noise_;
  double bake_sd_;
  SimulateOptions simulation_ = {};
  std::vector<Looks> looks_ = {};
  std::vector<Linear> linear_ = {};
  std::vector<bool> touched_ = {};
};

}  // namespace

Calibration calibrate(const std::vector<Log>& logs, const Kitchen& prior, const CalibrateOptions& options) {
  require_kitchen(prior);
  require(options);
  if (logs.empty()) throw InvalidInput("there are no logs", {.path = "logs", .advice = "log a rise first"});
  return Search(logs, prior, options)();
}

template <>
const Form& form_of<Log>() {
  static const Form form =
      made_form<Log>("Log", "A bake as it was really done, with what was seen of it.", {},
                     {row<&Log::name>("name", "for reports"),
                      must_be_given(row<&Log::process>("process", "stages that end by the hours at which they ended")),
                      row<&Log::seen>("seen", "looks at its stages")});
  return form;
}

template <>
const Form& form_of<CalibrateOptions>() {
  using O = CalibrateOptions;
  static const Form form =
      made_form<O>("CalibrateOptions", "How a kitchen is learned from logs.", {},
                   {row<&O::bake_effect>("bake_effect", "each bake differs by the kitchen's bake_sd and model_sd"),
                    row<&O::is_normal>("is_normal", "noise of ln time is normal instead of Student's t"),
                    row<&O::log_time_scale>(log_time_scale_field),
                    row<&O::heat_of_fermentation>("heat_of_fermentation", "the dough is warmed by its fermentation")});
  return form;
}

template <>
const Form& form_of<Learned>() {
  using L = Learned;
  static const Form form =
      made_form<L>("Learned", "What was learned of a parameter.", {},
                   {row<&L::name>("name", "of the parameter"), row<&L::value>("value", "now"),
                    row<&L::sd>("sd", "in the coordinate in which it is learned"),
                    row<&L::prior_sd>("prior_sd", "before"),
                    row<&L::share>("share", "of the prior's sd that is left: 1 is nothing learned")});
  return form;
}

template <>
const Form& form_of<Residual>() {
  using R = Residual;
  static const Form form =
      made_form<R>("Residual", "What a look says beside the kitchen that was learned from it.", {},
                   {row<&R::log>("log", "from 0"), row<&R::look>("look", "of the log, from 0"),
                    or_never(row<&R::expected_h>("expected_h", "h since the stage began, the median")),
                    row<&R::seen_h>("seen_h", "h since the stage began"),
                    or_never(row<&R::standardised>("standardised", "difference of ln time by noise and bake")),
                    row<&R::explanation>("explanation", "what would explain a surprise; often none")});
  return form;
}

template <>
const Form& form_of<Calibration>() {
  using C = Calibration;
  static const Form form =
      made_form<C>("Calibration", "What was learned from logs.", {},
                   {row<&C::kitchen>("kitchen", "its values and its covariance"),
                    row<&C::learned>("learned", "parameter by parameter"),
                    row<&C::residuals>("residuals", "look by look"),
                    row<&C::linearisations>("linearisations", "that it took"),
                    row<&C::decrement>("decrement", "what a further step would gain, in ln of the posterior"),
                    row<&C::notices>("notices", "surprises")});
  return form;
}

}  // namespace ferment
