#include <ferment/mix/water_plan.hpp>

#include <algorithm>
#include <cmath>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/dough/ingredient.hpp>
#include <ferment/heat/properties.hpp>
#include <ferment/mix/ice.hpp>

#include "base/blocks.hpp"
#include "base/loops.hpp"
#include "base/text.hpp"
#include "dough/parts.hpp"
#include "dough/sums.hpp"
#include "mix/filling.hpp"
#include "rise/cautions_checked.hpp"

namespace ferment {
namespace {

constexpr double hottest_c = field::water_c.high;
constexpr double sd_to_90_percent = 1.645;
constexpr double agree_k = 0.5;  // of dough: a probe does not tell less
/// Temperature of the main water for a dough of desired_c, where water of 0 °C makes one of cold_c.
double needed_water(const HeatBalance& cold, double cold_c, double desired_c) {
  if (!(cold.weights[main_water] > 1e-6)) {
    throw NoSolution("the main water counts for next to nothing: it is too little, or the rest takes all of its heat",
                     {.path = "water_g", .advice = "give more main water or rest shorter"});
  }
  const double water_c = (desired_c - cold_c) / cold.weights[main_water];
  return std::abs(water_c) < 1e-9 ? 0 : water_c;  // rounding must not ask for ice
}

/// Mean temperature of the portions of a kind, by their weight; nothing if there are none.
std::optional<double> mean_temperature(const Contents& contents, PortionKind kind) {
  double grams = 0, sum = 0;
  for (const HeatPortion& portion : contents.portions) {
    if (portion.kind != kind) continue;
    grams += portion.mass_g;
    sum += portion.mass_g * portion.temperature_c;
  }
  return grams > 0 ? std::optional(sum / grams) : std::nullopt;
}

/// The friction with which rule and balance agree in a room of 21 °C.
double friction_of(const Contents& contents, const HeatBalance& cold, double factors, double desired_c) {
  const double cold_c = dough_in_even_room(contents, cold, friction_found_at_c);
  return factors * desired_c - (factors - 1) * friction_found_at_c - needed_water(cold, cold_c, desired_c);
}

/// The doughs that some water makes, from the coldest to the hottest main water.
struct Reach {
  double low_c, high_c;
};

[[noreturn]] void refuse_water(const WaterPlan& plan, const std::string& why, const Reach& reach,
                               const std::string& advice) {
  const double low_c = std::max(reach.low_c, field::desired_c.low),
               high_c = std::min(reach.high_c, field::desired_c.high);
  const std::string begin = "a dough of " + degrees(plan.desired_c) + " " + why + "; ";
  if (!(low_c <= high_c)) {
    throw NoSolution(begin + "no water makes a dough of " + degrees(field::desired_c.low) + " to " +
                         degrees(field::desired_c.high) + " here",
                     {.path = "desired_c", .value = plan.desired_c, .advice = advice});
  }
  if (std::ceil(10 * low_c) > std::floor(10 * high_c)) {
    throw NoSolution(begin + "the main water counts for next to nothing: whatever is poured, the dough is at about " +
                         degrees((low_c + high_c) / 2),
                     {.path = "desired_c",
                      .value = plan.desired_c,
                      .low = low_c,
                      .high = high_c,
                      .advice = "give more main water or rest shorter"});
  }
  // Rounded inward, so that what is named can be had.
  throw NoSolution(begin + "reachable are doughs of " + degrees(std::ceil(10 * low_c) / 10) + " to " +
                       degrees(std::floor(10 * high_c) / 10),
                   {.path = "desired_c", .value = plan.desired_c, .low = low_c, .high = high_c, .advice = advice});
}

/// Pours the plan's water: as it is, or from the tap with ice; refuses what neither gives.
void pour(WaterPlan& plan, const Mix& mix, const HeatBalance& cold) {
  const double weight = cold.weights[main_water];
  const double all_ice_c =
      -(water::melting_heat_kj - water::ice_specific_heat_kj * mix.formula.ice_c) / water::specific_heat_kj;
  const double just_melts_c =
      mix.rest_h > 0 ? -cold.wetted_c * cold.wetted_capacity_kj_k / (plan.water_g / 1000 * water::specific_heat_kj)
                     : -cold.dough_c / weight;
  const double coldest_c = mix.tap_c ? std::max(all_ice_c, just_melts_c) : 0;
  const Reach reach{cold.dough_c + weight * coldest_c, cold.dough_c + weight * hottest_c};
  plan.pour_g = plan.water_g;
  plan.pour_c = plan.water_c;
  if (plan.water_c > hottest_c) {
    const bool barely = degrees(plan.water_c) == degrees(hottest_c);
    refuse_water(plan,
                 "needs water of " + (barely ? number(plan.water_c, 8) + " °C" : degrees(plan.water_c)) +
                     ", and above 60 °C it kills yeast and scalds",
                 reach, "warm the flour, the bowl or the room, or rest shorter");
  }
  if (!mix.tap_c) {
    if (plan.water_c < 0) {
      refuse_water(plan, "needs colder water than 0 °C (" + number(plan.water_c, 3) + " °C)", reach,
                   "give the temperature of the tap water, and the ice is worked out; or cool the flour");
    }
    return;
  }
  if (plan.water_c >= *mix.tap_c) return;
  plan.ice_g = ice_by_heat_balance(plan.water_g, *mix.tap_c, plan.water_c, mix.formula.ice_c);
  if (plan.ice_g > plan.water_g) {
    refuse_water(plan,
                 "needs " + number(plan.ice_g, 4) + " g of ice, more than the " + number(plan.water_g, 4) +
                     " g of water",
                 reach, "cool the flour or the bowl, or mix more gently");
  }
  if (plan.water_c < just_melts_c - 1e-9) {
    refuse_water(plan, "needs " + number(plan.ice_g, 4) + " g of ice, more than melts when flour and water meet", reach,
                 "cool the flour less, or mix more gently");
  }
  plan.pour_g = plan.water_g - plan.ice_g;
  plan.pour_c = *mix.tap_c;
}

void set_shares(WaterPlan& plan, const Contents& contents, const HeatBalance& balance, double room_c) {
  const double of_water = balance.weights[main_water];
  for (std::size_t i = 0; i < contents.portions.size(); ++i) {
    const HeatPortion& portion = contents.portions[i];
    plan.shares.push_back({portion.name, portion.mass_g, portion.temperature_c, balance.weights[i],
                           i == main_water ? 1 : -balance.weights[i] / of_water});
  }
  if (balance.room_weight > 0)
    plan.shares.push_back({"room", 0, room_c, balance.room_weight, -balance.room_weight / of_water});
}

void set_reason(WaterPlan& plan, const Contents& contents, const HeatBalance& balance, double factors) {
  double flour = 0;
  for (std::size_t i = 0; i < contents.portions.size(); ++i)
    flour += contents.portions[i].kind == PortionKind::flour ? balance.weights[i] : 0;
  const double water_share = balance.weights[main_water];
  const auto percent = [](double share) { return number(std::round(100 * share)) + " %"; };
  plan.reason = std::string("the rule counts flour, room") + (factors == 4 ? ", preferment" : "") +
                " and water alike; here the water carries " + percent(water_share) + " of the heat, the flour " +
                percent(flour) + ", all else " + percent(1 - water_share - flour);
  const double off_k = plan.dough_by_rule_c - plan.desired_c;
  if (std::abs(off_k) < agree_k) {
    plan.reason += "; with this friction both agree here within " + number(agree_k) + " K of dough";
  } else {
    plan.reason +=
        "; its water would make the dough " + number(std::abs(off_k), 2) + " K too " + (off_k > 0 ? "warm" : "cold");
  }
  plan.reason += plan.friction_given ? "" : " (friction taken for a room of 21 °C)";
}

/// What a bowl that nobody mentioned would do.
struct UnknownBowl {
  double dough_k = 0;  ///< to the dough that the plan's water makes
  double water_k = 0;  ///< to the water that makes the wanted dough
};
/// Of a heavy one: ceramic, 1.5 times the dough's weight, at most 2.5 kg (common practice, no source).
UnknownBowl unknown_bowl(const WaterPlan& plan, const Mix& mix, const Contents& contents) {
  if (mix.bowl.mass_g > 0) return {};
  Mix heavy = mix;
  heavy.bowl.material = "ceramic";
  heavy.bowl.mass_g = 1000 * std::min(1.5 * contents.dough_kg, 2.5);
  const HeatBalance cold = balance_of(cold_contents_of(heavy));
  return {cold.dough_c + cold.weights[main_water] * plan.water_c - plan.desired_c,
          needed_water(cold, cold.dough_c, plan.desired_c) - plan.water_c};
}

/// The 90 % band of the dough's temperature: bands of work and hydration, a bowl that is not known, and what readings
/// differ by, none of which knows the others.
void set_band(WaterPlan& plan, const Contents& contents, const HeatBalance& balance, double bowl_k) {
  const double hydration_k = contents.hydration_half_band_kj * balance.k_per_kj_wetted;
  const double reading_k = sd_to_90_percent * contents.reading_sd_kj * balance.k_per_kj_work;
  const double work_kj = contents.work_middle_kj;
  const double below_k = (work_kj - contents.work_low_kj) * balance.k_per_kj_work;
  const double above_k = (contents.work_high_kj - work_kj) * balance.k_per_kj_work;
  const double readings_k = std::hypot(hydration_k, reading_k);
  plan.low_c = plan.desired_c - std::hypot(below_k, readings_k, std::min(bowl_k, 0.0));
  plan.high_c = plan.desired_c + std::hypot(above_k, readings_k, std::max(bowl_k, 0.0));
}

/// Hours of the rest that the dough spends at 5 °C or above, where perishable food does not keep.
double perishable_rest_h(const WaterPlan& plan, const Contents& contents, const HeatBalance& balance) {
  constexpr double keeps_c = 5;
  const HeatSources& sources = contents.sources;
  const bool warm_first = plan.wetted_c > keeps_c, warm_last = plan.rested_c > keeps_c;
  if (warm_first == warm_last) return warm_first ? sources.rest_h : 0;
  const double time_constant_h = balance.wetted_capacity_kj_k / (3.6 * sources.rest_loss_w_per_k);
  const double crossing_h = time_constant_h * std::log((plan.wetted_c - sources.room_c) / (keeps_c - sources.room_c));
  return warm_first ? crossing_h : sources.rest_h - crossing_h;
}

/// Notices about yeast are kept only where the water touches yeast.
void add_notices(WaterPlan& plan, double water_c, bool touches_yeast, Yeast yeast) {
  for (Notice& notice : cautions_checked({.yeast = yeast, .water_c = water_c})) {
    const bool of_yeast = notice.code == "water_hot_for_yeast" || notice.code == "water_warm_for_yeast" ||
                          notice.code == "water_cold_for_instant";
    const bool known =
        std::any_of(plan.notices.begin(), plan.notices.end(), [&](const Notice& n) { return n.text == notice.text; });
    if ((touches_yeast || !of_yeast) && !known) plan.notices.push_back(std::move(notice));
  }
}

/// All of the flour, that of the doughs which join it included.
double flour_g_of(const Mix& mix) {
  const Formula& f = mix.formula;
  double flour_g = f.flour_g + f.gluten_g;
  for (const Flour& flour : f.flours) flour_g += flour.mass_g;
  for (const Preferment& preferment : f.preferments) flour_g += preferment.flour_g;
  for (const State& dough : mix.doughs) flour_g += dough.amounts.flour_g;
  return flour_g;
}

/// Butter that comes in solid melts in the dough.
void note_butter(WaterPlan& plan, const Formula& formula, double flour_g) {
  constexpr double worth_saying_percent = 10, melts_kj_per_kg = 50;  // some half of milk fat melts between 10 and 25 °C
  if (!(formula.butter_g > worth_saying_percent / 100 * flour_g)) return;
  const double colder_k = formula.butter_g / 1000 * melts_kj_per_kg / (plan.dough_g / 1000 * 2.8);
  plan.notices.push_back(
      {"butter_melts",
       Severity::caution,
       {{"butter_g", formula.butter_g}, {"dough_k", -colder_k}},
       "butter takes up heat as it melts, which is not counted: if it comes in solid, the dough will "
       "be about " +
           number(colder_k, 2) + " K colder (from memory: 50 kJ per kg of butter)"});
}

void set_notices(WaterPlan& plan, const Mix& mix, const Contents& contents, const HeatBalance& balance) {
  const Formula& f = mix.formula;
  const bool yeast = f.instant_g + f.active_dry_g + f.compressed_g > 0;
  const Yeast kind = f.instant_g > 0 ? Yeast::instant : f.active_dry_g > 0 ? Yeast::active_dry : Yeast::compressed;
  const bool wetted_apart =
      std::any_of(f.waters.begin(), f.waters.end(), [](const Water& water) { return water.wets_yeast; });
  const double poured_c = plan.ice_g > 0 ? std::max(plan.water_c, 0.0) : plan.water_c;
  add_notices(plan, poured_c, yeast && !wetted_apart && mix.rest_h == 0, kind);
  for (const Water& water : f.waters) add_notices(plan, water.temperature_c, water.wets_yeast, kind);
  if (mix.rest_h > 0 && (f.milk_g + f.egg_g > 0 || mix.perishable)) {
    for (Notice& notice : cautions_checked({.perishable_h = perishable_rest_h(plan, contents, balance)}))
      plan.notices.push_back(std::move(notice));
  }
  for (Notice& notice : cautions_checked({.dough_c = plan.desired_c})) plan.notices.push_back(std::move(notice));
  const double flour_g = flour_g_of(mix);
  for (Notice& notice : cautions_checked(f, flour_g)) plan.notices.push_back(std::move(notice));
  note_butter(plan, f, flour_g);
  if (!mix.mixing) {
    plan.notices.push_back({"mixing_assumed",
                            Severity::info,
                            {},
                            "no way of mixing was given: reckoned for kneading by hand, 10 min; give the method, or "
                            "the net gain of your batches"});
  }
}

void note_bowl(WaterPlan& plan, const UnknownBowl& bowl) {
  constexpr double worth_saying_k = 0.5;
  if (std::abs(bowl.dough_k) < worth_saying_k) return;
  const bool cools = bowl.dough_k < 0;
  plan.notices.push_back({"bowl_not_counted",
                          Severity::caution,
                          {{"dough_k", bowl.dough_k}, {"water_k", bowl.water_k}},
                          "no bowl is counted: a heavy one that has the room's temperature would make the dough " +
                              number(std::abs(bowl.dough_k), 2) + " K " + (cools ? "colder" : "warmer") +
                              ", and ask for water " + number(std::abs(bowl.water_k), 2) + " K " +
                              (cools ? "warmer" : "colder") + "; give its material and weight"});
}

/// The main water, linear in the wanted dough, the flour and the room.
struct Linear {
  double at_zero, per_desired, per_flour, per_room;
};

FERMENT_WIDE_LOOPS void linear(std::size_t n, Linear c, const double* desired, const double* flour, const double* room,
                               double* out) {
  for (std::size_t i = 0; i < n; ++i)
    out[i] = c.at_zero + c.per_desired * desired[i] + c.per_flour * flour[i] + c.per_room * room[i];
}

}  // namespace

WaterPlan water_by_heat_balance(const Mix& mix, double desired_c, std::optional<double> friction_k) {
  require(mix);
  if (mix.doughs.empty()) require_shares(shares_of(mix.formula));  // else percent of a part of the flour
  require(field::desired_c, desired_c);
  if (friction_k) require(field::friction_k, *friction_k);

  Contents contents = cold_contents_of(mix);
  const HeatBalance cold = balance_of(contents);
  WaterPlan plan;
  plan.desired_c = desired_c;
  plan.dough_g = 1000 * contents.dough_kg;
  plan.water_g = contents.portions[main_water].mass_g;
  plan.water_c = needed_water(cold, cold.dough_c, desired_c);
  pour(plan, mix, cold);
  const double n = factors_of(mix);
  plan.friction_given = friction_k.has_value();
  plan.friction_k = friction_k ? *friction_k : friction_of(contents, cold, n, desired_c);

  contents.portions[main_water].temperature_c = plan.water_c;
  const HeatBalance balance = balance_of(contents);
  plan.gain_k = balance.gain_k;
  plan.k_per_kj_per_kg = balance.k_per_kj_work * contents.dough_kg;
  plan.wetted_c = balance.wetted_c;
  plan.rested_c = balance.rested_c;

  const double flour_c = mean_temperature(contents, PortionKind::flour).value_or(contents.sources.room_c);
  const double preferment_c = mean_temperature(contents, PortionKind::preferment).value_or(0);
  plan.factor_rule_c = n * desired_c - flour_c - contents.sources.room_c - preferment_c - plan.friction_k;
  plan.difference_k = plan.factor_rule_c - plan.water_c;
  plan.dough_by_rule_c = desired_c + balance.weights[main_water] * plan.difference_k;

  set_shares(plan, contents, balance, contents.sources.room_c);
  set_reason(plan, contents, balance, n);
  const UnknownBowl bowl = unknown_bowl(plan, mix, contents);
  set_band(plan, contents, balance, bowl.dough_k);
  set_notices(plan, mix, contents, balance);
  note_bowl(plan, bowl);
  std::stable_sort(plan.notices.begin(), plan.notices.end(),
                   [](const Notice& a, const Notice& b) { return a.severity > b.severity; });
  return plan;
}

Mix with_water(const Mix& mix, const WaterPlan& plan) {
  Mix watered = mix;
  watered.formula.water_g = plan.pour_g;
  watered.formula.ice_g = plan.ice_g;
  watered.formula.water_c = plan.pour_c;
  require(watered);
  return watered;
}

double dough_by_heat_balance(const Mix& mix) {
  require(mix);
  return mixed_c(mix, contents_of(mix));
}

void water_map(const Mix& mix, const Values& desired_c, const Values& flour_c, const Values& room_c,
               std::span<double> out) {
  Mix somewhere = mix;
  if (!somewhere.room_c) somewhere.room_c = 0;  // its own is not read
  require(somewhere);
  require_shares(shares_of(mix.formula));
  const std::size_t n = out.size();
  require_column(field::desired_c, desired_c, n);
  require_column(field::flour_c, flour_c, n);
  require_column(field::room_c, room_c, n);
  // The water is linear in the three temperatures: four plans give all of them.
  const auto at = [&](double desired, double flour, double room) {
    Mix there = mix;
    there.formula.flour_c = flour;
    there.room_c = room;
    const HeatBalance cold = balance_of(cold_contents_of(there));
    return needed_water(cold, cold.dough_c, desired);
  };
  const double zero = at(0, 0, 0);
  const double per_desired = at(1, 0, 0) - zero;
  const double per_flour = at(0, 1, 0) - zero;
  const double per_room = at(0, 0, 1) - zero;
  constexpr std::size_t block = 256;
  const Column<block> desired(desired_c, n), flour(flour_c, n), room(room_c, n);
  for_blocks(n, block, [&](std::size_t start, std::size_t count) {
    linear(count, {zero, per_desired, per_flour, per_room}, desired.at(start), flour.at(start), room.at(start),
           out.data() + start);
  });
}

template <>
const Form& form_of<HeatShare>() {
  using H = HeatShare;
  static const Form form =
      made_form<H>("HeatShare", "How much one thing counts for the dough's temperature.", {},
                   {row<&H::name>("name", "such as main water, bread flour, bowl, or room for the exchange with it"),
                    row<&H::mass_g>("mass_g", "g of dough; 0 for bowl and room"),
                    row<&H::temperature_c>("temperature_c", "°C, as it comes"),
                    row<&H::dough_k_per_k>("dough_k_per_k", "K of dough per K of this; all of them sum to 1"),
                    row<&H::water_k_per_k>("water_k_per_k",
                                           "K by which the main water must change per K of this, for the same dough")});
  return form;
}

template <>
const Form& form_of<WaterPlan>() {
  using P = WaterPlan;
  static const Form form = made_form<P>(
      "WaterPlan", "How warm the main water must be, by the heat balance and by the trade's rule, and why they differ.",
      {},
      {row<&P::desired_c>("desired_c", "°C of the dough at the end of mixing"),
       row<&P::water_c>("water_c", "°C the main water must have, ice in it counted; below 0 °C only with ice"),
       row<&P::water_g>("water_g", "g of main water, ice included"),
       row<&P::pour_c>("pour_c", "°C of the water to pour: water_c, or the tap's if there is ice"),
       row<&P::pour_g>("pour_g", "g to pour: water_g less the ice"),
       row<&P::ice_g>("ice_g", "g of ice"),
       row<&P::factor_rule_c>("factor_rule_c", "°C of water by the trade's factor rule, for the same dough"),
       row<&P::friction_k>("friction_k", "K of friction the rule was asked with"),
       row<&P::difference_k>("difference_k", "K of water: factor_rule_c less water_c"),
       row<&P::dough_by_rule_c>("dough_by_rule_c", "°C of the dough that the rule's water would make"),
       row<&P::gain_k>("gain_k", "K of dough by work, hydration and dissolving"),
       row<&P::k_per_kj_per_kg>("k_per_kj_per_kg", "K of dough per kJ of mixing per kg of dough"),
       row<&P::low_c>("low_c", "°C, lower end of the likely dough temperatures (90 %)"),
       row<&P::high_c>("high_c", "°C, upper end"),
       row<&P::wetted_c>("wetted_c", "°C when flour and water have met, before the rest"),
       row<&P::rested_c>("rested_c", "°C at the end of the rest"),
       row<&P::dough_g>("dough_g", "g of dough"),
       row<&P::friction_given>("friction_given", "else friction_k is what the balance needs where all is at 21 °C"),
       row<&P::reason>("reason", "why rule and balance differ"),
       row<&P::shares>("shares", "how much each thing counts"),
       row<&P::notices>("notices", "cautions, most severe first")});
  return form;
}

}  // namespace ferment
