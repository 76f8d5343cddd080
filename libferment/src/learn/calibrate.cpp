#include <ferment/learn/calibrate.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>
#include <utility>

#include <Eigen/Dense>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"
#include "forecast/coordinates.hpp"
#include "forecast/draws.hpp"
#include "forecast/sighting.hpp"
#include "learn/bake.hpp"
#include "learn/damped.hpp"
#include "learn/importance.hpp"
#include "learn/plain_looks.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr std::uint32_t importance_seed = 17;
constexpr std::size_t enough_to_fit = 3;  ///< bakes: fewer, and a fit follows whatever it is told
using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;
using Index = Eigen::Index;

constexpr Field importance_field{"importance",
                                 "draws of the importance correction",
                                 "",
                                 0,
                                 65536,
                                 0,
                                 Quantity::ratio,
                                 "that correct the Laplace approximation; 0: it is not corrected",
                                 "",
                                 "1000 are enough"};

/// Coordinates in which the prior is a standard normal: those of the parameters, and one for each older packet of
/// yeast.
class Coordinates {
 public:
  Coordinates(const Kitchen& prior, const std::vector<Log>& logs)
      : prior_(prior), rows_(learnable()), root_(root_of(prior)) {
    const auto latest =
        std::max_element(logs.begin(), logs.end(), [](const Log& a, const Log& b) { return a.date < b.date; });
    // Of logs without dates, the last one.
    packet_ = latest->date.empty() ? logs.back().packet : latest->packet;
    for (const Log& log : logs) {
      std::optional<Index> packet;
      if (log.packet != packet_) {
        const auto known = std::find(others_.begin(), others_.end(), log.packet);
        packet = root_.cols() + (known - others_.begin());
        if (known == others_.end()) others_.push_back(log.packet);
      }
      packet_of_.push_back(packet);
    }
  }
  Index parameters() const { return root_.cols(); }
  Index size() const { return parameters() + static_cast<Index>(others_.size()); }
  const std::vector<Parameter>& rows() const { return rows_; }
  const Matrix& root() const { return root_; }
  const std::string& packet() const { return packet_; }
  /// The coordinate of a log's packet, if it is not the latest.
  std::optional<Index> packet_of(std::size_t log) const { return packet_of_[log]; }

  /// The kitchen at z, its gassing rate moved besides.
  Kitchen at(const Vector& z, double bake = 0) const {
    return moved_by(prior_, rows_, root_ * z.head(parameters()), bake);
  }

 private:
  const Kitchen& prior_;
  std::vector<Parameter> rows_;
  Matrix root_;
  std::string packet_ = {};
  std::vector<std::string> others_ = {};
  std::vector<std::optional<Index>> packet_of_ = {};
};

/// The looks of one log at a place: what is expected, and how it goes with z and with the bake.
struct Linear {
  Vector expected;
  Matrix by_z;
  Vector by_bake;

  Vector moved(const Vector& by) const { return expected + by_z * by; }
};

/// What the fit takes the noise and the bake for.
struct Spreads {
  double bake_sd, log_time_scale;
};

class Search {
 public:
  Search(const std::vector<Log>& logs, const Kitchen& prior, const CalibrateOptions& options)
      : logs_(logs), prior_(prior), options_(options), coordinates_(prior, logs) {
    simulation_.heat_of_fermentation = options.heat_of_fermentation;
    simulation_.every_min = 0;
    simulation_.be_back_by = false;
    simulation_.tolerance = 1e-4;
    simulation_.interrupt = options.interrupt;
    for (std::size_t i = 0; i < logs.size(); ++i) {
      try {
        if (logs[i].seen.empty())
          throw InvalidInput("nothing was seen of this bake",
                             {.path = "seen", .advice = "leave it out, or add a look"});
        looks_.emplace_back(logs[i].process, logs[i].seen);
      } catch (const Error& error) {
        throw_within("logs[" + std::to_string(i) + "]", error);
      }
    }
    plain_.emplace(looks_);
    counted_.resize(looks_.size());
    std::iota(counted_.begin(), counted_.end(), std::size_t{0});
    for (std::size_t i = 0; i < looks_.size(); ++i) {
      if (!looks_[i].plain()) runs_.push_back(i);
    }
    use({prior.bake_sd, prior.log_time_scale});
  }

