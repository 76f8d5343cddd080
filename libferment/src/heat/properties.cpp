#include <ferment/heat/properties.hpp>

#include <array>
#include <cmath>
#include <string>
#include <utility>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"

namespace ferment {
namespace {

/// a0 + a1·t + a2·t², t in °C.
struct Polynomial {
  double a0, a1, a2;
  double operator()(double t) const { return a0 + t * (a1 + t * a2); }
};

struct Coefficients {
  Polynomial specific_heat, density, conductivity, diffusivity;
};

// Choi & Okos 1986. Reprints differ: water's specific heat is 4.1762 (not 4.1289), fat's conductivity falls
// by 2.7604e-4 per kelvin (not e-3), fat's diffusivity by 1.2569e-10 (not e-11); conductivity = diffusivity · density ·
// specific heat tells.
constexpr std::array rows{
    Coefficients{{4.1762, -9.0864e-5, 5.4731e-6},
                 {9.9718e2, 3.1439e-3, -3.7574e-3},
                 {5.7109e-1, 1.7625e-3, -6.7036e-6},
                 {1.3168e-7, 6.2477e-10, -2.4022e-12}},
    Coefficients{{2.0082, 1.2089e-3, -1.3129e-6},
                 {1.3299e3, -5.1840e-1, 0},
                 {1.7881e-1, 1.1958e-3, -2.7178e-6},
                 {6.8714e-8, 4.7578e-10, -1.4646e-12}},
    Coefficients{{1.9842, 1.4733e-3, -4.8008e-6},
                 {9.2559e2, -4.1757e-1, 0},
                 {1.8071e-1, -2.7604e-4, -1.7749e-7},
                 {9.8777e-8, -1.2569e-10, -3.8286e-14}},
    Coefficients{{1.5488, 1.9625e-3, -5.9399e-6},
                 {1.5991e3, -3.1046e-1, 0},
                 {2.0141e-1, 1.3874e-3, -4.3312e-6},
                 {8.0842e-8, 5.3052e-10, -2.3218e-12}},
    Coefficients{{1.8459, 1.8306e-3, -4.6509e-6},
                 {1.3115e3, -3.6589e-1, 0},
                 {1.8331e-1, 1.2497e-3, -3.1683e-6},
                 {7.3976e-8, 5.1902e-10, -2.2202e-12}},
    Coefficients{{1.0926, 1.8896e-3, -3.6817e-6},
                 {2.4238e3, -2.8063e-1, 0},
                 {3.2962e-1, 1.4011e-3, -2.9069e-6},
                 {1.2461e-7, 3.7321e-10, -1.2244e-12}},
    Coefficients{{2.0623, 6.0769e-3, 0},
                 {9.1689e2, -1.3071e-1, 0},
                 {2.2196, -6.2489e-3, 1.0154e-4},
                 {1.1756e-6, -6.0833e-9, 9.5037e-11}},
};
constexpr Polynomial supercooled_water_specific_heat{4.0817, -5.3062e-3, 9.9516e-4};

const Coefficients& row_of(Component component, double temperature_c) {
  Field range = field::temperature_c;
  range.low = -40;
  if (component == Component::ice) range.high = 0;
  range.source = "Choi & Okos 1986";
  require(range, temperature_c);
  const auto place = static_cast<std::size_t>(component);
  if (place >= rows.size()) {
    throw InvalidInput("food component " + std::to_string(place) + " is unknown",
                       {.path = "component", .advice = "known: 0 to " + std::to_string(rows.size() - 1)});
  }
  return rows.at(place);
}

using Share = std::pair<Component, double>;

/// The mass fractions, checked and scaled to sum 1: rounded tables sum to 1 only nearly.
std::array<Share, 6> shares_of(const Composition& c) {
  std::array shares{Share{Component::water, c.water}, Share{Component::protein, c.protein},
                    Share{Component::fat, c.fat},     Share{Component::carbohydrate, c.carbohydrate},
                    Share{Component::fibre, c.fibre}, Share{Component::ash, c.ash}};
  double sum = 0;
  for (const auto& [component, share] : shares) {
    if (!(share >= 0 && share <= 1)) {
      throw InvalidInput(
          "a mass fraction of " + number(share) + " is outside 0 to 1",
          {.path = "composition", .value = share, .low = 0.0, .high = 1.0, .advice = "give fractions, not percent"});
    }
    sum += share;
  }
  if (!(std::abs(sum - 1) <= 0.02)) {
    throw InvalidInput("the mass fractions sum to " + number(sum) + ", not to 1",
                       {.path = "composition",
                        .value = sum,
                        .low = 0.98,
                        .high = 1.02,
                        .advice = "water, protein, fat, carbohydrate, fibre and ash are all of a food"});
  }
  for (auto& [component, share] : shares) share /= sum;
  return shares;
}

/// Sum over the volume fractions of what `of` makes of the component.
template <class Of>
double by_volume(const Composition& composition, double t, Of of) {
  double volume = 0;
  double sum = 0;
  for (const auto& [component, share] : shares_of(composition)) {
    const double part = share / density(component, t);
    volume += part;
    sum += part * of(component);
  }
  return sum / volume;
}

}  // namespace

double specific_heat(Component component, double t) {
  const Coefficients& row = row_of(component, t);
  return component == Component::water && t < 0 ? supercooled_water_specific_heat(t) : row.specific_heat(t);
}
double density(Component component, double t) { return row_of(component, t).density(t); }
double conductivity(Component component, double t) { return row_of(component, t).conductivity(t); }
double diffusivity(Component component, double t) { return row_of(component, t).diffusivity(t); }

double specific_heat(const Composition& composition, double t) {
  double sum = 0;
  for (const auto& [component, share] : shares_of(composition)) sum += share * specific_heat(component, t);
  return sum;
}

double density(const Composition& composition, double t) {
  return by_volume(composition, t, [&](Component component) { return density(component, t); });
}

double conductivity_along(const Composition& composition, double t) {
  return by_volume(composition, t, [&](Component component) { return conductivity(component, t); });
}

double conductivity_across(const Composition& composition, double t) {
  return 1 / by_volume(composition, t, [&](Component component) { return 1 / conductivity(component, t); });
}

double conductivity(const Composition& composition, double t) {
  return (conductivity_along(composition, t) + conductivity_across(composition, t)) / 2;
}

double diffusivity(const Composition& composition, double t) {
  return conductivity(composition, t) / (density(composition, t) * 1e3 * specific_heat(composition, t));
}

double conductivity_with_gas(double conductivity_w_per_m_k, double gas_fraction) {
  constexpr double gas = 0.026;  // air and CO2 near 25 °C, from memory
  require(Field{"conductivity_w_per_m_k", "conductivity", "W/(m·K)", 0.01, 10}, conductivity_w_per_m_k);
  require(Field{"gas_fraction", "gas fraction", "of volume", 0, 1}, gas_fraction);
  const double k = conductivity_w_per_m_k;
  return k * (2 * k + gas - 2 * gas_fraction * (k - gas)) / (2 * k + gas + gas_fraction * (k - gas));
}

double flour_specific_heat(double moisture_percent) {
  require(field::moisture_percent, moisture_percent);
  return 1.80 + 2.5 * (moisture_percent / 100 - 0.13);
}

double mixing_specific_heat(std::string_view name) {
  const Ingredient& ingredient = ingredient_named(name);
  if (ingredient.is_flour) return flour_specific_heat(100 * ingredient.composition.water);
  if (name == "water") return water::specific_heat_kj;
  if (name == "salt") return 0.88;   // NaCl, from memory
  if (name == "sugar") return 1.24;  // crystal sucrose, from memory
  return specific_heat(ingredient.composition, 25);
}

double heat_of_hydration(double moisture_percent) {
  require(field::moisture_percent, moisture_percent);
  const double dry = 1 - moisture_percent / 100;
  return 105 * dry * std::exp(-(moisture_percent / 100 / dry) / 0.0716);
}

}  // namespace ferment
