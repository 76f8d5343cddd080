// Tables whose rows have names.
#pragma once

#include <string>
#include <string_view>

#include <ferment/base/error.hpp>

namespace ferment {

/// The row of that name; the error lists the known ones.
template <class Table>
const auto& row_named(const Table& table, std::string_view name, const char* what, const char* path) {
  for (const auto& row : table) {
    if (row.name == name) return row;
  }
  std::string known;
  for (const auto& row : table) known.append(known.empty() ? "" : ", ").append(row.name);
  throw InvalidInput(std::string(what) + " \"" + std::string(name) + "\" is unknown",
                     {.path = path, .advice = "known: " + known});
}

}  // namespace ferment
