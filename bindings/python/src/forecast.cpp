#include <pybind11/stl.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <thread>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/forecast/forecast.hpp>
#include <ferment/forecast/next_look.hpp>
#include <ferment/forecast/questions.hpp>

#include "form.hpp"
#include "interrupt.hpp"
#include "rooms.hpp"
#include "stages.hpp"
#include "threads.hpp"

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

}  // namespace

ForEach threads_of(std::size_t threads) {
  constexpr std::size_t few = 64;
  if (threads == 0) threads = std::min<std::size_t>(std::thread::hardware_concurrency(), 8);
  return [threads](std::size_t count, const std::function<void(std::size_t)>& work) {
    on_threads(count < few ? 1 : threads, count, work);
  };
}

namespace {

/// Hours, or None where it never happens.
Optional hours(double value) { return std::isfinite(value) ? Optional(value) : std::nullopt; }

std::pair<Optional, Optional> interval_of(const StageForecast& stage, double level) {
  const auto [early, late] = interval_h(stage, level);
  return {hours(early), hours(late)};
}

using MaybeKitchen = std::optional<Kitchen>;
using MaybeState = std::optional<State>;

/// A question, asked with (process, wanted, extra…, kitchen, state, options); `names` are those of the extra arguments.
template <class... Extra, class Ask, class... Names>
void def_question(py::module_& module, const char* name, Ask ask, const char* doc, const Names&... names) {
  register_options(name, form_of<ForecastOptions>());
  module.def(
      name,
      [ask, name](const Process& process, const std::string& stage, const Duration& ready_h, const Extra&... extra,
                  const MaybeKitchen& kitchen, const MaybeState& state, std::size_t threads,
                  const py::kwargs& keywords) {
        const Wanted wanted{stage, hours_of(field::start_h, ready_h)};
        const ForecastOptions options = options_with<ForecastOptions>(name, keywords, threads);
        const Kitchen& its_kitchen = kitchen_or_default(kitchen);
        const py::gil_scoped_release release;
        return ask(process, wanted, extra..., its_kitchen, state, options);
      },
      "process"_a, py::kw_only(), "stage"_a, "ready_h"_a, names..., "kitchen"_a = py::none(), "state"_a = py::none(),
      "threads"_a = 0, doc);
}

void bind_choices(py::module_& module) {
  bind_form<Choice>(module)
      .def_property_readonly(
          "rounding_min", [](const Choice& c) { return hours(60 * (c.rounded_ready_h - c.ready_h)); },
          "minutes that rounding costs; None if it is never ready with it")
      .def("__repr__", Worded{"choice_text"}, py::prepend())
      .def("_repr_html_", Worded{"choice_html"});

  def_question<double>(
      module, "yeast_for", &yeast_for,
      R"(Yeast in all, g as weighed, with which a stage is ready at an hour (the median of its forecast): a Choice.

Every yeast of the mixes before the stage is changed by one factor, between 0.01 and 5 % as instant yeast. Args:
ready_h: h of the process or a timedelta. scale_g: g that the user's scale shows, 0.1 or 1; 0 does not round. state,
draws, heat_of_fermentation, seed, threads: as of forecast. Raises InvalidInput; NoSolution naming the hours
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
  bind_form<StageForecast>(module)
      .def("interval_h", &interval_of, "level"_a = 0.9,
           "The hours between which it is ready with a probability. Raises InvalidInput.")
      .def("share_ready", &share_ready, "time_h"_a,
           "Share of the doughs that are ready at an hour and not yet too late: past their highest acceptable rise or "
           "over-proofed. Raises InvalidInput.")
      .def("__repr__", Worded{"stage_forecast_text"}, py::prepend());
  bind_form<Forecast>(module)
      .def(
          "__getitem__", [](const Forecast& f, const std::string& name) { return stage_named(f.stages, name); },
          "name"_a, "The StageForecast of that name, such as forecast[\"bulk\"].")
      .def("__len__", [](const Forecast& f) { return f.stages.size(); })
      .def("__iter__", [](const Forecast& f) { return py::iter(py::cast(f.stages)); })
      .def("to_frame", Framed{"forecast_frame"}, "The stages as a pandas DataFrame.")
      .def("__repr__", Worded{"forecast_text"}, py::prepend())
      .def("_repr_html_", Worded{"forecast_html"});

  register_options("forecast", form_of<ForecastOptions>());
  module.def(
      "forecast",
      [](const Process& process, const std::optional<Kitchen>& kitchen, const std::optional<State>& state,
         std::size_t threads, const py::kwargs& keywords) {
        const ForecastOptions options = options_with<ForecastOptions>("forecast", keywords, threads);
        const py::gil_scoped_release release;
        return forecast(process, kitchen_or_default(kitchen), state, options);
      },
      "process"_a, "kitchen"_a = py::none(), "state"_a = py::none(), py::kw_only(), "threads"_a = 0,
      R"(When each stage will be ready, with a window: a Forecast, the same every time.

Args: process: Process. kitchen: its covariance is the uncertainty, the prior's if it has none. state: to forecast from
the middle of the day. seen: of Sighting, what was seen of this dough, whose process is then the whole of it with the
hours at which its stages ended: the draws are weighted by it. draws: kitchens of Sobol's sequence. seed:
another one gives another set of draws. threads: that share the draws, 0 for those of the machine; the answer is the
same. In every draw each stage ends when it is ready, so one stage's uncertainty carries into the next. Acceptable
rises that a stage does not give are 75 to 150 % of its rise, 80 to 133 % for a final proof (common practice). Warmer
dough is ready some 7 to 10 % per °C sooner near dough temperature; but after a bulk of a fixed time a warmer room can
make the final proof longer: more of the sugars is spent. Times are in h. Raises as simulate for the kitchen's central
values: InvalidInput, OutsideModel. Source: model of this library; Joe & Kuo 2008.)");
  bind_form<NextLook>(module);
  register_options("next_look", form_of<ForecastOptions>());
  module.def(
      "next_look",
      [](const Process& process, const std::string& stage, const std::optional<Kitchen>& kitchen, std::size_t threads,
         const py::kwargs& keywords) {
        const auto options = options_with<ForecastOptions>("next_look", keywords, threads);
        const py::gil_scoped_release release;
        return next_look(process, stage, kitchen_or_default(kitchen), options);
      },
      "process"_a, "stage"_a = "", "kitchen"_a = py::none(), py::kw_only(), "threads"_a = 0,
      R"(The look that would narrow a forecast most while there is still time to act on it: a NextLook.

The earliest look at the first stage that ends by a rise which tells four fifths of what its end would tell of ln time
to `stage`, the last one if not given. Hours are h of the process. Args: kitchen, seen, draws, heat_of_fermentation,
seed, threads: as of forecast. Raises as forecast: InvalidInput, NoSolution, OutsideModel. Source: linear-Gaussian value
of information, from the draws.)");
  register_options("draws_of", form_of<ForecastOptions>());
  module.def(
      "draws_of",
      [](const std::optional<Kitchen>& kitchen, const py::kwargs& keywords) {
        return draws_of(kitchen_or_default(kitchen), options_from<ForecastOptions>("draws_of", keywords));
      },
      "kitchen"_a = py::none(),
      R"(The kitchens that a forecast draws: a list of Kitchen, the same every time.

The kitchen's covariance moves its parameters, its bake_sd and model_sd the gassing rate once more. Raises InvalidInput.
Source: Sobol's sequence, Joe & Kuo 2008.)");
  bind_choices(module);
}
