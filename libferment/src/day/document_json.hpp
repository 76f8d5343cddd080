// Values and trees of JSON, by the forms: what documents, questions and answers are made of.
#pragma once

#include <ferment/base/form.hpp>

#include "day/json.hpp"

namespace ferment {

/// What a table may have beside its members: the "format", "version" and "$schema" of a document; these and the "type"
/// that tells several forms apart; these and a question's "ask".
enum class Heading { document, type, ask };

Json json_of(const Form& form, const void* value);

/// Fills a value with defaults from a table. Types, names and units are looked at; bounds and contradictions by
/// `require`, at the end, of the whole.
/// @throws InvalidInput
void fill_from(const Form& form, void* object, const Json& json, Heading heading);

}  // namespace ferment
