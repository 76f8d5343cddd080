#include "process/stage_run.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

#include <boost/math/tools/toms748_solve.hpp>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/dough/yeast.hpp>

#include "base/text.hpp"
#include "dough/yeast_formula.hpp"
#include "heat/node.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr double fermentation_j_per_mmol =
    50.7;  // per CO2 as gas from dissolved glucose, from formation enthalpies (from memory: Alberty, NBS)
constexpr double loose = 1e-4;  // tolerances above it are those of forecasts
constexpr double longest_stage_h = field::until_h.high;
constexpr double longest_step_h = 24;
constexpr double shortest_step_h = 1e-6;
constexpr double same_moment_h = 1e-12;
constexpr double perishable_low_c = 5, perishable_high_c = 60;

double kept_by(Handling handling, const Kitchen& kitchen) {
  switch (handling) {
    case Handling::fold: return kitchen.kept_by_fold;
    case Handling::divide: return kitchen.kept_by_divide;
    case Handling::round: return kitchen.kept_by_round;
    case Handling::mould: return kitchen.kept_by_mould;
    case Handling::machine_mould: break;
  }
  return kitchen.kept_by_machine_mould;
}

/// How closely events are found.
struct Closeness {
  double within_h = 1e-14;     ///< of the moment
  double ratio_share = 1e-13;  ///< of the volume
};
Closeness closeness(double tolerance) {
  if (tolerance <= loose) return {};
  return {1e-6 * tolerance, 1e-8 * tolerance};
}

/// When miss(hours after the leg's start) becomes 0, between two moments that it lies between; else the later one.
template <class Miss>
double crossing(double before_h, double by_h, double within_h, Miss miss) {
  const double first = miss(before_h), last = miss(by_h);
  if (first == 0) return before_h;
  if (last == 0 || (first < 0) == (last < 0)) return by_h;
  std::uintmax_t evaluations = 100;
  const auto close = [&](double a, double b) { return std::abs(a - b) <= 4e-16 * std::abs(a + b) + within_h; };
  const auto bracket = boost::math::tools::toms748_solve(miss, before_h, by_h, first, last, close, evaluations);
  return (bracket.first + bracket.second) / 2;
}

/// Gassing dry matter of a percent of instant yeast.
constexpr double per_instant = formula::dry_matter_share(Yeast::instant);

}  // namespace

double share_between(double from_c, double to_c, double low_c, double high_c) {
  const double lower = std::min(from_c, to_c), upper = std::max(from_c, to_c);
  const double inside = std::min(upper, high_c) - std::max(lower, low_c);
  return upper > lower ? std::clamp(inside / (upper - lower), 0.0, 1.0) : (inside >= 0 ? 1 : 0);
}

void require_rising_dough(const State& state) {
  if (state.cohorts.empty()) return;
  const auto require_percent = [&](Field field, double grams) {
    field.advice = "percent are of the flour's weight; mix in more flour or water before the yeast, or less of it";
    require(field, percent_of_flour(state, grams));
  };
  require_percent(field::water_percent, state.amounts.water_g);
  require_percent(field::salt_percent, state.amounts.salt_g);
  require_percent(field::sugar_percent, state.amounts.sugar_g);
  require_percent(field::gluten_percent, state.amounts.gluten_g);
  double dose = 0;
  for (const Cohort& cohort : state.cohorts) dose += cohort.dose_g;
  require(field::instant_equivalent_percent, dose / per_instant);
}

