#include "form.hpp"

#include <pybind11/numpy.h>
#include <pybind11/stl.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <unordered_map>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/day/document.hpp>

using namespace ferment;
using namespace pybind11::literals;

namespace {

std::unordered_map<const Form*, PythonClass>& classes() {
  static std::unordered_map<const Form*, PythonClass> table;
  return table;
}

const PythonClass& class_of(const Form& form) { return classes().at(&form); }

/// The value in an object, or nullptr if it is of another class.
void* value_in(const PythonClass& its, py::handle object) {
  if (PyObject_TypeCheck(object.ptr(), reinterpret_cast<PyTypeObject*>(its.type.ptr())) == 0) return nullptr;
  return reinterpret_cast<py::detail::instance*>(object.ptr())->get_value_and_holder().value_ptr();
}

const void* value_of(const Form& form, py::handle self) {
  const void* const value = value_in(class_of(form), self);
  if (value == nullptr) throw py::type_error("self is no " + std::string(form.name));
  return value;
}

using Made = std::unique_ptr<void, void (*)(void*)>;
Made copy_of(const Form& form, const void* value) { return {class_of(form).copy(value), class_of(form).destroy}; }
Made blank_of(const Form& form) { return copy_of(form, form.blank.get()); }

/// The member's name as Python can write it: `from` is a word of the language.
std::string python_name(const Row& row) { return row.name == "from" ? "from_" : std::string(row.name); }

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
    case Kind::entry: return "a dict of numbers by their names";
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
  Field field = row.field == nullptr ? Field{"", row.name, ""} : *row.field;
  field.name = row.name;
  return field;
}

double number_from(const Row& row, const py::handle& value) {
  if (row.never && value.is_none()) return std::numeric_limits<double>::infinity();
  if (PyFloat_Check(value.ptr())) return PyFloat_AsDouble(value.ptr());
  return hours_of(field_of(row), Duration{py::reinterpret_borrow<py::object>(value)});
}

std::pair<double, double> range_from(const Row& row, const py::handle& value) {
  if (!py::isinstance<py::sequence>(value) || py::isinstance<py::str>(value) || py::len(value) != 2) refuse(row, value);
  const auto two = py::reinterpret_borrow<py::sequence>(value);
  return {number_from(row, py::object(two[0])), number_from(row, py::object(two[1]))};
}

void take(const Row& row, void* object, const py::handle& value);

/// A text for a value whose form has a shorthand: mixing="hand".
bool take_shorthand(const Row& row, void* object, const py::handle& value) {
  for (std::size_t i = 0; i < row.forms.size(); ++i) {
    const Form& form = row.forms[i]();
    if (form.shorthand.empty()) continue;
    const Made made = blank_of(form);
    take(*find_row(form, form.shorthand), made.get(), value);
    row.add(object, made.get(), static_cast<int>(i));
    return true;
  }
  return false;
}

void take_value(const Row& row, void* object, const py::handle& value) {
  for (std::size_t i = 0; i < row.forms.size(); ++i) {
    if (const void* const read = value_in(class_of(row.forms[i]()), value); read != nullptr)
      return row.add(object, read, static_cast<int>(i));
  }
  if (py::isinstance<py::str>(value) && take_shorthand(row, object, value)) return;
  refuse(row, value);
}

void take_item(const Row& row, void* object, const py::handle& value) {
  switch (row.kind) {
    case Kind::number: {
      const double number = number_from(row, value);
      return row.add(object, &number);
    }
    case Kind::count: {
      if (PyBool_Check(value.ptr()) || PyIndex_Check(value.ptr()) == 0) refuse(row, value);  // NumPy's are whole, too
      const auto whole = py::reinterpret_steal<py::object>(PyNumber_Index(value.ptr()));
      const std::size_t count = whole ? PyLong_AsSize_t(whole.ptr()) : 0;
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
      return row.add(object, nullptr, ferment::value_in(*row.names, py::cast<std::string>(value)));
    }
    case Kind::range: {
      const std::pair<double, double> range = range_from(row, value);
      return row.add(object, &range);
    }
    case Kind::entry: refuse(row, value);
    case Kind::value: return take_value(row, object, value);
  }
}