  Calibration operator()() {
    DampedMinimum found = settled(start());
    Calibration told{.linearisations = found.linearisations};
    std::optional<Learnt> learnt;
    constexpr std::size_t enough_for_spreads = 10;
    const bool is_first = prior_.learned_from.empty();
    if (options_.learn_spreads && options_.bake_effect && is_first && logs_.size() >= enough_for_spreads) {
      learnt = learn_spreads(found.at);
      use(learnt->mean);
      found = settled(found.at);
      told.linearisations += found.linearisations;
    }
    told.decrement = found.decrement;
    Matrix in_z = found.local.expected.inverse();
    if (learnt) in_z += learnt->between;
    if (options_.importance > 0) {
      const Corrected corrected =
          importance_corrected(found.at, in_z,
                               normals(options_.importance, static_cast<std::size_t>(found.at.size()), importance_seed),
                               [&](const Vector& z) { return -cost(z, expected_at(z)); });
      told.k_hat = corrected.k_hat;
      found.at = corrected.mean;
      in_z = corrected.covariance;
    }
    finish(told, found, in_z);
    return told;
  }

 private:
  struct Learnt {
    Spreads mean;
    Matrix between;  ///< covariance of the modes on the grid
  };
  using Expected = std::vector<Vector>;

  void use(const Spreads& spreads) {
    spreads_ = spreads;
    noise_ = {spreads.log_time_scale, options_.is_normal};
    bake_sd_ = options_.bake_effect ? std::hypot(spreads.bake_sd, prior_.model_sd) : 0;
  }

