// The form of a value: a row for each member, with its name, its field and whether it must be given. What is refused
// and in which words, the Python class, documents and tables all follow from it.
#pragma once

#include <cmath>
#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/given.hpp>
#include <ferment/base/names.hpp>

namespace ferment {

struct Form;

/// The form of a type; it stands in the room of the type.
template <class Value>
const Form& form_of();

/// What one item of a member is; an entry is a number under a name.
enum class Kind { number, count, flag, text, name, range, entry, value };

/// How a member is reached in an object of its type: it has one item, or none (optional), or many (a list).
struct Access {
  std::size_t (*size)(const void* object);
  const void* (*item)(const void* object, std::size_t i);  ///< a double, std::size_t, bool, std::string, pair or value
  int (*choice)(const void* object, std::size_t i);        ///< of a name its value, of a value which of its forms
  void (*clear)(void* object);                             ///< leaves none, where none can be
  void (*add)(void* object, const void* item, int choice);
};

/// A member of a value.
struct Row {
  std::string_view name = {};  ///< as in code, documents and options
  Kind kind = Kind::number;
  bool given = false;             ///< must be given: it has no default
  bool optional = false;          ///< may be left out
  bool many = false;              ///< a list
  bool never = false;             ///< an infinite number means never: there is none, then
  bool column = false;            ///< a list of numbers of a result, for programs that work on them as a whole
  const Field* field = nullptr;   ///< bounds of numbers, if they have any
  std::string_view meaning = {};  ///< its field's, if not its own
  const Names* names = nullptr;   ///< of a name
  void (*known)(const std::string& name) = nullptr;  ///< refuses a text that no table has
  std::vector<const Form& (*)()> forms = {};         ///< of a value: one of them
  Access access = {};
  const void* (*part)(const void* object) = nullptr;  ///< the part of the object that has the member, if not itself

  std::string_view about() const { return meaning.empty() && field != nullptr ? field->meaning : meaning; }
  std::size_t size(const void* object) const { return is_never(object) ? 0 : access.size(in(object)); }
  const void* item(const void* object, std::size_t i = 0) const { return access.item(in(object), i); }
  int choice(const void* object, std::size_t i = 0) const { return access.choice(in(object), i); }
  void clear(void* object) const { access.clear(in(object)); }
  void add(void* object, const void* item, int choice = 0) const { access.add(in(object), item, choice); }

