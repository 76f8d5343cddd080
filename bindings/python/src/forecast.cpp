#include <pybind11/stl.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <thread>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/forecast/forecast.hpp>
#include <ferment/forecast/questions.hpp>

#include "numbers.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

using Optional = std::optional<double>;

/// Work on so many threads, in shares small enough that none waits long.
void on_threads(std::size_t threads, std::size_t count, const std::function<void(std::size_t)>& work) {
  constexpr std::size_t share = 16;
  std::atomic<std::size_t> next{0};
  const auto run = [&] {
    for (std::size_t from = next.fetch_add(share); from < count; from = next.fetch_add(share)) {
      for (std::size_t i = from; i < std::min(from + share, count); ++i) work(i);
    }
  };
  std::vector<std::thread> others;
  for (std::size_t i = 1; i < std::min(threads, count / share); ++i) others.emplace_back(run);
  run();
  for (std::thread& thread : others) thread.join();
}

/// As the library takes it; 0: as many threads as the machine has, at most eight. Small forecasts are not worth a
/// thread.
ForEach threads_of(std::size_t threads, std::size_t draws) {
  if (threads == 0) threads = std::min<std::size_t>(std::thread::hardware_concurrency(), 8);
  if (threads < 2 || draws < 64) return {};
  return
      [threads](std::size_t count, const std::function<void(std::size_t)>& work) { on_threads(threads, count, work); };
}

/// Hours, or None where it never happens.
Optional hours(double value) { return std::isfinite(value) ? Optional(value) : std::nullopt; }

std::pair<Optional, Optional> interval_of(const StageForecast& stage, double level) {
  const auto [early, late] = interval_h(stage, level);
  return {hours(early), hours(late)};
}

Document to_dict(const StageForecast& s) {
  const auto [early, late] = interval_of(s, 0.9);
  return Document("name"_a = s.name, "by_rise"_a = s.by_rise, "ready_h"_a = hours(s.ready_h), "early_h"_a = early,
                  "late_h"_a = late, "window_from_h"_a = hours(s.window_h.first),
                  "window_to_h"_a = hours(s.window_h.second), "look_first_h"_a = hours(s.look_first_h),
                  "be_back_by_h"_a = hours(s.be_back_by_h), "over_proofed_h"_a = hours(s.over_proofed_h),
                  "never_ready"_a = s.never_ready, "rise_percent"_a = s.rise_percent,
                  "interval_length_after_one_log_h"_a = hours(s.interval_length_after_one_log_h));
}

py::list rows_of(const Forecast& forecast) {
  py::list rows;
  for (const StageForecast& stage : forecast.stages) rows.append(to_dict(stage));
  return rows;
}

auto worded(const char* function) {
  return [function](const py::object& self) {
    return py::cast<std::string>(py::module_::import("libferment._values").attr(function)(self));
  };
}

Document to_dict(const Choice& c) {
  py::list notices;
  for (const Notice& notice : c.notices) notices.append(py::cast(notice).attr("to_dict")());
  return Document("what"_a = c.what, "value"_a = c.value, "all"_a = c.all, "ready_h"_a = c.ready_h,
                  "rounded"_a = c.rounded, "rounded_ready_h"_a = c.rounded_ready_h,
                  "rounding_min"_a = 60 * (c.rounded_ready_h - c.ready_h), "notices"_a = notices);
}

/// Every option of a forecast.
ForecastOptions options_of(std::size_t draws, double bake_sd, bool heat_of_fermentation, std::uint32_t seed,
                           std::size_t threads) {
  return {.draws = draws,
          .bake_sd = bake_sd,
          .heat_of_fermentation = heat_of_fermentation,
          .seed = seed,
          .interrupt = Interrupt(),
          .for_each = threads_of(threads, draws)};
}

using MaybeKitchen = std::optional<Kitchen>;
using MaybeState = std::optional<State>;

