#include "calls.hpp"

#include "form.hpp"

#include <cstdlib>
#include <cstring>
#include <string>
#include <unordered_map>

namespace {

using Meth = PyObject* (*)(PyObject*, PyObject* const*, Py_ssize_t, PyObject*);

/// pybind11 calls all of its functions by one dispatcher, with the function's record as self.
Meth dispatcher = nullptr;

/// Of each record its signature with types.
std::unordered_map<PyObject*, std::string>& signatures() {
  static std::unordered_map<PyObject*, std::string> table;
  return table;
}

/// The error that pybind11 raised, if it says that no signature fits.
bool is_wrong_call() {
  if (PyErr_ExceptionMatches(PyExc_TypeError) == 0) return false;
  const py::error_already_set error;
  const bool wrong =
      std::string(py::str(error.value())).find("(): incompatible function arguments.") != std::string::npos;
  py::error_already_set(error).restore();
  return wrong;
}

PyObject* call(PyObject* record, PyObject* const* arguments, Py_ssize_t count, PyObject* names) {
  PyObject* const result = dispatcher(record, arguments, count, names);
  if (result != nullptr || !is_wrong_call()) return result;
  const auto known = signatures().find(record);
  if (known == signatures().end()) return nullptr;
  PyErr_Clear();
  try {
    const Py_ssize_t unnamed = PyVectorcall_NARGS(count);
    py::list plain;
    for (Py_ssize_t i = 0; i < unnamed; ++i) plain.append(py::reinterpret_borrow<py::object>(arguments[i]));
    py::dict named;
    for (Py_ssize_t i = 0; names != nullptr && i < PyTuple_GET_SIZE(names); ++i)
      named[py::handle(PyTuple_GET_ITEM(names, i))] = py::reinterpret_borrow<py::object>(arguments[unnamed + i]);
    const py::object error = py::module_::import("libferment._calls").attr("wrong_call")(known->second, plain, named);
    PyErr_SetObject(py::type::handle_of(error).ptr(), error.ptr());
  } catch (py::error_already_set& problem) {
    problem.restore();
  }
  return nullptr;
}

void finish(const py::object& callable, py::dict& typed, const std::string& name) {
  py::object function = callable;
  if (py::hasattr(function, "__func__")) function = function.attr("__func__");
  if (PyCFunction_Check(function.ptr()) == 0) return;
  auto* const definition = reinterpret_cast<PyCFunctionObject*>(function.ptr())->m_ml;
  PyObject* const record = PyCFunction_GET_SELF(function.ptr());
  if (record == nullptr || definition->ml_doc == nullptr) return;
  const std::string doc = definition->ml_doc;
  if (doc.find("\n--\n\n") != std::string::npos) return;  // has a signature of its own
  const std::size_t end = doc.find('\n');
  std::string signature = doc.substr(0, end);
  if (const std::size_t open = signature.find("**kwargs"); open != std::string::npos) {
    const std::string options = options_of(name);
    if (options.empty()) return;
    signature.replace(open, std::string_view("**kwargs").size(), options);
  }
  const py::object plain = py::module_::import("libferment._calls").attr("plain_signature")(signature);
  if (plain.is_none()) return;
  typed[py::str(name)] = signature;
  signatures()[record] = signature;
  const std::size_t next = end == std::string::npos ? end : doc.find_first_not_of('\n', end);
  std::string rest = next == std::string::npos ? "" : doc.substr(next);
  if (rest.empty() && name.ends_with(".to_dict")) rest = "All of it, as plain dicts, lists, numbers and texts.";
  std::free(const_cast<char*>(definition->ml_doc));  // pybind11's own, and freed by it
  definition->ml_doc = strdup((py::cast<std::string>(plain) + "\n--\n\n" + rest).c_str());
  auto* const meth = reinterpret_cast<Meth*>(&definition->ml_meth);
  if (dispatcher == nullptr) dispatcher = *meth;
  if (*meth == dispatcher) *meth = call;
}

}  // namespace

void finish_calls(py::module_& module) {
  py::dict typed;
  const py::dict members(module.attr("__dict__"));
  for (const auto& [name, member] : members) {
    if (PyType_Check(member.ptr()) == 0) {
      finish(py::reinterpret_borrow<py::object>(member), typed, py::cast<std::string>(name));
      continue;
    }
    const py::dict its(member.attr("__dict__"));
    for (const auto& [method, function] : its) {
      finish(py::reinterpret_borrow<py::object>(function), typed,
             py::cast<std::string>(name) + "." + py::cast<std::string>(method));
    }
  }
  module.attr("_signatures") = typed;
}
