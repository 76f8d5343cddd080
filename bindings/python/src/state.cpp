#include <pybind11/stl.h>

#include <cmath>

#include <ferment/dough/state.hpp>
#include <ferment/process/simulate.hpp>

#include "form.hpp"
#include "numbers.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

void bind_parts(py::module_& module) {
  bind_form<Amounts>(module);
  bind_form<Cohort>(module);
  bind_form<StageProgress>(module);
}

}  // namespace

void bind_state(py::module_& module) {
  bind_parts(module);
  bind_form<State>(module)
      .def(
          "volume_ratio",
          [](const State& s, const std::optional<Kitchen>& kitchen) {
            return volume_ratio(s, kitchen_or_default(kitchen));
          },
          "kitchen"_a = py::none(), "Volume over the volume just after mixing. Raises InvalidInput without a dough.")
      .def("part", &part_of, "mass_g"_a,
           "A part of the dough, g: the same dough, less of it. Raises InvalidInput if it weighs less.")
      .def("as_beginning", &as_beginning,
           "The state as the beginning of another process. Raises InvalidInput in the middle of a stage.")
      .def(
          "save",
          [](const py::object& self, const py::object& path) {
            py::module_::import("libferment._saved").attr("save_state")(self, path);
          },
          "path"_a,
          "Write the state to a file, whole or not at all: JSON with a version. Raises InvalidInput if it cannot be "
          "written.")
      .def_static(
          "load",
          [](const py::object& path) {
            return py::cast<State>(py::module_::import("libferment._saved").attr("load_state")(path));
          },
          "path"_a,
          "Read a saved state, to the same digits. Raises InvalidInput if it is damaged, of another version, or no "
          "state.");
}
