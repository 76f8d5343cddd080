#include <ferment/process/step.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/text.hpp"

namespace ferment {
namespace {

void require_if_given(const Field& field, const std::optional<double>& value) {
  if (value) require(field, *value);
}

constexpr std::array handlings{std::pair{Handling::fold, std::string_view("fold")},
                               std::pair{Handling::divide, std::string_view("divide")},
                               std::pair{Handling::round, std::string_view("round")},
                               std::pair{Handling::mould, std::string_view("mould")}};

struct CheckMixing {
  void operator()(const ByMethod& m) const {
    mixing_method_named(m.method);
    require_if_given(field::mixing_min, m.minutes);
    require_if_given(field::hydration_kj_per_kg, m.hydration_kj_per_kg);
  }
  void operator()(const ByWork& w) const {
    require(field::work_kj_per_kg, w.work_kj_per_kg);
    require_if_given(field::hydration_kj_per_kg, w.hydration_kj_per_kg);
  }
  void operator()(const ByNetGain& g) const {
    require(field::net_gain_kj_per_kg, g.net_gain_kj_per_kg);
    require(field::sd_kj_per_kg, g.sd_kj_per_kg);
    require(field::mixing_min, g.minutes);
  }
};

}  // namespace

void require_mix(const Mix& mix) {
  double dough_g = amounts_of(mix.formula).dough_g;
  for (const State& dough : mix.doughs) {
    require_state(dough);
    dough_g += dough.amounts.dough_g;
  }
  if (!(dough_g > 0)) {
    throw InvalidInput("the mix has nothing in it", {.path = "flour_g",
                                                     .value = 0.0,
                                                     .advice = "give flour_g, water_g, or what else joins the dough"});
  }
  require_if_given(field::dough_c, mix.dough_c);
  if (!(mix.dough_c && std::isnan(mix.room_c)))
    require(field::room_c, mix.room_c);  // a measured dough needs no balance
  require_if_given(field::flour_c, mix.flour_c);
  require_if_given(field::water_c, mix.water_c);
  require_if_given(field::tap_c, mix.tap_c);
  require(field::ice_c, mix.ice_c);
  require_if_given(field::milk_c, mix.milk_c);
  require_if_given(field::egg_c, mix.egg_c);
  require_if_given(field::butter_c, mix.butter_c);
  heat_capacity_kj(mix.bowl);
  require_if_given(field::bowl_c, mix.bowl.temperature_c);
  if (mix.mixing) std::visit(CheckMixing{}, *mix.mixing);
  require(field::rest_h, mix.rest_h);
  require_if_given(field::heat_loss_w_per_k, mix.heat_loss_w_per_k);
}

std::string_view name_of(Handling handling) {
  for (const auto& [kind, name] : handlings) {
    if (kind == handling) return name;
  }
  throw InvalidInput("handling " + std::to_string(static_cast<int>(handling)) + " is unknown",
                     {.path = "handling", .advice = "known: 0 to 3"});
}

Handling handling_named(std::string_view name) {
  for (const auto& [kind, known] : handlings) {
    if (known == name) return kind;
  }
  throw InvalidInput("handling \"" + std::string(name) + "\" is unknown",
                     {.path = "handling", .advice = "known: fold, divide, round, mould"});
}

void require_stage(const Stage& stage) {
  if (stage.name.empty())
    throw InvalidInput("a stage has no name", {.path = "name", .advice = "give one, such as bulk"});
  require_piece(stage.piece);
  require_surroundings(stage.surroundings);
  if (const auto* time = std::get_if<UntilTime>(&stage.until)) require(field::until_h, time->hours);
  if (const auto* rise = std::get_if<UntilRise>(&stage.until)) require(field::rise_percent, rise->rise_percent);
  for (const double fold : stage.folds_h) require(field::folds_h, fold);
  if (!std::is_sorted(stage.folds_h.begin(), stage.folds_h.end())) {
    throw InvalidInput("the folds are not in the order of time",
                       {.path = "folds_h", .advice = "give hours from the stage's start, rising"});
  }
  if (const auto* time = std::get_if<UntilTime>(&stage.until);
      time && !stage.folds_h.empty() && stage.folds_h.back() > time->hours) {
    throw InvalidInput(
        "a fold at " + number(stage.folds_h.back()) + " h comes after the stage's end at " + number(time->hours) + " h",
        {.path = "folds_h", .value = stage.folds_h.back(), .high = time->hours, .advice = "fold earlier or end later"});
  }
  for (const Handling handling : stage.handling) name_of(handling);
  if (stage.acceptable_rise_percent) {
    const auto [low, high] = *stage.acceptable_rise_percent;
    require(field::rise_percent, low);
    require(field::rise_percent, high);
    if (!(low <= high)) {
      throw InvalidInput("the lowest acceptable rise, " + number(low) + " %, is above the highest, " + number(high) +
                             " %",
                         {.path = "acceptable_rise_percent", .value = low, .high = high, .advice = "give (low, high)"});
    }
  }
}

}  // namespace ferment
