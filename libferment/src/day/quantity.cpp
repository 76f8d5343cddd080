#include "day/quantity.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/base/units.hpp>

#include "base/text.hpp"

namespace ferment {
namespace {

struct Unit {
  std::string_view name;
  double (*in_base)(double);  ///< °C, K, h, g, cm, %
};

constexpr double as_it_is(double value) { return value; }

constexpr Unit temperatures[] = {{"c", as_it_is}, {"f", [](double x) { return (x - 32) / 1.8; }}};
constexpr Unit differences[] = {{"k", as_it_is}, {"c", as_it_is}, {"f", [](double x) { return x / 1.8; }}};
constexpr Unit durations[] = {{"h", as_it_is}, {"min", [](double x) { return x / 60; }}};
constexpr double gram_per_ounce = 28.349523125;  // exact, international pound of 1959
constexpr Unit masses[] = {{"g", as_it_is},
                           {"kg", [](double x) { return 1000 * x; }},
                           {"oz", [](double x) { return gram_per_ounce * x; }},
                           {"lb", [](double x) { return gram_per_ounce * (16 * x); }}};
constexpr Unit lengths[] = {{"cm", as_it_is},
                            {"mm", [](double x) { return x / 10; }},
                            {"m", [](double x) { return 100 * x; }},
                            {"in", [](double x) { return 2.54 * x; }},
                            {"ft", [](double x) { return 30.48 * x; }}};
constexpr Unit percentages[] = {{"%", as_it_is}};

struct Units {
  Quantity quantity;
  std::span<const Unit> units;
  std::string_view example;
};
constexpr Units all_units[] = {{Quantity::temperature, temperatures, "18.5C or 65F"},
                               {Quantity::temperature_difference, differences, "6K or 11F"},
                               {Quantity::duration, durations, "2.5h or 90min"},
                               {Quantity::mass, masses, "500g or 18oz"},
                               {Quantity::length, lengths, "20cm or 8in"},
                               {Quantity::percent, percentages, "2%"}};

const Units* units_of(const Field& field) {
  const auto* const found = std::find_if(std::begin(all_units), std::end(all_units),
                                         [&](const Units& units) { return units.quantity == field.quantity; });
  return found == std::end(all_units) ? nullptr : found;
}

/// What the field's own unit is of the quantity's first one, and how a name says it.
struct OwnUnit {
  std::string_view unit, suffix;
  double per_base = 1;
};
constexpr OwnUnit own_units[] = {{"°C", "_c"}, {"K", "_k"},   {"h", "_h"},           {"min", "_min", 60},
                                 {"g", "_g"},  {"cm", "_cm"}, {"m", "_m", 1. / 100}, {"%", "_percent"}};

const OwnUnit* own_unit_of(const Field& field) {
  const auto* const found = std::find_if(std::begin(own_units), std::end(own_units),
                                         [&](const OwnUnit& own) { return own.unit == field.unit; });
  return units_of(field) == nullptr || found == std::end(own_units) ? nullptr : found;
}

struct Written {
  double number;
  std::string unit;  ///< in small letters; "" if there is none
};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}

  bool at_end() {
    while (take(" ") || take("\t") || take("\u00a0")) {
    }
    return at_ == text_.size();
  }
  bool take(std::string_view what) {
    if (!text_.substr(at_).starts_with(what)) return false;
    at_ += what.size();
    return true;
  }
  /// Digits with a point or a comma, as whole digits over a power of ten: rounded once.
  std::optional<double> number() {
    const bool negative = take("-") || take("\u2212");
    if (!negative) take("+");
    const std::size_t begin = at_;
    double digits = 0, tens = 1;
    while (at_ < text_.size() && is_digit(text_[at_])) digits = 10 * digits + (text_[at_++] - '0');
    const std::size_t whole = at_ - begin;
    if (whole > 0 && at_ + 1 < text_.size() && (text_[at_] == '.' || text_[at_] == ',') && is_digit(text_[at_ + 1])) {
      const bool is_comma = text_[at_++] == ',';
      const std::size_t point = at_;
      for (; at_ < text_.size() && is_digit(text_[at_]); tens *= 10) digits = 10 * digits + (text_[at_++] - '0');
      ambiguous = is_comma && at_ - point == 3 && whole <= 3 && text_[begin] != '0';
    }
    constexpr std::size_t most_digits = 16;
    if (whole == 0 || at_ - begin > most_digits) return std::nullopt;
    return (negative ? -1 : 1) * digits / tens;
  }
  std::string unit() {
    at_end();
    take("°");
    at_end();
    if (take("%")) return "%";
    std::string name;
    for (; at_ < text_.size(); ++at_) {
      const char letter = static_cast<char>(text_[at_] | 0x20);
      if (letter < 'a' || letter > 'z') break;
      name += letter;
    }
    return name;
  }

