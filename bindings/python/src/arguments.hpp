// Arguments as Python gives them: plain numbers, NumPy arrays, pandas series, lists, timedeltas; kitchens or none.
#pragma once

#include <pybind11/pybind11.h>
#include <pybind11/typing.h>

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <ferment/base/field.hpp>
#include <ferment/base/parameters.hpp>

namespace py = pybind11;

/// An argument that is a number, or anything NumPy makes an array of numbers of. Read it with `Inputs`.
struct Number {
  py::object object;
};

/// The same for times, which may also be a datetime.timedelta.
struct Time {
  py::object object;
};

namespace pybind11::detail {

template <class Argument>
struct argument_caster {
  bool load(handle source, bool) {
    value.object = reinterpret_borrow<object>(source);
    return true;
  }
  static handle cast(const Argument& argument, return_value_policy, handle) { return argument.object.inc_ref(); }
  template <class>
  using cast_op_type = Argument&&;
  operator Argument&&() && { return std::move(value); }
  Argument value;
};

template <>
struct type_caster<Number> : argument_caster<Number> {
  static constexpr auto name = const_name("float | numpy.typing.ArrayLike");
};
template <>
struct type_caster<Time> : argument_caster<Time> {
  static constexpr auto name = const_name("float | datetime.timedelta | numpy.typing.ArrayLike");
};

}  // namespace pybind11::detail

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

/// What comes back: a number if all inputs were numbers, else an array.
struct Answer {
  py::object object;
};
namespace pybind11::detail {
template <>
struct type_caster<Answer> {
  static handle cast(const Answer& answer, return_value_policy, handle) { return answer.object.inc_ref(); }
  static constexpr auto name = const_name("typing.Any");
};
}  // namespace pybind11::detail

using Document = py::typing::Dict<py::str, py::object>;
using NumbersByName = py::typing::Dict<py::str, py::float_>;

/// A list, array or series as a column of numbers. Throws InvalidInput if it is not one.
std::vector<double> column_of(const ferment::Field& field, const Number& argument);
std::vector<double> column_of(const ferment::Field& field, const Time& argument);

/// Hours of a duration, or one number; the field names the input in messages. Throws InvalidInput unless it is one.
double hours_of(const ferment::Field& field, const Duration& argument);

/// A number with at most four digits, for texts.
std::string short_number(double value);

/// The parameters of `kitchen=None`: the default set.
const ferment::Kitchen& kitchen_or_default(const std::optional<ferment::Kitchen>& kitchen);
