#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/dough/ingredient.hpp>
#include <ferment/heat/properties.hpp>
#include <ferment/mix/factor_rule.hpp>
#include <ferment/mix/ice.hpp>
#include <ferment/mix/net_gain.hpp>
#include <ferment/mix/water_plan.hpp>

#include "box.hpp"

using namespace ferment;

namespace {

/// Any mix a kitchen may see, often with several of what there may be several of.
Mix any_mix(box::Numbers& n) {
  const double flour_g = n.between(300, 1500);
  Mix mix{.formula = {.flour_g = flour_g, .water_g = n.between(0.45, 0.7) * flour_g, .salt_g = 0.02 * flour_g},
          .room_c = n.between(5, 35)};
  Formula& f = mix.formula;

  if (n.unit() < 0.5)
    f.flours = {{n.between(10, 300), "whole_wheat", std::nullopt, n.between(-18, 25)},
                {n.between(10, 300), "medium_rye", 14.5}};
  double all_flour_g = flour_g;
  for (const Flour& flour : f.flours) all_flour_g += flour.mass_g;
  f.water_g = n.between(0.5, 0.7) * all_flour_g;
  f.instant_g = n.between(0.0005, 0.02) * all_flour_g;
  if (n.unit() < 0.5)
    f.waters = {{n.between(10, 60), n.between(30, 45), true, n.between(0, 1)}, {n.between(5, 20), n.between(0, 60)}};
  if (n.unit() < 0.5) f.preferments = {{n.between(20, 200), n.between(20, 150), n.between(2, 30)}};
  if (n.unit() < 0.5) {
    f.milk_g = n.between(0, 60), f.egg_g = n.between(0, 60), f.butter_g = n.between(0, 100), f.oil_g = n.between(0, 30);
    f.sugar_g = n.between(0, 60), f.gluten_g = n.between(0, 20);
    mix.formula.milk_c = n.between(4, 30), mix.formula.egg_c = n.between(4, 25),
    mix.formula.butter_c = n.between(4, 25);
  }
  if (n.unit() < 0.7) mix.formula.flour_c = n.between(5, 35);
  if (n.unit() < 0.7) mix.tap_c = n.between(3, 30);
  if (n.unit() < 0.7)
    mix.bowl = {n.unit() < 0.5 ? "steel" : "ceramic", n.between(300, 2500), n.between(5, 35), n.between(0.6, 1)};
  if (n.unit() < 0.5) mix.rest_h = n.between(0.1, 2);
  mix.formula.ice_c = n.between(-20, 0);
  mix.heat_of_solution = n.unit() < 0.7;
  const double kind = n.unit();
  if (kind < 0.3) {
    mix.mixing = ByMethod{std::string(mixing_methods()[n.index(mixing_methods().size())].name)};
  } else if (kind < 0.6) {
    mix.mixing = ByWork{n.between(0, 20)};
  } else if (kind < 0.9) {
    mix.mixing = ByNetGain{n.between(-3, 15)};
  }
  return mix;
}

/// The simplest mix of the balance: flour, water, salt, all heat sources off.
Mix plain_mix() {
  return {.formula = {.flour_g = 1000, .water_g = 650, .salt_g = 20},
          .room_c = 21,
          .mixing = ByWork{0, 0.0},
          .heat_of_solution = false};
}

double share_of(const WaterPlan& plan, const std::string& name) {
  double sum = 0;
  for (const HeatShare& share : plan.shares) sum += share.name == name ? share.dough_k_per_k : 0;
  return sum;
}

std::string text_of(const auto& call) {
  try {
    call();
  } catch (const Error& error) {
    return error.what();
  }
  FAIL("accepted");
  return "";
}

bool has(const WaterPlan& plan, const std::string& code) {
  return std::any_of(plan.notices.begin(), plan.notices.end(),
                     [&](const Notice& notice) { return notice.code == code; });
}

}  // namespace

