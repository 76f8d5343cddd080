#include <ferment/forecast/forecast.hpp>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <cstdint>
#include <exception>
#include <limits>
#include <numeric>
#include <string>
#include <utility>

#include <boost/math/distributions/normal.hpp>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"
#include "forecast/coordinates.hpp"
#include "forecast/draws.hpp"
#include "forecast/sobol.hpp"
#include "forecast/weights.hpp"
#include "heat/condensed.hpp"
#include "process/run.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr double look_first_share = 0.1, be_back_share = 0.1;
constexpr double few_are_left = 100;  // draws
constexpr Field draws_field{
    "draws", "draws", "", 2, 65536, 512, Quantity::ratio, "kitchens of Sobol's sequence", "", "512 are enough"};
constexpr Field seed_field{"seed",
                           "seed",
                           "",
                           0,
                           4294967295.0,
                           3,
                           Quantity::ratio,
                           "another one gives other draws",
                           "",
                           "any whole number of 32 bits will do"};

/// Owen's nested scrambling of the bits of a point, by a hash that carries only upwards in the reversed word (Laine &
/// Karras 2011, constants of Burley 2020).
std::uint32_t scrambled(std::uint32_t x, std::uint32_t seed) {
  const auto reversed = [](std::uint32_t v) {
    v = ((v >> 1) & 0x55555555u) | ((v & 0x55555555u) << 1);
    v = ((v >> 2) & 0x33333333u) | ((v & 0x33333333u) << 2);
    v = ((v >> 4) & 0x0f0f0f0fu) | ((v & 0x0f0f0f0fu) << 4);
    v = ((v >> 8) & 0x00ff00ffu) | ((v & 0x00ff00ffu) << 8);
    return (v >> 16) | (v << 16);
  };
  x = reversed(x) + seed;
  x ^= x * 0x6c50b47cu;
  x ^= x * 0xb82f1e52u;
  x ^= x * 0xc7afe638u;
  x ^= x * 0x8d22f6e6u;
  return reversed(x);
}

/// A seed for each dimension (the finaliser of MurmurHash3).
std::uint32_t mixed_bits(std::uint32_t x) {
  x = (x ^ (x >> 16)) * 0x85ebca6bu;
  x = (x ^ (x >> 13)) * 0xc2b2ae35u;
  return x ^ (x >> 16);
}

std::size_t index_of(const std::vector<Parameter>& learned, double Kitchen::*value) {
  const auto found = std::find_if(learned.begin(), learned.end(), [&](const Parameter& p) { return p.value == value; });
  return static_cast<std::size_t>(found - learned.begin());
}

const Stage* stage_at(const Process& process, std::size_t step) { return std::get_if<Stage>(&process.steps[step]); }

/// The stages of a process that are still to come, from a step on.
std::vector<std::size_t> stages_from(const Process& process, std::size_t first) {
  std::vector<std::size_t> indices;
  for (std::size_t step = first; step < process.steps.size(); ++step) {
    if (stage_at(process, step) != nullptr) indices.push_back(step);
  }
  return indices;
}

std::vector<double> column(const std::vector<std::vector<DrawnStage>>& draws, std::size_t stage,
                           double DrawnStage::*member) {
  std::vector<double> values;
  values.reserve(draws.size());
  for (const auto& draw : draws) values.push_back(draw[stage].*member);
  return values;
}

/// Length of the 90 % interval that one logged rise of a stage of such a length would leave. Its variance is the
/// kitchen's, which a log teaches, and the bake's, which it does not: the part that goes with the bake's number in the
/// draws.
double interval_length_after_one_log(const std::vector<double>& ready, const WeightedDraws& of, double log_time_sd,
                                     double stage_h, double now_h) {
  std::size_t count = 0;
  double n = 0, sum_y = 0, sum_z = 0, sum_yy = 0, sum_zz = 0, sum_yz = 0;
  for (std::size_t i = 0; i < ready.size(); ++i) {
    if (!(ready[i] < never)) continue;
    const double y = ready[i], z = of.draws[i].bake_z, w = of.weights.empty() ? 1 : of.weights[i];
    ++count;
    n += w;
    sum_y += w * y, sum_z += w * z, sum_yy += w * y * y, sum_zz += w * z * z, sum_yz += w * y * z;
  }
  if (count < 3 || !(stage_h < never && now_h < never)) return now_h;
  const double total = sum_yy / n - sum_y / n * (sum_y / n);
  const double slope = (sum_yz - sum_y * sum_z / n) / (sum_zz - sum_z * sum_z / n);
  const double bake = std::min(slope * slope, total);
  const double kitchens = total - bake;
  if (!(kitchens > 0)) return now_h;
  const double log_variance = bake + log_time_sd * stage_h * log_time_sd * stage_h;
  return now_h * std::sqrt((kitchens * log_variance / (kitchens + log_variance) + bake) / total);
}

