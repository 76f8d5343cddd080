// Value structs in Python: built from keywords, read by attribute, compared, copied with changes, shown.
#pragma once

#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <string>

#include <ferment/base/field.hpp>

#include "numbers.hpp"

/// One time: a number of hours or a timedelta.
struct Duration {
  py::object object;
};
namespace pybind11::detail {
template <>
struct type_caster<Duration> : argument_caster<Duration> {
  static constexpr auto name = const_name("float | datetime.timedelta");
};
}  // namespace pybind11::detail

/// Hours of a duration; the field names the input in messages. Throws InvalidInput unless it is one number.
double hours_of(const ferment::Field& field, const Duration& argument);

/// Adds to_dict, replace, ==, hash, repr and pickling to a class whose constructor takes these attributes as keywords,
/// of which the first `required` must be given; repr leaves out others that are as in Value{}.
template <class Value>
void add_value_methods(py::class_<Value>& cls, std::size_t required, const std::vector<std::string>& names,
                       bool with_dict = true) {
  const auto keywords = [names](const py::object& self) {
    Document values;
    for (const std::string& name : names) values[py::str(name)] = self.attr(name.c_str());
    return values;
  };
  py::dict defaults = keywords(py::cast(Value{}));
  for (std::size_t i = 0; i < required; ++i) defaults.attr("pop")(names[i]);
  const auto shown = [keywords, defaults](const py::object& self) {
    return py::cast<std::string>(
        py::module_::import("libferment._values").attr("shown")(self, keywords(self), defaults));
  };
  if (with_dict) {
    cls.def(
        "to_dict",
        [keywords](const py::object& self) {
          Document values;
          const py::object plain = py::module_::import("libferment._values").attr("plain");
          for (const auto& [name, value] : keywords(self)) values[name] = plain(value);
          return values;
        },
        "All attributes, with plain dicts and lists for values inside.");
  }
  cls.def(
         "replace",
         [keywords](const py::object& self, const py::KWArgs<py::object>& changes) {
           Document values = keywords(self);
           for (const auto& [name, value] : changes) values[name] = value;
           return py::cast<Value>(py::type::of<Value>()(**values));
         },
         "A copy with these attributes changed. Raises InvalidInput.")
      .def("__eq__",
           [keywords](const py::object& self, const py::object& other) {
             return py::type::of(self).is(py::type::of(other)) && keywords(self).equal(keywords(other));
           })
      .def("__hash__", [shown](const py::object& self) { return py::hash(py::str(shown(self))); })
      .def("__repr__", shown)
      .def("__reduce__", [keywords](const py::object& self) -> py::typing::Tuple<py::object, py::object> {
        const py::object rebuilt = py::module_::import("libferment._values").attr("rebuilt");
        return py::make_tuple(rebuilt, py::make_tuple(py::type::of(self), keywords(self)));
      });
}
