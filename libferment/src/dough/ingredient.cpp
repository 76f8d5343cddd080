#include <ferment/dough/ingredient.hpp>

#include <array>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

namespace ferment {
namespace {

constexpr std::string_view usda = "USDA FoodData Central, SR Legacy (from memory)";
constexpr std::string_view usda_seen =
    "USDA FoodData Central 168894/168896 (protein, fat, carbohydrate, fibre as reprinted; rest from memory)";
constexpr std::string_view usda_rye = "USDA FoodData Central, SR Legacy (from memory; ash and water ± 0.5 %)";

/// Percent of weight: water, protein, fat, carbohydrate without fibre, fibre, ash.
constexpr Composition percent(double water, double protein, double fat, double carbohydrate, double fibre, double ash) {
  return {water / 100, protein / 100, fat / 100, carbohydrate / 100, fibre / 100, ash / 100};
}

constexpr std::array table{
    Ingredient{"bread", "bread flour", true, percent(13.36, 11.98, 1.66, 70.13, 2.4, 0.47), usda_seen},
    Ingredient{"all_purpose", "all-purpose flour", true, percent(11.92, 10.33, 0.98, 73.61, 2.7, 0.47), usda_seen},
    Ingredient{"whole_wheat", "whole-wheat flour", true, percent(10.74, 13.21, 2.50, 61.27, 10.7, 1.58), usda},
    Ingredient{"medium_rye", "medium rye flour", true, percent(10.97, 10.88, 1.52, 63.63, 11.8, 1.20), usda_rye},
    Ingredient{"dark_rye", "dark rye flour", true, percent(11.07, 15.91, 2.22, 44.83, 23.8, 2.17), usda_rye},
    Ingredient{"gluten", "added gluten", false, percent(8.2, 75.16, 1.85, 13.19, 0.6, 1.0), usda},
    Ingredient{"milk", "milk", false, percent(88.13, 3.15, 3.25, 4.80, 0, 0.67), usda},
    Ingredient{"egg", "egg", false, percent(76.15, 12.56, 9.51, 0.72, 0, 1.06), usda},
    Ingredient{"butter", "butter", false, percent(17.94, 0.85, 81.11, 0.06, 0, 0.04), usda},
    Ingredient{"oil", "oil", false, percent(0, 0, 100, 0, 0, 0), usda},
    Ingredient{"sugar", "sugar", false, percent(0.02, 0, 0, 99.98, 0, 0), usda},
    Ingredient{"salt", "salt", false, percent(0.2, 0, 0, 0, 0, 99.8), usda},
    Ingredient{"dry_yeast", "dry yeast", false, percent(5.08, 40.44, 7.61, 14.32, 26.9, 5.65), usda},
    Ingredient{"compressed_yeast", "compressed yeast", false, percent(69.0, 8.4, 1.9, 10.0, 8.1, 2.6), usda},
    Ingredient{"water", "water", false, percent(100, 0, 0, 0, 0, 0), "definition"},
};

const Ingredient& named(std::string_view name, bool flours_only) {
  const auto is_wanted = [&](const Ingredient& i) { return i.is_flour || !flours_only; };
  for (const Ingredient& ingredient : table) {
    if (is_wanted(ingredient) && ingredient.name == name) return ingredient;
  }
  std::string known;
  for (const Ingredient& ingredient : table) {
    if (is_wanted(ingredient)) known.append(known.empty() ? "" : ", ").append(ingredient.name);
  }
  const char* const kind = flours_only ? "flour" : "ingredient";
  throw InvalidInput(std::string(kind) + " \"" + std::string(name) + "\" is unknown",
                     {.path = "kind", .advice = "known: " + known});
}

}  // namespace

std::span<const Ingredient> ingredients() { return table; }

const Ingredient& ingredient_named(std::string_view name) { return named(name, false); }

const Ingredient& flour_named(std::string_view name) { return named(name, true); }

Composition with_moisture(const Composition& composition, double moisture_percent) {
  require(field::moisture_percent, moisture_percent);
  for (const double share :
       {composition.protein, composition.fat, composition.carbohydrate, composition.fibre, composition.ash}) {
    if (!(share >= 0 && share <= 1)) {
      throw InvalidInput("a mass fraction of a composition lies outside 0 to 1",
                         {.path = "composition", .advice = "give fractions, not percent"});
    }
  }
  const double dry =
      composition.protein + composition.fat + composition.carbohydrate + composition.fibre + composition.ash;
  if (!(dry > 0)) throw InvalidInput("a composition without dry matter has no moisture to choose: it is water");
  const double share = (1 - moisture_percent / 100) / dry;
  return {moisture_percent / 100,           composition.protein * share, composition.fat * share,
          composition.carbohydrate * share, composition.fibre * share,   composition.ash * share};
}

template <>
const Form& form_of<Composition>() {
  using C = Composition;
  static const Form form = made_form<C>(
      "Composition",
      "What a food is made of, as mass fractions that sum to 1, and the heat properties that follow. Source: Choi & "
      "Okos 1986 (from memory) with the mixture rules of ASHRAE Handbook - Refrigeration; no gas, no freezing.",
      {},
      {row<&C::water>("water", "share of the weight, a ratio"), row<&C::protein>("protein", "share"),
       row<&C::fat>("fat", "share"), row<&C::carbohydrate>("carbohydrate", "share, without fibre"),
       row<&C::fibre>("fibre", "share"), row<&C::ash>("ash", "share")});
  return form;
}

}  // namespace ferment
