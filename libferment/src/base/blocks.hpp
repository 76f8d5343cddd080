// Broadcasting in C++: single values and arrays, handed out block by block as plain arrays.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>
#include <span>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/values.hpp>

namespace ferment {

/// Checks the bounds of an input and that it has one value or n.
inline void require_column(const Field& field, const Values& values, std::size_t n) {
  if (values.is_single()) return require(field, values[0]);
  if (values.size() != n) {
    throw InvalidInput(std::string(field.label) + " has " + std::to_string(values.size()) + " values where " +
                           std::to_string(n) + " are wanted",
                       {.path = std::string(field.name), .advice = "give one value for all or one for each"});
  }
  require(field, values);
}

/// One input, block by block: a single value is spread once, an array is passed through without a copy.
template <std::size_t Size>
class Column {
 public:
  /// n: how many scenarios the call has; no more values are filled than a block of it needs.
  Column(const Values& values, std::size_t n) : values_(values) {
    if (values.is_single()) std::fill_n(spread_.begin(), std::min(n, Size), values[0]);
  }
  const double* at(std::size_t start) const { return values_.is_single() ? spread_.data() : values_.data() + start; }

 private:
  Values values_;
  std::array<double, Size> spread_;
};

/// Calls work(start, count) for each block of n scenarios.
template <class Work>
void for_blocks(std::size_t n, std::size_t block, Work work) {
  for (std::size_t start = 0; start < n; start += block) work(start, std::min(block, n - start));
}

/// The frame of an array function: its own input is checked, and handed out block by block with those of the answer:
/// work(first, values, count).
template <std::size_t Size, class Work>
void for_column(const Field& field, const Values& values, std::size_t n, Work work) {
  require_column(field, values, n);
  const Column<Size> column(values, n);
  for_blocks(n, Size, [&](std::size_t first, std::size_t count) { work(first, column.at(first), count); });
}

/// The answer of one scenario: call(out) with room for one.
template <class Call>
double single(Call call) {
  double out = 0;
  call(std::span<double>(&out, 1));
  return out;
}

/// Answers that never come: the first one's index and how many there are.
struct Lost {
  std::size_t first = 0;
  std::size_t count = 0;
};
inline Lost lost_in(std::span<const double> hours) {
  constexpr double never = std::numeric_limits<double>::infinity();
  Lost lost;
  for (const double value : hours) lost.count += !(value < never);
  while (lost.count > 0 && hours[lost.first] < never) ++lost.first;
  return lost;
}

}  // namespace ferment