double length(std::pair<double, double> interval) {
  return interval.second < never ? interval.second - interval.first : never;
}

void add_notices(Forecast& forecast, const Kitchen& kitchen) {
  for (const StageForecast& stage : forecast.stages) {
    if (stage.never_ready >= 0.02) {
      forecast.notices.push_back(
          {"perhaps_never_ready",
           stage.never_ready >= 0.2 ? Severity::warning : Severity::caution,
           {{"never_ready", stage.never_ready}},
           "stage \"" + stage.name + "\": in " + number(100 * stage.never_ready, 2) +
               " of 100 doughs its rise is never reached; ask for a smaller rise, or warm the dough"});
    }
    const double length_h = length(interval_h(stage));
    if (has_learned(kitchen) || !stage.by_rise || !(length_h < never)) continue;
    forecast.notices.push_back(
        {"nothing_learned",
         Severity::info,
         {{"interval_length_h", length_h}, {"interval_length_after_one_log_h", stage.interval_length_after_one_log_h}},
         "stage \"" + stage.name + "\": nine in ten doughs are ready in a span of " + in_hours(length_h) +
             ", because yeasts and flours differ and no rise of this kitchen is logged; one log would leave about " +
             in_hours(stage.interval_length_after_one_log_h)});
  }
  std::stable_sort(forecast.notices.begin(), forecast.notices.end(),
                   [](const Notice& a, const Notice& b) { return a.severity > b.severity; });
}

}  // namespace

double quantile(const std::vector<double>& rising, double share) {
  if (rising.empty() || !(share >= 0 && share <= 1)) {
    throw InvalidInput("a quantile needs values and a share from 0 to 1, got " + std::to_string(rising.size()) +
                           " values and " + number(share),
                       {.path = "share", .value = share, .low = 0.0, .high = 1.0});
  }
  const double at = share * static_cast<double>(rising.size() - 1);
  const auto below = static_cast<std::size_t>(at);
  const double rest = at - static_cast<double>(below);
  if (rest == 0 || rising[below] == never) return rising[below];
  return rising[below] + rest * (rising[below + 1] - rising[below]);
}

std::pair<double, double> interval_h(const StageForecast& stage, double level) {
  if (!(level > 0 && level < 1)) {
    throw InvalidInput("the level of an interval is " + number(level),
                       {.path = "level",
                        .value = level,
                        .low = 0.0,
                        .high = 1.0,
                        .advice = "it must be between 0 and 1, such as 0.9"});
  }
  return {quantile(stage.ready, (1 - level) / 2), quantile(stage.ready, (1 + level) / 2)};
}

double share_ready(const StageForecast& stage, double time_h) {
  if (std::isnan(time_h)) throw InvalidInput("the hour is not a number", {.path = "time_h"});
  if (stage.ready.empty()) throw InvalidInput("the forecast has no draws", {.path = "ready"});
  const auto until = [&](const std::vector<double>& rising) {
    return std::upper_bound(rising.begin(), rising.end(), time_h) - rising.begin();
  };
  return static_cast<double>(until(stage.ready) - until(stage.too_late)) / static_cast<double>(stage.ready.size());
}

std::vector<double> normals(std::size_t draws, std::size_t dimensions, std::uint32_t seed) {
  Sobol points(dimensions);
  const boost::math::normal standard;
  const double cells = static_cast<double>(draws);
  std::vector<double> all(draws * dimensions);
  for (std::size_t draw = 0; draw < draws; ++draw) {
    const std::vector<std::uint32_t>& point = points.next();
    for (std::size_t i = 0; i < dimensions; ++i) {
      const double u = scrambled(point[i], mixed_bits(seed + static_cast<std::uint32_t>(i))) / 4294967296.0;
      all[draw * dimensions + i] = boost::math::quantile(standard, (std::floor(u * cells) + 0.5) / cells);
    }
  }
  return all;
}

