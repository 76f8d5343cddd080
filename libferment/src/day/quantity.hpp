// Quantities as people write them: "63F", "25.5C", "6K", "2h 30min", "2lb", "0.8%".
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include <ferment/base/form.hpp>

namespace ferment {

/// The name of a row without its unit: "room" of "room_c"; nothing if it ends with none.
std::optional<std::string_view> stem_of(const Row& row);

/// Whether a text's unit is one of the field's quantity: of "63F" for a temperature, not for a weight.
bool has_unit_of(const Field& field, std::string_view text);

/// The text in the unit of its field. @throws InvalidInput unless it is a number with a unit of that quantity, inside
/// the field's bounds
double quantity_from(const Field& field, std::string_view text);

/// How to write one: "18.5C or 65F".
std::string_view example_of(const Field& field);

/// A regular expression of the texts that are read, for schemas.
std::string pattern_of(const Field& field);

}  // namespace ferment
