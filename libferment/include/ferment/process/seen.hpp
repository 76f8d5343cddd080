// What was seen of a dough, as data.
#pragma once

#include <optional>
#include <string>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/given.hpp>
#include <ferment/base/names.hpp>

namespace ferment {

/// What an hour says of a rise: the dough stood at it, was not yet there, or was past it.
enum class SeenAs { at, not_yet, past };

/// A look at a stage. What was done to the dough is none: it stands in the process.
struct Sighting {
  std::string stage = {};
  Given time_h;        ///< of the process's axis
  Given rise_percent;  ///< since the stage's start
  SeenAs was = SeenAs::at;
  std::optional<double> not_yet_h = {};  ///< of a rise that was past at time_h: when it was not yet there
};

template <>
FERMENT_API const Names& names_of<SeenAs>();

template <>
FERMENT_API const Form& form_of<Sighting>();

}  // namespace ferment
