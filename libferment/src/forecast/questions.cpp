#include <ferment/forecast/questions.hpp>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>
#include <utility>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"
#include "dough/yeast_formula.hpp"
#include "forecast/curve_search.hpp"
#include "forecast/draws.hpp"
#include "forecast/weights.hpp"
#include "process/run.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr std::size_t few_draws = 64;  // tell where the median turns

/// A choice as the solver sees it: a number x between two, and the process that it makes.
struct Asked {
  std::string what, label, unit;
  double low, high;
  std::function<void(Process&, double)> choose;
  std::optional<double> present = {};                                ///< x of the process as it is
  std::function<double(double)> shown = [](double x) { return x; };  ///< x as the user sees it
};

std::vector<std::size_t> every_one(std::size_t count) {
  std::vector<std::size_t> all(count);
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

/// When a stage is ready, as a function of the choice.
class Ready {
 public:
  Ready(const Process& process, const Wanted& wanted, const Kitchen& kitchen, const std::optional<State>& state,
        const ForecastOptions& options)
      : state_(state), options_(options), draws_(weighted_draws(process, kitchen, state, options)) {
    const std::size_t first = beginning(process, state).steps_done;
    std::string known;
    for (std::size_t step = first; step < process.steps.size(); ++step) {
      const auto* stage = std::get_if<Stage>(&process.steps[step]);
      if (stage == nullptr) continue;
      known.append(known.empty() ? "" : ", ").append(stage->name);
      if (stage->name == wanted.stage && !found_) {
        found_ = true;
        step_ = step;
      }
    }
    if (!found_) {
      throw InvalidInput("no stage to come is named \"" + wanted.stage + "\"",
                         {.path = "stage", .advice = "known: " + known});
    }
    require(field::start_h, wanted.ready_h);
    simulation_ = {.heat_of_fermentation = options.heat_of_fermentation,
                   .every_min = 0,
                   .be_back_by = false,
                   .tolerance = options.tolerance,
                   .interrupt = options.interrupt};
  }
  std::size_t step() const { return step_; }

  /// The median of the draws: what a forecast says.
  double median(const Process& process) { return medians({process}, all_).front(); }
  /// What it would be if the same two draws were in the middle as where it was reckoned last.
  double median_alike(const Process& process) const {
    const State start = beginning(process, state_);
    return between(ready_h(process, start, middle_.low), ready_h(process, start, middle_.high), middle_.share);
  }
  /// That of a few draws, evenly spread as all of them, for many processes.
  std::vector<double> rough_medians(const std::vector<Process>& processes) { return medians(processes, few_); }

 private:
  static double between(double low, double high, double share) {
    if (!(high < never)) return share > 0 ? high : low;
    return low + share * (high - low);
  }
  double ready_h(const Process& process, const State& start, std::size_t draw) const {
    return run_draw(process, start, draws_.draws[draw].kitchen, simulation_, false, step_).back().ready_h;
  }
  /// Whether these are all draws, which count as they are weighted; some that stand for all count the same.
  double weight_of(std::size_t draw, std::size_t count) const {
    const bool is_all = count == draws_.draws.size() && !draws_.weights.empty();
    return is_all ? draws_.weights[draw] : 1 / static_cast<double>(count);
  }

  std::vector<double> medians(const std::vector<Process>& processes, const std::vector<std::size_t>& draws) {
    const std::size_t count = draws.size();
    std::vector<State> starts;
    for (const Process& process : processes) starts.push_back(beginning(process, state_));
    std::vector<double> ready(processes.size() * count);
    for_each_draw(options_.for_each, ready.size(), [&](std::size_t i) {
      ready[i] = ready_h(processes[i / count], starts[i / count], draws[i % count]);
    });
    std::vector<double> medians;
    std::vector<std::pair<double, std::size_t>> rising(count);
    std::vector<double> weights(count);
    for (std::size_t first = 0; first < ready.size(); first += count) {
      for (std::size_t i = 0; i < count; ++i) rising[i] = {ready[first + i], draws[i]};
      std::sort(rising.begin(), rising.end());
      for (std::size_t i = 0; i < count; ++i) weights[i] = weight_of(rising[i].second, count);
      const Middle middle = middle_of(weights);
      middle_ = {rising[middle.low].second, rising[middle.high].second, middle.share};
      medians.push_back(between(rising[middle.low].first, rising[middle.high].first, middle.share));
    }
    return medians;
  }

  const std::optional<State>& state_;
  const ForecastOptions& options_;
  WeightedDraws draws_;
  SimulateOptions simulation_;
  std::vector<std::size_t> all_ = every_one(draws_.draws.size()), few_ = representatives(draws_, few_draws);
  Middle middle_ = {};  ///< the draws of the median reckoned last
  std::size_t step_ = 0;
  bool found_ = false;
};

Process with(Process process, const Asked& asked, double x) {
  asked.choose(process, x);
  return process;
}

std::string with_unit(const Asked& asked, double x, int digits) {
  return number(asked.shown(x), digits) + " " + asked.unit;
}

/// The median as a curve over the choice.
CurveSearch search_of(const Asked& asked, Ready& ready, const Process& process) {
  return CurveSearch({.low = asked.low,
                      .high = asked.high,
                      .value = [&](double x) { return ready.median(with(process, asked, x)); },
                      .rough =
                          [&](const std::vector<double>& xs) {
                            std::vector<Process> processes;
                            for (const double x : xs) processes.push_back(with(process, asked, x));
                            return ready.rough_medians(processes);
                          },
                      .present = asked.present,
                      .alike = [&](double x) { return ready.median_alike(with(process, asked, x)); }});
}

/// No choice is on time: says which hours can be had, and with what.
[[noreturn]] void refuse(const Asked& asked, CurveSearch& search, const Wanted& wanted) {
  const std::string begin =
      "no " + asked.label + " makes stage \"" + wanted.stage + "\" ready at " + number(wanted.ready_h) + " h: ";
  const std::string within = "from " + with_unit(asked, asked.low, 4) + " to " + with_unit(asked, asked.high, 4);
  const std::vector<ValueRange> ranges = search.ranges();
  ErrorDetail detail{.path = "ready_h", .value = wanted.ready_h, .advice = "change something else"};
  if (ranges.empty()) throw NoSolution(begin + within + " it is never ready", detail);
  std::string told;
  double nearest_x = asked.low, nearest_h = never;
  for (const ValueRange& range : ranges) {
    told.append(told.empty() ? "" : ", or ")
        .append(number(range.low, 5))
        .append(" and ")
        .append(number(range.high, 5))
        .append(" h");
    detail.ranges.emplace_back(range.low, range.high);
    for (const auto& [x, hours] : {std::pair{range.at_low, range.low}, std::pair{range.at_high, range.high}}) {
      if (std::abs(hours - wanted.ready_h) < std::abs(nearest_h - wanted.ready_h)) {
        nearest_x = x;
        nearest_h = hours;
      }
    }
  }
  detail.low = ranges.front().low;
  detail.high = ranges.back().high;
  detail.advice = "nearest is " + with_unit(asked, nearest_x, 4) + ", ready at " + number(nearest_h, 5) + " h";
  throw NoSolution(begin + within + " it is ready between " + told, detail);
}

/// Whatever is chosen, the stage is ready at one hour: it and those before it end by a time.
std::vector<double> any_choice(const Asked& asked, double always_h, const Wanted& wanted) {
  if (std::abs(always_h - wanted.ready_h) <= 1e-6) return {asked.present.value_or(asked.low)};
  throw NoSolution("stage \"" + wanted.stage + "\" ends by a time: with any " + asked.label + " it is ready at " +
                       number(always_h) + " h, and with none at " + number(wanted.ready_h) + " h",
                   {.path = "ready_h",
                    .value = wanted.ready_h,
                    .low = always_h,
                    .high = always_h,
                    .ranges = {{always_h, always_h}},
                    .advice = "change its hours, or let it end by a rise"});
}

/// The nearest weight that a scale shows, at least one step: 1.7 and not 17 times 0.1.
double on_scale(double grams, double step_g) {
  const double steps = std::max(std::round(grams / step_g), 1.0), per_gram = std::round(1 / step_g);
  return std::abs(per_gram * step_g - 1) < 1e-12 ? steps / per_gram : steps * step_g;
}

Choice answered(const Asked& asked, Ready& ready, const Process& process, const Wanted& wanted, bool latest,
                double scale, const Kitchen& kitchen, const std::optional<State>& state, double tolerance) {
  const Process followed = condensed(process, beginning(process, state).steps_done, tolerance);
  CurveSearch search = search_of(asked, ready, followed);
  const std::optional<double> always_h = search.only_value();
  const std::vector<double> found = always_h ? any_choice(asked, *always_h, wanted) : search.solutions(wanted.ready_h);
  if (found.empty()) refuse(asked, search, wanted);
  const double x = latest ? found.back() : found.front();
  Choice choice;
  choice.what = asked.what;
  if (asked.present) choice.now = asked.shown(*asked.present);
  for (const double each : found) choice.all.push_back(asked.shown(each));
  choice.value = asked.shown(x);
  choice.ready_h = search.value(x);
  choice.rounded = choice.value;
  choice.rounded_ready_h = choice.ready_h;
  double rounded_x = x;
  if (scale > 0) {
    choice.rounded = on_scale(choice.value, scale);
    rounded_x = x + std::log(choice.rounded / choice.value);  // yeast alone is rounded, and its x is a logarithm
    choice.rounded_ready_h = ready.median(with(followed, asked, rounded_x));
  }
  choice.process = with(process, asked, rounded_x);
  try {
    choice.notices =
        simulate(with(followed, asked, rounded_x), kitchen, state, {.every_min = 0, .be_back_by = false}).notices;
  } catch (const NoSolution&) {  // a later stage than the wanted one is never ready
  }
  if (always_h) {
    choice.notices.push_back({"any_choice",
                              Severity::info,
                              {},
                              "stage \"" + wanted.stage + "\" ends by a time: any " + asked.label + " is on time"});
  }
  if (found.size() > 1) {
    std::string others;
    for (const double each : choice.all) others.append(others.empty() ? "" : ", ").append(number(each, 4));
    choice.notices.push_back(
        {"several_choices",
         Severity::info,
         {},
         std::to_string(found.size()) + " choices are ready at that hour: " + others + " " + asked.unit});
  }
  return choice;
}

/// The mixes to come before a stage.
template <class Each>
void for_mixes(Process& process, std::size_t from, std::size_t to, Each each) {
  for (std::size_t step = from; step < to; ++step) {
    if (auto* mix = std::get_if<Mix>(&process.steps[step])) each(*mix);
  }
}

double yeast_g(const Formula& f) { return f.instant_g + f.active_dry_g + f.compressed_g; }

double as_instant_g(const Formula& f) {
  using formula::compressed_ratio;
  const double compressed = f.instant_g / compressed_ratio(Yeast::instant) +
                            f.active_dry_g / compressed_ratio(Yeast::active_dry) + f.compressed_g;
  return compressed * compressed_ratio(Yeast::instant);
}

/// The latest moment to move a stage's dough into other surroundings, to the stage's end.
Choice moment_to_move(const Process& process, const Wanted& wanted, const std::string& moved, const Surroundings& to,
                      const Kitchen& kitchen, const std::optional<State>& state, const ForecastOptions& options) {
  require(to);
  Ready ready(process, wanted, kitchen, state, options);
  const State start = beginning(process, state);
  std::size_t where = process.steps.size();
  for (std::size_t step = start.steps_done; step <= ready.step() && where == process.steps.size(); ++step) {
    const auto* stage = std::get_if<Stage>(&process.steps[step]);
    if (stage != nullptr && stage->name == moved) where = step;
  }
  if (where == process.steps.size()) {
    throw InvalidInput("no stage to come up to \"" + wanted.stage + "\" is named \"" + moved + "\"",
                       {.path = "moved", .advice = "name the one whose dough is moved"});
  }
  const auto choose = [&](Process& changed, double move_h) {
    Surroundings& own = std::get<Stage>(changed.steps[where]).surroundings;
    std::erase_if(own.places, [move_h](const Place& place) { return place.from_h && *place.from_h >= move_h; });
    for (Place place : to.places) {
      place.from_h = std::max(place.from_h.value_or(move_h), move_h);
      own.places.push_back(std::move(place));
    }
  };
  return answered({"move_h", "moment to move the dough", "h", start.time_h, wanted.ready_h, choose}, ready, process,
                  wanted, true, 0, kitchen, state, options.tolerance);
}

}  // namespace

