// The field table: every bound, unit, default and meaning of an input is written here, once. Validation
// and messages in C++, C and Python, the reader of day files and the documentation all read it.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include <ferment/base/export.hpp>
#include <ferment/base/names.hpp>
#include <ferment/base/values.hpp>

namespace ferment {

/// What kind of number a field holds; decides how a message helps (°F given for °C, °F for K).
enum class Quantity { temperature, temperature_difference, percent, duration, mass, length, ratio };

struct Field {
  std::string_view name;   ///< as in code, day files and options
  std::string_view label;  ///< as in messages
  std::string_view unit;
  double low = 0;                      ///< lowest allowed value, included
  double high = 0;                     ///< highest allowed value, included
  std::optional<double> initial = {};  ///< default; without one it must be given
  Quantity quantity = Quantity::ratio;
  std::string_view meaning = {};
  std::string_view source = {};
  std::string_view advice = {};  ///< what to do when a value is refused
};

namespace field {

inline constexpr std::optional<double> must_be_given = {};

inline constexpr Field dough_c{"dough_c",
                               "dough temperature",
                               "°C",
                               -2,
                               45,
                               must_be_given,
                               Quantity::temperature,
                               "temperature of the dough itself, not of the room",
                               "below −2 °C dough freezes and above 45 °C yeast dies: outside the model",
                               "measure the dough with a probe"};
inline constexpr Field from_c{"from_c",
                              "dough temperature of the recipe",
                              "°C",
                              -2,
                              45,
                              must_be_given,
                              Quantity::temperature,
                              "dough temperature the known time belongs to",
                              "as dough_c",
                              ""};
inline constexpr Field to_c{"to_c",
                            "dough temperature here",
                            "°C",
                            -2,
                            45,
                            must_be_given,
                            Quantity::temperature,
                            "dough temperature the time is wanted for",
                            "as dough_c",
                            ""};
inline constexpr Field temperature_c{"temperature_c",
                                     "temperature",
                                     "°C",
                                     -50,
                                     120,
                                     must_be_given,
                                     Quantity::temperature,
                                     "a temperature asked of a physical law",
                                     "range of use, not of validity",
                                     ""};
inline constexpr Field desired_c{"desired_c",
                                 "desired dough temperature",
                                 "°C",
                                 0,
                                 45,
                                 must_be_given,
                                 Quantity::temperature,
                                 "dough temperature wanted at the end of mixing",
                                 "common practice, no source: 20 to 28 °C",
                                 "most wheat doughs are wanted at 20 to 28 °C"};
inline constexpr Field flour_c{"flour_c",
                               "flour temperature",
                               "°C",
                               -30,
                               60,
                               must_be_given,
                               Quantity::temperature,
                               "temperature of the flour in its bag",
                               "",
                               ""};
inline constexpr Field room_c{"room_c",
                              "room temperature",
                              "°C",
                              -30,
                              60,
                              must_be_given,
                              Quantity::temperature,
                              "air temperature where the dough is mixed",
                              "",
                              ""};
inline constexpr Field mix_room_c = [] {
  Field field = room_c;
  field.meaning = "air where the dough is mixed; whatever has no temperature of its own has it; needed without dough_c";
  return field;
}();
inline constexpr Field measured_dough_c = [] {
  Field field = dough_c;
  field.meaning = "measured at the end of mixing, in place of the heat balance's";
  return field;
}();
inline constexpr Field preferment_c{"preferment_c",
                                    "preferment temperature",
                                    "°C",
                                    -2,
                                    45,
                                    must_be_given,
                                    Quantity::temperature,
                                    "temperature of the preferment when it is mixed in",
                                    "as dough_c",
                                    ""};
inline constexpr Field water_c{"water_c",
                               "water temperature",
                               "°C",
                               0,
                               60,
                               must_be_given,
                               Quantity::temperature,
                               "temperature of the water poured in",
                               "yeast is dead at 60 °C (science of the trade); ice has its own amount",
                               "yeast dies at 60 °C; below 0 °C ask for ice"};
inline constexpr Field tap_c{"tap_c",
                             "tap water temperature",
                             "°C",
                             0,
                             60,
                             must_be_given,
                             Quantity::temperature,
                             "cold water as it comes from the tap",
                             "",
                             ""};
inline constexpr Field refrigerator_c{"refrigerator_c",
                                      "refrigerator temperature",
                                      "°C",
                                      -30,
                                      30,
                                      must_be_given,
                                      Quantity::temperature,
                                      "air temperature inside the refrigerator",
                                      "",
                                      ""};
inline constexpr Field friction_k{"friction_k",
                                  "friction",
                                  "K",
                                  -10,
                                  25,
                                  must_be_given,
                                  Quantity::temperature_difference,
                                  "warming by mixing in the trade's factor rule, a difference of temperatures",
                                  "common practice, no source: about 0 K by hand to 20 K in a fast mixer",
                                  "friction is a difference of temperatures, not a temperature point"};
inline constexpr Field yeast_percent{"yeast_percent",
                                     "yeast",
                                     "%",
                                     0.01,
                                     16,
                                     must_be_given,
                                     Quantity::percent,
                                     "yeast as weighed, percent of flour weight",
                                     "bounds follow from instant_equivalent_percent and the kind",
                                     "3 g on 500 g of flour are 0.6"};
inline constexpr Field instant_equivalent_percent{"instant_equivalent_percent",
                                                  "yeast as instant yeast",
                                                  "%",
                                                  0.01,
                                                  5,
                                                  must_be_given,
                                                  Quantity::percent,
                                                  "yeast dose converted to instant dry yeast",
                                                  "below 0.01 % the flour's own flora and growth decide: not modelled",
                                                  "3 g on 500 g of flour are 0.6"};
inline constexpr Field salt_percent{"salt_percent",
                                    "salt",
                                    "%",
                                    0,
                                    6,
                                    2,
                                    Quantity::percent,
                                    "salt, percent of flour weight",
                                    "common practice, no source: 0 to 3 %",
                                    "10 g on 500 g of flour are 2"};
inline constexpr Field water_percent{"water_percent",
                                     "water",
                                     "%",
                                     40,
                                     130,
                                     65,
                                     Quantity::percent,
                                     "all water of the formula, percent of flour weight",
                                     "common practice, no source: 50 to 100 %",
                                     "325 g on 500 g of flour are 65"};
inline constexpr Field sugar_percent{"sugar_percent",
                                     "sugar",
                                     "%",
                                     0,
                                     40,
                                     0,
                                     Quantity::percent,
                                     "added sugar as sucrose, percent of flour weight",
                                     "common practice, no source: 0 to 25 %",
                                     "25 g on 500 g of flour are 5"};
inline constexpr Field gluten_percent{"gluten_percent",
                                      "added gluten",
                                      "%",
                                      0,
                                      10,
                                      0,
                                      Quantity::percent,
                                      "vital wheat gluten, percent of total flour weight",
                                      "common practice, no source: 0 to 3 %",
                                      "5 g in 500 g of flour are 1"};
inline constexpr Field altitude_m{"altitude_m",
                                  "altitude",
                                  "m",
                                  -500,
                                  6000,
                                  0,
                                  Quantity::length,
                                  "height above sea level, for the air pressure",
                                  "ISO 2533 standard atmosphere",
                                  "in metres: 5000 ft are 1524"};
inline constexpr Field rise_percent{"rise_percent",
                                    "rise",
                                    "%",
                                    0.1,
                                    1000,
                                    must_be_given,
                                    Quantity::percent,
                                    "volume gained since the start of the stage",
                                    "a rise below 0.1 % cannot be seen",
                                    "doubled is 100, half as much again is 50"};
inline constexpr Field time_h{"time_h",
                              "time",
                              "h",
                              0,
                              1000,
                              must_be_given,
                              Quantity::duration,
                              "hours, or a timedelta in Python",
                              "",
                              "minutes are divided by 60"};
inline constexpr Field target_h{"target_h",
                                "time",
                                "h",
                                0.01,
                                1000,
                                must_be_given,
                                Quantity::duration,
                                "hours the rise should take, or a timedelta in Python",
                                "",
                                "minutes are divided by 60"};
inline constexpr Field perishable_h{"perishable_h",
                                    "time held",
                                    "h",
                                    0,
                                    1000,
                                    must_be_given,
                                    Quantity::duration,
                                    "hours a dough with egg, milk or other perishable food is held",
                                    "",
                                    "minutes are divided by 60"};
inline constexpr Field water_g{"water_g",      "water",           "g", 0.1, 1e6, must_be_given,
                               Quantity::mass, "weight of water", "",  ""};
inline constexpr Field loss_fraction{"loss_fraction",
                                     "loss by handling",
                                     "of the gas in the cells",
                                     0,
                                     1,
                                     must_be_given,
                                     Quantity::ratio,
                                     "share of the gas cells' content pressed out",
                                     "",
                                     "0.5 is half of the gas"};
inline constexpr Field co2_mmol{"co2_mmol",
                                "CO2",
                                "mmol per 100 g flour",
                                0,
                                1000,
                                must_be_given,
                                Quantity::ratio,
                                "carbon dioxide per 100 g of flour",
                                "",
                                ""};
inline constexpr Field air_mmol{"air_mmol",
                                "air in the cells",
                                "mmol per 100 g flour",
                                0,
                                1000,
                                must_be_given,
                                Quantity::ratio,
                                "air in the gas cells per 100 g of flour",
                                "",
                                ""};
inline constexpr Field volume_ratio{"volume_ratio",
                                    "volume",
                                    "times the mixed volume",
                                    0.1,
                                    1000,
                                    must_be_given,
                                    Quantity::ratio,
                                    "volume over the volume just after mixing",
                                    "",
                                    "doubled is 2"};
inline constexpr Field volume_ml{"volume_ml",
                                 "volume",
                                 "mL per 100 g flour",
                                 1,
                                 1e5,
                                 must_be_given,
                                 Quantity::ratio,
                                 "volume of the dough per 100 g of flour",
                                 "",
                                 ""};
inline constexpr Field mixed_volume_ml{"mixed_volume_ml",
                                       "volume after mixing",
                                       "mL per 100 g flour",
                                       50,
                                       500,
                                       must_be_given,
                                       Quantity::ratio,
                                       "volume just after mixing per 100 g of flour",
                                       "",
                                       "take it from a state that a mix made"};
inline constexpr Field equivalent_h{"equivalent_h",
                                    "equivalent hours",
                                    "h",
                                    0,
                                    1e5,
                                    must_be_given,
                                    Quantity::duration,
                                    "hours at the reference dough (25 °C, 2 % salt, 65 % water, no sugar)",
                                    "",
                                    ""};

// ---- what comes into the bowl ---------------------------------------------------------------------------------
constexpr Field grams_of(std::string_view name, std::string_view label, std::string_view meaning, double low = 0) {
  return {name,
          label,
          "g",
          low,
          1e6,
          low == 0 ? std::optional(0.0) : must_be_given,
          Quantity::mass,
          meaning,
          "",
          "in grams: an ounce is 28.35 g"};
}
inline constexpr Field flour_g = grams_of("flour_g", "flour", "weight of a flour", 0.1);
inline constexpr Field bread_flour_g =
    grams_of("flour_g", "flour", "weight of bread flour; other flours stand in flours");
inline constexpr Field poured_water_g =
    grams_of("water_g", "water", "weight of the main water, whose temperature is asked for");
inline constexpr Field portion_water_g =
    grams_of("water_g", "a portion of water", "weight of a portion of water of its own temperature", 0.1);
inline constexpr Field ice_g = grams_of("ice_g", "ice", "weight of ice in place of that much of the water");
inline constexpr Field salt_g = grams_of("salt_g", "salt", "weight of salt");
inline constexpr Field sugar_g = grams_of("sugar_g", "sugar", "weight of sugar");
inline constexpr Field gluten_g =
    grams_of("gluten_g", "added gluten", "weight of vital wheat gluten; it counts as flour");
inline constexpr Field milk_g = grams_of("milk_g", "milk", "weight of whole milk");
inline constexpr Field egg_g = grams_of("egg_g", "egg", "weight of whole egg without shell");
inline constexpr Field butter_g = grams_of("butter_g", "butter", "weight of butter");
inline constexpr Field oil_g = grams_of("oil_g", "oil", "weight of oil");
inline constexpr Field instant_g = grams_of("instant_g", "instant yeast", "weight of instant dry yeast");
inline constexpr Field active_dry_g = grams_of("active_dry_g", "active dry yeast", "weight of active dry yeast");
inline constexpr Field compressed_g =
    grams_of("compressed_g", "compressed yeast", "weight of compressed (fresh) yeast");
inline constexpr Field piece_g = grams_of("piece_g", "weight of a piece", "weight of a piece as divided", 1);
inline constexpr Field pieces{
    "pieces", "number of pieces", "", 1, 1e5, must_be_given, Quantity::ratio, "pieces the dough is divided into", "",
    ""};
inline constexpr Field pieces_of_dough = [] {
  Field field = pieces;
  field.initial = 1;
  field.meaning = "equal ones that share all of the dough, if their weight is not given";
  return field;
}();
inline constexpr Field loss_percent{"loss_percent",
                                    "handling loss",
                                    "%",
                                    0,
                                    50,
                                    0,
                                    Quantity::percent,
                                    "dough that stays on bowl, hands and table, percent of the dough",
                                    "common practice, no source: 1 to 3 %",
                                    ""};
inline constexpr Field moisture_percent{
    "moisture_percent",
    "moisture of the flour",
    "%",
    5,
    20,
    must_be_given,
    Quantity::percent,
    "water in the flour as it is weighed, percent of its weight",
    "USDA FoodData Central (from memory): 10.7 to 13.4 %; European flours 14 to 15 % (common practice)",
    ""};
inline constexpr Field poured_water_percent{
    "poured_water_percent",
    "water poured",
    "%",
    0,
    130,
    65,
    Quantity::percent,
    "water poured, that of portions and preferments included, percent of flour weight",
    "common practice, no source: 0 (a milk dough) to 100 %",
    "325 g on 500 g of flour are 65"};
inline constexpr Field flours_percent{"flours_percent",
                                      "share of a flour",
                                      "%",
                                      0.01,
                                      100,
                                      must_be_given,
                                      Quantity::percent,
                                      "one flour's share of the flours, added gluten and preferments apart",
                                      "",
                                      "the shares of all flours make 100 %"};
inline constexpr Field liquid_percent{"liquid_percent",
                                      "an enriching ingredient",
                                      "%",
                                      0,
                                      150,
                                      0,
                                      Quantity::percent,
                                      "milk, egg, butter or oil, percent of flour weight",
                                      "common practice, no source: 0 to 70 %",
                                      "percent of the flour's weight, not of the dough's"};

constexpr Field enriching_of(std::string_view name, std::string_view label) {
  Field field = liquid_percent;
  field.name = name;
  field.label = label;
  return field;
}
inline constexpr Field milk_percent = enriching_of("milk_percent", "milk");
inline constexpr Field egg_percent = enriching_of("egg_percent", "egg");
inline constexpr Field butter_percent = enriching_of("butter_percent", "butter");
inline constexpr Field oil_percent = enriching_of("oil_percent", "oil");

constexpr Field celsius_of(std::string_view name, std::string_view label, double low, double high,
                           std::string_view meaning) {
  return {name, label, "°C", low, high, must_be_given, Quantity::temperature, meaning, "", ""};
}
inline constexpr Field bowl_c =
    celsius_of("bowl_c", "bowl temperature", -30, 100, "temperature of the bowl; the room's if not given");
inline constexpr Field milk_c =
    celsius_of("milk_c", "milk temperature", 0, 60, "temperature of the milk; the room's if not given");
inline constexpr Field egg_c =
    celsius_of("egg_c", "egg temperature", 0, 60, "temperature of the egg; the room's if not given");
inline constexpr Field butter_c =
    celsius_of("butter_c", "butter temperature", -20, 60, "temperature of the butter; the room's if not given");
inline constexpr Field ice_c{"ice_c",
                             "ice temperature",
                             "°C",
                             -40,
                             0,
                             -18,
                             Quantity::temperature,
                             "temperature of the ice: about −18 °C from a freezer, 0 °C when it is wet",
                             "common practice, no source",
                             ""};

// ---- bowl, mixing and rest ------------------------------------------------------------------------------------
inline constexpr Field bowl_g =
    grams_of("bowl_g", "weight of the bowl", "weight of the bowl with its hook or paddle; 0: no bowl");
inline constexpr Field contact{"contact",
                               "share of the bowl that takes part",
                               "",
                               0,
                               1,
                               0.8,
                               Quantity::ratio,
                               "share of the bowl that comes to the dough's temperature during mixing",
                               "common practice, no source: 0.6 to 1",
                               "0.8 is 80 %"};
inline constexpr Field mixing_min{"mixing_min",
                                  "mixing time",
                                  "min",
                                  0,
                                  60,
                                  must_be_given,
                                  Quantity::ratio,
                                  "minutes of mixing or kneading; the method's usual time if not given",
                                  "common practice, no source",
                                  "in minutes"};
inline constexpr Field gain_min = [] {
  Field field = mixing_min;
  field.initial = 0;
  field.meaning = "minutes of mixing in the room, whose exchange with it is then reckoned apart; 0: it is in the gain";
  return field;
}();
inline constexpr Field work_kj_per_kg{"work_kj_per_kg",
                                      "mixing work",
                                      "kJ/kg",
                                      0,
                                      100,
                                      must_be_given,
                                      Quantity::ratio,
                                      "mixing work that stays in the dough as heat, per kg of dough",
                                      "common practice and trade sources: 0.3 to 40",
                                      "1 Wh/kg is 3.6 kJ/kg"};
inline constexpr Field hydration_kj_per_kg{"hydration_kj_per_kg",
                                           "heat of hydration",
                                           "kJ/kg",
                                           0,
                                           60,
                                           must_be_given,
                                           Quantity::ratio,
                                           "heat that flour gives off when it is wetted, per kg of flour as weighed",
                                           "15.1 at 11 to 12 % moisture: baking trade dictionary",
                                           ""};
inline constexpr Field net_gain_kj_per_kg{
    "net_gain_kj_per_kg",
    "net mixing gain",
    "kJ/kg",
    -30,
    120,
    must_be_given,
    Quantity::ratio,
    "work and hydration less losses during mixing, per kg of dough, from logged batches",
    "common practice, no source: 2 to 15 at home",
    "find it from a batch: net_gain_from_batch"};
inline constexpr Field sd_kj_per_kg{
    "sd_kj_per_kg",
    "spread of the net mixing gain",
    "kJ/kg",
    0,
    50,
    1,
    Quantity::ratio,
    "standard deviation from batch to batch",
    "readings of dough, water and flour within ± 0.5 K in 9 of 10, by their weights: 1 kJ/kg; engineering estimate",
    ""};
inline constexpr Field rest_h{"rest_h",
                              "rest before the yeast",
                              "h",
                              0,
                              24,
                              0,
                              Quantity::duration,
                              "hours flour and water rest before yeast, salt and the rest are mixed in",
                              "common practice, no source: 0.3 to 2 h",
                              "minutes are divided by 60"};
inline constexpr Field stands_h{"stands_h",
                                "time the portion stands",
                                "h",
                                0,
                                24,
                                0,
                                Quantity::duration,
                                "hours a portion of water stands in the room before it is mixed in",
                                "",
                                "minutes are divided by 60"};
inline constexpr Field cup_h{"cup_h",
                             "time constant of the standing portion",
                             "h",
                             0.01,
                             10,
                             0.3,
                             Quantity::duration,
                             "time in which the portion's difference to the room falls to 37 %",
                             "common practice, no source: 0.17 to 0.42 h for 50 to 100 g in a cup",
                             ""};
inline constexpr Field heat_loss_w_per_k{
    "heat_loss_w_per_k",
    "heat loss of the bowl",
    "W/K",
    0,
    100,
    must_be_given,
    Quantity::ratio,
    "heat the covered dough in its bowl loses to the room per kelvin; estimated from the dough's weight if not given",
    "computed for 1.67 kg of dough in a bowl: 0.40 to 0.50",
    ""};

// ---- a dough that drifts --------------------------------------------------------------------------------------
inline constexpr Field start_c{"start_c",
                               "dough temperature at the start",
                               "°C",
                               -2,
                               45,
                               must_be_given,
                               Quantity::temperature,
                               "temperature of the dough when the drift begins",
                               "as dough_c",
                               "measure the dough with a probe"};
inline constexpr Field surroundings_c =
    celsius_of("surroundings_c", "temperature of the surroundings", -40, 80, "temperature the dough nears");
inline constexpr Field time_constant_h{"time_constant_h",
                                       "time constant",
                                       "h",
                                       0.001,
                                       1000,
                                       must_be_given,
                                       Quantity::duration,
                                       "time in which the dough's difference to its surroundings falls to 37 %",
                                       "common practice, no source: 1 h for a roll to 8 h for a large tub",
                                       "minutes are divided by 60"};

// ---- a piece and what it sits in ------------------------------------------------------------------------------
inline constexpr Field proof_box_c =
    celsius_of("proof_box_c", "proof box temperature", 0, 60, "air temperature inside the proof box");
inline constexpr Field humidity_percent{"humidity_percent",
                                        "relative humidity",
                                        "%",
                                        0,
                                        100,
                                        must_be_given,
                                        Quantity::percent,
                                        "relative humidity of the air, for a dough that is not covered",
                                        "common practice, no source: 40 to 60 % in a room, 70 to 85 % in a proof box",
                                        "50 is half of what the air can hold"};
inline constexpr Field heat_transfer_w_per_m2_k{
    "heat_transfer_w_per_m2_k",
    "heat transfer coefficient",
    "W/(m²·K)",
    0.5,
    200,
    must_be_given,
    Quantity::ratio,
    "heat between a surface and the air, radiation included, in place of the table's",
    "computed: 7 to 10 in still air, 9 to 18 with a fan",
    ""};
inline constexpr Field half_range_k{"half_range_k",
                                    "daily swing",
                                    "K",
                                    0,
                                    20,
                                    must_be_given,
                                    Quantity::temperature_difference,
                                    "warmest less mean temperature of the day, a difference of temperatures",
                                    "",
                                    "half of the range from coldest to warmest"};
inline constexpr Field warmest_h{"warmest_h",
                                 "hour of the warmest moment",
                                 "h",
                                 -1000,
                                 1000,
                                 16,
                                 Quantity::duration,
                                 "when a daily swing is warmest, on the process's hour axis",
                                 "",
                                 "hours of the process: 16 is four in the afternoon if it starts by the clock"};
constexpr Field centimetres_of(std::string_view name, std::string_view label, std::string_view meaning) {
  return {
      name, label, "cm", 0.5, 200, must_be_given, Quantity::length, meaning, "", "in centimetres: an inch is 2.54 cm"};
}
inline constexpr Field diameter_cm =
    centimetres_of("diameter_cm", "diameter", "diameter of a piece, or of the tub at the dough");
inline constexpr Field length_cm = centimetres_of("length_cm", "length", "length of a long piece");
inline constexpr Field depth_cm = centimetres_of("depth_cm", "depth", "depth of the dough in its tub");
inline constexpr Field vessel_g = grams_of("vessel_g", "weight of the tub",
                                           "weight of the tub, which warms and cools with the dough; 0: not counted");
inline constexpr Field dough_g = grams_of("dough_g", "dough", "weight of the dough", 1);
inline constexpr Field piece_heat_loss_w_per_k{
    "piece_heat_loss_w_per_k",
    "heat loss of the piece",
    "W/K",
    1e-4,
    1000,
    must_be_given,
    Quantity::ratio,
    "heat a piece loses to its surroundings per kelvin, in place of what its shape and cover give",
    "computed: 0.1 for a roll to 1 for a large tub",
    "heat capacity over time constant: 1 kg of dough that takes 3 h has 0.26"};

// ---- what is done ---------------------------------------------------------------------------------------------
inline constexpr Field until_h{"until_h",
                               "length of a stage",
                               "h",
                               0,
                               1000,
                               must_be_given,
                               Quantity::duration,
                               "hours from the stage's start to its end, or a timedelta in Python",
                               "",
                               "minutes are divided by 60"};
inline constexpr Field folds_h{"folds_h",
                               "moment of a fold",
                               "h",
                               0,
                               1000,
                               must_be_given,
                               Quantity::duration,
                               "hours from the stage's start to a fold",
                               "",
                               "minutes are divided by 60"};
inline constexpr Field start_h{"start_h",
                               "hour of the process",
                               "h",
                               -10000,
                               10000,
                               0,
                               Quantity::duration,
                               "a moment on the process's hour axis: 0 for its start, or the hour of the day",
                               "",
                               "half past eight is 8.5"};

}  // namespace field

/// All input fields, in the order of the documentation.
FERMENT_API std::span<const Field> input_fields();

/// The input field or kitchen parameter of that name; nullptr if there is none.
FERMENT_API const Field* find_field(std::string_view name);

/// Refuses what the field refuses: not finite, or outside [low, high].
/// @throws InvalidInput naming field, value, unit, range and what to do; for more than one value also the
///         first offending index and how many offend
FERMENT_API void require(const Field& field, const Values& values);

/// The same of one number, where the caller does not wait for what is seldom needed.
inline void require(const Field& field, double value) {
  if (value >= field.low && value <= field.high) return;
  require(field, Values(value));
}
inline void require(const Field& field, Given value) { require(field, value.value); }

template <>
FERMENT_API const Names& names_of<Quantity>();

}  // namespace ferment
