#include "forecast/sighting.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <utility>

#include <ferment/base/error.hpp>

#include "base/text.hpp"
#include "process/run.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();

const Stage* stage_at(const Process& process, std::size_t step) { return std::get_if<Stage>(&process.steps[step]); }

std::size_t step_named(const Process& process, const std::string& name) {
  std::string known;
  for (std::size_t step = 0; step < process.steps.size(); ++step) {
    const Stage* const stage = stage_at(process, step);
    if (stage == nullptr) continue;
    if (stage->name == name) return step;
    known += (known.empty() ? "" : ", ") + stage->name;
  }
  throw InvalidInput("no stage is named \"" + name + "\"", {.path = "stage", .advice = "known: " + known});
}

}  // namespace

/// Follows the looks' rises along a run.
class Watching {
 public:
  static constexpr bool needs_core = false;
  Watching(const Looks& looks, std::vector<double>& expected) : looks_(looks), expected_(expected) {}

  void mixed(const Mix& /*mix*/, const State& /*state*/) {}
  void begun(StageRun& run) {
    step_ = run.state().steps_done;
    watches_.clear();
    for (std::size_t i = 0; i < looks_.size(); ++i) {
      const Looks::Place& its = looks_.places_[i];
      if (its.step == step_ && its.kind == Looks::Kind::rise) watches_.emplace_back(i, run.watch(its.rise_percent));
    }
  }
  void ended(StageRun& run, bool /*is_ended*/) {
    const double start_h = run.state().stage->start_h;
    run.look_for_watched();  // untouched, the rise would have come later
    for (const auto& [look, watch] : watches_) {
      if (const auto& when = run.watched(watch)) expected_[look] = std::log(std::max(*when - start_h, shortest_h));
    }
  }

 protected:
  const Looks& looks_;
  std::vector<double>& expected_;
  std::size_t step_ = 0;

 private:
  static constexpr double shortest_h = 1e-6;
  std::vector<std::pair<std::size_t, std::size_t>> watches_ = {};
};

/// The same, and the dough at moments.
class WatchingMoments : public Watching {
 public:
  using Watching::Watching;
  void passed(const StageRun& run, const Leg& leg) {
    constexpr double same_moment_h = 1e-6;
    for (std::size_t i = 0; i < looks_.size(); ++i) {
      const Looks::Place& its = looks_.places_[i];
      const double after_h = its.time_h - leg.start_h();
      if (its.step != step_ || its.kind == Looks::Kind::rise || after_h < 0 || after_h > leg.hours() + same_moment_h)
        continue;
      const Moment moment = run.at(leg, std::min(after_h, leg.hours()));
      expected_[i] = its.kind == Looks::Kind::height ? run.rise_percent(moment.ratio) : moment.mean_c;
    }
  }
};

namespace {

/// When each stage begins and ends, by step.
struct Hours {
  static constexpr bool needs_core = false;
  std::vector<std::pair<double, double>> of_step;
  double last_begin_c = 0;
  void mixed(const Mix& /*mix*/, const State& /*state*/) {}
  void begun(const StageRun& run) {
    of_step[run.state().steps_done].first = run.state().stage->start_h;
    last_begin_c = run.shell().temperature_c;
  }
  void ended(const StageRun& run, bool /*is_ended*/) { of_step[run.state().steps_done].second = run.state().time_h; }
};

bool is_of_a_rise(const Sighting& seen) {
  return seen.was == SeenAs::at || seen.was == SeenAs::not_yet || seen.was == SeenAs::past;
}

void require_no_contradiction(std::span<const Sighting> seen, std::size_t i, const std::string& path) {
  const Sighting& its = seen[i];
  if (!is_of_a_rise(its)) return;
  for (std::size_t k = 0; k < i; ++k) {
    const Sighting& other = seen[k];
    if (other.stage != its.stage || !is_of_a_rise(other)) continue;
    const Sighting &low = *other.rise_percent <= *its.rise_percent ? other : its,
                   &high = *other.rise_percent <= *its.rise_percent ? its : other;
    // What is past at an hour was past at every later one, and every lower rise with it.
    const bool contradicts = low.was == SeenAs::not_yet && high.was != SeenAs::not_yet && low.time_h > high.time_h;
    if (!contradicts) continue;
    throw InvalidInput("at " + number(low.time_h, 4) + " h stage \"" + its.stage + "\" had not yet risen by " +
                           number(*low.rise_percent) + " %, and at " + number(high.time_h, 4) + " h it had by " +
                           number(*high.rise_percent) + " %",
                       {.path = path, .advice = "a rise does not fall; correct one of the two"});
  }
}

}  // namespace

