// What ingredients are made of: the table that tells how much water is in milk and how much heat warms flour.
#pragma once

#include <span>
#include <string_view>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>

namespace ferment {

/// Mass fractions; those of a real food sum to 1.
struct Composition {
  double water = 0;
  double protein = 0;
  double fat = 0;
  double carbohydrate = 0;  ///< by difference, fibre not included
  double fibre = 0;
  double ash = 0;
};

struct Ingredient {
  std::string_view name;   ///< as in code, day files and options
  std::string_view label;  ///< as in messages and tables
  bool is_flour = false;   ///< counts in the 100 % of baker's percent
  Composition composition;
  std::string_view source;
};

/// All ingredients: flours first, then gluten, milk, egg, butter, oil, sugar, salt, dry and compressed yeast, water.
FERMENT_API std::span<const Ingredient> ingredients();

/// The ingredient of that name. @throws InvalidInput naming the known ones
FERMENT_API const Ingredient& ingredient_named(std::string_view name);

/// The flour of that name. @throws InvalidInput naming the known flours
FERMENT_API const Ingredient& flour_named(std::string_view name);

/// The composition with another moisture: the dry matter is shared as before.
/// @param moisture_percent  5 to 20 % of the weight
/// @throws InvalidInput
FERMENT_API Composition with_moisture(const Composition& composition, double moisture_percent);

template <>
FERMENT_API const Form& form_of<Composition>();

}  // namespace ferment
