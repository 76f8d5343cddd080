#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <ferment/version.h>
#include <ferment/base/error.hpp>

#include "calls.hpp"
#include "form.hpp"
#include "rooms.hpp"

namespace {

using namespace pybind11::literals;

const char* name_of(ferment::Status status) {
  switch (status) {
    case ferment::Status::invalid_input: return "InvalidInput";
    case ferment::Status::outside_model: return "OutsideModel";
    case ferment::Status::no_solution: return "NoSolution";
    case ferment::Status::not_converged: return "NotConverged";
    default: return "InternalError";
  }
}

const char* name_of(ferment::Meant meant) {
  switch (meant) {
    case ferment::Meant::fahrenheit: return "fahrenheit";
    case ferment::Meant::fahrenheit_difference: return "fahrenheit_difference";
    case ferment::Meant::as_given: break;
  }
  return "";
}

/// One of our errors as the Python exception of the same name, made of the same facts.
void raise_in_python(const ferment::Error& error) {
  const py::object type = py::module_::import("libferment._errors").attr(name_of(error.status()));
  const ferment::ErrorDetail& detail = error.detail();
  const py::object exception =
      type(error.problem(), "path"_a = detail.path, "value"_a = detail.value, "low"_a = detail.low,
           "high"_a = detail.high, "index"_a = detail.index, "count"_a = detail.count, "size"_a = detail.size,
           "ranges"_a = py::tuple(py::cast(detail.ranges)), "advice"_a = detail.advice,
           "meant"_a = name_of(detail.meant));
  PyErr_SetObject(type.ptr(), exception.ptr());
}

}  // namespace

PYBIND11_MODULE(_core, module) {
  module.doc() = "The compiled part of libferment; use `import libferment`.";
  module.attr("__version__") = FERMENT_VERSION;
  py::register_exception_translator([](std::exception_ptr pointer) {
    try {
      if (pointer) std::rethrow_exception(pointer);
    } catch (const ferment::Error& error) {
      raise_in_python(error);
    }
  });
  bind_laws(module);  // first: a kitchen's signature names them
  bind_base(module);
  bind_dough(module);
  bind_clock(module);
  bind_heat(module);
  bind_piece(module);
  bind_state(module);  // before a mix, which takes doughs
  bind_mix(module);
  bind_simulate(module);
  bind_forecast(module);
  bind_day(module);
  bind_learn(module);
  bind_forms(module);
  finish_calls(module);
}
