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
    const std::size_t step = run.state().steps_done;
    watches_.clear();
    for (std::size_t i = 0; i < looks_.size(); ++i) {
      if (looks_.places_[i].step == step) watches_.emplace_back(i, run.watch(looks_.places_[i].rise_percent));
    }
  }
  void ended(StageRun& run, bool /*is_ended*/) {
    const double start_h = run.state().stage->start_h;
    run.look_for_watched();  // untouched, the rise would have come later
    for (const auto& [look, watch] : watches_) {
      if (const auto& when = run.watched(watch)) expected_[look] = std::log(std::max(*when - start_h, 1e-6));
    }
  }

 private:
  const Looks& looks_;
  std::vector<double>& expected_;
  std::vector<std::pair<std::size_t, std::size_t>> watches_ = {};
};

namespace {

/// When each stage begins, by step.
struct Begins {
  static constexpr bool needs_core = false;
  std::vector<double> hours;
  void mixed(const Mix& /*mix*/, const State& /*state*/) {}
  void begun(const StageRun& run) { hours[run.state().steps_done] = run.state().stage->start_h; }
  void ended(const StageRun& /*run*/, bool /*is_ended*/) {}
};

void require_no_contradiction(std::span<const Sighting> seen, std::size_t i, const std::string& path) {
  const Sighting& its = seen[i];
  for (std::size_t k = 0; k < i; ++k) {
    const Sighting& other = seen[k];
    if (other.stage != its.stage) continue;
    const Sighting &low = other.rise_percent <= its.rise_percent ? other : its,
                   &high = other.rise_percent <= its.rise_percent ? its : other;
    // What is past at an hour was past at every later one, and every lower rise with it.
    const bool contradicts = low.was == SeenAs::not_yet && high.was != SeenAs::not_yet && low.time_h > high.time_h;
    if (!contradicts) continue;
    throw InvalidInput("at " + number(low.time_h, 4) + " h stage \"" + its.stage + "\" had not yet risen by " +
                           number(low.rise_percent) + " %, and at " + number(high.time_h, 4) + " h it had by " +
                           number(high.rise_percent) + " %",
                       {.path = path, .advice = "a rise does not fall; correct one of the two"});
  }
}

}  // namespace

Looks::Looks(const Process& process, std::span<const Sighting> seen) : process_(process) {
  const State start = beginning(process, std::nullopt);
  std::size_t last = 0;
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const std::string path = "seen[" + std::to_string(i) + "]";
    try {
      require(seen[i]);
      places_.push_back({step_named(process, seen[i].stage), seen[i].rise_percent});
    } catch (const Error& error) {
      throw_within(path, error);
    }
    require_no_contradiction(seen, i, path);
    last = std::max(last, places_.back().step);
  }
  for (std::size_t step = 0; step < last; ++step) {
    const Stage* const stage = stage_at(process, step);
    if (stage == nullptr || !stage->until_rise_percent) continue;
    throw InvalidInput("when stage \"" + stage->name + "\" ended is not known, and a later one was looked at",
                       {.path = "steps[" + std::to_string(step) + "].until_rise_percent",
                        .advice = "give the hour at which it really ended"});
  }
  if (seen.empty()) return;
  Begins begins{.hours = std::vector<double>(process.steps.size(), 0.0)};
  State state = start;
  for (std::size_t step = 0; step <= last; ++step) {
    try {
      if (step == last) {  // only its beginning is asked for
        SimulateOptions stop{.every_min = 0, .stop_h = state.time_h};
        run_step(state, process.steps[step], Role::one_of_many, {}, stop, begins);
        break;
      }
      run_step(state, process.steps[step], Role::one_of_many, {}, {.every_min = 0}, begins);
    } catch (const Error& error) {
      throw_from(error, process.steps[step], step);
    }
  }
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const double begin_h = begins.hours[places_[i].step];
    const double first_h = seen[i].not_yet_h.value_or(seen[i].time_h);
    if (!(first_h > begin_h)) {
      throw InvalidInput("stage \"" + seen[i].stage + "\" begins at " + number(begin_h, 4) +
                             " h, and was looked at at " + number(first_h, 4) + " h",
                         {.path = "seen[" + std::to_string(i) + "].time_h",
                          .value = first_h,
                          .low = begin_h,
                          .advice = "a look is later than the beginning of its stage"});
    }
    looks_.push_back({seen[i].was, std::log(seen[i].time_h - begin_h),
                      seen[i].not_yet_h ? std::log(*seen[i].not_yet_h - begin_h) : -never});
  }
}

std::vector<double> Looks::expected(const Kitchen& kitchen, const SimulateOptions& options) const {
  std::vector<double> hours(size(), never);
  if (hours.empty()) return hours;
  std::size_t last = 0;
  for (const Place& place : places_) last = std::max(last, place.step);
  Watching watching(*this, hours);
  State state = beginning(process_, std::nullopt);
  try {
    for (std::size_t step = 0; step <= last; ++step)
      run_step(state, process_.steps[step], role_of(process_, step), kitchen, options, watching);
  } catch (const NoSolution&) {
  } catch (const OutsideModel&) {
  }
  return hours;
}

}  // namespace ferment
