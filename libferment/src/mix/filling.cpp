#include "mix/filling.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/dough/ingredient.hpp>
#include <ferment/heat/properties.hpp>

#include "base/text.hpp"
#include "dough/parts.hpp"
#include "dough/shell.hpp"
#include "dough/sums.hpp"

namespace ferment {
namespace {

constexpr double hydration_band = 0.4;  // of heat_of_hydration

/// Nothing is asked of the balance where the dough was measured: any temperature serves.
double room_of(const Mix& mix) { return mix.room_c.value_or(mix.dough_c.value_or(0)); }

class Filling {
 public:
  Filling(const Mix& mix, const HeatPortion& dough, bool is_cold) : mix_(mix), room_c_(room_of(mix)) {
    const Formula& f = mix.formula;
    if (!(dough.mass_g > 0) && mix.doughs.empty()) shares_of(f);  // refuses a mix without flour
    const double flour_c = f.flour_c.value_or(room_c_);
    add({.name = "main water",
         .kind = PortionKind::main_water,
         .mass_g = is_cold ? f.water_g + f.ice_g : f.water_g,
         .temperature_c = is_cold ? 0 : f.water_c.value_or(0)},
        water::specific_heat_kj, 0, 1);
    if (f.ice_g > 0 && !is_cold) {
      add({.name = "ice", .mass_g = f.ice_g, .temperature_c = 0}, water::specific_heat_kj,
          water::melting_heat_kj - water::ice_specific_heat_kj * f.ice_c, 1);
    }
    if (f.flour_g > 0) add_flour({.mass_g = f.flour_g}, flour_c);
    for (const Flour& flour : f.flours) add_flour(flour, flour_c);
    if (f.gluten_g > 0) {
      const Ingredient& gluten = ingredient_named("gluten");
      add({.name = std::string(gluten.label),
           .kind = PortionKind::flour,
           .mass_g = f.gluten_g,
           .temperature_c = flour_c},
          mixing_specific_heat(gluten.name));
      add_hydration(f.gluten_g, 100 * gluten.composition.water);
    }
    for (const Water& water : f.waters) add_water(water);
    for (const Preferment& preferment : f.preferments) add_preferment(preferment);
    for (const Part& part : parts().subspan(1)) add(part);
    add_dough(dough);
    for (const State& other : mix.doughs) add_dough(portion_of(other, "preferment"));
    if (mix.bowl.mass_g > 0) {
      contents_.portions.push_back({.name = "bowl",
                                    .capacity_kj_k = heat_capacity_kj(mix.bowl),
                                    .temperature_c = mix.bowl.temperature_c.value_or(room_c_)});
      contents_.kept_in_even_room.push_back(0);
    }
    add_sources();
  }
  Contents contents() && { return std::move(contents_); }

 private:
  /// Completes the portion's heat and adds it; a second one of a name is numbered. `kept`: see kept_in_even_room.
  void add(HeatPortion portion, double specific_heat_kj, double uptake_kj_per_kg = 0, double kept = 0) {
    const double kg = portion.mass_g / 1000;
    portion.capacity_kj_k = kg * specific_heat_kj;
    portion.uptake_kj = kg * uptake_kj_per_kg;
    put(std::move(portion), kept);
  }

  void add_dough(const HeatPortion& dough) {
    if (dough.mass_g > 0) put(dough, 1);
  }

  void put(HeatPortion portion, double kept) {
    const double kg = portion.mass_g / 1000;
    const auto same =
        std::count_if(contents_.portions.begin(), contents_.portions.end(), [&](const HeatPortion& other) {
          return other.name == portion.name || other.name.rfind(portion.name + " ", 0) == 0;
        });
    if (same > 0) portion.name.append(" ").append(std::to_string(same + 1));
    contents_.dough_kg += kg;
    contents_.wetted_kg += portion.after_rest ? 0 : kg;
    contents_.portions.push_back(std::move(portion));
    contents_.kept_in_even_room.push_back(kept);
  }

  /// An ingredient of the table, at the room's temperature if its own is not given; nothing if there is none of it.
  void add(const Part& part) {
    const double mass_g = mix_.formula.*part.grams;
    if (mass_g == 0) return;
    const auto own = part.more.temperature_c;
    add({.name = std::string(part.field->label),
         .mass_g = mass_g,
         .temperature_c = own == nullptr ? room_c_ : (mix_.formula.*own).value_or(room_c_),
         .after_rest = !part.more.before_rest},
        mixing_specific_heat(part.ingredient), mix_.heat_of_solution ? part.more.solution_kj_per_kg : 0);
  }