void take_entries(const Row& row, void* object, const py::handle& values) {
  if (!py::isinstance<py::dict>(values)) refuse(row, values);
  for (const auto& [name, value] : py::reinterpret_borrow<py::dict>(values)) {
    const std::pair<std::string, double> entry{py::cast<std::string>(py::str(name)), number_from(row, value)};
    row.add(object, &entry);
  }
}

void take(const Row& row, void* object, const py::handle& value) {
  if (value.is_none() && row.never) return take_item(row, object, value);
  if (value.is_none() && row.optional) return row.clear(object);
  if (!row.many) return take_item(row, object, value);
  row.clear(object);
  if (row.kind == Kind::entry) return take_entries(row, object, value);
  if (row.kind == Kind::number) {
    for (const double number : column_of(field_of(row), Time{py::reinterpret_borrow<py::object>(value)}))
      row.add(object, &number);
    return;
  }
  if (!py::isinstance<py::sequence>(value) || py::isinstance<py::str>(value)) refuse(row, value);
  for (const py::handle item : value) take_item(row, object, item);
}

const Row& row_named(const Form& form, const py::handle& name) {
  const auto text = py::cast<std::string>(name);
  const Row* const row = find_row(form, text == "from_" ? "from" : text);
  if (row == nullptr) refuse_member(form, text);
  return *row;
}

void require_given(const Form& form, const Row& row, bool given) {
  if (given) return;
  throw InvalidInput(std::string(form.name) + " needs " + std::string(row.name) + ": " + std::string(row.about()),
                     {.path = std::string(row.name), .advice = "see help(libferment." + std::string(form.name) + ")"});
}

py::object number_or_never(const Row& row, double value) {
  return row.never && std::isinf(value) ? py::object(py::none()) : py::float_(value);
}

py::object shown_item(const Row& row, const void* object, std::size_t i) {
  const void* const item = row.item(object, i);
  switch (row.kind) {
    case Kind::number: return py::float_(*static_cast<const double*>(item));
    case Kind::count: return py::int_(*static_cast<const std::size_t*>(item));
    case Kind::flag: return py::bool_(*static_cast<const bool*>(item));
    case Kind::text: return py::str(*static_cast<const std::string*>(item));
    case Kind::range: {
      const auto& [low, high] = *static_cast<const std::pair<double, double>*>(item);
      return py::make_tuple(number_or_never(row, low), number_or_never(row, high));
    }
    case Kind::entry: return py::cast(*static_cast<const std::pair<std::string, double>*>(item));
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

py::object entries_of(const Row& row, const void* object) {
  NumbersByName entries;
  for (std::size_t i = 0; i < row.size(object); ++i) {
    const auto& [name, value] = *static_cast<const std::pair<std::string, double>*>(row.item(object, i));
    entries[py::str(name)] = value;
  }
  return entries;
}

/// The numbers of a list as a NumPy array that cannot be written to.
template <class Number>
py::object array_of(const Row& row, const void* object) {
  const std::size_t size = row.size(object);
  const auto* const first = size == 0 ? nullptr : static_cast<const Number*>(row.item(object, 0));
  py::array_t<Number> array(static_cast<py::ssize_t>(size), first);
  array.attr("flags").attr("writeable") = false;
  return array;
}

template <class Show>
py::object shown_by(const Row& row, const void* object, Show show) {
  if (row.kind == Kind::entry) return entries_of(row, object);
  const std::size_t size = row.size(object);
  if (!row.many) return size == 0 ? py::object(py::none()) : show(row, object, std::size_t{0});
  py::list items(size);
  for (std::size_t i = 0; i < size; ++i) items[i] = show(row, object, i);
  return items;
}

/// A default as it can be written in a signature; what is no literal is an ellipsis.
std::string default_of(const Form& form, const Row& row) {
  const py::object value = shown_by(row, form.blank.get(), shown_item);
  return row.kind == Kind::value && !row.many && !value.is_none() ? "..." : py::cast<std::string>(py::repr(value));
}

}  // namespace

py::object shown(const Row& row, const void* object) {
  if (!row.column) return shown_by(row, object, shown_item);
  return row.kind == Kind::count ? array_of<std::size_t>(row, object) : array_of<double>(row, object);
}

py::object Framed::operator()(const py::object& self) const {
  return py::module_::import("libferment._values").attr(function)(self);
}

std::string Worded::operator()(const py::object& self) const {
  return py::cast<std::string>(py::module_::import("libferment._values").attr(function)(self));
}

namespace {

void change(const Form& form, void* object, const py::dict& changes) {
  for (const auto& [name, value] : changes) take(row_named(form, name), object, value);
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

py::dict keywords_of(const Form& form, const void* object) {
  py::dict values;
  for (const Row& row : form.rows) values[py::str(std::string(row.name))] = shown(row, object);
  return values;
}

}  // namespace

void fill(const Form& form, void* object, std::size_t positional, const py::args& args, const py::dict& keywords) {
  const py::dict all = args.empty() ? keywords : with_names(form, {}, positional, args, keywords);
  for (const auto& [name, value] : all) take(row_named(form, name), object, value);
  for (const Row& row : form.rows) require_given(form, row, !row.given || all.contains(py::str(std::string(row.name))));
  require(form, object);
}

Document as_dict(const Form& form, const void* object) {
  Document values;
  for (const Row& row : form.rows) values[py::str(std::string(row.name))] = shown_by(row, object, plain_item);
  return values;
}

std::string repr_of(const Form& form, const void* object) {
  std::string text = std::string(form.name) + "(";
  for (const Row& row : form.rows) {
    if (!row.given && same_member(row, object, form.blank.get())) continue;
    text.append(text.back() == '(' ? "" : ", ").append(python_name(row)).append("=");
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
    add(python_name(row) + (row.given ? "" : "=" + default_of(form, row)));
  }
  return text.append(more) + ")\n--\n\n";
}

std::string doc_of(const Form& form) {
  std::string text(form.meaning);
  text += "\n\nArgs:\n";
  for (const Row& row : form.rows) {
    const std::string unit = row.field == nullptr || row.field->unit.empty() ? "" : ", " + std::string(row.field->unit);
    text.append("    ").append(python_name(row)).append(": ").append(row.about()).append(unit).append(".\n");
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
    take(row_named(form, name), options, value);
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
        rows.append(py::dict("name"_a = python_name(row), "kind"_a = static_cast<int>(row.kind), "given"_a = row.given,
                             "optional"_a = row.optional, "many"_a = row.many, "names"_a = names,
                             "column"_a = row.column, "never"_a = row.never, "forms"_a = kinds, "is_time"_a = is_time,
                             "is_moment"_a = is_time && row.field->low < 0, "has_shorthand"_a = has_shorthand,
                             "about"_a = std::string(row.about()),
                             "unit"_a = std::string(row.field == nullptr ? "" : row.field->unit)));
      }
      all.append(py::dict("name"_a = std::string(form->name), "rows"_a = rows));
    }
    return all;
  });
}