StageRun::StageRun(State state, const Stage& stage, Role role, const Kitchen& kitchen, const SimulateOptions& options,
                   bool follows_core)
    : state_(std::move(state)), stage_(stage), kitchen_(kitchen), options_(options), speed_(state_, kitchen),
      making_(state_, kitchen), volume_(state_, kitchen), setting_{&speed_, &making_, nullptr},
      follows_core_(follows_core) {
  constexpr double last_digits_k = 1e-13;  // some ten roundings of a dough's temperature: nothing settles closer
  setting_.settled_k = std::max((options.tolerance > loose ? 1e-5 : 1e-7) * options.tolerance, last_digits_k);
  enter_place();
  if (!state_.stage)
    state_.stage =
        StageProgress{.start_h = state_.time_h, .start_c = shell().temperature_c, .start_ratio = ratio_now()};
  is_proof_ = is_final_proof(stage, role == Role::last);
  acceptable_ = acceptable_rise(stage, is_proof_);
  over_proof_ratio_ = over_proof_ratio(
      Dough{.dough_c = shell().temperature_c, .yeast_percent = 1, .gluten_percent = volume_.gluten_percent},
      standing_of(stage), is_proof_, std::max(state_.stage->start_ratio, field::volume_ratio.low), kitchen);
  if (is_proof_ || (role == Role::preferment && !acceptable_)) return;
  const double bulk_ratio =
      acceptable_ ? ratio_of(acceptable_->second) : kitchen.over_proof_bulk * volume_.retention(1.0).limit;
  over_proof_ratio_ = std::min(over_proof_ratio_, bulk_ratio);
}

/// Where the dough is now: its heat transfer; a dough whose temperature is given has it at once.
void StageRun::enter_place() {
  setting_.place = &place_at(stage_.surroundings, state_.time_h + same_moment_h);
  if (setting_.place->is_dough) {
    only_shell(state_).temperature_c = temperature_at(*setting_.place, state_.time_h);
    return;
  }
  setting_.node = node_of_checked(stage_.piece, state_, *setting_.place, kitchen_);
  const double flour_g = setting_.node.mass_g * state_.amounts.flour_g / state_.amounts.dough_g;
  setting_.warming_k_per_mmol =
      options_.heat_of_fermentation ? fermentation_j_per_mmol * flour_g / 100 / setting_.node.capacity_j_k : 0;
  const double usual_step_h = std::min(0.5, setting_.node.time_constant_h / 2);
  if (!(step_h_ > 0)) step_h_ = usual_step_h;
}

/// When something changes that a leg must not pass: another place, or a reading of a measured temperature.
double StageRun::next_break_h() const {
  const double later = state_.time_h + same_moment_h;
  double next = next_place_h(stage_.surroundings, later);
  if (const std::optional<Course>& course = setting_.place->course) {
    const auto reading = std::upper_bound(course->time_h.begin(), course->time_h.end(), later);
    if (reading != course->time_h.end()) next = std::min(next, *reading);
  }
  return next;
}

Four StageRun::ratios(const Quarters& quarters) const {
  Four co2{}, t{};
  for (std::size_t i = 0; i < quarters.size(); ++i) {
    co2[i] = shell().gas.co2_mmol + (quarters[i].made_mmol - shell().made_mmol);
    t[i] = quarters[i].temperature_c;
  }
  return volume_.ratios(co2, shell().gas.air_mmol, t, state_.anchor_ratio);
}

Moment StageRun::moment(const Point& p) const {
  const Gas gas{shell().gas.co2_mmol + (p.made_mmol - shell().made_mmol), shell().gas.air_mmol};
  return {state_.time_h + p.after_h, p.temperature_c, shell().equivalent_h + p.equivalent_h, p.made_mmol,
          volume_.ratio(gas, p.temperature_c, state_.anchor_ratio)};
}

/// A coupled leg may not pass the moment a cohort begins to grow, because its speeds have a kink there; what that does
/// to a loose one is within its tolerance.
Leg StageRun::cut_at_growth(Leg leg) const {
  const double wanted = making_.until_growth();
  if (options_.tolerance > loose || !leg.is_coupled() || leg.end().equivalent_h <= wanted * (1 + 1e-13)) return leg;
  Leg cut = leg.until(crossing(0, leg.hours(), Closeness{}.within_h,
                               [&](double after_h) { return leg.at(after_h).equivalent_h - wanted; }));
  for (int polish = 0; polish < 3; ++polish) {
    const Point end = cut.end();
    const double miss = end.equivalent_h - wanted;
    const double pace = speed_.solutes() * speed_.factor(end.temperature_c);
    if (std::abs(miss) <= 1e-14 * wanted || !(pace > 0)) break;  // a clock that stands still is there already
    cut = cut.until(cut.hours() - miss / pace);
  }
  return cut;
}

