#include <ferment/base/field.hpp>

#include <array>
#include <cmath>

#include <ferment/base/error.hpp>
#include <ferment/base/parameters.hpp>

#include "base/indexed.hpp"
#include "base/loops.hpp"
#include "base/text.hpp"

namespace ferment {
namespace {

constexpr std::array all_inputs{field::dough_c,
                                field::from_c,
                                field::to_c,
                                field::temperature_c,
                                field::desired_c,
                                field::flour_c,
                                field::room_c,
                                field::preferment_c,
                                field::water_c,
                                field::tap_c,
                                field::refrigerator_c,
                                field::friction_k,
                                field::yeast_percent,
                                field::instant_equivalent_percent,
                                field::salt_percent,
                                field::water_percent,
                                field::sugar_percent,
                                field::gluten_percent,
                                field::altitude_m,
                                field::rise_percent,
                                field::time_h,
                                field::target_h,
                                field::perishable_h,
                                field::water_g,
                                field::loss_fraction,
                                field::co2_mmol,
                                field::air_mmol,
                                field::volume_ratio,
                                field::volume_ml,
                                field::mixed_volume_ml,
                                field::equivalent_h,
                                field::flour_g,
                                field::ice_g,
                                field::salt_g,
                                field::sugar_g,
                                field::gluten_g,
                                field::milk_g,
                                field::egg_g,
                                field::butter_g,
                                field::oil_g,
                                field::instant_g,
                                field::active_dry_g,
                                field::compressed_g,
                                field::piece_g,
                                field::pieces,
                                field::loss_percent,
                                field::moisture_percent,
                                field::poured_water_percent,
                                field::flours_percent,
                                field::liquid_percent,
                                field::bowl_c,
                                field::milk_c,
                                field::egg_c,
                                field::butter_c,
                                field::ice_c,
                                field::bowl_g,
                                field::contact,
                                field::mixing_min,
                                field::work_kj_per_kg,
                                field::hydration_kj_per_kg,
                                field::net_gain_kj_per_kg,
                                field::sd_kj_per_kg,
                                field::rest_h,
                                field::stands_h,
                                field::cup_h,
                                field::heat_loss_w_per_k,
                                field::start_c,
                                field::surroundings_c,
                                field::time_constant_h,
                                field::proof_box_c,
                                field::humidity_percent,
                                field::heat_transfer_w_per_m2_k,
                                field::half_range_k,
                                field::warmest_h,
                                field::diameter_cm,
                                field::length_cm,
                                field::depth_cm,
                                field::vessel_g,
                                field::dough_g,
                                field::piece_heat_loss_w_per_k,
                                field::until_h,
                                field::folds_h,
                                field::start_h};

bool inside(const Field& field, double value) { return value >= field.low && value <= field.high; }  // NaN is not

FERMENT_WIDE_LOOPS std::size_t count_inside(const double* data, std::size_t size, double low, double high) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < size; ++i) count += (data[i] >= low) & (data[i] <= high);
  return count;
}

/// Another unit, if that explains the value.
Meant meant_by(const Field& field, double value) {
  if (field.quantity == Quantity::temperature && inside(field, (value - 32) / 1.8)) return Meant::fahrenheit;
  if (field.quantity == Quantity::temperature_difference && inside(field, value / 1.8))
    return Meant::fahrenheit_difference;
  return Meant::as_given;
}

/// The value with as many digits as tell it from the bound it passed.
std::string unlike_bounds(const Field& field, double value) {
  for (const int digits : {6, 12}) {
    const std::string text = number(value, digits);
    if (text != number(field.low, digits) && text != number(field.high, digits)) return text;
  }
  return number(value, 17);
}

}  // namespace

std::span<const Field> input_fields() { return all_inputs; }

const Field* find_field(std::string_view name) {
  for (const Field& field : all_inputs) {
    if (field.name == name) return &field;
  }
  for (const Parameter& parameter : parameters()) {
    if (parameter.name == name) return &parameter;
  }
  return nullptr;
}

void require(const Field& field, const Values& values) {
  if (values.is_single() && inside(field, values[0])) return;
  const double* const data = values.data();
  const std::size_t size = values.size();
  const std::size_t offending = size - count_inside(data, size, field.low, field.high);
  if (offending == 0) return;

  std::size_t first = 0;
  while (inside(field, data[first])) ++first;
  const double value = data[first];
  const std::string unit = std::string(field.unit.empty() ? "" : " ").append(field.unit);
  std::string problem = std::string(field.label) + " " + unlike_bounds(field, value) + unit;
  problem += std::isnan(value) ? "; it must be a number from " : " is outside ";
  problem += number(field.low) + " to " + number(field.high) + unit;
  ErrorDetail detail{.path = std::string(field.name),
                     .value = value,
                     .low = field.low,
                     .high = field.high,
                     .advice = std::string(field.advice),
                     .meant = meant_by(field, value)};
  add_index(detail, values, first, offending);
  throw InvalidInput(problem, std::move(detail));
}

template <>
const Names& names_of<Quantity>() {
  static constexpr std::string_view list[] = {"temperature", "temperature_difference",
                                              "percent",     "duration",
                                              "mass",        "length",
                                              "ratio"};
  static constexpr Names names{"quantity", "quantity", list};
  return names;
}

}  // namespace ferment