namespace {

/// A function of the class with a signature of its own, or none.
template <class Call>
void def(const PythonClass& its, const char* name, Call call, const char* doc = "") {
  its.type.attr(name) = py::cpp_function(call, py::name(name), py::is_method(its.type),
                                         py::sibling(py::getattr(its.type, name, py::none())), doc);
}

void def_members(const Form& form, const PythonClass& its) {
  const py::object property = py::module_::import("builtins").attr("property");
  for (const Row& row : form.rows) {
    const py::cpp_function get([&form, &row](py::handle self) { return shown(row, value_of(form, self)); },
                               py::is_method(its.type));
    its.type.attr(python_name(row).c_str()) = property(get, py::none(), py::none(), std::string(row.about()));
  }
}

void def_constructor(const Form& form, const PythonClass& its, std::size_t positional) {
  const std::string signature = signature_of(form, "__init__", positional);
  its.type.attr("__init__") = py::cpp_function(
      [&form, positional](py::detail::value_and_holder& self, const py::args& args, const py::kwargs& keywords) {
        Made made = blank_of(form);
        fill(form, made.get(), positional, args, keywords);
        self.value_ptr() = made.release();
      },
      py::name("__init__"), py::is_method(its.type), py::detail::is_new_style_constructor(), signature.c_str());
}

}  // namespace