/// A question, asked with (process, wanted, extra…, kitchen, state, options); `names` are those of the extra arguments.
template <class... Extra, class Ask, class... Names>
void def_question(py::module_& module, const char* name, Ask ask, const char* doc, const Names&... names) {
  const ForecastOptions usual;
  module.def(
      name,
      [ask](const Process& process, const std::string& stage, const Duration& ready_h, const Extra&... extra,
            const MaybeKitchen& kitchen, const MaybeState& state, std::size_t draws, double bake_sd,
            bool heat_of_fermentation, std::uint32_t seed, std::size_t threads) {
        const Wanted wanted{stage, hours_of(field::start_h, ready_h)};
        const ForecastOptions options = options_of(draws, bake_sd, heat_of_fermentation, seed, threads);
        const Kitchen& its_kitchen = kitchen_or_default(kitchen);
        const py::gil_scoped_release release;
        return ask(process, wanted, extra..., its_kitchen, state, options);
      },
      "process"_a, py::kw_only(), "stage"_a, "ready_h"_a, names..., "kitchen"_a = py::none(), "state"_a = py::none(),
      "draws"_a = usual.draws, "bake_sd"_a = usual.bake_sd, "heat_of_fermentation"_a = true, "seed"_a = usual.seed,
      "threads"_a = 0, doc);
}

void bind_choices(py::module_& module) {
  py::class_<Choice> choice(module, "Choice",
                            R"(What to choose so that a stage is ready at an hour, and what comes of it.

what: "yeast_g", "water_c", "air_c", "start_h" or "move_h". value: the choice; of several (all, rising) the least
yeast, the coldest, the latest. rounded: value on the user's scale; rounded_ready_h: when it is ready with that;
rounding_min: minutes that costs. process: the Process with rounded in it. notices: of that process.)");
  choice.def_readonly("what", &Choice::what)
      .def_readonly("value", &Choice::value)
      .def_readonly("all", &Choice::all)
      .def_readonly("ready_h", &Choice::ready_h)
      .def_readonly("rounded", &Choice::rounded)
      .def_readonly("rounded_ready_h", &Choice::rounded_ready_h)
      .def_property_readonly("rounding_min", [](const Choice& c) { return 60 * (c.rounded_ready_h - c.ready_h); })
      .def_readonly("process", &Choice::process)
      .def_readonly("notices", &Choice::notices)
      .def("to_dict", [](const Choice& c) { return to_dict(c); })
      .def("__repr__", worded("choice_text"))
      .def("_repr_html_", worded("choice_html"));

  def_question<double>(
      module, "yeast_for", &yeast_for,
      R"(Yeast in all, g as weighed, with which a stage is ready at an hour (the median of its forecast): a Choice.

Every yeast of the mixes before the stage is changed by one factor, between 0.01 and 5 % as instant yeast. Args:
ready_h: h of the process or a timedelta. scale_g: g that the user's scale shows, 0.1 or 1; 0 does not round. state,
draws, bake_sd, heat_of_fermentation, seed, threads: as of forecast. Raises InvalidInput; NoSolution naming the hours
within reach and the nearest choice. Source: the median of forecast as a curve over the choice; roots by TOMS 748.)",
      "scale_g"_a = 0.0);
  def_question<>(module, "water_for", &water_for,
                 R"(Temperature of the next mix's main water, °C, with which a stage is ready at an hour: a Choice.

Args: as yeast_for; the mix must have water_g and no dough_c. Raises as yeast_for: InvalidInput, NoSolution. Source: as
yeast_for.)");
  def_question<std::string>(
      module, "room_for",
      [](const Process& process, const Wanted& wanted, const std::string& air, const Kitchen& kitchen,
         const MaybeState& state, const ForecastOptions& options) {
        return room_for(process, wanted, named<Air>(air), kitchen, state, options);
      },
      R"(Temperature of the room, °C, with which a stage is ready at an hour: a Choice. Of all steady places with such
air up to the stage.

After a bulk of a fixed time a warmer room can make the final proof longer: then several temperatures may be on time,
and all are named. Args: as yeast_for. air: "room", "proof_box", "refrigerator" or "fan_refrigerator". Raises as
yeast_for: InvalidInput, NoSolution. Source: as yeast_for.)",
      "air"_a = "room");
  def_question<>(
      module, "latest_start",
      [](const Process& process, const Wanted& wanted, const Kitchen& kitchen, const MaybeState& state,
         const ForecastOptions& options) {
        if (state)
          throw InvalidInput("a process that goes on from a state has begun",
                             {.path = "state", .advice = "leave state out, or ask for something else"});
        return latest_start(process, wanted, kitchen, options);
      },
      R"(Latest hour at which the process may begin, h, for a stage to be ready at an hour: a Choice.

Args: as yeast_for, without a state. Raises as yeast_for: InvalidInput, NoSolution. Source: as yeast_for.)");
  const auto moved = [](auto ask) {
    return
        [ask](const Process& process, const Wanted& wanted, const std::optional<std::string>& stage,
              const Surroundings& to, const Kitchen& kitchen, const MaybeState& state, const ForecastOptions& options) {
          return ask(process, wanted, stage.value_or(wanted.stage), to, kitchen, state, options);
        };
  };
  def_question<std::optional<std::string>, Surroundings>(
      module, "refrigerate_from", moved(&refrigerate_from),
      R"(Latest hour, h, at which a dough goes into the refrigerator, to its stage's end, for a stage to be ready at an
hour: a Choice.

Args: as yeast_for. moved: the stage whose dough is moved; the same stage if not given. refrigerator: Surroundings, of
any kind. Raises as yeast_for: InvalidInput, NoSolution. Source: as yeast_for.)",
      "moved"_a = py::none(), "refrigerator"_a);
  def_question<std::optional<std::string>, Surroundings>(
      module, "take_out_at", moved(&take_out_at),
      R"(Latest hour, h, at which a dough comes out of its stage's refrigerator into a room, for a stage to be ready at
an hour: a Choice.

Args: as refrigerate_from. into: Surroundings in which it stays to the stage's end. Raises as yeast_for: InvalidInput,
NoSolution. Source: as yeast_for.)",
      "moved"_a = py::none(), "into"_a);
}

}  // namespace