Choice yeast_for(const Process& process, const Wanted& wanted, double scale_g, const Kitchen& kitchen,
                 const std::optional<State>& state, const ForecastOptions& options) {
  require({"scale_g", "scale", "g", 0, 100, 0, Quantity::mass, {}, {}, "0.1 or 1; 0 does not round"}, scale_g);
  Ready ready(process, wanted, kitchen, state, options);
  const State start = beginning(process, state);
  double grams = 0, instant_g = 0, flour_g = start.amounts.flour_g;
  Process counted = process;
  for_mixes(counted, start.steps_done, ready.step(), [&](const Mix& mix) {
    grams += yeast_g(mix.formula);
    instant_g += as_instant_g(mix.formula);
    flour_g += amounts_of(mix.formula).flour_g;
    for (const State& dough : mix.doughs) flour_g += dough.amounts.flour_g;
  });
  if (!(grams > 0)) {
    throw InvalidInput("no yeast is to come before stage \"" + wanted.stage + "\"",
                       {.path = "steps", .advice = "put some into a mix, its dose is what is asked for"});
  }
  const double percent = 100 * instant_g / flour_g;
  const auto choose = [&](Process& changed, double log_factor) {
    for_mixes(changed, start.steps_done, ready.step(), [&](Mix& mix) {
      for (double Formula::*kind : {&Formula::instant_g, &Formula::active_dry_g, &Formula::compressed_g})
        mix.formula.*kind *= std::exp(log_factor);
    });
  };
  const Asked asked{"yeast_g",
                    "dose of yeast",
                    "g",
                    std::log(field::instant_equivalent_percent.low / percent),
                    std::log(field::instant_equivalent_percent.high / percent),
                    choose,
                    0.0,
                    [grams](double x) { return grams * std::exp(x); }};
  return answered(asked, ready, process, wanted, false, scale_g, kitchen, state, options.tolerance);
}