TEST_CASE("forward with the planned water and ice gives the wanted dough, to 1e-9 K") {
  box::Numbers n(601);
  int with_ice = 0, planned = 0;
  double worst = 0;
  for (int i = 0; i < 20000; ++i) {
    const Mix mix = any_mix(n);
    const double desired = n.between(12, 32);
    WaterPlan plan;
    try {
      plan = water_by_heat_balance(mix, desired);
    } catch (const NoSolution&) {
      continue;
    }
    ++planned;
    with_ice += plan.ice_g > 0;
    worst = std::max(worst, std::abs(dough_by_heat_balance(with_water(mix, plan)) - desired));
    CHECK(plan.pour_g + plan.ice_g == doctest::Approx(mix.formula.water_g).epsilon(1e-14));
    CHECK(plan.low_c <= desired);
    CHECK(plan.high_c >= desired);
    // A plan of a mix that was planned before is the same plan.
    const WaterPlan again = water_by_heat_balance(with_water(mix, plan), desired);
    CHECK(again.water_c == doctest::Approx(plan.water_c).epsilon(1e-12));
    CHECK(again.ice_g == doctest::Approx(plan.ice_g).epsilon(1e-12));
    double weights = 0;
    for (const HeatShare& share : plan.shares) weights += share.dough_k_per_k;
    CHECK(weights == doctest::Approx(1).epsilon(1e-13));
  }
  MESSAGE("planned ", planned, ", with ice ", with_ice, ", worst ", worst, " K");
  CHECK(planned > 12000);
  CHECK(with_ice > 1500);
  CHECK(worst < 1e-9);
}

TEST_CASE("a plan is refused exactly where its error says it is, and the ends of the range are reachable") {
  box::Numbers n(602);
  int refused = 0, ranges = 0;
  for (int i = 0; i < 3000; ++i) {
    const Mix mix = any_mix(n);
    try {
      water_by_heat_balance(mix, n.between(0, 45));
    } catch (const NoSolution& error) {
      ++refused;
      if (!error.detail().low) {
        CHECK(std::string(error.what()).find("no water makes a dough of 0 °C to 45 °C here") != std::string::npos);
        continue;
      }
      REQUIRE(error.detail().high);
      const double low = *error.detail().low, high = *error.detail().high, value = *error.detail().value;
      CHECK((value < low || value > high));
      ++ranges;
      const double inside = 1e-9 * (high - low) + 1e-12;
      for (const double reachable : {low + inside, (low + high) / 2, high - inside}) {
        INFO("dough of ", reachable, " of ", low, " to ", high);
        const WaterPlan plan = water_by_heat_balance(mix, reachable);
        CHECK(std::abs(dough_by_heat_balance(with_water(mix, plan)) - reachable) < 1e-9);
      }
      if (low > 1e-6) CHECK_THROWS_AS(water_by_heat_balance(mix, low - 1e-7), NoSolution);
      if (high < 45 - 1e-6) CHECK_THROWS_AS(water_by_heat_balance(mix, high + 1e-7), NoSolution);
    }
  }
  MESSAGE("refused ", refused);
  CHECK(refused > 500);
  CHECK(ranges > 500);
}

TEST_CASE("energy in is energy out, added up by hand") {
  // 900 g flour of 18 °C (13 % moisture), 60 g yeast's water at 40 °C that stands 0.3 h (one time constant), 200 g
  // preferment, 120 g of milk, a steel bowl, 30 min of rest with 1 W/K to a room of 16 °C, work 6 kJ/kg in no time.
  Mix mix{
      .formula = {.flours = {{900, "bread", 13.0, 18.0}}, .water_g = 500, .salt_g = 18, .milk_g = 120, .instant_g = 4},
      .room_c = 16};
  mix.formula.waters = {{60, 40, true, 0.3, 0.3}};
  mix.formula.preferments = {{100, 100, 8.0}};
  mix.formula.milk_c = 7;
  mix.bowl = {"steel", 1000, 16, 1};
  mix.mixing = ByWork{6, 10.0};
  mix.rest_h = 0.5;
  mix.heat_loss_w_per_k = 1;
  mix.formula.water_c = 33;

  const double c_milk = specific_heat(ingredient_named("milk").composition, 25),
               c_yeast = specific_heat(ingredient_named("dry_yeast").composition, 25);
  // Before the rest: flour, water, milk, bowl, and the heat of hydration of 0.9 kg.
  const double first_c = 0.9 * 1.80 + 0.5 * 4.186 + 0.12 * c_milk + 1 * 0.49;
  const double first = (0.9 * 1.80 * 18 + 0.5 * 4.186 * 33 + 0.12 * c_milk * 7 + 1 * 0.49 * 16 + 0.9 * 10) / first_c;
  const double rested = 16 + (first - 16) * std::exp(-1 * 1800 / (1000 * first_c));
  // Then all else, dissolving salt and the work on everything but the bowl.
  const double portion = 16 + 24 * std::exp(-1.0);
  const double c_preferment = 0.1 * flour_specific_heat(13.36) + 0.1 * 4.186;
  const double second_c = first_c + 0.06 * 4.186 + c_preferment + 0.018 * 0.88 + 0.004 * c_yeast;
  const double dough_kg = 0.9 + 0.5 + 0.12 + 0.06 + 0.2 + 0.018 + 0.004;
  const double second = (first_c * rested + 0.06 * 4.186 * portion + c_preferment * 8 + 0.018 * 0.88 * 16 +
                         0.004 * c_yeast * 16 - 0.018 * 66 + 6 * dough_kg) /
                        second_c;
  CHECK(dough_by_heat_balance(mix) == doctest::Approx(second).epsilon(1e-14));
  const WaterPlan plan = water_by_heat_balance(mix, second);
  CHECK(plan.water_c == doctest::Approx(33).epsilon(1e-12));
  CHECK(plan.wetted_c == doctest::Approx(first).epsilon(1e-12));
  CHECK(plan.rested_c == doctest::Approx(rested).epsilon(1e-12));
}