std::vector<Draw> drawn(const Kitchen& kitchen, const ForecastOptions& options) {
  require_kitchen(kitchen);
  require(options);
  const double bake_sd = std::hypot(kitchen.bake_sd, kitchen.model_sd);
  const std::vector<Parameter> learned = learnable();
  const std::size_t n = learned.size();
  const std::size_t gassing = index_of(learned, &Kitchen::gassing_rate),
                    first_set = index_of(learned, &Kitchen::water_exponent);
  // Sobol's first dimensions are the best: they go to the gassing rate and what follows it in the table, round to its
  // beginning. Parameters that came later have the last ones, so that the draws of an older set stay as they were.
  const auto dimension = [&](std::size_t i) { return 1 + (i < first_set ? (i + first_set - gassing) % first_set : i); };
  const std::vector<double> z = normals(options.draws, n + 1, static_cast<std::uint32_t>(options.seed));
  const Eigen::MatrixXd root = root_of(kitchen);
  std::vector<Draw> all;
  all.reserve(options.draws);
  Eigen::VectorXd own(static_cast<Eigen::Index>(n));
  // The bake and the kitchen both move the gassing rate, and only their sum counts: it has the first dimension, turned
  // so.
  const double kitchens_sd = root.row(static_cast<Eigen::Index>(gassing)).norm(),
               both_sd = std::hypot(kitchens_sd, bake_sd);
  const double to_bake = both_sd > 0 ? bake_sd / both_sd : 0, to_kitchen = both_sd > 0 ? kitchens_sd / both_sd : 1;
  for (std::size_t draw = 0; draw < options.draws; ++draw) {
    const double* const row = z.data() + draw * (n + 1);
    for (std::size_t i = 0; i < n; ++i) own[static_cast<Eigen::Index>(i)] = row[dimension(i)];
    own[static_cast<Eigen::Index>(gassing)] = to_kitchen * row[0] - to_bake * row[1];
    const double bake_z = to_bake * row[0] + to_kitchen * row[1];
    all.push_back({moved_by(kitchen, learned, root * own, bake_sd * bake_z), bake_z});
  }
  return all;
}

std::vector<Kitchen> draws_of(const Kitchen& kitchen, const ForecastOptions& options) {
  std::vector<Kitchen> kitchens;
  for (Draw& draw : drawn(kitchen, options)) kitchens.push_back(std::move(draw.kitchen));
  return kitchens;
}

Process condensed(const Process& process, std::size_t steps_done, double tolerance) {
  constexpr double loose = 1e-3,
                   k_h = 0.02;  // ready hours then move by less than 1e-4 h: tests/unit/forecast_series.cpp
  Process followed = process;
  for (std::size_t step = steps_done; step < followed.steps.size(); ++step) {
    try {
      std::visit([](const auto& its) { require(its); }, followed.steps[step]);
    } catch (const Error& error) {
      throw_from(error, process.steps[step], step);
    }
    auto* const stage = std::get_if<Stage>(&followed.steps[step]);
    if (stage == nullptr) continue;
    for (Place& there : stage->surroundings.places) {
      if (there.course && tolerance >= loose) {
        there.course = condensed(*there.course, k_h * tolerance);
      }
    }
  }
  return followed;
}

void for_each_draw(const ForEach& for_each, std::size_t count, const std::function<void(std::size_t)>& work) {
  if (!for_each) {
    for (std::size_t i = 0; i < count; ++i) work(i);
    return;
  }
  std::atomic<bool> failed = false;
  std::exception_ptr error;
  for_each(count, [&](std::size_t i) {
    if (failed.load(std::memory_order_relaxed)) return;
    try {
      work(i);
    } catch (...) {
      if (!failed.exchange(true)) error = std::current_exception();
    }
  });
  if (error) std::rethrow_exception(error);
}

namespace {

/// What a forecast wants to know of a draw: the hours of its stages.
class Hours {
 public:
  static constexpr bool needs_core = false;
  Hours(bool watch, double ahead_h) : watch_(watch), ahead_h_(ahead_h) {}

  void mixed(const Mix& /*mix*/, const State& /*state*/) {}
  void begun(StageRun& run) {
    if (watch_) run.watch_acceptable();
  }
  void ended(StageRun& run, bool /*is_ended*/) {
    DrawnStage drawn{};
    drawn.ready_h = run.state().time_h;
    drawn.rise_percent = run.rise_percent(run.ratio_now());
    if (watch_) run.look_ahead(ahead_h_);
    drawn.over_proofed_h = run.over_proofed_h().value_or(never);
    drawn.too_late_h = run.too_late_h().value_or(never);
    drawn.lowest_h = run.has_acceptable() ? run.lowest_h().value_or(never) : drawn.ready_h;
    drawn.highest_h = run.has_acceptable() ? run.highest_h().value_or(never) : drawn.ready_h;
    stages.push_back(drawn);
  }

