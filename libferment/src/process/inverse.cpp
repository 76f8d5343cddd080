#include <ferment/process/inverse.hpp>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <utility>

#include <boost/math/tools/toms748_solve.hpp>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"
#include "dough/yeast_formula.hpp"
#include "process/draws.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr std::size_t scan_points = 33;
constexpr double settled_h = 1e-8;

/// A choice as the solver sees it: a number x between two, and the process that it makes.
struct Asked {
  std::string what, label, unit;
  double low, high;
  std::function<Process(double)> with;
  std::function<double(double)> shown = [](double x) { return x; };  ///< x as the user sees it

  /// A point of the scan.
  double at(std::size_t i) const { return i + 1 == scan_points ? high : low + (high - low) * static_cast<double>(i) / (scan_points - 1); }
};

/// When a stage is ready, as a function of the choice.
class Ready {
 public:
  Ready(const Process& process, const Wanted& wanted, const Kitchen& kitchen, const std::optional<State>& state, const ForecastOptions& options)
      : state_(state), kitchen_(kitchen), options_(options), draws_(drawn(kitchen, options.draws, options.batch_sd, options.seed)) {
    const std::size_t first = beginning(process, state).steps_done;
    std::string known;
    for (std::size_t place = first; place < process.steps.size(); ++place) {
      const auto* stage = std::get_if<Stage>(&process.steps[place]);
      if (stage == nullptr) continue;
      known.append(known.empty() ? "" : ", ").append(stage->name);
      if (stage->name == wanted.stage && !found_) {
        found_ = true;
        place_ = place;
      }
    }
    if (!found_) {
      throw InvalidInput("no stage to come is named \"" + wanted.stage + "\"; known: " + known + " [stage]", {.field = "stage"});
    }
    require(field::start_h, wanted.ready_h);
    simulation_ = {.heat_of_fermentation = options.heat_of_fermentation, .every_min = 0, .be_back_by = false, .tolerance = options.tolerance};
  }
  std::size_t place() const { return place_; }

  /// With the kitchen's central values.
  double central(const Process& process) const { return of(process, kitchen_); }
  /// The median of the draws: what a forecast says.
  double median(const Process& process) const {
    std::vector<double> ready(draws_.size());
    for_each_draw(options_, ready.size(), [&](std::size_t i) { ready[i] = of(process, draws_[i].kitchen); });
    std::sort(ready.begin(), ready.end());
    return quantile(ready, 0.5);
  }

 private:
  double of(const Process& process, const Kitchen& kitchen) const {
    return run_draw(process, beginning(process, state_), kitchen, simulation_, false, place_).back().ready_h;
  }

  const std::optional<State>& state_;
  const Kitchen& kitchen_;
  const ForecastOptions& options_;
  std::vector<Draw> draws_;
  SimulateOptions simulation_;
  std::size_t place_ = 0;
  bool found_ = false;
};

/// Where `late` changes its sign between two points; late is infinite where the stage is never ready. Nothing if it jumps there.
template <class Late>
std::optional<double> root(Late late, double low, double high, double at_low, double at_high) {
  if (at_low == 0) return low;
  if (at_high == 0) return high;
  // An infinite end says only on which side the root is: halve the interval until both ends are finite.
  while ((at_low == never || at_high == never) && high - low > 1e-12 * (std::abs(low) + std::abs(high))) {
    const double middle = (low + high) / 2, there = late(middle);
    ((there < 0) == (at_low < 0) ? low : high) = middle;
    ((there < 0) == (at_low < 0) ? at_low : at_high) = there;
  }
  if (at_low == never || at_high == never) return std::nullopt;
  std::uintmax_t evaluations = 60;
  double best = low, best_late = never;
  const auto watched = [&](double x) {
    const double by = late(x);
    if (std::abs(by) < best_late) {
      best = x;
      best_late = std::abs(by);
    }
    return std::abs(by) < settled_h ? 0.0 : by;
  };
  const auto close = [](double a, double b) { return std::abs(a - b) <= 4e-16 * (std::abs(a) + std::abs(b)); };
  boost::math::tools::toms748_solve(watched, low, high, at_low, at_high, close, evaluations);
  return best_late < 1e-6 ? std::optional(best) : std::nullopt;
}

