// Value structs in Python: built from keywords, read by attribute, compared, copied with changes, shown.
#pragma once

#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <string>

#include <ferment/base/field.hpp>

#include "numbers.hpp"

/// Hours from a number or a timedelta; the field names the input in messages.
double hours_of(const ferment::Field& field, const Time& argument);

/// Adds to_dict, replace, ==, repr and pickling to a class whose constructor takes these attributes as keywords; repr leaves
/// out what is at its default.
template <class Class>
void add_value_methods(Class& cls, const std::vector<std::string>& names, const py::dict& defaults = {}) {
  const auto keywords = [names](const py::object& self) {
    Document values;
    for (const std::string& name : names) values[py::str(name)] = self.attr(name.c_str());
    return values;
  };
  cls.def("to_dict",
          [keywords](const py::object& self) {
            Document values;
            const py::object plain = py::module_::import("libferment._values").attr("plain");
            for (const auto& [name, value] : keywords(self)) values[name] = plain(value);
            return values;
          })
      .def(
          "replace",
          [keywords](const py::object& self, const py::kwargs& changes) {
            Document values = keywords(self);
            for (const auto& [name, value] : changes) values[name] = value;
            return py::type::of(self)(**values);
          },
          "A copy with these attributes changed. Raises InvalidInput.")
      .def("__eq__",
           [keywords](const py::object& self, const py::object& other) {
             return py::type::of(self).is(py::type::of(other)) && keywords(self).equal(keywords(other));
           })
      .def("__repr__", [keywords, defaults](const py::object& self) {
        return py::cast<std::string>(py::module_::import("libferment._values").attr("shown")(self, keywords(self), defaults));
      });
  cls.attr("__hash__") = py::none();
  cls.def("__reduce__", [keywords](const py::object& self) {
    return py::make_tuple(py::module_::import("libferment._values").attr("rebuilt"), py::make_tuple(py::type::of(self), keywords(self)));
  });
}
