#include <ferment/mix/factor_rule.hpp>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/blocks.hpp"
#include "base/loops.hpp"

namespace ferment {
namespace {

constexpr std::size_t rule_block = 256;

FERMENT_WIDE_LOOPS void by_rule(std::size_t n, double factors, const double* desired, const double* flour,
                                const double* room, const double* preferment, const double* friction, double* out) {
  for (std::size_t i = 0; i < n; ++i) out[i] = factors * desired[i] - flour[i] - room[i] - preferment[i] - friction[i];
}

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

void water_by_factor_rule(const Values& desired_c, const Values& flour_c, const Values& room_c,
                          const Values& friction_k, const std::optional<Values>& preferment_c, std::span<double> out) {
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
    by_rule(count, factors, desired.at(start), flour.at(start), room.at(start), preferment.at(start),
            friction.at(start), out.data() + start);
  });
}

double water_by_factor_rule(double desired_c, double flour_c, double room_c, double friction_k,
                            std::optional<double> preferment_c) {
  double out = 0;
  std::optional<Values> preferment;
  if (preferment_c) preferment = Values(*preferment_c);
  water_by_factor_rule(Values(desired_c), Values(flour_c), Values(room_c), Values(friction_k), preferment, {&out, 1});
  return out;
}

double dough_by_factor_rule(double water_c, double flour_c, double room_c, double friction_k,
                            std::optional<double> preferment_c) {
  require(field::water_c, water_c);
  require(field::friction_k, friction_k);
  const Known known = known_temperatures(flour_c, room_c, preferment_c);
  return (known.sum + water_c + friction_k) / known.factors;
}

double friction_from_batch(double dough_c, double flour_c, double room_c, double water_c,
                           std::optional<double> preferment_c) {
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

BatchMean friction_from_batches(const Values& dough_c, const Values& flour_c, const Values& room_c,
                                const Values& water_c, const std::optional<Values>& preferment_c) {
  std::size_t n = 1;
  for (const Values* values : {&dough_c, &flour_c, &room_c, &water_c}) n = values->is_single() ? n : values->size();
  if (preferment_c && !preferment_c->is_single()) n = preferment_c->size();
  require_column(field::dough_c, dough_c, n);
  require_column(field::flour_c, flour_c, n);
  require_column(field::room_c, room_c, n);
  require_column(field::water_c, water_c, n);
  if (preferment_c) require_column(field::preferment_c, *preferment_c, n);
  return mean_of_batches(n, [&](std::size_t i) {
    const auto preferment = preferment_c ? std::optional((*preferment_c)[i]) : std::nullopt;
    return friction_from_batch(dough_c[i], flour_c[i], room_c[i], water_c[i], preferment);
  });
}

}  // namespace ferment