/// Choices at which the median is on time, near those at which the central values are.
std::vector<double> choices(const Asked& asked, const Ready& ready, double wanted_h) {
  const auto central = [&](double x) { return ready.central(asked.with(x)) - wanted_h; };
  const auto median = [&](double x) { return ready.median(asked.with(x)) - wanted_h; };
  std::vector<double> x(scan_points), late(scan_points);
  for (std::size_t i = 0; i < scan_points; ++i) {
    x[i] = asked.at(i);
    late[i] = central(x[i]);
  }
  std::vector<double> found;
  const auto add = [&](double low, double high) {
    const double at_low = median(low), at_high = median(high);
    if ((at_low < 0) == (at_high < 0) && at_low != 0 && at_high != 0) return false;
    const std::optional<double> at = root(median, low, high, at_low, at_high);
    if (at && (found.empty() || std::abs(*at - found.back()) > 1e-9 * (1 + std::abs(*at)))) found.push_back(*at);
    return at.has_value();
  };
  for (std::size_t i = 0; i + 1 < scan_points; ++i) {
    if ((late[i] < 0) == (late[i + 1] < 0) && late[i] != 0) continue;
    // The median's root is near the central one; at worst it has moved to a neighbouring interval.
    if (!add(x[i], x[i + 1])) add(x[i > 0 ? i - 1 : 0], x[std::min(i + 2, scan_points - 1)]);
  }
  if (found.empty()) add(asked.low, asked.high);
  std::sort(found.begin(), found.end());
  return found;
}

std::string with_unit(const Asked& asked, double x, int digits) {
  return number(asked.shown(x), digits) + (asked.unit.empty() ? "" : " " + asked.unit);
}

/// No choice is on time: says which hours can be had, and with what.
[[noreturn]] void refuse(const Asked& asked, const Ready& ready, const Wanted& wanted) {
  double earliest = never, latest = -never, earliest_x = asked.low, latest_x = asked.low;
  for (std::size_t i = 0; i < scan_points; ++i) {
    const double x = asked.at(i);
    const double hours = ready.central(asked.with(x));
    if (hours < earliest) {
      earliest = hours;
      earliest_x = x;
    }
    if (hours < never && hours > latest) {
      latest = hours;
      latest_x = x;
    }
  }
  const std::string begin = "no " + asked.label + " makes stage \"" + wanted.stage + "\" ready at " + number(wanted.ready_h) + " h: ";
  if (!(earliest < never)) {
    throw NoSolution(begin + "from " + with_unit(asked, asked.low, 4) + " to " + with_unit(asked, asked.high, 4) +
                         " it is never ready; change something else [ready_h]",
                     {.field = "ready_h", .value = wanted.ready_h});
  }
  earliest = ready.median(asked.with(earliest_x));
  latest = ready.median(asked.with(latest_x));
  const bool sooner = std::abs(wanted.ready_h - earliest) < std::abs(wanted.ready_h - latest);
  throw NoSolution(begin + "from " + with_unit(asked, asked.low, 4) + " to " + with_unit(asked, asked.high, 4) + " it is ready between " +
                       number(earliest, 5) + " and " + number(latest, 5) + " h; nearest is " + with_unit(asked, sooner ? earliest_x : latest_x, 4) +
                       ", ready at " + number(sooner ? earliest : latest, 5) + " h [ready_h]",
                   {.field = "ready_h", .value = wanted.ready_h, .low = earliest, .high = latest});
}

