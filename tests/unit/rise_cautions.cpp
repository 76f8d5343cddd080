#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <string>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/rise/cautions.hpp>
#include <ferment/rise/rise.hpp>

#include "box.hpp"

using namespace ferment;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
double just_above(double x) { return std::nextafter(x, infinity); }
double just_below(double x) { return std::nextafter(x, -infinity); }

const Notice* find(const std::vector<Notice>& notices, const std::string& code) {
  const auto found = std::find_if(notices.begin(), notices.end(), [&](const Notice& n) { return n.code == code; });
  return found == notices.end() ? nullptr : &*found;
}

struct Edge {
  const char* code;
  Severity severity;
  PlainNumbers with;     ///< just inside: the notice is there
  PlainNumbers without;  ///< just outside: it is not
  Kitchen kitchen = {};
};

Kitchen with_law_named(Law law) {
  Kitchen kitchen;
  kitchen.law = law;
  return kitchen;
}

std::vector<Edge> edges() {
  const Severity warning = Severity::warning;
  const Severity caution = Severity::caution;
  const double over_proofed = 100 * (over_proof_ratio({.dough_c = 25, .yeast_percent = 1}, Standing::tin, false) - 1);
  const double over_proofed_strong =
      100 * (over_proof_ratio({.dough_c = 25, .yeast_percent = 1, .gluten_percent = 4}, Standing::tin, false) - 1);
  // The limit of 0.05 % as instant yeast in each kind; a trillionth aside, because the conversion rounds.
  const auto little = [](Yeast yeast, double sign) {
    return PlainNumbers{.yeast_percent = 0.05 * box::per_instant(yeast) * (1 + sign * 1e-12), .yeast = yeast};
  };
  return {
      {"water_kills_yeast", warning, {.water_c = just_above(60)}, {.water_c = 60}},
      {"water_hot_for_yeast", warning, {.water_c = just_above(50)}, {.water_c = 50}},
      {"water_hot_for_yeast", warning, {.water_c = 60}, {.water_c = just_above(60)}},
      {"water_warm_for_yeast", caution, {.water_c = just_above(45)}, {.water_c = 45}},
      {"water_warm_for_yeast", caution, {.water_c = 50}, {.water_c = just_above(50)}},
      {"water_scalds", warning, {.water_c = just_above(55)}, {.water_c = 55}},
      {"water_scalds", warning, {.water_c = 205}, {.water_c = 40}},
      {"water_below_freezing", warning, {.water_c = just_below(0)}, {.water_c = 0}},
      {"water_cold_for_instant", caution, {.water_c = just_below(10)}, {.water_c = 10}},
      {"water_cold_for_instant",
       caution,
       {.yeast = Yeast::instant, .water_c = 0},
       {.yeast = Yeast::compressed, .water_c = 0}},
      {"law_outside_range", caution, {.dough_c = just_below(15)}, {.dough_c = 15}, with_law_named(Law::constant_q10)},
      {"law_outside_range", caution, {.dough_c = just_above(32)}, {.dough_c = 32}, with_law_named(Law::constant_q10)},
      {"law_outside_range", caution, {.dough_c = just_below(18)}, {.dough_c = 18}, with_law_named(Law::arrhenius)},
      {"law_outside_range", caution, {.dough_c = just_above(32)}, {.dough_c = 32}, with_law_named(Law::arrhenius)},
      {"yeast_very_low", caution, little(Yeast::instant, -1), little(Yeast::instant, 1)},
      {"yeast_very_low", caution, little(Yeast::active_dry, -1), little(Yeast::active_dry, 1)},
      {"yeast_very_low", caution, little(Yeast::active_dry_unwetted, -1), little(Yeast::active_dry_unwetted, 1)},
      {"yeast_very_low", caution, little(Yeast::compressed, -1), little(Yeast::compressed, 1)},
      {"yeast_very_low", caution, {.yeast_percent = just_below(0.05)}, {.yeast_percent = 0.05}},
      {"sugar_high", caution, {.sugar_percent = just_above(10)}, {.sugar_percent = 10}},
      {"rise_over_proofed", caution, {.rise_percent = just_above(over_proofed)}, {.rise_percent = over_proofed}},
      {"rise_over_proofed",
       caution,
       {.gluten_percent = 4, .rise_percent = just_above(over_proofed_strong)},
       {.gluten_percent = 4, .rise_percent = over_proofed_strong}},
      {"perishable_held", warning, {.dough_c = 25, .perishable_h = just_above(4)}, {.dough_c = 25, .perishable_h = 4}},
      {"perishable_held", warning, {.dough_c = just_above(5), .perishable_h = 5}, {.dough_c = 5, .perishable_h = 5}},
      {"perishable_held", warning, {.perishable_h = 5}, {.perishable_h = 3}},
      {"refrigerator_warm", caution, {.refrigerator_c = just_above(5)}, {.refrigerator_c = 5}},
      {"dough_cold", caution, {.dough_c = just_below(5)}, {.dough_c = 5}},
      {"dough_warm", caution, {.dough_c = just_above(38)}, {.dough_c = 38}},
  };
}

}  // namespace

