#include <ferment/clock/drift.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

#include <ferment/base/error.hpp>

#include "base/blocks.hpp"
#include "base/dual.hpp"
#include "base/indexed.hpp"
#include "base/loops.hpp"
#include "base/text.hpp"
#include "clock/drift_formula.hpp"
#include "clock/line.hpp"
#include "clock/speed_pass.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr int most_steps = 60;
constexpr int steps_together = 3;  // settle all but a few in a hundred
constexpr int steps_alone = 12;
constexpr double edge_k =
    0.01;  // so near a law's limits the split is but rounding; the factor itself, a product, is exact there

/// Between which temperatures a law's clock runs, and how fast the factor may change, per K.
struct Reach {
  double low_c, high_c, steepness;
};
Reach reach_of(const Cardinal& law) { return {law.t_min_c, law.t_max_c, 0.2}; }
Reach reach_of(const SquareRoot& law) { return {law.t_min_c, law.t_max_c, 0.2 + 2 * law.decline_per_k}; }
Reach reach_of(const Arrhenius& law) { return {-never, never, law.activation_energy_kj / 600}; }
Reach reach_of(const ConstantQ10& law) { return {-never, never, std::log(law.q10) / 10}; }

/// One law's clock along room + gap·e^(−u), u in time constants.
template <class Law>
class DriftClock {
 public:
  explicit DriftClock(const Law& law)
      : law_(law), factor_(formula::factor_of<double>(law)), dual_(formula::factor_of<Dual>(law)),
        reach_(reach_of(law)) {}

  /// When the clock begins and ends to run.
  struct Window {
    double from, to;
  };
  Window window(double room, double gap) const {
    const bool cooling = gap > 0;
    // The temperature goes from `behind`, where it is at first outside, to `ahead`, which it may pass.
    const double behind = cooling ? reach_.high_c : reach_.low_c;
    const double ahead = cooling ? reach_.low_c : reach_.high_c;
    const auto crossing = [&](double limit) {
      const double left = (limit - room) / gap;
      return left > 0 ? std::max(0.0, -std::log(left)) : never;
    };
    const double start = room + gap;
    const bool inside = start > reach_.low_c && start < reach_.high_c;
    if (gap == 0) return {0, inside ? never : 0};
    const bool past = cooling ? start <= ahead : start >= ahead;
    if (past) return {0, 0};
    const double from = inside ? 0 : crossing(behind);
    if (!(from < never)) return {0, 0};
    return {from, crossing(ahead)};
  }

  /// ∫ factor du from 0 to u.
  double integral(double room, double gap, double u) const {
    const Window w = window(room, gap);
    const double end = std::min(u, w.to);
    if (end <= w.from) return 0;
    return inside(room, gap * std::exp(-w.from), end - w.from);
  }

  double factor(double t) const { return factor_(t); }
  Dual with_slope(double t) const { return dual_(Dual(t, 1)); }

  /// ∫ factor du from 0 to u where the clock runs all the time.
  double inside(double room, double gap, double u) const {
    if constexpr (std::is_same_v<Law, Cardinal>) {
      if (formula::SplitCardinal<double>::is_useful(factor_) && room > reach_.low_c + edge_k &&
          room < reach_.high_c - edge_k) {
        return formula::drifted_clock(formula::SplitCardinal<double>(factor_), room, gap, u, formula::decay(u));
      }
    }
    constexpr double level = 40;  // from here on the gap is below the last digit
    const double longest = std::min(0.5, 3 / (reach_.steepness * std::abs(gap) + 1e-9));
    const double moving = std::min(u, level);
    const double sum =
        formula::quadrature(0, moving, longest, [&](double v) { return factor_(room + gap * std::exp(-v)); });
    return sum + (u > level ? factor_(room) * (u - level) : 0);
  }

 private:
  Law law_;
  decltype(formula::factor_of<double>(Law{})) factor_;
  decltype(formula::factor_of<Dual>(Law{})) dual_;
  Reach reach_;
};

