#include "day/moment.hpp"

#include <cmath>
#include <optional>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/day/day.hpp>

#include "base/text.hpp"
#include "day/quantity.hpp"

namespace ferment {
namespace {

struct Moment {
  std::optional<int> day = {};  ///< of "+1 7:30"
  int hour = 0, minute = 0;
};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// A number of one or two digits at a place of the text, and behind it.
std::optional<int> small_number(const std::string& text, std::size_t& at) {
  const std::size_t begin = at;
  int number = 0;
  while (at < text.size() && is_digit(text[at]) && at - begin < 2) number = 10 * number + (text[at++] - '0');
  return at == begin ? std::nullopt : std::optional(number);
}

std::optional<Moment> moment_from(const std::string& text) {
  Moment moment;
  std::size_t at = 0;
  if (!text.empty() && text[0] == '+') {
    moment.day = small_number(text, ++at);
    if (!moment.day || at >= text.size() || text[at++] != ' ') return std::nullopt;
  }
  const std::optional<int> hour = small_number(text, at);
  if (!hour || at >= text.size() || text[at++] != ':') return std::nullopt;
  const std::size_t begin = at;
  const std::optional<int> minute = small_number(text, at);
  if (!minute || at - begin != 2 || at != text.size() || *hour > 23 || *minute > 59) return std::nullopt;
  moment.hour = *hour;
  moment.minute = *minute;
  return moment;
}

}  // namespace

std::string shown(const std::string& text) {
  return text.size() <= 40 ? "\"" + text + "\"" : "a text of " + std::to_string(text.size());
}

void require_moment(const std::string& text, std::string_view path) {
  if (moment_from(text)) return;
  throw InvalidInput(shown(text) + " is no time of day",
                     {.path = std::string(path), .advice = "write 8:15 or 18:30, or \"+1 7:30\" for the next morning"});
}

std::optional<double> hours_since(const std::string& text) {
  if (moment_from(text)) return std::nullopt;
  if (has_unit_of(field::until_h, text)) return quantity_from(field::until_h, text);
  throw InvalidInput(shown(text) + " is no time",
                     {.advice = "write a time of day, such as 11:05, or a time since the stage began, such as 65min"});
}

void require_moment_or_time(const std::string& text, std::string_view path) {
  try {
    hours_since(text);
  } catch (const Error& error) {
    throw_within(std::string(path), error);
  }
}

double moment_h(const std::string& text, double after_h) {
  require_moment(text, "");
  require(field::start_h, after_h);
  const Moment moment = *moment_from(text);
  const double hours = moment.hour + moment.minute / 60.0;
  if (moment.day) return 24.0 * *moment.day + hours;
  constexpr double same_moment_h = 1e-9;
  return hours + 24 * std::max(0.0, std::ceil((after_h - hours - same_moment_h) / 24));
}

std::string moment_text(double hours) {
  constexpr double most_h = 1e6;
  if (!(std::abs(hours) <= most_h))
    throw InvalidInput("the hour " + number(hours) + " has no time of day",
                       {.value = hours, .low = -most_h, .high = most_h, .advice = "is it one that never comes?"});
  const double minutes = std::round(60 * hours);
  const double day = std::floor(minutes / (24 * 60));
  const auto left = static_cast<int>(minutes - 24 * 60 * day);
  const std::string minute = std::to_string(left % 60);
  const std::string clock = std::to_string(left / 60) + ":" + (minute.size() < 2 ? "0" : "") + minute;
  const std::string sign = day > 0 ? "+" : "\u2212";
  return day == 0 ? clock : sign + std::to_string(static_cast<int>(std::abs(day))) + " " + clock;
}

}  // namespace ferment
