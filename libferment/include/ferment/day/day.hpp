// A day: what a baker writes down of one bake. Its temperatures, the dough, the bowl, the stages, and what was seen and
// done. In a file, day.toml; as a document, the same names.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/learn/calibrate.hpp>
#include <ferment/mix/batches.hpp>
#include <ferment/mix/water_plan.hpp>
#include <ferment/process/seen.hpp>
#include <ferment/process/step.hpp>

namespace ferment {

/// Measured today, °C; what is not given has the room's temperature.
struct Today {
  std::optional<double> flour_c = {};
  std::optional<double> room_c = {};  ///< where the dough is mixed; the place of a piece that has no other
  std::optional<double> tap_c = {};
  std::optional<double> preferment_c = {};
  std::optional<double> refrigerator_c = {};
  std::optional<double> bowl_c = {};
  std::optional<double> milk_c = {};
  std::optional<double> egg_c = {};
  std::optional<double> butter_c = {};
  std::optional<double> ice_c = {};
};

struct WantedWater {
  std::optional<double> desired_c = {};   ///< of the dough at the end of mixing
  std::optional<double> poured_c = {};    ///< what was poured: then the dough's temperature follows from it
  std::optional<double> friction_k = {};  ///< of the factor rule; the heat balance counts it, too
  std::optional<double> friction_at_c =
      {};  ///< of the room, the flour and all else where it was found; 21 if not given
};

/// The formula: each amount in percent of all flour or in grams, not both. Without any: 65 % water, 2 % salt.
struct DayDough {
  std::optional<double> flour_g = {};  ///< all flour, that of preferments and added gluten included
  Yeast yeast = Yeast::instant;
  std::string packet = {};  ///< of the yeast: whatever tells it from others, such as the day it was opened
  std::optional<double> yeast_percent = {};
  std::optional<double> yeast_g = {};
  std::optional<double> water_percent = {};  ///< poured in all, that of the yeast and of preferments included
  std::optional<double> water_g = {};
  std::optional<double> salt_percent = {};
  std::optional<double> salt_g = {};
  std::optional<double> sugar_percent = {};
  std::optional<double> sugar_g = {};
  std::optional<double> gluten_percent = {};
  std::optional<double> gluten_g = {};
  std::optional<double> milk_percent = {};
  std::optional<double> milk_g = {};
  std::optional<double> egg_percent = {};
  std::optional<double> egg_g = {};
  std::optional<double> butter_percent = {};
  std::optional<double> butter_g = {};
  std::optional<double> oil_percent = {};
  std::optional<double> oil_g = {};
  std::optional<double> pieces = {};   ///< with piece_g: every weight is scaled to so much dough
  std::optional<double> piece_g = {};  ///< as divided
  double loss_percent = 0;             ///< stays on bowl, hands and table
  double altitude_m = 0;
  bool perishable = false;                ///< holds perishable food other than milk and egg
  std::optional<double> measured_c = {};  ///< the dough at the end of mixing; counts before a planned one
};

/// A flour by its share of the flours, added gluten and preferments apart, or by its weight.
struct DayFlour {
  std::string kind = "bread";
  std::optional<double> percent = {};
  std::optional<double> mass_g = {};
  std::optional<double> moisture_percent = {};
  std::optional<double> temperature_c = {};
};

/// Dough of an earlier mix; its flour and water count in the formula. With its hours and its temperature it is a dough
/// that ferments until it is mixed in; without, only its warmth and its weight count.
struct DayPreferment {
  std::optional<double> flour_g = {};
  std::optional<double> flour_percent = {};  ///< of all flour
  std::optional<double> water_g = {};
  std::optional<double> water_percent = {};  ///< of its flour
  std::optional<double> yeast_g = {};
  std::optional<double> yeast_percent = {};  ///< of its flour
  std::optional<Yeast> yeast = {};           ///< the dough's kind if not given
  std::optional<double> salt_percent = {};   ///< of its flour
  std::optional<double> stands_h = {};       ///< hours until it is mixed in
  std::optional<double> temperature_c = {};  ///< of it while it stands; when it is mixed in, today's if that is given
};

/// Warm water of its own in which the yeast is wetted.
struct YeastWater {
  Given water_g;
  Given temperature_c;
  double stands_h = 0;
};

struct DayBowl {
  std::string material = "steel";
  Given mass_g;
  double contact = 0.8;
};

/// How the dough is mixed: a method, its work, or one net gain of earlier batches.
struct DayMixing {
  std::optional<std::string> method = {};
  std::optional<double> minutes = {};
  std::optional<double> work_kj_per_kg = {};
  std::optional<double> net_gain_kj_per_kg = {};
  std::optional<double> sd_kj_per_kg = {};  ///< of the net gain
  std::optional<double> hydration_kj_per_kg = {};
  double rest_h = 0;  ///< flour and water rest so long before all else joins
};

/// An earlier batch of the same formula: what it was mixed from, and the dough that came of it.
struct Batch {
  Given dough_c;  ///< at the end of mixing
  Given water_c;  ///< as poured
  Given flour_c;
  Given room_c;
  std::optional<double> preferment_c = {};
  std::optional<double> bowl_c = {};
  std::optional<double> milk_c = {};
  std::optional<double> egg_c = {};
  std::optional<double> butter_c = {};
  double rest_h = 0;
  std::optional<double> minutes = {};  ///< of its mixing; the day's if not given
};

/// Where the dough is: one temperature, or one log. Hours of a log count from the end of mixing.
struct DayPlace {
  std::string from = {};  ///< time of day at which it comes there
  std::optional<double> dough_c = {};
  std::optional<double> room_c = {};
  std::optional<double> refrigerator_c = {};
  std::optional<double> proof_box_c = {};
  std::optional<Course> room_log = {};
  std::optional<Course> refrigerator_log = {};
  std::optional<Course> proof_box_log = {};
  std::optional<Course> dough_log = {};
  bool fan = false;    ///< of the refrigerator
  bool humid = false;  ///< the proof box has steam or hot water in it
  std::optional<double> humidity_percent = {};
  std::optional<double> swing_k = {};  ///< of the air over the day: warmest less mean
  std::string warmest = "16:00";       ///< time of day, of the swing
  std::optional<double> heat_transfer_w_per_m2_k = {};
};

/// What was seen of a stage: of its rise, its height in straight sides, its temperature, or that it was over-proofed.
/// What was done is none: `ended` says when a stage was over.
struct Seen {
  std::string stage = {};
  std::string at = {};                              ///< a time of day, or a time since the stage began
  std::vector<std::string> between = {};            ///< in place of it: not yet there at the first, past at the second
  std::optional<double> rise_percent = {};          ///< since the stage's start
  std::optional<double> not_yet_percent = {};       ///< it had not risen so far
  std::optional<double> already_past_percent = {};  ///< it had risen further
  std::optional<double> height_cm = {};             ///< of a dough in straight sides
  std::optional<double> start_height_cm = {};       ///< when the stage began; that of an earlier look if not given
  std::optional<double> dough_c = {};
  bool over_proofed = false;  ///< past the highest acceptable rise
  bool collapsed = false;     ///< says the same
};

/// One stage. What it does not say of its place and piece is the stage's before it; a piece without a place is in
/// today's room; the first stage, without either, is held at the temperature that the dough has after mixing.
struct DayStage {
  std::string name = {};
  std::optional<double> until_rise_percent = {};
  std::optional<double> until_h = {};  ///< from the stage's start; without either it ends when the next one begins
  std::string ended = {};              ///< time of day at which it really was
  DayPlace where = {};
  std::vector<DayPlace> places = {};  ///< further ones, in the order of time
  std::optional<Shape> piece = {};
  std::optional<double> piece_g = {};
  double pieces = 1;
  std::optional<double> diameter_cm = {};
  std::optional<double> length_cm = {};
  std::optional<double> depth_cm = {};
  std::string material = "plastic";
  double vessel_g = 0;
  std::optional<Cover> cover = {};
  std::optional<Worktop> worktop = {};
  std::optional<double> heat_loss_w_per_k = {};  ///< measured
  std::vector<double> folds_h = {};
  std::vector<Handling> handling = {};
  std::optional<Standing> standing = {};
  std::optional<bool> final_proof = {};
  std::optional<std::pair<double, double>> acceptable_rise_percent = {};
};

struct Day {
  std::string title = {};
  std::string date = {};   ///< "2026-11-29"
  std::string zone = {};   ///< as in the time zone database; for programs that show other clocks
  std::string start = {};  ///< time of day at which flour and water meet
  std::string mixed = {};  ///< time of day at which the mixing really ended
  Today today = {};
  WantedWater water = {};
  DayDough dough = {};
  std::vector<DayFlour> flours = {};
  std::optional<DayPreferment> preferment = {};
  std::optional<YeastWater> yeast_water = {};
  std::optional<DayBowl> bowl = {};
  DayMixing mixing = {};
  std::vector<Batch> batches = {};
  std::vector<DayStage> stages = {};
  std::vector<Seen> seen = {};
};

/// A time of day such as "18:30" as hours from the day's 0:00: the first one from `after_h` on; "+1 7:30" is the next
/// morning whatever came before. @throws InvalidInput
FERMENT_API double moment_h(const std::string& text, double after_h = 0);

/// Hours from the day's 0:00 as such a text, to the minute.
FERMENT_API std::string moment_text(double hours);

/// What earlier batches say of the mixing, the day's own included if its dough and its water were measured.
struct LearnedMixing {
  BatchMean friction_k = {};          ///< of the factor rule
  BatchMean net_gain_kj_per_kg = {};  ///< of the heat balance
  double minutes = 0;                 ///< of today's mixing in the room, whose exchange with it is apart; 0: it is not
};
/// @throws InvalidInput without a batch, naming the batch
FERMENT_API LearnedMixing learned_mixing(const Day& day, const Kitchen& kitchen = {});

/// The day's mix, without a temperature of the water: formula, portions, bowl, preferment, mixing heat as it is given,
/// learned from batches, or made of a friction.
/// @throws InvalidInput naming what is missing or does not fit
FERMENT_API Mix mix_of(const Day& day, const Kitchen& kitchen = {});

/// The day's water. @throws as mix_of; InvalidInput without [water] desired or [today] room; NoSolution
FERMENT_API WaterPlan water_of(const Day& day, const Kitchen& kitchen = {});

/// The day as a process: its mix with the water that is planned or was poured, or the dough as measured, then its
/// stages. Hours are of the day, from its 0:00, if `start` or `mixed` says so; else from the end of mixing.
/// What was done counts before what was planned: `mixed`, `ended`, a measured dough.
/// @throws as water_of; InvalidInput if the dough's temperature is not known or there is no stage
FERMENT_API Process process_of(const Day& day, const Kitchen& kitchen = {});

/// The day as a log: its process, and what was seen of it.
/// @throws as process_of; InvalidInput for a stage that is none of the day's, or a time that cannot be
FERMENT_API Log log_of(const Day& day, const Kitchen& kitchen = {});

/// A kitchen learned from days: what was seen teaches its parameters; a dough that was measured, with the water that
/// was poured, its mixing. Days on which nothing was seen teach the mixing alone.
/// @throws as calibrate, naming the day
FERMENT_API Calibration calibrate_days(const std::vector<Day>& days, const Kitchen& prior = {},
                                       const CalibrateOptions& options = {});

/// Whether its hours are hours of the day.
FERMENT_API bool has_clock(const Day& day);

/// What is reckoned with and was not given, and where a stage's dough is if it does not say.
FERMENT_API std::vector<Notice> assumptions_of(const Day& day);

#define FERMENT_DAY_FORM(type) \
  template <>                  \
  FERMENT_API const Form& form_of<type>()
FERMENT_DAY_FORM(Today);
FERMENT_DAY_FORM(WantedWater);
FERMENT_DAY_FORM(DayDough);
FERMENT_DAY_FORM(DayFlour);
FERMENT_DAY_FORM(DayPreferment);
FERMENT_DAY_FORM(YeastWater);
FERMENT_DAY_FORM(DayBowl);
FERMENT_DAY_FORM(DayMixing);
FERMENT_DAY_FORM(Batch);
FERMENT_DAY_FORM(DayPlace);
FERMENT_DAY_FORM(Seen);
FERMENT_DAY_FORM(DayStage);
FERMENT_DAY_FORM(Day);
FERMENT_DAY_FORM(LearnedMixing);
#undef FERMENT_DAY_FORM

}  // namespace ferment