  /// What each of these kitchens makes of every log: plain ones by the closed form, the others by a run.
  std::vector<Expected> expected_of(const std::vector<Kitchen>& kitchens) const {
    std::vector<Expected> all(kitchens.size(), Expected(looks_.size()));
    for (std::size_t i = 0; i < kitchens.size() && runs_.size() < looks_.size(); ++i)
      plain_->expect(kitchens[i], all[i]);
    for_each_draw(options_.for_each, kitchens.size() * runs_.size(), [&](std::size_t task) {
      const std::size_t kitchen = task / runs_.size(), log = runs_[task % runs_.size()];
      const std::vector<double> values = looks_[log].expected(kitchens[kitchen], simulation_);
      all[kitchen][log] = Eigen::Map<const Vector>(values.data(), static_cast<Index>(values.size()));
    });
    return all;
  }
  /// The same at z, each log with the yeast of its packet.
  Expected expected_at(const Vector& z) const {
    Expected all = expected_of({coordinates_.at(z)}).front();
    if (linear_.empty()) return all;
    for (std::size_t log = 0; log < all.size(); ++log) {
      if (const auto packet = coordinates_.packet_of(log))
        all[log] += z[*packet] * prior_.packet_sd * linear_[log].by_bake;
    }
    return all;
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
  bool all_can_be(const Expected& expected) const {
    for (std::size_t j = 0; j < looks_.size(); ++j) {
      for (std::size_t i = 0; i < looks_[j].size(); ++i) {
        if (looks_[j][i].was != SeenAs::not_yet && !(expected[j][static_cast<Index>(i)] < never)) return false;
      }
    }
    return true;
  }

  DampedMinimum settled(const Vector& from) {
    DampedMinimum found =
        damped_minimum({.linearise = [this](const Vector& z, double difference) { return linearised(z, difference); },
                        .cost = [this](const Vector& z) { return cost(z, expected_at(z)); }},
                       from);
    if (!found.is_settled && !found.is_nearly_settled) {
      throw NotConverged("the calibration is not settled after " + std::to_string(found.linearisations) +
                             " linearisations; a further step would gain " + number(found.decrement, 3),
                         {.path = "logs", .advice = "look for a log that contradicts the others"});
    }
    is_rough_ = !found.is_settled;
    return found;
  }

  LocalCost linearised(const Vector& z, double step) {
    set_slopes(z, step);
    return local_cost(z, Vector::Zero(z.size()));
  }
  /// The cost at z as far from where the looks were linearised; and its slope and curvatures.
  LocalCost local_cost(const Vector& z, const Vector& by) const {
    LocalCost local{prior_cost(z), -prior_weights().cwiseProduct(z), prior_weights().asDiagonal(),
                    prior_weights().asDiagonal()};
    for (const std::size_t j : counted_) {
      const Linear& its = linear_[j];
      const Integrated told = without_bake(looks_[j], its.moved(by), its.by_bake, bake_sd_, noise_);
      local.cost -= told.log_likelihood;
      local.downhill += its.by_z.transpose() * told.slope;
      local.expected += its.by_z.transpose() * told.expected * its.by_z;
      local.observed += its.by_z.transpose() * told.observed * its.by_z;
    }
    return local;
  }
  Expected moved_to(const Vector& by) const {
    Expected all;
    for (const Linear& its : linear_) all.push_back(its.moved(by));
    return all;
  }
  double cost(const Vector& z, const Expected& expected) const {
    double sum = prior_cost(z);
    for (const std::size_t j : counted_) sum -= log_likelihood(j, expected[j]);
    return sum;
  }
  double log_likelihood(std::size_t log, const Vector& expected) const {
    return without_bake(looks_[log], expected, linear_[log].by_bake, bake_sd_, noise_).log_likelihood;
  }

  /// 1, or without a prior 0 where a look has a say.
  Vector prior_weights() const {
    Vector weights = Vector::Ones(coordinates_.size());
    for (Index k = 0; k < coordinates_.size() && options_.flat_prior; ++k)
      weights[k] = touched_[static_cast<std::size_t>(k)] ? 0 : 1;
    return weights;
  }
  double prior_cost(const Vector& z) const { return 0.5 * z.dot(prior_weights().cwiseProduct(z)); }

  /// A difference quotient; one-sided beside a rise that is never reached, which says nothing itself.
  static double slope(double before, double middle, double after, double step) {
    const bool low = before < never, high = after < never;
    if (low && high) return (after - before) / (2 * step);
    if (!(middle < never)) return 0;
    return high ? (after - middle) / step : low ? (middle - before) / step : 0;
  }

  /// Which coordinates a look knows of, also in a kitchen that is far from this one: in a quick dough the yeast's
  /// growth may have no say, and in a slow one it has.
  void find_touched(const Vector& z) {
    const Index parameters = coordinates_.parameters();
    touched_.assign(static_cast<std::size_t>(coordinates_.size()), true);
    constexpr double far = 2;  // prior sds
    std::vector<Kitchen> kitchens;
    const std::array<double, 3> bakes{0, -0.6, 0.6};
    for (const double bake : bakes) {
      kitchens.push_back(coordinates_.at(z, bake));
      for (Index k = 0; k < parameters; ++k)
        kitchens.push_back(coordinates_.at(z + far * Vector::Unit(z.size(), k), bake));
    }
    const std::vector<Expected> expected = expected_of(kitchens);
    const auto stride = static_cast<std::size_t>(parameters) + 1;
    for (Index k = 0; k < parameters; ++k) {
      bool any = false;
      for (std::size_t base = 0; base < bakes.size() * stride; base += stride) {
        const std::size_t there = base + 1 + static_cast<std::size_t>(k);
        for (std::size_t log = 0; log < looks_.size(); ++log) any |= expected[base][log] != expected[there][log];
      }
      touched_[static_cast<std::size_t>(k)] = any;
    }
  }

  /// Central differences in every coordinate that a look knows of, and by the bake; packets move as the bake does.
  void set_slopes(const Vector& z, double step) {
    if (touched_.empty()) find_touched(z);
    std::vector<Index> moving;
    for (Index k = 0; k < coordinates_.parameters(); ++k) {
      if (touched_[static_cast<std::size_t>(k)]) moving.push_back(k);
    }
    const double bake_step = step / 3;
    std::vector<Kitchen> kitchens{coordinates_.at(z), coordinates_.at(z, -bake_step), coordinates_.at(z, bake_step)};
    for (const Index k : moving) {
      for (const double by : {-step, step}) kitchens.push_back(coordinates_.at(z + by * Vector::Unit(z.size(), k)));
    }
    const std::vector<Expected> expected = expected_of(kitchens);
    linear_.clear();
    for (std::size_t log = 0; log < looks_.size(); ++log) {
      const Vector& here = expected[0][log];
      const auto quotients = [&](std::size_t before, double by) {
        Vector all(here.size());
        for (Index i = 0; i < here.size(); ++i)
          all[i] = slope(expected[before][log][i], here[i], expected[before + 1][log][i], by);
        return all;
      };
      Linear its{here, Matrix::Zero(here.size(), coordinates_.size()), quotients(1, bake_step)};
      for (std::size_t m = 0; m < moving.size(); ++m) its.by_z.col(moving[m]) = quotients(3 + 2 * m, step);
      if (const auto packet = coordinates_.packet_of(log)) {
        its.by_z.col(*packet) = prior_.packet_sd * its.by_bake;
        its.expected += z[*packet] * its.by_z.col(*packet);
      }
      linear_.push_back(std::move(its));
    }
    if (foreseen_.empty()) foreseen_ = linear_;
  }

  static double log_determinant(const Matrix& positive) { return positive.ldlt().vectorD().array().log().sum(); }

  /// The logs that are no slip: a wild one would be taken for noise that all of them have.
  std::vector<std::size_t> believed() const {
    std::vector<std::size_t> all;
    for (std::size_t j = 0; j < looks_.size(); ++j) {
      bool is_slip = false;
      for (std::size_t i = 0; i < looks_[j].size(); ++i)
        is_slip |= residual(j, i, linear_[j], linear_[j].expected, false).surprising;
      if (!is_slip) all.push_back(j);
    }
    return all;
  }

  /// Bake and noise by their posterior on a grid, each mode by the looks as they were linearised last.
  Learnt learn_spreads(const Vector& at) {
    const Spreads first = spreads_;
    const std::vector<std::size_t> all = std::exchange(counted_, believed());
    struct Node {
      Spreads spreads;
      Vector mode;
      double log_weight;
    };
    std::vector<Node> nodes;
    double largest = -never;
    for (const double bake : {0.2, 0.55, 0.9, 1.25, 1.6, 1.95}) {
      for (const double scale : {0.4, 0.8, 1.2, 1.6}) {
        use({bake * first.bake_sd, scale * first.log_time_scale});
        const DampedMinimum there =
            damped_minimum({.linearise = [&](const Vector& z, double /*difference*/) { return local_cost(z, z - at); },
                            .cost = [&](const Vector& z) { return cost(z, moved_to(z - at)); }},
                           at, {.most_linearisations = 10});
        const double half_normals = -0.5 * (bake * bake + scale * scale);
        const double log_weight = half_normals - there.local.cost - 0.5 * log_determinant(there.local.expected);
        nodes.push_back({spreads_, there.at, log_weight});
        largest = std::max(largest, log_weight);
      }
    }
    counted_ = all;
    double total = 0;
    Learnt learnt{{0, 0}, Matrix::Zero(at.size(), at.size())};
    Vector mean = Vector::Zero(at.size());
    for (const Node& node : nodes) total += std::exp(node.log_weight - largest);
    for (const Node& node : nodes) {
      const double share = std::exp(node.log_weight - largest) / total;
      learnt.mean.bake_sd += share * node.spreads.bake_sd * node.spreads.bake_sd;
      learnt.mean.log_time_scale += share * node.spreads.log_time_scale * node.spreads.log_time_scale;
      mean += share * node.mode;
    }
    // Variances add up in a forecast: theirs is the mean that counts.
    learnt.mean.bake_sd = std::sqrt(learnt.mean.bake_sd);
    learnt.mean.log_time_scale = std::sqrt(learnt.mean.log_time_scale);
    for (const Node& node : nodes) {
      const double share = std::exp(node.log_weight - largest) / total;
      learnt.between += share * (node.mode - mean) * (node.mode - mean).transpose();
    }
    return learnt;
  }

  void finish(Calibration& told, const DampedMinimum& found, const Matrix& in_z) {
    const Index n = coordinates_.parameters();
    const Matrix& root = coordinates_.root();
    const Matrix covariance = root * in_z.topLeftCorner(n, n) * root.transpose();
    const Expected expected = expected_at(found.at);
    Kitchen& kitchen = told.kitchen;
    kitchen = coordinates_.at(found.at);
    kitchen.covariance.resize(static_cast<std::size_t>(n * n));
    Eigen::Map<Matrix>(kitchen.covariance.data(), n, n) = (covariance + covariance.transpose()) / 2;
    kitchen.bake_sd = spreads_.bake_sd;
    kitchen.log_time_scale = spreads_.log_time_scale;
    if (kitchen.learned_from.empty()) kitchen.learned_from = set_of(prior_);
    kitchen.packet = coordinates_.packet();
    kitchen.history = prior_.history;
    kitchen.mixing = prior_.mixing;
    const bool is_few = prior_.history.size() + logs_.size() < enough_to_fit;
    for (std::size_t j = 0; j < looks_.size(); ++j) {
      told.log_likelihood.push_back(log_likelihood(j, expected[j]));
      const std::size_t first = told.residuals.size();
      for (std::size_t i = 0; i < looks_[j].size(); ++i) {
        told.residuals.push_back(is_few ? residual(j, i, foreseen_[j], foreseen_[j].expected, true)
                                        : residual(j, i, linear_[j], expected[j], false));
      }
      kitchen.history.push_back(digest(j, told.residuals, first));
    }
    const Matrix told_by_logs = found.local.expected - Matrix(prior_weights().asDiagonal());
    told.effective_parameters = (found.local.expected.inverse() * told_by_logs).trace();
    told.notices = notices_of(kitchen);
    if (is_rough_) {
      told.notices.push_back({"calibration_nearly_settled",
                              Severity::info,
                              {{"decrement", found.decrement}},
                              "the last hundredth of the calibration is rough: a log is just where yeast begins to "
                              "grow; what that moves is far below the uncertainty"});
    }
    if (told.k_hat && !(*told.k_hat < 0.7)) {
      told.notices.push_back({"importance_weak",
                              Severity::caution,
                              {{"k_hat", *told.k_hat}},
                              "the importance correction stands on few draws (k " + number(*told.k_hat, 2) +
                                  "): take the uncorrected kitchen, or more draws"});
    }
  }

  static std::string set_of(const Kitchen& prior) {
    Kitchen nameless = prior;
    nameless.name.clear();
    return name_of(nameless);
  }

  LearnedBake digest(std::size_t j, const std::vector<Residual>& residuals, std::size_t first) const {
    const auto begin = residuals.begin() + static_cast<std::ptrdiff_t>(first);
    const auto most = std::max_element(begin, residuals.end(), [](const Residual& a, const Residual& b) {
      return std::abs(a.standardised) < std::abs(b.standardised);
    });
    return {.name = logs_[j].name,
            .date = logs_[j].date,
            .packet = logs_[j].packet,
            .dough_c = looks_[j].dough_c(),
            .looks = static_cast<double>(looks_[j].size()),
            .was = most->was,
            .seen = most->seen,
            .expected = most->expected,
            .standardised = most->standardised,
            .surprising = most->surprising,
            .explanation = most->explanation};
  }

  /// A look beside what was expected of it; foreseen: by the kitchen before, whose own uncertainty counts, too.
  Residual residual(std::size_t j, std::size_t i, const Linear& linear, const Vector& expected_of,
                    bool is_foreseen) const {
    const Look& look = looks_[j][i];
    const auto row = static_cast<Index>(i);
    const double expected = expected_of[row], scale = look.scale.value_or(noise_.scale);
    const double noise = (noise_.is_normal ? 1 : std::sqrt(2.0)) * scale;
    const double by_kitchen = is_foreseen ? linear.by_z.row(row).norm() : 0;
    const double sd = std::sqrt(noise * noise + std::pow(linear.by_bake[row] * bake_sd_, 2) + by_kitchen * by_kitchen);
    const auto standardised = [&](double moved_by) {
      const double r = (look.seen + moved_by - expected) / sd;
      if (look.was == SeenAs::not_yet) return std::max(r, 0.0);
      if (look.was == SeenAs::at) return r;
      const double early = (look.not_yet + moved_by - expected) / sd;
      return r < 0 ? r : std::max(early, 0.0);
    };
    const SeenAs was = looks_[j].was(i);
    const bool is_time = was != SeenAs::height && was != SeenAs::dough;
    Residual its{.log = j,
                 .look = i,
                 .was = was,
                 .expected = is_time ? std::exp(expected) : expected,
                 .seen = is_time ? std::exp(look.seen) : look.seen,
                 .standardised = standardised(0)};
    const double surprising = is_foreseen ? 4 : 3;
    its.surprising = std::abs(its.standardised) > surprising;
    if (its.surprising && is_time) its.explanation = explained(its, standardised);
    return its;
  }

  /// What was mistyped, if that would bring the look near.
  template <class Standardised>
  static std::string explained(const Residual& its, const Standardised& standardised) {
    constexpr double near = 1.5;
    struct Typo {
      double times;
      const char* words;
    };
    for (const Typo typo : {Typo{60, "hours for minutes"}, Typo{1.0 / 60, "minutes for hours"},
                            Typo{10, "a digit lost"}, Typo{0.1, "a digit too many"}}) {
      if (std::abs(standardised(std::log(typo.times))) < near) return typo.words;
    }
    const double other_h = its.seen + (its.seen < its.expected ? 12 : -12);
    const bool fits = other_h > 0 && std::abs(standardised(std::log(other_h / its.seen))) < near;
    return fits ? "twelve hours" : "";
  }

  const std::vector<Log>& logs_;
  const Kitchen& prior_;
  const CalibrateOptions& options_;
  Coordinates coordinates_;
  SimulateOptions simulation_ = {};
  std::vector<Looks> looks_ = {};
  std::optional<PlainLooks> plain_ = {};
  std::vector<std::size_t> runs_ = {};  ///< the logs that are not plain
  Spreads spreads_ = {};
  Noise noise_ = {};
  double bake_sd_ = 0;
  std::vector<Linear> linear_ = {};    ///< at the place linearised last
  std::vector<Linear> foreseen_ = {};  ///< at the first: what the kitchen before makes of the logs
  std::vector<bool> touched_ = {};
  std::vector<std::size_t> counted_ = {};  ///< the logs whose likelihood counts: all, but where spreads are learned
  bool is_rough_ = false;
};

std::string quantity(const LearnedBake& bake, double value) {
  if (!(value < never)) return "never";
  if (bake.was == SeenAs::height) return number(value, 3) + " %";
  if (bake.was == SeenAs::dough) return degrees(value);
  return in_hours(value);
}

/// What would be seen if it was mistyped so.
std::string instead(const LearnedBake& bake) {
  double hours = bake.seen;
  if (bake.explanation == "hours for minutes") hours *= 60;
  if (bake.explanation == "minutes for hours") hours /= 60;
  if (bake.explanation == "a digit lost") hours *= 10;
  if (bake.explanation == "a digit too many") hours /= 10;
  if (bake.explanation == "twelve hours") hours += hours < bake.expected ? 12 : -12;
  return bake.explanation.empty() ? "" : "; " + bake.explanation + "? " + quantity(bake, hours) + " would fit";
}

}  // namespace

