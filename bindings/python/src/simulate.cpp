#include <pybind11/functional.h>
#include <pybind11/stl.h>

#include <ferment/base/error.hpp>
#include <ferment/process/simulate.hpp>

#include "form.hpp"
#include "interrupt.hpp"
#include "rooms.hpp"
#include "stages.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

void bind_timeline(py::module_& module) {
  bind_form<StageResult>(module)
      .def_property_readonly(
          "hours", [](const StageResult& r) { return r.end_h - r.start_h; }, "from start to end, h")
      .def("__repr__", Worded{"stage_result_text"}, py::prepend());
  bind_form<Timeline>(module)
      .def(
          "__getitem__", [](const Timeline& t, const std::string& name) { return stage_named(t.stages, name); },
          "name"_a, "The StageResult of that name, such as timeline[\"bulk\"].")
      .def("__len__", [](const Timeline& t) { return t.stages.size(); })
      .def("__iter__", [](const Timeline& t) { return py::iter(py::cast(t.stages)); })
      .def("to_frame", Framed{"timeline_frame"}, "The columns as a pandas DataFrame, with the stages' names.")
      .def("__repr__", Worded{"timeline_text"}, py::prepend())
      .def("_repr_html_", Worded{"timeline_html"});
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