Looks::Looks(const Process& process, std::span<const Sighting> seen) : process_(process) {
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const std::string path = "seen[" + std::to_string(i) + "]";
    try {
      require(seen[i]);
      place(seen[i]);
    } catch (const Error& error) {
      throw_within(path, error);
    }
    require_no_contradiction(seen, i, path);
    last_ = std::max(last_, places_.back().step);
  }
  if (seen.empty()) return;
  for (std::size_t step = 0; step < last_; ++step) {
    const Stage* const stage = stage_at(process, step);
    if (stage == nullptr || !stage->until_rise_percent) continue;
    throw InvalidInput("when stage \"" + stage->name + "\" ended is not known, and a later one was looked at",
                       {.path = "steps[" + std::to_string(step) + "].until_rise_percent",
                        .advice = "give the hour at which it really ended"});
  }
  follow_to_the_last_look(seen);
}

void Looks::place(const Sighting& seen) {
  const std::size_t step = step_named(process_, seen.stage);
  const Kind kind = seen.was == SeenAs::dough    ? Kind::temperature
                    : seen.was == SeenAs::height ? Kind::height
                                                 : Kind::rise;
  double rise_percent = seen.rise_percent.value_or(0);
  if (seen.was == SeenAs::over_proofed) {
    const Stage& stage = *stage_at(process_, step);
    const auto acceptable = acceptable_rise(stage, is_final_proof(stage, role_of(process_, step) == Role::last));
    if (!acceptable) {
      throw InvalidInput("what is over-proofed in stage \"" + stage.name + "\", which ends by a time, is not known",
                         {.path = "was", .advice = "give its rise as past, or acceptable_rise_percent to the stage"});
    }
    rise_percent = acceptable->second;
  }
  has_moments_ |= kind != Kind::rise;
  places_.push_back({step, kind, rise_percent, seen.time_h});
}

/// Looks count from when their stages began, which a run tells; the last stage needs no end of its own.
void Looks::follow_to_the_last_look(std::span<const Sighting> seen) {
  constexpr double within_h = 0.25;  // a look is written down a little after the end
  Stage& last = std::get<Stage>(process_.steps[last_]);
  const bool ends_by_rise = last.until_rise_percent.has_value();
  double latest_h = -never;
  for (std::size_t i = 0; i < seen.size(); ++i) {
    if (places_[i].step == last_) latest_h = std::max(latest_h, places_[i].time_h);
  }
  if (ends_by_rise) {
    last.until_rise_percent.reset();
    last.ends_h = latest_h;
  }
  Hours hours{.of_step = std::vector(process_.steps.size(), std::pair(0.0, 0.0))};
  State state = beginning(process_, std::nullopt);
  for (std::size_t step = 0; step <= last_; ++step) {
    try {
      run_step(state, process_.steps[step], role_of(process_, step), {}, {.every_min = 0, .be_back_by = false}, hours);
    } catch (const Error& error) {
      throw_from(error, process_.steps[step], step);
    }
  }
  dough_c_ = hours.last_begin_c;
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const std::string path = "seen[" + std::to_string(i) + "].time_h", of = "stage \"" + seen[i].stage + "\" ";
    const auto [begin_h, end_h] = hours.of_step[places_[i].step];
    const double first_h = seen[i].not_yet_h.value_or(seen[i].time_h);
    if (!(first_h > begin_h)) {
      throw InvalidInput(of + "begins at " + number(begin_h, 4) + " h, and was looked at at " + number(first_h, 4) +
                             " h",
                         {.path = path,
                          .value = first_h,
                          .low = begin_h,
                          .advice = "a look is later than the beginning of its stage"});
    }
    if (seen[i].time_h > end_h + within_h) {
      throw InvalidInput(of + "ended at " + number(end_h, 4) + " h, and was looked at at " + number(seen[i].time_h, 4) +
                             " h",
                         {.path = path,
                          .value = seen[i].time_h,
                          .high = end_h,
                          .advice = "correct the look, or when the stage really ended"});
    }
    places_[i].time_h = std::min(places_[i].time_h, end_h);
    was_.push_back(seen[i].was);
    add_look(seen[i], begin_h);
  }
  find_plain();
}