/// u at which the integral is `wanted`; infinite if the clock stops before. Halley's steps, kept between bounds that
/// close in.
template <class Law>
double time_for(const DriftClock<Law>& clock, double room, double gap, double wanted) {
  if (wanted == 0) return 0;
  const auto w = clock.window(room, gap);
  if (!(w.to > w.from)) return never;
  const double from_gap = gap * std::exp(-w.from);
  double low = 0, high = w.to - w.from;
  if (high < never && clock.inside(room, from_gap, high) < wanted) return never;
  double u = std::min(wanted / std::max(clock.factor(room + from_gap), 1e-3), high < never ? high / 2 : 1e9);
  double best = u, best_miss = never;
  for (int step = 0; step < most_steps; ++step) {
    const double miss = clock.inside(room, from_gap, u) - wanted;
    (miss < 0 ? low : high) = u;
    if (std::abs(miss) < best_miss) {
      best = u;
      best_miss = std::abs(miss);
    }
    const double drift = from_gap * std::exp(-u);
    const Dual f = clock.with_slope(room + drift);
    const double curve = -f.slope * drift;
    const double halley = 2 * miss * f.value / (2 * f.value * f.value - miss * curve);
    double next = u - halley;
    if (!(next > low && next < high)) next = high < never ? (low + high) / 2 : 2 * u + 1;
    if (std::abs(next - u) <= 4e-16 * u || miss == 0) break;
    u = next;
  }
  if (!(best_miss <= 1e-12 * wanted + 1e-14)) {
    throw NotConverged("the hours for a drifting clock did not settle",
                       {.advice = "please report the input that led here"});
  }
  return w.from + best;
}

using Buffer = std::array<double, block_size>;

/// A block of drifts of the cardinal law, inputs by pointer.
struct Block {
  const double *start, *room, *tau;
  Block from(std::size_t i) const { return {start + i, room + i, tau + i}; }
};

/// Whether a drift stays where the clock runs and the split holds: room and start inside, the room not at the very
/// edge.
FERMENT_WIDE_LOOPS void inside_of(Block b, double low, double high, double* inside, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    const bool in = (b.start[i] > low) & (b.start[i] < high) & (b.room[i] > low + edge_k) & (b.room[i] < high - edge_k);
    inside[i] = math::select(in, 1.0, 0.0);
  }
}

FERMENT_WIDE_LOOPS void integrals(Block b, formula::SplitCardinal<double> c, const double* time_h, double* out,
                                  std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    const double u = time_h[i] / b.tau[i];
    out[i] = b.tau[i] * formula::drifted_clock(c, b.room[i], b.start[i] - b.room[i], u, formula::decay(u));
  }
}

FERMENT_WIDE_LOOPS void relaxed(Block b, const double* time_h, double* out, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) out[i] = b.room[i] + (b.start[i] - b.room[i]) * math::exp(-time_h[i] / b.tau[i]);
}

/// First guess of u: at the speed of the mean temperature over the time that the start's speed would take.
FERMENT_WIDE_LOOPS void guess(Block b, formula::SplitCardinal<double> c, const double* equivalent_h, double* wanted,
                              double* u, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    wanted[i] = equivalent_h[i] / b.tau[i];
    const double first =
        math::smaller(math::larger(wanted[i] / math::larger(c.speed(b.start[i]).factor, 1e-3), 1e-12), 1e6);
    const double mean_left = formula::decay(first).gone / first;
    const double mean_c = b.room[i] + (b.start[i] - b.room[i]) * mean_left;
    u[i] = math::smaller(wanted[i] / math::larger(c.speed(mean_c).factor, 1e-3), 1e6);
  }
}

/// Halley's step for all, at most twice Newton's: far out the curve may promise too much.
FERMENT_WIDE_LOOPS void halley_steps(Block b, formula::SplitCardinal<double> c, const double* wanted, const double* u,
                                     double* steps, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    const double gap = b.start[i] - b.room[i];
    const formula::Decay<double> d = formula::decay(u[i]);
    const double drift = gap * d.left;
    const double miss = formula::drifted_clock(c, b.room[i], gap, u[i], d) - wanted[i];
    const auto speed = c.speed(b.room[i] + drift);
    const double square = speed.factor * speed.factor;
    steps[i] = 2 * miss * speed.factor / math::larger(2 * square + miss * speed.slope * drift, square);
  }
}

/// Takes the steps of all that are open (1, else 0); returns how many still are. A settled one is left alone, so that
/// its digits do not depend on its neighbours.
FERMENT_WIDE_LOOPS std::size_t settle(const double* steps, double* u, double* open, std::size_t n) {
  std::size_t unsettled = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const double next = math::larger(u[i] - steps[i], 0.25 * u[i]);
    const double moved = math::larger(steps[i], -steps[i]);
    const bool still =
        (open[i] > 0) & (moved > 1e-6 * next);  // Halley is cubic: the next step would be below the last digit
    u[i] = math::select(open[i] > 0, next, u[i]);
    open[i] = math::select(still, 1.0, 0.0);
    unsettled += still;
  }
  return unsettled;
}

/// The inputs of a call, checked.
class Scenarios {
 public:
  Scenarios(const Drifts& d, std::size_t n)
      : start_((require_column(field::start_c, d.start_c, n), d.start_c), n),
        room_((require_column(field::surroundings_c, d.surroundings_c, n), d.surroundings_c), n),
        tau_((require_column(field::time_constant_h, d.time_constant_h, n), d.time_constant_h), n) {}
  Block at(std::size_t first) const { return {start_.at(first), room_.at(first), tau_.at(first)}; }

