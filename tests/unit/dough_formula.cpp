#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/dough/formula.hpp>
#include <ferment/dough/ingredient.hpp>

#include "box.hpp"
#include "refusal.hpp"

using namespace ferment;

namespace {

Formula any_formula(box::Numbers& n) {
  Formula f{.flour_g = n.between(100, 2000), .gluten_g = n.between(0, 20), .water_g = n.between(100, 1500)};
  f.flours = {{n.between(1, 500), "whole_wheat"}, {n.between(1, 500), "medium_rye"}};
  f.waters = {{n.between(10, 80), n.between(5, 45), true}};
  f.preferments = {{n.between(10, 300), n.between(10, 300)}};
  for (double* grams : {&f.ice_g, &f.salt_g, &f.sugar_g, &f.milk_g, &f.egg_g, &f.butter_g, &f.oil_g, &f.instant_g,
                        &f.active_dry_g, &f.compressed_g}) {
    *grams = n.between(0, 50);
  }
  return f;
}

}  // namespace

TEST_CASE("the ingredients' compositions close to 100 % and none is negative") {
  CHECK(ingredients().size() == 15);
  for (const Ingredient& i : ingredients()) {
    INFO(std::string(i.name));
    const Composition& c = i.composition;
    CHECK(std::abs(c.water + c.protein + c.fat + c.carbohydrate + c.fibre + c.ash - 1) <
          1.5e-4);  // the tables are rounded to 0.01 %
    for (const double share : {c.water, c.protein, c.fat, c.carbohydrate, c.fibre, c.ash}) CHECK(share >= 0);
    CHECK(&ingredient_named(i.name) == &i);
    CHECK_FALSE(i.source.empty());
  }
  CHECK(says(said([] { ingredient_named("honey"); }), "known: bread, all_purpose"));
  CHECK(says(said([] { flour_named("milk"); }),
             "flour \"milk\" is unknown; known: bread, all_purpose, whole_wheat, medium_rye, dark_rye"));
}

TEST_CASE("another moisture shares the dry matter as before") {
  const Composition flour = flour_named("bread").composition;
  const Composition drier = with_moisture(flour, 10);
  CHECK(drier.water == 0.10);
  CHECK(drier.protein / drier.carbohydrate == doctest::Approx(flour.protein / flour.carbohydrate).epsilon(1e-14));
  CHECK(drier.water + drier.protein + drier.fat + drier.carbohydrate + drier.fibre + drier.ash ==
        doctest::Approx(1).epsilon(1e-14));
  CHECK_THROWS_AS(with_moisture({.water = 1}, 10), InvalidInput);
}

TEST_CASE("baker's percent: flour is all flour, water all water") {
  Formula f{.flour_g = 450,
            .gluten_g = 10,
            .water_g = 250,
            .salt_g = 10,
            .milk_g = 100,
            .egg_g = 50,
            .butter_g = 40,
            .compressed_g = 12};
  f.flours = {{40, "whole_wheat"}};
  f.waters = {{30, 38, true}};
  const Percent p = percent_of(f);
  CHECK(p.flour_g == 500);
  CHECK(p.dough_g == 450 + 10 + 250 + 10 + 100 + 50 + 40 + 12 + 40 + 30);
  CHECK(p.gluten_percent == 2);
  CHECK(p.salt_percent == 2);
  CHECK(p.milk_percent == 20);
  CHECK(p.poured_water_percent == 56);
  // 88.13 g of the milk, 38.075 g of the egg, 7.176 g of the butter are water.
  CHECK(p.water_percent == doctest::Approx(56 + (88.13 + 38.075 + 7.176) / 5).epsilon(1e-14));
  CHECK(p.instant_equivalent_percent == doctest::Approx(2.4 * 0.33).epsilon(1e-14));
}

TEST_CASE("a preferment's flour and water count, once") {
  const Formula straight{.flour_g = 500, .water_g = 350, .salt_g = 10};
  Formula split{.flour_g = 400, .water_g = 250, .salt_g = 10};
  split.preferments = {{100, 100}};
  const Percent a = percent_of(straight), b = percent_of(split);
  CHECK(a.flour_g == b.flour_g);
  CHECK(a.dough_g == b.dough_g);
  CHECK(a.water_percent == b.water_percent);
  CHECK(a.salt_percent == b.salt_percent);
}