TEST_CASE("mixing and exchange with the room at once: against many small steps") {
  box::Numbers n(603);
  for (int i = 0; i < 20; ++i) {
    Mix mix = any_mix(n);
    mix.mixing = ByMethod{"spiral", n.between(1, 60)};
    mix.formula.water_c = 25;
    mix.formula.ice_g = 0;
    mix.heat_loss_w_per_k = n.between(0.1, 5);
    const Mix at_rest = [&] {
      Mix m = mix;
      m.mixing = ByWork{0};  // joined, and neither work nor time
      return m;
    }();
    // Capacity from the change of the dough with a known work.
    Mix with_work = at_rest;
    with_work.mixing = ByWork{1};
    const double dough_kg = percent_of(mix.formula).dough_g / 1000;
    const double joined = dough_by_heat_balance(at_rest),
                 capacity = dough_kg / (dough_by_heat_balance(with_work) - joined);
    const ByMethod by = std::get<ByMethod>(*mix.mixing);
    const double work_kj =
        mixing_method_named("spiral").work_kj_per_kg * *by.minutes / mixing_method_named("spiral").usual_min * dough_kg;
    const int steps = 20000;
    const double dt = *by.minutes * 60 / steps;
    double t = joined;
    for (int step = 0; step < steps; ++step) {  // midpoint rule
      const auto slope = [&](double at) {
        return (work_kj / (steps * dt) - *mix.heat_loss_w_per_k / 1000 * (at - *mix.room_c)) / capacity;
      };
      t += dt * slope(t + dt / 2 * slope(t));
    }
    CHECK(dough_by_heat_balance(mix) == doctest::Approx(t).epsilon(1e-9));
  }
}

TEST_CASE("limits: no bowl, no rest, one flour is the simple formula; ice begins at nothing") {
  Mix mix = plain_mix();
  const double c = flour_specific_heat(13.36);
  const WaterPlan plan = water_by_heat_balance(mix, 25);
  CHECK(plan.water_c == doctest::Approx(25 + (1.0 * c * 4 + 0.020 * 0.88 * 4) / (0.650 * 4.186)).epsilon(1e-14));
  // A rest of no time and a bowl of no mass change nothing, bit for bit; very little changes very little.
  Mix same = mix;
  same.bowl = {"ceramic", 0, 80.0};
  same.rest_h = 0;
  CHECK(water_by_heat_balance(same, 25).water_c == plan.water_c);
  same.bowl.mass_g = 1e-6;
  same.rest_h = 1e-9;
  CHECK(water_by_heat_balance(same, 25).water_c == doctest::Approx(plan.water_c).epsilon(1e-8));
  // One flour in two bags.
  Mix two = mix;
  two.formula.flour_g = 0;
  two.formula.flours = {{400}, {600}};
  CHECK(water_by_heat_balance(two, 25).water_c == doctest::Approx(plan.water_c).epsilon(1e-14));

  mix.tap_c = plan.water_c;
  CHECK(water_by_heat_balance(mix, 25).ice_g == 0);
  for (const double above : {1e-9, 1e-6, 1e-3}) {
    mix.tap_c = plan.water_c + above;
    const double ice = water_by_heat_balance(mix, 25).ice_g;
    CHECK(ice > 0);
    CHECK(ice < 10 * above);
    mix.tap_c = plan.water_c - above;
    CHECK(water_by_heat_balance(mix, 25).ice_g == 0);
  }
  CHECK(ice_by_heat_balance(650, 20, 20) == 0);
  // The trade rule is the balance with L/c = 80 °C and wet ice.
  for (const double wanted : {0.0, 5.0, 15.0})
    CHECK(ice_by_trade_rule(1000, 20, wanted) == doctest::Approx(ice_by_heat_balance(1000, 20, wanted)).epsilon(0.005));
  CHECK_THROWS_AS(ice_by_heat_balance(650, 10, 12), NoSolution);
}