 private:
  bool is_never(const void* object) const {
    return never && kind == Kind::number && !many && std::isinf(*static_cast<const double*>(item(object)));
  }
  const void* in(const void* object) const { return part == nullptr ? object : part(object); }
  void* in(void* object) const { return const_cast<void*>(in(static_cast<const void*>(object))); }
};

struct Form {
  std::string_view name;
  std::string_view meaning;
  std::vector<Row> rows;
  std::shared_ptr<const void> blank;  ///< a value with all defaults; what must be given is not meant
  std::vector<std::vector<std::string_view>> one_of = {};  ///< of each group exactly one must be given
  std::function<void(const void*)> contradictions = {};    ///< refuses members that do not fit each other
  std::string_view shorthand = {};                         ///< the text that may stand for the whole
  bool complete = false;                                   ///< a document of it must not leave anything out
  bool sparse = false;                                     ///< written by people: leaves out what is at its default
  std::shared_ptr<void> (*copy)(const void* value) = nullptr;
  void (*assign)(void* to, void* from) = nullptr;  ///< moves a value
};

/// The row of that name; nullptr if there is none.
FERMENT_API const Row* find_row(const Form& form, std::string_view name);

/// The error for a member that a value does not have, with the near name.
[[noreturn]] FERMENT_API void refuse_member(const Form& form, std::string_view name);

/// Refuses a value that its form refuses; a nested one names the way to it: "waters[1].temperature_c".
/// @throws InvalidInput
FERMENT_API void require(const Form& form, const void* object);

/// Whether a member of two values of a form is the same, and whether all are.
FERMENT_API bool same_member(const Row& row, const void* a, const void* b);
FERMENT_API bool same(const Form& form, const void* a, const void* b);

template <class Value>
concept HasForm = requires {
  form_of<std::remove_cvref_t<Value>>();
}
&&std::is_class_v<Value>;

// ---- how a row is written: row<&Water::cup_h>("cup_h", field::cup_h) ---------------------------------------------

namespace forms {

/// One item: how it is stored, and its kind.
template <class T>
struct Item {
  static_assert(std::is_class_v<T>, "a member that no form knows");
  static constexpr Kind kind = Kind::value;
  static const void* at(const T& item) { return &item; }
  static int choice(const T&) { return 0; }
  static T made(const void* item, int) { return *static_cast<const T*>(item); }
  static void describe(Row& row) { row.forms = {&form_of<T>}; }
};
template <class T, Kind its_kind>
struct PlainItem {
  static constexpr Kind kind = its_kind;
  static const void* at(const T& item) { return &item; }
  static int choice(const T&) { return 0; }
  static T made(const void* item, int) { return *static_cast<const T*>(item); }
  static void describe(Row&) {}
};
template <>
struct Item<double> : PlainItem<double, Kind::number> {};
template <>
struct Item<std::size_t> : PlainItem<std::size_t, Kind::count> {};
template <>
struct Item<bool> : PlainItem<bool, Kind::flag> {};
template <>
struct Item<std::string> : PlainItem<std::string, Kind::text> {};
template <>
struct Item<std::pair<double, double>> : PlainItem<std::pair<double, double>, Kind::range> {};
template <>
struct Item<std::pair<std::string, double>> : PlainItem<std::pair<std::string, double>, Kind::entry> {};
template <>
struct Item<Given> {
  static constexpr Kind kind = Kind::number;
  static const void* at(const Given& item) { return &item.value; }
  static int choice(const Given&) { return 0; }
  static Given made(const void* item, int) { return *static_cast<const double*>(item); }
  static void describe(Row& row) { row.given = true; }
};
template <class T>
requires std::is_enum_v<T>
struct Item<T> {
  static constexpr Kind kind = Kind::name;
  static const void* at(const T& item) { return &item; }
  static int choice(const T& item) { return static_cast<int>(item); }
  static T made(const void*, int choice) { return static_cast<T>(choice); }
  static void describe(Row& row) { row.names = &names_of<T>(); }
};
template <class... T>
struct Item<std::variant<T...>> {
  using Variant = std::variant<T...>;
  static constexpr Kind kind = Kind::value;
  static const void* at(const Variant& item) {
    return std::visit([](const auto& value) -> const void* { return &value; }, item);
  }
  static int choice(const Variant& item) { return static_cast<int>(item.index()); }
  static Variant made(const void* item, int choice) {
    Variant (*const makers[])(const void*) = {
        [](const void* one) -> Variant { return *static_cast<const T*>(one); }...};
    return makers[choice](item);
  }
  static void describe(Row& row) { row.forms = {&form_of<T>...}; }
};

/// One, none or many items.
template <class T>
struct Items {
  using One = T;
  static constexpr bool optional = false, many = false;
  static std::size_t size(const T&) { return 1; }
  static const T& item(const T& member, std::size_t) { return member; }
  static void clear(T&) {}
  static void add(T& member, T item) { member = std::move(item); }
};
template <class T>
struct Items<std::optional<T>> {
  using One = T;
  static constexpr bool optional = true, many = false;
  static std::size_t size(const std::optional<T>& member) { return member ? 1 : 0; }
  static const T& item(const std::optional<T>& member, std::size_t) { return *member; }
  static void clear(std::optional<T>& member) { member.reset(); }
  static void add(std::optional<T>& member, T item) { member = std::move(item); }
};
template <class T>
struct Items<std::vector<T>> {
  using One = T;
  static constexpr bool optional = false, many = true;
  static std::size_t size(const std::vector<T>& member) { return member.size(); }
  static const T& item(const std::vector<T>& member, std::size_t i) { return member[i]; }
  static void clear(std::vector<T>& member) { member.clear(); }
  static void add(std::vector<T>& member, T item) { member.push_back(std::move(item)); }
};

template <auto member>
struct Member;
template <class Value, class T, T Value::*member>
struct Member<member> {
  using List = Items<T>;
  using One = Item<typename List::One>;
  static const T& of(const void* object) { return static_cast<const Value*>(object)->*member; }
  static T& of(void* object) { return static_cast<Value*>(object)->*member; }