void Looks::add_look(const Sighting& seen, double begin_h) {
  const double log_time = std::log(seen.time_h - begin_h);
  switch (seen.was) {
    case SeenAs::height: looks_.push_back({SeenAs::at, *seen.rise_percent, -never, height_scale_percent}); break;
    case SeenAs::dough: looks_.push_back({SeenAs::at, *seen.dough_c, -never, dough_scale_k}); break;
    case SeenAs::over_proofed: looks_.push_back({SeenAs::past, log_time, -never, over_proofed_scale}); break;
    default: looks_.push_back({seen.was, log_time, seen.not_yet_h ? std::log(*seen.not_yet_h - begin_h) : -never, {}});
  }
}

namespace {

/// The dough of a mix as plain percentages, if it is one at all.
std::optional<Dough> plain_dough(const Process& process) {
  const auto* const mix = process.steps.empty() ? nullptr : std::get_if<Mix>(&process.steps[0]);
  if (mix == nullptr || !mix->dough_c || !mix->doughs.empty()) return std::nullopt;
  const Percent percent = percent_of(mix->formula);
  Dough dough{.dough_c = *mix->dough_c,
              .yeast_percent = 0,
              .salt_percent = percent.salt_percent,
              .water_percent = percent.water_percent,
              .sugar_percent = percent.sugar_percent,
              .gluten_percent = percent.gluten_percent,
              .altitude_m = process.altitude_m};
  int kinds = 0;
  for (const auto& [yeast, its] :
       {std::pair{Yeast::instant, percent.instant_percent}, std::pair{Yeast::active_dry, percent.active_dry_percent},
        std::pair{Yeast::compressed, percent.compressed_percent}}) {
    if (!(its > 0)) continue;
    ++kinds;
    dough.yeast = yeast;
    dough.yeast_percent = its;
  }
  return kinds == 1 ? std::optional(dough) : std::nullopt;
}

}  // namespace

void Looks::find_plain() {
  const Stage& stage = std::get<Stage>(process_.steps[last_]);
  const auto& places = stage.surroundings.places;
  const bool is_held = places.size() == 1 && places[0].is_dough && places[0].temperature_c;
  if (last_ != 1 || has_moments_ || !stage.folds_h.empty() || !is_held) return;
  std::optional<Dough> dough = plain_dough(process_);
  if (!dough || dough->dough_c != *places[0].temperature_c) return;
  constexpr double as_good_as_the_same = 1e-7;  // of ln time
  const std::vector<double> run = expected({}, {.every_min = 0, .be_back_by = false, .tolerance = 1e-9});
  for (std::size_t i = 0; i < size(); ++i) {
    try {
      const double closed = std::log(hours_to_rise(places_[i].rise_percent, *dough));
      if (!(std::abs(run[i] - closed) < as_good_as_the_same)) return;
    } catch (const Error&) {  // outside its table, or never reached: a run says all that is to be said
      return;
    }
  }
  plain_ = dough;
}

std::vector<double> Looks::expected(const Kitchen& kitchen, const SimulateOptions& options) const {
  std::vector<double> expected(size(), never);
  if (expected.empty()) return expected;
  State state = beginning(process_, std::nullopt);
  const auto follow = [&](auto watching) {
    for (std::size_t step = 0; step <= last_; ++step)
      run_step(state, process_.steps[step], role_of(process_, step), kitchen, options, watching);
  };
  try {
    if (has_moments_) {
      follow(WatchingMoments(*this, expected));
    } else {
      follow(Watching(*this, expected));
    }
  } catch (const OutsideModel&) {  // it freezes or dies
  }
  return expected;
}

double Looks::log_likelihood(const std::vector<double>& expected, const Noise& noise) const {
  double sum = 0;
  for (std::size_t i = 0; i < size(); ++i) sum += look_at(looks_[i], expected[i], noise).log_likelihood;
  return sum;
}

}  // namespace ferment
