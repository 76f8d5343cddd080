#include <pybind11/functional.h>
#include <pybind11/stl.h>

#include <ferment/base/error.hpp>
#include <ferment/process/simulate.hpp>

#include "numbers.hpp"
#include "values.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

using Optional = std::optional<double>;
using Range = std::optional<std::pair<double, double>>;

Standing standing_named(const std::string& name) {
  if (name == "tin") return Standing::tin;
  if (name == "free") return Standing::free;
  throw InvalidInput("standing \"" + name + "\" is unknown",
                     {.path = "standing", .advice = "write \"tin\" (also for a tub) or \"free\""});
}

std::variant<UntilTime, UntilRise> end_of(const std::optional<Duration>& until_h, Optional until_rise_percent) {
  if (until_h.has_value() == until_rise_percent.has_value()) {
    throw InvalidInput("a stage ends by until_h or by until_rise_percent, one of the two", {.path = "until_h"});
  }
  if (until_h) return UntilTime{hours_of(field::until_h, *until_h)};
  return UntilRise{*until_rise_percent};
}

void bind_stage(py::module_& module) {
  py::class_<Stage> stage(
      module, "Stage", R"(Time passes in some surroundings until a time or a rise, then the dough is handled. A value.

Args: name. piece: Piece, all of the dough in a tub if not given. surroundings: Surroundings. until_h: h from the
stage's start, or a timedelta; or until_rise_percent: volume gained since then, %. folds_h: list of h from the stage's
start. handling: list of "fold", "divide", "round", "mould", what ends the stage. standing: "tin" (also a tub) or
"free", and final_proof: for the over-proof limit. acceptable_rise_percent: (lowest, highest), %. Raises
InvalidInput.)");
  stage
      .def(py::init([](const std::string& name, const Piece& piece, const Surroundings& surroundings,
                       const std::optional<Duration>& until_h, Optional until_rise_percent,
                       const std::vector<double>& folds_h, const std::vector<std::string>& handling,
                       const std::string& standing, bool final_proof, const Range& acceptable_rise_percent) {
             Stage made{.name = name,
                        .piece = piece,
                        .surroundings = surroundings,
                        .until = end_of(until_h, until_rise_percent),
                        .folds_h = folds_h,
                        .handling = {},
                        .standing = standing_named(standing),
                        .final_proof = final_proof,
                        .acceptable_rise_percent = acceptable_rise_percent};
             for (const std::string& action : handling) made.handling.push_back(handling_named(action));
             require_stage(made);
             return made;
           }),
           "name"_a, py::kw_only(), "piece"_a = Piece{}, "surroundings"_a, "until_h"_a = py::none(),
           "until_rise_percent"_a = py::none(), "folds_h"_a = std::vector<double>{},
           "handling"_a = std::vector<std::string>{}, "standing"_a = "tin", "final_proof"_a = false,
           "acceptable_rise_percent"_a = py::none())
      .def_readonly("name", &Stage::name)
      .def_readonly("piece", &Stage::piece)
      .def_readonly("surroundings", &Stage::surroundings)
      .def_property_readonly("until_h",
                             [](const Stage& s) {
                               const auto* time = std::get_if<UntilTime>(&s.until);
                               return time != nullptr ? Optional(time->hours) : std::nullopt;
                             })
      .def_property_readonly("until_rise_percent",
                             [](const Stage& s) {
                               const auto* rise = std::get_if<UntilRise>(&s.until);
                               return rise != nullptr ? Optional(rise->rise_percent) : std::nullopt;
                             })
      .def_readonly("folds_h", &Stage::folds_h)
      .def_property_readonly("handling",
                             [](const Stage& s) {
                               std::vector<std::string> names;
                               for (const Handling handling : s.handling) names.emplace_back(name_of(handling));
                               return names;
                             })
      .def_property_readonly("standing",
                             [](const Stage& s) -> std::string { return s.standing == Standing::tin ? "tin" : "free"; })
      .def_readonly("final_proof", &Stage::final_proof)
      .def_readonly("acceptable_rise_percent", &Stage::acceptable_rise_percent);
  add_value_methods(stage, 3,
                    {"name", "surroundings", "until_h", "piece", "until_rise_percent", "folds_h", "handling",
                     "standing", "final_proof", "acceptable_rise_percent"});

  py::class_<Process> process(module, "Process", R"(What happens to a dough, step after step. A value.

Args: steps: list of Mix and Stage. start_h: h, of the hour axis: 0, or the hour of the day it begins. altitude_m: m,
of the kitchen. Checked when it is simulated.)");
  process
      .def(py::init([](std::vector<Step> steps, double start_h, double altitude_m) {
             return Process{std::move(steps), start_h, altitude_m};
           }),
           "steps"_a, py::kw_only(), "start_h"_a = 0.0, "altitude_m"_a = 0.0)
      .def_readonly("steps", &Process::steps)
      .def_readonly("start_h", &Process::start_h)
      .def_readonly("altitude_m", &Process::altitude_m);
  add_value_methods(process, 1, {"steps", "start_h", "altitude_m"});
}