Calibration calibrate(const std::vector<Log>& logs, const Kitchen& prior, const CalibrateOptions& options) {
  require_kitchen(prior);
  require(options);
  if (logs.empty()) throw InvalidInput("there are no logs", {.path = "logs", .advice = "log a rise first"});
  return Search(logs, prior, options)();
}

std::vector<Learned> learned_of(const Kitchen& kitchen) {
  require_kitchen(kitchen);
  const std::vector<Parameter> rows = learnable();
  const std::vector<double> now = covariance_of(kitchen),
                            before = covariance_of(kitchen.learned_from.empty() ? Kitchen{}
                                                                                : kitchen_named(kitchen.learned_from));
  std::vector<Learned> told;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::size_t diagonal = i * rows.size() + i;
    const double sd = std::sqrt(now[diagonal]), prior_sd = std::sqrt(before[diagonal]);
    told.push_back({std::string(rows[i].name), kitchen.*rows[i].value, sd, prior_sd, prior_sd > 0 ? sd / prior_sd : 1});
  }
  return told;
}

std::vector<Notice> notices_of(const Kitchen& kitchen) {
  std::vector<Notice> notices;
  double coldest_c = never, warmest_c = -never;
  for (std::size_t i = 0; i < kitchen.history.size(); ++i) {
    const LearnedBake& bake = kitchen.history[i];
    coldest_c = std::min(coldest_c, bake.dough_c);
    warmest_c = std::max(warmest_c, bake.dough_c);
    if (!bake.surprising) continue;
    const std::string name = !bake.name.empty() ? bake.name : !bake.date.empty() ? bake.date : std::to_string(i + 1);
    notices.push_back({"surprising_log",
                       Severity::caution,
                       {{"bake", static_cast<double>(i)}, {"seen", bake.seen}, {"expected", bake.expected}},
                       "bake \"" + name + "\" surprises: " + quantity(bake, bake.seen) + " where " +
                           quantity(bake, bake.expected) + " is expected" + instead(bake) +
                           (instead(bake).empty() ? "; it counts little" : "")});
  }
  constexpr double wide_k = 3;
  if (kitchen.history.size() >= enough_to_fit && warmest_c - coldest_c < wide_k) {
    notices.push_back({"one_temperature",
                       Severity::info,
                       {{"low_c", coldest_c}, {"high_c", warmest_c}},
                       "all bakes are at " + degrees(coldest_c) + " to " + degrees(warmest_c) +
                           ": how much cold slows this dough is not learned; log one from a colder or warmer day"});
  }
  return notices;
}

