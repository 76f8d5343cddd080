// Gas to volume: pressure, solubility, the split of CO2 between cells and water, retention. Per 100 g of flour.
#pragma once

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/parameters.hpp>

namespace ferment {

/// Air pressure at an altitude, Pa (ISO 2533 standard atmosphere, troposphere).
/// @throws InvalidInput outside −500 to 6000 m
FERMENT_API double air_pressure_pa(double altitude_m);

/// Saturation vapour pressure over water, Pa (Buck 1996). @throws InvalidInput
FERMENT_API double saturation_pressure_pa(double temperature_c);

/// Solubility of CO2 in water, K0, mol/(kg·atm) (Weiss 1974). @throws InvalidInput
FERMENT_API double co2_solubility(double temperature_c);

/// What decides a dough's volume besides gas. Percent of flour weight, so g per 100 g flour.
struct Body {
  double dough_g = 167;          ///< all of the dough, g per 100 g flour
  double water_g = 65;           ///< its water, g per 100 g flour
  double water_activity = 0.98;  ///< a ratio
  double pressure_pa = 101325;
};

/// What the dough holds, mmol per 100 g flour.
struct Gas {
  double co2_mmol = 0;  ///< in the cells and dissolved
  double air_mmol = 0;  ///< in the cells
};

/// Volume just after mixing, mL per 100 g flour: gas-free volume and void.
/// @throws InvalidInput from require_kitchen
FERMENT_API double mixed_volume_ml(const Body& body, const Kitchen& kitchen = {});

/// Air in the cells just after mixing at that temperature, mmol per 100 g flour (ideal gas).
FERMENT_API double mixed_air_mmol(const Body& body, double temperature_c, const Kitchen& kitchen = {});

/// CO2 in the gas cells, mmol per 100 g flour: Henry's law and the ideal gas law in balance (closed form).
/// @throws InvalidInput for negative or non-finite amounts, or a temperature outside the table
FERMENT_API double co2_in_cells_mmol(const Body& body, const Gas& gas, double temperature_c);

/// Volume, mL per 100 g flour. @throws InvalidInput
FERMENT_API double volume_ml(const Body& body, const Gas& gas, double temperature_c, const Kitchen& kitchen = {});

/// The inverse: CO2 held at a volume, mmol per 100 g flour, given the air.
/// @throws InvalidInput; NoSolution if the volume is smaller than the dough with its air alone
FERMENT_API double co2_for_volume_mmol(const Body& body, double air_mmol, double volume_ml, double temperature_c,
                                       const Kitchen& kitchen = {});

/// Retention: volume over mixed volume if all gas since the anchor were held → the volume really held. All gas is
/// held up to kitchen.retention_onset; beyond it the volume nears kitchen.retention_limit exponentially.
/// Added gluten raises both by 5 % per percent (common practice, no source).
/// @param free_ratio     volume over mixed volume if nothing leaked since the anchor
/// @param anchor_ratio   volume over mixed volume at the anchor: the start, or the last handling
/// @throws InvalidInput
FERMENT_API double held_ratio(double free_ratio, double anchor_ratio = 1, double gluten_percent = 0,
                              const Kitchen& kitchen = {});

/// The inverse. @throws NoSolution at and beyond the largest volume, naming it
FERMENT_API double free_ratio(double held_ratio, double anchor_ratio = 1, double gluten_percent = 0,
                              const Kitchen& kitchen = {});

/// Handling presses out a share of the cells' content, CO2 and air alike; dissolved CO2 stays.
/// @throws InvalidInput unless 0 ≤ loss_fraction ≤ 1
FERMENT_API Gas after_handling(const Body& body, const Gas& gas, double temperature_c, double loss_fraction);

template <>
FERMENT_API const Form& form_of<Gas>();

}  // namespace ferment
