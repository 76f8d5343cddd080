// The names of an enumeration, in one table: what messages, Python, documents and options call its values.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>

#include <ferment/base/export.hpp>

namespace ferment {

/// The names of an enumeration whose values are 0, 1, …, in that order.
struct Names {
  std::string_view what;  ///< as in messages: "yeast kind"
  std::string_view path;  ///< as in code and options: "yeast"
  std::span<const std::string_view> names;
};

/// The table of an enumeration; it stands in the room of the enumeration.
template <class Enumeration>
requires std::is_enum_v<Enumeration>
const Names& names_of();

/// The name of a value. @throws InvalidInput for a value that has none
FERMENT_API std::string_view name_in(const Names& names, int value);

/// The value of a name. @throws InvalidInput naming the near one and the known ones
FERMENT_API int value_in(const Names& names, std::string_view name);

/// "; did you mean instant?" beside the known names, as advice for an unknown one.
FERMENT_API std::string advice_for(std::string_view unknown, std::span<const std::string_view> known);
/// The same, where other names that are read, too, would only lengthen the list.
FERMENT_API std::string advice_for(std::string_view unknown, std::span<const std::string_view> all,
                                   std::span<const std::string_view> listed);

template <class Enumeration>
requires std::is_enum_v<Enumeration> std::string_view name_of(Enumeration value) {
  return name_in(names_of<Enumeration>(), static_cast<int>(value));
}

/// named<Yeast>("instant"). @throws InvalidInput
template <class Enumeration>
requires std::is_enum_v<Enumeration> Enumeration named(std::string_view name) {
  return static_cast<Enumeration>(value_in(names_of<Enumeration>(), name));
}

}  // namespace ferment