Choice answered(const Asked& asked, const Ready& ready, const Wanted& wanted, bool latest, double scale, const Kitchen& kitchen,
                const std::optional<State>& state) {
  const std::vector<double> found = choices(asked, ready, wanted.ready_h);
  if (found.empty()) refuse(asked, ready, wanted);
  const double x = latest ? found.back() : found.front();
  Choice choice;
  choice.what = asked.what;
  for (const double each : found) choice.all.push_back(asked.shown(each));
  choice.value = asked.shown(x);
  choice.ready_h = ready.median(asked.with(x));
  choice.rounded = choice.value;
  choice.process = asked.with(x);
  choice.rounded_ready_h = choice.ready_h;
  if (scale > 0) {
    choice.rounded = std::max(std::round(choice.value / scale), 1.0) * scale;
    const double nearby = x + std::log(choice.rounded / choice.value);  // yeast alone is rounded, and its x is a logarithm
    choice.process = asked.with(nearby);
    choice.rounded_ready_h = ready.median(choice.process);
  }
  try {
    choice.notices = simulate(choice.process, kitchen, state, {.every_min = 0, .be_back_by = false}).notices;
  } catch (const NoSolution&) {  // a later stage than the wanted one is never ready
  }
  if (found.size() > 1) {
    std::string others;
    for (const double each : choice.all) others.append(others.empty() ? "" : ", ").append(number(each, 4));
    choice.notices.push_back(
        {"several_choices", Severity::info, {}, std::to_string(found.size()) + " choices are ready at that hour: " + others + " " + asked.unit});
  }
  return choice;
}

/// The mixes to come before a stage.
template <class Each>
void for_mixes(Process& process, std::size_t from, std::size_t to, Each each) {
  for (std::size_t place = from; place < to; ++place) {
    if (auto* mix = std::get_if<Mix>(&process.steps[place])) each(*mix);
  }
}

double yeast_g(const Formula& f) { return f.instant_g + f.active_dry_g + f.compressed_g; }

double as_instant_g(const Formula& f) {
  using formula::compressed_ratio;
  const double compressed = f.instant_g / compressed_ratio(Yeast::instant) + f.active_dry_g / compressed_ratio(Yeast::active_dry) + f.compressed_g;
  return compressed * compressed_ratio(Yeast::instant);
}

}  // namespace

Choice yeast_for(const Process& process, const Wanted& wanted, double scale_g, const Kitchen& kitchen, const std::optional<State>& state,
                 const ForecastOptions& options) {
  require({"scale_g", "scale", "g", 0, 100, 0, Quantity::mass, {}, {}, "0.1 or 1; 0 does not round"}, scale_g);
  const Ready ready(process, wanted, kitchen, state, options);
  const State start = beginning(process, state);
  double grams = 0, instant_g = 0, flour_g = start.amounts.flour_g;
  Process counted = process;
  for_mixes(counted, start.steps_done, ready.place(), [&](const Mix& mix) {
    grams += yeast_g(mix.formula);
    instant_g += as_instant_g(mix.formula);
    flour_g += amounts_of(mix.formula).flour_g;
    for (const State& dough : mix.doughs) flour_g += dough.amounts.flour_g;
  });
  if (!(grams > 0)) {
    throw InvalidInput("no yeast is to come before stage \"" + wanted.stage + "\"; put some into a mix, its dose is what is asked for [steps]",
                       {.field = "steps"});
  }
  const double percent = 100 * instant_g / flour_g;
  const auto with = [&](double log_factor) {
    Process changed = process;
    for_mixes(changed, start.steps_done, ready.place(), [&](Mix& mix) {
      for (double Formula::*kind : {&Formula::instant_g, &Formula::active_dry_g, &Formula::compressed_g}) mix.formula.*kind *= std::exp(log_factor);
    });
    return changed;
  };
  const Asked asked{"yeast_g",
                    "dose of yeast",
                    "g",
                    std::log(field::instant_equivalent_percent.low / percent),
                    std::log(field::instant_equivalent_percent.high / percent),
                    with,
                    [grams](double x) { return grams * std::exp(x); }};
  return answered(asked, ready, wanted, false, scale_g, kitchen, state);
}

Choice water_for(const Process& process, const Wanted& wanted, const Kitchen& kitchen, const std::optional<State>& state,
                 const ForecastOptions& options) {
  const Ready ready(process, wanted, kitchen, state, options);
  const std::size_t first = beginning(process, state).steps_done;
  const Mix* next = nullptr;
  std::size_t where = 0;
  for (std::size_t place = first; place < ready.place() && next == nullptr; ++place) {
    const auto* mix = std::get_if<Mix>(&process.steps[place]);
    if (mix == nullptr || !(mix->formula.water_g > 0) || mix->dough_c) continue;
    next = mix;
    where = place;
  }
  if (next == nullptr) {
    throw InvalidInput("no mix to come before stage \"" + wanted.stage +
                           "\" has main water whose temperature counts; give water_g and no dough_c [water_g]",
                       {.field = "water_g"});
  }
  const auto with = [&](double water_c) {
    Process changed = process;
    std::get<Mix>(changed.steps[where]).water_c = water_c;
    return changed;
  };
  return answered({"water_c", "water temperature", "°C", field::water_c.low, field::water_c.high, with}, ready, wanted, false, 0, kitchen, state);
}

