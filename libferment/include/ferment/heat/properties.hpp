// Thermal properties of foods from what they are made of: heat capacity, density, conductivity.
#pragma once

#include <string_view>

#include <ferment/base/export.hpp>
#include <ferment/dough/ingredient.hpp>

namespace ferment {

enum class Component { water, protein, fat, carbohydrate, fibre, ash, ice };

/// Properties of pure components by the polynomials of Choi & Okos 1986 (from memory; coefficients checked
/// against a reprint and by conductivity = diffusivity · density · specific heat; see tests/unit/heat_properties.cpp).
/// @param temperature_c  −40 to 120 °C (the polynomials hold to 150), ice at most 0 °C
/// @throws InvalidInput
FERMENT_API double specific_heat(Component component, double temperature_c);  ///< kJ/(kg·K)
FERMENT_API double density(Component component, double temperature_c);        ///< kg/m³
FERMENT_API double conductivity(Component component, double temperature_c);   ///< W/(m·K)
FERMENT_API double diffusivity(Component component, double temperature_c);    ///< m²/s, the polynomial of its own

/// Properties of a mixture: specific heat by mass, density by volume, conductivity between layers along and across the
/// heat (their mean; the bounds are conductivity_along and conductivity_across), diffusivity = conductivity/(density ·
/// specific heat). Without gas and without freezing. Source: mixture rules of ASHRAE Handbook — Refrigeration (from
/// memory).
/// @throws InvalidInput for a negative fraction, fractions that do not sum to 1 (± 0.02), or a temperature outside the
/// table
FERMENT_API double specific_heat(const Composition& composition, double temperature_c);  ///< kJ/(kg·K)
FERMENT_API double density(const Composition& composition, double temperature_c);        ///< kg/m³
FERMENT_API double conductivity(const Composition& composition, double temperature_c);   ///< W/(m·K)
FERMENT_API double conductivity_along(const Composition& composition,
                                      double temperature_c);  ///< W/(m·K), the highest possible
FERMENT_API double conductivity_across(const Composition& composition,
                                       double temperature_c);  ///< W/(m·K), the lowest possible
FERMENT_API double diffusivity(const Composition& composition, double temperature_c);  ///< m²/s

/// Conductivity of dough with gas cells, W/(m·K): Maxwell and Eucken's rule for cells of gas (0.026 W/(m·K)) in dough.
/// @param gas_fraction  share of gas in the volume, 0 to 1
/// @throws InvalidInput
FERMENT_API double conductivity_with_gas(double conductivity_w_per_m_k, double gas_fraction);

/// Specific heats of the mixing balance, constant in temperature, kJ/(kg·K): measured where dough asks for it — flour
/// 1.80 + 2.5·(moisture − 0.13) (handbook values for 12 to 13.5 % water, slope computed), salt 0.88, crystal
/// sugar 1.24, water 4.186 (from memory) — else Choi & Okos at 25 °C. Melting of butter's fat is not in it.
/// @throws InvalidInput for an unknown ingredient
FERMENT_API double mixing_specific_heat(std::string_view ingredient);

/// The same for a flour of another moisture, percent of its weight. @throws InvalidInput
FERMENT_API double flour_specific_heat(double moisture_percent);

namespace water {
inline constexpr double specific_heat_kj = 4.186;     ///< kJ/(kg·K), mean of 0 to 60 °C (from memory: CRC, IAPWS)
inline constexpr double ice_specific_heat_kj = 2.05;  ///< kJ/(kg·K), mean of −20 to 0 °C (from memory: CRC)
inline constexpr double melting_heat_kj = 333.55;     ///< kJ/kg (from memory: CRC, IAPWS)
}  // namespace water

/// Heat that flour gives off when it is wetted, kJ per kg of flour as weighed: 105·(1 − M)·exp(−(M/(1 − M))/0.0716), M
/// the moisture as a fraction. A fit of this project through 15.1 kJ/kg at 11.5 % (baking trade dictionary) and 105
/// kJ/kg of dry matter (immersion heats of starch and flour, from memory); ± 40 %.
/// @throws InvalidInput
FERMENT_API double heat_of_hydration(double moisture_percent);

}  // namespace ferment
