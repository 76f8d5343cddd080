#include <ferment/process/step.hpp>

#include <algorithm>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/form.hpp>

#include "base/text.hpp"
#include "dough/sums.hpp"

namespace ferment {
namespace {

constexpr Field ends_h = [] {
  Field field = field::start_h;
  field.name = "ends_h";
  field.label = "end of a stage";
  field.initial = field::must_be_given;
  field.meaning = "hour of the process at which it ends; at once, if that is over";
  return field;
}();

void contradictions(const Stage& stage) {
  if (stage.name.empty())
    throw InvalidInput("a stage has no name", {.path = "name", .advice = "give one, such as bulk"});
  if (!std::is_sorted(stage.folds_h.begin(), stage.folds_h.end())) {
    throw InvalidInput("the folds are not in the order of time",
                       {.path = "folds_h", .advice = "give hours from the stage's start, rising"});
  }
  if (stage.until_h && !stage.folds_h.empty() && stage.folds_h.back() > *stage.until_h) {
    throw InvalidInput("a fold at " + number(stage.folds_h.back()) + " h comes after the stage's end at " +
                           number(*stage.until_h) + " h",
                       {.path = "folds_h",
                        .value = stage.folds_h.back(),
                        .high = *stage.until_h,
                        .advice = "fold earlier or end later"});
  }
}

}  // namespace

template <>
const Names& names_of<Handling>() {
  static constexpr std::string_view list[] = {"fold", "divide", "round", "mould"};
  static constexpr Names names{"handling", "handling", list};
  return names;
}

template <>
const Form& form_of<Stage>() {
  using S = Stage;
  static const Form form = [] {
    Form form = made_form<S>(
        "Stage",
        "Time passes in some surroundings until a rise, for some hours, or until an hour; then the dough is handled.",
        {},
        {must_be_given(row<&S::name>("name", "such as bulk")),
         must_be_given(row<&S::surroundings>("surroundings", "what the dough sits in")),
         row<&S::until_h>(field::until_h), row<&S::until_rise_percent>("until_rise_percent", field::rise_percent),
         row<&S::ends_h>("ends_h", ends_h), row<&S::piece>("piece", "all of the dough in a tub if not given"),
         row<&S::folds_h>(field::folds_h), row<&S::handling>("handling", "what ends the stage, in order"),
         row<&S::standing>("standing", "in a tin (also a tub) or free, for the over-proof limit"),
         row<&S::final_proof>("final_proof", "its own over-proof limit counts"),
         row<&S::acceptable_rise_percent>("acceptable_rise_percent", field::rise_percent)},
        contradictions);
    form.one_of = {{"until_h", "until_rise_percent", "ends_h"}};
    return form;
  }();
  return form;
}

template <>
const Form& form_of<Process>() {
  static const Form form =
      made_form<Process>("Process", "What happens to a dough, step after step.", {},
                         {must_be_given(row<&Process::steps>("steps", "mixes and stages, one after the other")),
                          row<&Process::start_h>(field::start_h), row<&Process::altitude_m>(field::altitude_m)});
  return form;
}

}  // namespace ferment
