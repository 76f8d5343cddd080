// What the dough sits in over the day: air of a kind whose temperature may change, or the dough's own measured
// temperature.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/given.hpp>
#include <ferment/base/names.hpp>

namespace ferment {

/// How the air moves heat.
enum class Air { room, refrigerator, fan_refrigerator, proof_box, humid_proof_box };

struct AirRow {
  std::string_view name;                ///< as of the enumeration
  double heat_transfer_w_per_m2_k = 0;  ///< W/(m²·K), radiation included, of a matt surface
  double by_convection_w_per_m2_k = 0;  ///< of it, the part that also carries vapour
  double condensing_w_per_m2_k = 0;     ///< in place of it on a dough so much colder that water condenses; 0: none does
  std::string_view source;
};
FERMENT_API std::span<const AirRow> airs();
FERMENT_API const AirRow& row_of(Air air);

/// A temperature that swings over the day: mean + half_range·cos(2π(t − warmest_h)/24 h).
struct DailySwing {
  Given mean_c;
  Given half_range_k;     ///< warmest less mean
  double warmest_h = 16;  ///< when it is warmest, on the process's hour axis
};

/// Measured temperatures, straight lines between the readings; before the first and after the last as there.
struct Course {
  std::vector<double> time_h = {};         ///< of the process's hour axis, rising
  std::vector<double> temperature_c = {};  ///< one for each
};

/// One place: air, or the dough's own temperature where that was measured or is held. Its temperature is one of three.
struct Place {
  std::optional<double> from_h = {};         ///< when the dough comes there, on the process's hour axis; always there
  std::optional<double> temperature_c = {};  ///< a steady one
  std::optional<DailySwing> swing = {};
  std::optional<Course> course = {};
  Air air = Air::room;
  std::optional<double> humidity_percent = {};          ///< relative; needed for a dough that is not covered
  std::optional<double> heat_transfer_w_per_m2_k = {};  ///< in place of the table's
  bool is_dough = false;                                ///< the temperature is the dough's own
};

/// Where the dough is, place after place. A function of the process's hour axis: it never restarts.
struct FERMENT_API Surroundings {
  std::vector<Place> places = {};

  static Surroundings room(double room_c);
  static Surroundings refrigerator(double air_c, bool fan = false);
  static Surroundings proof_box(double air_c, std::optional<double> humidity_percent = std::nullopt);
  /// One with steam or a pan of hot water in it: on a colder dough water condenses, which warms it sooner.
  static Surroundings humid_proof_box(double air_c);
  /// A measured room. For another kind of air set places[0].air.
  static Surroundings measured(std::vector<double> time_h, std::vector<double> temperature_c);
  static Surroundings daily_swing(double mean_c, double half_range_k, double warmest_h = 16);
  /// A dough that is held at a temperature, or whose own temperature was measured: no heat is reckoned.
  static Surroundings dough(double dough_c);
  static Surroundings dough_measured(std::vector<double> time_h, std::vector<double> temperature_c);
  /// One after the other: each from its hour on.
  static Surroundings sequence(std::vector<std::pair<double, Surroundings>> parts);
};

/// The place at an hour: the last that has begun, or the first. @throws InvalidInput without a place, or unless the
/// hour is a number
FERMENT_API const Place& place_at(const Surroundings& surroundings, double time_h);

/// When the next place begins after an hour; infinite after the last.
FERMENT_API double next_place_h(const Surroundings& surroundings, double time_h);

/// Its temperature at an hour, °C. @throws InvalidInput unless the hour is a number
FERMENT_API double temperature_at(const Place& place, double time_h);

template <>
FERMENT_API const Names& names_of<Air>();

template <>
FERMENT_API const Form& form_of<DailySwing>();

template <>
FERMENT_API const Form& form_of<Course>();

template <>
FERMENT_API const Form& form_of<Place>();

template <>
FERMENT_API const Form& form_of<Surroundings>();

}  // namespace ferment
