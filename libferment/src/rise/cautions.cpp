#include <ferment/rise/cautions.hpp>

#include <algorithm>
#include <cmath>

#include <ferment/clock/temperature_law.hpp>
#include <ferment/dough/ingredient.hpp>
#include <ferment/rise/rise.hpp>

#include "base/text.hpp"
#include "clock/line.hpp"
#include "dough/parts.hpp"
#include "rise/cautions_checked.hpp"

namespace ferment {
namespace {

// Common practice, no source, unless said otherwise; see the model's cautions.
constexpr double kills_yeast_c = 60;
constexpr double scalds_c = 55;
constexpr double hot_for_yeast_c = 50;
constexpr double warm_for_yeast_c = 45;
constexpr double cold_for_instant_c = 10;
constexpr double yeast_very_low_percent = 0.05;  // as instant: wild flora and growth decide
constexpr double yeast_very_high_percent = 3.5;  // as instant; the sweetest doughs have 3: grams, perhaps
constexpr double sugar_high_percent = 10;        // osmotolerant yeast is the trade's choice
constexpr double sugar_very_high_percent = 20;   // beyond what was measured
constexpr double fat_high_percent = 10;
constexpr double refrigerator_warm_c = 5;
constexpr double perishable_low_c = 5;  // time/temperature control for safety, as in many food codes
constexpr double perishable_high_c = 60;
constexpr double perishable_most_h = 4;
constexpr double dough_cold_c = 5;   // rates below 10 °C are the least known, below 5 °C hardly measured
constexpr double dough_warm_c = 38;  // near the optimum the clock's own uncertainty is largest

class Notices {
 public:
  void add(const char* code, Severity severity, const Field& field, double value, const std::string& text) {
    list.push_back({code, severity, {{std::string(field.name), value}}, text});
  }
  std::vector<Notice> list;
};

void caution_water(const PlainNumbers& p, Notices& notices) {
  if (!p.water_c) return;
  const double water = *p.water_c;
  Field any = field::water_c;  // a planned water may be impossible: that is what the notice is for
  any.low = -1e9;
  any.high = 1e9;
  require(any, water);
  const std::string text = "water at " + degrees(water) + " ";
  if (water > kills_yeast_c) {
    notices.add("water_kills_yeast", Severity::warning, field::water_c, water,
                text + "kills yeast; do not use it: warm the flour or the room instead");
  } else if (water > hot_for_yeast_c) {
    notices.add("water_hot_for_yeast", Severity::warning, field::water_c, water,
                text + "harms yeast within minutes; keep the yeast away from it until it is mixed with the flour");
  } else if (water > warm_for_yeast_c) {
    notices.add("water_warm_for_yeast", Severity::caution, field::water_c, water,
                text + "is too warm to wet yeast in; above 45 °C only briefly, never above 50 °C");
  }
  if (water > scalds_c) {
    notices.add("water_scalds", Severity::warning, field::water_c, water,
                text + "can scald skin; pour with care and keep children away");
  }
  if (water < 0) {
    notices.add("water_below_freezing", Severity::warning, field::water_c, water,
                text + "does not exist as water; cool the flour or the room, or use ice and check the dough");
  } else if (water < cold_for_instant_c && p.yeast == Yeast::instant) {
    notices.add("water_cold_for_instant", Severity::caution, field::water_c, water,
                text + "damages instant yeast that is wetted in it; mix the yeast into the flour first");
  }
}

void caution_dough(const PlainNumbers& p, const Kitchen& kitchen, Notices& notices) {
  if (!p.dough_c) return;
  require(field::dough_c, *p.dough_c);
  if (auto notice = law_notice(law_of_checked(kitchen), *p.dough_c)) notices.list.push_back(*std::move(notice));
  if (*p.dough_c < dough_cold_c) {
    notices.add("dough_cold", Severity::caution, field::dough_c, *p.dough_c,
                "dough at " + degrees(*p.dough_c) +
                    " hardly rises, and how slowly is little known; count in days and look often");
  }
  if (*p.dough_c > dough_warm_c) {
    notices.add("dough_warm", Severity::caution, field::dough_c, *p.dough_c,
                "dough at " + degrees(*p.dough_c) +
                    " is near the yeast's optimum, where strains differ most; look early");
  }
}

void caution_formula(const PlainNumbers& p, Notices& notices) {
  if (p.yeast_percent) {
    require_yeast(*p.yeast_percent, p.yeast);
    const double instant = convert_yeast(*p.yeast_percent, p.yeast, Yeast::instant);
    if (instant < yeast_very_low_percent) {
      notices.add("yeast_very_low", Severity::caution, field::instant_equivalent_percent, instant,
                  "yeast worth " + number(instant, 3) +
                      " % instant is so little that growth and the flour's own flora decide; times are rough");
    }
    if (instant > yeast_very_high_percent) {
      notices.add("yeast_very_high", Severity::caution, field::instant_equivalent_percent, instant,
                  "yeast worth " + number(instant, 3) +
                      " % instant is more than any dough has; was it grams? Percent are of the flour's weight");
    }
  }
  if (p.salt_percent) require(field::salt_percent, *p.salt_percent);
  if (p.water_percent) require(field::water_percent, *p.water_percent);
  if (p.gluten_percent) require(field::gluten_percent, *p.gluten_percent);
  if (p.altitude_m) require(field::altitude_m, *p.altitude_m);
  if (!p.sugar_percent) return;
  require(field::sugar_percent, *p.sugar_percent);
  if (*p.sugar_percent > sugar_high_percent) {
    notices.add(
        "sugar_high", Severity::caution, field::sugar_percent, *p.sugar_percent,
        number(*p.sugar_percent, 4) +
            " % sugar slows ordinary yeast; the trade uses an osmotolerant yeast, which is faster than these times");
  }
  if (*p.sugar_percent > sugar_very_high_percent) {
    notices.add("sugar_very_high", Severity::caution, field::sugar_percent, *p.sugar_percent,
                "with more than " + number(sugar_very_high_percent) +
                    " % sugar it is hardly known how much slower a dough is: perhaps by two thirds more or less; look "
                    "early");
  }
}

void caution_rise(const PlainNumbers& p, const Kitchen& kitchen, Notices& notices) {
  if (!p.rise_percent) return;
  require(field::rise_percent, *p.rise_percent);
  Dough dough{.dough_c = 25, .yeast_percent = 1};  // of it only the gluten counts here
  dough.gluten_percent = p.gluten_percent.value_or(dough.gluten_percent);
  const double limit = 100 * (over_proof_ratio(dough, Standing::tin, false, 1, kitchen) - 1);
  if (*p.rise_percent > limit) {
    notices.add("rise_over_proofed", Severity::caution, field::rise_percent, *p.rise_percent,
                "a rise of " + number(*p.rise_percent, 4) + " % is over-proofed: above " + number(limit, 4) +
                    " % even a tub does not support the dough (common practice)");
  }
}

void caution_safety(const PlainNumbers& p, Notices& notices) {
  if (p.perishable_h) {
    require(field::perishable_h, *p.perishable_h);
    const bool warm = !p.dough_c || (*p.dough_c > perishable_low_c && *p.dough_c < perishable_high_c);
    if (warm && *p.perishable_h > perishable_most_h) {
      notices.add("perishable_held", Severity::warning, field::perishable_h, *p.perishable_h,
                  "a dough with egg, milk or other perishable food held for " + number(*p.perishable_h, 4) +
                      " h between 5 °C and 60 °C needs time and temperature control for safety; keep below 4 h and "
                      "follow the local food code");
    }
  }
  if (p.refrigerator_c) {
    require(field::refrigerator_c, *p.refrigerator_c);
    if (*p.refrigerator_c > refrigerator_warm_c) {
      notices.add("refrigerator_warm", Severity::caution, field::refrigerator_c, *p.refrigerator_c,
                  "a refrigerator at " + degrees(*p.refrigerator_c) +
                      " is above 5 °C: the dough goes on rising faster than planned and food does not keep");
    }
  }
}

std::vector<Notice> notices_of(const PlainNumbers& numbers, const Kitchen& kitchen) {
  name_of(numbers.yeast);
  Notices notices;
  caution_water(numbers, notices);
  caution_safety(numbers, notices);
  caution_dough(numbers, kitchen, notices);
  caution_formula(numbers, notices);
  caution_rise(numbers, kitchen, notices);
  std::stable_sort(notices.list.begin(), notices.list.end(),
                   [](const Notice& a, const Notice& b) { return a.severity > b.severity; });
  return notices.list;
}

}  // namespace

std::vector<Notice> cautions(const PlainNumbers& numbers, const Kitchen& kitchen) {
  require_parameters(kitchen);
  return notices_of(numbers, kitchen);
}

std::vector<Notice> cautions_checked(const PlainNumbers& numbers) {
  static const Kitchen standard;
  return notices_of(numbers, standard);
}

std::vector<Notice> cautions_checked(const Formula& formula, double flour_g) {
  double fat_g = 0;
  for (const Part& part : parts()) fat_g += formula.*part.grams * ingredient_named(part.ingredient).composition.fat;
  const double fat_percent = 100 * fat_g / flour_g;
  if (!(fat_percent > fat_high_percent)) return {};
  return {{"fat_high",
           Severity::caution,
           {{"fat_percent", fat_percent}},
           number(fat_percent, 3) +
               " % fat slows a rise, a final proof by up to a half, and is not counted: expect to wait longer"}};
}

}  // namespace ferment
