#include "process/leg.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <Eigen/Dense>

#include "clock/line.hpp"
#include "heat/node.hpp"

namespace ferment {
namespace {

constexpr int most_iterations = 40;

// Gauss–Legendre abscissae on [0, 1] (Abramowitz & Stegun 1964, table 25.4).
constexpr AtAbscissae abscissa{0.0694318442029737124, 0.3300094782075718676, 0.6699905217924281324,
                               0.9305681557970262876};

/// Lagrange's polynomials on the abscissae, by powers.
constexpr std::array<AtAbscissae, abscissae> lagrange() {
  std::array<AtAbscissae, abscissae> all{};
  for (std::size_t j = 0; j < abscissae; ++j) {
    AtAbscissae p{};
    p[0] = 1;
    std::size_t degree = 0;
    for (std::size_t k = 0; k < abscissae; ++k) {
      if (k == j) continue;
      const double per = 1 / (abscissa[j] - abscissa[k]);
      ++degree;
      for (std::size_t power = degree; power > 0; --power) p[power] = (p[power - 1] - abscissa[k] * p[power]) * per;
      p[0] *= -abscissa[k] * per;
    }
    all[j] = p;
  }
  return all;
}
constexpr std::array<AtAbscissae, abscissae> basis = lagrange();

/// Weights of the values at the abscissae: of the value at x, and of the integral from 0 to x.
constexpr AtAbscissae value_weights(double x) {
  AtAbscissae w{};
  for (std::size_t j = 0; j < abscissae; ++j) {
    for (std::size_t power = abscissae; power-- > 0;) w[j] = w[j] * x + basis[j][power];
  }
  return w;
}
constexpr AtAbscissae integral_weights(double x) {
  AtAbscissae w{};
  for (std::size_t j = 0; j < abscissae; ++j) {
    for (std::size_t power = abscissae; power-- > 0;)
      w[j] = w[j] * x + basis[j][power] / static_cast<double>(power + 1);
    w[j] *= x;
  }
  return w;
}

constexpr std::array<AtAbscissae, abscissae> integrals_to_abscissae() {
  std::array<AtAbscissae, abscissae> all{};
  for (std::size_t i = 0; i < abscissae; ++i) all[i] = integral_weights(abscissa[i]);
  return all;
}
constexpr std::array<AtAbscissae, abscissae> to_abscissa = integrals_to_abscissae();
constexpr AtAbscissae to_end = integral_weights(1);
constexpr std::array<AtAbscissae, 4> to_quarter{integral_weights(0.25), integral_weights(0.5), integral_weights(0.75),
                                                to_end};
constexpr Four quarters_after(double hours) { return {0.25 * hours, 0.5 * hours, 0.75 * hours, hours}; }
constexpr AtAbscissae at_end = value_weights(1);

double sum(const AtAbscissae& weights, const AtAbscissae& values) {
  double total = 0;
  for (std::size_t j = 0; j < abscissae; ++j) total += weights[j] * values[j];
  return total;
}

using Vector = Eigen::Matrix<double, static_cast<int>(abscissae), 1>;
using Matrix = Eigen::Matrix<double, static_cast<int>(abscissae), static_cast<int>(abscissae)>;

}  // namespace

Leg::Leg(const Setting& setting, double start_h, double start_c, double hours)
    : setting_(&setting), start_h_(start_h), hours_(hours) {
  const Place& place = *setting.place;
  if (place.is_dough) {
    const double from = temperature_at(place, start_h);
    path_ = Line{from, hours > 0 ? (temperature_at(place, start_h + hours) - from) / hours : 0};
    return;
  }
  const bool warms = setting.warming_k_per_mmol > 0 && setting.making->has_yeast();
  if (place.temperature_c && !warms && !has_vapour(setting.node)) {
    path_ = Relaxation{*place.temperature_c, start_c - *place.temperature_c, setting.node.time_constant_h};
    return;
  }
  solve_coupled(start_c);
}

void Leg::solve_coupled(double start_c) {
  const Setting& s = *setting_;
  const double per_h = 1 / s.node.time_constant_h;
  const double k_per_wh = 3600 / s.node.capacity_j_k;
  const bool open = has_vapour(s.node);

  AtAbscissae air{};
  Vector air_drive;
  Matrix coupling = Matrix::Identity();
  for (std::size_t i = 0; i < abscissae; ++i) air[i] = temperature_at(*s.place, start_h_ + hours_ * abscissa[i]);
  for (std::size_t i = 0; i < abscissae; ++i) {
    const auto row = static_cast<Eigen::Index>(i);
    air_drive[row] = start_c + hours_ * per_h * sum(to_abscissa[i], air);
    for (std::size_t j = 0; j < abscissae; ++j)
      coupling(row, static_cast<Eigen::Index>(j)) += hours_ * per_h * to_abscissa[i][j];
  }
  const Matrix solution = coupling.inverse();

  Coupled path{start_c, {}, {}};
  MadeAlong along{};
  const double made_within_mmol = 0.1 * s.settled_k / s.warming_k_per_mmol;
  AtAbscissae vapour{};
  Vector temperature = solution * air_drive;  // as if nothing but the air acted
  bool settled = false;
  for (int iteration = 0; iteration < most_iterations && !settled; ++iteration) {
    for (std::size_t i = 0; i < abscissae; ++i) {
      const double t = temperature[static_cast<Eigen::Index>(i)];
      path.clock_rate[i] = s.speed->solutes() * s.speed->factor(t);
      // Only what vapour adds to the loss through air, which the matrix has.
      if (open) vapour[i] = k_per_wh * (heat_loss_w(s.node, t, air[i]) - s.node.heat_loss_w_per_k * (t - air[i]));
    }
    Vector drive = air_drive;
    AtAbscissae clock{};
    for (std::size_t i = 0; i < abscissae; ++i) clock[i] = hours_ * sum(to_abscissa[i], path.clock_rate);
    if (iteration == 0 || !along.reaches(clock, made_within_mmol)) along = s.making->made_along(clock);
    for (std::size_t i = 0; i < abscissae; ++i) {
      const auto row = static_cast<Eigen::Index>(i);
      drive[row] += s.warming_k_per_mmol * (along.at(i, clock[i]) - s.making->made_now());
      if (open) drive[row] -= hours_ * sum(to_abscissa[i], vapour);
    }
    const Vector next = solution * drive;
    settled = (next - temperature).cwiseAbs().maxCoeff() < s.settled_k;
    temperature = next;
  }
  for (std::size_t i = 0; i < abscissae; ++i)
    path.air_rate[i] = per_h * (air[i] - temperature[static_cast<Eigen::Index>(i)]) - vapour[i];
  path_ = path;
  quarters_ = points_at(to_quarter, quarters_after(hours_));
  if (!settled) {
    error_ = std::numeric_limits<double>::infinity();
    return;
  }
  const double end_c = quarters_.back().temperature_c, end_air = temperature_at(*s.place, start_h_ + hours_);
  const double clock_rate = s.speed->solutes() * s.speed->factor(end_c);
  const double air_rate = -k_per_wh * heat_loss_w(s.node, end_c, end_air);
  const double clock_error = std::abs(sum(at_end, path.clock_rate) - clock_rate) / (clock_rate + 0.01);
  const double air_error = std::abs(sum(at_end, path.air_rate) - air_rate) * hours_;  // K
  error_ = std::max(clock_error, air_error);
}

/// The moments of a coupled leg, by the weights of the integrals up to them.
Quarters Leg::points_at(const std::array<AtAbscissae, 4>& weights, const Four& after_h) const {
  const auto& path = std::get<Coupled>(path_);
  const GasMaking& making = *setting_->making;
  Four clock{};
  for (std::size_t i = 0; i < clock.size(); ++i) clock[i] = hours_ * sum(weights[i], path.clock_rate);
  const Four made = making.made_after(clock);
  Quarters points{};
  for (std::size_t i = 0; i < points.size(); ++i) {
    points[i] = {after_h[i], clock[i], made[i],
                 path.start_c + hours_ * sum(weights[i], path.air_rate) +
                     setting_->warming_k_per_mmol * (made[i] - making.made_now())};
  }
  return points;
}

/// A moment of an exact leg, but for its gas.
Point Leg::exact_at(double after_h) const {
  const Speed& speed = *setting_->speed;
  Point p{.after_h = after_h};
  if (const auto* line = std::get_if<Line>(&path_)) {
    p.temperature_c = line->from_c + line->per_h * after_h;
    p.equivalent_h = speed.solutes() * after_h * mean_factor_over_line(speed.law(), line->from_c, p.temperature_c);
  } else {
    const auto& relaxation = std::get<Relaxation>(path_);
    const double tau = relaxation.time_constant_h, u = after_h / tau;
    p.temperature_c = relaxation.air_c + relaxation.gap_k * math::exp(-u);
    p.equivalent_h = speed.solutes() * tau * factor_integral(speed.law(), relaxation.air_c, relaxation.gap_k, u);
  }
  return p;
}

Point Leg::at(double after_h) const {
  if (is_coupled()) {
    const AtAbscissae weights = integral_weights(after_h / hours_);
    return points_at({weights, weights, weights, weights}, {after_h, after_h, after_h, after_h})[0];
  }
  Point p = exact_at(after_h);
  p.made_mmol = setting_->making->made_after(p.equivalent_h);
  return p;
}

Quarters Leg::quarters() const {
  if (is_coupled()) return quarters_;
  const Four after_h = quarters_after(hours_);
  Quarters points{};
  Four clock{};
  for (std::size_t i = 0; i < points.size(); ++i) {
    points[i] = exact_at(after_h[i]);
    clock[i] = points[i].equivalent_h;
  }
  const Four made = setting_->making->made_after(clock);
  for (std::size_t i = 0; i < points.size(); ++i) points[i].made_mmol = made[i];
  return points;
}

double Leg::heat_lost_j() const {
  const double capacity = setting_->node.capacity_j_k;
  if (std::holds_alternative<Relaxation>(path_)) return capacity * (at(0).temperature_c - end().temperature_c);
  if (const auto* coupled = std::get_if<Coupled>(&path_)) return -capacity * hours_ * sum(to_end, coupled->air_rate);
  return 0;
}

Leg Leg::until(double hours) const {
  if (is_coupled()) return Leg(*setting_, start_h_, std::get<Coupled>(path_).start_c, hours);
  Leg shorter = *this;
  shorter.hours_ = hours;
  return shorter;
}

}  // namespace ferment
