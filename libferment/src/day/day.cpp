// The forms of a day: what is refused, and how it is written.
#include <ferment/day/day.hpp>

#include <algorithm>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/dough/ingredient.hpp>

#include "base/text.hpp"
#include "day/day_parts.hpp"
#include "day/moment.hpp"

namespace ferment {
namespace {

constexpr Field renamed(Field field, std::string_view name, std::string_view meaning = {}) {
  field.name = name;
  field.initial = field::must_be_given;
  if (!meaning.empty()) field.meaning = meaning;
  return field;
}

constexpr Field today_flour_c = renamed(field::flour_c, "flour_c", "of the flour in its bag; the room's if not given");
constexpr Field today_ice_c = renamed(field::ice_c, "ice_c");
constexpr Field poured_c = renamed(field::water_c, "poured_c", "what was poured: the dough's temperature follows");
constexpr Field friction_at_c =
    renamed(field::room_c, "friction_at_c", "of room and flour where the friction was found; 21 °C if not given");
constexpr Field yeast_g = renamed(field::instant_g, "yeast_g", "weight of the yeast");
constexpr Field all_water_percent = renamed(field::poured_water_percent, "water_percent");
constexpr Field all_water_g = [] {
  Field field = renamed(field::water_g, "water_g", "all water that is poured");
  field.low = 0;
  return field;
}();
constexpr Field measured_c = renamed(field::dough_c, "measured_c",
                                     "of the dough at the end of mixing; counts before a "
                                     "planned one");
constexpr Field besides_salt_percent = renamed(field::salt_percent, "salt_percent", "besides that of a preferment");
constexpr Field besides_yeast_percent = renamed(field::yeast_percent, "yeast_percent", "besides that of a preferment");
constexpr Field flour_percent = renamed(field::flours_percent, "percent", "of the flours");
constexpr Field flour_mass_g = renamed(field::flour_g, "mass_g", "its weight, in place of its share");
constexpr Field of_preferment(Field field, std::string_view meaning) {
  field.initial = field::must_be_given;
  field.meaning = meaning;
  return field;
}
constexpr Field preferment_flour_percent =
    renamed(field::flours_percent, "flour_percent", "its flour, of all the flour");
constexpr Field preferment_water_percent = renamed(field::water_percent, "water_percent", "of its flour");
constexpr Field preferment_yeast_percent = of_preferment(field::yeast_percent, "of its flour");
constexpr Field preferment_salt_percent = of_preferment(field::salt_percent, "of its flour");
constexpr Field preferment_stands_h = [] {
  Field field = renamed(field::until_h, "stands_h", "hours until it is mixed in: it ferments so long");
  field.label = "standing time of the preferment";
  return field;
}();
constexpr Field stands_at_c = renamed(field::preferment_c, "temperature_c",
                                      "while it stands; also when it is mixed in, if today says nothing else");
constexpr Field bowl_mass_g = [] {
  Field field = renamed(field::bowl_g, "mass_g");
  field.low = 20;
  field.advice = "it is in grams: 1.2 kg are 1200";
  return field;
}();
constexpr Field swing_k = renamed(field::half_range_k, "swing_k", "of the air over the day: warmest less mean");

constexpr Field not_yet_percent = renamed(field::rise_percent, "not_yet_percent", "it had not risen so far");
constexpr Field already_past_percent = renamed(field::rise_percent, "already_past_percent", "it had risen further");
constexpr Field height_cm = renamed(field::depth_cm, "height_cm", "of the dough in a vessel of straight sides");
constexpr Field start_height_cm =
    renamed(field::depth_cm, "start_height_cm", "when the stage began; that of an earlier look if not given");

void require_one(const std::optional<double>& a, const std::optional<double>& b, std::string_view first,
                 std::string_view second) {
  if (!a || !b) return;
  throw InvalidInput("both " + std::string(first) + " and " + std::string(second) + " are given",
                     {.path = std::string(first), .advice = "leave one of the two out"});
}

/// Refuses what the form refuses, under the member's name.
void require_within(const std::string& member, const Surroundings& surroundings) {
  try {
    require(surroundings);
  } catch (const Error& error) {
    ErrorDetail detail = error.detail();
    detail.path = member;
    throw_error(error.status(), error.problem(), std::move(detail));
  }
}

void contradictions(const DayDough& dough) {
  require_one(dough.yeast_percent, dough.yeast_g, "yeast_percent", "yeast_g");
  for (const Amount& amount : day_amounts)
    require_one(dough.*amount.percent, dough.*amount.grams, amount.percent_name, amount.grams_name);
  if (dough.pieces.has_value() != dough.piece_g.has_value()) {
    throw InvalidInput("pieces and piece_g belong together", {.path = dough.pieces ? "piece_g" : "pieces",
                                                              .advice = "give both, and the weights are scaled"});
  }
  const auto has = [](const std::optional<double>& amount) { return amount.value_or(0) > 0; };
  const bool moist = has(dough.milk_percent) || has(dough.milk_g) || has(dough.egg_percent) || has(dough.egg_g) ||
                     has(dough.butter_percent) || has(dough.butter_g);
  if (moist && !dough.water_percent && !dough.water_g) {
    throw InvalidInput("a dough with milk, egg or butter needs its water, too",
                       {.path = "water_percent", .advice = "say how much is poured besides, 0 if none"});
  }
}

void contradictions(const DayFlour& flour) { require_one(flour.percent, flour.mass_g, "percent", "mass_g"); }

void contradictions(const DayPreferment& preferment) {
  require_one(preferment.yeast_g, preferment.yeast_percent, "yeast_g", "yeast_percent");
  if (preferment.stands_h && !preferment.temperature_c)
    throw InvalidInput("a preferment that stands needs its temperature", {.path = "temperature_c"});
  if ((preferment.yeast_g || preferment.yeast_percent) && !preferment.stands_h)
    throw InvalidInput("a preferment with yeast needs the hours that it stands", {.path = "stands_h"});
}

void contradictions(const DayMixing& mixing) {
  const int ways =
      mixing.method.has_value() + mixing.work_kj_per_kg.has_value() + mixing.net_gain_kj_per_kg.has_value();
  if (ways > 1) {
    throw InvalidInput("method, work_kj_per_kg and net_gain_kj_per_kg are each all of the heat",
                       {.path = "method", .advice = "give one of them"});
  }
  if (mixing.net_gain_kj_per_kg && mixing.hydration_kj_per_kg) {
    throw InvalidInput("a net gain holds the heat of hydration already",
                       {.path = "hydration_kj_per_kg", .advice = "leave it out"});
  }
  if (mixing.sd_kj_per_kg && !mixing.net_gain_kj_per_kg) {
    throw InvalidInput("it is the spread of a net gain, and there is none",
                       {.path = "sd_kj_per_kg", .advice = "give net_gain_kj_per_kg, too, or leave it out"});
  }
  if (mixing.work_kj_per_kg && mixing.minutes) {
    throw InvalidInput("work is the same whatever its minutes",
                       {.path = "minutes", .advice = "leave them out, or give the method"});
  }
  if (ways == 0 && (mixing.minutes || mixing.hydration_kj_per_kg)) {
    throw InvalidInput(mixing.minutes ? "minutes need a method" : "a heat of hydration needs a method",
                       {.path = "method", .advice = "such as stand_mixer"});
  }
}

void contradictions(const DayPlace& place) {
  if (!place.from.empty()) require_moment(place.from, "from");
  require_moment(place.warmest, "warmest");
  const int temperatures = temperatures_of(place);
  if (temperatures > 1) {
    throw InvalidInput("a place has one temperature or log, and here are " + std::to_string(temperatures),
                       {.path = "room_c", .advice = "write a place for each, with the time from which it counts"});
  }
  if (place.swing_k && !place.room_c && !place.proof_box_c && !place.refrigerator_c)
    throw InvalidInput("a swing needs the mean temperature of air", {.path = "swing_k", .advice = "give room_c, too"});
  if (place.fan && !place.refrigerator_c && !place.refrigerator_log)
    throw InvalidInput("a fan is reckoned with in a refrigerator alone", {.path = "fan"});
  if (place.humid && !place.proof_box_c && !place.proof_box_log)
    throw InvalidInput("steam is reckoned with in a proof box alone",
                       {.path = "humid", .advice = "give proof_box_c, or humidity_percent for other air"});
  if (temperatures == 0 && (place.humidity_percent || place.heat_transfer_w_per_m2_k)) {
    throw InvalidInput("it is of air, and its temperature is not given",
                       {.path = place.humidity_percent ? "humidity_percent" : "heat_transfer_w_per_m2_k",
                        .advice = "give room_c, refrigerator_c or proof_box_c, too"});
  }
  if (place.room_log) require_within("room_log", Surroundings{{Place{.course = place.room_log}}});
  if (place.refrigerator_log)
    require_within("refrigerator_log",
                   Surroundings{{Place{.course = place.refrigerator_log, .air = Air::refrigerator}}});
  if (place.proof_box_log)
    require_within("proof_box_log", Surroundings{{Place{.course = place.proof_box_log, .air = Air::proof_box}}});
  if (place.dough_log) require_within("dough_log", Surroundings{{Place{.course = place.dough_log, .is_dough = true}}});
}

void contradictions(const Seen& seen) {
  if (seen.stage.empty()) throw InvalidInput("a look is at no stage", {.path = "stage", .advice = "such as bulk"});
  if (seen.at.empty() == seen.between.empty())
    throw InvalidInput("when it was looked at is said once", {.path = "at", .advice = "at, or between with two times"});
  if (!seen.between.empty() && (seen.between.size() != 2 || !seen.rise_percent)) {
    throw InvalidInput("between needs two times, and the rise that came between them",
                       {.path = "between", .advice = "such as between = [\"10:30\", \"11:05\"] and rise_percent"});
  }
  for (const std::string& at : seen.between) require_moment_or_time(at, "between");
  if (!seen.at.empty()) require_moment_or_time(seen.at, "at");
  const int rises = seen.rise_percent.has_value() + seen.not_yet_percent.has_value() +
                    seen.already_past_percent.has_value() + seen.height_cm.has_value() + seen.over_proofed +
                    seen.collapsed;
  if (rises > 1) {
    throw InvalidInput("more than one thing is said of the rise",
                       {.path = "rise_percent", .advice = "write a look of its own for each"});
  }
  if (rises == 0 && !seen.dough_c) {
    throw InvalidInput("nothing is said of what was seen",
                       {.path = "rise_percent", .advice = "give a rise, a height or the dough's temperature"});
  }
}

void contradictions(const DayStage& stage) {
  contradictions(stage.where);
  constexpr std::size_t longest = 100;
  if (stage.name.size() > longest)
    throw InvalidInput("a name of " + std::to_string(stage.name.size()) + " letters",
                       {.path = "name", .advice = "a word or two are enough"});
  if (stage.name.empty()) throw InvalidInput("a stage has no name", {.path = "name", .advice = "such as bulk"});
  if (!stage.ended.empty()) require_moment(stage.ended, "ended");
  if (stage.until_h && stage.until_rise_percent) {
    throw InvalidInput("a stage ends by a rise or after a time, not by both",
                       {.path = "until_h", .advice = "leave one of the two out"});
  }
  const DayStage blank;
  const bool of_piece = stage.piece_g || stage.pieces != 1 || stage.diameter_cm || stage.length_cm || stage.depth_cm ||
                        stage.material != blank.material || stage.vessel_g > 0 || stage.cover || stage.worktop ||
                        stage.heat_loss_w_per_k;
  if (of_piece && !stage.piece)
    throw InvalidInput("what is said of a piece needs its shape",
                       {.path = "piece", .advice = "tub, ball, oblong, flat or tin"});
  for (std::size_t i = 0; i < stage.places.size(); ++i) {
    if (temperatures_of(stage.places[i]) == 1) continue;
    throw InvalidInput("a place needs a temperature", {.path = "place[" + std::to_string(i) + "].room_c",
                                                       .advice = "room_c, refrigerator_c, proof_box_c or dough_c"});
  }
}

bool is_date(const std::string& text) {
  int parts[] = {0, 0, 0};  // year, month, day
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.size() != 10 || (i == 4 || i == 7 ? text[i] != '-' : text[i] < '0' || text[i] > '9')) return false;
    int& part = parts[i < 4 ? 0 : i < 7 ? 1 : 2];
    if (text[i] != '-') part = 10 * part + (text[i] - '0');
  }
  const auto [year, month, day] = parts;
  const bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
  const int days = month == 2 ? (leap ? 29 : 28) : month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
  return month >= 1 && month <= 12 && day >= 1 && day <= days;
}

