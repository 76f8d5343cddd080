// What was seen of a dough, as data.
#pragma once

#include <optional>
#include <string>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/given.hpp>
#include <ferment/base/parameters.hpp>

namespace ferment {

/// A look at a stage. What was done to the dough is none: it stands in the process.
struct Sighting {
  std::string stage = {};
  Given time_h;                             ///< of the process's axis
  std::optional<double> rise_percent = {};  ///< since the stage's start
  SeenAs was = SeenAs::at;
  std::optional<double> not_yet_h = {};  ///< of a rise that was past at time_h: when it was not yet there
  std::optional<double> dough_c = {};    ///< of the dough
};

template <>
FERMENT_API const Form& form_of<Sighting>();

}  // namespace ferment
