#include "day/json.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/day/document.hpp>

#include "base/text.hpp"

namespace ferment {
namespace {

constexpr std::size_t most_keys = 1000;  // of one table; no form has so many
constexpr std::size_t longest_key = 100;

/// Builds the tree from events. The library would take the last of two equal keys, and any depth.
class Builder final : public Json::json_sax_t {
 public:
  explicit Builder(std::string_view text) : text_(text) {}
  Json tree() && { return std::move(root_); }

  bool null() override { return put(nullptr); }
  bool boolean(bool value) override { return put(value); }
  bool number_integer(Json::number_integer_t value) override { return put(static_cast<double>(value)); }
  bool number_unsigned(Json::number_unsigned_t value) override { return put(static_cast<double>(value)); }
  bool number_float(double value, const std::string&) override { return put(value); }
  bool string(std::string& value) override { return put(std::move(value)); }
  bool binary(Json::binary_t&) override { return false; }  // JSON text has none
  bool start_object(std::size_t) override { return open(Json::object()); }
  bool start_array(std::size_t) override { return open(Json::array()); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(std::string& name) override {
    const Json& table = *open_.back();
    if (name.size() > longest_key)
      throw InvalidInput("a key of " + std::to_string(name.size()) + " letters is unknown",
                         {.path = path(), .advice = "none is so long"});
    const bool is_there = table.contains(name);
    keys_.back() = std::move(name);
    if (is_there) throw InvalidInput("it stands twice", {.path = path(), .advice = "leave one of the two out"});
    if (table.size() >= most_keys)
      throw InvalidInput("a table has more than " + std::to_string(most_keys) + " keys",
                         {.path = path(), .advice = "no value has so many"});
    return true;
  }

  bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& problem) override {
    const std::size_t at = std::min(position > 0 ? position - 1 : 0, text_.size());
    const auto before = text_.substr(0, at);
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    const std::size_t column = at - (before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1) + 1;
    constexpr int number_overflow = 406;
    const bool is_ascii = at >= text_.size() || static_cast<unsigned char>(text_[at]) < 0x80;
    throw InvalidInput((problem.id == number_overflow ? "a number too large for any dough at line "
                        : at >= text_.size()          ? "the text breaks off at line "
                                                      : "it is not valid JSON at line ") +
                           std::to_string(line) + ", column " + std::to_string(column),
                       {.path = path(),
                        .advice = is_ascii ? "look there for a comma, a quote or a bracket"
                                           : "look there for a letter that is no UTF-8"});
  }

  /// The way to what is being read.
  std::string path() const {
    std::string path;
    for (std::size_t i = 0; i < open_.size(); ++i) {
      if (open_[i]->is_array())
        path.append("[").append(std::to_string(items_at(i))).append("]");
      else if (!keys_[i].empty())
        path.append(path.empty() ? "" : ".").append(keys_[i]);
    }
    return path;
  }

 private:
  /// Which item of a list is being read: the last one if it is open itself.
  std::size_t items_at(std::size_t i) const { return open_[i]->size() - (i + 1 < open_.size() ? 1 : 0); }

  Json* put(Json value) {
    if (open_.empty()) return &(root_ = std::move(value));
    Json& whole = *open_.back();
    if (whole.is_array()) {
      whole.push_back(std::move(value));
      return &whole.back();
    }
    return &(whole[keys_.back()] = std::move(value));
  }
  bool open(Json container) {
    if (open_.size() >= deepest_document)
      throw InvalidInput("tables and lists stand more than " + std::to_string(deepest_document) + " deep in each other",
                         {.path = path(), .advice = "no value is so deep"});
    open_.push_back(put(std::move(container)));
    keys_.emplace_back();
    return true;
  }
  bool close() {
    open_.pop_back();
    keys_.pop_back();
    return true;
  }

  std::string_view text_;
  Json root_;
  std::vector<Json*> open_;
  std::vector<std::string> keys_;  // of each open table the key under way
};

}  // namespace

Json parsed(std::string_view text) {
  if (text.size() > longest_document) {
    throw InvalidInput("the text has " + std::to_string(text.size()) + " bytes, and a document at most " +
                           std::to_string(longest_document),
                       {.advice = "is it a document? Long temperature logs may be thinned"});
  }
  if (text.empty()) throw InvalidInput("the text is empty", {.advice = "a document begins with {"});
  Builder builder(text);
  Json::sax_parse(text, &builder);
  return std::move(builder).tree();
}

std::string text_of(const Json& json) {
  try {
    return json.dump();
  } catch (const Json::type_error&) {
    throw InvalidInput("a text in it is no UTF-8", {.advice = "documents are UTF-8 throughout"});
  }
}

Json json_number(double value) {
  constexpr double exact = 9007199254740992;  // 2^53
  const bool is_whole = std::trunc(value) == value && std::abs(value) < exact && !(value == 0 && std::signbit(value));
  return is_whole ? Json(static_cast<std::int64_t>(value)) : Json(value);
}

std::string begin_of(const std::string& text, std::size_t most) {
  std::size_t end = std::min(text.size(), most);
  while (end > 0 && end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return text.substr(0, end);
}

std::string described(const Json& json) {
  constexpr std::size_t shown = 40;
  switch (json.type()) {
    case Json::value_t::null: return "null";
    case Json::value_t::boolean: return json.get<bool>() ? "true" : "false";
    case Json::value_t::object: return "a table";
    case Json::value_t::array: return "a list";
    case Json::value_t::string: {
      const auto& text = json.get_ref<const std::string&>();
      const std::string begin = begin_of(text, shown);
      return "the text \"" + begin + (begin.size() < text.size() ? "…\"" : "\"");
    }
    default: return "the number " + number(json.get<double>());
  }
}

}  // namespace ferment
