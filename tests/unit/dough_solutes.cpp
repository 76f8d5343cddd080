#include <doctest/doctest.h>

#include <ferment/dough/solutes.hpp>

#include "box.hpp"
#include "naive.hpp"

using namespace ferment;
using naive::Real;

TEST_CASE("osmolality, water activity and their factor against 100 digits") {
  box::Numbers numbers(41);
  double worst_osmolality = 0;
  double worst_activity = 0;
  double worst_factor = 0;
  for (int i = 0; i < 4000; ++i) {
    const double salt = box::edgy(numbers, 0, 6);
    const double water = box::edgy(numbers, 40, 130);
    const double sugar = i % 5 == 0 ? 4.0 : box::edgy(numbers, 0, 40);
    Kitchen kitchen;
    kitchen.aw_min = box::edgy(numbers, 0.80, 0.97);
    if (i % 3 > 0) kitchen.water_exponent = box::edgy(numbers, 0, 1.5);
    if (i % 4 > 0) kitchen.high_sugar_factor = box::edgy(numbers, 0.1, 5);
    worst_osmolality = std::max(worst_osmolality, naive::relative_error(osmolality(salt, water, sugar),
                                                                        naive::osmolality(salt, water, sugar)));
    const Real activity = naive::water_activity(salt, water, sugar);
    worst_activity = std::max(worst_activity, naive::relative_error(water_activity(salt, water, sugar), activity));
    const Real wanted =
        naive::solute_factor(salt, water, sugar, kitchen.aw_min, kitchen.water_exponent, kitchen.high_sugar_factor);
    const double got = solute_factor(salt, water, sugar, kitchen);
    if (wanted == 0) {
      CHECK(got == 0);
      continue;
    }
    // The factor is a difference of two numbers near 1: a relative rounding error of the water activity grows by
    // aw/(aw − aw_min).
    const double condition = static_cast<double>(activity / (activity - kitchen.aw_min));
    const double error = naive::relative_error(got, wanted);
    CHECK(error <= std::max(1e-12, 4 * 0x1p-52 * condition));
    if (condition < 500) worst_factor = std::max(worst_factor, error);
  }
  MESSAGE("worst relative errors: osmolality ", worst_osmolality, ", water activity ", worst_activity, ", factor ",
          worst_factor);
  CHECK(worst_osmolality <= 1e-12);
  CHECK(worst_activity <= 1e-12);
  CHECK(worst_factor <= 1e-12);
}

TEST_CASE("the reference dough has factor 1, a dough too dense 0") {
  for (const double aw_min : {0.85, 0.92, 0.97}) {
    Kitchen kitchen;
    kitchen.aw_min = aw_min;
    CHECK(solute_factor(2, 65, 0, kitchen) == doctest::Approx(1).epsilon(1e-15));
    CHECK(solute_factor(2, 65, 4, kitchen) == solute_factor(2, 65, 0, kitchen));  // the first 4 % of sugar only feed
  }
  CHECK(solute_factor(6, 40, 40) == 0);
  CHECK(water_activity(0, 65) == 1);
  CHECK(osmolality(0, 65, 4) == 0);
}

TEST_CASE("salt, stiffness and sugar above 4 % slow the yeast") {
  for (double salt = 0; salt < 6; salt += 0.25) CHECK(solute_factor(salt + 0.25, 65) < solute_factor(salt, 65));
  for (double water = 45; water < 130; water += 5) CHECK(solute_factor(2, water + 5) > solute_factor(2, water));
  for (double sugar = 4; sugar < 18; sugar += 0.5)
    CHECK(solute_factor(2, 65, sugar + 0.5) < solute_factor(2, 65, sugar));
  for (double sugar = 0; sugar < 4; sugar += 0.5) CHECK(solute_factor(2, 65, sugar) == solute_factor(2, 65, 0));
}
