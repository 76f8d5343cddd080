// Values in Python, by their forms: built from keywords, read by attribute, compared, copied with changes, shown, kept.
#pragma once

#include <pybind11/pybind11.h>

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <ferment/base/form.hpp>

#include "numbers.hpp"

/// What Python makes of the values of a form.
struct PythonClass {
  py::handle type;
  py::object (*cast)(const void* value);   ///< a copy, as an object
  const void* (*read)(py::handle object);  ///< the value in an object, or nullptr if it is none
  std::shared_ptr<void> (*copy)(const void* value);
};

void register_class(const ferment::Form& form, const PythonClass& its);

/// The member as Python shows it: a number, a text, an object, a list, or None.
py::object shown(const ferment::Row& row, const void* object);

/// Sets the members that are named, and refuses what is not known, missing or wrong. `positional`: how many of the
/// first rows may be given without a name.
void fill(const ferment::Form& form, void* object, std::size_t positional, const py::args& args,
          const py::dict& keywords);

/// Sets members alone: a copy with changes.
void change(const ferment::Form& form, void* object, const py::dict& changes);

/// From what as_dict gave: plain numbers, texts, lists and dicts.
void fill_from_dict(const ferment::Form& form, void* object, const py::dict& values);
Document as_dict(const ferment::Form& form, const void* object);

std::string repr_of(const ferment::Form& form, const void* object);
py::dict keywords_of(const ferment::Form& form, const void* object);

/// "__init__(self, *, mass_g, cup_h=0.3)\n--\n\n", which inspect.signature and notebooks read, and the members'
/// meanings.
std::string signature_of(const ferment::Form& form, std::string_view call, std::size_t positional,
                         const std::vector<std::string_view>& left_out = {}, std::string_view more = {});
std::string doc_of(const ferment::Form& form);

/// The options of a function, whose keywords they are: its signature shows them, as said by register_options.
void register_options(const char* function, const ferment::Form& form);
void fill_options(const char* function, const ferment::Form& form, void* options, const py::dict& keywords);
/// Their part of a signature with types, or nothing.
std::string options_of(const std::string& function);

template <class Options>
Options options_from(const char* function, const py::dict& keywords) {
  const ferment::Form& form = ferment::form_of<Options>();
  Options options = *static_cast<const Options*>(form.blank.get());
  fill_options(function, form, &options, keywords);
  return options;
}

/// `_forms()`: the forms as plain data, from which the stubs are written.
void bind_forms(py::module_& module);

/// The class of a value. Its members are read-only; a value is changed by `replace`.
template <class Value>
py::class_<Value> bind_form(py::module_& module, std::size_t positional = 0) {
  const ferment::Form& form = ferment::form_of<Value>();
  py::options options;
  options.disable_function_signatures();
  py::class_<Value> cls(module, std::string(form.name).c_str(), doc_of(form).c_str());
  register_class(form, {.type = cls,
                        .cast = [](const void* value) { return py::cast(*static_cast<const Value*>(value)); },
                        .read = [](py::handle object) -> const void* {
                          return py::isinstance<Value>(object) ? &py::cast<const Value&>(object) : nullptr;
                        },
                        .copy = [](const void* value) -> std::shared_ptr<void> {
                          return std::make_shared<Value>(*static_cast<const Value*>(value));
                        }});
  const auto blank = [&form] { return *static_cast<const Value*>(form.blank.get()); };
  cls.def(py::init([&form, blank, positional](const py::args& args, const py::kwargs& keywords) {
            Value made = blank();
            fill(form, &made, positional, args, keywords);
            return made;
          }),
          signature_of(form, "__init__", positional).c_str());
  for (const ferment::Row& row : form.rows) {
    cls.def_property_readonly(
        std::string(row.name).c_str(), [&row](const Value& self) { return shown(row, &self); },
        std::string(row.about()).c_str());
  }
  cls.def(
         "replace",
         [&form](const Value& self, const py::kwargs& changes) {
           Value changed = self;
           change(form, &changed, changes);
           return changed;
         },
         "replace(self, **changes)\n--\n\nA copy with these members changed. Raises InvalidInput.")
      .def(
          "to_dict", [&form](const Value& self) { return as_dict(form, &self); },
          "to_dict(self)\n--\n\nAll members, with plain dicts and lists for values inside.")
      .def_static(
          "from_dict",
          [&form, blank](const py::dict& values) {
            Value made = blank();
            fill_from_dict(form, &made, values);
            return made;
          },
          "from_dict(values)\n--\n\nThe value that to_dict gave. Raises InvalidInput.")
      .def("__eq__",
           [&form](const Value& self, const py::object& other) {
             return py::isinstance<Value>(other) && ferment::same(form, &self, &py::cast<const Value&>(other));
           })
      .def("__hash__", [&form](const Value& self) { return py::hash(py::str(repr_of(form, &self))); })
      .def("__repr__", [&form](const Value& self) { return repr_of(form, &self); })
      .def("__reduce__", [&form](const py::object& self) {
        const py::object rebuilt = py::module_::import("libferment._values").attr("rebuilt");
        return py::make_tuple(rebuilt,
                              py::make_tuple(py::type::of(self), keywords_of(form, &py::cast<const Value&>(self))));
      });
  return cls;
}

/// Arguments without a name as those of the first rows that are not left out.
py::dict with_names(const ferment::Form& form, const std::vector<std::string_view>& left_out, std::size_t positional,
                    const py::args& args, const py::dict& keywords);

/// A maker beside the constructor, such as Piece.ball: `preset` sets members, those left out are no arguments.
template <class Value>
void def_maker(py::class_<Value>& cls, const char* name, std::size_t positional, void (*preset)(Value&),
               std::vector<std::string_view> left_out, const char* doc) {
  const ferment::Form& form = ferment::form_of<Value>();
  py::options options;
  options.disable_function_signatures();
  cls.def_static(
      name,
      [&form, preset, left_out, positional](const py::args& args, const py::kwargs& keywords) {
        Value made = *static_cast<const Value*>(form.blank.get());
        preset(made);
        fill(form, &made, 0, py::args(), with_names(form, left_out, positional, args, keywords));
        return made;
      },
      (signature_of(form, name, positional, left_out) + doc).c_str());
}
