#include <ferment/day/document.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <utility>
#include <vector>

#include <ferment/base/error.hpp>

#include "base/text.hpp"
#include "day/document_json.hpp"
#include "day/quantity.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();

/// "libferment stage forecast" of StageForecast.
std::string format_of(const Form& form) {
  std::string format = "libferment";
  for (const char letter : form.name) {
    const bool is_capital = letter >= 'A' && letter <= 'Z';
    format += is_capital ? std::string(" ") + static_cast<char>(letter | 0x20) : std::string(1, letter);
  }
  return format;
}

// ---- written -----------------------------------------------------------------------------------------------------

Json number_of(const Row& row, double value) {
  if (row.never && std::isinf(value)) return nullptr;
  if (std::isfinite(value)) return json_number(value);
  throw InvalidInput("a document cannot hold a number that is none", {.path = std::string(row.name), .value = value});
}

Json item_of(const Row& row, const void* object, std::size_t i) {
  const void* const item = row.item(object, i);
  switch (row.kind) {
    case Kind::number: return number_of(row, *static_cast<const double*>(item));
    case Kind::count: return json_number(static_cast<double>(*static_cast<const std::size_t*>(item)));
    case Kind::flag: return *static_cast<const bool*>(item);
    case Kind::text: return *static_cast<const std::string*>(item);
    case Kind::name: return std::string(name_in(*row.names, row.choice(object, i)));
    case Kind::range: {
      const auto& [low, high] = *static_cast<const std::pair<double, double>*>(item);
      return Json::array({number_of(row, low), number_of(row, high)});
    }
    case Kind::entry:
    case Kind::value: break;
  }
  const Form& form = row.forms[static_cast<std::size_t>(row.choice(object, i))]();
  Json content = Json::object();
  if (row.forms.size() > 1) content["type"] = std::string(form.name);
  content.update(json_of(form, item));
  return content;
}

Json member_of(const Row& row, const void* object) {
  const std::size_t size = row.size(object);
  if (row.kind == Kind::entry) {
    Json entries = Json::object();
    for (std::size_t i = 0; i < size; ++i) {
      const auto& [name, value] = *static_cast<const std::pair<std::string, double>*>(row.item(object, i));
      entries[name] = number_of(row, value);
    }
    return entries;
  }
  if (!row.many) return size == 0 ? Json(nullptr) : item_of(row, object, 0);
  Json items = Json::array();
  for (std::size_t i = 0; i < size; ++i) items.push_back(item_of(row, object, i));
  return items;
}

// ---- read --------------------------------------------------------------------------------------------------------

std::string wanted(const Row& row) {
  switch (row.kind) {
    case Kind::number: return "a number";
    case Kind::count: return "a whole number from 0";
    case Kind::flag: return "true or false";
    case Kind::text: return "a text";
    case Kind::name: return "a name";
    case Kind::range: return "two numbers, [lowest, highest]";
    case Kind::entry: return "a table of numbers";
    case Kind::value: break;
  }
  return "a table";
}

/// "18.5C" or "65F".
std::string in_quotes(std::string_view examples) {
  constexpr std::string_view other = " or ";
  const std::size_t at = examples.find(other);
  const std::string first = "\"" + std::string(examples.substr(0, at)) + "\"";
  return at == examples.npos ? first : first + " or " + in_quotes(examples.substr(at + other.size()));
}

[[noreturn]] void refuse(const Row& row, const Json& json, std::string advice = {}) {
  if (advice.empty() && row.kind == Kind::number && json.is_string())
    if (stem_of(row)) advice = "write the number alone; its unit is in the name";
  throw InvalidInput(wanted(row) + " is wanted, got " + described(json), {.advice = std::move(advice)});
}

/// "Stand mixer" is stand_mixer.
std::string as_name(const std::string& text) {
  constexpr std::size_t longest = 100;
  if (text.size() > longest)
    throw InvalidInput("a text of " + std::to_string(text.size()) + " letters is no name",
                       {.advice = "none is so long"});
  std::string name;
  for (const char letter : text) {
    const bool is_gap = letter == ' ' || letter == '-' || letter == '_';
    if (is_gap && (name.empty() || name.back() == '_')) continue;
    const bool is_capital = letter >= 'A' && letter <= 'Z';
    name += is_gap ? '_' : is_capital ? static_cast<char>(letter | 0x20) : letter;
  }
  if (!name.empty() && name.back() == '_') name.pop_back();
  return name;
}

int name_from(const Row& row, const std::string& name) {
  try {
    return value_in(*row.names, name);
  } catch (const Error& error) {
    ErrorDetail detail = error.detail();
    detail.path.clear();  // the key says it
    throw_error(error.status(), error.problem(), std::move(detail));
  }
}

