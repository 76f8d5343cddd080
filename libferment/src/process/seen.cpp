#include <ferment/process/seen.hpp>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"

namespace ferment {
namespace {

constexpr Field hour_of(std::string_view name, std::string_view meaning) {
  Field field = field::start_h;
  field.name = name;
  field.label = "hour of a look";
  field.initial = field::must_be_given;
  field.meaning = meaning;
  return field;
}
constexpr Field time_h = hour_of("time_h", "of the process"),
                not_yet_h = hour_of("not_yet_h",
                                    "of the process, of a rise that was past at time_h: when it was not yet "
                                    "there");

void contradictions(const Sighting& seen) {
  if (seen.stage.empty())
    throw InvalidInput("a look is at no stage", {.path = "stage", .advice = "give the stage's name, such as bulk"});
  if ((seen.was == SeenAs::dough) != seen.dough_c.has_value()) {
    throw InvalidInput(seen.dough_c ? "a temperature says nothing of a rise" : "the dough's temperature is not given",
                       {.path = "dough_c",
                        .advice = seen.dough_c ? "say was = dough; a rise is a look of its own" : "give dough_c"});
  }
  const bool is_of_rise = seen.was != SeenAs::dough && seen.was != SeenAs::over_proofed;
  if (is_of_rise != seen.rise_percent.has_value()) {
    throw InvalidInput(is_of_rise ? "which rise was seen is not said" : "no rise belongs to such a look",
                       {.path = "rise_percent", .advice = is_of_rise ? "give rise_percent" : "leave it out"});
  }
  if (!seen.not_yet_h) return;
  if (seen.was != SeenAs::past)
    throw InvalidInput("not_yet_h belongs to a rise that was past at time_h",
                       {.path = "not_yet_h", .advice = "say was = past, or leave it out"});
  if (!(*seen.not_yet_h < seen.time_h)) {
    throw InvalidInput("a rise that was past at " + number(seen.time_h) + " h was not yet there at " +
                           number(*seen.not_yet_h) + " h",
                       {.path = "not_yet_h",
                        .value = *seen.not_yet_h,
                        .high = seen.time_h,
                        .advice = "a rise does not fall; give the earlier hour as not_yet_h"});
  }
}

}  // namespace

template <>
const Form& form_of<Sighting>() {
  using S = Sighting;
  static const Form form =
      made_form<S>("Sighting", "A look at a stage; what was done to the dough is none, it stands in the process.",
                   {.time_h = 0},
                   {must_be_given(row<&S::stage>("stage", "its name")), row<&S::time_h>("time_h", time_h),
                    row<&S::rise_percent>("rise_percent", field::rise_percent),
                    row<&S::was>("was",
                                 "at that rise, not yet there, or past it; of that rise by its height in straight "
                                 "sides; over-proofed; or of that temperature"),
                    row<&S::not_yet_h>("not_yet_h", not_yet_h), row<&S::dough_c>(field::dough_c)},
                   contradictions);
  return form;
}

}  // namespace ferment
