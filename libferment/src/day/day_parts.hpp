// What the rooms of a day share.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include <ferment/base/error.hpp>
#include <ferment/day/day.hpp>

namespace ferment {

inline constexpr double assumed_flour_g = 500;  ///< where the day does not say: percentages need none

/// An amount that a day gives in percent or in grams.
struct Amount {
  std::optional<double> DayDough::*percent;
  std::optional<double> DayDough::*grams;
  double PercentFormula::*in_formula;
  std::string_view percent_name, grams_name;
};
inline constexpr std::array day_amounts{
    Amount{&DayDough::water_percent, &DayDough::water_g, &PercentFormula::water_percent, "water_percent", "water_g"},
    Amount{&DayDough::salt_percent, &DayDough::salt_g, &PercentFormula::salt_percent, "salt_percent", "salt_g"},
    Amount{&DayDough::sugar_percent, &DayDough::sugar_g, &PercentFormula::sugar_percent, "sugar_percent", "sugar_g"},
    Amount{&DayDough::gluten_percent, &DayDough::gluten_g, &PercentFormula::gluten_percent, "gluten_percent",
           "gluten_g"},
    Amount{&DayDough::milk_percent, &DayDough::milk_g, &PercentFormula::milk_percent, "milk_percent", "milk_g"},
    Amount{&DayDough::egg_percent, &DayDough::egg_g, &PercentFormula::egg_percent, "egg_percent", "egg_g"},
    Amount{&DayDough::butter_percent, &DayDough::butter_g, &PercentFormula::butter_percent, "butter_percent",
           "butter_g"},
    Amount{&DayDough::oil_percent, &DayDough::oil_g, &PercentFormula::oil_percent, "oil_percent", "oil_g"}};

/// How many temperatures and logs a place has.
int temperatures_of(const DayPlace& place);

/// Whether the day says how much flour there is.
bool knows_flour(const Day& day);

/// The way of mixing, by hand if the day says none.
std::string method_of(const Day& day);

/// Throws the error again, at the day's way to what is wrong.
[[noreturn]] void throw_at(const std::string& path, const Error& error);

/// The way in a day to what its process says at a path: "stage[1].folds_h" of "steps[2].folds_h".
std::string path_of_step(const std::string& path);

/// The same, and "seen[1].at" of what its log says of "seen[2].time_h".
std::string path_of_look(const Day& day, const std::string& path);

}  // namespace ferment