TEST_CASE("the rule is right where its friction was found, and the plan says where and why it is not") {
  Mix mix = plain_mix();
  mix.mixing = ByWork{10, 10.0};
  mix.bowl = {.material = "steel", .mass_g = 1200, .contact = 1};
  mix.heat_of_solution = true;
  const WaterPlan home = water_by_heat_balance(mix, 25);
  CHECK(home.difference_k == doctest::Approx(0).epsilon(1e-12));
  CHECK_FALSE(home.friction_given);
  mix.room_c = 10;
  const WaterPlan cold = water_by_heat_balance(mix, 25);
  CHECK(cold.friction_k == doctest::Approx(home.friction_k).epsilon(1e-13));
  CHECK(cold.difference_k > 5);
  CHECK(cold.dough_by_rule_c > 26);
  CHECK(cold.reason.find("too warm") != std::string::npos);
  CHECK(cold.reason.find("the water carries 53 % of the heat") != std::string::npos);
  Mix by_rule = mix;
  by_rule.formula.water_c = cold.factor_rule_c;
  CHECK(dough_by_heat_balance(by_rule) == doctest::Approx(cold.dough_by_rule_c).epsilon(1e-13));
  mix.room_c = 32;
  CHECK(water_by_heat_balance(mix, 25).reason.find("too cold") != std::string::npos);
  // A friction of one's own.
  const WaterPlan own = water_by_heat_balance(mix, 25, 9.0);
  CHECK(own.friction_given);
  CHECK(own.factor_rule_c == 3 * 25 - 32 - 32 - 9);
  // A preferment makes it four factors.
  mix.formula.preferments = {{100, 100, 15.0}};
  CHECK(water_by_heat_balance(mix, 25, 9.0).factor_rule_c == 4 * 25 - 32 - 32 - 15 - 9);
}

TEST_CASE("shares: what a degree of each moves") {
  box::Numbers n(604);
  for (int i = 0; i < 300; ++i) {
    Mix mix = any_mix(n);
    mix.formula.flours.clear();
    mix.formula.water_g = 0.6 * mix.formula.flour_g;
    mix.formula.instant_g = 0.01 * mix.formula.flour_g;
    mix.formula.flour_c = n.between(10, 25);
    mix.formula.water_c = 25;
    const double before = dough_by_heat_balance(mix);
    const WaterPlan plan = water_by_heat_balance(mix, before);
    Mix warmer = mix;
    *warmer.formula.flour_c += 1;
    const double flours = share_of(plan, "bread flour") + share_of(plan, "added gluten");
    CHECK(dough_by_heat_balance(warmer) - before == doctest::Approx(flours).epsilon(1e-10));
    warmer = mix;
    *warmer.formula.water_c += 1;
    CHECK(dough_by_heat_balance(warmer) - before == doctest::Approx(share_of(plan, "main water")).epsilon(1e-10));
    for (const HeatShare& share : plan.shares) {
      if (share.name == "bread flour") {
        Mix colder = mix;
        *colder.formula.flour_c -= 1;
        colder.formula.gluten_g = mix.formula.gluten_g;
        const double moved = water_by_heat_balance(colder, before).water_c - plan.water_c;
        CHECK(moved == doctest::Approx(flours / share_of(plan, "main water")).epsilon(1e-9));
        CHECK(share.water_k_per_k < 0);
      }
    }
  }
}