/// Nor the moment at which water begins or ends to condense on it, or condenses with full force.
Leg StageRun::cut_at_condensing(Leg leg) const {
  constexpr double same_k = 1e-7;
  if (options_.tolerance > loose || !(setting_.node.condensing_w_per_k > 0)) return leg;
  double earliest_h = leg.hours();
  for (const double colder_k : {0.0, condensing_fully_k}) {
    const auto miss = [&](double after_h) {
      return air_at(leg.start_h() + after_h) - colder_k - leg.at(after_h).temperature_c;
    };
    const double first = miss(0), last = miss(leg.hours());
    if (std::abs(first) < same_k || std::abs(last) < same_k || (first < 0) == (last < 0)) continue;
    earliest_h = std::min(earliest_h, crossing(0, leg.hours(), Closeness{}.within_h, miss));
  }
  return earliest_h < leg.hours() ? leg.until(earliest_h) : leg;
}

/// The leg up to the moment the volume passes `ratio`, which it does between two moments of it.
Leg StageRun::cut_at_ratio(const Leg& leg, double before_h, double by_h, double ratio) const {
  const Closeness close = closeness(options_.tolerance);
  Leg cut = leg.until(
      crossing(before_h, by_h, close.within_h, [&](double after_h) { return at(leg, after_h).ratio - ratio; }));
  if (!leg.is_coupled()) return cut;
  constexpr double beside = 1e-4;
  for (int polish = 0; polish < 4; ++polish) {
    const double last = at(cut, cut.hours()).ratio, miss = last - ratio;
    const double slope = (last - at(cut, cut.hours() * (1 - beside)).ratio) / (cut.hours() * beside);
    if (std::abs(miss) <= close.ratio_share * ratio || !(slope > 0)) break;
    cut = cut.until(cut.hours() - miss / slope);
  }
  return cut;
}

/// The same hours, or up to about the moment a cohort begins to grow: a kink that is close to a leg's end does little.
double StageRun::up_to_growth(double hours) const {
  constexpr double too_short = 0.1;
  const double growth_h = making_.until_growth() / (speed_.solutes() * speed_.factor(shell().temperature_c));
  return growth_h < hours && growth_h > too_short * hours ? growth_h : hours;
}

/// The next leg, at most to an hour: as long as its speeds can be foreseen.
Leg StageRun::next_leg(double to_h) {
  const double most_h = to_h - state_.time_h;
  double hours = std::min(setting_.place->is_dough ? 1.0 : step_h_,
                          most_h);  // exact legs could be longer, but events must be seen
  if (options_.tolerance > loose) hours = up_to_growth(hours);
  for (;;) {
    Leg leg(setting_, state_.time_h, shell().temperature_c, hours);
    if (!leg.is_coupled()) return leg;
    constexpr double least_share =
        1e-4;  // of the tolerance: an error below it is rounding, and a step grows to its most
    const double change = 0.9 * std::pow(1 / std::max(leg.error() / options_.tolerance, least_share),
                                         1.0 / static_cast<double>(abscissae));
    if (leg.error() <= options_.tolerance || hours <= shortest_step_h) {
      const bool was_limited = hours < step_h_;
      const double next = std::min(hours * std::min(change, options_.tolerance > loose ? 2.0 : 3.0), longest_step_h);
      step_h_ = was_limited ? std::max(step_h_, next) : next;
      return cut_at_condensing(cut_at_growth(std::move(leg)));
    }
    hours = std::max(hours * std::max(change, 0.2), shortest_step_h);
    step_h_ = hours;
  }
}

void StageRun::refuse_outside(const Leg& leg, double before_h, const Point& by) const {
  const double t = by.temperature_c;
  const bool cold = t < field::dough_c.low;
  if (!cold && t <= field::dough_c.high) return;
  const double limit = cold ? field::dough_c.low : field::dough_c.high;
  const double when_h = state_.time_h + crossing(before_h, by.after_h, Closeness{}.within_h,
                                                 [&](double h) { return leg.at(h).temperature_c - limit; });
  throw OutsideModel("the dough leaves " + number(field::dough_c.low) + " to " + number(field::dough_c.high) + " °C " +
                         number(when_h - state_.stage->start_h, 4) + " h after the stage's start (at " +
                         number(when_h, 4) + " h): it gets too " +
                         (cold ? "cold and would freeze" : "warm for the yeast to live"),
                     {.path = "surroundings",
                      .value = t,
                      .low = field::dough_c.low,
                      .high = field::dough_c.high,
                      .advice = "change its surroundings before"});
}

