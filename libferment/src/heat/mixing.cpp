#include <ferment/heat/mixing.hpp>

#include <array>

#include <ferment/base/error.hpp>

#include "base/blocks.hpp"
#include "base/text.hpp"

namespace ferment {
namespace {

constexpr std::size_t rule_block = 256;

/// The known temperatures of the rule and how many it counts.
struct Known {
  double factors;
  double sum;
};

Known known_temperatures(double flour_c, double room_c, std::optional<double> preferment_c) {
  require(field::flour_c, flour_c);
  require(field::room_c, room_c);
  if (!preferment_c) return {3, flour_c + room_c};
  require(field::preferment_c, *preferment_c);
  return {4, flour_c + room_c + *preferment_c};
}

}  // namespace

void water_by_factor_rule(const Values& desired_c, const Values& flour_c, const Values& room_c, const Values& friction_k,
                          const std::optional<Values>& preferment_c, std::span<double> out) {
  const std::size_t n = out.size();
  require_column(field::desired_c, desired_c, n);
  require_column(field::flour_c, flour_c, n);
  require_column(field::room_c, room_c, n);
  require_column(field::friction_k, friction_k, n);
  if (preferment_c) require_column(field::preferment_c, *preferment_c, n);
  const double factors = preferment_c ? 4 : 3;
  const Column<rule_block> desired(desired_c, n), flour(flour_c, n), room(room_c, n), friction(friction_k, n),
      preferment(preferment_c.value_or(0.0), n);
  for_blocks(n, rule_block, [&](std::size_t start, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) {
      out[start + i] = factors * desired.at(start)[i] - flour.at(start)[i] - room.at(start)[i] - preferment.at(start)[i] - friction.at(start)[i];
    }
  });
}

double water_by_factor_rule(double desired_c, double flour_c, double room_c, double friction_k, std::optional<double> preferment_c) {
  double out = 0;
  std::optional<Values> preferment;
  if (preferment_c) preferment = Values(*preferment_c);
  water_by_factor_rule(Values(desired_c), Values(flour_c), Values(room_c), Values(friction_k), preferment, {&out, 1});
  return out;
}

double dough_by_factor_rule(double water_c, double flour_c, double room_c, double friction_k, std::optional<double> preferment_c) {
  require(field::water_c, water_c);
  require(field::friction_k, friction_k);
  const Known known = known_temperatures(flour_c, room_c, preferment_c);
  return (known.sum + water_c + friction_k) / known.factors;
}

double friction_from_batch(double dough_c, double flour_c, double room_c, double water_c, std::optional<double> preferment_c) {
  require(field::dough_c, dough_c);
  require(field::water_c, water_c);
  const Known known = known_temperatures(flour_c, room_c, preferment_c);
  const double friction = known.factors * dough_c - known.sum - water_c;
  Field of_batch = field::friction_k;
  of_batch.label = "friction of this batch";
  of_batch.quantity = Quantity::ratio;  // computed, so no advice about units
  of_batch.advice = "one of the temperatures must be wrong; measure flour, room, water and dough again";
  require(of_batch, friction);
  return friction;
}

double ice_by_trade_rule(double water_g, double tap_c, double wanted_c) {
  require(field::water_g, water_g);
  require(field::tap_c, tap_c);
  Field wanted = field::water_c;
  wanted.name = "wanted_c";
  wanted.label = "wanted water temperature";
  require(wanted, wanted_c);
  if (wanted_c > tap_c) {
    throw NoSolution("ice cannot make water of " + number(wanted_c) + " °C from a tap of " + number(tap_c) + " °C; warm the water instead [wanted_c]",
                     {.field = "wanted_c", .value = wanted_c, .low = 0.0, .high = tap_c});
  }
  return water_g * (tap_c - wanted_c) / (tap_c + 80);
}

}  // namespace ferment
