#include <ferment/dough/solutes.hpp>

#include "dough/solutes_formula.hpp"

namespace ferment {
namespace {

void require_solutes(double salt_percent, double water_percent, double sugar_percent) {
  require(field::salt_percent, salt_percent);
  require(field::water_percent, water_percent);
  require(field::sugar_percent, sugar_percent);
}

}  // namespace

double osmolality(double salt_percent, double water_percent, double sugar_percent) {
  require_solutes(salt_percent, water_percent, sugar_percent);
  return formula::osmolality(salt_percent, water_percent, sugar_percent);
}

double water_activity(double salt_percent, double water_percent, double sugar_percent) {
  require_solutes(salt_percent, water_percent, sugar_percent);
  return formula::water_activity(salt_percent, water_percent, sugar_percent);
}

double solute_factor(double salt_percent, double water_percent, double sugar_percent, const Kitchen& kitchen) {
  require_parameters(kitchen);
  return formula::solute_factor(water_activity(salt_percent, water_percent, sugar_percent), water_percent,
                                sugar_percent, formula::SoluteRule(kitchen));
}

}  // namespace ferment
