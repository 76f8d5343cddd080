// The JSON Schema of documents, from the rows that read them.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <ferment/day/document.hpp>

#include "day/document_json.hpp"
#include "day/quantity.hpp"

namespace ferment {
namespace {

class Schema {
 public:
  Json of(const Form& form) {
    Json schema = table_of(form);
    Json whole{{"$schema", "https://json-schema.org/draft/2020-12/schema"}};
    whole.update(schema);
    add_heading(whole);
    whole["$defs"] = definitions_;
    return whole;
  }

 private:
  /// A document may stand in another as it is.
  static void add_heading(Json& table) {
    for (const char* const heading : {"$schema", "format"}) table["properties"][heading] = Json{{"type", "string"}};
    table["properties"]["version"] = Json{{"const", document_version}};
  }

  Json table_of(const Form& form) {
    Json properties = Json::object(), all = Json::array();
    for (const Row& row : form.rows) {
      properties[std::string(row.name)] = described(member_of(row, item_of(row)), row);
      if (const auto stem = stem_of(row); stem && find_row(form, *stem) == nullptr) add_stem(properties, *stem, row);
      if (row.given || form.complete) all.push_back(any_of_names(row));
      if (has_stem(form, row)) all.push_back(Json{{"not", Json{{"required", {std::string(row.name), stem(row)}}}}});
    }
    for (const auto& group : form.one_of) {
      Json one = Json::array();
      for (const std::string_view name : group) one.push_back(has_one(form, *find_row(form, name)));
      all.push_back(Json{{"oneOf", one}});
    }
    Json table{{"type", "object"},
               {"title", std::string(form.name)},
               {"description", std::string(form.meaning)},
               {"properties", properties},
               {"additionalProperties", false}};
    if (!all.empty()) table["allOf"] = all;
    return table;
  }

  static std::string stem(const Row& row) { return std::string(*stem_of(row)); }
  /// Whether its stem means this row alone: where two quantities share it, a text may be either's.
  static bool has_stem(const Form& form, const Row& row) {
    const auto its = stem_of(row);
    return its && find_row(form, *its) == nullptr &&
           std::count_if(form.rows.begin(), form.rows.end(), [&](const Row& other) { return stem_of(other) == its; }) ==
               1;
  }
  static Json any_of_names(const Row& row) {
    Json any = Json::array({Json{{"required", {std::string(row.name)}}}});
    if (stem_of(row)) any.push_back(Json{{"required", {stem(row)}}});
    return any.size() == 1 ? any[0] : Json{{"anyOf", any}};
  }

  /// That a member is there and is not null; under a stem of several, that its text is of this quantity.
  static Json has_one(const Form& form, const Row& row) {
    const std::string name(row.name);
    const Json no_null{{"not", Json{{"type", "null"}}}};
    Json any = Json::array({Json{{"required", {name}}, {"properties", Json{{name, no_null}}}}});
    if (const auto its = stem_of(row); its && find_row(form, *its) == nullptr) {
      const Json text = row.kind == Kind::number && !row.many ? Json{{"pattern", pattern_of(*row.field)}} : no_null;
      any.push_back(Json{{"required", {stem(row)}}, {"properties", Json{{stem(row), text}}}});
    }
    return any.size() == 1 ? any[0] : Json{{"anyOf", any}};
  }

  /// A second quantity of the same stem is another text that may stand there.
  static void add_stem(Json& properties, std::string_view name, const Row& row) {
    const Json text{{"type", "string"}, {"pattern", pattern_of(*row.field)}};
    const Json member = member_of(row, row.kind == Kind::range ? range_of(text) : text);
    Json& property = properties[std::string(name)];
    if (property.is_null()) {
      property = described(member, row);
    } else {
      if (!property.contains("anyOf")) {
        Json first = property;
        property = Json{{"anyOf", Json::array({first})}};
      }
      property["anyOf"].push_back(described(member, row));
    }
  }

  static Json described(Json schema, const Row& row) {
    std::string about(row.about());
    if (row.field != nullptr && !row.field->unit.empty()) about += ", " + std::string(row.field->unit);
    schema["description"] = about;
    return schema;
  }

  static Json range_of(const Json& item) {
    return {{"type", "array"}, {"items", item}, {"minItems", 2}, {"maxItems", 2}};
  }

  static Json member_of(const Row& row, Json item) {
    if (row.many && row.kind != Kind::entry) return {{"type", "array"}, {"items", item}};
    if (row.optional && !row.never) return {{"anyOf", Json::array({item, Json{{"type", "null"}}})}};
    return item;
  }

  Json item_of(const Row& row) {
    switch (row.kind) {
      case Kind::number: return number_of(row);
      case Kind::count: return {{"type", "integer"}, {"minimum", 0}};
      case Kind::flag: return {{"type", "boolean"}};
      case Kind::text: return {{"type", "string"}};
      case Kind::range: return range_of(number_of(row));
      case Kind::entry: return {{"type", "object"}, {"additionalProperties", Json{{"type", "number"}}}};
      case Kind::name: return name_of(row);
      case Kind::value: break;
    }
    return value_of(row);
  }

  static Json number_of(const Row& row) {
    Json number{{"type", row.never ? Json::array({"number", "null"}) : Json("number")}};
    if (row.field != nullptr && std::isfinite(row.field->low)) {
      number["minimum"] = json_number(row.field->low);
      number["maximum"] = json_number(row.field->high);
    }
    return number;
  }

  /// The names as they are in the table, for completion; other spellings of them are read, too.
  static Json name_of(const Row& row) {
    Json names = Json::array();
    std::string pattern;
    for (const std::string_view name : row.names->names) {
      names.push_back(std::string(name));
      pattern += pattern.empty() ? "" : "|";
      for (const char letter : name) {
        const bool is_letter = letter >= 'a' && letter <= 'z';
        pattern += is_letter       ? std::string("[") + letter + static_cast<char>(letter & ~0x20) + "]"
                   : letter == '_' ? "[_ -]"
                                   : std::string(1, letter);
      }
    }
    return {
        {"anyOf", Json::array({Json{{"enum", names}}, Json{{"type", "string"}, {"pattern", "^(" + pattern + ")$"}}})}};
  }

  Json value_of(const Row& row) {
    Json any = Json::array();
    for (const auto form_of_item : row.forms) {
      const Form& form = form_of_item();
      any.push_back(Json{{"$ref", "#/$defs/" + define(form, row.forms.size() > 1)}});
      if (!form.shorthand.empty()) any.push_back(Json{{"type", "string"}});
    }
    return any.size() == 1 ? any[0] : Json{{"anyOf", any}};
  }

  std::string define(const Form& form, bool is_one_of_several) {
    const std::string name(form.name);
    if (definitions_.contains(name)) return name;
    definitions_[name] = nullptr;  // it may hold itself
    Json table = table_of(form);
    add_heading(table);
    if (is_one_of_several) table["properties"]["type"] = Json{{"const", name}};
    definitions_[name] = table;
    return name;
  }

  Json definitions_ = Json::object();
};

}  // namespace

std::string schema_of(const Form& form) { return Schema().of(form).dump(1) + "\n"; }

}  // namespace ferment
