#include <ferment/heat/mixing.hpp>

#include <array>
#include <cmath>

#include <ferment/base/error.hpp>
#include <ferment/heat/properties.hpp>

#include "base/blocks.hpp"
#include "base/loops.hpp"
#include "base/named.hpp"
#include "base/text.hpp"

namespace ferment {
namespace {

constexpr std::size_t rule_block = 256;
constexpr double kj_per_wh = 3.6;

// c and k of materials: ranges of Incropera and Perry's from memory, the middle of each; walls of 4 mm glass, 8 mm
// ceramic, 2 mm plastic and silicone, 3 mm polycarbonate, 5 mm wood (common practice, no source).
constexpr std::string_view handbooks = "Incropera and Perry's (from memory)";
constexpr std::array materials{
    BowlMaterial{"steel", 0.49, 0, true, handbooks},
    BowlMaterial{"aluminium", 0.90, 0, true, handbooks},
    BowlMaterial{"glass", 0.84, 0.0035, false, handbooks},
    BowlMaterial{"ceramic", 0.90, 0.006, false, handbooks},
    BowlMaterial{"plastic", 1.85, 0.010, false, "polypropylene; Incropera and Perry's (from memory)"},
    BowlMaterial{"polycarbonate", 1.2, 0.015, false, handbooks},
    BowlMaterial{"silicone", 1.4, 0.010, false, handbooks},
    BowlMaterial{"wood", 2.0, 0.030, false, handbooks},
};

constexpr std::string_view practice = "common practice, no source";
constexpr std::array methods{
    MixingMethod{"folds", "stretch and fold", 0.3, 0, 0.5, 4, practice},
    MixingMethod{"hand", "kneading by hand", 2, 0.5, 4, 10,
                 "estimate from a friction of 0 to 10 °F less hydration (friction: trade article)"},
    MixingMethod{"stand_mixer", "stand mixer", 6, 3, 12, 9, "estimate from a friction of 20 to 26 °F (trade articles)"},
    MixingMethod{"spiral", "spiral mixer, gentle", 8, 4, 14, 10, "estimate, 1 to 4 Wh/kg; common practice, no source"},
    MixingMethod{"spiral_intensive", "spiral mixer, intensive", 18, 10, 25, 14,
                 "estimate, 3 to 7 Wh/kg; common practice, no source"},
    MixingMethod{"diving_arm", "fork or diving-arm mixer", 4, 2, 8, 15, practice},
    MixingMethod{"food_processor", "food processor", 10, 6, 25, 1,
                 "estimate from a friction of 25 °F (cooking magazine)"},
    MixingMethod{"high_speed", "horizontal high-speed mixer", 25, 18, 45, 12, practice},
    MixingMethod{"mechanical_development", "mechanical development", 39.6, 36, 43, 3,
                 "11 Wh/kg: baking trade dictionary; band: mixer maker's note"},
};

/// (1 − e^(−x))/x, 1 at 0: what is left of heat that came in evenly while it was lost.
double mean_decay(double x) { return x < 1e-12 ? 1 : -std::expm1(-x) / x; }

void require_warmer_tap(double tap_c, double wanted_c) {
  if (wanted_c <= tap_c) return;
  throw NoSolution("ice cannot make water of " + number(wanted_c) + " °C from a tap of " + number(tap_c) + " °C",
                   {.path = "wanted_c", .value = wanted_c, .high = tap_c, .advice = "warm the water instead"});
}

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

double ice_by_trade_rule(double water_g, double tap_c, double wanted_c) {
  require(field::water_g, water_g);
  require(field::tap_c, tap_c);
  Field wanted = field::water_c;
  wanted.name = "wanted_c";
  wanted.label = "wanted water temperature";
  require(wanted, wanted_c);
  require_warmer_tap(tap_c, wanted_c);
  return water_g * (tap_c - wanted_c) / (tap_c + 80);
}

double ice_by_heat_balance(double water_g, double tap_c, double wanted_c, double ice_c) {
  require(field::water_g, water_g);
  require(field::tap_c, tap_c);
  require(field::ice_c, ice_c);
  require(Field{"wanted_c", "wanted water temperature", "°C", -1e6, 60, field::must_be_given, Quantity::temperature},
          wanted_c);
  require_warmer_tap(tap_c, wanted_c);
  const double per_g_tap = water::specific_heat_kj * tap_c;
  const double per_g_ice = water::melting_heat_kj - water::ice_specific_heat_kj * ice_c;
  return water_g * water::specific_heat_kj * (tap_c - wanted_c) / (per_g_tap + per_g_ice);
}

std::span<const BowlMaterial> bowl_materials() { return materials; }

const BowlMaterial& bowl_material_named(std::string_view name) {
  return row_named(materials, name, "bowl material", "bowl");
}

double heat_capacity_kj(const Bowl& bowl) {
  const BowlMaterial& material = bowl_material_named(bowl.material);
  require(field::bowl_g, bowl.mass_g);
  require(field::contact, bowl.contact);
  return bowl.contact * bowl.mass_g / 1000 * material.specific_heat_kj;
}

std::span<const MixingMethod> mixing_methods() { return methods; }

const MixingMethod& mixing_method_named(std::string_view name) {
  return row_named(methods, name, "mixing method", "method");
}

double mixing_minutes(const Mixing& mixing) {
  if (const auto* by = std::get_if<ByMethod>(&mixing))
    return by->minutes.value_or(mixing_method_named(by->method).usual_min);
  const auto* gain = std::get_if<ByNetGain>(&mixing);
  return gain ? gain->minutes : 0;
}

namespace {

void require_at_least(double least, double value, const char* what) {
  if (value >= least && value < 1e300) return;
  throw InvalidInput(
      std::string(what) + " " + number(value) + " is no number of a heat balance",
      {.path = what, .value = value, .low = least, .advice = "give a finite one, at least " + number(least)});
}

void require_balance(std::span<const HeatPortion> portions, const HeatSources& sources) {
  for (const HeatPortion& p : portions) {
    require_at_least(0, p.capacity_kj_k, "capacity_kj_k");
    require_at_least(-1e300, p.temperature_c, "temperature_c");
    require_at_least(-1e300, p.uptake_kj, "uptake_kj");
  }
  require_at_least(-1e300, sources.hydration_kj, "hydration_kj");
  require_at_least(-1e300, sources.work_kj, "work_kj");
  require_at_least(-1e300, sources.room_c, "room_c");
  require_at_least(0, sources.loss_w_per_k, "loss_w_per_k");
  require_at_least(0, sources.rest_loss_w_per_k, "rest_loss_w_per_k");
  require_at_least(0, sources.rest_h, "rest_h");
  require_at_least(0, sources.mixing_h, "mixing_h");
}

}  // namespace

HeatBalance heat_balance(std::span<const HeatPortion> portions, const HeatSources& sources) {
  require_balance(portions, sources);
  double wetted_capacity = 0, wetted_heat = sources.hydration_kj, capacity = 0, joining_heat = 0, joining_uptake = 0,
         wetting_uptake = 0;
  for (const HeatPortion& p : portions) {
    capacity += p.capacity_kj_k;
    const double heat = p.capacity_kj_k * p.temperature_c - p.uptake_kj;
    if (p.after_rest) {
      joining_heat += heat;
      joining_uptake += p.uptake_kj;
    } else {
      wetted_capacity += p.capacity_kj_k;
      wetted_heat += heat;
      wetting_uptake += p.uptake_kj;
    }
  }
  if (!(capacity > 0))
    throw InvalidInput("nothing in the bowl has a heat capacity",
                       {.path = "portions", .advice = "give flour and water"});

  const bool wets = wetted_capacity > 0;  // else a dough is there already, and something joins it
  const double kept_in_rest =
      wets ? std::exp(-kj_per_wh * sources.rest_loss_w_per_k * sources.rest_h / wetted_capacity) : 1;
  const double mixing = kj_per_wh * sources.loss_w_per_k * sources.mixing_h / capacity;
  const double kept_in_mixing = std::exp(-mixing);

  HeatBalance b;
  b.capacity_kj_k = capacity;
  b.wetted_capacity_kj_k = wetted_capacity;
  b.wetted_c = wets ? wetted_heat / wetted_capacity : sources.room_c;
  b.rested_c = sources.room_c + (b.wetted_c - sources.room_c) * kept_in_rest;
  const double joined_c = (wetted_capacity * b.rested_c + joining_heat) / capacity;
  b.k_per_kj_work = mean_decay(mixing) / capacity;
  b.dough_c = sources.room_c + (joined_c - sources.room_c) * kept_in_mixing + sources.work_kj * b.k_per_kj_work;

  const double per_joined = kept_in_mixing / capacity;
  const double per_wetted = kept_in_rest * per_joined;
  b.k_per_kj_wetted = per_wetted;
  for (const HeatPortion& p : portions) b.weights.push_back(p.capacity_kj_k * (p.after_rest ? per_joined : per_wetted));
  b.room_weight = wetted_capacity * (1 - kept_in_rest) * per_joined + (1 - kept_in_mixing);
  b.gain_k = (sources.hydration_kj - wetting_uptake) * per_wetted - joining_uptake * per_joined +
             sources.work_kj * b.k_per_kj_work;
  return b;
}

double bowl_heat_loss_w_per_k(double dough_g) {
  require_at_least(0, dough_g, "dough_g");
  return 0.45 * std::pow(dough_g / 1670, 2.0 / 3);
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

BatchMean mean_of_batches(std::size_t count, const std::function<double(std::size_t)>& number_of) {
  std::vector<double> each;
  for (std::size_t i = 0; i < count; ++i) {
    try {
      each.push_back(number_of(i));
    } catch (const InvalidInput& problem) {
      if (count == 1) throw;
      ErrorDetail detail = problem.detail();
      detail.index = i;
      detail.count = count;
      throw InvalidInput("batch " + std::to_string(i + 1) + " of " + std::to_string(count) + ": " + problem.problem(),
                         detail);
    }
  }
  return mean_of_batches(std::move(each));
}

BatchMean mean_of_batches(std::vector<double> each) {
  if (each.empty()) throw InvalidInput("no batch given", {.path = "batches", .advice = "one is enough"});
  const auto n = static_cast<double>(each.size());
  BatchMean result;
  for (const double value : each) {
    require_at_least(-1e300, value, "each");
    result.mean += value / n;
  }
  if (each.size() > 1) {
    double squares = 0;
    for (const double value : each) squares += (value - result.mean) * (value - result.mean);
    result.sd = std::sqrt(squares / (n - 1));
  }
  result.each = std::move(each);
  return result;
}

template <>
const Form& form_of<Bowl>() {
  static const Form form =
      made_form<Bowl>("Bowl", "The bowl the dough is mixed in, with its hook or paddle.", {},
                      {of_table(row<&Bowl::material>("material", "a row of bowl_materials()"),
                                [](const std::string& material) { bowl_material_named(material); }),
                       row<&Bowl::mass_g>("mass_g", field::bowl_g),
                       row<&Bowl::temperature_c>("temperature_c", field::bowl_c), row<&Bowl::contact>(field::contact)});
  return form;
}

template <>
const Form& form_of<ByMethod>() {
  static const Form form = [] {
    Form form = made_form<ByMethod>(
        "ByMethod", "Mixing heat from a method and its minutes; hydration and exchange with the room come on top.", {},
        {must_be_given(of_table(row<&ByMethod::method>("method", "a row of mixing_methods()"),
                                [](const std::string& method) { mixing_method_named(method); })),
         row<&ByMethod::minutes>("minutes", field::mixing_min),
         row<&ByMethod::hydration_kj_per_kg>(field::hydration_kj_per_kg)});
    form.shorthand = "method";
    return form;
  }();
  return form;
}

template <>
const Form& form_of<ByWork>() {
  static const Form form =
      made_form<ByWork>("ByWork", "Mixing heat from known work; hydration comes on top.", {.work_kj_per_kg = 0},
                        {row<&ByWork::work_kj_per_kg>(field::work_kj_per_kg),
                         row<&ByWork::hydration_kj_per_kg>(field::hydration_kj_per_kg)});
  return form;
}

template <>
const Form& form_of<ByNetGain>() {
  static const Form form =
      made_form<ByNetGain>("ByNetGain", "One number from logged batches in place of work, hydration and losses.",
                           {.net_gain_kj_per_kg = 0},
                           {row<&ByNetGain::net_gain_kj_per_kg>(field::net_gain_kj_per_kg),
                            row<&ByNetGain::sd_kj_per_kg>(field::sd_kj_per_kg),
                            row<&ByNetGain::minutes>("minutes", field::gain_min)});
  return form;
}

}  // namespace ferment