 private:
  Column<block_size> start_, room_, tau_;
};

/// The split of the cardinal law, if the law is cardinal and the split of use.
std::optional<formula::SplitCardinal<double>> split_of(const TemperatureLaw& law) {
  const auto* cardinal = std::get_if<Cardinal>(&law);
  if (cardinal == nullptr) return std::nullopt;
  const formula::CardinalFactor<double> factor(*cardinal);
  if (!formula::SplitCardinal<double>::is_useful(factor)) return std::nullopt;
  return formula::SplitCardinal<double>(factor);
}

Drifts array_of_one(const Drift& d) { return {d.start_c, d.surroundings_c, d.time_constant_h}; }

/// `scenarios` tell an array of one from a single value.
[[noreturn]] void refuse_stopped(const TemperatureLaw& law, const Drift& drift, double equivalent_h,
                                 const Values& scenarios, std::size_t first, std::size_t count) {
  ErrorDetail detail;
  add_index(detail, scenarios, first, count);
  const double reached = drift_equivalent_h(law, drift, field::time_h.high);
  detail.path = "equivalent_h";
  detail.value = equivalent_h;
  detail.low = 0.0;
  detail.high = reached;
  detail.advice = "choose warmer or cooler surroundings";
  throw NoSolution("the clock stops before " + number(equivalent_h) + " equivalent hours: in surroundings of " +
                       degrees(drift.surroundings_c) + " it reaches " + number(reached),
                   detail);
}

}  // namespace

void drifted_c(const Drifts& drifts, const Values& time_h, std::span<double> out) {
  const std::size_t n = out.size();
  const Scenarios scenarios(drifts, n);
  for_column<block_size>(field::time_h, time_h, n, [&](std::size_t first, const double* time, std::size_t count) {
    relaxed(scenarios.at(first), time, out.data() + first, count);
  });
}

double drifted_c(const Drift& drift, double time_h) {
  return single([&](std::span<double> out) { drifted_c(array_of_one(drift), time_h, out); });
}

void drift_equivalent_h(const TemperatureLaw& law, const Drifts& drifts, const Values& time_h, std::span<double> out) {
  require_law(law);
  const std::size_t n = out.size();
  const Scenarios scenarios(drifts, n);
  const auto split = split_of(law);
  for_column<block_size>(field::time_h, time_h, n, [&](std::size_t first, const double* time, std::size_t count) {
    const Block b = scenarios.at(first);
    Buffer inside;
    std::fill_n(inside.begin(), count, 0.0);
    if (split) {
      inside_of(b, split->t_min, split->t_max, inside.data(), count);
      integrals(b, *split, time, out.data() + first, count);
    }
    std::visit(
        [&](const auto& kind) {
          const DriftClock clock(kind);
          for (std::size_t i = 0; i < count; ++i) {
            if (inside[i] > 0) continue;
            out[first + i] = b.tau[i] * clock.integral(b.room[i], b.start[i] - b.room[i], time[i] / b.tau[i]);
          }
        },
        law);
  });
}

double drift_equivalent_h(const TemperatureLaw& law, const Drift& drift, double time_h) {
  return single([&](std::span<double> out) { drift_equivalent_h(law, array_of_one(drift), time_h, out); });
}

