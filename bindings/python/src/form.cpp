#include "form.hpp"

#include <pybind11/stl.h>

#include <algorithm>
#include <unordered_map>
#include <vector>

#include <ferment/base/error.hpp>

using namespace ferment;
using namespace pybind11::literals;

namespace {

std::unordered_map<const Form*, PythonClass>& classes() {
  static std::unordered_map<const Form*, PythonClass> table;
  return table;
}

const PythonClass& class_of(const Form& form) { return classes().at(&form); }

std::string type_and_value(const py::handle& value) {
  return py::cast<std::string>(py::type::of(value).attr("__name__")) + " " + py::cast<std::string>(py::repr(value));
}

std::string names_of_forms(const Row& row) {
  std::string names;
  for (std::size_t i = 0; i < row.forms.size(); ++i)
    names.append(i == 0 ? "" : i + 1 == row.forms.size() ? " or " : ", ").append(row.forms[i]().name);
  return names;
}

std::string wanted(const Row& row) {
  switch (row.kind) {
    case Kind::count: return "a whole number from 0";
    case Kind::flag: return "True or False";
    case Kind::text: return "a text";
    case Kind::name: {
      std::string names;
      for (const std::string_view name : row.names->names) names.append(names.empty() ? "" : ", ").append(name);
      return "one of " + names;
    }
    case Kind::range: return "two numbers, (lowest, highest)";
    case Kind::value: return "a " + names_of_forms(row);
    case Kind::number: break;
  }
  return "a number";
}

[[noreturn]] void refuse(const Row& row, const py::handle& value) {
  const std::string name(row.name);
  std::string advice;
  if (row.kind == Kind::value) advice = "see help(libferment." + std::string(row.forms[0]().name) + ")";
  const std::string items = row.many ? "a list, of which each is " : "";
  throw InvalidInput(items + wanted(row) + " is wanted, got " + type_and_value(value),
                     {.path = name, .advice = advice});
}

Field field_of(const Row& row) {
  Field field = row.field == nullptr ? Field{.label = row.name} : *row.field;
  field.name = row.name;
  return field;
}

double number_from(const Row& row, const py::handle& value) {
  if (PyFloat_Check(value.ptr())) return PyFloat_AsDouble(value.ptr());
  return hours_of(field_of(row), Duration{py::reinterpret_borrow<py::object>(value)});
}

std::pair<double, double> range_from(const Row& row, const py::handle& value) {
  if (!py::isinstance<py::sequence>(value) || py::isinstance<py::str>(value) || py::len(value) != 2) refuse(row, value);
  const auto two = py::reinterpret_borrow<py::sequence>(value);
  return {number_from(row, py::object(two[0])), number_from(row, py::object(two[1]))};
}

void take(const Row& row, void* object, const py::handle& value, bool plain);

/// One of the forms as a dict, told by "type" where there are several.
bool take_dict(const Row& row, void* object, const py::dict& values) {
  for (std::size_t i = 0; i < row.forms.size(); ++i) {
    const Form& form = row.forms[i]();
    if (row.forms.size() > 1 &&
        !(values.contains("type") && py::str(values["type"]).equal(py::str(std::string(form.name)))))
      continue;
    const std::shared_ptr<void> made = class_of(form).copy(form.blank.get());
    try {
      fill_from_dict(form, made.get(), values);
    } catch (const Error& error) {
      throw_within(row.many ? std::string(row.name) + "[" + std::to_string(row.size(object)) + "]"
                            : std::string(row.name),
                   error);
    }
    row.add(object, made.get(), static_cast<int>(i));
    return true;
  }
  return false;
}

/// A text for a value whose form has a shorthand: mixing="hand".
bool take_shorthand(const Row& row, void* object, const py::handle& value) {
  for (std::size_t i = 0; i < row.forms.size(); ++i) {
    const Form& form = row.forms[i]();
    if (form.shorthand.empty()) continue;
    const std::shared_ptr<void> made = class_of(form).copy(form.blank.get());
    take(*find_row(form, form.shorthand), made.get(), value, false);
    row.add(object, made.get(), static_cast<int>(i));
    return true;
  }
  return false;
}

void take_value(const Row& row, void* object, const py::handle& value, bool plain) {
  for (std::size_t i = 0; i < row.forms.size(); ++i) {
    if (const void* const read = class_of(row.forms[i]()).read(value); read != nullptr)
      return row.add(object, read, static_cast<int>(i));
  }
  if (plain && py::isinstance<py::dict>(value) && take_dict(row, object, py::reinterpret_borrow<py::dict>(value)))
    return;
  if (py::isinstance<py::str>(value) && take_shorthand(row, object, value)) return;
  refuse(row, value);
}

void take_item(const Row& row, void* object, const py::handle& value, bool plain) {
  switch (row.kind) {
    case Kind::number: {
      const double number = number_from(row, value);
      return row.add(object, &number);
    }
    case Kind::count: {
      if (!PyLong_Check(value.ptr()) || PyBool_Check(value.ptr())) refuse(row, value);
      const std::size_t count = PyLong_AsSize_t(value.ptr());
      if (PyErr_Occurred() != nullptr) {
        PyErr_Clear();
        refuse(row, value);
      }
      return row.add(object, &count);
    }
    case Kind::flag: {
      if (!PyBool_Check(value.ptr())) refuse(row, value);
      const bool flag = value.ptr() == Py_True;
      return row.add(object, &flag);
    }
    case Kind::text: {
      if (!py::isinstance<py::str>(value)) refuse(row, value);
      const auto text = py::cast<std::string>(value);
      return row.add(object, &text);
    }
    case Kind::name: {
      if (!py::isinstance<py::str>(value)) refuse(row, value);
      return row.add(object, nullptr, value_in(*row.names, py::cast<std::string>(value)));
    }
    case Kind::range: {
      const std::pair<double, double> range = range_from(row, value);
      return row.add(object, &range);
    }
    case Kind::value: return take_value(row, object, value, plain);
  }
}

void take(const Row& row, void* object, const py::handle& value, bool plain) {
  if (value.is_none() && row.optional) return row.clear(object);
  if (!row.many) return take_item(row, object, value, plain);
  row.clear(object);
  if (row.kind == Kind::number) {
    for (const double number : column_of(field_of(row), Time{py::reinterpret_borrow<py::object>(value)}))
      row.add(object, &number);
    return;
  }
  if (!py::isinstance<py::sequence>(value) || py::isinstance<py::str>(value)) refuse(row, value);
  for (const py::handle item : value) take_item(row, object, item, plain);
}

const Row& row_named(const Form& form, const py::handle& name) {
  const auto text = py::cast<std::string>(name);
  const Row* const row = find_row(form, text);
  if (row == nullptr) refuse_member(form, text);
  return *row;
}

void require_given(const Form& form, const Row& row, bool given) {
  if (given) return;
  throw InvalidInput(std::string(form.name) + " needs " + std::string(row.name) + ": " + std::string(row.about()),
                     {.path = std::string(row.name), .advice = "see help(libferment." + std::string(form.name) + ")"});
}

py::object shown_item(const Row& row, const void* object, std::size_t i) {
  const void* const item = row.item(object, i);
  switch (row.kind) {
    case Kind::number: return py::float_(*static_cast<const double*>(item));
    case Kind::count: return py::int_(*static_cast<const std::size_t*>(item));
    case Kind::flag: return py::bool_(*static_cast<const bool*>(item));
    case Kind::text: return py::str(*static_cast<const std::string*>(item));
    case Kind::range: return py::cast(*static_cast<const std::pair<double, double>*>(item));
    case Kind::name: return py::str(std::string(name_in(*row.names, row.choice(object, i))));
    case Kind::value: break;
  }
  return class_of(row.forms[static_cast<std::size_t>(row.choice(object, i))]()).cast(item);
}

py::object plain_item(const Row& row, const void* object, std::size_t i) {
  if (row.kind != Kind::value) return shown_item(row, object, i);
  const Form& form = row.forms[static_cast<std::size_t>(row.choice(object, i))]();
  Document content;
  if (row.forms.size() > 1) content["type"] = py::str(std::string(form.name));
  for (const auto& [name, value] : as_dict(form, row.item(object, i))) content[name] = value;
  return content;
}

template <class Show>
py::object shown_by(const Row& row, const void* object, Show show) {
  const std::size_t size = row.size(object);
  if (!row.many) return size == 0 ? py::object(py::none()) : show(row, object, std::size_t{0});
  py::list items(size);
  for (std::size_t i = 0; i < size; ++i) items[i] = show(row, object, i);
  return items;
}

/// A default as it can be written in a signature; what is no literal is an ellipsis.
std::string default_of(const Form& form, const Row& row) {
  const py::object value = shown(row, form.blank.get());
  return row.kind == Kind::value && !row.many && !value.is_none() ? "..." : py::cast<std::string>(py::repr(value));
}

}  // namespace

