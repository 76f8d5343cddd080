#include <ferment/base/names.hpp>

#include <algorithm>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/base/values.hpp>

namespace ferment {
namespace {

/// Letters that two names have in common, in order: the longest common subsequence.
std::size_t letters_in_common(std::string_view a, std::string_view b) {
  std::vector<std::size_t> longest(b.size() + 1, 0);
  for (const char letter : a) {
    std::size_t diagonal = 0;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t above = longest[j];
      longest[j] = letter == b[j - 1] ? diagonal + 1 : std::max(above, longest[j - 1]);
      diagonal = above;
    }
  }
  return longest.back();
}

/// The known name most like it, or nothing if none is.
std::string_view near(std::string_view unknown, std::span<const std::string_view> known) {
  constexpr double alike = 0.6;  // of the letters of both
  std::string_view best;
  double most = alike;
  for (const std::string_view name : known) {
    if (name.starts_with(unknown) && name[unknown.size()] == '_') return name;  // its unit was left out
    const auto both = static_cast<double>(unknown.size() + name.size());
    const double share = 2 * static_cast<double>(letters_in_common(unknown, name)) / both;
    if (share > most) {
      most = share;
      best = name;
    }
  }
  return best;
}

}  // namespace

std::string advice_for(std::string_view unknown, std::span<const std::string_view> known) {
  return advice_for(unknown, known, known);
}

std::string advice_for(std::string_view unknown, std::span<const std::string_view> all,
                       std::span<const std::string_view> known) {
  constexpr std::size_t many = 12;
  std::string advice;
  if (const std::string_view name = near(unknown, all); !name.empty()) {
    advice.append("did you mean ").append(name).append("?");
    if (known.size() > many) return advice;
    advice += " ";
  }
  advice += "known: ";
  for (std::size_t i = 0; i < known.size(); ++i) advice.append(i == 0 ? "" : ", ").append(known[i]);
  return advice;
}

std::string_view name_in(const Names& names, int value) {
  const auto i = static_cast<std::size_t>(value);
  if (value >= 0 && i < names.names.size()) return names.names[i];
  throw InvalidInput(std::string(names.what) + " " + std::to_string(value) + " is unknown",
                     {.path = std::string(names.path),
                      .value = value,
                      .low = 0.0,
                      .high = static_cast<double>(names.names.size() - 1),
                      .advice = "known: 0 to " + std::to_string(names.names.size() - 1)});
}

int value_in(const Names& names, std::string_view name) {
  const auto found = std::find(names.names.begin(), names.names.end(), name);
  if (found != names.names.end()) return static_cast<int>(found - names.names.begin());
  throw InvalidInput(std::string(names.what) + " \"" + std::string(name) + "\" is unknown",
                     {.path = std::string(names.path), .advice = advice_for(name, names.names)});
}

template <>
const Names& names_of<Unreachable>() {
  static constexpr std::string_view list[] = {"raise", "inf"};
  static constexpr Names names{"unreachable", "unreachable", list};
  return names;
}

template <>
const Names& names_of<Severity>() {
  static constexpr std::string_view list[] = {"info", "caution", "warning"};
  static constexpr Names names{"severity", "severity", list};
  return names;
}

}  // namespace ferment