void define(const Form& form, const PythonClass& its, std::size_t positional) {
  classes()[&form] = its;
  py::options options;
  options.disable_function_signatures();
  def_constructor(form, its, positional);
  def_members(form, its);
  const auto cast = its.cast;
  def(
      its, "replace",
      [&form, cast](py::handle self, const py::kwargs& changes) {
        const Made changed = copy_of(form, value_of(form, self));
        change(form, changed.get(), changes);
        return cast(changed.get());
      },
      "replace(self, **changes)\n--\n\nA copy with these members changed. Raises InvalidInput.");
  def(
      its, "to_dict", [&form](py::handle self) { return as_dict(form, value_of(form, self)); },
      "to_dict(self)\n--\n\nAll members, with plain dicts and lists for values inside.");
  its.type.attr("from_dict") = py::staticmethod(py::cpp_function(
      [&form, cast](const py::object& values) {
        const py::object text = py::module_::import("libferment._documents").attr("text_of")(values);
        const Made made = blank_of(form);
        read_document(form, made.get(), py::cast<std::string>(text));
        return cast(made.get());
      },
      py::name("from_dict"), py::scope(its.type),
      "from_dict(values)\n--\n\nThe value that to_dict gave, or of a document as a dict. Raises InvalidInput."));
  def(
      its, "to_json", [&form](py::handle self) { return document_of(form, value_of(form, self)); },
      "to_json(self)\n--\n\nThe value as a document: JSON text, the same in every language. Raises InvalidInput.");
  its.type.attr("from_json") = py::staticmethod(py::cpp_function(
      [&form, cast](const py::object& text) {
        Py_ssize_t size = 0;
        const char* bytes = nullptr;
        if (PyUnicode_Check(text.ptr()) != 0) bytes = PyUnicode_AsUTF8AndSize(text.ptr(), &size);
        if (PyBytes_Check(text.ptr()) != 0) bytes = PyBytes_AS_STRING(text.ptr()), size = PyBytes_GET_SIZE(text.ptr());
        if (bytes == nullptr) {
          PyErr_Clear();
          throw InvalidInput("the text of a document is wanted, got " + type_and_value(text));
        }
        const Made made = blank_of(form);
        read_document(form, made.get(), {bytes, static_cast<std::size_t>(size)});
        return cast(made.get());
      },
      py::name("from_json"), py::scope(its.type),
      "from_json(text)\n--\n\nThe value of a document, to the same digits. Raises InvalidInput with the way to what is "
      "wrong."));
  def(
      its, "save",
      [&form](py::handle self, const py::object& path) {
        py::module_::import("libferment._files")
            .attr("write_text")(path, document_of(form, value_of(form, self)) + "\n");
      },
      "save(self, path)\n--\n\nWrite the document to a file, whole or not at all. Raises InvalidInput.");
  its.type.attr("load") = py::staticmethod(py::cpp_function(
      [&form, cast](const py::object& path) {
        const py::object read = py::module_::import("libferment._files").attr("read_document");
        const Made made = blank_of(form);
        read(path, py::cpp_function([&](const std::string& text) { read_document(form, made.get(), text); }));
        return cast(made.get());
      },
      py::name("load"), py::scope(its.type),
      "load(path)\n--\n\nRead what save wrote, to the same digits. Raises InvalidInput if it is missing or damaged."));
  def(its, "__eq__", [&form](py::handle self, py::handle other) {
    const void* const its_value = value_in(class_of(form), other);
    return its_value != nullptr && same(form, value_of(form, self), its_value);
  });
  def(its, "__hash__", [&form](py::handle self) { return py::hash(py::str(repr_of(form, value_of(form, self)))); });
  def(its, "__repr__", [&form](py::handle self) { return repr_of(form, value_of(form, self)); });
  def(its, "__reduce__", [&form](py::handle self) {
    const py::object rebuilt = py::module_::import("libferment._values").attr("rebuilt");
    return py::make_tuple(rebuilt, py::make_tuple(py::type::of(self), keywords_of(form, value_of(form, self))));
  });
}

void define_maker(const Form& form, const char* name, std::size_t positional, void (*preset)(void*),
                  const std::vector<std::string_view>& left_out, const char* doc) {
  py::options options;
  options.disable_function_signatures();
  const PythonClass& its = class_of(form);
  its.type.attr(name) = py::staticmethod(py::cpp_function(
      [&form, preset, left_out, positional](const py::args& args, const py::kwargs& keywords) {
        const Made made = blank_of(form);
        preset(made.get());
        fill(form, made.get(), 0, py::args(), with_names(form, left_out, positional, args, keywords));
        return class_of(form).cast(made.get());
      },
      py::name(name), py::scope(its.type), (signature_of(form, name, positional, left_out) + doc).c_str()));
}