void register_class(const Form& form, const PythonClass& its) { classes()[&form] = its; }

py::object shown(const Row& row, const void* object) { return shown_by(row, object, shown_item); }

void change(const Form& form, void* object, const py::dict& changes) {
  for (const auto& [name, value] : changes) take(row_named(form, name), object, value, false);
  require(form, object);
}

py::dict with_names(const Form& form, const std::vector<std::string_view>& left_out, std::size_t positional,
                    const py::args& args, const py::dict& keywords) {
  std::vector<const Row*> rows;
  for (const Row& row : form.rows) {
    if (std::find(left_out.begin(), left_out.end(), row.name) == left_out.end()) rows.push_back(&row);
  }
  if (args.size() > positional) {
    const std::string most = positional == 0 ? "no arguments" : "at most " + std::to_string(positional);
    throw InvalidInput(std::string(form.name) + " takes " + most + " without a name, got " +
                           std::to_string(args.size()),
                       {.advice = "name them, such as " + std::string(rows[positional]->name) + "=..."});
  }
  const py::dict all(keywords.attr("copy")());
  for (std::size_t i = 0; i < args.size(); ++i) {
    const py::str name{std::string(rows[i]->name)};
    if (all.contains(name))
      throw InvalidInput(std::string(rows[i]->name) + " is given twice", {.path = std::string(rows[i]->name)});
    all[name] = args[i];
  }
  return all;
}

