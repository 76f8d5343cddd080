#include <ferment/dough/formula.hpp>

#include <cmath>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/form.hpp>
#include <ferment/dough/ingredient.hpp>

#include "base/text.hpp"
#include "dough/parts.hpp"
#include "dough/sums.hpp"
#include "dough/yeast_formula.hpp"

namespace ferment {
namespace {

constexpr double salt_solution_kj_per_kg = 66;   // NaCl, 3.88 kJ/mol (from memory: CRC)
constexpr double sugar_solution_kj_per_kg = 16;  // sucrose, 5.4 kJ/mol (from memory: CRC)

using F = Formula;
using G = PercentFormula;
using P = Percent;

/// A row of the table: the three members that are one ingredient, their fields, and what it is made of.
template <auto grams, auto given, auto percent>
Part part(const Field& field, const Field& percent_field, std::string_view ingredient, Part::More more = {}) {
  return {grams,
          given,
          percent,
          row<grams>(field),
          row<given>(percent_field),
          row<percent>(percent_field),
          &field,
          &percent_field,
          ingredient,
          more};
}
/// Of any kind, or none; the sum as instant yeast is bounded apart.
constexpr Field yeast_or_none = [] {
  Field field = field::yeast_percent;
  field.low = 0;
  field.initial = 0;
  return field;
}();

template <auto grams, auto given, auto percent>
Part yeast(const Field& field, std::string_view name, std::string_view ingredient) {
  return {
      grams,  given,   percent,   row<grams>(field), row<given>(name, yeast_or_none), row<percent>(name, field.label),
      &field, nullptr, ingredient};
}

const std::vector<Part>& table() {
  using namespace field;
  static const std::vector<Part> rows{
      part<&F::gluten_g, &G::gluten_percent, &P::gluten_percent>(gluten_g, gluten_percent, "gluten"),
      part<&F::milk_g, &G::milk_percent, &P::milk_percent>(milk_g, milk_percent, "milk",
                                                           {&F::milk_c, true, true, true}),
      part<&F::egg_g, &G::egg_percent, &P::egg_percent>(egg_g, egg_percent, "egg", {&F::egg_c, true, true, true}),
      part<&F::butter_g, &G::butter_percent, &P::butter_percent>(butter_g, butter_percent, "butter",
                                                                 {&F::butter_c, false, true}),
      part<&F::oil_g, &G::oil_percent, &P::oil_percent>(oil_g, oil_percent, "oil"),
      part<&F::sugar_g, &G::sugar_percent, &P::sugar_percent>(sugar_g, sugar_percent, "sugar",
                                                              {.solution_kj_per_kg = sugar_solution_kj_per_kg}),
      part<&F::salt_g, &G::salt_percent, &P::salt_percent>(salt_g, salt_percent, "salt",
                                                           {.solution_kj_per_kg = salt_solution_kj_per_kg}),
      yeast<&F::instant_g, &G::instant_percent, &P::instant_percent>(instant_g, "instant_percent", "dry_yeast"),
      yeast<&F::active_dry_g, &G::active_dry_percent, &P::active_dry_percent>(active_dry_g, "active_dry_percent",
                                                                              "dry_yeast"),
      yeast<&F::compressed_g, &G::compressed_percent, &P::compressed_percent>(compressed_g, "compressed_percent",
                                                                              "compressed_yeast"),
  };
  return rows;
}

/// The rows of all parts, for one of the three forms.
std::vector<Row> rows_of_parts(Row Part::*member) {
  std::vector<Row> rows;
  for (const Part& part : table()) rows.push_back(part.*member);
  return rows;
}

/// Sum of one member over a list.
template <class Item>
double sum(const std::vector<Item>& items, Given Item::*member) {
  double total = 0;
  for (const Item& item : items) total += (item.*member).value;
  return total;
}

double poured_water_g(const Formula& f) {
  return f.water_g + f.ice_g + sum(f.waters, &Water::mass_g) + sum(f.preferments, &Preferment::water_g);
}

/// Every weight of the formula times one factor.
Formula times(Formula f, double factor) {
  for (const Part& part : table()) f.*part.grams *= factor;
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

/// The percentages of the table, of a formula or of one given in percent.
void require_percents(const auto& formula, auto member) {
  for (const Part& part : table()) {
    if (part.percent_field != nullptr) require_percent(*part.percent_field, formula.*(part.*member));
  }
}

}  // namespace

Amounts sums_of(const Formula& f) {
  Amounts a{.gluten_g = f.gluten_g, .salt_g = f.salt_g, .sugar_g = f.sugar_g};
  a.flour_g = f.flour_g + f.gluten_g + sum(f.flours, &Flour::mass_g) + sum(f.preferments, &Preferment::flour_g);
  a.water_g = poured_water_g(f);
  a.dough_g = a.flour_g - f.gluten_g + a.water_g;
  for (const Part& part : table()) {
    const double grams = f.*part.grams;
    a.dough_g += grams;
    if (part.more.perishable) a.perishable_g += grams;
    if (part.more.brings_water && grams > 0) a.water_g += grams * ingredient_named(part.ingredient).composition.water;
  }
  return a;
}

Amounts amounts_of(const Formula& f) {
  require(f);
  return sums_of(f);
}

Percent percent_of(const Formula& f) {
  require(f);
  return shares_of(f);
}

Percent shares_of(const Formula& f) {
  const Amounts amounts = sums_of(f);
  Percent p;
  p.flour_g = amounts.flour_g;
  if (!(p.flour_g > 0)) {
    throw InvalidInput("a formula without flour has no baker's percent: they are percent of the flour",
                       {.path = "flour_g", .value = p.flour_g, .low = 0.0, .advice = "give flour_g"});
  }
  const double per_flour = 100 / p.flour_g;
  p.dough_g = amounts.dough_g;
  for (const Part& part : table()) p.*part.percent = per_flour * f.*part.grams;
  p.poured_water_percent = per_flour * poured_water_g(f);
  p.water_percent = per_flour * amounts.water_g;
  using formula::compressed_ratio;
  p.instant_equivalent_percent =
      p.instant_percent +
      compressed_ratio(Yeast::instant) / compressed_ratio(Yeast::active_dry) * p.active_dry_percent +
      compressed_ratio(Yeast::instant) / compressed_ratio(Yeast::compressed) * p.compressed_percent;
  return p;
}

void require_dough(const Formula& formula) { require_shares(percent_of(formula)); }

void require_shares(const Percent& p) {
  require_percent(field::water_percent, p.water_percent);
  require_percents(p, &Part::percent);
  if (p.instant_equivalent_percent > 0)
    require_percent(field::instant_equivalent_percent, p.instant_equivalent_percent);
}

Formula formula_from_percent(const PercentFormula& p) {
  require(p);
  require_percents(p, &Part::given_percent);
  const double per_percent = p.flour_g / 100;

  Formula f;
  f.waters = p.waters;
  f.preferments = p.preferments;
  for (const Part& part : table()) f.*part.grams = per_percent * p.*part.given_percent;
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
      shares += share.percent;
    }
    if (!(std::abs(shares - 100) <= 0.1 + 1e-9)) {  // thirds, written as 33.3, are meant
      throw InvalidInput("the shares of the flours make " + number(shares, 4) +
                             " %, not 100 %; they are of the flour, added gluten and preferments apart" +
                             (shares < 99 ? "; if these are percent of the dough, multiply every percentage by " +
                                                number(100 / shares, 4)
                                          : "") +
                             "",
                         {.path = "flours", .value = shares, .low = 100.0, .high = 100.0});
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
  require_dough(f);  // the yeast, and the weights themselves
  return f;
}

Formula scaled_to(const Formula& formula, double pieces, double piece_g, double loss_percent) {
  require(field::pieces, pieces);
  require(field::piece_g, piece_g);
  require(field::loss_percent, loss_percent);
  const double wanted_g = pieces * piece_g / (1 - loss_percent / 100);
  const Formula scaled = times(formula, wanted_g / percent_of(formula).dough_g);
  require(scaled);
  return scaled;
}

Formula with_yeast(const Formula& formula, Yeast yeast) {
  require(formula);
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

std::span<const Part> parts() { return table(); }

namespace {

template <class Share>
std::vector<Row> rows_of_flour() {
  return {of_table(row<&Share::kind>("kind", "a flour of ingredients()"),
                   [](const std::string& kind) { flour_named(kind); }),
          row<&Share::moisture_percent>(field::moisture_percent),
          row<&Share::temperature_c>("temperature_c", field::flour_c)};
}

/// A weight in a state, which no one types.
constexpr Field held(std::string_view label) {
  return {"amounts", label, "g", 0, 1e7, {}, Quantity::mass, label, "", "a saved state must not be changed by hand"};
}
constexpr Field flour_held = held("flour of the state"), gluten_held = held("gluten of the state"),
                water_held = held("water of the state"), salt_held = held("salt of the state"),
                sugar_held = held("sugar of the state"), perishable_held = held("milk and egg of the state"),
                dough_held = held("dough of the state");

constexpr Field portion_c = [] {
  Field field = field::water_c;
  field.label = "temperature of a portion of water";
  return field;
}();

}  // namespace

template <>
const Form& form_of<Flour>() {
  static const Form form =
      made_form<Flour>("Flour", "A flour of a mix.", {.mass_g = 0},
                       joined({row<&Flour::mass_g>("mass_g", field::flour_g)}, rows_of_flour<Flour>()));
  return form;
}

template <>
const Form& form_of<Water>() {
  static const Form form = made_form<Water>(
      "Water", "A portion of water of its own temperature, besides the main water.", {.mass_g = 0, .temperature_c = 0},
      {row<&Water::mass_g>("mass_g", field::portion_water_g), row<&Water::temperature_c>("temperature_c", portion_c),
       row<&Water::wets_yeast>("wets_yeast", "the yeast is wetted in it and joins with it, after a rest"),
       row<&Water::stands_h>(field::stands_h), row<&Water::cup_h>(field::cup_h)});
  return form;
}

template <>
const Form& form_of<Preferment>() {
  static const Form form = made_form<Preferment>(
      "Preferment", "Dough of an earlier mix: its flour and water count in the formula, and it is wetted already.",
      {.flour_g = 0, .water_g = 0},
      {row<&Preferment::flour_g>(field::flour_g), row<&Preferment::water_g>(field::portion_water_g),
       row<&Preferment::temperature_c>("temperature_c", field::preferment_c)});
  return form;
}

template <>
const Form& form_of<Formula>() {
  static const Form form = made_form<Formula>(
      "Formula", "Grams of everything, and how warm it comes.", {},
      joined(joined({row<&F::flour_g>(field::bread_flour_g), row<&F::flours>("flours", "other flours"),
                     row<&F::water_g>(field::poured_water_g),
                     row<&F::waters>("waters", "portions of water of their own temperature"),
                     row<&F::ice_g>(field::ice_g), row<&F::preferments>("preferments", "doughs of earlier mixes")},
                    rows_of_parts(&Part::grams_row)),
             {row<&F::flour_c>(field::flour_c), row<&F::water_c>(field::water_c), row<&F::ice_c>(field::ice_c),
              row<&F::milk_c>(field::milk_c), row<&F::egg_c>(field::egg_c), row<&F::butter_c>(field::butter_c)}));
  return form;
}

template <>
const Form& form_of<Amounts>() {
  using A = Amounts;
  static const Form form =
      made_form<A>("Amounts", "What a dough holds in all, g: all flour, added gluten included, all water.", {},
                   {row<&A::flour_g>("flour_g", flour_held), row<&A::gluten_g>("gluten_g", gluten_held),
                    row<&A::water_g>("water_g", water_held), row<&A::salt_g>("salt_g", salt_held),
                    row<&A::sugar_g>("sugar_g", sugar_held), row<&A::perishable_g>("perishable_g", perishable_held),
                    row<&A::dough_g>("dough_g", dough_held)});
  return form;
}

template <>
const Form& form_of<PercentFormula>() {
  static const Form form = made_form<G>(
      "PercentFormula", "A formula in baker's percent of flour_g, which is all flour, added gluten included.",
      {.flour_g = 0},
      joined({row<&G::flour_g>(field::flour_g),
              row<&G::flours>("flours", "that make 100 %, gluten and preferments apart; bread flour if empty"),
              row<&G::water_percent>("water_percent", field::poured_water_percent),
              row<&G::waters>("waters", "portions of the water, in g"),
              row<&G::preferments>("preferments", "in g; their flour and water are part of the formula's")},
             rows_of_parts(&Part::given_row)));
  return form;
}

template <>
const Form& form_of<Percent>() {
  static const Form form = made_form<P>(
      "Percent",
      "A mix in baker's percent: percent of the weight of all flour, added gluten included. water_percent counts all "
      "water, also that of milk, egg, butter and preferments.",
      {},
      joined(joined({row<&P::flour_g>("flour_g", "g of all flour, the 100 %"),
                     row<&P::dough_g>("dough_g", "g of everything together"),
                     row<&P::water_percent>("water_percent", "all water"),
                     row<&P::poured_water_percent>("poured_water_percent", "only what is poured")},
                    rows_of_parts(&Part::percent_row)),
             {row<&P::instant_equivalent_percent>("instant_equivalent_percent", "all yeast as instant yeast")}));
  return form;
}

template <>
const Form& form_of<FlourShare>() {
  static const Form form =
      made_form<FlourShare>("FlourShare", "One flour's share of a formula given in percent.", {},
                            joined({must_be_given(row<&FlourShare::percent>("percent", field::flours_percent))},
                                   rows_of_flour<FlourShare>()));
  return form;
}

}  // namespace ferment
