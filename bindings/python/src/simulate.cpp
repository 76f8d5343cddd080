#include <pybind11/functional.h>
#include <pybind11/stl.h>

#include <ferment/base/error.hpp>
#include <ferment/process/simulate.hpp>

#include "form.hpp"
#include "numbers.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

using Optional = std::optional<double>;

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
      .def(
          "__getitem__", [](const Timeline& t, const std::string& name) { return stage_named(t.stages, name); },
          "name"_a, "The StageResult of that name, such as timeline[\"bulk\"].")
      .def("__len__", [](const Timeline& t) { return t.stages.size(); })
      .def("__iter__", [](const Timeline& t) { return py::iter(py::cast(t.stages)); })
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
  bind_form<Stage>(module, 1);
  bind_form<Process>(module, 1);
  bind_timeline(module);
  register_options("simulate", form_of<SimulateOptions>());
  module.def(
      "simulate",
      [](const Process& process, const std::optional<Kitchen>& kitchen, const std::optional<State>& state,
         const std::optional<std::function<void(std::size_t, std::size_t, double)>>& progress,
         const py::kwargs& keywords) {
        auto options = options_from<SimulateOptions>("simulate", keywords);
        options.interrupt = Interrupt();
        if (progress) {
          options.progress = [&](const Progress& p) {
            const py::gil_scoped_acquire acquire;
            (*progress)(p.step, p.steps, p.time_h);
          };
        }
        const py::gil_scoped_release release;
        return simulate(process, kitchen_or_default(kitchen), state, options);
      },
      "process"_a, "kitchen"_a = py::none(), "state"_a = py::none(), py::kw_only(), "progress"_a = py::none(),
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