void contradictions(const Day& day) {
  constexpr std::size_t most_stages = 100, most_batches = 1000, most_looks = 1000;
  if (day.stages.size() > most_stages || day.batches.size() > most_batches) {
    throw InvalidInput("a day has at most " + std::to_string(most_stages) + " stages and " +
                           std::to_string(most_batches) + " batches, and here are " +
                           std::to_string(day.stages.size()) + " and " + std::to_string(day.batches.size()),
                       {.path = day.stages.size() > most_stages ? "stage" : "batch"});
  }
  if (day.seen.size() > most_looks) {
    throw InvalidInput("a day has at most " + std::to_string(most_looks) + " looks, and here are " +
                           std::to_string(day.seen.size()),
                       {.path = "seen"});
  }
  if (!day.date.empty() && !is_date(day.date))
    throw InvalidInput(shown(day.date) + " is no date", {.path = "date", .advice = "write it as 2026-11-29"});
  if (!day.start.empty()) require_moment(day.start, "start");
  if (!day.mixed.empty()) require_moment(day.mixed, "mixed");
  if (!day.stages.empty() && !day.stages.front().where.from.empty()) {
    throw InvalidInput("the first stage begins when the dough is mixed",
                       {.path = "stage[0].from", .advice = "give start or mixed, when that is"});
  }
  for (std::size_t i = 0; i < day.stages.size(); ++i) {
    const DayStage& stage = day.stages[i];
    const auto same_name = [&](const DayStage& other) { return other.name == stage.name; };
    if (std::any_of(day.stages.begin(), day.stages.begin() + static_cast<std::ptrdiff_t>(i), same_name)) {
      throw InvalidInput("two stages are called \"" + stage.name + "\"",
                         {.path = "stage[" + std::to_string(i) + "].name", .advice = "call one of them otherwise"});
    }
    const bool next_begins = i + 1 < day.stages.size() && !day.stages[i + 1].where.from.empty();
    const bool ends = stage.until_h || stage.until_rise_percent || !stage.ended.empty();
    if (ends != next_begins) continue;
    const std::string path = "stage[" + std::to_string(i) + "].until_rise_percent";
    if (next_begins && stage.ended.empty()) {
      throw InvalidInput("stage \"" + stage.name + "\" has an end, and the next one says from when it is there",
                         {.path = path, .advice = "leave out one of the two"});
    }
    if (!next_begins) {
      throw InvalidInput("stage \"" + stage.name + "\" has no end",
                         {.path = path, .advice = "give until_rise_percent or until_h, or from to the next stage"});
    }
  }
}

