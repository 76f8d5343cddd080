// The inputs of a function that broadcasts: read in order, brought to one shape, worked off, given back in kind.
#pragma once

#include <pybind11/numpy.h>

#include <algorithm>
#include <array>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/base/values.hpp>

#include "arguments.hpp"
#include "interrupt.hpp"

/// Reads the arguments of a broadcasting function, in order, and gives them to it as Values.
class Inputs {
 public:
  Inputs& add(const ferment::Field& field, const Number& argument) { return read(field, argument.object); }
  Inputs& add(const ferment::Field& field, const Time& argument) { return read(field, argument.object); }

  /// "raise", or "nan": where an input is not a number the answer is none either.
  Inputs& missing(const std::string& policy);

  /// work(values, out): values in the order of add, out one value per scenario. Runs without the GIL when long.
  template <class Work>
  Answer run(Work work) {
    broadcast();
    if (!left_out_.empty()) return run_some(work);
    if (shape_.empty()) {
      double out = 0;
      work(values(), std::span<double>(&out, 1));
      return {py::float_(out)};
    }
    py::array_t<double> result(shape_);
    const std::span<double> out(result.mutable_data(), static_cast<std::size_t>(result.size()));
    if (out.size() > without_gil) {
      const py::gil_scoped_release release;
      in_parts(work, out);
    } else {
      work(values(), out);
    }
    return given_back(std::move(result));
  }

 private:
  using Array = py::array_t<double, py::array::c_style | py::array::forcecast>;
  static constexpr std::size_t without_gil = 1000;  // some 50 µs of work: below that the switch costs more
  static constexpr std::size_t one_part = 1 << 19;  // some 20 ms

  /// The scenarios that are not left out; the others are not looked at, and their answer is not a number.
  template <class Work>
  Answer run_some(Work work) {
    std::vector<std::size_t> kept;
    for (std::size_t i = 0; i < left_out_.size(); ++i) {
      if (!left_out_[i]) kept.push_back(i);
    }
    std::array<std::vector<double>, most_inputs> columns;
    std::array<ferment::Values, most_inputs> some = values_;
    for (std::size_t i = 0; i < count_; ++i) {
      if (values_[i].is_single()) continue;
      for (const std::size_t k : kept) columns[i].push_back(values_[i][k]);
      some[i] = std::span<const double>(columns[i]);
    }
    std::vector<double> answers(kept.size());
    try {
      work(std::span<const ferment::Values>(some).first(count_), std::span<double>(answers));
    } catch (const ferment::Error& error) {
      throw_of_all(error, kept, left_out_.size());
    }
    py::array_t<double> result(shape_);
    double* const all = result.mutable_data();
    std::fill_n(all, left_out_.size(), std::numeric_limits<double>::quiet_NaN());
    for (std::size_t k = 0; k < kept.size(); ++k) all[kept[k]] = answers[k];
    return given_back(std::move(result));
  }

  [[noreturn]] static void throw_of_all(const ferment::Error& error, const std::vector<std::size_t>& kept,
                                        std::size_t size);
  Answer given_back(py::array_t<double> result) const;

  /// A long array part by part, with a look for signals in between. An error is that of the whole: it counts all that
  /// offend.
  template <class Work>
  void in_parts(Work work, std::span<double> out) {
    if (out.size() <= one_part) return work(values(), out);
    const Interrupt interrupt;
    std::array<ferment::Values, most_inputs> part = values_;
    try {
      for (std::size_t first = 0; first < out.size(); first += one_part) {
        const std::size_t n = std::min(one_part, out.size() - first);
        for (std::size_t i = 0; i < count_; ++i) {
          if (!values_[i].is_single()) part[i] = std::span<const double>(values_[i].data() + first, n);
        }
        work(std::span<const ferment::Values>(part).first(count_), out.subspan(first, n));
        interrupt();
      }
    } catch (const ferment::Error&) {
      work(values(), out);
      throw;
    }
  }

  Inputs& read(const ferment::Field& field, const py::object& argument);
  void broadcast();
  void find_left_out();

  struct Input {
    std::string_view name = {};
    double number = 0;
    std::optional<Array> array;  ///< or nothing where the input is a number
  };
  std::span<Input> inputs() { return std::span(inputs_).first(count_); }
  std::span<const ferment::Values> values() const { return std::span(values_).first(count_); }

  // In place: a call with numbers alone asks for no memory.
  static constexpr std::size_t most_inputs = 8;
  std::array<Input, most_inputs> inputs_ = {};
  std::array<ferment::Values, most_inputs> values_{0, 0, 0, 0, 0, 0, 0, 0};
  std::size_t count_ = 0;
  std::vector<py::ssize_t> shape_;
  // Of columns that are more than numbers: masked, or of a kind that the answer takes after.
  bool pass_nan_ = false;
  std::vector<py::object> alike_;
  std::vector<std::pair<std::size_t, py::object>> masks_;  ///< of an input
  std::vector<bool> left_out_;
};

/// Throws the error again with its index in an array.
[[noreturn]] void throw_at(const ferment::Error& error, const ferment::Values& values, std::size_t first,
                           std::size_t count);

/// out[i] = of(i) for all scenarios; an error names the first index and how many fail, with the first one's words.
template <class Of>
void for_each_scenario(std::span<const ferment::Values> in, std::span<double> out, Of of) {
  const auto many = std::find_if(in.begin(), in.end(), [](const ferment::Values& v) { return !v.is_single(); });
  const ferment::Values& values = many == in.end() ? in.front() : *many;
  std::optional<ferment::Error> error;
  std::size_t first = 0;
  std::size_t count = 0;
  for (std::size_t i = 0; i < out.size(); ++i) {
    try {
      out[i] = of(i);
    } catch (const ferment::Error& problem) {
      if (count++ > 0) continue;
      first = i;
      error = problem;
    }
  }
  if (error) throw_at(*error, values, first, count);
}

/// The same of one input: out[i] = of(values[i]).
template <class Of>
void for_each_value(const ferment::Values& values, std::span<double> out, Of of) {
  for_each_scenario(std::span(&values, 1), out, [&](std::size_t i) { return of(values[i]); });
}