  bool ambiguous = false;  ///< "1,000": a thousand or one

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

[[noreturn]] void refuse_text(const Field& field, const std::string& problem) {
  throw InvalidInput(problem, {.advice = "write for example " + std::string(example_of(field))});
}

/// "2h 30min" are two.
std::optional<std::vector<Written>> parts_of(std::string_view text, bool& ambiguous) {
  Scanner scanner(text);
  std::vector<Written> parts;
  while (!scanner.at_end()) {
    const std::optional<double> number = scanner.number();
    if (!number || (!parts.empty() && *number < 0)) return std::nullopt;
    parts.push_back({*number, scanner.unit()});
    ambiguous = ambiguous || scanner.ambiguous;
  }
  return parts.empty() ? std::nullopt : std::optional(parts);
}

const Unit* unit_named(const Field& field, std::string_view name) {
  const Units* const units = units_of(field);
  if (units == nullptr) return nullptr;
  for (const Unit& unit : units->units) {
    if (unit.name == name) return &unit;
  }
  return nullptr;
}

/// Outside its bounds: where °F was written, °C may have been meant, and never the other way round.
[[noreturn]] void refuse_bounds(const Field& field, const Error& error, const Written& written) {
  ErrorDetail detail = error.detail();
  const bool is_fahrenheit = written.unit == "f" && field.quantity == Quantity::temperature;
  if (written.unit == "f") detail.meant = Meant::as_given;
  if (is_fahrenheit && written.number >= field.low && written.number <= field.high)
    detail.advice = "if you meant " + number(written.number) + " °C, write " + number(written.number) + "C";
  detail.path.clear();
  throw_error(error.status(), error.problem(), std::move(detail));
}

std::string cut(std::string_view text) {
  constexpr std::size_t shown = 40;
  return text.size() <= shown ? std::string(text) : "of " + std::to_string(text.size()) + " letters";
}

}  // namespace

std::optional<std::string_view> stem_of(const Row& row) {
  if (row.field == nullptr || (row.kind != Kind::number && row.kind != Kind::range)) return std::nullopt;
  const OwnUnit* const own = own_unit_of(*row.field);
  if (own == nullptr || !row.name.ends_with(own->suffix) || row.name.size() == own->suffix.size()) return std::nullopt;
  return row.name.substr(0, row.name.size() - own->suffix.size());
}

bool has_unit_of(const Field& field, std::string_view text) {
  bool ambiguous = false;
  const auto parts = parts_of(text, ambiguous);
  return parts && unit_named(field, parts->front().unit) != nullptr;
}

std::string_view example_of(const Field& field) {
  const Units* const units = units_of(field);
  return units == nullptr ? "" : units->example;
}

double quantity_from(const Field& field, std::string_view text) {
  bool ambiguous = false;
  const auto parts = parts_of(text, ambiguous);
  if (!parts) refuse_text(field, "the text \"" + cut(text) + "\" is not a number with a unit");
  if (ambiguous) refuse_text(field, "the text \"" + cut(text) + "\" may be read in two ways: write it without a comma");
  double value = 0;
  for (const Written& part : *parts) {
    const Unit* const unit = unit_named(field, part.unit);
    if (unit == nullptr) {
      const std::string problem = part.unit.empty() ? " has no unit" : " has the unit \"" + cut(part.unit) + "\"";
      refuse_text(field, std::string(field.label) + " " + number(part.number) + problem);
    }
    value += unit->in_base(part.number);
  }
  if (parts->size() > 1 && field.quantity != Quantity::duration)
    refuse_text(field, "the text \"" + cut(text) + "\" holds more than one quantity");
  const double per_base = own_unit_of(field)->per_base;
  value = per_base < 1 ? value / (1 / per_base) : value * per_base;
  try {
    require(field, value);
  } catch (const Error& error) {
    refuse_bounds(field, error, parts->front());
  }
  return value;
}

std::string pattern_of(const Field& field) {
  std::string units;
  for (const Unit& unit : units_of(field)->units) {
    units += units.empty() ? "" : "|";
    for (const char letter : unit.name) {
      const bool is_letter = letter >= 'a' && letter <= 'z';
      units += is_letter ? std::string("[") + letter + static_cast<char>(letter & ~0x20) + "]" : std::string(1, letter);
    }
  }
  const std::string one = "\\s*[-+\u2212]?[0-9]+([.,][0-9]+)?\\s*°?\\s*(" + units + ")\\s*";
  return field.quantity == Quantity::duration ? "^(" + one + ")+$" : "^" + one + "$";
}

}  // namespace ferment