void require_material(const std::string& name) { bowl_material_named(name); }
void require_flour(const std::string& name) { flour_named(name); }
void require_method(const std::string& name) { mixing_method_named(name); }

Form sparse(Form form) {
  form.sparse = true;
  return form;
}

}  // namespace

int temperatures_of(const DayPlace& place) {
  return place.dough_c.has_value() + place.room_c.has_value() + place.refrigerator_c.has_value() +
         place.proof_box_c.has_value() + place.room_log.has_value() + place.refrigerator_log.has_value() +
         place.proof_box_log.has_value() + place.dough_log.has_value();
}

template <>
const Form& form_of<Today>() {
  using T = Today;
  static const Form form = sparse(
      made_form<T>("Today", "What was measured today.", {},
                   {row<&T::flour_c>(today_flour_c), row<&T::room_c>(field::room_c), row<&T::tap_c>(field::tap_c),
                    row<&T::preferment_c>(field::preferment_c), row<&T::refrigerator_c>(field::refrigerator_c),
                    row<&T::bowl_c>(field::bowl_c), row<&T::milk_c>(field::milk_c), row<&T::egg_c>(field::egg_c),
                    row<&T::butter_c>(field::butter_c), row<&T::ice_c>(today_ice_c)}));
  return form;
}

template <>
const Form& form_of<WantedWater>() {
  using W = WantedWater;
  static const Form form =
      sparse(made_form<W>("WantedWater", "What dough the water is to make, and what is known of it.", {},
                          {row<&W::desired_c>(field::desired_c), row<&W::poured_c>(poured_c),
                           row<&W::friction_k>(field::friction_k), row<&W::friction_at_c>(friction_at_c)}));
  return form;
}

