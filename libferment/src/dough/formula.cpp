#include <ferment/dough/formula.hpp>

#include <array>
#include <cmath>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/dough/ingredient.hpp>

#include "base/text.hpp"
#include "dough/yeast_formula.hpp"

namespace ferment {
namespace {

/// A weight of the formula, its field, and the percentage it becomes.
struct Weight {
  double Formula::*grams;
  const Field* field;
  double Percent::*percent;
};

constexpr std::array weights{
    Weight{&Formula::gluten_g, &field::gluten_g, &Percent::gluten_percent},
    Weight{&Formula::salt_g, &field::salt_g, &Percent::salt_percent},
    Weight{&Formula::sugar_g, &field::sugar_g, &Percent::sugar_percent},
    Weight{&Formula::milk_g, &field::milk_g, &Percent::milk_percent},
    Weight{&Formula::egg_g, &field::egg_g, &Percent::egg_percent},
    Weight{&Formula::butter_g, &field::butter_g, &Percent::butter_percent},
    Weight{&Formula::oil_g, &field::oil_g, &Percent::oil_percent},
    Weight{&Formula::instant_g, &field::instant_g, &Percent::instant_percent},
    Weight{&Formula::active_dry_g, &field::active_dry_g, &Percent::active_dry_percent},
    Weight{&Formula::compressed_g, &field::compressed_g, &Percent::compressed_percent},
};

void require_weights(const Formula& f) {
  for (const Weight& weight : weights) require(*weight.field, f.*weight.grams);
  Field plain_flour = field::flour_g;
  plain_flour.low = 0;  // the flour may stand in the list alone
  require(plain_flour, f.flour_g);
  require(field::poured_water_g, f.water_g);
  require(field::ice_g, f.ice_g);
  for (const Flour& flour : f.flours) {
    require(field::flour_g, flour.mass_g);
    flour_named(flour.kind);
    if (flour.moisture_percent) require(field::moisture_percent, *flour.moisture_percent);
    if (flour.temperature_c) require(field::flour_c, *flour.temperature_c);
  }
  for (const Water& water : f.waters) {
    require(field::portion_water_g, water.mass_g);
    Field temperature = field::water_c;
    temperature.label =
        water.wets_yeast ? "temperature of the water that wets the yeast" : "temperature of a portion of water";
    require(temperature, water.temperature_c);
    require(field::stands_h, water.stands_h);
    require(field::cup_h, water.cup_h);
  }
  for (const Preferment& preferment : f.preferments) {
    require(field::flour_g, preferment.flour_g);
    require(field::portion_water_g, preferment.water_g);
    if (preferment.temperature_c) require(field::preferment_c, *preferment.temperature_c);
  }
}

/// Sum of one member over a list.
template <class Item>
double sum(const std::vector<Item>& items, double Item::*member) {
  double total = 0;
  for (const Item& item : items) total += item.*member;
  return total;
}

double poured_water_g(const Formula& f) {
  return f.water_g + f.ice_g + sum(f.waters, &Water::mass_g) + sum(f.preferments, &Preferment::water_g);
}

/// Every weight of the formula times one factor.
Formula times(Formula f, double factor) {
  for (const Weight& weight : weights) f.*weight.grams *= factor;
  for (double* grams : {&f.flour_g, &f.water_g, &f.ice_g}) *grams *= factor;
  for (Flour& flour : f.flours) flour.mass_g *= factor;
  for (Water& water : f.waters) water.mass_g *= factor;
  for (Preferment& preferment : f.preferments) {
    preferment.flour_g *= factor;
    preferment.water_g *= factor;
  }
  return f;
}

/// A percentage whose refusal says what percent are of.
void require_percent(const Field& field, double value) {
  Field of_flour = field;
  of_flour.advice = "percent are of the flour's weight, not of the dough's";
  require(of_flour, value);
}

void require_enriching(std::string_view name, std::string_view label, double value) {
  Field liquid = field::liquid_percent;
  liquid.name = name;
  liquid.label = label;
  require_percent(liquid, value);
}

void require_enriching_percents(double milk, double egg, double butter, double oil) {
  require_enriching("milk_percent", "milk", milk);
  require_enriching("egg_percent", "egg", egg);
  require_enriching("butter_percent", "butter", butter);
  require_enriching("oil_percent", "oil", oil);
}

}  // namespace

Amounts amounts_of(const Formula& f) {
  require_weights(f);
  Amounts a{.gluten_g = f.gluten_g, .salt_g = f.salt_g, .sugar_g = f.sugar_g, .perishable_g = f.milk_g + f.egg_g};
  a.flour_g = f.flour_g + f.gluten_g + sum(f.flours, &Flour::mass_g) + sum(f.preferments, &Preferment::flour_g);
  a.water_g = poured_water_g(f);
  a.dough_g = a.flour_g - f.gluten_g + a.water_g;
  for (const auto& [grams, name] :
       {std::pair{f.milk_g, "milk"}, std::pair{f.egg_g, "egg"}, std::pair{f.butter_g, "butter"}}) {
    if (grams > 0) a.water_g += grams * ingredient_named(name).composition.water;
  }
  for (const Weight& weight : weights) a.dough_g += f.*weight.grams;
  return a;
}

Percent percent_of(const Formula& f) {
  const Amounts amounts = amounts_of(f);
  Percent p;
  p.flour_g = amounts.flour_g;
  if (!(p.flour_g > 0)) {
    throw InvalidInput("a formula without flour has no baker's percent: they are percent of the flour",
                       {.path = "flour_g", .value = p.flour_g, .low = 0.0, .advice = "give flour_g"});
  }
  const double per_flour = 100 / p.flour_g;
  p.dough_g = amounts.dough_g;
  for (const Weight& weight : weights) p.*weight.percent = per_flour * f.*weight.grams;
  p.poured_water_percent = per_flour * poured_water_g(f);
  p.water_percent = per_flour * amounts.water_g;
  using formula::compressed_ratio;
  p.instant_equivalent_percent =
      p.instant_percent +
      compressed_ratio(Yeast::instant) / compressed_ratio(Yeast::active_dry) * p.active_dry_percent +
      compressed_ratio(Yeast::instant) / compressed_ratio(Yeast::compressed) * p.compressed_percent;
  return p;
}

void require_dough(const Formula& formula) {
  const Percent p = percent_of(formula);
  require_percent(field::water_percent, p.water_percent);
  require_percent(field::salt_percent, p.salt_percent);
  require_percent(field::sugar_percent, p.sugar_percent);
  require_percent(field::gluten_percent, p.gluten_percent);
  require_enriching_percents(p.milk_percent, p.egg_percent, p.butter_percent, p.oil_percent);
  if (p.instant_equivalent_percent > 0)
    require_percent(field::instant_equivalent_percent, p.instant_equivalent_percent);
}

Formula formula_from_percent(const PercentFormula& p) {
  require(field::flour_g, p.flour_g);
  require_percent(field::poured_water_percent, p.water_percent);
  require_percent(field::salt_percent, p.salt_percent);
  require_percent(field::sugar_percent, p.sugar_percent);
  require_percent(field::gluten_percent, p.gluten_percent);
  require_enriching_percents(p.milk_percent, p.egg_percent, p.butter_percent, p.oil_percent);
  const double per_percent = p.flour_g / 100;

  Formula f;
  f.waters = p.waters;
  f.preferments = p.preferments;
  f.gluten_g = per_percent * p.gluten_percent;
  const double preferments_g = sum(p.preferments, &Preferment::flour_g);
  const double fresh_g = p.flour_g - f.gluten_g - preferments_g;
  if (!(fresh_g >= 0)) {
    throw InvalidInput("preferments and gluten hold more flour, " + number(preferments_g + f.gluten_g) +
                           " g, than all the flour, " + number(p.flour_g) + " g",
                       {.path = "flour_g",
                        .value = p.flour_g,
                        .low = preferments_g + f.gluten_g,
                        .advice = "flour_g counts theirs too"});
  }
  if (p.flours.empty()) {
    f.flour_g = fresh_g;
  } else {
    double shares = 0;
    for (const FlourShare& share : p.flours) {
      require(field::flours_percent, share.percent);
      shares += share.percent;
    }
    if (!(std::abs(shares - 100) <= 0.1 + 1e-9)) {  // thirds, written as 33.3, are meant
      throw InvalidInput("the shares of the flours make " + number(shares, 4) +
                             " %, not 100 %; they are of the flour, added gluten and preferments apart" +
                             (shares < 99 ? "; if these are percent of the dough, multiply every percentage by " +
                                                number(100 / shares, 4)
                                          : "") +
                             "",
                         {.path = "flours_percent", .value = shares, .low = 100.0, .high = 100.0});
    }
    for (const FlourShare& share : p.flours) {
      f.flours.push_back({fresh_g * share.percent / shares, share.kind, share.moisture_percent, share.temperature_c});
    }
  }
  const double portions_g = sum(p.waters, &Water::mass_g) + sum(p.preferments, &Preferment::water_g);
  f.water_g = per_percent * p.water_percent - portions_g;
  if (!(f.water_g >= 0)) {
    throw InvalidInput("the portions of water and the preferments' water weigh " + number(portions_g) +
                           " g, more than all the water, " + number(per_percent * p.water_percent) + " g",
                       {.path = "water_g",
                        .value = portions_g,
                        .low = 0.0,
                        .high = per_percent * p.water_percent,
                        .advice = "take smaller portions"});
  }
  f.salt_g = per_percent * p.salt_percent;
  f.sugar_g = per_percent * p.sugar_percent;
  f.milk_g = per_percent * p.milk_percent;
  f.egg_g = per_percent * p.egg_percent;
  f.butter_g = per_percent * p.butter_percent;
  f.oil_g = per_percent * p.oil_percent;
  f.instant_g = per_percent * p.instant_percent;
  f.active_dry_g = per_percent * p.active_dry_percent;
  f.compressed_g = per_percent * p.compressed_percent;
  require_dough(f);  // the yeast, and the weights themselves
  return f;
}

Formula scaled_to(const Formula& formula, double pieces, double piece_g, double loss_percent) {
  require(field::pieces, pieces);
  require(field::piece_g, piece_g);
  require(field::loss_percent, loss_percent);
  const double wanted_g = pieces * piece_g / (1 - loss_percent / 100);
  const Formula scaled = times(formula, wanted_g / percent_of(formula).dough_g);
  require_weights(scaled);
  return scaled;
}

Formula with_yeast(const Formula& formula, Yeast yeast) {
  require_weights(formula);
  name_of(yeast);
  using formula::compressed_ratio;
  const double as_compressed_g = formula.compressed_g / compressed_ratio(Yeast::compressed) +
                                 formula.instant_g / compressed_ratio(Yeast::instant) +
                                 formula.active_dry_g / compressed_ratio(Yeast::active_dry);
  Formula f = formula;
  f.compressed_g = f.instant_g = f.active_dry_g = 0;
  double& grams = yeast == Yeast::compressed ? f.compressed_g : yeast == Yeast::instant ? f.instant_g : f.active_dry_g;
  grams = as_compressed_g * compressed_ratio(yeast);
  return f;
}

}  // namespace ferment
