#include "inputs.hpp"

#include <pybind11/stl.h>

#include <cmath>

#include "form.hpp"

namespace {

using ferment::Field;

std::string type_name(const py::object& object) { return py::cast<std::string>(py::type::of(object).attr("__name__")); }

std::string shape_text(const py::array& array) { return py::cast<std::string>(py::str(array.attr("shape"))); }

[[noreturn]] void refuse_type(const Field& field, const std::string& what) {
  const std::string unit = field.unit.empty() ? "" : " in " + std::string(field.unit);
  std::string advice;
  if (field.quantity == ferment::Quantity::temperature) advice = "for °F pass celsius(...)";
  if (what.find("datetime64") != std::string::npos)
    advice = "give the hours since the first: (column - column[0]) / numpy.timedelta64(1, 'h')";
  throw ferment::InvalidInput(std::string(field.label) + " must be a number" + unit + ", or an array of numbers; got " +
                                  what,
                              {.path = std::string(field.name), .advice = advice});
}

bool is_timedelta(const py::object& object) {
  return py::isinstance(object, py::module_::import("datetime").attr("timedelta"));
}

}  // namespace

Inputs& Inputs::read(const Field& field, const py::object& argument) {
  Input& input = inputs_.at(count_++);
  input.name = field.name;
  if (PyFloat_Check(argument.ptr()) || (PyLong_Check(argument.ptr()) && !PyBool_Check(argument.ptr()))) {
    input.number = PyFloat_AsDouble(argument.ptr());
    if (input.number == -1 && PyErr_Occurred() != nullptr) {
      PyErr_Clear();
      refuse_type(field, "an integer too large for a number");
    }
    return *this;
  }
  if (Py_TYPE(argument.ptr()) == py::detail::npy_api::get().PyArray_Type_ && py::isinstance<Array>(argument) &&
      py::reinterpret_borrow<py::array>(argument).ndim() > 0) {  // the usual array, without a detour
    input.array = py::reinterpret_borrow<Array>(argument);
    return *this;
  }
  if (argument.is_none()) refuse_type(field, "None");
  if (PyBool_Check(argument.ptr()) || PyUnicode_Check(argument.ptr()) || PyBytes_Check(argument.ptr())) {
    refuse_type(field, type_name(argument) + " " + py::cast<std::string>(py::repr(argument)));
  }
  if (is_timedelta(argument)) {
    if (field.quantity != ferment::Quantity::duration) refuse_type(field, "a timedelta");
    input.number = py::cast<double>(argument.attr("total_seconds")()) / 3600;
    return *this;
  }
  py::object as_array;
  try {
    const py::tuple taken = py::module_::import("libferment._columns").attr("taken")(argument);
    as_array = taken[0];
    if (!py::object(taken[1]).is_none()) masks_.emplace_back(count_ - 1, taken[1]);
    if (py::cast<bool>(taken[2])) alike_.push_back(argument);
  } catch (const py::error_already_set&) {
    refuse_type(field, type_name(argument));
  }
  const std::string kind = py::cast<std::string>(as_array.attr("dtype").attr("kind"));
  if (kind == "m" && field.quantity == ferment::Quantity::duration) {
    as_array = as_array / py::module_::import("numpy").attr("timedelta64")(1, "h");
  } else if (kind != "f" && kind != "i" && kind != "u") {
    refuse_type(field, type_name(argument) + " of " + py::cast<std::string>(py::str(as_array.attr("dtype"))));
  }
  Array array(as_array);
  if (array.ndim() == 0) {
    input.number = *array.data();
  } else {
    input.array = std::move(array);
  }
  return *this;
}

void Inputs::broadcast() {
  for (const Input& input : inputs()) {
    if (!input.array) continue;
    const auto rank = static_cast<std::size_t>(input.array->ndim());
    if (rank > shape_.size()) shape_.insert(shape_.begin(), rank - shape_.size(), 1);
    for (std::size_t axis = 0; axis < rank; ++axis) {
      const py::ssize_t length = input.array->shape(static_cast<py::ssize_t>(rank - 1 - axis));
      py::ssize_t& common = shape_[shape_.size() - 1 - axis];
      if (common == 1) {
        common = length;
      } else if (length != 1 && length != common) {
        std::string shapes;
        for (const Input& other : inputs()) {
          if (other.array)
            shapes.append(shapes.empty() ? "" : ", ").append(other.name).append(" ").append(shape_text(*other.array));
        }
        throw ferment::InvalidInput("these arrays do not broadcast together: " + shapes,
                                    {.path = std::string(input.name),
                                     .advice = "give arrays of one shape, or of shapes that NumPy broadcasts"});
      }
    }
  }
  for (std::size_t i = 0; i < count_; ++i) {
    Input& input = inputs_[i];
    if (!input.array) {
      values_[i] = input.number;
      continue;
    }
    if (!std::equal(shape_.begin(), shape_.end(), input.array->shape(), input.array->shape() + input.array->ndim())) {
      input.array =
          Array(py::object(py::module_::import("numpy").attr("broadcast_to")(*input.array, py::cast(shape_))));
    }
    values_[i] = std::span<const double>(input.array->data(), static_cast<std::size_t>(input.array->size()));
  }
  find_left_out();
}