TEST_CASE("a batch gives the net gain that explains it, friction the gain that the rule means") {
  box::Numbers n(605);
  int returned = 0;
  for (int i = 0; i < 2000; ++i) {
    Mix mix = any_mix(n);
    const double gain = n.between(-5, 20);
    mix.mixing = ByNetGain{.net_gain_kj_per_kg = gain, .minutes = i % 2 ? n.between(0, 20) : 0};
    mix.formula.water_c = n.between(5, 40);
    double dough = 0;
    try {
      dough = dough_by_heat_balance(mix);
    } catch (const OutsideModel&) {
      continue;
    }
    CHECK(net_gain_from_batch(mix, dough) == doctest::Approx(gain).epsilon(1e-9));
    if (std::get<ByNetGain>(*mix.mixing).minutes == 0) {
      mix.mixing = ByWork{99};  // of the mixing only minutes are read
      CHECK(net_gain_from_batch(mix, dough) == doctest::Approx(gain).epsilon(1e-9));
    }
    const double friction = n.between(-5, 20), desired = n.between(20, 30);
    try {
      const double minutes = mix.mixing ? mixing_minutes(*mix.mixing) : 0;
      mix.mixing =
          ByNetGain{.net_gain_kj_per_kg = net_gain_from_friction(mix, friction, desired, 21), .minutes = minutes};
      const double back = water_by_heat_balance(mix, desired).friction_k;
      ++returned;
      CHECK(back == doctest::Approx(friction).epsilon(1e-8));
    } catch (const Error&) {  // a gain or a water that no kitchen has
    }
  }
  CHECK(returned > 1000);
  // With the minutes known, the gain found in a cold kitchen is the gain of a warm one: the loss to the room is apart.
  for (const double room : {8.0, 33.0}) {
    Mix there = plain_mix();
    there.room_c = room;
    there.formula.water_c = 26;
    there.mixing = ByMethod{"spiral", 12};
    there.heat_loss_w_per_k = 2;
    const double found = net_gain_from_batch(there, dough_by_heat_balance(there));
    const double hydration = heat_of_hydration(100 * flour_named("bread").composition.water) * 1.000 / 1.670;
    CHECK(found == doctest::Approx(mixing_method_named("spiral").work_kj_per_kg * 1.2 + hydration).epsilon(1e-12));
  }
  // The textbook example: everything at 21 °C, water 24 °C, dough 27.1 °C, worked by hand to 13.84 kJ/kg with c of
  // flour 1.80.
  Mix batch = plain_mix();
  batch.formula.flour_g = 0;
  batch.formula.flours = {{.mass_g = 1000, .moisture_percent = 13}};
  batch.bowl = {.material = "steel", .mass_g = 1200, .contact = 1};
  batch.formula.water_c = 24;
  CHECK(std::abs(net_gain_from_batch(batch, 27.1) - 13.84) <= 0.005);
}

