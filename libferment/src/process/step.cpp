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

Standing standing_of(const Stage& stage) {
  const bool held = stage.piece.shape == Shape::tub || stage.piece.shape == Shape::tin;
  return stage.standing.value_or(held ? Standing::tin : Standing::free);
}

bool is_final_proof(const Stage& stage, bool is_last) {
  if (stage.final_proof) return *stage.final_proof;
  const auto& places = stage.surroundings.places;
  const bool is_kept_cold = std::all_of(places.begin(), places.end(), [](const Place& place) {
    return !place.is_dough && (place.air == Air::refrigerator || place.air == Air::fan_refrigerator);
  });
  return is_last && stage.piece.shape != Shape::tub && !is_kept_cold;
}

std::optional<std::pair<double, double>> acceptable_rise(const Stage& stage, bool is_final_proof) {
  if (stage.acceptable_rise_percent || !stage.until_rise_percent) return stage.acceptable_rise_percent;
  const double wanted = *stage.until_rise_percent;
  return is_final_proof ? std::pair{0.80 * wanted, 1.33 * wanted} : std::pair{0.75 * wanted, 1.5 * wanted};
}

template <>
const Names& names_of<Handling>() {
  static constexpr std::string_view list[] = {"fold", "divide", "round", "mould", "machine_mould"};
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
         row<&S::standing>("standing",
                           "in a tin (also a tub) or free, for the over-proof limit; by the shape if not given"),
         row<&S::final_proof>(
             "final_proof",
             "its own over-proof limit counts; if not given, so it is in a process's last stage if the piece is no "
             "tub, unless it is in a refrigerator"),
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
