// Any value as a document: JSON text by its form, the same in every language, read back to the same digits.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>

namespace ferment {

inline constexpr int document_version = 1;
inline constexpr std::size_t longest_document = 8u << 20;  ///< bytes; a hundred thousand readings are a quarter of it
inline constexpr std::size_t deepest_document = 32;        ///< tables and lists in each other

/// The value as JSON text: "format" (`libferment` and the form's name), "version", and a key for each member, with its
/// unit in its name. A sparse form leaves out what is at its default. An hour that never comes is null.
/// @throws InvalidInput for a number that is none, which no document can hold
FERMENT_API std::string document_of(const Form& form, const void* value);

/// Reads such a text, or one written by hand, into a value that has all defaults.
///
/// A quantity is a number under its full name ("room_c": 17.5) or a text with its unit under the name without it
/// ("room": "63F", "flour": "2lb", "rest": "20min", "salt": "2%"); where two quantities share that name, the text's
/// unit decides, and a name of its own keeps its meaning (`yeast` is the kind). A name of a table may have spaces and
/// capitals. Format and version may be left out.
/// @throws InvalidInput naming the way to what is wrong ("stage[2].until_rise_percent"): text that is no JSON (with
/// line and column), a key that is unknown (with the near one) or stands twice, a wrong type, a missing unit, a number
/// outside its field, more than `longest_document` or `deepest_document`
FERMENT_API void read_document(const Form& form, void* value, std::string_view text);

/// The JSON Schema (draft 2020-12) of a form's documents, from the same rows.
FERMENT_API std::string schema_of(const Form& form);

template <HasForm Value>
std::string to_document(const Value& value) {
  return document_of(form_of<Value>(), &value);
}

/// @throws as read_document
template <HasForm Value>
Value from_document(std::string_view text) {
  Value value = *static_cast<const Value*>(form_of<Value>().blank.get());
  read_document(form_of<Value>(), &value, text);
  return value;
}

}  // namespace ferment
