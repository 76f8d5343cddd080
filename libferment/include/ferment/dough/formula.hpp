// The formula: what is in the bowl, in grams and in baker's percent.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/dough/yeast.hpp>

namespace ferment {

struct Flour {
  Given mass_g;
  std::string kind = "bread";                   ///< a flour of `ingredients()`
  std::optional<double> moisture_percent = {};  ///< of its weight; the table's if not given
  std::optional<double> temperature_c = {};     ///< the mix's flour_c if not given
};

/// A portion of water of its own temperature, besides the main water.
struct Water {
  Given mass_g;
  Given temperature_c;
  bool wets_yeast = false;  ///< the yeast is wetted in it and comes to the dough with it, after a rest if there is one
  double stands_h = 0;      ///< stands in the room that long before it is mixed in, nearing the room's temperature
  double cup_h = 0.3;       ///< time constant of that
};

/// Dough of an earlier mix. Its flour and water count in the formula; it is wetted already.
struct Preferment {
  Given flour_g;
  Given water_g;
  std::optional<double> temperature_c = {};  ///< the room's if not given
};

/// Grams of everything, and how warm it comes. Flour is the sum of all flours, those of preferments and added gluten
/// included.
struct Formula {
  double flour_g = 0;  ///< bread flour; other flours in `flours`
  std::vector<Flour> flours = {};
  double gluten_g = 0;
  double water_g = 0;  ///< the main water, whose temperature is asked for
  std::vector<Water> waters = {};
  double ice_g = 0;
  std::vector<Preferment> preferments = {};
  double salt_g = 0;
  double sugar_g = 0;
  double milk_g = 0;
  double egg_g = 0;
  double butter_g = 0;
  double oil_g = 0;
  double instant_g = 0;
  double active_dry_g = 0;
  double compressed_g = 0;

  // Temperatures as they come; the room's if not given.
  std::optional<double> flour_c = {};  ///< of flours and gluten that do not say their own
  std::optional<double> water_c = {};  ///< of the main water; what the water plan answers
  double ice_c = *field::ice_c.initial;
  std::optional<double> milk_c = {};
  std::optional<double> egg_c = {};
  std::optional<double> butter_c = {};
};

/// What a dough holds in all, g: what its rise and its safety depend on.
struct Amounts {
  double flour_g = 0;   ///< all flour, that of preferments and added gluten included
  double gluten_g = 0;  ///< of it, added gluten
  double water_g = 0;   ///< all water: also that of milk, egg, butter and preferments
  double salt_g = 0;
  double sugar_g = 0;
  double perishable_g = 0;  ///< milk and egg
  double dough_g = 0;       ///< everything together
};

/// Sums of a formula. @throws InvalidInput for a negative or non-finite weight, or an unknown flour
FERMENT_API Amounts amounts_of(const Formula& formula);

/// The formula in baker's percent: percent of the weight of all flour.
struct Percent {
  double flour_g = 0;               ///< all flour, the 100 %
  double dough_g = 0;               ///< everything together
  double water_percent = 0;         ///< all water: also that of milk, egg, butter and preferments
  double poured_water_percent = 0;  ///< main water, portions, ice and preferments' water alone
  double salt_percent = 0;
  double sugar_percent = 0;
  double gluten_percent = 0;
  double milk_percent = 0;
  double egg_percent = 0;
  double butter_percent = 0;
  double oil_percent = 0;
  double instant_percent = 0;
  double active_dry_percent = 0;
  double compressed_percent = 0;
  double instant_equivalent_percent = 0;  ///< all yeast as instant yeast
};

/// The formula in baker's percent.
/// @throws InvalidInput without flour, for a negative or non-finite weight, or an unknown flour
FERMENT_API Percent percent_of(const Formula& formula);

/// Refuses what no bread dough has: water, salt, sugar, gluten, yeast or an enriching ingredient outside the field
/// table's percentages of flour. A mix that is one addition of several need not pass.
/// @throws InvalidInput saying that percent are of the flour's weight
FERMENT_API void require_dough(const Formula& formula);

/// One flour's share of a formula given in percent.
struct FlourShare {
  std::string kind = "bread";
  double percent = 100;  ///< of the flours, added gluten and preferments apart
  std::optional<double> moisture_percent = {};
  std::optional<double> temperature_c = {};
};

/// A formula given in baker's percent of flour_g.
struct PercentFormula {
  Given flour_g;                        ///< all flour, that of preferments and added gluten included
  std::vector<FlourShare> flours = {};  ///< empty: bread flour alone
  double water_percent = 65;            ///< water poured; less portions and preferments' water it is the main water
  std::vector<Water> waters = {};       ///< in grams; part of water_percent
  std::vector<Preferment> preferments = {};  ///< in grams; their flour is part of flour_g, their water of water_percent
  double salt_percent = 2;
  double sugar_percent = 0;
  double gluten_percent = 0;
  double milk_percent = 0;
  double egg_percent = 0;
  double butter_percent = 0;
  double oil_percent = 0;
  double instant_percent = 0;
  double active_dry_percent = 0;
  double compressed_percent = 0;
};

/// The same formula in grams.
/// @throws InvalidInput outside the field table; if the flours' shares do not make 100 %, as when percent
///         are of the whole dough; if portions and preferments exceed the water or the flour
FERMENT_API Formula formula_from_percent(const PercentFormula& percent);

/// The formula for a number of pieces of a weight: every weight by one factor, so that pieces · piece_g are left after
/// the loss. Portions' temperatures and times stay.
/// @param loss_percent  dough that stays on bowl, hands and table, percent of the dough
/// @throws InvalidInput outside the field table, before or after
FERMENT_API Formula scaled_to(const Formula& formula, double pieces, double piece_g, double loss_percent = 0);

/// The formula with all its yeast as one kind, by the trade's weight ratios; active_dry_unwetted counts as active dry.
/// @throws InvalidInput
FERMENT_API Formula with_yeast(const Formula& formula, Yeast yeast);

template <>
FERMENT_API const Form& form_of<Flour>();

template <>
FERMENT_API const Form& form_of<Water>();

template <>
FERMENT_API const Form& form_of<Preferment>();

template <>
FERMENT_API const Form& form_of<Formula>();

template <>
FERMENT_API const Form& form_of<FlourShare>();

template <>
FERMENT_API const Form& form_of<PercentFormula>();

template <>
FERMENT_API const Form& form_of<Percent>();

template <>
FERMENT_API const Form& form_of<Amounts>();

}  // namespace ferment
