#include <pybind11/stl.h>

#include <cmath>

#include <ferment/dough/state.hpp>
#include <ferment/process/simulate.hpp>

#include "form.hpp"
#include "rooms.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

void bind_parts(py::module_& module) {
  bind_form<Amounts>(module);
  bind_form<Cohort>(module);
  bind_form<StageProgress>(module);
  bind_form<Shell>(module);
}

/// A number of all of the dough.
template <class Number>
auto of_whole(Number number) {
  return [number](const State& state) { return number(whole_of(state)); };
}

}  // namespace

void bind_state(py::module_& module) {
  bind_parts(module);
  bind_form<State>(module)
      .def_property_readonly("temperature_c", of_whole([](const Shell& s) { return s.temperature_c; }),
                             "°C, mean of the dough. Raises InvalidInput without one.")
      .def_property_readonly("equivalent_h", of_whole([](const Shell& s) { return s.equivalent_h; }),
                             "equivalent hours since the first yeast met flour and water. Raises InvalidInput")
      .def_property_readonly("made_mmol", of_whole([](const Shell& s) { return s.made_mmol; }),
                             "CO2 made of the sugars in the dough, mmol per 100 g of flour. Raises InvalidInput")
      .def_property_readonly("co2_mmol", of_whole([](const Shell& s) { return s.gas.co2_mmol; }),
                             "CO2 held, mmol per 100 g of flour. Raises InvalidInput")
      .def_property_readonly("air_mmol", of_whole([](const Shell& s) { return s.gas.air_mmol; }),
                             "air in the cells, mmol per 100 g of flour. Raises InvalidInput")
      .def(
          "volume_ratio",
          [](const State& s, const std::optional<Kitchen>& kitchen) {
            return volume_ratio(s, kitchen_or_default(kitchen));
          },
          "kitchen"_a = py::none(), "Volume over the volume just after mixing. Raises InvalidInput without a dough.")
      .def("part", &part_of, "mass_g"_a,
           "A part of the dough, g: the same dough, less of it. Raises InvalidInput if it weighs less.")
      .def("as_beginning", &as_beginning,
           "The state as the beginning of another process. Raises InvalidInput in the middle of a stage.");
}
