#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <limits>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/dough/ingredient.hpp>
#include <ferment/heat/properties.hpp>

using namespace ferment;

namespace {

constexpr std::array foods{Component::water,        Component::protein, Component::fat,
                           Component::carbohydrate, Component::fibre,   Component::ash};

}  // namespace

TEST_CASE(
    "Choi & Okos: conductivity = diffusivity · density · specific heat within 4.5 %, which catches a wrong "
    "coefficient") {
  double worst = 0;
  for (const Component c : foods) {
    for (double t = 0; t <= 40; t += 0.5) {
      worst =
          std::max(worst,
                   std::abs(diffusivity(c, t) * density(c, t) * 1e3 * specific_heat(c, t) / conductivity(c, t) - 1));
    }
  }
  for (double t = -40; t <= 0; t += 0.5) {
    const Component ice = Component::ice;
    worst = std::max(worst, std::abs(diffusivity(ice, t) * density(ice, t) * 1e3 * specific_heat(ice, t) /
                                         conductivity(ice, t) -
                                     1));
  }
  MESSAGE("Choi & Okos identity: worst ", worst);
  CHECK(worst < 0.045);
}

TEST_CASE("water: Choi & Okos against measured values") {
  // IAPWS and CRC values, from memory: c 4.184 kJ/(kg·K), ρ 998.21 kg/m³, k 0.598 W/(m·K) at 20 °C.
  CHECK(std::abs(specific_heat(Component::water, 20) / 4.184 - 1) < 0.003);
  CHECK(std::abs(density(Component::water, 20) / 998.21 - 1) < 0.003);
  CHECK(std::abs(conductivity(Component::water, 20) / 0.598 - 1) < 0.015);
  CHECK(specific_heat(Component::water, -1e-9) ==
        doctest::Approx(4.0817).epsilon(1e-6));  // supercooled has its own row
  CHECK(specific_heat(Component::water, 0) == 4.1762);
}

TEST_CASE("a mixture of one component is the component, and mixtures lie between their parts") {
  const std::array pure{Composition{.water = 1},        Composition{.protein = 1}, Composition{.fat = 1},
                        Composition{.carbohydrate = 1}, Composition{.fibre = 1},   Composition{.ash = 1}};
  for (std::size_t i = 0; i < foods.size(); ++i) {
    for (const double t : {-5.0, 5.0, 25.0, 60.0}) {
      CHECK(specific_heat(pure[i], t) == specific_heat(foods[i], t));
      CHECK(density(pure[i], t) == doctest::Approx(density(foods[i], t)).epsilon(1e-15));
      CHECK(conductivity(pure[i], t) == doctest::Approx(conductivity(foods[i], t)).epsilon(1e-15));
      CHECK(diffusivity(pure[i], t) ==
            doctest::Approx(conductivity(foods[i], t) / (1e3 * density(foods[i], t) * specific_heat(foods[i], t))));
    }
  }
  for (const Ingredient& i : ingredients()) {
    CHECK(conductivity_across(i.composition, 25) <= conductivity_along(i.composition, 25) * (1 + 1e-15));
    CHECK(conductivity(i.composition, 25) <= conductivity_along(i.composition, 25) * (1 + 1e-15));
  }
}

TEST_CASE("composition of lean dough: what the component rules give") {
  // 100 bread flour, 65 water, 2 salt, 1 dry yeast at 25 °C, worked independently: c 2.835, ρ 1223, k 0.448 along and
  // 0.355 across.
  Composition dough;
  const auto add = [&](const char* name, double grams) {
    const Composition& c = ingredient_named(name).composition;
    const double share = grams / 168;
    dough.water += share * c.water, dough.protein += share * c.protein, dough.fat += share * c.fat;
    dough.carbohydrate += share * c.carbohydrate, dough.fibre += share * c.fibre, dough.ash += share * c.ash;
  };
  add("bread", 100), add("water", 65), add("salt", 2), add("dry_yeast", 1);
  CHECK(specific_heat(dough, 25) == doctest::Approx(2.835).epsilon(0.0005 / 2.835));
  CHECK(density(dough, 25) == doctest::Approx(1223).epsilon(0.5 / 1223));
  CHECK(conductivity_along(dough, 25) == doctest::Approx(0.448).epsilon(0.0005 / 0.448));
  CHECK(conductivity_across(dough, 25) == doctest::Approx(0.355).epsilon(0.0005 / 0.355));
  CHECK(diffusivity(dough, 25) == doctest::Approx(1.16e-7).epsilon(0.005));
}

TEST_CASE("gas cells take conductivity away, from all of it to that of gas") {
  CHECK(conductivity_with_gas(0.4, 0) == doctest::Approx(0.4).epsilon(1e-15));
  CHECK(conductivity_with_gas(0.4, 1) == doctest::Approx(0.026).epsilon(1e-14));
  // Maxwell and Eucken's rule at 0.4 W/(m·K), worked independently.
  for (const auto& [gas, k] :
       {std::pair{0.1, 0.348}, std::pair{0.3, 0.256}, std::pair{0.5, 0.178}, std::pair{0.7, 0.111}}) {
    CHECK(std::abs(conductivity_with_gas(0.4, gas) - k) <= 0.0005);
  }
}

TEST_CASE("heat of hydration falls with moisture") {
  // Values of the fit, worked independently; the point at 11.5 % is the trade dictionary's.
  for (const auto& [moisture, kj] : {std::pair{10.0, 20.0}, std::pair{11.5, 15.1}, std::pair{12.0, 13.8},
                                     std::pair{13.36, 10.6}, std::pair{14.0, 9.3}, std::pair{15.0, 7.6}}) {
    CHECK(std::abs(heat_of_hydration(moisture) - kj) <= 0.05);
  }
  for (double m = 5; m < 20; m += 0.25) CHECK(heat_of_hydration(m) > heat_of_hydration(m + 0.25));
}

TEST_CASE("what is no food or no temperature is refused") {
  CHECK_THROWS_AS(specific_heat(Composition{}, 25), InvalidInput);
  CHECK_THROWS_AS(density(Composition{.water = 65}, 25), InvalidInput);
  CHECK_THROWS_AS(conductivity(Composition{.water = 1.5, .protein = -0.5}, 25), InvalidInput);
  CHECK_THROWS_AS(specific_heat(Composition{.water = std::numeric_limits<double>::quiet_NaN()}, 25), InvalidInput);
  for (const double t : {-41.0, 121.0, std::numeric_limits<double>::quiet_NaN()}) {
    CHECK_THROWS_AS(specific_heat(Component::ash, t), InvalidInput);
    CHECK_THROWS_AS(conductivity(Composition{.water = 1}, t), InvalidInput);
  }
  CHECK_THROWS_AS(specific_heat(static_cast<Component>(7), 25), InvalidInput);
  CHECK_THROWS_AS(conductivity_with_gas(0.4, 1.1), InvalidInput);
  CHECK_THROWS_AS(conductivity_with_gas(0, 0.5), InvalidInput);
  // Rounded tables need not sum to exactly 1.
  CHECK(specific_heat(Composition{.water = 0.73, .protein = 0.2, .fat = 0.05, .ash = 0.01}, 5) > 3);
}
