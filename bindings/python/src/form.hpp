// Values in Python, by their forms: built from keywords, read by attribute, compared, copied with changes, shown, kept.
#pragma once

#include <pybind11/pybind11.h>

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <ferment/base/form.hpp>

#include "arguments.hpp"

/// What Python makes of the values of a form.
struct PythonClass {
  py::handle type;
  py::object (*cast)(const void* value);  ///< a copy, as an object
  void* (*copy)(const void* value);       ///< a copy of its own, for `destroy`
  void (*destroy)(void* value);
};

/// The member as Python shows it: a number, a text, an object, a list, or None.
py::object shown(const ferment::Row& row, const void* object);

/// Sets the members that are named, and refuses what is not known, missing or wrong.
void fill(const ferment::Form& form, void* object, std::size_t positional, const py::args& args,
          const py::dict& keywords);

/// Plain numbers, texts, lists and dicts.
Document as_dict(const ferment::Form& form, const void* object);

std::string repr_of(const ferment::Form& form, const void* object);

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

/// Gives the class of a form all that follows from it, and remembers it. Its members are read-only; a value is changed
/// by `replace`. `positional`: how many of the first rows may be given without a name.
void define(const ferment::Form& form, const PythonClass& its, std::size_t positional);

/// A text made by the package's Python part (libferment._values), for __repr__ and _repr_html_.
struct Worded {
  const char* function;
  std::string operator()(const py::object& self) const;
};

/// The same for pandas DataFrames.
struct Framed {
  const char* function;
  py::object operator()(const py::object& self) const;
};

/// A maker beside the constructor, such as Piece.ball: `preset` sets members, those left out are no arguments.
void define_maker(const ferment::Form& form, const char* name, std::size_t positional, void (*preset)(void*),
                  const std::vector<std::string_view>& left_out, const char* doc);

/// The class of a value.
template <class Value>
py::class_<Value> bind_form(py::module_& module, std::size_t positional = 0) {
  const ferment::Form& form = ferment::form_of<Value>();
  py::class_<Value> cls(module, std::string(form.name).c_str(), doc_of(form).c_str());
  define(form,
         {.type = cls,
          .cast = [](const void* value) { return py::cast(*static_cast<const Value*>(value)); },
          .copy = [](const void* value) -> void* { return new Value(*static_cast<const Value*>(value)); },
          .destroy = [](void* value) { delete static_cast<Value*>(value); }},
         positional);
  return cls;
}
