// Where in an array an error is.
#pragma once

#include <cstddef>

#include <ferment/base/error.hpp>
#include <ferment/base/values.hpp>

namespace ferment {

/// The first offending index and how many offend, unless all scenarios share a single value.
inline void add_index(ErrorDetail& detail, const Values& values, std::size_t first, std::size_t count) {
  if (values.is_single()) return;
  detail.index = first;
  detail.count = count;
  detail.size = values.size();
}

}  // namespace ferment