TEST_CASE("several batches: mean, spread, and the spread of the next") {
  std::vector<Mix> mixes(3, plain_mix());
  for (Mix& mix : mixes) mix.formula.water_c = 24;
  const std::vector<double> doughs{26.0, 26.5, 27.0};
  const BatchMean batches = net_gain_from_batches(mixes, doughs);
  const double low = net_gain_from_batch(mixes[0], 26.0), high = net_gain_from_batch(mixes[0], 27.0);
  CHECK(batches.mean == doctest::Approx((low + high) / 2).epsilon(1e-13));
  REQUIRE(batches.sd);
  CHECK(*batches.sd == doctest::Approx((high - low) / 2).epsilon(1e-12));
  const ByNetGain next = net_gain_of(batches, 8);
  CHECK(next.minutes == 8);
  CHECK(next.net_gain_kj_per_kg == batches.mean);
  // Between the seen spread and the usual one of 1 kJ/kg, which weighs as four batches; many batches tell their own.
  CHECK(next.sd_kj_per_kg ==
        doctest::Approx(std::sqrt((4 + 2 * *batches.sd * *batches.sd) / 6 * (1 + 1.0 / 3))).epsilon(1e-14));
  CHECK(net_gain_of(net_gain_from_batches(std::span(mixes).first(1), std::span(doughs).first(1))).sd_kj_per_kg ==
        doctest::Approx(std::sqrt(2)).epsilon(1e-14));
  std::vector<double> many(10000);
  box::Numbers numbers(607);
  for (double& value : many) value = 8 + 0.5 * (numbers.unit() < 0.5 ? -1 : 1);
  CHECK(net_gain_of(mean_of_batches(many)).sd_kj_per_kg == doctest::Approx(0.5).epsilon(0.01));
  CHECK_THROWS_AS(net_gain_of({}), InvalidInput);
  CHECK_THROWS_AS(net_gain_of(batches, -1), InvalidInput);
  const BatchMean friction = friction_from_batches(doughs, 21, 21, 24);
  CHECK(friction.each == std::vector{12.0, 13.5, 15.0});
  CHECK(friction.mean == doctest::Approx(13.5).epsilon(1e-14));
  CHECK(*friction.sd == doctest::Approx(1.5).epsilon(1e-13));
  CHECK_FALSE(friction_from_batches(27, 21, 21, 24).sd);
  CHECK(friction_from_batches(27, 21, 21, 24, Values(20.0)).mean == 4 * 27 - 21 - 21 - 24 - 20);
  CHECK_THROWS_AS(net_gain_from_batches(mixes, std::span(doughs).first(2)), InvalidInput);
  CHECK_THROWS_AS(net_gain_from_batches({}, {}), InvalidInput);
  const std::vector<double> wrong{26.0, 0.0, 27.0};
  mixes[1].formula.water_c = 60;
  CHECK(text_of([&] { net_gain_from_batches(mixes, wrong); }).find("batch 2 of 3: net mixing gain of this batch") !=
        std::string::npos);
}

TEST_CASE("the likely band: wide by method, as wide as its spread by batches") {
  Mix mix = plain_mix();
  mix.bowl = {.mass_g = 1e-6};  // one that is known to be none
  mix.mixing = ByNetGain{8, 2};
  const WaterPlan plan = water_by_heat_balance(mix, 25);
  const double capacity = 0.650 * 4.186 / share_of(plan, "main water");
  CHECK(plan.high_c - 25 == doctest::Approx(1.645 * 2 * 1.670 / capacity).epsilon(1e-12));
  CHECK(25 - plan.low_c == doctest::Approx(plan.high_c - 25).epsilon(1e-12));
  mix.mixing = ByNetGain{8, 0};
  CHECK(water_by_heat_balance(mix, 25).low_c == 25);
  // Known work leaves what readings of temperatures differ by.
  mix.mixing = ByWork{8, 10.0};
  const WaterPlan by_work = water_by_heat_balance(mix, 25);
  mix.mixing = ByNetGain{8, 1};
  CHECK(by_work.high_c == doctest::Approx(water_by_heat_balance(mix, 25).high_c).epsilon(1e-12));
  CHECK(by_work.k_per_kj_per_kg == doctest::Approx(1.670 / capacity).epsilon(1e-12));
  mix.mixing = ByMethod{"stand_mixer"};
  const WaterPlan by_method = water_by_heat_balance(mix, 25);
  CHECK(by_method.high_c - by_method.low_c > 2);
  // The ends of the band: those of the method's work, with the readings' spread across.
  mix.mixing = ByMethod{"stand_mixer", std::nullopt, 10.0};
  const WaterPlan known = water_by_heat_balance(mix, 25);
  const MixingMethod& method = mixing_method_named("stand_mixer");
  const double k = known.k_per_kj_per_kg;
  CHECK(25 - known.low_c ==
        doctest::Approx(std::hypot((method.work_kj_per_kg - method.low_kj_per_kg) * k, 1.645 * k)).epsilon(1e-12));
  CHECK(known.high_c - 25 ==
        doctest::Approx(std::hypot((method.high_kj_per_kg - method.work_kj_per_kg) * k, 1.645 * k)).epsilon(1e-12));
}

