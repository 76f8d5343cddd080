// What each room of the library adds to the module.
#pragma once

#include <pybind11/pybind11.h>

namespace py = pybind11;

void bind_laws(py::module_& module);
void bind_base(py::module_& module);
void bind_dough(py::module_& module);
void bind_clock(py::module_& module);
void bind_heat(py::module_& module);
void bind_piece(py::module_& module);
void bind_state(py::module_& module);
void bind_mix(py::module_& module);
void bind_simulate(py::module_& module);
void bind_forecast(py::module_& module);
void bind_learn(py::module_& module);
void bind_day(py::module_& module);
