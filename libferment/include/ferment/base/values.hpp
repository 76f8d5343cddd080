// One number for all scenarios, or one number for each: how array functions take their inputs.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/given.hpp>
#include <ferment/base/names.hpp>

namespace ferment {

/// A view: one value repeated, or a span. Does not own; the numbers must outlive the call.
class Values {
 public:
  constexpr Values(double value) : value_(value) {}  // NOLINT(google-explicit-constructor)
  constexpr Values(Given value) : value_(value) {}   // NOLINT(google-explicit-constructor)
  constexpr Values(std::span<const double> values)
      : single_(false), data_(values.data()), size_(values.size()) {}                     // NOLINT
  Values(const std::vector<double>& values) : Values(std::span<const double>(values)) {}  // NOLINT

  /// True if the same value serves every scenario.
  constexpr bool is_single() const { return single_; }
  /// 1 for a single value, else the length.
  constexpr std::size_t size() const { return size_; }
  constexpr double operator[](std::size_t i) const { return single_ ? value_ : data_[i]; }
  constexpr const double* data() const { return single_ ? &value_ : data_; }

 private:
  bool single_ = true;
  const double* data_ = nullptr;
  std::size_t size_ = 1;
  double value_ = 0;
};

/// What to do about an hour that never comes: an error, or an infinite number in its place.
enum class Unreachable { raise, infinity };

template <>
FERMENT_API const Names& names_of<Unreachable>();

}  // namespace ferment