template <>
const Form& form_of<DayDough>() {
  using D = DayDough;
  static const Form form =
      sparse(made_form<D>("DayDough", "The formula of a day: each amount in percent of all flour or in grams.", {},
                          {row<&D::flour_g>(field::flour_g),
                           row<&D::yeast>("yeast", "its kind"),
                           row<&D::packet>("packet", "of the yeast, in your own words: a new one may be livelier"),
                           row<&D::yeast_percent>(besides_yeast_percent),
                           row<&D::yeast_g>(yeast_g),
                           row<&D::water_percent>(all_water_percent),
                           row<&D::water_g>(all_water_g),
                           row<&D::salt_percent>(besides_salt_percent),
                           row<&D::salt_g>(field::salt_g),
                           row<&D::sugar_percent>(field::sugar_percent),
                           row<&D::sugar_g>(field::sugar_g),
                           row<&D::gluten_percent>(field::gluten_percent),
                           row<&D::gluten_g>(field::gluten_g),
                           row<&D::milk_percent>(field::milk_percent),
                           row<&D::milk_g>(field::milk_g),
                           row<&D::egg_percent>(field::egg_percent),
                           row<&D::egg_g>(field::egg_g),
                           row<&D::butter_percent>(field::butter_percent),
                           row<&D::butter_g>(field::butter_g),
                           row<&D::oil_percent>(field::oil_percent),
                           row<&D::oil_g>(field::oil_g),
                           row<&D::pieces>(field::pieces),
                           row<&D::piece_g>(field::piece_g),
                           row<&D::loss_percent>(field::loss_percent),
                           row<&D::altitude_m>(field::altitude_m),
                           row<&D::perishable>("perishable", "holds perishable food other than milk and egg"),
                           row<&D::measured_c>(measured_c)},
                          contradictions));
  return form;
}