  void add_flour(const Flour& flour, double flour_c) {
    const Ingredient& kind = flour_named(flour.kind);
    const double moisture_percent = flour.moisture_percent.value_or(100 * kind.composition.water);
    add({.name = std::string(kind.label),
         .kind = PortionKind::flour,
         .mass_g = flour.mass_g,
         .temperature_c = flour.temperature_c.value_or(flour_c)},
        flour_specific_heat(moisture_percent));
    add_hydration(flour.mass_g, moisture_percent);
  }

  void add_hydration(double flour_g, double moisture_percent) {
    fresh_flour_kg_ += flour_g / 1000;
    hydration_kj_ += flour_g / 1000 * heat_of_hydration(moisture_percent);
  }

  /// A portion that stood in the room is nearer to its temperature when it is mixed in.
  void add_water(const Water& portion) {
    const double kept = std::exp(-portion.stands_h / portion.cup_h);
    add({.name = portion.wets_yeast ? "yeast's water" : "other water",
         .mass_g = portion.mass_g,
         .temperature_c = room_c_ + (portion.temperature_c - room_c_) * kept,
         .after_rest = portion.wets_yeast},
        water::specific_heat_kj, 0, kept);
  }

  void add_preferment(const Preferment& preferment) {
    const double mass_g = preferment.flour_g + preferment.water_g;
    const double kj = preferment.flour_g * mixing_specific_heat("bread") + preferment.water_g * water::specific_heat_kj;
    add({.name = "preferment",
         .kind = PortionKind::preferment,
         .mass_g = mass_g,
         .temperature_c = preferment.temperature_c.value_or(room_c_),
         .after_rest = true},
        kj / mass_g);
  }

  void set_hydration(const std::optional<double>& kj_per_kg) {
    contents_.sources.hydration_kj = kj_per_kg ? *kj_per_kg * fresh_flour_kg_ : hydration_kj_;
    contents_.hydration_half_band_kj = kj_per_kg ? 0 : hydration_band * hydration_kj_;
  }

  void set_work(double low_kj_per_kg, double kj_per_kg, double high_kj_per_kg) {
    contents_.sources.work_kj = contents_.work_middle_kj = kj_per_kg * contents_.dough_kg;
    contents_.work_low_kj = low_kj_per_kg * contents_.dough_kg;
    contents_.work_high_kj = high_kj_per_kg * contents_.dough_kg;
  }

  void operator()(const ByMethod& by) {
    const MixingMethod& method = mixing_method_named(by.method);
    const double times = mixing_minutes(by) / method.usual_min;
    set_work(times * method.low_kj_per_kg, times * method.work_kj_per_kg, times * method.high_kj_per_kg);
    set_hydration(by.hydration_kj_per_kg);
    if (method.is_net_gain) take_hydration_out_of_gain();
  }
  void operator()(const ByWork& by) {
    set_work(by.work_kj_per_kg, by.work_kj_per_kg, by.work_kj_per_kg);
    set_hydration(by.hydration_kj_per_kg);
  }
  /// The flour gives off its heat when it is wetted, before a rest; only the remainder of the gain comes with the
  /// mixing.
  void take_hydration_out_of_gain() {
    contents_.sources.work_kj -= contents_.sources.hydration_kj;
    contents_.hydration_half_band_kj = 0;
  }
  void operator()(const ByNetGain& by) {
    set_work(by.net_gain_kj_per_kg, by.net_gain_kj_per_kg, by.net_gain_kj_per_kg);
    contents_.sources.hydration_kj = hydration_kj_;
    take_hydration_out_of_gain();
    contents_.reading_sd_kj = by.sd_kj_per_kg * contents_.dough_kg;
  }

  void add_sources() {
    HeatSources& sources = contents_.sources;
    sources.room_c = room_c_;
    sources.rest_h = mix_.rest_h;
    sources.loss_w_per_k = mix_.heat_loss_w_per_k.value_or(bowl_heat_loss_w_per_k(1000 * contents_.dough_kg));
    sources.rest_loss_w_per_k = mix_.heat_loss_w_per_k.value_or(bowl_heat_loss_w_per_k(1000 * contents_.wetted_kg));
    contents_.reading_sd_kj = *field::sd_kj_per_kg.initial * contents_.dough_kg;
    const Mixing mixing = mix_.mixing.value_or(ByMethod{});
    sources.mixing_h = mixing_minutes(mixing) / 60;
    std::visit([this](const auto& by) { (*this)(by); }, mixing);
    if (!mix_.mixing) add_guess();
  }