  std::vector<DrawnStage> stages;

 private:
  bool watch_;
  double ahead_h_;
};

}  // namespace

std::vector<DrawnStage> run_draw(const Process& process, const State& from, const Kitchen& kitchen,
                                 const SimulateOptions& options, bool watch, std::size_t last, double ahead_h) {
  Hours hours(watch, ahead_h);
  State state = from;
  std::size_t step = from.steps_done;
  try {
    for (; step <= last; ++step) run_step(state, process.steps[step], role_of(process, step), kitchen, options, hours);
  } catch (const NoSolution&) {    // a rise is never reached,
  } catch (const OutsideModel&) {  // or the dough freezes or dies: it and what follows never happens
  }
  for (; step <= last; ++step) {
    if (stage_at(process, step) != nullptr) hours.stages.push_back({never, never, never, never, never, 0});
  }
  return hours.stages;
}

Forecast forecast(const Process& measured, const Kitchen& kitchen, const std::optional<State>& given,
                  const ForecastOptions& options) {
  const State start = beginning(measured, given);
  const Process process = condensed(measured, start.steps_done, options.tolerance);
  SimulateOptions simulation{.heat_of_fermentation = options.heat_of_fermentation,
                             .every_min = 0,
                             .be_back_by = false,
                             .interrupt = options.interrupt};
  Forecast forecast;
  try {
    forecast.notices =
        simulate(process, kitchen, start, simulation).notices;  // refuses what is to be refused, in its words
  } catch (const NoSolution&) {
    // The central dough never gets there; others may, and the share that does not is told.
  }
  simulation.tolerance = options.tolerance;
  const WeightedDraws weighted = weighted_draws(process, kitchen, given, options);
  const std::vector<Draw>& draws = weighted.draws;
  const auto spread = [&](const std::vector<double>& values) { return evenly_likely(values, weighted.weights); };
  forecast.effective_draws = weighted.effective;
  const std::vector<std::size_t> stages = stages_from(process, start.steps_done);
  if (stages.empty())
    throw InvalidInput("the process has no stage to come", {.path = "steps", .advice = "add one to forecast"});
  std::vector<std::vector<DrawnStage>> results(draws.size());
  const auto follow = [&](double ahead_h) {
    for_each_draw(options.for_each, draws.size(), [&](std::size_t i) {
      results[i] = run_draw(process, start, draws[i].kitchen, simulation, true, stages.back(), ahead_h);
    });
  };
  follow(look_ahead_h);
  // Where one in ten is over-proofed in two days but not every other, all are followed on, so that the two can be told
  // together.
  const auto is_told_by_halves = [&](std::size_t stage) {
    return quantile(spread(column(results, stage, &DrawnStage::too_late_h)), be_back_share) < never &&
           quantile(spread(column(results, stage, &DrawnStage::over_proofed_h)), 0.5) == never;
  };
  for (std::size_t i = 0; i < stages.size(); ++i) {
    if (!is_told_by_halves(i)) continue;
    follow(field::until_h.high);
    break;
  }

  for (std::size_t i = 0; i < stages.size(); ++i) {
    const Stage& stage = *stage_at(process, stages[i]);
    StageForecast told;
    told.name = stage.name;
    told.by_rise = stage.until_rise_percent.has_value();
    const std::vector<double> ready = column(results, i, &DrawnStage::ready_h);
    told.ready = spread(ready);
    told.ready_h = quantile(told.ready, 0.5);
    told.likely_h = interval_h(told, 0.9);
    std::vector<double> too_late;
    for (const auto& draw : results) too_late.push_back(std::max(draw[i].ready_h, draw[i].too_late_h));
    told.too_late = spread(too_late);
    const std::vector<double> lowest = spread(column(results, i, &DrawnStage::lowest_h));
    told.window_h = {quantile(lowest, 0.5), quantile(spread(column(results, i, &DrawnStage::highest_h)), 0.5)};
    told.look_first_h = quantile(lowest, look_first_share);
    told.be_back_by_h = quantile(spread(column(results, i, &DrawnStage::too_late_h)), be_back_share);
    told.over_proofed_h = quantile(spread(column(results, i, &DrawnStage::over_proofed_h)), 0.5);
    const auto lost = std::count(told.ready.begin(), told.ready.end(), never);
    told.never_ready = static_cast<double>(lost) / static_cast<double>(ready.size());
    told.rise_percent = quantile(spread(column(results, i, &DrawnStage::rise_percent)), 0.5);
    const double begins_h = forecast.stages.empty() ? start.time_h : forecast.stages.back().ready_h;
    told.interval_length_after_one_log_h =
        interval_length_after_one_log(ready, weighted, std::sqrt(2.0) * kitchen.log_time_scale, told.ready_h - begins_h,
                                      length(interval_h(told)));
    forecast.stages.push_back(std::move(told));
  }
  for (const Surprise& its : weighted.surprises) {
    const Sighting& seen = options.seen[its.look];
    const bool is_rise = seen.was != SeenAs::height && seen.was != SeenAs::dough;
    const std::string unit = seen.was == SeenAs::dough ? " °C" : " %";
    const auto told = [&](double value) { return is_rise ? in_hours(std::exp(value)) : number(value, 3) + unit; };
    forecast.notices.push_back({"surprising_look",
                                Severity::warning,
                                {{"look", static_cast<double>(its.look)}, {"standardised", its.standardised}},
                                "stage \"" + seen.stage + "\": " + told(its.seen) + " is seen where " +
                                    told(its.expected) + " is expected; is it a slip? It counts little"});
  }
  if (!options.seen.empty() && !(forecast.effective_draws >= few_are_left)) {
    forecast.notices.push_back({"unlike_any_forecast",
                                Severity::warning,
                                {{"effective_draws", forecast.effective_draws}},
                                "what was seen is unlike any forecast of this dough: look for a slip in it; else "
                                "trust your eyes, and not the hours told here"});
  }
  add_notices(forecast, kitchen);
  return forecast;
}