Choice water_for(const Process& process, const Wanted& wanted, const Kitchen& kitchen,
                 const std::optional<State>& state, const ForecastOptions& options) {
  Ready ready(process, wanted, kitchen, state, options);
  const std::size_t first = beginning(process, state).steps_done;
  const Mix* next = nullptr;
  std::size_t where = 0;
  for (std::size_t step = first; step < ready.step() && next == nullptr; ++step) {
    const auto* mix = std::get_if<Mix>(&process.steps[step]);
    if (mix == nullptr || !(mix->formula.water_g > 0) || mix->dough_c) continue;
    next = mix;
    where = step;
  }
  if (next == nullptr) {
    throw InvalidInput("no mix to come before stage \"" + wanted.stage + "\" has main water whose temperature counts",
                       {.path = "water_g", .advice = "give water_g and no dough_c"});
  }
  const auto choose = [where](Process& changed, double water_c) {
    std::get<Mix>(changed.steps[where]).formula.water_c = water_c;
  };
  return answered({"water_c", "water temperature", "°C", field::water_c.low, field::water_c.high, choose,
                   next->formula.water_c ? next->formula.water_c : next->room_c},
                  ready, process, wanted, false, 0, kitchen, state, options.tolerance);
}

Choice room_for(const Process& process, const Wanted& wanted, Air air, const Kitchen& kitchen,
                const std::optional<State>& state, const ForecastOptions& options) {
  row_of(air);
  Ready ready(process, wanted, kitchen, state, options);
  const std::size_t first = beginning(process, state).steps_done;
  const auto is_meant = [air](const Place& place) {
    return place.air == air && !place.is_dough && place.temperature_c;
  };
  // What was seen is over: a dough that is looked at now changes its room from now on.
  double now_h = -never;
  for (const Sighting& seen : options.seen) now_h = std::max<double>(now_h, seen.time_h);
  const auto each_place = [&](Process& changed, const std::function<void(Place&)>& each) {
    bool is_over = !options.seen.empty();
    for (std::size_t at = first; at <= ready.step(); ++at) {
      auto* stage = std::get_if<Stage>(&changed.steps[at]);
      if (stage == nullptr) continue;
      std::vector<Place>& places = stage->surroundings.places;
      const bool is_under_way = is_over && stage->until_rise_percent;
      if (is_under_way && !places.empty()) {
        Place here = place_at(stage->surroundings, now_h);
        here.from_h = now_h;
        std::erase_if(places, [&](const Place& place) { return place.from_h == now_h; });
        const auto later = [&](const Place& place) { return place.from_h && *place.from_h > now_h; };
        places.insert(std::find_if(places.begin(), places.end(), later), here);
      }
      is_over = is_over && !is_under_way;
      for (Place& place : places) {
        if (is_meant(place) && !is_over && !(place.from_h.value_or(-never) < now_h && is_under_way)) each(place);
      }
    }
  };
  std::optional<double> present_c;
  Process looked_through = process;
  each_place(looked_through, [&](Place& place) { present_c = *place.temperature_c; });
  const std::string name(name_of(air));
  if (!present_c) {
    throw InvalidInput("no stage up to \"" + wanted.stage + "\" is in a " + name + " of one temperature",
                       {.path = "air", .advice = "that temperature is what is asked for"});
  }
  const auto choose = [&](Process& changed, double air_c) {
    each_place(changed, [air_c](Place& place) { place.temperature_c = air_c; });
  };
  const bool cold = air == Air::refrigerator || air == Air::fan_refrigerator;
  return answered({"air_c", name + " temperature", "°C", cold ? -2.0 : 0.0, cold ? 20.0 : 45.0, choose, present_c},
                  ready, process, wanted, false, 0, kitchen, state, options.tolerance);
}