  /// A way of mixing that was not said may as well be a machine.
  void add_guess() {
    const double machine = mixing_method_named("stand_mixer").high_kj_per_kg;
    contents_.work_high_kj = machine * contents_.dough_kg + contents_.sources.hydration_kj;
  }

  const Mix& mix_;
  double room_c_;
  Contents contents_;
  double fresh_flour_kg_ = 0;
  double hydration_kj_ = 0;
};

/// Ice is all melted when a rest begins, or at the latest in the mixed dough; rounding must not freeze it.
bool melts(const HeatBalance& balance, double rest_h) {
  return (rest_h > 0 ? balance.wetted_c : balance.dough_c) > -1e-9;
}

}  // namespace

HeatPortion portion_of(const State& dough, const std::string& name) {
  if (!(dough.amounts.dough_g > 0)) return {.name = name};
  return {.name = name,
          .kind = PortionKind::preferment,
          .mass_g = dough.amounts.dough_g,
          .capacity_kj_k = dough.heat_capacity_kj_k,
          .temperature_c = only_shell(dough).temperature_c,
          .after_rest = true};
}

Contents contents_of(const Mix& mix, const HeatPortion& dough) { return Filling(mix, dough, false).contents(); }

void require_room(const Mix& mix) {
  if (!mix.room_c)
    throw InvalidInput("the room has no temperature",
                       {.path = "room_c", .advice = "measure it where the dough is mixed"});
}

Contents cold_contents_of(const Mix& mix) {
  require_room(mix);
  const double water_g = mix.formula.water_g + mix.formula.ice_g;
  if (!(water_g > 0)) {
    throw InvalidInput("there is no main water whose temperature could be chosen",
                       {.path = "water_g",
                        .value = water_g,
                        .low = field::water_g.low,
                        .high = field::water_g.high,
                        .advice = "give water_g, or take it from another portion"});
  }
  return Filling(mix, {}, true).contents();
}

double dough_in_even_room(const Contents& cold, const HeatBalance& balance, double even_c) {
  double dough_c = balance.gain_k + balance.room_weight * even_c;
  for (std::size_t i = 0; i < cold.portions.size(); ++i) {
    // What stands in the room nears it: its temperature is room + kept·(own − room), with the room that it is given
    // for.
    const double kept = cold.kept_in_even_room[i], room_c = cold.sources.room_c;
    const double own_less_room = kept > 0 ? cold.portions[i].temperature_c - (1 - kept) * room_c : 0;
    dough_c += balance.weights[i] * (own_less_room + (1 - kept) * even_c);
  }
  return dough_c;
}

double factors_of(const Mix& mix) { return mix.formula.preferments.empty() && mix.doughs.empty() ? 3 : 4; }

double mixed_c(const Mix& mix, const Contents& contents) {
  require_room(mix);
  if (!mix.formula.water_c && mix.formula.water_g > 0) {
    throw InvalidInput("the main water has no temperature",
                       {.path = "water_c",
                        .advice =
                            "give water_c, take one from a water plan, or in a process the dough's own, dough_c"});
  }
  const HeatBalance balance = balance_of(contents);
  if (mix.formula.ice_g > 0 && !melts(balance, mix.rest_h)) {
    throw OutsideModel("flour, water and ice would be at " + degrees(std::min(balance.wetted_c, balance.dough_c)) +
                           ", where ice does not melt",
                       {.path = "ice_g", .value = mix.formula.ice_g, .advice = "take less ice"});
  }
  constexpr double rounding_k = 1e-9;
  if (!(balance.dough_c >= field::dough_c.low - rounding_k && balance.dough_c <= field::dough_c.high + rounding_k)) {
    throw OutsideModel("the dough would have " + degrees(balance.dough_c) + ", outside " + degrees(field::dough_c.low) +
                           " to " + degrees(field::dough_c.high),
                       {.path = "dough_c",
                        .value = balance.dough_c,
                        .low = field::dough_c.low,
                        .high = field::dough_c.high,
                        .advice = std::string(field::dough_c.source)});
  }
  return std::clamp(balance.dough_c, field::dough_c.low, field::dough_c.high);
}

}  // namespace ferment
