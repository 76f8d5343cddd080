// JSON text and the tree it is read into: nlohmann-json, with what it lets pass refused.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

namespace ferment {

using Json = nlohmann::ordered_json;

/// @throws InvalidInput with line and column: no JSON, a key given twice, too deep, too long
Json parsed(std::string_view text);

/// The text of a tree. @throws InvalidInput for a text that is no UTF-8
std::string text_of(const Json& json);

/// A number as JSON: a whole one without a point.
Json json_number(double value);

/// The first bytes of a text, no letter of UTF-8 cut through.
std::string begin_of(const std::string& text, std::size_t most);

/// "the text \"18C\"", "the number 18", "a list": what stands there, for messages.
std::string described(const Json& json);

}  // namespace ferment