void fill(const Form& form, void* object, std::size_t positional, const py::args& args, const py::dict& keywords) {
  const py::dict all = args.empty() ? keywords : with_names(form, {}, positional, args, keywords);
  for (const auto& [name, value] : all) take(row_named(form, name), object, value, false);
  for (const Row& row : form.rows) require_given(form, row, !row.given || all.contains(py::str(std::string(row.name))));
  require(form, object);
}

void fill_from_dict(const Form& form, void* object, const py::dict& values) {
  for (const auto& [name, value] : values) {
    if (!py::isinstance<py::str>(name)) refuse_member(form, py::cast<std::string>(py::repr(name)));
    if (py::str("type").equal(name) && find_row(form, "type") == nullptr) continue;
    take(row_named(form, name), object, value, true);
  }
  for (const Row& row : form.rows)
    require_given(form, row, !(row.given || form.complete) || values.contains(py::str(std::string(row.name))));
  require(form, object);
}

Document as_dict(const Form& form, const void* object) {
  Document values;
  for (const Row& row : form.rows) values[py::str(std::string(row.name))] = shown_by(row, object, plain_item);
  return values;
}

py::dict keywords_of(const Form& form, const void* object) {
  py::dict values;
  for (const Row& row : form.rows) values[py::str(std::string(row.name))] = shown(row, object);
  return values;
}

std::string repr_of(const Form& form, const void* object) {
  std::string text = std::string(form.name) + "(";
  for (const Row& row : form.rows) {
    if (!row.given && same_member(row, object, form.blank.get())) continue;
    text.append(text.back() == '(' ? "" : ", ").append(row.name).append("=");
    text += py::cast<std::string>(py::repr(shown(row, object)));
  }
  return text + ")";
}