double StageRun::settled_k(double mean_c, double time_h) const {
  if (setting_.place->is_dough) return 0;
  return setting_.node.inside_k_per_w * heat_loss_w(setting_.node, mean_c, air_at(time_h));
}

Settling StageRun::inside(const Leg& leg, const Quarters& quarters) const {
  std::array<double, Settling::quarters> towards{settled_k(shell().temperature_c, leg.start_h())};
  for (std::size_t i = 0; i < quarters.size(); ++i) {
    towards[i + 1] = settled_k(quarters[i].temperature_c, leg.start_h() + quarters[i].after_h);
  }
  return {state_.inside_k, setting_.node.settling_h, leg.hours(), towards};
}

/// Takes the state to the end of the leg.
void StageRun::accept(const Leg& leg, const Quarters& quarters) {
  const Point& end = quarters.back();
  if (follows_core_) state_.inside_k = setting_.place->is_dough ? 0 : inside(leg, quarters).at(leg.hours());
  const double passed = end.equivalent_h;
  if (state_.amounts.perishable_g > 0) {
    state_.perishable_h +=
        leg.hours() * share_between(shell().temperature_c, end.temperature_c, perishable_low_c, perishable_high_c);
  }
  StageProgress& progress = *state_.stage;
  if (!setting_.place->is_dough) {
    progress.heat_made_j +=
        setting_.warming_k_per_mmol * setting_.node.capacity_j_k * (end.made_mmol - shell().made_mmol);
    progress.heat_lost_j += leg.heat_lost_j();
  }
  for (Cohort& cohort : state_.cohorts) {
    cohort.equivalent_h += passed;
    cohort.growing_h += passed;
    const double lag = cohort.past_lag ? 0 : kitchen_.growth_lag_h;
    if (std::abs(cohort.growing_h - lag) <= 1e-12 * lag) cohort.growing_h = lag;
  }
  Shell& now = only_shell(state_);
  now.gas.co2_mmol += end.made_mmol - now.made_mmol;
  now.made_mmol = end.made_mmol;
  now.equivalent_h += passed;
  now.temperature_c = end.temperature_c;
  state_.time_h += leg.hours();
  making_.go_on(passed, now.made_mmol);
}

void StageRun::press(State& state, double kept) const {
  Shell& its = only_shell(state);
  const Gas held = volume_.held(its.gas, its.temperature_c, state.anchor_ratio);
  its.gas = volume_.pressed(held, its.temperature_c, kept);
  state.anchor_ratio = volume_.free_ratio(its.gas, its.temperature_c);
}

std::size_t StageRun::watch(double rise_percent) {
  Watch watch{ratio_of(rise_percent), std::nullopt};
  if (ratio_now() >= watch.ratio) watch.when_h = state_.time_h;
  watches_.push_back(watch);
  return watches_.size() - 1;
}

void StageRun::watch_acceptable() {
  if (!acceptable_ || state_.cohorts.empty()) return;
  lowest_ = watch(acceptable_->first);
  watch(acceptable_->second);
}

std::optional<double> StageRun::too_late_h() const {
  const std::optional<double> highest = highest_h(), over = over_proofed_h();
  return highest && over ? std::min(*highest, *over) : highest ? highest : over;
}

bool StageRun::all_watched() const {
  return std::all_of(watches_.begin(), watches_.end(), [](const Watch& w) { return w.when_h.has_value(); });
}

