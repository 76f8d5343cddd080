// The table of plain ingredients: everything in the bowl but flours, waters and preferments, a row for each.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include <ferment/base/field.hpp>
#include <ferment/base/form.hpp>
#include <ferment/dough/formula.hpp>

namespace ferment {

struct Part {
  double Formula::*grams;
  double PercentFormula::*given_percent;  ///< of a formula given in percent
  double Percent::*percent;               ///< of any formula in percent
  Row grams_row, given_row, percent_row;  ///< of their forms
  const Field* field;                     ///< of the grams; its label is the ingredient's in messages and tables
  const Field* percent_field;             ///< nothing for yeasts, whose sum as instant yeast is bounded
  std::string_view ingredient;            ///< a row of `ingredients()`, for its composition
  /// What else is to know of it.
  struct More {
    std::optional<double> Formula::*temperature_c = nullptr;  ///< its own; else it comes with the room's
    bool before_rest = false;                                 ///< rests with flour and water; else joins afterwards
    bool brings_water = false;                                ///< its water is counted in the formula's
    bool perishable = false;
    double solution_kj_per_kg = 0;  ///< heat taken up as it dissolves
  } more = {};
};

/// Gluten, which counts as flour and comes with its temperature, is the first.
std::span<const Part> parts();

}  // namespace ferment