  static constexpr Access access{
      .size = [](const void* object) { return List::size(of(object)); },
      .item = [](const void* object, std::size_t i) { return One::at(List::item(of(object), i)); },
      .choice = [](const void* object, std::size_t i) { return One::choice(List::item(of(object), i)); },
      .clear = [](void* object) { List::clear(of(object)); },
      .add = [](void* object, const void* item, int choice) { List::add(of(object), One::made(item, choice)); }};

  static Row row() {
    Row row{.kind = One::kind, .optional = List::optional, .many = List::many, .access = access};
    One::describe(row);
    return row;
  }
};

}  // namespace forms

/// A number with its field: bounds, unit, meaning.
template <auto member>
Row row(std::string_view name, const Field& field) {
  Row row = forms::Member<member>::row();
  row.name = name;
  row.field = &field;
  return row;
}
/// The same where the member is called as its field is.
template <auto member>
Row row(const Field& field) {
  return row<member>(field.name, field);
}
/// Anything else.
template <auto member>
Row row(std::string_view name, std::string_view meaning) {
  Row row = forms::Member<member>::row();
  row.name = name;
  row.meaning = meaning;
  return row;
}

/// A row that must be given although its type has a default.
inline Row must_be_given(Row row) {
  row.given = true;
  return row;
}
/// An hour that may never come: infinite in C++, none in documents and Python.
inline Row or_never(Row row) {
  row.never = row.optional = true;
  return row;
}
/// A list in which some may be such hours: infinite in C++ and Python's columns, null in documents.
inline Row never_in(Row row) {
  row.never = true;
  return row;
}
inline Row column(Row row) {
  row.column = true;
  return row;
}
/// A text that must be a name of a table: `known` throws if it is none.
inline Row of_table(Row row, void (*known)(const std::string&)) {
  row.known = known;
  return row;
}

/// The rows of a part, as rows of the whole: a mix shows the members of its formula.
template <auto member>
std::vector<Row> rows_of_part() {
  const auto rows_of = []<class Whole, class Part>(Part Whole::*) {
    std::vector<Row> rows = form_of<Part>().rows;
    for (Row& row : rows)
      row.part = [](const void* object) -> const void* { return &(static_cast<const Whole*>(object)->*member); };
    return rows;
  };
  return rows_of(member);
}

/// Rows one after the other.
inline std::vector<Row> joined(std::vector<Row> first, std::vector<Row> second) {
  for (Row& row : second) first.push_back(std::move(row));
  return first;
}

/// A form; `contradictions` refuses members that do not fit each other.
template <class Value>
Form made_form(std::string_view name, std::string_view meaning, Value blank, std::vector<Row> rows,
               void (*contradictions)(const Value&) = nullptr) {
  Form form{name, meaning, std::move(rows), std::make_shared<const Value>(std::move(blank))};
  form.copy = [](const void* value) -> std::shared_ptr<void> {
    return std::make_shared<Value>(*static_cast<const Value*>(value));
  };
  form.assign = [](void* to, void* from) { *static_cast<Value*>(to) = std::move(*static_cast<Value*>(from)); };
  if (contradictions != nullptr)
    form.contradictions = [contradictions](const void* object) { contradictions(*static_cast<const Value*>(object)); };
  return form;
}

/// Refuses what the form of the value refuses. @throws InvalidInput
template <HasForm Value>
void require(const Value& value) {
  require(form_of<Value>(), &value);
}

}  // namespace ferment