std::string signature_of(const Form& form, std::string_view call, std::size_t positional,
                         const std::vector<std::string_view>& left_out, std::string_view more) {
  std::string text(call);
  text += call == "__init__" ? "(self" : "(";
  std::size_t written = 0;
  for (const Row& row : form.rows) {
    if (std::find(left_out.begin(), left_out.end(), row.name) != left_out.end()) continue;
    const auto add = [&](const std::string& part) { text.append(text.back() == '(' ? "" : ", ").append(part); };
    if (written++ == positional) add("*");
    add(std::string(row.name) + (row.given ? "" : "=" + default_of(form, row)));
  }
  return text.append(more) + ")\n--\n\n";
}

std::string doc_of(const Form& form) {
  std::string text(form.meaning);
  text += "\n\nArgs:\n";
  for (const Row& row : form.rows) {
    const std::string unit = row.field == nullptr || row.field->unit.empty() ? "" : ", " + std::string(row.field->unit);
    text.append("    ").append(row.name).append(": ").append(row.about()).append(unit).append(".\n");
  }
  return text + "\nRaises InvalidInput.";
}

namespace {

std::unordered_map<std::string, const Form*>& options_by_function() {
  static std::unordered_map<std::string, const Form*> table;
  return table;
}

const char* type_of(Kind kind) {
  switch (kind) {
    case Kind::count: return "int";
    case Kind::flag: return "bool";
    case Kind::text:
    case Kind::name: return "str";
    default: return "float";
  }
}

}  // namespace

void register_options(const char* function, const Form& form) { options_by_function()[function] = &form; }

void fill_options(const char* function, const Form& form, void* options, const py::dict& keywords) {
  for (const auto& [name, value] : keywords) {
    if (find_row(form, py::cast<std::string>(name)) == nullptr)  // told by whoever knows the whole signature
      throw py::type_error(std::string(function) + "(): incompatible function arguments.");
    take(row_named(form, name), options, value, false);
  }
  require(form, options);
}

std::string options_of(const std::string& function) {
  const auto found = options_by_function().find(function);
  if (found == options_by_function().end()) return "";
  std::string text;
  for (const Row& row : found->second->rows) {
    const bool is_time = row.field != nullptr && row.field->quantity == Quantity::duration;
    text.append(text.empty() ? "" : ", ").append(row.name).append(": ").append(type_of(row.kind));
    text.append(is_time ? " | datetime.timedelta" : "").append(row.optional ? " | None" : "").append(" = ");
    text += default_of(*found->second, row);
  }
  return text;
}

void bind_forms(py::module_& module) {
  module.def("_forms", [] {
    py::list all;
    for (const auto& [form, its] : classes()) {
      py::list rows;
      for (const Row& row : form->rows) {
        py::list kinds;
        for (const auto form_of_item : row.forms) kinds.append(py::str(std::string(form_of_item().name)));
        const bool is_time = row.field != nullptr && row.field->quantity == Quantity::duration;
        const bool has_shorthand = std::any_of(row.forms.begin(), row.forms.end(),
                                               [](const auto of_item) { return !of_item().shorthand.empty(); });
        py::list names;
        if (row.names != nullptr) {
          for (const std::string_view name : row.names->names) names.append(py::str(std::string(name)));
        }
        rows.append(py::dict("name"_a = std::string(row.name), "kind"_a = static_cast<int>(row.kind),
                             "given"_a = row.given, "optional"_a = row.optional, "many"_a = row.many, "names"_a = names,
                             "forms"_a = kinds, "is_time"_a = is_time, "has_shorthand"_a = has_shorthand,
                             "about"_a = std::string(row.about()),
                             "unit"_a = std::string(row.field == nullptr ? "" : row.field->unit)));
      }
      all.append(py::dict("name"_a = std::string(form->name), "rows"_a = rows));
    }
    return all;
  });
}