void drift_hours(const TemperatureLaw& law, const Drifts& drifts, const Values& equivalent_h, std::span<double> out,
                 Unreachable unreachable) {
  require_law(law);
  const std::size_t n = out.size();
  const Scenarios scenarios(drifts, n);
  const auto split = split_of(law);
  for_column<block_size>(field::equivalent_h, equivalent_h, n,
                         [&](std::size_t first, const double* asked, std::size_t count) {
                           const Block b = scenarios.at(first);
                           Buffer done, wanted, u, open, steps;
                           std::fill_n(done.begin(), count, 0.0);
                           if (split) {
                             inside_of(b, split->t_min, split->t_max, done.data(), count);
                             guess(b, *split, asked, wanted.data(), u.data(), count);
                             std::copy_n(done.begin(), count, open.begin());
                             const auto step = [&](std::size_t i, std::size_t lanes) {
                               halley_steps(b.from(i), *split, wanted.data() + i, u.data() + i, steps.data() + i,
                                            lanes);
                               return settle(steps.data() + i, u.data() + i, open.data() + i, lanes);
                             };
                             std::size_t unsettled = count;
                             for (int k = 0; k < steps_together && unsettled > 0; ++k) unsettled = step(0, count);
                             for (std::size_t i = 0; unsettled > 0 && i < count; ++i) {
                               if (!(open[i] > 0)) continue;
                               for (int k = 0; k < steps_alone && open[i] > 0; ++k) step(i, 1);
                               if (open[i] > 0)
                                 done[i] = 0;  // goes the slow way, which keeps bounds and checks the residual
                             }
                           }
                           std::visit(
                               [&](const auto& kind) {
                                 const DriftClock clock(kind);
                                 for (std::size_t i = 0; i < count; ++i) {
                                   if (!(done[i] > 0))
                                     u[i] = time_for(clock, b.room[i], b.start[i] - b.room[i], asked[i] / b.tau[i]);
                                   out[first + i] = b.tau[i] * u[i];
                                 }
                               },
                               law);
                         });
  if (unreachable == Unreachable::infinity) return;
  const Lost lost = lost_in(out);
  if (lost.count == 0) return;
  const bool is_one = equivalent_h.is_single() && drifts.start_c.is_single() && drifts.surroundings_c.is_single() &&
                      drifts.time_constant_h.is_single();
  refuse_stopped(law,
                 {drifts.start_c[lost.first], drifts.surroundings_c[lost.first], drifts.time_constant_h[lost.first]},
                 equivalent_h[lost.first], is_one ? equivalent_h : Values(out), lost.first, lost.count);
}

double drift_hours(const TemperatureLaw& law, const Drift& drift, double equivalent_h) {
  return single([&](std::span<double> out) { drift_hours(law, array_of_one(drift), equivalent_h, out); });
}

void series_equivalent_h(const TemperatureLaw& law, std::span<const double> time_h,
                         std::span<const double> temperature_c, std::span<double> equivalent_h) {
  require_law(law);
  const std::size_t n = time_h.size();
  if (n < 2)
    throw InvalidInput("a temperature series needs at least two readings, got " + std::to_string(n),
                       {.path = "time_h"});
  if (temperature_c.size() != n || equivalent_h.size() != n) {
    throw InvalidInput("the series has " + std::to_string(n) + " times, " + std::to_string(temperature_c.size()) +
                           " temperatures and room for " + std::to_string(equivalent_h.size()) + " answers",
                       {.path = "temperature_c", .advice = "give one for each"});
  }
  require(field::temperature_c, temperature_c);
  for (std::size_t i = 0; i < n; ++i) {
    const double step = i == 0 ? 1 : time_h[i] - time_h[i - 1];
    if (!std::isfinite(time_h[i]) || !(step > 0)) {
      throw InvalidInput(
          "time goes from " + number(i == 0 ? 0 : time_h[i - 1]) + " h to " + number(time_h[i]) + " h at reading " +
              std::to_string(i + 1) + " of " + std::to_string(n),
          {.path = "time_h", .value = time_h[i], .index = i, .advice = "the times must be finite and rise"});
    }
  }
  equivalent_h[0] = 0;
  for (std::size_t i = 1; i < n; ++i) {
    const double hours = time_h[i] - time_h[i - 1];
    equivalent_h[i] = equivalent_h[i - 1] + mean_factor_over_line(law, temperature_c[i - 1], temperature_c[i]) * hours;
  }
}

double factor_integral(const TemperatureLaw& law, double room, double gap, double u) {
  return std::visit([&](const auto& kind) { return DriftClock(kind).integral(room, gap, u); }, law);
}

double mean_factor_over_line(const TemperatureLaw& law, double a, double b) {
  return std::visit(
      [&](const auto& kind) {
        const auto factor = formula::factor_of<double>(kind);
        if (a == b) return factor(a);
        const Reach reach = reach_of(kind);
        // The share of the line on which the clock runs.
        const auto at = [&](double limit) { return std::clamp((limit - a) / (b - a), 0.0, 1.0); };
        const double from = a < reach.low_c ? at(reach.low_c) : a > reach.high_c ? at(reach.high_c) : 0;
        const double to = b < reach.low_c ? at(reach.low_c) : b > reach.high_c ? at(reach.high_c) : 1;
        if (!(to > from)) return 0.0;
        const double first = std::clamp(a + from * (b - a), reach.low_c, reach.high_c);
        const double last = std::clamp(a + to * (b - a), reach.low_c, reach.high_c);
        if (const auto split = split_of(law)) return formula::mean_over_line(*split, first, last) * (to - from);
        const double longest = std::min(0.5, 3 / (reach.steepness * std::abs(last - first) + 1e-9));
        return formula::quadrature(0, 1, longest, [&](double v) { return factor(first + v * (last - first)); }) *
               (to - from);
      },
      law);
}

}  // namespace ferment