template <>
const Form& form_of<StageForecast>() {
  using S = StageForecast;
  static const Form form = made_form<S>(
      "StageForecast", "When a stage will be ready, as a distribution. Hours of the process.", {},
      {row<&S::name>("name", "of the stage"), row<&S::by_rise>("by_rise", "whether it ends by a rise; else by a time"),
       never_in(column(row<&S::ready>("ready", "h when it is ready, of every draw, rising; infinite where never"))),
       never_in(column(row<&S::too_late>("too_late",
                                         "h when it is past its highest acceptable rise or over-proofed, of "
                                         "every draw, not before it is ready, rising; infinite where never"))),
       or_never(row<&S::ready_h>("ready_h", "h, the median; none where never")),
       or_never(row<&S::likely_h>("likely_h", "h between which it is ready in nine of ten draws")),
       or_never(row<&S::window_h>("window_h",
                                  "h, median hours of the lowest and the highest acceptable rise; none where never")),
       or_never(row<&S::look_first_h>("look_first_h", "h by which one dough in ten has the lowest acceptable rise")),
       or_never(row<&S::be_back_by_h>("be_back_by_h",
                                      "h by which nine in ten are neither past their highest acceptable rise nor "
                                      "over-proofed; none if after more than two days beyond the stage's end")),
       or_never(row<&S::over_proofed_h>("over_proofed_h", "h when the median dough is over-proofed")),
       row<&S::never_ready>("never_ready", "share of doughs whose rise is never reached"),
       row<&S::rise_percent>("rise_percent", "%, median rise at its end"),
       or_never(row<&S::interval_length_after_one_log_h>("interval_length_after_one_log_h",
                                                         "h that one logged rise would leave of the 90 % interval"))});
  return form;
}

template <>
const Form& form_of<Forecast>() {
  static const Form form = made_form<Forecast>(
      "Forecast", "When each stage will be ready. forecast[\"bulk\"] is the StageForecast of that name.", {},
      {row<&Forecast::stages>("stages", "those not over yet"),
       row<&Forecast::effective_draws>("effective_draws", "that are left by what was seen; all if nothing was"),
       row<&Forecast::notices>("notices", "cautions, most severe first")});
  return form;
}

template <>
const Form& form_of<ForecastOptions>() {
  using O = ForecastOptions;
  static const Form form =
      made_form<O>("ForecastOptions", "How a forecast is drawn.", {},
                   {row<&O::draws>(draws_field), row<&O::tolerance>(tolerance_field),
                    row<&O::heat_of_fermentation>("heat_of_fermentation", "the dough is warmed by its fermentation"),
                    row<&O::seen>("seen", "looks at this dough, by which the draws are weighted"),
                    row<&O::seed>(seed_field)});
  return form;
}

}  // namespace ferment