template <>
const Form& form_of<DayFlour>() {
  using F = DayFlour;
  static const Form form = sparse(made_form<F>("DayFlour", "A flour by its share of the flours, or by its weight.", {},
                                               {of_table(row<&F::kind>("kind", "a flour of the table"), require_flour),
                                                row<&F::percent>(flour_percent), row<&F::mass_g>(flour_mass_g),
                                                row<&F::moisture_percent>(field::moisture_percent),
                                                row<&F::temperature_c>("temperature_c", field::flour_c)},
                                               contradictions));
  return form;
}

template <>
const Form& form_of<DayPreferment>() {
  using P = DayPreferment;
  static const Form form = [] {
    Form form =
        sparse(made_form<P>("DayPreferment", "Dough of an earlier mix; its flour and water count in the formula.", {},
                            {row<&P::flour_g>(field::flour_g), row<&P::flour_percent>(preferment_flour_percent),
                             row<&P::water_g>(field::water_g), row<&P::water_percent>(preferment_water_percent),
                             row<&P::yeast_g>(yeast_g), row<&P::yeast_percent>(preferment_yeast_percent),
                             row<&P::yeast>("yeast", "its kind; the dough's if not given"),
                             row<&P::salt_percent>(preferment_salt_percent), row<&P::stands_h>(preferment_stands_h),
                             row<&P::temperature_c>(stands_at_c)},
                            contradictions));
    form.one_of = {{"flour_g", "flour_percent"}, {"water_g", "water_percent"}};
    return form;
  }();
  return form;
}