TEST_CASE("many rooms at once are the plans one by one") {
  box::Numbers n(606);
  Mix mix = any_mix(n);
  mix.formula.flours.clear();
  mix.formula.water_g = 0.6 * mix.formula.flour_g;
  mix.tap_c = 20;
  std::vector<double> desired(600), flour(600), room(600), out(600);
  for (std::size_t i = 0; i < out.size(); ++i)
    desired[i] = n.between(18, 28), flour[i] = n.between(5, 35), room[i] = n.between(5, 35);
  water_map(mix, desired, flour, room, out);
  double worst = 0;
  int compared = 0;
  for (std::size_t i = 0; i < out.size(); ++i) {
    mix.formula.flour_c = flour[i];
    mix.room_c = room[i];
    try {
      worst = std::max(worst, std::abs(water_by_heat_balance(mix, desired[i]).water_c - out[i]));
      ++compared;
    } catch (const NoSolution&) {
      CHECK((out[i] > 60 || out[i] < 20));
    }
  }
  MESSAGE("map against plans: worst ", worst, " K of ", compared);
  CHECK(compared > 300);
  CHECK(worst < 1e-11);
  double one = 0;
  water_map(mix, desired[3], flour[3], room[3], {&one, 1});
  CHECK(one == out[3]);
  CHECK_THROWS_AS(water_map(mix, desired, std::span<const double>(flour).first(7), 20, out), InvalidInput);
  CHECK_THROWS_AS(water_map(mix, 60, 20, 20, out), InvalidInput);
  CHECK_THROWS_AS(water_map(Mix{.formula = {.flour_g = 500, .water_g = 100}, .room_c = 20}, 25, 20, 20, out),
                  InvalidInput);
}

TEST_CASE("refusals of the plan name what is reachable and what to do") {
  Mix mix = plain_mix();
  const std::string hot = text_of([&] { water_by_heat_balance(mix, 45); });
  CHECK(hot.find("desired_c: a dough of 45 °C needs water of 61.") == 0);
  CHECK(hot.find("reachable are doughs of") != std::string::npos);
  CHECK(hot.find("warm the flour") != std::string::npos);
  mix.room_c = 40;
  CHECK(text_of([&] { water_by_heat_balance(mix, 12); }).find("give the temperature of the tap water") !=
        std::string::npos);
  mix.tap_c = 25;
  mix.room_c = 60;
  mix.mixing = ByNetGain{100};
  CHECK(text_of([&] { water_by_heat_balance(mix, 5); }).find("of ice, more than the 650 g of water") !=
        std::string::npos);
  mix.room_c = -10;
  mix.rest_h = 1;
  mix.mixing = ByNetGain{60};
  CHECK(text_of([&] { water_by_heat_balance(mix, 2); }).find("more than melts when flour and water meet") !=
        std::string::npos);
  CHECK(text_of([&] { water_by_heat_balance(mix, 78); }).find("did you mean 78 °F?") != std::string::npos);
  CHECK(text_of([] {
          water_by_heat_balance({.formula = {.flour_g = 500, .water_g = 325}}, 24);
        }).find("a mix needs the temperature of the room") != std::string::npos);
  Mix hot_portion = plain_mix();
  hot_portion.formula.waters = {{50, 65, true}};
  CHECK(text_of([&] {
          water_by_heat_balance(hot_portion, 24);
        }).find("waters[0].temperature_c: temperature of a portion of water 65 °C is outside 0 to 60 °C") == 0);
  Mix dry = plain_mix();
  dry.formula.water_g = 0;
  dry.formula.waters = {{650, 20}};
  CHECK(text_of([&] { water_by_heat_balance(dry, 24); }).find("no main water") != std::string::npos);
  CHECK(text_of([&] { dough_by_heat_balance(plain_mix()); }).find("water_c: the main water has no temperature") == 0);
  Mix warm = plain_mix();
  warm.mixing = ByNetGain{119};
  warm.formula.water_c = 59;
  CHECK(text_of([&] { dough_by_heat_balance(warm); }).find("outside −2 °C to 45 °C") != std::string::npos);
  warm.mixing = ByNetGain{0};
  warm.formula.ice_g = 640;
  warm.formula.water_g = 10;
  CHECK(text_of([&] { dough_by_heat_balance(warm); }).find("ice does not melt; take less ice") != std::string::npos);
  for (Bowl bowl : {Bowl{"gold", 100}, Bowl{"steel", -1}}) {
    Mix other = plain_mix();
    other.bowl = bowl;
    CHECK_THROWS_AS(require(other), InvalidInput);
  }
  Mix other = plain_mix();
  other.mixing = ByMethod{"by magic"};
  CHECK(text_of([&] {
          require(other);
        }).find("mixing.method: mixing method \"by magic\" is unknown; known: folds, hand, stand_mixer") == 0);
}

