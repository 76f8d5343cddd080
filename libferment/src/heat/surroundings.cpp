#include <ferment/heat/surroundings.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/form.hpp>
#include <ferment/heat/piece.hpp>

#include "base/named.hpp"
#include "base/text.hpp"

namespace ferment {
namespace {

constexpr std::array rows{
    AirRow{"room", 8, 3.2, 0, "computed, still air and radiation: 6.5 to 10 (Incropera's correlations, from memory)"},
    AirRow{"refrigerator", 7, 2.5, 0,
           "computed, still air and radiation: 5 to 9; convection 1.3 to 2.8 (Energies 2025, 18:6280)"},
    AirRow{"fan_refrigerator", 12, 7, 0,
           "computed, 0.3 to 0.5 m/s and radiation: 9 to 18 (Whitaker's correlation, from memory)"},
    AirRow{"proof_box", 12, 6.5, 0, "as a refrigerator with a fan"},
    AirRow{
        "humid_proof_box", 12, 6.5, 18,
        "as a proof box; water condenses on dough that is 10 K colder (order from a proof time in a hot box: Freilich "
        "1949, in Siffring & Bruinsma 1993)"},
};

const Field& field_of(const Place& place) {
  if (place.is_dough) return field::dough_c;
  switch (place.air) {
    case Air::room: return field::room_c;
    case Air::refrigerator:
    case Air::fan_refrigerator: return field::refrigerator_c;
    case Air::proof_box:
    case Air::humid_proof_box: break;
  }
  return field::proof_box_c;
}

/// A temperature whose bounds are those of what it is of, which the place alone knows.
constexpr Field temperature_of(std::string_view name, std::string_view meaning) {
  constexpr double any = std::numeric_limits<double>::infinity();
  return {name, "temperature", "°C", -any, any, field::must_be_given, Quantity::temperature, meaning, "", ""};
}
constexpr Field steady_c = temperature_of("temperature_c", "a steady temperature");
constexpr Field reading_c = temperature_of("temperature_c", "one for each");
constexpr Field mean_c = temperature_of("mean_c", "over a day");

void contradictions(const Course& course) {
  const std::size_t n = course.time_h.size();
  if (n < 2 || course.temperature_c.size() != n) {
    throw InvalidInput("a measured temperature needs at least two readings, a time and a temperature for each; got " +
                           std::to_string(n) + " times and " + std::to_string(course.temperature_c.size()) +
                           " temperatures",
                       {.path = "time_h"});
  }
  for (std::size_t i = 1; i < n; ++i) {
    if (course.time_h[i] > course.time_h[i - 1]) continue;
    throw InvalidInput("time goes from " + number(course.time_h[i - 1]) + " h to " + number(course.time_h[i]) +
                           " h at reading " + std::to_string(i + 1) + " of " + std::to_string(n),
                       {.path = "time_h", .value = course.time_h[i], .index = i, .advice = "the times must rise"});
  }
}

/// The field of what its temperature is of, under the member's name.
void require_c(const Place& place, std::string_view member, const Values& temperature_c) {
  Field field = field_of(place);
  field.name = member;
  require(field, temperature_c);
}

void contradictions(const Place& place) {
  if (place.temperature_c) require_c(place, "temperature_c", *place.temperature_c);
  if (place.course) require_c(place, "course.temperature_c", place.course->temperature_c);
  if (!place.swing) return;
  if (place.is_dough) {
    throw InvalidInput("a dough's own temperature is a number or a measured one, not a daily swing", {.path = "swing"});
  }
  const DailySwing& swing = *place.swing;
  for (const double temperature_c :
       {swing.mean_c.value, swing.mean_c - swing.half_range_k, swing.mean_c + swing.half_range_k})
    require_c(place, "swing.mean_c", temperature_c);
}

double begins_h(const Place& place);

void contradictions(const Surroundings& surroundings) {
  if (surroundings.places.empty())
    throw InvalidInput("surroundings have no place",
                       {.path = "places", .advice = "give a room, a refrigerator or another"});
  double last_h = -std::numeric_limits<double>::infinity();
  for (const Place& place : surroundings.places) {
    if (!(begins_h(place) >= last_h)) {
      throw InvalidInput(
          "a place begins at " + number(begins_h(place)) + " h, after one that begins at " + number(last_h) + " h",
          {.path = "places", .value = begins_h(place), .low = last_h, .advice = "give them in the order of time"});
    }
    last_h = begins_h(place);
  }
}

/// When the dough comes to a place: long before, if not given.
double begins_h(const Place& place) { return place.from_h.value_or(-std::numeric_limits<double>::infinity()); }

Surroundings checked(Place place) {
  Surroundings surroundings{{std::move(place)}};
  require(surroundings);
  return surroundings;
}

double along(const Course& course, double time_h) {
  const auto& times = course.time_h;
  if (times.empty() || course.temperature_c.size() != times.size()) contradictions(course);
  const auto next = static_cast<std::size_t>(std::upper_bound(times.begin(), times.end(), time_h) - times.begin());
  if (next == 0) return course.temperature_c.front();
  if (next == times.size()) return course.temperature_c.back();
  const double from = course.temperature_c[next - 1], to = course.temperature_c[next];
  return from + (to - from) * (time_h - times[next - 1]) / (times[next] - times[next - 1]);
}

/// Only that it is a number: inside a process it may be later than an input may be.
void require_hour(double time_h) {
  if (!std::isfinite(time_h)) require(field::start_h, time_h);
}

/// The first place that has not begun.
auto next_place(const Surroundings& surroundings, double time_h) {
  return std::upper_bound(surroundings.places.begin(), surroundings.places.end(), time_h,
                          [](double hour, const Place& place) { return hour < begins_h(place); });
}

}  // namespace

std::span<const AirRow> airs() { return rows; }

const AirRow& row_of(Air air) {
  name_of(air);  // refuses what is none
  return rows[static_cast<std::size_t>(air)];
}

Surroundings Surroundings::room(double room_c) {
  require(field::room_c, room_c);
  return checked({.temperature_c = room_c});
}

Surroundings Surroundings::refrigerator(double air_c, bool fan) {
  require(field::refrigerator_c, air_c);
  return checked({.temperature_c = air_c, .air = fan ? Air::fan_refrigerator : Air::refrigerator});
}

Surroundings Surroundings::proof_box(double air_c, std::optional<double> humidity_percent) {
  require(field::proof_box_c, air_c);
  return checked({.temperature_c = air_c, .air = Air::proof_box, .humidity_percent = humidity_percent});
}

Surroundings Surroundings::humid_proof_box(double air_c) {
  require(field::proof_box_c, air_c);
  return checked({.temperature_c = air_c, .air = Air::humid_proof_box});
}

Surroundings Surroundings::measured(std::vector<double> time_h, std::vector<double> temperature_c) {
  return checked({.course = Course{std::move(time_h), std::move(temperature_c)}});
}

Surroundings Surroundings::daily_swing(double mean_c, double half_range_k, double warmest_h) {
  require(field::half_range_k, half_range_k);
  require(field::warmest_h, warmest_h);
  return checked({.swing = DailySwing{mean_c, half_range_k, warmest_h}});
}

Surroundings Surroundings::dough(double dough_c) {
  require(field::dough_c, dough_c);
  return checked({.temperature_c = dough_c, .is_dough = true});
}

Surroundings Surroundings::dough_measured(std::vector<double> time_h, std::vector<double> temperature_c) {
  return checked({.course = Course{std::move(time_h), std::move(temperature_c)}, .is_dough = true});
}

Surroundings Surroundings::sequence(std::vector<std::pair<double, Surroundings>> parts) {
  Surroundings all;
  for (auto& [from_h, part] : parts) {
    require(field::start_h, from_h);
    for (Place& place : part.places) {
      place.from_h = std::max(begins_h(place), from_h);
      all.places.push_back(std::move(place));
    }
  }
  require(all);
  return all;
}

const Place& place_at(const Surroundings& surroundings, double time_h) {
  if (surroundings.places.empty()) require(surroundings);
  require_hour(time_h);
  const auto next = next_place(surroundings, time_h);
  return next == surroundings.places.begin() ? *next : *(next - 1);
}

double next_place_h(const Surroundings& surroundings, double time_h) {
  const auto next = next_place(surroundings, time_h);
  return next == surroundings.places.end() ? std::numeric_limits<double>::infinity() : begins_h(*next);
}

double temperature_at(const Place& place, double time_h) {
  require_hour(time_h);
  if (place.temperature_c) return *place.temperature_c;
  if (place.course) return along(*place.course, time_h);
  if (!place.swing) require(place);
  const DailySwing& swing = *place.swing;
  constexpr double per_hour = 2 * 3.14159265358979323846 / 24;
  return swing.mean_c + swing.half_range_k * std::cos(per_hour * (time_h - swing.warmest_h));
}

template <>
const Names& names_of<Air>() {
  static constexpr std::string_view list[] = {"room", "refrigerator", "fan_refrigerator", "proof_box",
                                              "humid_proof_box"};
  static constexpr Names names{"air", "air", list};
  return names;
}

template <>
const Form& form_of<DailySwing>() {
  static const Form form = made_form<DailySwing>(
      "DailySwing", "A temperature that swings over the day: mean_c + half_range_k·cos(2π(t − warmest_h)/24 h).",
      {.mean_c = 0, .half_range_k = 0},
      {row<&DailySwing::mean_c>(mean_c), row<&DailySwing::half_range_k>(field::half_range_k),
       row<&DailySwing::warmest_h>(field::warmest_h)});
  return form;
}

template <>
const Form& form_of<Course>() {
  static const Form form =
      made_form<Course>("Course",
                        "Measured temperatures, straight lines between; before the first and after the last as there.",
                        {},
                        {must_be_given(row<&Course::time_h>("time_h", field::start_h)),
                         must_be_given(row<&Course::temperature_c>(reading_c))},
                        contradictions);
  return form;
}

template <>
const Form& form_of<Place>() {
  static const Form form = [] {
    Form form = made_form<Place>(
        "Place", "One place of the surroundings. Its temperature is steady, swings over the day or was measured.", {},
        {row<&Place::temperature_c>(steady_c), row<&Place::swing>("swing", "one that swings over the day"),
         row<&Place::course>("course", "a measured one"), row<&Place::from_h>("from_h", field::start_h),
         row<&Place::air>("air", "how the air moves heat"), row<&Place::humidity_percent>(field::humidity_percent),
         row<&Place::heat_transfer_w_per_m2_k>(field::heat_transfer_w_per_m2_k),
         row<&Place::is_dough>("is_dough", "the temperature is the dough's own")},
        contradictions);
    form.one_of = {{"temperature_c", "swing", "course"}};
    return form;
  }();
  return form;
}

template <>
const Form& form_of<Surroundings>() {
  static const Form form = made_form<Surroundings>(
      "Surroundings",
      "What the dough sits in over the day: a function of the process's hours, which never restarts with a stage.", {},
      {must_be_given(row<&Surroundings::places>("places", "in the order of time"))}, contradictions);
  return form;
}

}  // namespace ferment