Kitchen with_packet(const Kitchen& kitchen, const std::string& packet) {
  if (kitchen.packet.empty() || packet.empty() || packet == kitchen.packet) return kitchen;
  Kitchen other = kitchen;
  other.covariance = covariance_of(kitchen);
  const std::vector<Parameter> rows = learnable();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].value == &Kitchen::gassing_rate)
      other.covariance[i * rows.size() + i] += kitchen.packet_sd * kitchen.packet_sd;
  }
  other.packet = packet;
  return other;
}

std::vector<LawFit> compare_laws(const std::vector<Log>& logs, const Kitchen& prior, const CalibrateOptions& options) {
  if (logs.size() < enough_to_fit) {
    throw InvalidInput("temperature laws cannot be told apart by " + std::to_string(logs.size()) + " logs",
                       {.path = "logs", .low = static_cast<double>(enough_to_fit), .advice = "log more bakes"});
  }
  struct Fit {
    LawFit told;
    std::vector<double> parts;
  };
  std::vector<Fit> fits;
  for (const Law law : {Law::cardinal, Law::square_root, Law::arrhenius, Law::constant_q10}) {
    Kitchen with_law = prior;
    with_law.law = law;
    const Calibration its = calibrate(logs, with_law, options);
    double sum = 0;
    for (const double part : its.log_likelihood) sum += part;
    fits.push_back({{law, -2 * sum + 2 * its.effective_parameters}, its.log_likelihood});
  }
  std::stable_sort(fits.begin(), fits.end(),
                   [](const Fit& a, const Fit& b) { return a.told.criterion < b.told.criterion; });
  std::vector<LawFit> told;
  const double n = static_cast<double>(logs.size());
  for (Fit& fit : fits) {
    double sum = 0, squares = 0;
    for (std::size_t i = 0; i < fit.parts.size(); ++i) {
      const double apart = -2 * (fit.parts[i] - fits.front().parts[i]);
      sum += apart;
      squares += apart * apart;
    }
    fit.told.difference = fit.told.criterion - fits.front().told.criterion;
    fit.told.sd = std::sqrt(n * std::max((squares - sum * sum / n) / (n - 1), 0.0));
    told.push_back(fit.told);
  }
  return told;
}