template <>
const Form& form_of<YeastWater>() {
  using Y = YeastWater;
  static const Form form =
      sparse(made_form<Y>("YeastWater", "Warm water of its own in which the yeast is wetted.",
                          {.water_g = 0, .temperature_c = 0},
                          {row<&Y::water_g>(field::water_g), row<&Y::temperature_c>("temperature_c", field::water_c),
                           row<&Y::stands_h>(field::stands_h)}));
  return form;
}

template <>
const Form& form_of<DayBowl>() {
  using B = DayBowl;
  static const Form form =
      sparse(made_form<B>("DayBowl", "The bowl, with its hook or paddle.", {.mass_g = 0},
                          {of_table(row<&B::material>("material", "of the bowl"), require_material),
                           row<&B::mass_g>(bowl_mass_g), row<&B::contact>(field::contact)}));
  return form;
}

template <>
const Form& form_of<DayMixing>() {
  using M = DayMixing;
  static const Form form = sparse(
      made_form<M>("DayMixing", "How the dough is mixed: a method, its work, or one net gain of earlier batches.", {},
                   {of_table(row<&M::method>("method", "a way of mixing of the table"), require_method),
                    row<&M::minutes>("minutes", field::mixing_min), row<&M::work_kj_per_kg>(field::work_kj_per_kg),
                    row<&M::net_gain_kj_per_kg>(field::net_gain_kj_per_kg), row<&M::sd_kj_per_kg>(field::sd_kj_per_kg),
                    row<&M::hydration_kj_per_kg>(field::hydration_kj_per_kg), row<&M::rest_h>(field::rest_h)},
                   contradictions));
  return form;
}

template <>
const Form& form_of<Batch>() {
  using B = Batch;
  static const Form form = sparse(made_form<B>(
      "Batch", "An earlier batch of the same formula: what it was mixed from, and the dough that came of it.",
      {.dough_c = 0, .water_c = 0, .flour_c = 0, .room_c = 0},
      {row<&B::dough_c>(field::dough_c), row<&B::water_c>(field::water_c), row<&B::flour_c>(field::flour_c),
       row<&B::room_c>(field::room_c), row<&B::preferment_c>(field::preferment_c), row<&B::bowl_c>(field::bowl_c),
       row<&B::milk_c>(field::milk_c), row<&B::egg_c>(field::egg_c), row<&B::butter_c>(field::butter_c),
       row<&B::rest_h>(field::rest_h), row<&B::minutes>("minutes", field::mixing_min)}));
  return form;
}

template <>
const Form& form_of<DayPlace>() {
  using P = DayPlace;
  static const Form form =
      sparse(made_form<P>("DayPlace", "Where the dough is, and from when.", {},
                          {row<&P::from>("from", "time of day at which it comes there, such as 22:00"),
                           row<&P::dough_c>(field::dough_c), row<&P::room_c>(field::room_c),
                           row<&P::refrigerator_c>(field::refrigerator_c), row<&P::proof_box_c>(field::proof_box_c),
                           row<&P::room_log>("room_log", "the room as it was measured"),
                           row<&P::refrigerator_log>("refrigerator_log", "the refrigerator as it was measured"),
                           row<&P::proof_box_log>("proof_box_log", "the proof box as it was measured"),
                           row<&P::dough_log>("dough_log", "the dough as it was measured"),
                           row<&P::fan>("fan", "the refrigerator has a fan"),
                           row<&P::humid>("humid", "the proof box has steam or hot water in it"),
                           row<&P::humidity_percent>(field::humidity_percent), row<&P::swing_k>(swing_k),
                           row<&P::warmest>("warmest", "time of day at which the air is warmest"),
                           row<&P::heat_transfer_w_per_m2_k>(field::heat_transfer_w_per_m2_k)},
                          contradictions));
  return form;
}