double number_from(const Row& row, const Json& json, bool with_unit) {
  if (row.never && json.is_null()) return never;
  if (with_unit && json.is_string()) return quantity_from(*row.field, json.get_ref<const std::string&>());
  if (!with_unit && json.is_number()) return json.get<double>();
  if (with_unit && json.is_number()) {
    const std::string value = number(json.get<double>(), 12);
    throw InvalidInput("the number " + value + " has no unit",
                       {.advice = "write a text, such as " + in_quotes(example_of(*row.field)) + ", or " +
                                  std::string(row.name) + " and the number"});
  }
  refuse(row, json, with_unit ? "write a text with its unit, such as " + in_quotes(example_of(*row.field)) : "");
}

std::shared_ptr<void> made_from(const Form& form, const Json& json, bool is_one_of_several) {
  std::shared_ptr<void> made = form.copy(form.blank.get());
  fill_from(form, made.get(), json, is_one_of_several ? Heading::type : Heading::document);
  return made;
}

/// A document of its own may stand in another one, such as a saved state in a question.
bool is_heading(std::string_view key) { return key == "format" || key == "version" || key == "$schema"; }

bool knows(const Form& form, std::string_view key) {
  return std::any_of(form.rows.begin(), form.rows.end(),
                     [&](const Row& row) { return row.name == key || stem_of(row) == key; });
}

/// Which of several forms a table is meant for: by its "type", or because only one has all its keys.
std::size_t form_meant(const Row& row, const Json& json) {
  std::string names;
  std::vector<std::size_t> fitting;
  for (std::size_t i = 0; i < row.forms.size(); ++i) {
    const Form& form = row.forms[i]();
    names.append(names.empty() ? "" : ", ").append(form.name);
    if (json.contains("type") && json["type"] == std::string(form.name)) return i;
    bool fits = !json.contains("type");
    for (const auto& [key, value] : json.items()) fits = fits && (is_heading(key) || knows(form, key));
    if (fits) fitting.push_back(i);
  }
  if (fitting.size() == 1) return fitting.front();
  throw InvalidInput(json.contains("type") ? described(json["type"]) + " is none of its types" : "it has no type",
                     {.path = "type", .advice = "known: " + names});
}

void take_value(const Row& row, void* object, const Json& json) {
  if (json.is_object()) {
    const std::size_t which = row.forms.size() == 1 ? 0 : form_meant(row, json);
    return row.add(object, made_from(row.forms[which](), json, row.forms.size() > 1).get(), static_cast<int>(which));
  }
  for (std::size_t i = 0; i < row.forms.size() && json.is_string(); ++i) {
    const Form& form = row.forms[i]();
    if (form.shorthand.empty()) continue;
    return row.add(object, made_from(form, {{std::string(form.shorthand), json}}, false).get(), static_cast<int>(i));
  }
  refuse(row, json);
}

void take_item(const Row& row, void* object, const Json& json, bool with_unit) {
  switch (row.kind) {
    case Kind::number: {
      const double number = number_from(row, json, with_unit);
      return row.add(object, &number);
    }
    case Kind::count: {
      constexpr double exact = 9007199254740992;  // 2^53
      const double number = json.is_number() ? json.get<double>() : -1;
      if (!(number >= 0 && number < exact && std::trunc(number) == number)) refuse(row, json);
      const auto count = static_cast<std::size_t>(number);
      return row.add(object, &count);
    }
    case Kind::flag: {
      if (!json.is_boolean()) refuse(row, json);
      const bool flag = json.get<bool>();
      return row.add(object, &flag);
    }
    case Kind::text: {
      if (!json.is_string()) refuse(row, json);
      const std::string text = row.known == nullptr ? json.get<std::string>() : as_name(json.get<std::string>());
      return row.add(object, &text);
    }
    case Kind::name: {
      if (!json.is_string()) refuse(row, json);
      return row.add(object, nullptr, name_from(row, as_name(json.get<std::string>())));
    }
    case Kind::range: {
      if (!json.is_array() || json.size() != 2) refuse(row, json);
      const std::pair<double, double> range{number_from(row, json[0], with_unit), number_from(row, json[1], with_unit)};
      return row.add(object, &range);
    }
    case Kind::value: return take_value(row, object, json);
    case Kind::entry: refuse(row, json);
  }
}

void take_entries(const Row& row, void* object, const Json& json) {
  if (!json.is_object()) refuse(row, json);
  row.clear(object);
  for (const auto& [name, value] : json.items()) {
    if (!value.is_number()) throw InvalidInput("a number is wanted, got " + described(value), {.path = name});
    const std::pair<std::string, double> entry{name, value.get<double>()};
    row.add(object, &entry);
  }
}

