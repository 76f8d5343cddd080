// Times of day, as a baker writes them.
#pragma once

#include <string>
#include <string_view>

namespace ferment {

/// A text for messages: in quotes, or its length if it is a long one.
std::string shown(const std::string& text);

/// Refuses what is no time of day. @throws InvalidInput at that path
void require_moment(const std::string& text, std::string_view path);

}  // namespace ferment
