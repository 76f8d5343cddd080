#include <ferment/dough/volume.hpp>

#include <cmath>
#include <string>

#include <ferment/base/error.hpp>

#include "base/text.hpp"
#include "dough/volume_formula.hpp"

namespace ferment {
namespace {

constexpr Field dough_g{"dough_g", "dough", "g per 100 g flour", 100, 400, field::must_be_given, Quantity::mass, {},
                        {},        {}};
constexpr Field body_water_g{"water_g",
                             "water",
                             "g per 100 g flour",
                             field::water_percent.low,
                             field::water_percent.high,
                             field::must_be_given,
                             Quantity::mass,
                             {},
                             {},
                             {}};
constexpr Field activity{"water_activity",     "water activity", "", 0.8, 1,
                         field::must_be_given, Quantity::ratio,  {}, {},  {}};
constexpr Field pressure{"pressure_pa",        "air pressure",  "Pa", 4e4, 1.2e5,
                         field::must_be_given, Quantity::ratio, {},   {},  {}};

void require_body(const Body& body) {
  require(dough_g, body.dough_g);
  require(body_water_g, body.water_g);
  require(activity, body.water_activity);
  require(pressure, body.pressure_pa);
}

void require_gas(const Gas& gas) {
  require(field::co2_mmol, gas.co2_mmol);
  require(field::air_mmol, gas.air_mmol);
}

formula::CellAir<double> cell_air(const Body& body, double temperature_c) {
  require_body(body);
  require(field::dough_c, temperature_c);
  return formula::cell_air(temperature_c, body.pressure_pa, body.water_activity, body.water_g,
                           formula::saturation_pressure(temperature_c), formula::co2_solubility(temperature_c));
}

formula::Retention<double> retention(double anchor_ratio, double gluten_percent, const Kitchen& kitchen) {
  require_parameters(kitchen);
  require(field::volume_ratio, anchor_ratio);
  require(field::gluten_percent, gluten_percent);
  const auto retention =
      formula::retention(kitchen.retention_onset, kitchen.retention_limit, gluten_percent, anchor_ratio);
  if (anchor_ratio >= retention.limit) {
    throw InvalidInput("volume at the anchor " + number(anchor_ratio) + " is not below " + number(retention.limit) +
                           " times the mixed volume, which this dough never passes",
                       {.path = "anchor_ratio", .value = anchor_ratio, .high = retention.limit});
  }
  return retention;
}

}  // namespace

double air_pressure_pa(double altitude_m) {
  require(field::altitude_m, altitude_m);
  return formula::air_pressure(altitude_m);
}

double saturation_pressure_pa(double temperature_c) {
  require(field::temperature_c, temperature_c);
  return formula::saturation_pressure(temperature_c);
}

double co2_solubility(double temperature_c) {
  require(field::temperature_c, temperature_c);
  return formula::co2_solubility(temperature_c);
}

double mixed_volume_ml(const Body& body, const Kitchen& kitchen) {
  require_parameters(kitchen);
  require_body(body);
  return body.dough_g / kitchen.gas_free_density / (1 - kitchen.void_fraction);
}

double mixed_air_mmol(const Body& body, double temperature_c, const Kitchen& kitchen) {
  return mixed_volume_ml(body, kitchen) * kitchen.void_fraction / cell_air(body, temperature_c).molar_volume;
}

double co2_in_cells_mmol(const Body& body, const Gas& gas, double temperature_c) {
  require_gas(gas);
  return formula::in_cells(gas.co2_mmol, gas.air_mmol, cell_air(body, temperature_c).capacity);
}

double volume_ml(const Body& body, const Gas& gas, double temperature_c, const Kitchen& kitchen) {
  require_parameters(kitchen);
  const double cells = gas.air_mmol + co2_in_cells_mmol(body, gas, temperature_c);
  return body.dough_g / kitchen.gas_free_density + cells * cell_air(body, temperature_c).molar_volume;
}

double co2_for_volume_mmol(const Body& body, double air_mmol, double volume_ml, double temperature_c,
                           const Kitchen& kitchen) {
  const formula::CellAir<double> cells = cell_air(body, temperature_c);
  require(field::volume_ml, volume_ml);
  const double smallest = ferment::volume_ml(body, {0, air_mmol}, temperature_c, kitchen);
  if (!(volume_ml >= smallest)) {
    throw NoSolution("volume " + number(volume_ml) + " mL per 100 g flour is below " + number(smallest) +
                         " mL, the dough with its air alone",
                     {.path = "volume_ml", .value = volume_ml, .low = smallest, .advice = "give a larger volume"});
  }
  if (volume_ml == smallest) return 0;
  return formula::held_for_cells((volume_ml - smallest) / cells.molar_volume, air_mmol, cells.capacity);
}

double held_ratio(double free_ratio, double anchor_ratio, double gluten_percent, const Kitchen& kitchen) {
  require(field::volume_ratio, free_ratio);
  return formula::held_ratio(free_ratio, retention(anchor_ratio, gluten_percent, kitchen));
}

double free_ratio(double held_ratio, double anchor_ratio, double gluten_percent, const Kitchen& kitchen) {
  require(field::volume_ratio, held_ratio);
  const formula::Retention<double> r = retention(anchor_ratio, gluten_percent, kitchen);
  if (held_ratio >= r.limit) {
    throw NoSolution("this dough never passes " + number(r.limit) + " times its mixed volume; " + number(held_ratio) +
                         " cannot be reached",
                     {.path = "held_ratio", .value = held_ratio, .high = r.limit});
  }
  return formula::free_ratio(held_ratio, r);
}

Gas after_handling(const Body& body, const Gas& gas, double temperature_c, double loss_fraction) {
  require(field::loss_fraction, loss_fraction);
  const double lost_co2 = loss_fraction * co2_in_cells_mmol(body, gas, temperature_c);
  return {gas.co2_mmol - lost_co2, gas.air_mmol * (1 - loss_fraction)};
}

template <>
const Form& form_of<Gas>() {
  static const Form form = made_form<Gas>("Gas", "What the dough holds, mmol per 100 g of flour.", {},
                                          {row<&Gas::co2_mmol>(field::co2_mmol), row<&Gas::air_mmol>(field::air_mmol)});
  return form;
}

}  // namespace ferment