void take(const Row& row, void* object, const Json& json, bool with_unit) {
  if (json.is_null() && row.optional && !row.never) return row.clear(object);
  if (row.kind == Kind::entry) return take_entries(row, object, json);
  if (!row.many) return take_item(row, object, json, with_unit);
  if (!json.is_array()) {
    throw InvalidInput("a list is wanted, got " + described(json),
                       {.advice = json.is_object() ? "there may be several: [{...}], in TOML two brackets, [[...]]"
                                                   : "put it between [ and ]"});
  }
  row.clear(object);
  for (std::size_t i = 0; i < json.size(); ++i) {
    try {
      take_item(row, object, json[i], with_unit);
    } catch (const Error& error) {
      throw_within("[" + std::to_string(i) + "]", error);
    }
  }
}

/// What a key means: a member, or one without its unit. Of several the text's unit decides.
struct Meaning {
  const Row* row = nullptr;
  bool with_unit = false;
};

Meaning meaning_of(const Form& form, std::string_view key, const Json& json) {
  if (const Row* const row = find_row(form, key)) return {row, false};
  Meaning meaning;
  const Json& first = json.is_array() && !json.empty() ? json[0] : json;
  for (const Row& row : form.rows) {
    if (stem_of(row) != key) continue;
    const bool fits = first.is_string() && has_unit_of(*row.field, first.get_ref<const std::string&>());
    if (meaning.row == nullptr || fits) meaning = {&row, true};
  }
  if (meaning.row != nullptr) return meaning;
  std::vector<std::string_view> known, all;
  for (const Row& row : form.rows) {
    known.push_back(stem_of(row).value_or(row.name));
    all.insert(all.end(), {known.back(), row.name});
  }
  known.erase(std::unique(known.begin(), known.end()), known.end());
  throw InvalidInput("the key \"" + std::string(key) + "\" is unknown", {.advice = advice_for(key, all, known)});
}

[[noreturn]] void refuse_missing(const Form& form, const Row& row) {
  std::string names(row.name);
  if (const auto stem = stem_of(row))
    names.append(", or ").append(*stem).append(" with a unit, such as ").append(in_quotes(example_of(*row.field)));
  throw InvalidInput(std::string(form.name) + " needs " + std::string(row.name) + ": " + std::string(row.about()),
                     {.path = std::string(row.name), .advice = "give " + names});
}

void require_heading(const Form& form, const Json& json) {
  if (json.contains("format") && json["format"] != format_of(form)) {
    throw InvalidInput("it is " + described(json["format"]) + ", and \"" + format_of(form) + "\" is wanted",
                       {.path = "format", .advice = "is it another file?"});
  }
  if (json.contains("version") && json["version"] != document_version) {
    throw InvalidInput("it has " + described(json["version"]) + ", and this libferment reads version " +
                           std::to_string(document_version),
                       {.path = "version", .advice = "make it anew"});
  }
}

}  // namespace

Json json_of(const Form& form, const void* value) {
  Json content = Json::object();
  for (const Row& row : form.rows) {
    if (form.sparse && !row.given && same_member(row, value, form.blank.get())) continue;
    content[std::string(row.name)] = member_of(row, value);
  }
  return content;
}

void fill_from(const Form& form, void* object, const Json& json, Heading heading) {
  if (!json.is_object()) throw InvalidInput("a table is wanted, got " + described(json));
  require_heading(form, json);
  std::vector<const Row*> given;
  for (const auto& [key, value] : json.items()) {
    if (is_heading(key) || (heading == Heading::type && key == "type") || (heading == Heading::ask && key == "ask"))
      continue;
    try {
      const Meaning meaning = meaning_of(form, key, value);
      if (std::find(given.begin(), given.end(), meaning.row) != given.end())
        throw InvalidInput("it is given twice, with its unit in the name and without", {.advice = "leave one out"});
      given.push_back(meaning.row);
      take(*meaning.row, object, value, meaning.with_unit);
    } catch (const Error& error) {
      throw_within(key, error);
    }
  }
  for (const Row& row : form.rows) {
    const bool is_given = std::find(given.begin(), given.end(), &row) != given.end();
    if (!is_given && (row.given || form.complete)) refuse_missing(form, row);
  }
}

std::string document_of(const Form& form, const void* value) {
  Json document{{"format", format_of(form)}, {"version", document_version}};
  document.update(json_of(form, value));
  return text_of(document);
}

void read_document(const Form& form, void* value, std::string_view text) {
  const std::shared_ptr<void> read = form.copy(form.blank.get());
  fill_from(form, read.get(), parsed(text), Heading::document);
  require(form, read.get());
  form.assign(value, read.get());
}

}  // namespace ferment
