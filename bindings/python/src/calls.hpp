// What becomes of the functions once all are bound: real signatures, and wrong calls in the library's own words.
#pragma once

#include <pybind11/pybind11.h>

namespace py = pybind11;

/// Gives every function and method of the module a signature that inspect and notebooks read, keeps the one with types
/// in `_signatures` for the stubs, and turns "incompatible function arguments" into InvalidInput.
void finish_calls(py::module_& module);