TEST_CASE("each notice just inside and just outside its limit") {
  std::set<std::string> codes;
  for (const Edge& edge : edges()) {
    INFO(std::string(edge.code));
    const std::vector<Notice> with = cautions(edge.with, edge.kitchen);
    const Notice* notice = find(with, edge.code);
    REQUIRE(notice != nullptr);
    CHECK(notice->severity == edge.severity);
    CHECK_FALSE(notice->text.empty());
    REQUIRE_FALSE(notice->values.empty());
    for (const auto& [name, value] : notice->values) {
      CHECK_FALSE(name.empty());
      CHECK(std::isfinite(value));
    }
    CHECK(find(cautions(edge.without, edge.kitchen), edge.code) == nullptr);
    codes.insert(edge.code);
  }
  CHECK(codes == std::set<std::string>{"water_kills_yeast", "water_scalds", "water_hot_for_yeast",
                                       "water_warm_for_yeast", "water_below_freezing", "water_cold_for_instant",
                                       "law_outside_range", "yeast_very_low", "sugar_high", "rise_over_proofed",
                                       "perishable_held", "refrigerator_warm", "dough_cold", "dough_warm"});
}

TEST_CASE("an ordinary dough gets no notice, nor does an empty plan") {
  CHECK(cautions({}).empty());
  CHECK(cautions({.dough_c = 25,
                  .yeast_percent = 0.6,
                  .salt_percent = 2,
                  .water_percent = 68,
                  .sugar_percent = 3,
                  .gluten_percent = 0,
                  .altitude_m = 300,
                  .rise_percent = 100,
                  .water_c = 30,
                  .refrigerator_c = 4,
                  .perishable_h = 2})
            .empty());
}

TEST_CASE("the most severe notices come first") {
  const std::vector<Notice> notices = cautions({.dough_c = 40,
                                                .yeast_percent = 0.02,
                                                .sugar_percent = 20,
                                                .rise_percent = 400,
                                                .water_c = 70,
                                                .refrigerator_c = 9,
                                                .perishable_h = 10});
  CHECK(notices.size() == 8);
  CHECK(std::is_sorted(notices.begin(), notices.end(),
                       [](const Notice& a, const Notice& b) { return a.severity > b.severity; }));
  CHECK(notices.front().severity == Severity::warning);
  CHECK(notices.back().severity == Severity::caution);
}

TEST_CASE("a planned water may be impossible, but must be a number") {
  for (const double water : {-300.0, -1.0, 0.0, 205.0, 1e9, -1e9}) CHECK_NOTHROW(cautions({.water_c = water}));
  for (const double bad : {std::numeric_limits<double>::quiet_NaN(), infinity, -infinity})
    CHECK_THROWS_AS(cautions({.water_c = bad}), InvalidInput);
}

TEST_CASE("numbers outside the field table are refused") {
  CHECK_THROWS_AS(cautions({.yeast_percent = 0.001}), InvalidInput);
  CHECK_THROWS_AS(cautions({.yeast_percent = 6}), InvalidInput);
  CHECK_NOTHROW(cautions({.yeast_percent = 6, .yeast = Yeast::compressed}));
  CHECK_THROWS_AS(cautions({.yeast_percent = 1, .yeast = static_cast<Yeast>(17)}), InvalidInput);
  CHECK_THROWS_AS(cautions({.yeast = static_cast<Yeast>(17)}), InvalidInput);
  Kitchen kitchen;
  kitchen.q10 = -1;
  CHECK_THROWS_AS(cautions({}, kitchen), InvalidInput);
}
