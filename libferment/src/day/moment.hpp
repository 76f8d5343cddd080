// Times of day, as a baker writes them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace ferment {

/// A text for messages: in quotes, or its length if it is a long one.
std::string shown(const std::string& text);

/// Refuses what is no time of day. @throws InvalidInput at that path
void require_moment(const std::string& text, std::string_view path);

/// Hours of a text such as "65min" or "1h 20min"; nothing if it is a time of day. @throws InvalidInput if it is neither
std::optional<double> hours_since(const std::string& text);

/// Refuses what is neither. @throws InvalidInput at that path
void require_moment_or_time(const std::string& text, std::string_view path);

}  // namespace ferment