template <>
const Form& form_of<Log>() {
  static const Form form =
      made_form<Log>("Log", "A bake as it was really done, with what was seen of it.", {},
                     {row<&Log::name>("name", "for reports"), row<&Log::date>("date", "such as 2026-11-29"),
                      row<&Log::packet>("packet", "of yeast"),
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
                    row<&O::flat_prior>("flat_prior", "the kitchen's uncertainty does not count: what has one is free"),
                    row<&O::learn_spreads>("learn_spreads", "from ten logs on bake_sd and log_time_scale are learned"),
                    row<&O::importance>(importance_field),
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
                    row<&R::was>("was", "how it was seen"),
                    or_never(row<&R::expected>("expected",
                                               "of a rise h since its stage began, the median; of a height "
                                               "%; of a dough °C")),
                    row<&R::seen>("seen", "the look's"),
                    or_never(row<&R::standardised>("standardised", "difference of ln time by noise and bake")),
                    row<&R::surprising>("surprising", "whether it is hardly believed"),
                    row<&R::explanation>("explanation", "what would explain a surprise; often none")});
  return form;
}

template <>
const Form& form_of<Calibration>() {
  using C = Calibration;
  static const Form form =
      made_form<C>("Calibration", "What was learned from logs.", {},
                   {row<&C::kitchen>("kitchen", "its values and its covariance"),
                    row<&C::residuals>("residuals", "look by look"),
                    row<&C::linearisations>("linearisations", "that it took"),
                    row<&C::decrement>("decrement", "what a further step would gain, in ln of the posterior"),
                    row<&C::k_hat>("k_hat", "shape of the tail of importance weights: below 0.7 they can be trusted"),
                    row<&C::log_likelihood>("log_likelihood", "ln of the likelihood of each log"),
                    row<&C::effective_parameters>("effective_parameters", "how many the logs have pinned"),
                    row<&C::notices>("notices", "surprises, and what the logs could not teach")});
  return form;
}

template <>
const Form& form_of<LawFit>() {
  using F = LawFit;
  static const Form form =
      made_form<F>("LawFit", "How well a temperature law explains logs.", {},
                   {row<&F::law>("law", "of temperature"),
                    row<&F::criterion>("criterion", "information criterion: the least is best"),
                    row<&F::difference>("difference", "from the best"), row<&F::sd>("sd", "of the difference")});
  return form;
}

}  // namespace ferment
