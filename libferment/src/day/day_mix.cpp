// What a day puts into the bowl, and how warm its water must be.
#include <algorithm>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/day/day.hpp>
#include <ferment/mix/factor_rule.hpp>
#include <ferment/mix/net_gain.hpp>
#include <ferment/process/simulate.hpp>

#include "day/day_parts.hpp"
#include "mix/filling.hpp"

namespace ferment {
namespace {

constexpr double sd_of_a_friction = 2;  // kJ/kg: one from elsewhere tells less than a batch; engineering estimate

using P = PercentFormula;

double P::*percent_of_kind(Yeast kind) {
  switch (kind) {
    case Yeast::instant: return &P::instant_percent;
    case Yeast::compressed: return &P::compressed_percent;
    case Yeast::active_dry:
    case Yeast::active_dry_unwetted: break;
  }
  return &P::active_dry_percent;
}

bool weighs_flours(const Day& day) {
  return std::any_of(day.flours.begin(), day.flours.end(), [](const DayFlour& flour) { return flour.mass_g; });
}

std::string path_of_flour(std::size_t i, std::string_view member) {
  return "flour[" + std::to_string(i) + "]." + std::string(member);
}

/// All flour, g. Flours that are weighed are all but gluten and the preferment's.
double total_flour_g(const Day& day) {
  if (!weighs_flours(day)) return day.dough.flour_g.value_or(assumed_flour_g);
  if (day.dough.flour_g) {
    throw InvalidInput("all the flour is given, and each flour's weight",
                       {.path = "dough.flour_g", .advice = "give the flours in percent, or leave flour_g out"});
  }
  double fresh_g = day.dough.gluten_g.value_or(0), share = day.dough.gluten_percent.value_or(0) / 100;
  for (std::size_t i = 0; i < day.flours.size(); ++i) {
    if (!day.flours[i].mass_g)
      throw InvalidInput("some flours are weighed and some are not",
                         {.path = path_of_flour(i, "mass_g"), .advice = "give all in percent or all in grams"});
    fresh_g += *day.flours[i].mass_g;
  }
  if (day.preferment) {
    fresh_g += day.preferment->flour_g.value_or(0);
    share += day.preferment->flour_percent.value_or(0) / 100;
  }
  if (!(share < 1)) throw InvalidInput("gluten and preferment are all of the flour", {.path = "preferment"});
  return fresh_g / (1 - share);
}

std::vector<FlourShare> shares_of_flours(const Day& day) {
  std::vector<FlourShare> shares;
  double all_g = 0;
  for (const DayFlour& flour : day.flours) all_g += flour.mass_g.value_or(0);
  for (std::size_t i = 0; i < day.flours.size(); ++i) {
    const DayFlour& flour = day.flours[i];
    if (!flour.mass_g && !flour.percent)
      throw InvalidInput("a flour has no share",
                         {.path = path_of_flour(i, "percent"), .advice = "its percent of the flours"});
    const double percent = flour.mass_g ? 100 * *flour.mass_g / all_g : *flour.percent;
    shares.push_back({flour.kind, percent, flour.moisture_percent, flour.temperature_c});
  }
  return shares;
}

/// Grams are of the day's own flour: with an assumed one they say nothing.
void require_flour_beside(const Day& day, bool weighs, std::string_view path) {
  if (!weighs || knows_flour(day)) return;
  throw InvalidInput("a weight in grams needs the flour's weight beside it",
                     {.path = std::string(path), .advice = "give [dough] flour_g"});
}

Preferment preferment_of(const Day& day, double flour_g) {
  const DayPreferment& its = *day.preferment;
  const double its_flour_g = its.flour_g ? *its.flour_g : flour_g * *its.flour_percent / 100;
  const double its_water_g = its.water_g ? *its.water_g : its_flour_g * *its.water_percent / 100;
  const auto own_c = day.today.preferment_c ? day.today.preferment_c : its.temperature_c;
  return {.flour_g = its_flour_g, .water_g = its_water_g, .temperature_c = own_c};
}

/// Percent of the preferment's own flour.
double yeast_percent_of_preferment(const Day& day, double flour_g) {
  const DayPreferment& its = *day.preferment;
  return its.yeast_g ? 100 * *its.yeast_g / preferment_of(day, flour_g).flour_g : its.yeast_percent.value_or(0);
}

/// Yeast and salt of a preferment that fermented, g: its dough weighs them, too.
double besides_flour_and_water_g(const Day& day, double flour_g) {
  if (!day.preferment || !day.preferment->stands_h) return 0;
  const double percent = yeast_percent_of_preferment(day, flour_g) + day.preferment->salt_percent.value_or(0);
  return preferment_of(day, flour_g).flour_g * percent / 100;
}

/// The way in a day to what its formula says at a path.
std::string path_of_formula(const Day& day, const std::string& path) {
  const DayDough& dough = day.dough;
  if (path == "flours") return path_of_flour(0, "percent");
  if (path.rfind("flours", 0) == 0) return "flour" + path.substr(6);
  if (path.rfind("waters", 0) == 0) return "yeast_water";
  if (path.rfind("preferments", 0) == 0 || (path == "flour_g" && day.preferment))
    return day.preferment->flour_g ? "preferment.flour_g" : "preferment.flour_percent";
  if (path == "flour_g") return weighs_flours(day) ? "flour" : "dough.flour_g";
  for (const Amount& amount : day_amounts) {
    const std::string stem(amount.grams_name.substr(0, amount.grams_name.size() - 2));
    if (path == stem + "_percent" || path == stem + "_g")
      return "dough." + stem + (dough.*amount.grams ? "_g" : "_percent");
  }
  const bool is_of_yeast = path.find("instant") == 0 || path.find("active_dry") == 0 || path.find("compressed") == 0;
  return !is_of_yeast ? "dough" : dough.yeast_g ? "dough.yeast_g" : "dough.yeast_percent";
}

Formula formula_of(const Day& day) {
  const DayDough& dough = day.dough;
  require_flour_beside(day, day.bowl && !dough.pieces, "bowl.mass_g");
  require_flour_beside(day, day.yeast_water && !dough.pieces, "yeast_water.water_g");
  require_flour_beside(day, dough.yeast_g.has_value(), "dough.yeast_g");
  if (day.preferment) {
    require_flour_beside(day, day.preferment->flour_g.has_value(), "preferment.flour_g");
    require_flour_beside(day, day.preferment->water_g.has_value(), "preferment.water_g");
    require_flour_beside(day, day.preferment->yeast_g.has_value(), "preferment.yeast_g");
  }
  const double flour_g = total_flour_g(day);
  PercentFormula percent{.flour_g = flour_g};
  percent.flours = shares_of_flours(day);
  for (const Amount& amount : day_amounts) {
    const auto& its_percent = dough.*amount.percent;
    const auto& its_grams = dough.*amount.grams;
    require_flour_beside(day, its_grams.has_value(), "dough." + std::string(amount.grams_name));
    if (its_percent) percent.*amount.in_formula = *its_percent;
    if (its_grams) percent.*amount.in_formula = 100 * *its_grams / flour_g;
  }
  percent.*percent_of_kind(dough.yeast) =
      dough.yeast_g ? 100 * *dough.yeast_g / flour_g : dough.yeast_percent.value_or(0);
  if (day.yeast_water) {
    const YeastWater& its = *day.yeast_water;
    percent.waters = {
        {.mass_g = its.water_g, .temperature_c = its.temperature_c, .wets_yeast = true, .stands_h = its.stands_h}};
  }
  if (day.preferment) percent.preferments = {preferment_of(day, flour_g)};
  Formula formula;
  try {
    formula = formula_from_percent(percent);
  } catch (const Error& error) {
    throw_at(path_of_formula(day, error.detail().path), error);
  }
  if (!dough.pieces) return formula;
  const double formula_g = amounts_of(formula).dough_g;
  const double share = formula_g / (formula_g + besides_flour_and_water_g(day, flour_g));
  try {
    return scaled_to(formula, *dough.pieces, share * *dough.piece_g, dough.loss_percent);
  } catch (const Error& error) {
    throw_at("dough.pieces", error);
  }
}

void set_temperatures(Formula& formula, const Today& today) {
  formula.flour_c = today.flour_c;
  formula.milk_c = today.milk_c;
  formula.egg_c = today.egg_c;
  formula.butter_c = today.butter_c;
  if (today.ice_c) formula.ice_c = *today.ice_c;
}

/// The preferment as a dough that has fermented, in place of one of which the warmth and the weight alone are known.
State fermented(const Day& day, const Preferment& weighed, const Kitchen& kitchen) {
  const DayPreferment& its = *day.preferment;
  Mix mix;
  mix.formula.flour_g = weighed.flour_g;
  mix.formula.water_g = weighed.water_g;
  mix.formula.salt_g = weighed.flour_g * its.salt_percent.value_or(0) / 100;
  // Its grams are written beside its own flour's, which scaling changes alike.
  const double yeast_percent = yeast_percent_of_preferment(day, total_flour_g(day));
  const Yeast kind = its.yeast.value_or(day.dough.yeast);
  double Formula::*const grams = kind == Yeast::instant      ? &Formula::instant_g
                                 : kind == Yeast::compressed ? &Formula::compressed_g
                                                             : &Formula::active_dry_g;
  mix.formula.*grams = weighed.flour_g * yeast_percent / 100;
  mix.yeast_unwetted = kind == Yeast::active_dry_unwetted;
  mix.dough_c = its.temperature_c;
  if (yeast_percent > 0) {
    Field field = field::instant_equivalent_percent;
    field.name = its.yeast_g ? "preferment.yeast_g" : "preferment.yeast_percent";
    field.advice = "percent are of the preferment's own flour";
    require(field, percent_of(mix.formula).instant_equivalent_percent);
  }
  Stage stage;
  stage.name = "preferment";
  stage.until_h = its.stands_h;
  stage.surroundings = Surroundings::dough(*its.temperature_c);
  Process process;
  process.steps = {mix, stage};
  process.altitude_m = day.dough.altitude_m;
  State state;
  try {
    state = as_beginning(simulate(process, kitchen, std::nullopt, {.every_min = 0, .be_back_by = false}).state);
  } catch (const Error& error) {
    throw_at("preferment", error);
  }
  if (weighed.temperature_c) state.shells.front().temperature_c = *weighed.temperature_c;
  return state;
}

std::optional<Mixing> mixing_of(const DayMixing& mixing) {
  if (mixing.net_gain_kj_per_kg) {
    ByNetGain gain{.net_gain_kj_per_kg = *mixing.net_gain_kj_per_kg, .minutes = mixing.minutes.value_or(0)};
    if (mixing.sd_kj_per_kg) gain.sd_kj_per_kg = *mixing.sd_kj_per_kg;
    return gain;
  }
  if (mixing.work_kj_per_kg)
    return ByWork{.work_kj_per_kg = *mixing.work_kj_per_kg, .hydration_kj_per_kg = mixing.hydration_kj_per_kg};
  if (mixing.method) return ByMethod{*mixing.method, mixing.minutes, mixing.hydration_kj_per_kg};
  return std::nullopt;
}

/// The mix with its mixing heat as the day says it, or none.
Mix plain_mix_of(const Day& day, const Kitchen& kitchen) {
  if (day.today.preferment_c && !day.preferment) {
    throw InvalidInput("the preferment has a temperature and no weight",
                       {.path = "preferment", .advice = "give its flour and its water"});
  }
  Mix mix;
  mix.formula = formula_of(day);
  set_temperatures(mix.formula, day.today);
  mix.room_c = day.today.room_c;
  mix.tap_c = day.today.tap_c;
  mix.mixing = mixing_of(day.mixing);
  mix.rest_h = day.mixing.rest_h;
  mix.perishable = day.dough.perishable;
  mix.yeast_unwetted = day.dough.yeast == Yeast::active_dry_unwetted;
  if (day.bowl)
    mix.bowl = {.material = day.bowl->material,
                .mass_g = day.bowl->mass_g,
                .temperature_c = day.today.bowl_c,
                .contact = day.bowl->contact};
  if (day.preferment && day.preferment->stands_h) {
    mix.doughs = {fermented(day, mix.formula.preferments.front(), kitchen)};
    mix.formula.preferments.clear();
  }
  return mix;
}

std::vector<Batch> batches_of(const Day& day) {
  std::vector<Batch> batches = day.batches;
  if (day.dough.measured_c && day.water.poured_c && day.today.room_c) {
    const Today& today = day.today;
    batches.push_back({.dough_c = *day.dough.measured_c,
                       .water_c = *day.water.poured_c,
                       .flour_c = today.flour_c.value_or(*today.room_c),
                       .room_c = *today.room_c,
                       .preferment_c = today.preferment_c,
                       .bowl_c = today.bowl_c,
                       .milk_c = today.milk_c,
                       .egg_c = today.egg_c,
                       .butter_c = today.butter_c,
                       .rest_h = day.mixing.rest_h});
  }
  return batches;
}

double minutes_of(const Day& day) {
  const std::optional<Mixing> mixing = mixing_of(day.mixing);
  return mixing ? mixing_minutes(*mixing) : 0;
}

/// The preferment of a batch: as it was measured, or as it stood.
std::optional<double> preferment_c_of(const Day& day, const Batch& batch) {
  if (!day.preferment) return std::nullopt;
  return batch.preferment_c.value_or(day.preferment->temperature_c.value_or(batch.room_c));
}

/// A batch's mix: today's formula and bowl, all else as it was then.
Mix mix_of_batch(const Day& day, const Batch& batch, const Kitchen& kitchen) {
  Day then{.dough = day.dough,
           .flours = day.flours,
           .preferment = day.preferment,
           .yeast_water = day.yeast_water,
           .bowl = day.bowl};
  then.today = {.flour_c = batch.flour_c,
                .room_c = batch.room_c,
                .preferment_c = preferment_c_of(day, batch),
                .bowl_c = batch.bowl_c,
                .milk_c = batch.milk_c,
                .egg_c = batch.egg_c,
                .butter_c = batch.butter_c,
                .ice_c = day.today.ice_c};
  for (DayFlour& flour : then.flours) flour.temperature_c.reset();
  then.mixing = {.minutes = batch.minutes.value_or(minutes_of(day)), .net_gain_kj_per_kg = 0, .rest_h = batch.rest_h};
  Mix mix = plain_mix_of(then, kitchen);
  mix.formula.water_c = batch.water_c;
  return mix;
}

/// The dough for which a friction is turned into a gain: the wanted one, or what the rule makes of the poured water.
std::optional<double> dough_of_friction(const Day& day) {
  const WantedWater& water = day.water;
  if (water.desired_c || !water.poured_c || !day.today.room_c) return water.desired_c;
  const double room_c = *day.today.room_c;
  const double dough_c =
      dough_by_factor_rule(*water.poured_c, day.today.flour_c.value_or(room_c), room_c, *water.friction_k);
  return std::clamp(dough_c, field::desired_c.low, field::desired_c.high);
}

/// What the mixing leaves in the dough: the user's own numbers before what is typical. A net gain; else a friction,
/// whatever else is said of the mixing; else what batches say; else the method or the work.
std::optional<Mixing> mixing_beside(const Day& day, const Mix& mix, const Kitchen& kitchen) {
  if (day.mixing.net_gain_kj_per_kg) return mix.mixing;
  const WantedWater& water = day.water;
  const std::optional<double> wanted_c = water.friction_k ? dough_of_friction(day) : std::nullopt;
  if (wanted_c) {
    const double found_at_c = water.friction_at_c.value_or(friction_found_at_c);
    Mix plain = mix;
    plain.rest_h = 0;  // a friction is found without; what a rest does is reckoned apart
    return ByNetGain{.net_gain_kj_per_kg = net_gain_from_friction(plain, *water.friction_k, *wanted_c, found_at_c),
                     .sd_kj_per_kg = sd_of_a_friction,
                     .minutes = minutes_of(day)};
  }
  if (!day.batches.empty()) {
    const LearnedMixing learned = learned_mixing(day, kitchen);
    return net_gain_of(learned.net_gain_kj_per_kg, learned.minutes);
  }
  if (day.mixing.work_kj_per_kg) return mix.mixing;
  for (const LearnedGain& its : kitchen.mixing) {
    const double minutes = day.mixing.minutes.value_or(its.minutes);
    if (its.method == method_of(day)) return net_gain_of(mean_of_batches(its.net_gains_kj_per_kg), minutes);
  }
  return mix.mixing;
}

}  // namespace

std::string method_of(const Day& day) { return day.mixing.method.value_or("hand"); }

bool knows_flour(const Day& day) { return day.dough.flour_g || weighs_flours(day); }

LearnedMixing learned_mixing(const Day& day, const Kitchen& kitchen) {
  require(day);
  const std::vector<Batch> batches = batches_of(day);
  if (batches.empty()) {
    throw InvalidInput("no batch is logged",
                       {.path = "batch", .advice = "write one with dough, water, flour and room, as measured"});
  }
  const std::size_t n = batches.size();
  LearnedMixing learned;
  learned.friction_k = mean_of_batches(n, [&](std::size_t i) {
    const Batch& batch = batches[i];
    return friction_from_batch(batch.dough_c, batch.flour_c, batch.room_c, batch.water_c, preferment_c_of(day, batch));
  });
  learned.net_gain_kj_per_kg = mean_of_batches(n, [&](std::size_t i) {
    return net_gain_from_batch(mix_of_batch(day, batches[i], kitchen), batches[i].dough_c);
  });
  double minutes = 0, knowing = 0;
  for (const Batch& batch : batches) {
    const double its = batch.minutes.value_or(minutes_of(day));
    minutes += its;
    knowing += its > 0 ? 1 : 0;
  }
  if (knowing > 0) learned.minutes = minutes_of(day) > 0 ? minutes_of(day) : minutes / knowing;
  return learned;
}

Mix mix_of(const Day& day, const Kitchen& kitchen) {
  require(day);
  if (day.water.friction_at_c && !day.water.friction_k)
    throw InvalidInput("a room where a friction was found needs the friction", {.path = "water.friction_k"});
  Mix mix = plain_mix_of(day, kitchen);
  mix.mixing = mixing_beside(day, mix, kitchen);
  return mix;
}

WaterPlan water_of(const Day& day, const Kitchen& kitchen) {
  const Mix mix = mix_of(day, kitchen);
  if (!day.today.room_c) {
    throw InvalidInput("the water's temperature needs the room's",
                       {.path = "today.room_c", .advice = "measure it where the dough is mixed"});
  }
  if (!day.water.desired_c) {
    throw InvalidInput("which dough the water is to make is not said",
                       {.path = "water.desired_c", .advice = "most wheat doughs are wanted at 20 to 28 °C"});
  }
  std::optional<double> friction_k = day.water.friction_k;
  if (!friction_k && !day.batches.empty()) friction_k = learned_mixing(day, kitchen).friction_k.mean;
  return water_by_heat_balance(mix, *day.water.desired_c, friction_k);
}

}  // namespace ferment