bool StageRun::go(Until until, double horizon_h, const EachLeg& each_leg) {
  StageProgress& progress = *state_.stage;
  const bool to_end = until == Until::end;
  const double end_h = to_end && stage_.until_h  ? progress.start_h + *stage_.until_h
                       : to_end && stage_.ends_h ? *stage_.ends_h
                                                 : horizon_h;
  const double stop_h = to_end ? options_.stop_h.value_or(never) : never;
  const double target = to_end && stage_.until_rise_percent ? ratio_of(*stage_.until_rise_percent) : never;
  const double over = progress.over_proofed_h ? never : over_proof_ratio_;
  double largest = ratio_now(), largest_h = state_.time_h;
  bool over_seen = largest >= over;
  const double within_h = closeness(options_.tolerance).within_h;
  if (over_seen) progress.over_proofed_h = state_.time_h;
  for (;;) {
    const bool folds_left = to_end && progress.folds_done < stage_.folds_h.size();
    const double fold_h = folds_left ? progress.start_h + stage_.folds_h[progress.folds_done] : never;
    if (fold_h <= state_.time_h + same_moment_h) {
      press(state_, kitchen_.kept_by_fold);
      ++progress.folds_done;
      continue;
    }
    if (state_.time_h >= end_h - same_moment_h) break;
    if (state_.time_h >= stop_h - same_moment_h) return false;
    if (!to_end && is_over(until)) return true;
    if (options_.interrupt) options_.interrupt();
    if (&place_at(stage_.surroundings, state_.time_h + same_moment_h) != setting_.place) enter_place();
    Leg leg = next_leg(std::min({end_h, stop_h, fold_h, next_break_h()}));
    const Quarters points = leg.quarters();
    const Four quarter_ratios = ratios(points);
    double before_h = 0;
    for (std::size_t quarter = 0; quarter < points.size(); ++quarter) {
      const double by_h = points[quarter].after_h, ratio = quarter_ratios[quarter];
      refuse_outside(leg, before_h, points[quarter]);
      if (!over_seen && ratio >= over) {
        over_seen = true;
        progress.over_proofed_h =
            state_.time_h + crossing(before_h, by_h, within_h, [&](double h) { return at(leg, h).ratio - over; });
      }
      for (Watch& watch : watches_) {
        if (watch.when_h || ratio < watch.ratio) continue;
        watch.when_h = state_.time_h +
                       crossing(before_h, by_h, within_h, [&](double h) { return at(leg, h).ratio - watch.ratio; });
      }
      if (ratio >= target) {
        leg = cut_at_ratio(leg, before_h, by_h, target);
        if (each_leg) each_leg(*this, leg);
        accept(leg, leg.quarters());
        return true;
      }
      if (ratio > largest) {
        largest = ratio;
        largest_h = state_.time_h + by_h;
      }
      before_h = by_h;
    }
    if (each_leg) each_leg(*this, leg);
    accept(leg, points);
  }
  if (target < never) refuse_rise(largest, largest_h);
  return to_end;
}

void StageRun::refuse_rise(double largest_ratio, double largest_h) const {
  const double wanted = *stage_.until_rise_percent;
  const double reached = rise_percent(largest_ratio), after_h = largest_h - state_.stage->start_h;
  throw NoSolution("a rise of " + number(wanted) + " % is never reached: the dough rises by " + number(reached, 4) +
                       " % at the most, after " + number(after_h, 4) + " h" +
                       (after_h >= 0.999 * longest_stage_h ? ", the longest time that is followed" : ""),
                   {.path = "until_rise_percent",
                    .value = wanted,
                    .low = 0.0,
                    .high = reached,
                    .advice = "ask for a smaller rise, or warm the dough"});
}

bool StageRun::run(const EachLeg& each_leg) {
  if (stage_.until_rise_percent && state_.cohorts.empty()) {
    throw InvalidInput("the stage ends by a rise, but no yeast is in the dough",
                       {.path = "until_rise_percent", .advice = "mix yeast in before it, or end it by a time"});
  }
  return go(Until::end, state_.stage->start_h + longest_stage_h, each_leg);
}

void StageRun::look_ahead(double hours) { go_beyond(Until::over_proofed, hours); }

void StageRun::look_for_watched(double hours) { go_beyond(Until::watched, hours); }

void StageRun::go_beyond(Until until, double hours) {
  if (is_over(until) || state_.cohorts.empty()) return;
  try {
    go(until, state_.time_h + hours, {});
  } catch (const OutsideModel&) {  // it freezes, or its yeast dies, before that
  }
}

State StageRun::finished(State end) const {
  for (const Handling handling : stage_.handling) press(end, kept_by(handling, kitchen_));
  if (!stage_.handling.empty()) end.inside_k = 0;
  end.stage.reset();
  ++end.steps_done;
  return end;
}

}  // namespace ferment
