// Questions and answers as documents: all of the library behind one function, for every language.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include <ferment/base/export.hpp>
#include <ferment/base/names.hpp>
#include <ferment/forecast/forecast.hpp>

namespace ferment {

/// What can be asked. `{"ask": "keys", "of": "WaterQuestion"}` answers with the schema of a question.
///   water     a day's water
///   mixing    what its batches say of the mixing
///   simulate  what its dough does, minute by minute
///   forecast  when its stages will be ready, with what is not known
///   choose    what to choose so that a stage is ready at an hour
///   look      when a look at the dough would tell most of a stage
///   learn     the kitchen that days have taught, with what was seen on them
///   update    the kitchen that one day more has taught
///   rise      hours to a rise, or the rise after hours, of a dough at one temperature
///   explain   the factors that make such a time
///   cautions  what belongs to plain numbers
///   keys      the JSON Schema of a form
enum class Ask { water, mixing, simulate, forecast, choose, look, learn, update, rise, explain, cautions, keys };

/// What may be chosen.
enum class Choosable { yeast, water, room, start, refrigerate, take_out };

/// What a program brings along, as with the functions that are called.
struct AskOptions {
  std::function<void()> interrupt = {};  ///< called very often; what it throws ends the call
  ForEach for_each = {};                 ///< how draws are worked off; one after the other if empty
};

/// A question in, its answer out, both as documents: `{"ask": "water", "day": {...}}`.
/// @throws what the question's function throws, with the way to what is wrong ("day.stage[1].until_h")
FERMENT_API std::string ask(std::string_view question, const AskOptions& options = {});

template <>
FERMENT_API const Names& names_of<Ask>();

template <>
FERMENT_API const Names& names_of<Choosable>();

}  // namespace ferment