TEST_CASE("notices: where the water meets the yeast, and what was assumed") {
  Mix mix = plain_mix();
  mix.mixing = std::nullopt;
  mix.formula.instant_g = 5;
  mix.room_c = 5;
  const auto plan = [&](double desired) { return water_by_heat_balance(mix, desired); };
  CHECK(has(plan(25), "mixing_assumed"));
  CHECK(plan(31).water_c > 45);
  CHECK(has(plan(31), "water_warm_for_yeast"));
  // Yeast wetted apart does not meet the main water alone.
  mix.formula.waters = {{40, 38, true}};
  CHECK_FALSE(has(plan(31), "water_warm_for_yeast"));
  mix.formula.waters = {{40, 52, true}};
  const WaterPlan harmed = plan(20);
  CHECK(has(harmed, "water_hot_for_yeast"));
  CHECK(harmed.notices.front().severity == Severity::warning);
  mix.formula.waters = {{40, 8, true}};
  CHECK(has(plan(20), "water_cold_for_instant"));
  mix.formula.waters.clear();
  const double scalding = 37;
  CHECK(plan(scalding).water_c > 55);
  CHECK(has(plan(scalding), "water_scalds"));
  mix.formula.instant_g = 0;
  CHECK(has(plan(scalding), "water_scalds"));
  CHECK_FALSE(has(plan(scalding), "water_hot_for_yeast"));
  mix.room_c = 20;
  mix.formula.egg_g = 50;
  mix.rest_h = 5;
  CHECK(has(plan(22), "perishable_held"));
}

TEST_CASE("a portion that stands nears the room, one that does not is as it came") {
  Mix mix = plain_mix();
  mix.formula.waters = {{50, 38, true, 0}};
  const auto portion = [&] {
    for (const HeatShare& share : water_by_heat_balance(mix, 25).shares) {
      if (share.name == "yeast's water") return share.temperature_c;
    }
    return 0.0;
  };
  CHECK(portion() == 38);
  mix.formula.waters[0].stands_h = 0.3;
  CHECK(portion() == doctest::Approx(21 + 17 * std::exp(-1.0)).epsilon(1e-14));
  mix.formula.waters[0].stands_h = 24;
  CHECK(portion() == doctest::Approx(21).epsilon(1e-12));
}

TEST_CASE("a rest with milk counts the hours above 5 °C, on the way down and on the way up") {
  // τ from the plan's own temperatures before and after the rest; the crossing of 5 °C by hand.
  int warned = 0, silent = 0;
  for (const auto& [room_c, loss_w_per_k] : std::vector<std::pair<double, double>>{
           {1, 0.3}, {1, 0.5}, {1, 0.8}, {1, 1.2}, {22, 0.03}, {22, 0.045}, {22, 0.1}, {22, 0.3}}) {
    Mix mix = plain_mix();
    mix.formula = {.flour_g = 1000, .water_g = 400, .salt_g = 20, .milk_g = 250};
    mix.room_c = room_c;
    mix.formula.milk_c = 4;
    mix.formula.flour_c = room_c < 5 ? 30.0 : 0.0;
    mix.tap_c = 15;
    mix.heat_loss_w_per_k = loss_w_per_k;
    mix.rest_h = 9;
    mix.formula.water_c = room_c < 5 ? 30 : 4;
    const WaterPlan plan = water_by_heat_balance(mix, dough_by_heat_balance(mix));
    const double tau = mix.rest_h / std::log((plan.wetted_c - room_c) / (plan.rested_c - room_c));
    const bool first = plan.wetted_c > 5, last = plan.rested_c > 5;
    const double crossing_h = tau * std::log((plan.wetted_c - room_c) / (5 - room_c));
    const double warm_h = first == last ? (first ? 9 : 0) : first ? crossing_h : 9 - crossing_h;
    CAPTURE(plan.wetted_c);
    CAPTURE(plan.rested_c);
    CAPTURE(warm_h);
    CHECK(has(plan, "perishable_held") == (warm_h > 4));
    const bool crosses = first != last;
    (crosses && warm_h > 4 ? warned : silent) += crosses;
  }
  CHECK(warned > 0);
  CHECK(silent > 0);
}