template <>
const Form& form_of<Seen>() {
  using S = Seen;
  static const Form form = sparse(made_form<S>(
      "Seen", "What was seen of a stage. What was done stands in the stage.", {},
      {must_be_given(row<&S::stage>("stage", "its name")),
       row<&S::at>("at", "time of day, such as 11:05, or time since the stage began, such as 65min"),
       row<&S::between>("between", "two such times, in place of at: not yet there at the first, past at the second"),
       row<&S::rise_percent>(field::rise_percent), row<&S::not_yet_percent>(not_yet_percent),
       row<&S::already_past_percent>(already_past_percent), row<&S::height_cm>(height_cm),
       row<&S::start_height_cm>(start_height_cm), row<&S::dough_c>(field::dough_c),
       row<&S::over_proofed>("over_proofed", "it was past its highest acceptable rise"),
       row<&S::collapsed>("collapsed", "it had fallen in: past its highest acceptable rise")},
      contradictions));
  return form;
}

template <>
const Form& form_of<DayStage>() {
  using S = DayStage;
  static const Form form = sparse(made_form<S>(
      "DayStage", "One stage of a day.", {},
      joined(joined({must_be_given(row<&S::name>("name", "such as bulk")),
                     row<&S::until_rise_percent>("until_rise_percent", field::rise_percent),
                     row<&S::until_h>(field::until_h), row<&S::ended>("ended", "time of day at which it really was")},
                    rows_of_part<&S::where>()),
             {row<&S::places>("place", "further ones, in the order of time"),
              row<&S::piece>("piece", "its shape; all of the dough in a tub if none was said"),
              row<&S::piece_g>(field::piece_g), row<&S::pieces>(field::pieces_of_dough),
              row<&S::diameter_cm>(field::diameter_cm), row<&S::length_cm>(field::length_cm),
              row<&S::depth_cm>(field::depth_cm), of_table(row<&S::material>("material", "of a tub"), require_material),
              row<&S::vessel_g>(field::vessel_g), row<&S::cover>("cover", "a tub has a lid, other pieces film"),
              row<&S::worktop>("worktop", "a tub stands on wood, other pieces in the air"),
              row<&S::heat_loss_w_per_k>("heat_loss_w_per_k", field::piece_heat_loss_w_per_k),
              row<&S::folds_h>(field::folds_h), row<&S::handling>("handling", "what ends the stage, in order"),
              row<&S::standing>("standing", "in a tin (also a tub) or free; by the shape if not given"),
              row<&S::final_proof>("final_proof",
                                   "its own over-proof limit counts; if not given, so it is in the last "
                                   "stage unless that is a tub or in a refrigerator"),
              row<&S::acceptable_rise_percent>("acceptable_rise_percent", field::rise_percent)}),
      contradictions));
  return form;
}

template <>
const Form& form_of<Day>() {
  using D = Day;
  static const Form form = sparse(made_form<D>(
      "Day", "What a baker writes down of one bake.", {},
      {row<&D::title>("title", "in your own words"), row<&D::date>("date", "such as 2026-11-29"),
       row<&D::zone>("zone", "time zone, for clocks"),
       row<&D::start>("start", "time of day at which flour and water meet"),
       row<&D::mixed>("mixed", "time of day at which the mixing ended"),
       row<&D::today>("today", "temperatures measured today"), row<&D::water>("water", "the dough that is wanted"),
       row<&D::dough>("dough", "the formula"), row<&D::flours>("flour", "one for each kind; bread flour if none"),
       row<&D::preferment>("preferment", "dough of an earlier mix"),
       row<&D::yeast_water>("yeast_water", "in which the yeast is wetted"), row<&D::bowl>("bowl", "none if not given"),
       row<&D::mixing>("mixing", "by hand if not given"), row<&D::batches>("batch", "earlier batches"),
       row<&D::stages>("stage", "one after the other"), row<&D::seen>("seen", "looks at the stages")},
      contradictions));
  return form;
}

template <>
const Form& form_of<LearnedMixing>() {
  using L = LearnedMixing;
  static const Form form =
      made_form<L>("LearnedMixing", "What earlier batches say of the mixing.", {},
                   {row<&L::friction_k>("friction_k", "K, of the factor rule"),
                    row<&L::net_gain_kj_per_kg>("net_gain_kj_per_kg", "kJ per kg of dough, of the heat balance"),
                    row<&L::minutes>("minutes",
                                     "of today's mixing, whose exchange with the room is reckoned apart; 0 "
                                     "if it is in the gain")});
  return form;
}

}  // namespace ferment