Inputs& Inputs::missing(const std::string& policy) {
  if (policy != "raise" && policy != "nan") {
    throw ferment::InvalidInput("missing \"" + policy + "\" is unknown",
                                {.path = "missing", .advice = "known: raise, nan"});
  }
  pass_nan_ = policy == "nan";
  return *this;
}

void Inputs::find_left_out() {
  if (shape_.empty() || (masks_.empty() && !pass_nan_)) return;
  std::vector<bool> left_out(static_cast<std::size_t>(py::array_t<double>(shape_).size()), false);
  const py::object broadcast_to = py::module_::import("numpy").attr("broadcast_to");
  for (const auto& [input, mask] : masks_) {
    const py::array_t<bool, py::array::c_style | py::array::forcecast> whole(
        py::object(broadcast_to(mask, py::cast(shape_))));
    for (std::size_t i = 0; i < left_out.size(); ++i) left_out[i] = left_out[i] || whole.data()[i];
  }
  for (std::size_t i = 0; pass_nan_ && i < count_; ++i) {
    if (values_[i].is_single()) continue;
    for (std::size_t k = 0; k < left_out.size(); ++k) left_out[k] = left_out[k] || std::isnan(values_[i][k]);
  }
  if (std::find(left_out.begin(), left_out.end(), true) != left_out.end()) left_out_ = std::move(left_out);
}

void Inputs::throw_of_all(const ferment::Error& error, const std::vector<std::size_t>& kept, std::size_t size) {
  ferment::ErrorDetail detail = error.detail();
  if (detail.index) {
    detail.index = kept.at(*detail.index);
    detail.size = size;
  }
  ferment::throw_error(error.status(), error.problem(), std::move(detail));
}

Answer Inputs::given_back(py::array_t<double> result) const {
  if (alike_.empty()) return {std::move(result)};
  py::array_t<bool> mask(shape_);
  for (std::size_t i = 0; i < static_cast<std::size_t>(mask.size()); ++i)
    mask.mutable_data()[i] = !left_out_.empty() && left_out_[i];
  return {py::module_::import("libferment._columns").attr("given_back")(result, py::cast(alike_), mask)};
}

void throw_at(const ferment::Error& error, const ferment::Values& values, std::size_t first, std::size_t count) {
  ferment::ErrorDetail detail = error.detail();
  if (!values.is_single()) {
    detail.index = first;
    detail.count = count;
    detail.size = values.size();
  }
  ferment::throw_error(error.status(), error.problem(), std::move(detail));
}

namespace {

std::vector<double> as_column(Inputs& inputs) {
  std::vector<double> column;
  inputs.run([&](std::span<const ferment::Values> in, std::span<double> out) {
    for (std::size_t i = 0; i < out.size(); ++i) column.push_back(out[i] = in[0][i]);
  });
  return column;
}

}  // namespace

std::vector<double> column_of(const Field& field, const Number& argument) {
  return as_column(Inputs().add(field, argument));
}
std::vector<double> column_of(const Field& field, const Time& argument) {
  return as_column(Inputs().add(field, argument));
}

std::string short_number(double value) { return py::cast<std::string>(py::str("{:.4g}").attr("format")(value)); }

namespace {

/// Hours of a time of day, for a moment on the hour axis, which alone may be negative; none of anything else.
std::optional<double> hours_of_day(const Field& field, const py::object& object) {
  if (!(field.low < 0) || !py::isinstance(object, py::module_::import("datetime").attr("time"))) return std::nullopt;
  return py::cast<double>(object.attr("hour")) + py::cast<double>(object.attr("minute")) / 60 +
         py::cast<double>(object.attr("second")) / 3600;
}

}  // namespace

double hours_of(const Field& field, const Duration& argument) {
  if (const auto hours = hours_of_day(field, argument.object)) return *hours;
  const Answer hours =
      Inputs().add(field, Time{argument.object}).run([](std::span<const ferment::Values> in, std::span<double> out) {
        for (std::size_t i = 0; i < out.size(); ++i) out[i] = in[0][i];
      });
  if (!PyFloat_Check(hours.object.ptr())) {
    throw ferment::InvalidInput(std::string(field.label) +
                                    " must be one number of hours or one timedelta, not an array",
                                {.path = std::string(field.name)});
  }
  return PyFloat_AsDouble(hours.object.ptr());
}

const ferment::Kitchen& kitchen_or_default(const std::optional<ferment::Kitchen>& kitchen) {
  static const ferment::Kitchen standard;
  return kitchen ? *kitchen : standard;
}
