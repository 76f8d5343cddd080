// One number for all scenarios, or one number for each: how array functions take their inputs.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace ferment {

/// A view: one value repeated, or a span. Does not own; the numbers must outlive the call.
class Values {
 public:
  constexpr Values(double value) : single_(value) {}                                  // NOLINT(google-explicit-constructor)
  constexpr Values(std::span<const double> values) : data_(values.data()), size_(values.size()) {}  // NOLINT
  Values(const std::vector<double>& values) : Values(std::span<const double>(values)) {}            // NOLINT

  /// True if the same value serves every scenario.
  constexpr bool is_single() const { return data_ == nullptr; }
  /// 1 for a single value, else the length.
  constexpr std::size_t size() const { return is_single() ? 1 : size_; }
  constexpr double operator[](std::size_t i) const { return is_single() ? single_ : data_[i]; }
  constexpr const double* data() const { return is_single() ? &single_ : data_; }

 private:
  const double* data_ = nullptr;
  std::size_t size_ = 1;
  double single_ = 0;
};

}  // namespace ferment
