// Stages by their name.
#pragma once

#include <pybind11/pybind11.h>

#include <string>

namespace py = pybind11;

/// The stage of that name of a timeline or a forecast. Throws KeyError naming the known ones.
template <class Stages>
const auto& stage_named(const Stages& stages, const std::string& name) {
  std::string known;
  for (const auto& stage : stages) {
    if (stage.name == name) return stage;
    known.append(known.empty() ? "" : ", ").append(stage.name);
  }
  throw py::key_error("no stage is named \"" + name + "\"; known: " + known);
}
