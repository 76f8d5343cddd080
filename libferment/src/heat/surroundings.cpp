#include <ferment/heat/surroundings.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/heat/piece.hpp>

#include "base/named.hpp"
#include "base/text.hpp"

namespace ferment {
namespace {

constexpr std::array rows{
    AirRow{"room", 8, 3.2, "computed, still air and radiation: 6.5 to 10 (Incropera's correlations, from memory)"},
    AirRow{"refrigerator", 7, 2.5,
           "computed, still air and radiation: 5 to 9; convection 1.3 to 2.8 (Energies 2025, 18:6280)"},
    AirRow{"fan_refrigerator", 12, 7,
           "computed, 0.3 to 0.5 m/s and radiation: 9 to 18 (Whitaker's correlation, from memory)"},
    AirRow{"proof_box", 12, 6.5, "as a refrigerator with a fan"},
};

const Field& field_of(const Place& place) {
  if (place.is_dough) return field::dough_c;
  switch (place.air) {
    case Air::room: return field::room_c;
    case Air::refrigerator:
    case Air::fan_refrigerator: return field::refrigerator_c;
    case Air::proof_box: break;
  }
  return field::proof_box_c;
}

void require_course(const Field& field, const Course& course) {
  const std::size_t n = course.time_h.size();
  if (n < 2 || course.temperature_c.size() != n) {
    throw InvalidInput("a measured temperature needs at least two readings, a time and a temperature for each; got " +
                           std::to_string(n) + " times and " + std::to_string(course.temperature_c.size()) +
                           " temperatures",
                       {.path = "time_h"});
  }
  require(field, course.temperature_c);
  for (std::size_t i = 0; i < n; ++i) {
    require(field::start_h, course.time_h[i]);
    if (i == 0 || course.time_h[i] > course.time_h[i - 1]) continue;
    throw InvalidInput("time goes from " + number(course.time_h[i - 1]) + " h to " + number(course.time_h[i]) +
                           " h at reading " + std::to_string(i + 1) + " of " + std::to_string(n),
                       {.path = "time_h", .value = course.time_h[i], .index = i, .advice = "the times must rise"});
  }
}

void require_place(const Place& place) {
  row_of(place.air);
  const Field& field = field_of(place);
  if (const auto* steady = std::get_if<double>(&place.temperature_c)) require(field, *steady);
  if (const auto* course = std::get_if<Course>(&place.temperature_c)) require_course(field, *course);
  if (const auto* swing = std::get_if<DailySwing>(&place.temperature_c)) {
    if (place.is_dough) {
      throw InvalidInput("a dough's own temperature is a number or a measured one, not a daily swing",
                         {.path = "surroundings"});
    }
    require(field, swing->mean_c);
    require(field::half_range_k, swing->half_range_k);
    require(field::warmest_h, swing->warmest_h);
    require(field, Values(swing->mean_c - swing->half_range_k));
    require(field, Values(swing->mean_c + swing->half_range_k));
  }
  if (place.humidity_percent) require(field::humidity_percent, *place.humidity_percent);
  if (place.heat_transfer_w_per_m2_k) require(field::heat_transfer_w_per_m2_k, *place.heat_transfer_w_per_m2_k);
}

Surroundings checked(Place place) {
  require_place(place);
  return {{std::move(place)}};
}

double along(const Course& course, double time_h) {
  const auto& times = course.time_h;
  if (times.empty() || course.temperature_c.size() != times.size()) require_course(field::temperature_c, course);
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
                          [](double hour, const Place& place) { return hour < place.from_h; });
}

}  // namespace

std::span<const AirRow> airs() { return rows; }

const AirRow& row_of(Air air) {
  const auto i = static_cast<std::size_t>(air);
  if (i < rows.size()) return rows[i];
  throw InvalidInput("air " + std::to_string(static_cast<int>(air)) + " is unknown",
                     {.path = "air", .advice = "known: 0 to 3"});
}

std::string_view name_of(Air air) { return row_of(air).name; }

Air air_named(std::string_view name) { return static_cast<Air>(&row_named(rows, name, "air", "air") - rows.data()); }

Surroundings Surroundings::room(double room_c) { return checked({.temperature_c = room_c}); }

Surroundings Surroundings::refrigerator(double air_c, bool fan) {
  return checked({.temperature_c = air_c, .air = fan ? Air::fan_refrigerator : Air::refrigerator});
}

Surroundings Surroundings::proof_box(double air_c, std::optional<double> humidity_percent) {
  return checked({.temperature_c = air_c, .air = Air::proof_box, .humidity_percent = humidity_percent});
}

Surroundings Surroundings::measured(std::vector<double> time_h, std::vector<double> temperature_c) {
  return checked({.temperature_c = Course{std::move(time_h), std::move(temperature_c)}});
}

Surroundings Surroundings::daily_swing(double mean_c, double half_range_k, double warmest_h) {
  return checked({.temperature_c = DailySwing{mean_c, half_range_k, warmest_h}});
}

Surroundings Surroundings::dough(double dough_c) { return checked({.temperature_c = dough_c, .is_dough = true}); }

Surroundings Surroundings::dough_measured(std::vector<double> time_h, std::vector<double> temperature_c) {
  return checked({.temperature_c = Course{std::move(time_h), std::move(temperature_c)}, .is_dough = true});
}

Surroundings Surroundings::sequence(std::vector<std::pair<double, Surroundings>> parts) {
  Surroundings all;
  for (auto& [from_h, part] : parts) {
    require(field::start_h, from_h);
    for (Place& place : part.places) {
      place.from_h = std::max(place.from_h, from_h);
      all.places.push_back(std::move(place));
    }
  }
  require_surroundings(all);
  return all;
}

void require_surroundings(const Surroundings& surroundings) {
  if (surroundings.places.empty())
    throw InvalidInput("surroundings have no place",
                       {.path = "surroundings", .advice = "give a room, a refrigerator or another"});
  double last_h = -std::numeric_limits<double>::infinity();
  for (const Place& place : surroundings.places) {
    require_place(place);
    if (!(place.from_h >= last_h)) {
      throw InvalidInput(
          "a place begins at " + number(place.from_h) + " h, after one that begins at " + number(last_h) + " h",
          {.path = "surroundings", .value = place.from_h, .low = last_h, .advice = "give them in the order of time"});
    }
    last_h = place.from_h;
  }
}

const Place& place_at(const Surroundings& surroundings, double time_h) {
  if (surroundings.places.empty()) require_surroundings(surroundings);
  require_hour(time_h);
  const auto next = next_place(surroundings, time_h);
  return next == surroundings.places.begin() ? *next : *(next - 1);
}

double next_place_h(const Surroundings& surroundings, double time_h) {
  const auto next = next_place(surroundings, time_h);
  return next == surroundings.places.end() ? std::numeric_limits<double>::infinity() : next->from_h;
}

double temperature_at(const Place& place, double time_h) {
  require_hour(time_h);
  if (const auto* steady = std::get_if<double>(&place.temperature_c)) return *steady;
  if (const auto* course = std::get_if<Course>(&place.temperature_c)) return along(*course, time_h);
  const auto& swing = std::get<DailySwing>(place.temperature_c);
  constexpr double per_hour = 2 * 3.14159265358979323846 / 24;
  return swing.mean_c + swing.half_range_k * std::cos(per_hour * (time_h - swing.warmest_h));
}

}  // namespace ferment