void bind_forecast(py::module_& module) {
  py::class_<StageForecast> stage(
      module, "StageForecast",
      R"(When a stage will be ready, as a distribution. Hours of the process; None where it never happens, or,
of be_back_by_h, after more than two days beyond the stage's end.

ready_h: median. window_h: median hours of the lowest and highest acceptable rise. look_first_h: one dough in ten has
the lowest acceptable rise by then. be_back_by_h: nine in ten are not over-proofed by then. over_proofed_h: the median
one is. never_ready: share of doughs whose rise is never reached. interval_length_after_one_log_h: what one logged rise
would leave of the 90 % interval.)");
  stage.def_readonly("name", &StageForecast::name)
      .def_readonly("by_rise", &StageForecast::by_rise, "Whether it ends by a rise; else by a time.")
      .def_property_readonly("ready_h", [](const StageForecast& s) { return hours(s.ready_h); })
      .def("interval_h", &interval_of, "level"_a = 0.9,
           "The hours between which it is ready with a probability. Raises InvalidInput.")
      .def_property_readonly("window_h",
                             [](const StageForecast& s) {
                               return std::pair(hours(s.window_h.first), hours(s.window_h.second));
                             })
      .def_property_readonly("look_first_h", [](const StageForecast& s) { return hours(s.look_first_h); })
      .def_property_readonly("be_back_by_h", [](const StageForecast& s) { return hours(s.be_back_by_h); })
      .def_property_readonly("over_proofed_h", [](const StageForecast& s) { return hours(s.over_proofed_h); })
      .def_readonly("never_ready", &StageForecast::never_ready)
      .def_readonly("rise_percent", &StageForecast::rise_percent)
      .def_property_readonly("interval_length_after_one_log_h",
                             [](const StageForecast& s) { return hours(s.interval_length_after_one_log_h); })
      .def_property_readonly(
          "ready",
          [](const StageForecast& s) {
            return py::array_t<double>(static_cast<py::ssize_t>(s.ready.size()), s.ready.data());
          },
          "Hours of every draw, rising; inf where never.")
      .def("to_dict", [](const StageForecast& s) { return to_dict(s); })
      .def("__repr__", worded("stage_forecast_text"));

  py::class_<Forecast> forecasts(module, "Forecast",
                                 R"(When each stage will be ready. forecast["bulk"] is the StageForecast of that name.

stages: list of StageForecast, those not over yet. notices: cautions, most severe first.)");
  forecasts.def_readonly("stages", &Forecast::stages)
      .def_readonly("notices", &Forecast::notices)
      .def(
          "__getitem__", [](const Forecast& f, const std::string& name) { return stage_named(f.stages, name); },
          "name"_a, "The StageForecast of that name, such as forecast[\"bulk\"].")
      .def("__len__", [](const Forecast& f) { return f.stages.size(); })
      .def("__iter__", [](const Forecast& f) { return py::iter(py::cast(f.stages)); })
      .def("to_dict",
           [](const Forecast& f) {
             py::list notices;
             for (const Notice& notice : f.notices) notices.append(py::cast(notice).attr("to_dict")());
             return Document("stages"_a = rows_of(f), "notices"_a = notices);
           })
      .def(
          "to_frame",
          [](const Forecast& f) {
            return py::module_::import("pandas").attr("DataFrame")(rows_of(f)).attr("set_index")("name");
          },
          "The stages as a pandas DataFrame.")
      .def("__repr__", worded("forecast_text"))
      .def("_repr_html_", worded("forecast_html"));

  module.def(
      "forecast",
      [](const Process& process, const std::optional<Kitchen>& kitchen, const std::optional<State>& state,
         std::size_t draws, double bake_sd, bool heat_of_fermentation, std::uint32_t seed, std::size_t threads) {
        const py::gil_scoped_release release;
        return forecast(process, kitchen_or_default(kitchen), state,
                        options_of(draws, bake_sd, heat_of_fermentation, seed, threads));
      },
      "process"_a, "kitchen"_a = py::none(), "state"_a = py::none(), py::kw_only(), "draws"_a = ForecastOptions{}.draws,
      "bake_sd"_a = ForecastOptions{}.bake_sd, "heat_of_fermentation"_a = true, "seed"_a = ForecastOptions{}.seed,
      "threads"_a = 0,
      R"(When each stage will be ready, with a window: a Forecast, the same every time.

Args: process: Process. kitchen: its covariance is the uncertainty, the prior's if it has none. state: to forecast from
the middle of the day. draws: kitchens of Sobol's sequence. bake_sd: spread of ln gassing rate from bake to bake. seed:
another one gives another set of draws. threads: that share the draws, 0 for those of the machine; the answer is the
same. In every draw each stage ends when it is ready, so one stage's uncertainty carries into the next. Acceptable
rises that a stage does not give are 75 to 150 % of its rise, 80 to 133 % for a final proof (common practice). Warmer
dough is ready some 7 to 10 % per °C sooner near dough temperature; but after a bulk of a fixed time a warmer room can
make the final proof longer: more of the sugars is spent. Times are in h. Raises as simulate for the kitchen's central
values: InvalidInput, OutsideModel. Source: model of this library; Joe & Kuo 2008.)");
  module.def(
      "draws_of",
      [](const std::optional<Kitchen>& kitchen, std::size_t draws, double bake_sd, std::uint32_t seed) {
        return draws_of(kitchen_or_default(kitchen), draws, bake_sd, seed);
      },
      "kitchen"_a = py::none(), py::kw_only(), "draws"_a = ForecastOptions{}.draws,
      "bake_sd"_a = ForecastOptions{}.bake_sd, "seed"_a = ForecastOptions{}.seed,
      R"(The kitchens that a forecast draws: a list of Kitchen, the same every time.

Args: bake_sd: share, sd of ln gassing rate from bake to bake. Raises InvalidInput. Source: Sobol's sequence, Joe & Kuo
2008.)");
  bind_choices(module);
}