Choice air_for(const Process& process, const Wanted& wanted, Air air, const Kitchen& kitchen, const std::optional<State>& state,
               const ForecastOptions& options) {
  row_of(air);
  const Ready ready(process, wanted, kitchen, state, options);
  const std::size_t first = beginning(process, state).steps_done;
  const auto is_meant = [air](const Place& place) {
    return place.air == air && !place.is_dough && std::holds_alternative<double>(place.temperature_c);
  };
  const auto each_place = [&](Process& changed, const std::function<void(Place&)>& each) {
    for (std::size_t at = first; at <= ready.place(); ++at) {
      auto* stage = std::get_if<Stage>(&changed.steps[at]);
      if (stage == nullptr) continue;
      for (Place& place : stage->surroundings.places) {
        if (is_meant(place)) each(place);
      }
    }
  };
  int count = 0;
  Process counted = process;
  each_place(counted, [&](Place&) { ++count; });
  const std::string name(name_of(air));
  if (count == 0) {
    throw InvalidInput("no stage up to \"" + wanted.stage + "\" is in a " + name + " of one temperature; that temperature is what is asked for [air]",
                       {.field = "air"});
  }
  const auto with = [&](double air_c) {
    Process changed = process;
    each_place(changed, [air_c](Place& place) { place.temperature_c = air_c; });
    return changed;
  };
  const bool cold = air == Air::refrigerator || air == Air::fan_refrigerator;
  return answered({"air_c", name + " temperature", "°C", cold ? -2.0 : 0.0, cold ? 20.0 : 45.0, with}, ready, wanted, false, 0, kitchen, state);
}

Choice latest_start(const Process& process, const Wanted& wanted, const Kitchen& kitchen, const ForecastOptions& options) {
  const std::optional<State> from_the_start;
  const Ready ready(process, wanted, kitchen, from_the_start, options);
  const auto with = [&](double start_h) {
    Process changed = process;
    changed.start_h = start_h;
    return changed;
  };
  constexpr double longest_h = 240;
  return answered({"start_h", "start", "h", wanted.ready_h - longest_h, wanted.ready_h, with}, ready, wanted, true, 0, kitchen, from_the_start);
}

Choice moment_to_move(const Process& process, const Wanted& wanted, const std::string& moved, const Surroundings& to, const Kitchen& kitchen,
                      const std::optional<State>& state, const ForecastOptions& options) {
  check_surroundings(to);
  const Ready ready(process, wanted, kitchen, state, options);
  const State start = beginning(process, state);
  std::size_t where = process.steps.size();
  for (std::size_t place = start.steps_done; place <= ready.place() && where == process.steps.size(); ++place) {
    const auto* stage = std::get_if<Stage>(&process.steps[place]);
    if (stage != nullptr && stage->name == moved) where = place;
  }
  if (where == process.steps.size()) {
    throw InvalidInput("no stage to come up to \"" + wanted.stage + "\" is named \"" + moved + "\"; name the one whose dough is moved [moved]",
                       {.field = "moved"});
  }
  const auto with = [&](double move_h) {
    Process changed = process;
    Surroundings& own = std::get<Stage>(changed.steps[where]).surroundings;
    std::erase_if(own.places, [move_h](const Place& place) { return place.from_h >= move_h; });
    for (Place place : to.places) {
      place.from_h = std::max(place.from_h, move_h);
      own.places.push_back(std::move(place));
    }
    return changed;
  };
  return answered({"move_h", "moment to move the dough", "h", start.time_h, wanted.ready_h, with}, ready, wanted, true, 0, kitchen, state);
}

}  // namespace ferment