Document to_dict(const StageResult& r) {
  return Document("name"_a = r.name, "start_h"_a = r.start_h, "end_h"_a = r.end_h, "start_c"_a = r.start_c,
                  "end_c"_a = r.end_c, "rise_percent"_a = r.rise_percent, "equivalent_h"_a = r.equivalent_h,
                  "folds_done"_a = r.folds_done, "be_back_by_h"_a = r.be_back_by_h,
                  "time_constant_h"_a = r.time_constant_h, "heat_made_j"_a = r.heat_made_j,
                  "heat_lost_j"_a = r.heat_lost_j, "ended"_a = r.ended);
}

py::array_t<double> column(const std::vector<double>& values) {
  return py::array_t<double>(static_cast<py::ssize_t>(values.size()), values.data());
}

struct TimelineColumn {
  const char* name;
  std::vector<double> Timeline::*member;
  const char* doc;
};

constexpr std::array timeline_columns{
    TimelineColumn{"time_h", &Timeline::time_h, "h of the process"},
    TimelineColumn{"mean_c", &Timeline::mean_c, "°C, mean of the dough"},
    TimelineColumn{"core_c", &Timeline::core_c,
                   "°C in the middle, an estimate: a parabolic profile that settles after each change"},
    TimelineColumn{"surface_c", &Timeline::surface_c, "°C at the surface, an estimate for a settled profile"},
    TimelineColumn{"air_c", &Timeline::air_c, "°C of the surroundings; the dough's where that is given"},
    TimelineColumn{"equivalent_h", &Timeline::equivalent_h, "equivalent hours since the first yeast"},
    TimelineColumn{"co2_mmol", &Timeline::co2_mmol, "CO2 made, mmol per 100 g of flour"},
    TimelineColumn{"rise_percent", &Timeline::rise_percent, "%, since the start of the stage"},
};

Document columns_of(const Timeline& timeline) {
  Document columns;
  py::list names;
  for (const std::size_t place : timeline.stage) names.append(timeline.stages.at(place).name);
  columns["stage"] = names;
  for (const TimelineColumn& c : timeline_columns) columns[c.name] = column(timeline.*c.member);
  return columns;
}

Document to_dict(const Timeline& timeline) {
  Document values;
  for (const TimelineColumn& c : timeline_columns) values[c.name] = timeline.*c.member;
  py::list stages, notices;
  for (const StageResult& stage : timeline.stages) stages.append(to_dict(stage));
  for (const Notice& notice : timeline.notices) notices.append(py::cast(notice).attr("to_dict")());
  values["stage"] = timeline.stage;
  values["stages"] = stages;
  values["notices"] = notices;
  values["state"] = py::cast(timeline.state).attr("to_dict")();
  return values;
}

/// A text made by the package's Python part.
auto worded(const char* function) {
  return [function](const py::object& self) {
    return py::cast<std::string>(py::module_::import("libferment._values").attr(function)(self));
  };
}