TEST_CASE("percent → grams → percent") {
  box::Numbers n(501);
  for (int i = 0; i < 500; ++i) {
    PercentFormula wanted{.flour_g = n.between(50, 5000),
                          .water_percent = n.between(50, 100),
                          .salt_percent = n.between(0, 3)};
    wanted.gluten_percent = n.between(0, 5);
    wanted.sugar_percent = n.between(0, 20);
    wanted.milk_percent = n.between(0, 20);
    wanted.egg_percent = n.between(0, 10);
    wanted.butter_percent = n.between(0, 20);
    wanted.oil_percent = n.between(0, 5);
    wanted.instant_percent = n.between(0.02, 1);
    wanted.active_dry_percent = n.between(0, 1);
    wanted.compressed_percent = n.between(0, 3);
    if (i % 2 == 0) {
      wanted.preferments = {{0.1 * wanted.flour_g, 0.1 * wanted.flour_g, 20.0}};
      wanted.flours = {{"bread", 78}, {"dark_rye", 22}};
    }
    wanted.waters = {{0.05 * wanted.flour_g, 38, true}};
    const Percent got = percent_of(formula_from_percent(wanted));
    CHECK(got.flour_g == doctest::Approx(wanted.flour_g).epsilon(1e-13));
    CHECK(got.poured_water_percent == doctest::Approx(wanted.water_percent).epsilon(1e-13));
    CHECK(got.salt_percent == doctest::Approx(wanted.salt_percent).epsilon(1e-13));
    CHECK(got.gluten_percent == doctest::Approx(wanted.gluten_percent).epsilon(1e-13));
    CHECK(got.sugar_percent == doctest::Approx(wanted.sugar_percent).epsilon(1e-13));
    CHECK(got.milk_percent == doctest::Approx(wanted.milk_percent).epsilon(1e-13));
    CHECK(got.egg_percent == doctest::Approx(wanted.egg_percent).epsilon(1e-13));
    CHECK(got.butter_percent == doctest::Approx(wanted.butter_percent).epsilon(1e-13));
    CHECK(got.oil_percent == doctest::Approx(wanted.oil_percent).epsilon(1e-13));
    CHECK(got.compressed_percent == doctest::Approx(wanted.compressed_percent).epsilon(1e-13));
  }
}

TEST_CASE("scaling: pieces of the wanted weight, the same percent") {
  box::Numbers n(502);
  for (int i = 0; i < 500; ++i) {
    const Formula f = any_formula(n);
    const double pieces = 1 + static_cast<double>(n.index(60)), piece_g = n.between(40, 1500), loss = n.between(0, 10);
    const Formula scaled = scaled_to(f, pieces, piece_g, loss);
    const Percent before = percent_of(f), after = percent_of(scaled);
    CHECK(after.dough_g * (1 - loss / 100) == doctest::Approx(pieces * piece_g).epsilon(1e-13));
    CHECK(after.water_percent == doctest::Approx(before.water_percent).epsilon(1e-13));
    CHECK(after.poured_water_percent == doctest::Approx(before.poured_water_percent).epsilon(1e-13));
    CHECK(after.instant_equivalent_percent == doctest::Approx(before.instant_equivalent_percent).epsilon(1e-13));
    CHECK(after.salt_percent == doctest::Approx(before.salt_percent).epsilon(1e-13));
    CHECK(scaled.waters[0].temperature_c == f.waters[0].temperature_c);
  }
}

TEST_CASE("one kind of yeast for all, of the same strength; the dough otherwise the same") {
  box::Numbers n(503);
  for (int i = 0; i < 200; ++i) {
    const Formula f = any_formula(n);
    for (const Yeast yeast : box::all_yeasts) {
      const Formula one = with_yeast(f, yeast);
      CHECK(percent_of(one).instant_equivalent_percent ==
            doctest::Approx(percent_of(f).instant_equivalent_percent).epsilon(1e-13));
      CHECK((one.instant_g > 0) + (one.active_dry_g > 0) + (one.compressed_g > 0) == 1);
      CHECK(one.water_g == f.water_g);
    }
  }
  // Trade weight ratios 1 : 0.40 : 0.33.
  CHECK(with_yeast({.compressed_g = 30}, Yeast::instant).instant_g == doctest::Approx(9.9).epsilon(1e-14));
  CHECK(with_yeast({.instant_g = 3.3}, Yeast::active_dry).active_dry_g == doctest::Approx(4).epsilon(1e-14));
}

TEST_CASE("percentages that are not of the flour are refused with the way out") {
  const std::string of_dough =
      said([] { formula_from_percent({.flour_g = 500, .flours = {{.percent = 58}}, .water_percent = 40}); });
  CHECK(says(of_dough, "make 58 %, not 100 %"));
  CHECK(says(of_dough, "multiply every percentage by 1.724"));
  CHECK(says(said([] { formula_from_percent({.flour_g = 500, .water_percent = 38}); }),
             "percent are of the flour's weight, not of the dough's"));
  CHECK(says(said([] { require_dough({.flour_g = 500, .water_g = 150}); }), "water 30 % is outside 40 to 130 %"));
  CHECK(says(said([] { require_dough({.flour_g = 500, .water_g = 350, .salt_g = 50}); }), "salt 10 %"));
  CHECK(says(said([] { require_dough({.flour_g = 500, .water_g = 350, .butter_g = 800}); }), "butter 160 %"));
  CHECK(says(said([] { require_dough({.flour_g = 500, .water_g = 350, .instant_g = 50}); }),
             "yeast as instant yeast 10 %"));
  CHECK(says(said([] { percent_of({.water_g = 350}); }), "without flour"));
  CHECK(says(said([] {
               formula_from_percent({.flour_g = 100, .waters = {{80, 20}}});
             }),
             "more than all the water, 65 g"));
  CHECK(says(said([] {
               formula_from_percent({.flour_g = 100, .preferments = {{120, 10}}});
             }),
             "more flour, 120 g, than all the flour, 100 g"));
  CHECK(says(said([] { percent_of({.flours = {{100, "oats"}}}); }), "flour \"oats\" is unknown"));
}

TEST_CASE("milk and egg are what does not keep, and their weight is the dough's") {
  const Amounts amounts = amounts_of({.flour_g = 500, .water_g = 200, .milk_g = 70, .egg_g = 50, .butter_g = 30});
  CHECK(amounts.perishable_g == 120);
  CHECK(amounts.dough_g == 850);
}