Choice latest_start(const Process& process, const Wanted& wanted, const Kitchen& kitchen,
                    const ForecastOptions& options) {
  const std::optional<State> from_the_start;
  Ready ready(process, wanted, kitchen, from_the_start, options);
  const auto choose = [](Process& changed, double start_h) { changed.start_h = start_h; };
  constexpr double longest_h = 240;
  return answered({"start_h", "start", "h", wanted.ready_h - longest_h, wanted.ready_h, choose, process.start_h}, ready,
                  process, wanted, true, 0, kitchen, from_the_start, options.tolerance);
}

Choice refrigerate_from(const Process& process, const Wanted& wanted, const std::string& moved,
                        const Surroundings& refrigerator, const Kitchen& kitchen, const std::optional<State>& state,
                        const ForecastOptions& options) {
  return moment_to_move(process, wanted, moved, refrigerator, kitchen, state, options);
}

Choice take_out_at(const Process& process, const Wanted& wanted, const std::string& moved, const Surroundings& into,
                   const Kitchen& kitchen, const std::optional<State>& state, const ForecastOptions& options) {
  return moment_to_move(process, wanted, moved, into, kitchen, state, options);
}

template <>
const Form& form_of<Choice>() {
  using C = Choice;
  static const Form form = made_form<C>(
      "Choice", "What to choose so that a stage is ready at an hour, and what comes of it.", {},
      {row<&C::what>("what", "yeast_g, water_c, air_c, start_h or move_h"),
       row<&C::now>("now", "what is chosen now; none where that is no one number"),
       row<&C::value>("value", "the choice; of several the least yeast, the coldest, the latest"),
       row<&C::all>("all", "every choice that is ready at that hour, rising"),
       row<&C::ready_h>("ready_h", "h when it is ready with value"),
       row<&C::rounded>("rounded", "value on the user's scale"),
       or_never(row<&C::rounded_ready_h>("rounded_ready_h", "h when it is ready with rounded; none if never")),
       row<&C::process>("process", "the process with rounded in it"), row<&C::notices>("notices", "of that process")});
  return form;
}

}  // namespace ferment