void bind_timeline(py::module_& module) {
  py::class_<StageResult> result(module, "StageResult",
                                 R"(What a stage came to. Hours are of the process; rises are those before the handling.

be_back_by_h: when the dough is, or would be, over-proofed; None if not within 48 h of the stage's end.
time_constant_h: of the piece, None where the dough's temperature is given. heat_made_j, heat_lost_j: J per piece, by
fermentation and to the surroundings.)");
  result.def_readonly("name", &StageResult::name)
      .def_readonly("start_h", &StageResult::start_h)
      .def_readonly("end_h", &StageResult::end_h)
      .def_property_readonly("hours", [](const StageResult& r) { return r.end_h - r.start_h; })
      .def_readonly("start_c", &StageResult::start_c)
      .def_readonly("end_c", &StageResult::end_c)
      .def_readonly("rise_percent", &StageResult::rise_percent)
      .def_readonly("equivalent_h", &StageResult::equivalent_h)
      .def_readonly("folds_done", &StageResult::folds_done)
      .def_readonly("be_back_by_h", &StageResult::be_back_by_h)
      .def_readonly("time_constant_h", &StageResult::time_constant_h)
      .def_readonly("heat_made_j", &StageResult::heat_made_j)
      .def_readonly("heat_lost_j", &StageResult::heat_lost_j)
      .def_readonly("ended", &StageResult::ended, "False if the simulation stopped before its end.")
      .def("to_dict", [](const StageResult& r) { return to_dict(r); })
      .def("__repr__", worded("stage_result_text"));

  py::class_<Timeline> timeline(module, "Timeline", R"(What a process did, minute by minute.

Columns of one length, NumPy arrays: time_h, mean_c, core_c, surface_c, air_c, equivalent_h, co2_mmol, rise_percent,
and stage, the place in stages. stages: list of StageResult. state: the State at the end. notices: cautions, most
severe first.)");
  for (const TimelineColumn& c : timeline_columns) {
    timeline.def_property_readonly(
        c.name, [member = c.member](const Timeline& t) { return column(t.*member); }, c.doc);
  }
  timeline
      .def_property_readonly(
          "stage",
          [](const Timeline& t) {
            py::array_t<std::int64_t> places(static_cast<py::ssize_t>(t.stage.size()));
            std::copy(t.stage.begin(), t.stage.end(), places.mutable_data());
            return places;
          },
          "place of the stage in stages")
      .def_readonly("stages", &Timeline::stages)
      .def_readonly("state", &Timeline::state)
      .def_readonly("notices", &Timeline::notices)
      .def("to_dict", [](const Timeline& t) { return to_dict(t); })
      .def(
          "to_frame", [](const Timeline& t) { return py::module_::import("pandas").attr("DataFrame")(columns_of(t)); },
          "The columns as a pandas DataFrame, with the stages' names.")
      .def("__repr__", worded("timeline_text"))
      .def("_repr_html_", worded("timeline_html"));
}

}  // namespace

void bind_simulate(py::module_& module) {
  bind_stage(module);
  bind_timeline(module);
  module.def(
      "simulate",
      [](const Process& process, const std::optional<Kitchen>& kitchen, const std::optional<State>& state,
         bool heat_of_fermentation, double every_min, bool be_back_by, const std::optional<Duration>& stop_h,
         double tolerance, const std::optional<std::function<void(std::size_t, std::size_t, double)>>& progress) {
        SimulateOptions options{.heat_of_fermentation = heat_of_fermentation,
                                .every_min = every_min,
                                .be_back_by = be_back_by,
                                .stop_h = stop_h ? Optional(hours_of(field::start_h, *stop_h)) : std::nullopt,
                                .tolerance = tolerance,
                                .progress = {},
                                .interrupt = Interrupt()};
        if (progress) {
          options.progress = [&](const Progress& p) {
            const py::gil_scoped_acquire acquire;
            (*progress)(p.step, p.steps, p.time_h);
          };
        }
        const py::gil_scoped_release release;
        return simulate(process, kitchen_or_default(kitchen), state, options);
      },
      "process"_a, "kitchen"_a = py::none(), "state"_a = py::none(), py::kw_only(), "heat_of_fermentation"_a = true,
      "every_min"_a = 1.0, "be_back_by"_a = true, "stop_h"_a = py::none(), "tolerance"_a = SimulateOptions{}.tolerance,
      "progress"_a = py::none(),
      R"(Run a process through, or what a state has left of it: a Timeline.

Args: process: Process. state: State to go on from, also in the middle of a stage. every_min: grid of the timeline,
min; 0: starts and ends alone. be_back_by: follow each stage beyond its end to the over-proofed dough. stop_h: h of the
process at which to stop. tolerance: of the speeds along a step; the result is far closer. progress: called before each
step with its place, the number of steps and the hour; what it raises ends the simulation. Raises InvalidInput;
NoSolution for a rise that is never reached, with what it reaches and when; OutsideModel if the dough leaves -2 to 45
°C, with the hour. Source: one node of heat, the clock and the gas of this library's model; 50.7 kJ per mol CO2.)");
  module.def(
      "advance",
      [](const State& state, const Step& step, const std::optional<Kitchen>& kitchen) {
        const py::gil_scoped_release release;
        return advance(state, step, kitchen_or_default(kitchen), {.interrupt = Interrupt()});
      },
      "state"_a, "step"_a, py::kw_only(), "kitchen"_a = py::none(),
      R"(One step of a process: the State after it.

Args: state: State, State() to begin; its time is in h. step: Mix or Stage. Raises InvalidInput, NoSolution and
OutsideModel as simulate. Source: as simulate.)");
}
