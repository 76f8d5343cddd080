#include <ferment/dough/gas.hpp>

#include <ferment/base/error.hpp>

#include "base/text.hpp"
#include "dough/gas_formula.hpp"
#include "dough/yeast_formula.hpp"

namespace ferment {

double gas_capacity(double sugar_percent, const Kitchen& kitchen) {
  require_parameters(kitchen);
  require(field::sugar_percent, sugar_percent);
  return formula::gas_capacity(kitchen.gas_capacity, sugar_percent);
}

double gas_made(double equivalent_h, double yeast_percent, Yeast yeast, double sugar_percent, const Kitchen& kitchen) {
  const double capacity = gas_capacity(sugar_percent, kitchen);
  require(field::equivalent_h, equivalent_h);
  const double dose = gassing_dry_matter(yeast_percent, yeast);
  const formula::GasCurve<double> curve(kitchen, start_up_h(yeast, kitchen));
  return formula::gas_for_work(formula::work_after(equivalent_h, dose, curve), capacity, curve);
}

double equivalent_hours_for_gas(double co2_mmol, double yeast_percent, Yeast yeast, double sugar_percent,
                                const Kitchen& kitchen) {
  const double capacity = gas_capacity(sugar_percent, kitchen);
  require(field::co2_mmol, co2_mmol);
  const double dose = gassing_dry_matter(yeast_percent, yeast);
  if (co2_mmol >= capacity) {
    throw NoSolution(
        "this dough can make less than " + number(capacity) + " mmol CO2 per 100 g flour, not " + number(co2_mmol),
        {.path = "co2_mmol", .value = co2_mmol, .low = 0.0, .high = capacity, .advice = "add sugar or ask for less"});
  }
  const formula::GasCurve<double> curve(kitchen, start_up_h(yeast, kitchen));
  return formula::hours_for_work(formula::work_for_gas(co2_mmol, capacity, curve), dose, curve);
}

}  // namespace ferment
