// The field table: every bound, unit, default and meaning of an input is written here, once. Validation
// and messages in C++, C and Python, the reader of day files and the documentation all read it.
#pragma once

#include <cstddef>
#include <limits>
#include <span>
#include <string>
#include <string_view>

#include <ferment/base/export.hpp>
#include <ferment/base/values.hpp>

namespace ferment {

/// What kind of number a field holds; decides how a message helps (°F given for °C, °F for K).
enum class Quantity { temperature, temperature_difference, percent, duration, mass, length, ratio };

struct Field {
  std::string_view name;   ///< as in code, day files and options
  std::string_view label;  ///< as in messages
  std::string_view unit;
  double low = 0;                                             ///< lowest allowed value, included
  double high = 0;                                            ///< highest allowed value, included
  double initial = std::numeric_limits<double>::quiet_NaN();  ///< default; NaN: must be given
  Quantity quantity = Quantity::ratio;
  std::string_view meaning = {};
  std::string_view source = {};
  std::string_view advice = {};  ///< what to do when a value is refused
};

namespace field {

inline constexpr double must_be_given = std::numeric_limits<double>::quiet_NaN();

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
inline constexpr Field to_c{
    "to_c", "dough temperature here", "°C", -2, 45, must_be_given, Quantity::temperature, "dough temperature the time is wanted for", "as dough_c",
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
inline constexpr Field flour_c{
    "flour_c", "flour temperature", "°C", -30, 60, must_be_given, Quantity::temperature, "temperature of the flour in its bag", "", ""};
inline constexpr Field room_c{
    "room_c", "room temperature", "°C", -30, 60, must_be_given, Quantity::temperature, "air temperature where the dough is mixed", "", ""};
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
inline constexpr Field tap_c{
    "tap_c", "tap water temperature", "°C", 0, 60, must_be_given, Quantity::temperature, "cold water as it comes from the tap", "", ""};
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
inline constexpr Field time_h{
    "time_h", "time", "h", 0, 1000, must_be_given, Quantity::duration, "hours, or a timedelta in Python", "", "minutes are divided by 60"};
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
inline constexpr Field water_g{"water_g", "water", "g", 0.1, 1e6, must_be_given, Quantity::mass, "weight of water", "", ""};
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
inline constexpr Field co2_mmol{
    "co2_mmol", "CO2", "mmol per 100 g flour", 0, 1000, must_be_given, Quantity::ratio, "carbon dioxide per 100 g of flour", "", ""};
inline constexpr Field air_mmol{
    "air_mmol", "air in the cells", "mmol per 100 g flour", 0, 1000, must_be_given, Quantity::ratio, "air in the gas cells per 100 g of flour", "",
    ""};
inline constexpr Field volume_ratio{
    "volume_ratio", "volume", "times the mixed volume", 0.1, 1000, must_be_given, Quantity::ratio, "volume over the volume just after mixing", "",
    "doubled is 2"};
inline constexpr Field volume_ml{
    "volume_ml", "volume", "mL per 100 g flour", 1, 1e5, must_be_given, Quantity::ratio, "volume of the dough per 100 g of flour", "", ""};
inline constexpr Field mixed_volume_ml{"mixed_volume_ml",
                                       "volume after mixing",
                                       "mL per 100 g flour",
                                       50,
                                       500,
                                       must_be_given,
                                       Quantity::ratio,
                                       "volume just after mixing per 100 g of flour",
                                       "",
                                       "start from the state that mixed() gives"};
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

}  // namespace field

/// All input fields, in the order of the documentation.
FERMENT_API std::span<const Field> input_fields();

/// The input field or kitchen parameter of that name; nullptr if there is none.
FERMENT_API const Field* find_field(std::string_view name);

/// Refuses what the field refuses: not finite, or outside [low, high].
/// @throws InvalidInput naming field, value, unit, range and what to do; for more than one value also the
///         first offending place and how many offend
FERMENT_API void require(const Field& field, const Values& values);

}  // namespace ferment
