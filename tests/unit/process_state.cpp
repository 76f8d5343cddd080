#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/dough/cohort.hpp>
#include <ferment/dough/gas.hpp>
#include <ferment/dough/solutes.hpp>
#include <ferment/dough/volume.hpp>
#include <ferment/dough/yeast.hpp>
#include <ferment/heat/properties.hpp>
#include <ferment/process/simulate.hpp>

#include "box.hpp"
#include "dough/shell.hpp"
#include "refusal.hpp"

using namespace ferment;

namespace {

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

/// A mix that takes no time and gives no heat: what comes together shares its heat, nothing else.
Mix still(Formula formula, std::vector<State> doughs = {}) {
  Mix mix;
  mix.formula = std::move(formula);
  mix.doughs = std::move(doughs);
  mix.room_c = 22;
  mix.formula.water_c = 22;
  mix.mixing = ByWork{.work_kj_per_kg = 0, .hydration_kj_per_kg = 0};
  mix.heat_of_solution = false;
  return mix;
}
/// The same with the dough's temperature measured: no heat is reckoned.
Mix still_at(double dough_c, Formula formula, std::vector<State> doughs = {}) {
  Mix mix = still(std::move(formula), std::move(doughs));
  mix.dough_c = dough_c;
  return mix;
}

Formula lean_of(double flour_g, double instant_percent = 0.5, double salt_percent = 2) {
  Formula f;
  f.flour_g = flour_g;
  f.water_g = 0.65 * flour_g;
  f.salt_g = salt_percent / 100 * flour_g;
  f.instant_g = instant_percent / 100 * flour_g;
  return f;
}
Formula salt_of(double salt_g) {
  Formula f;
  f.salt_g = salt_g;
  return f;
}
Formula water_of(double water_g) {
  Formula f;
  f.water_g = water_g;
  return f;
}

Stage stage_in(Surroundings surroundings, double hours) {
  Stage stage;
  stage.surroundings = std::move(surroundings);
  stage.until_h = hours;
  return stage;
}
Stage rising_in(Surroundings surroundings, double rise_percent) {
  Stage stage = stage_in(std::move(surroundings), 0);
  stage.until_h.reset();
  stage.until_rise_percent = rise_percent;
  return stage;
}

State lean_dough(double flour_g = 500, double instant_percent = 0.5, double salt_percent = 2, double dough_c = 25) {
  return advance({}, still_at(dough_c, lean_of(flour_g, instant_percent, salt_percent)));
}
/// It has risen for some hours.
State risen(double hours, double flour_g = 500, double instant_percent = 0.5, double salt_percent = 2,
            double dough_c = 25) {
  return advance(lean_dough(flour_g, instant_percent, salt_percent, dough_c),
                 stage_in(Surroundings::dough(dough_c), hours));
}

constexpr double Amounts::*all_amounts[] = {&Amounts::flour_g, &Amounts::gluten_g, &Amounts::water_g,
                                            &Amounts::salt_g,  &Amounts::sugar_g,  &Amounts::perishable_g,
                                            &Amounts::dough_g};
constexpr double Cohort::*all_of_cohort[] = {&Cohort::dose_g,      &Cohort::mass_g,       &Cohort::room_g,
                                             &Cohort::increment_g, &Cohort::equivalent_h, &Cohort::growing_h};

void check_same_cohorts(const std::vector<Cohort>& got, const std::vector<Cohort>& wanted) {
  REQUIRE(got.size() == wanted.size());
  for (std::size_t i = 0; i < got.size(); ++i) {
    CHECK(got[i].yeast == wanted[i].yeast);
    CHECK(got[i].past_lag == wanted[i].past_lag);
    for (const auto number : all_of_cohort) CHECK(got[i].*number == wanted[i].*number);
  }
}

double per_flour(const State& s, double grams) { return 100 * grams / s.amounts.flour_g; }

Body body_of(const State& s) {
  return {.dough_g = per_flour(s, s.amounts.dough_g),
          .water_g = per_flour(s, s.amounts.water_g),
          .water_activity = water_activity(per_flour(s, s.amounts.salt_g), per_flour(s, s.amounts.water_g),
                                           per_flour(s, s.amounts.sugar_g)),
          .pressure_pa = air_pressure_pa(s.altitude_m)};
}

/// CO2 dissolved in the dough: what its volume holds, less what is in the cells.
double dissolved_mmol(const State& s) {
  const Body body = body_of(s);
  const double volume = volume_ratio(s) * s.mixed_volume_ml;
  const double held = std::min(only_shell(s).gas.co2_mmol, co2_for_volume_mmol(body, only_shell(s).gas.air_mmol, volume,
                                                                               only_shell(s).temperature_c));
  return held - co2_in_cells_mmol(body, {held, only_shell(s).gas.air_mmol}, only_shell(s).temperature_c);
}

/// Gassing dry matter at work per 100 g of flour: what it has grown to less what its start-up still lacks.
double pace_of(const State& s) {
  double sum = 0;
  for (const Cohort& cohort : s.cohorts)
    sum += mass_now(cohort) - cohort.dose_g * std::exp(-cohort.equivalent_h / start_up_h(cohort.yeast));
  return sum;
}

/// Grams of yeast in the dough, dry.
double yeast_g(const State& s) {
  double sum = 0;
  for (const Cohort& cohort : s.cohorts) sum += mass_now(cohort);
  return sum * s.amounts.flour_g / 100;
}

}  // namespace

// ---- require_state -----------------------------------------------------------------------------------------------

TEST_CASE("a state without a dough is the beginning of everything") {
  CHECK_NOTHROW(require(State{}));
  CHECK_NOTHROW(require(State{.time_h = 8.5, .altitude_m = 1500}));
  CHECK(State{}.shells.empty());
  CHECK(said([] { volume_ratio({}); }) == "state: the state has no dough; mix flour and water first");
  CHECK(said([] { advance({}, stage_in(Surroundings::room(22), 1)); }) ==
        "there is no dough yet; mix flour and water before the first stage");
}

TEST_CASE("every state of a small day is accepted, also in the middle of its stages") {
  Mix first = still(lean_of(500, 0.4));
  first.mixing = ByMethod{};
  first.heat_of_solution = true;
  first.rest_h = 0.5;
  first.formula.milk_g = 40;
  Stage bulk = stage_in(Surroundings::daily_swing(23, 2, 16), 2);
  bulk.folds_h = {0.5, 1, 1.5};
  bulk.handling = {Handling::divide, Handling::round};
  Mix late = still({.flours = {{.mass_g = 60, .kind = "whole_wheat"}},
                    .water_g = 50,
                    .salt_g = 4,
                    .sugar_g = 20,
                    .butter_g = 40,
                    .compressed_g = 2});
  late.mixing = ByMethod{.method = "stand_mixer", .minutes = 4};
  Stage cold = stage_in(Surroundings::refrigerator(5), 9);
  cold.piece = {.shape = Shape::ball, .pieces = 2, .cover = Cover::film};
  cold.handling = {Handling::mould};
  Stage proof = rising_in(Surroundings::proof_box(29, 80), 60);
  proof.piece = {.shape = Shape::oblong, .pieces = 2, .cover = Cover::open};
  proof.final_proof = true;

  State state{.time_h = 8, .altitude_m = 400};
  std::size_t steps = 0;
  for (const Step& step : {Step{first}, Step{bulk}, Step{late}, Step{cold}, Step{proof}}) {
    if (std::holds_alternative<Stage>(step)) {
      // In its middle, and gone on with from there.
      for (const double after_h : {0.0, 0.5, 0.75}) {
        const State middle = ferment::advance(state, step, {}, {.stop_h = state.time_h + after_h});
        CHECK_NOTHROW(require(middle));
        REQUIRE(middle.stage);
        CHECK(middle.stage->start_h == state.time_h);
        CHECK(middle.steps_done == steps);
        CHECK_NOTHROW(require(ferment::advance(middle, step)));
      }
    }
    state = ferment::advance(state, step);  // std has one of that name for a variant
    CHECK_NOTHROW(require(state));
    CHECK_NOTHROW(require(part_of(state, state.amounts.dough_g / 3)));
    CHECK_NOTHROW(require(as_beginning(state)));
    CHECK(!state.stage);
    CHECK(state.steps_done == ++steps);
  }
  CHECK(state.cohorts.size() == 2);
  CHECK(state.time_h > 8 + 0.5 + 10.0 / 60 + 2 + 4.0 / 60 + 9);
  CHECK(state.perishable_h > 2);
}

TEST_CASE("a damaged state is refused in words, whatever is damaged") {
  const State good = advance(lean_dough(), stage_in(Surroundings::room(22), 3), {}, {.stop_h = 1.0});
  REQUIRE(good.stage);
  REQUIRE(good.cohorts.size() == 1);
  CHECK_NOTHROW(require(good));

  struct Row {
    const char* words;
    std::function<void(State&)> damage;
  };
  const std::vector<Row> rows{
      {"hour of the process 20000 h is outside −10000 to 10000 h", [](State& s) { s.time_h = 20000; }},
      {"hour of the process not a number (NaN) h", [](State& s) { s.time_h = not_a_number; }},
      {"altitude 7000 m is outside −500 to 6000 m", [](State& s) { s.altitude_m = 7000; }},
      {"altitude not a number (NaN) m", [](State& s) { s.altitude_m = not_a_number; }},

      {"amounts.flour_g: flour of the state −1 g is outside 0 to 1e+07 g; a saved state must not be changed by hand",
       [](State& s) { s.amounts.flour_g = -1; }},
      {"gluten of the state −1 g", [](State& s) { s.amounts.gluten_g = -1; }},
      {"water of the state not a number (NaN) g", [](State& s) { s.amounts.water_g = not_a_number; }},
      {"salt of the state −1 g", [](State& s) { s.amounts.salt_g = -1; }},
      {"sugar of the state infinity g", [](State& s) { s.amounts.sugar_g = infinity; }},
      {"milk and egg of the state −1 g", [](State& s) { s.amounts.perishable_g = -1; }},
      {"dough of the state 1e+08 g", [](State& s) { s.amounts.dough_g = 1e8; }},
      {"amounts: the state is damaged: it has more added gluten than flour; simulate the process again from its start",
       [](State& s) { s.amounts.gluten_g = s.amounts.flour_g + 1; }},
      {"the state is damaged: it has more flour than dough",
       [](State& s) { s.amounts.flour_g = s.amounts.dough_g + 1; }},
      {"the state is damaged: its dough has no flour", [](State& s) { s.amounts.flour_g = 0; }},
      {"the state is damaged: it has yeast or a stage but no dough", [](State& s) { s.amounts = {}; }},
      {"the state is damaged: it has yeast or a stage but no dough",
       [](State& s) { s.amounts = {}, s.cohorts.clear(); }},
      {"the state is damaged: it has yeast or a stage but no dough", [](State& s) { s.amounts = {}, s.stage.reset(); }},

      {"the state is damaged: its dough has no heat capacity", [](State& s) { s.heat_capacity_kj_k = 0; }},
      {"heat capacity of the dough −1 kJ/K is outside 0 to 100000 kJ/K", [](State& s) { s.heat_capacity_kj_k = -1; }},
      {"heat capacity of the dough not a number (NaN) kJ/K", [](State& s) { s.heat_capacity_kj_k = not_a_number; }},
      {"dough temperature not a number (NaN) °C", [](State& s) { only_shell(s).temperature_c = not_a_number; }},
      {"dough temperature 46 °C is outside −2 to 45 °C", [](State& s) { only_shell(s).temperature_c = 46; }},
      {"dough temperature −3 °C is outside −2 to 45 °C", [](State& s) { only_shell(s).temperature_c = -3; }},

      {"yeast kind 9 is unknown; known: 0 to 3", [](State& s) { s.cohorts[0].yeast = static_cast<Yeast>(9); }},
      {"yeast of a cohort −1 g per 100 g flour is outside 0 to 10 g per 100 g flour",
       [](State& s) { s.cohorts[0].dose_g = -1; }},
      {"yeast of a cohort 11 g per 100 g flour", [](State& s) { s.cohorts[0].mass_g = 11; }},
      {"yeast of a cohort not a number (NaN) g per 100 g flour", [](State& s) { s.cohorts[0].room_g = not_a_number; }},
      {"yeast of a cohort −1e-09 g per 100 g flour", [](State& s) { s.cohorts[0].room_g = -1e-9; }},
      {"yeast of a cohort infinity g per 100 g flour", [](State& s) { s.cohorts[0].increment_g = infinity; }},
      {"age of a cohort −1 h is outside 0 to 100000 h", [](State& s) { s.cohorts[0].equivalent_h = -1; }},
      {"age of a cohort not a number (NaN) h", [](State& s) { s.cohorts[0].growing_h = not_a_number; }},
      {"the state is damaged: a cohort has no yeast in it", [](State& s) { s.cohorts[0].dose_g = 0; }},
      {"the state is damaged: a cohort has no yeast in it", [](State& s) { s.cohorts[0].mass_g = 0; }},
      {"the state is damaged: a cohort has no yeast in it", [](State& s) { s.cohorts[0].increment_g = 0; }},
      {"the state is damaged: a cohort has no yeast in it", [](State& s) { s.cohorts.push_back({}); }},

      {"equivalent hours −1 h is outside 0 to 100000 h", [](State& s) { only_shell(s).equivalent_h = -1; }},
      {"equivalent hours not a number (NaN) h", [](State& s) { only_shell(s).equivalent_h = not_a_number; }},
      {"CO2 −1 mmol per 100 g flour is outside 0 to 1000 mmol per 100 g flour",
       [](State& s) { only_shell(s).made_mmol = -1; }},
      {"CO2 not a number (NaN) mmol per 100 g flour", [](State& s) { only_shell(s).made_mmol = not_a_number; }},
      {"CO2 1001 mmol per 100 g flour", [](State& s) { only_shell(s).gas.co2_mmol = 1001; }},
      {"CO2 not a number (NaN) mmol per 100 g flour", [](State& s) { only_shell(s).gas.co2_mmol = not_a_number; }},
      {"air in the cells −1 mmol per 100 g flour", [](State& s) { only_shell(s).gas.air_mmol = -1; }},
      {"air in the cells not a number (NaN) mmol per 100 g flour",
       [](State& s) { only_shell(s).gas.air_mmol = not_a_number; }},
      {"it has 0 shells, not one", [](State& s) { s.shells.clear(); }},
      {"it has 2 shells, not one", [](State& s) { s.shells.push_back(s.shells.front()); }},
      {"its shells are not all of it", [](State& s) { only_shell(s).share = 0.5; }},
      {"volume after mixing 40 mL per 100 g flour is outside 50 to 500 mL per 100 g flour",
       [](State& s) { s.mixed_volume_ml = 40; }},
      {"volume after mixing not a number (NaN) mL per 100 g flour", [](State& s) { s.mixed_volume_ml = not_a_number; }},
      {"volume 0 times the mixed volume is outside 0.1 to 1000 times the mixed volume",
       [](State& s) { s.anchor_ratio = 0; }},
      {"volume not a number (NaN) times the mixed volume", [](State& s) { s.anchor_ratio = not_a_number; }},
      {"hours with perishable food −1 h is outside 0 to 100000 h", [](State& s) { s.perishable_h = -1; }},
      {"hours with perishable food not a number (NaN) h", [](State& s) { s.perishable_h = not_a_number; }},

      {"hour of the process not a number (NaN) h", [](State& s) { s.stage->start_h = not_a_number; }},
      {"stage: the state is damaged: its stage begins after its moment; simulate the process again from its start",
       [](State& s) { s.stage->start_h = s.time_h + 0.01; }},
      {"dough temperature 50 °C is outside −2 to 45 °C", [](State& s) { s.stage->start_c = 50; }},
      {"volume 0 times the mixed volume", [](State& s) { s.stage->start_ratio = 0; }},
      {"heat of the stage not a number (NaN) J", [](State& s) { s.stage->heat_made_j = not_a_number; }},
      {"heat of the stage minus infinity J", [](State& s) { s.stage->heat_lost_j = -infinity; }},
      {"hour of the process not a number (NaN) h", [](State& s) { s.stage->over_proofed_h = not_a_number; }},
  };
  const Stage stage = stage_in(Surroundings::room(22), 3);
  for (const Row& row : rows) {
    State bad = good;
    row.damage(bad);
    const std::string words = said([&] { require(bad); });
    INFO(words);
    CHECK(says(words, row.words));
    // And by whatever takes a state, in the same words.
    CHECK(said([&] { advance(bad, stage); }) == words);
    CHECK(said([&] { part_of(bad, 10); }) == words);
    CHECK(said([&] { as_beginning(bad); }) == words);
    CHECK(said([&] { volume_ratio(bad); }) == words);
    CHECK(said([&] { simulate({.steps = {stage}}, {}, bad); }) == words);
    // Within a mix it names the way.
    const bool has_path = words.find(": ") < words.find(' ');
    CHECK(said([&] { require(still(salt_of(1), {bad})); }) == (has_path ? "doughs[0]." : "doughs[0]: ") + words);
  }
}

TEST_CASE("a state with more of an ingredient than of dough is damaged") {
  const State good = lean_dough();
  for (const auto grams : {&Amounts::water_g, &Amounts::salt_g, &Amounts::sugar_g, &Amounts::perishable_g}) {
    State bad = good;
    bad.amounts.*grams = 2 * bad.amounts.dough_g;
    CHECK(says(said([&] { require(bad); }), "the state is damaged"));
  }
}

// ---- part_of and as_beginning ----------------------------------------------------------------------------------

TEST_CASE("a part of a dough is the same dough, less of it") {
  Formula rich = lean_of(500);
  rich.gluten_g = 10;
  rich.sugar_g = 30;
  rich.milk_g = 60;
  rich.egg_g = 50;
  const State whole = advance(advance({}, still_at(25, rich)), stage_in(Surroundings::dough(25), 2.5));
  for (const auto grams : all_amounts) CHECK(whole.amounts.*grams > 0);
  const State third = part_of(whole, whole.amounts.dough_g / 3);
  for (const auto grams : all_amounts)
    CHECK(third.amounts.*grams == doctest::Approx(whole.amounts.*grams / 3).epsilon(1e-15));
  CHECK(third.heat_capacity_kj_k == doctest::Approx(whole.heat_capacity_kj_k / 3).epsilon(1e-15));
  CHECK(only_shell(third).temperature_c == only_shell(whole).temperature_c);
  CHECK(only_shell(third).made_mmol == only_shell(whole).made_mmol);
  CHECK(only_shell(third).gas.co2_mmol == only_shell(whole).gas.co2_mmol);
  CHECK(only_shell(third).gas.air_mmol == only_shell(whole).gas.air_mmol);
  CHECK(third.mixed_volume_ml == whole.mixed_volume_ml);
  CHECK(third.anchor_ratio == whole.anchor_ratio);
  CHECK(third.time_h == whole.time_h);
  CHECK(only_shell(third).equivalent_h == only_shell(whole).equivalent_h);
  CHECK(third.steps_done == whole.steps_done);
  check_same_cohorts(third.cohorts, whole.cohorts);
  CHECK(volume_ratio(third) == doctest::Approx(volume_ratio(whole)).epsilon(1e-14));

  // It rises as the whole does where the temperature is given, and follows its room faster where it is not.
  const Stage warm = rising_in(Surroundings::dough(27), 40);
  CHECK(advance(third, warm).time_h == doctest::Approx(advance(whole, warm).time_h).epsilon(1e-12));
  const Stage cold = stage_in(Surroundings::refrigerator(4), 1);
  CHECK(only_shell(advance(third, cold)).temperature_c < only_shell(advance(whole, cold)).temperature_c - 0.5);

  // All of it, and all but for rounding.
  const State all = part_of(whole, whole.amounts.dough_g);
  for (const auto grams : all_amounts) CHECK(all.amounts.*grams == whole.amounts.*grams);
  CHECK_NOTHROW(part_of(whole, whole.amounts.dough_g * (1 + 1e-10)));

  // 400 g of flour, 260 of water, 8 of salt and 2 of yeast.
  CHECK(said([] { part_of(lean_dough(400), 671); }) ==
        "mass_g: a part of 671 g is more than the dough, 670 g; take less");
  CHECK(says(said([&] { part_of(whole, 0.9); }), "dough 0.9 g is outside 1 to 1e+06 g"));
  CHECK(says(said([&] { part_of(whole, not_a_number); }), "dough not a number (NaN) g"));
  CHECK(said([] { part_of({}, 10); }) == "mass_g: a part of 10 g is more than the dough, 0 g; take less");
}

TEST_CASE("a state begins another process with all it is, but not in the middle of a stage") {
  const State end = risen(2);
  CHECK(end.steps_done == 2);
  const State begin = as_beginning(end);
  CHECK(begin.steps_done == 0);
  CHECK(begin.time_h == end.time_h);
  CHECK(only_shell(begin).temperature_c == only_shell(end).temperature_c);
  CHECK(only_shell(begin).made_mmol == only_shell(end).made_mmol);
  CHECK(only_shell(begin).gas.co2_mmol == only_shell(end).gas.co2_mmol);
  CHECK(begin.anchor_ratio == end.anchor_ratio);
  CHECK(begin.amounts.dough_g == end.amounts.dough_g);
  check_same_cohorts(begin.cohorts, end.cohorts);
  // The same step, whatever its number.
  const Stage proof = rising_in(Surroundings::dough(26), 50);
  const Timeline other = simulate({.steps = {proof}}, {}, begin);
  CHECK(other.state.time_h == advance(end, proof).time_h);
  CHECK(other.state.steps_done == 1);
  CHECK(says(said([&] { simulate({.steps = {proof}}, {}, end); }), "the state has done 2 steps and the process has 1"));

  const State middle = advance(lean_dough(), stage_in(Surroundings::room(22), 3), {}, {.stop_h = 1.0});
  CHECK(said([&] { as_beginning(middle); }) ==
        "state: the state is in the middle of a stage; end the stage before another process begins with it");
  CHECK(as_beginning({}).steps_done == 0);
}

// ---- mixing ----------------------------------------------------------------------------------------------------

TEST_CASE("mixing keeps the grams of everything, and the heat capacity, and the yeast") {
  box::Numbers n(901);
  for (int i = 0; i < 200; ++i) {
    State dough = risen(n.between(0, 6), n.between(100, 900), n.magnitude(0.05, 2), n.between(0, 3), n.between(18, 30));
    std::vector<State> others;
    for (std::size_t k = n.index(3); k > 0; --k)
      others.push_back(risen(n.between(0, 20), n.between(50, 900), n.magnitude(0.05, 2)));
    Formula f;
    f.water_g = n.between(1, 200);
    f.salt_g = n.between(0, 5);
    if (i % 2) f.flour_g = n.between(1, 500), f.gluten_g = n.between(0, 20);
    if (i % 3 == 0)
      f.sugar_g = n.between(0, 30), f.milk_g = n.between(0, 100), f.egg_g = n.between(0, 60),
      f.butter_g = n.between(0, 50);
    if (i % 5 == 0) f.compressed_g = n.between(0.5, 10);
    const State mixed = advance(dough, still(f, others));
    require(mixed);
    const Amounts added = amounts_of(f);
    for (const auto grams : all_amounts) {
      double sum = added.*grams + dough.amounts.*grams;
      for (const State& other : others) sum += other.amounts.*grams;
      CHECK(mixed.amounts.*grams == doctest::Approx(sum).epsilon(1e-14));
    }
    // Compressed yeast is 30 % dry matter.
    double yeast = yeast_g(dough) + 0.30 * f.compressed_g, capacity = dough.heat_capacity_kj_k;
    for (const State& other : others) {
      yeast += yeast_g(other);
      capacity += other.heat_capacity_kj_k;
    }
    CHECK(yeast_g(mixed) == doctest::Approx(yeast).epsilon(1e-13));
    if (amounts_of(f).flour_g == 0 && i % 3 && i % 5) {
      capacity += f.water_g / 1000 * water::specific_heat_kj + f.salt_g / 1000 * mixing_specific_heat("salt");
      CHECK(mixed.heat_capacity_kj_k == doctest::Approx(capacity).epsilon(1e-13));
    }
    CHECK(mixed.steps_done == dough.steps_done + 1);
    CHECK(mixed.time_h == dough.time_h);
  }
}

TEST_CASE("a mix without work averages temperatures by heat capacity") {
  box::Numbers n(902);
  for (int i = 0; i < 200; ++i) {
    const State here = lean_dough(n.between(100, 900), 0.5, 2, n.between(2, 35)),
                other = lean_dough(n.between(100, 900), 0.5, 2, n.between(2, 35));
    Mix mix = still(water_of(n.between(1, 300)), {other});
    mix.formula.water_c = n.between(0, 60);
    mix.room_c = n.between(-10, 40);  // nothing is lost to it in no time
    const double water = mix.formula.water_g / 1000 * water::specific_heat_kj;
    const double heat = here.heat_capacity_kj_k * only_shell(here).temperature_c +
                        other.heat_capacity_kj_k * only_shell(other).temperature_c + water * *mix.formula.water_c;
    const double capacity = here.heat_capacity_kj_k + other.heat_capacity_kj_k + water;
    const State mixed = advance(here, mix);
    CHECK(only_shell(mixed).temperature_c == doctest::Approx(heat / capacity).epsilon(1e-13));
    CHECK(mixed.heat_capacity_kj_k == doctest::Approx(capacity).epsilon(1e-13));
  }
}

TEST_CASE("the bowl takes its share of the heat, and stays behind") {
  const State dough = lean_dough(500, 0.5, 2, 30);
  Mix mix = still(water_of(50));
  mix.bowl = {.material = "steel", .mass_g = 1500, .temperature_c = 10, .contact = 1};
  const double water = 0.050 * water::specific_heat_kj,
               bowl = 1.5 * 0.49;  // kJ/K; steel: Incropera and Perry's (from memory)
  const State mixed = advance(dough, mix);
  CHECK(only_shell(mixed).temperature_c == doctest::Approx((dough.heat_capacity_kj_k * 30 + water * 22 + bowl * 10) /
                                                           (dough.heat_capacity_kj_k + water + bowl))
                                               .epsilon(1e-13));
  CHECK(mixed.heat_capacity_kj_k == doctest::Approx(dough.heat_capacity_kj_k + water).epsilon(1e-13));
}

TEST_CASE("doughs alone, or with nothing but salt, yeast or fat, share their heat") {
  // Nothing of these is wetted: they join a dough that is there.
  const State warm = lean_dough(500, 0.5, 0, 28), cold = lean_dough(200, 0.5, 0, 4);
  const double both = warm.heat_capacity_kj_k + cold.heat_capacity_kj_k;
  const double mean_c = (warm.heat_capacity_kj_k * 28 + cold.heat_capacity_kj_k * 4) / both;
  const State joined = advance({}, still({}, {warm, cold}));
  CHECK(only_shell(joined).temperature_c == doctest::Approx(mean_c).epsilon(1e-13));
  CHECK(joined.heat_capacity_kj_k == doctest::Approx(both).epsilon(1e-13));
  CHECK(only_shell(advance(warm, still({}, {cold}))).temperature_c == doctest::Approx(mean_c).epsilon(1e-13));
  CHECK(only_shell(advance({}, still({}, {warm}))).temperature_c == doctest::Approx(28).epsilon(1e-14));

  const double salt = 0.010 * mixing_specific_heat("salt"), butter = 0.100 * mixing_specific_heat("butter");
  CHECK(only_shell(advance(warm, still(salt_of(10)))).temperature_c ==
        doctest::Approx((warm.heat_capacity_kj_k * 28 + salt * 22) / (warm.heat_capacity_kj_k + salt)).epsilon(1e-13));
  Mix fat = still({.butter_g = 100});
  fat.formula.butter_c = 12;
  CHECK(only_shell(advance(warm, fat)).temperature_c ==
        doctest::Approx((warm.heat_capacity_kj_k * 28 + butter * 12) / (warm.heat_capacity_kj_k + butter))
            .epsilon(1e-13));
  // Salt takes up 66 kJ/kg as it dissolves (CRC, from memory).
  Mix dissolving = still(salt_of(10));
  dissolving.heat_of_solution = true;
  CHECK(only_shell(advance(warm, dissolving)).temperature_c ==
        doctest::Approx((warm.heat_capacity_kj_k * 28 + salt * 22 - 0.66) / (warm.heat_capacity_kj_k + salt))
            .epsilon(1e-13));
}

TEST_CASE("mixing loses the gas of the cells and keeps what is dissolved, and beats new air in") {
  for (const double hours : {0.5, 2.0, 4.0, 9.0}) {  // from the first gas to a dough that has leaked for long
    const State before = risen(hours, 500, 0.8);
    const State after = advance(before, still_at(25, salt_of(1)));
    const double dissolved = dissolved_mmol(before);
    INFO(hours, " h: ", only_shell(before).gas.co2_mmol, " mmol, of it dissolved ", dissolved, ", volume ",
         volume_ratio(before));
    CHECK(only_shell(after).gas.co2_mmol == doctest::Approx(dissolved).epsilon(1e-9));
    CHECK(only_shell(after).gas.co2_mmol < only_shell(before).gas.co2_mmol);
    CHECK(only_shell(after).gas.co2_mmol > 0);
    CHECK(only_shell(after).made_mmol ==
          doctest::Approx(only_shell(before).made_mmol).epsilon(1e-15));  // the sugars are gone
    const Body body = body_of(after);
    CHECK(after.mixed_volume_ml == doctest::Approx(mixed_volume_ml(body)).epsilon(1e-13));
    CHECK(only_shell(after).gas.air_mmol == doctest::Approx(mixed_air_mmol(body, 25)).epsilon(1e-13));
    // Some of the dissolved gas comes out into the new cells at once; that is the volume later rises begin with.
    CHECK(volume_ratio(after) ==
          doctest::Approx(volume_ml(body, only_shell(after).gas, 25) / mixed_volume_ml(body)).epsilon(1e-13));
    CHECK(after.anchor_ratio == doctest::Approx(volume_ratio(after)).epsilon(1e-13));
    CHECK(volume_ratio(after) < volume_ratio(before));
    CHECK(volume_ratio(after) > 1);
  }
  CHECK(volume_ratio(risen(9, 500, 0.8)) > Kitchen{}.retention_onset);  // it has leaked, indeed

  // Diluted by fresh flour: gas and spent sugar by its share.
  const State sponge = risen(6, 200, 0.3);
  const State dough = advance(sponge, still_at(25, lean_of(300, 0)));
  CHECK(only_shell(dough).made_mmol == doctest::Approx(0.4 * only_shell(sponge).made_mmol).epsilon(1e-14));
  CHECK(only_shell(dough).gas.co2_mmol == doctest::Approx(0.4 * dissolved_mmol(sponge)).epsilon(1e-9));
  // And of two doughs, each by its own.
  const State young = risen(1, 300, 0.6);
  const State both = advance({}, still_at(25, {}, {sponge, young}));
  CHECK(only_shell(both).made_mmol ==
        doctest::Approx(0.4 * only_shell(sponge).made_mmol + 0.6 * only_shell(young).made_mmol).epsilon(1e-14));
  CHECK(only_shell(both).gas.co2_mmol ==
        doctest::Approx(0.4 * dissolved_mmol(sponge) + 0.6 * dissolved_mmol(young)).epsilon(1e-9));
}

namespace {

/// Two equal doughs are the dough: in itself, and in how long its next stages take.
void check_twice(const State& once, const State& twice, const State& dough) {
  CHECK(only_shell(twice).made_mmol == doctest::Approx(only_shell(dough).made_mmol).epsilon(1e-14));
  CHECK(only_shell(twice).gas.co2_mmol == doctest::Approx(only_shell(once).gas.co2_mmol).epsilon(1e-13));
  CHECK(only_shell(twice).gas.air_mmol == doctest::Approx(only_shell(once).gas.air_mmol).epsilon(1e-13));
  CHECK(twice.mixed_volume_ml == doctest::Approx(once.mixed_volume_ml).epsilon(1e-14));
  for (const auto grams : all_amounts)
    CHECK(twice.amounts.*grams == doctest::Approx(2 * dough.amounts.*grams).epsilon(1e-15));
  CHECK(twice.cohorts.size() == dough.cohorts.size());
  const Stage held = rising_in(Surroundings::dough(25), 60);
  const double hours = advance(once, held).time_h - once.time_h;
  CHECK(advance(twice, held).time_h - twice.time_h == doctest::Approx(hours).epsilon(1e-9));
  // In a room the double dough is divided in two, so that each piece is the one dough again.
  Stage room = rising_in(Surroundings::room(21), 60), halves = room;
  halves.piece.pieces = 2;
  const double in_room = advance(once, room).time_h - once.time_h;
  CHECK(advance(twice, halves).time_h - twice.time_h == doctest::Approx(in_room).epsilon(1e-9));
  CHECK(std::abs(in_room / hours - 1) > 0.01);
}

/// A dough of two additions of yeast, old and young.
State of_two_ages() { return advance(risen(6, 100, 0.4), still_at(25, lean_of(400, 0.2))); }

}  // namespace

TEST_CASE("two equal doughs mixed are the dough") {
  // Just mixed, its cells hold nothing that a second mixing could lose: it is the dough itself.
  const State fresh = lean_dough();
  const State again = advance({}, still_at(25, {}, {fresh, fresh}));
  check_twice(fresh, again, fresh);
  check_twice(fresh, advance(fresh, still_at(25, {}, {fresh})), fresh);
  // Later, the dough mixed once more.
  for (const double hours : {1.0, 3.0, 8.0}) {
    const State dough = risen(hours);
    check_twice(advance({}, still_at(25, {}, {dough})), advance({}, still_at(25, {}, {dough, dough})), dough);
  }
  const State mixed = of_two_ages();
  check_twice(advance({}, still_at(25, {}, {mixed})), advance({}, still_at(25, {}, {mixed, mixed})), mixed);
  const State later = advance(mixed, stage_in(Surroundings::dough(26), 1.5));
  check_twice(advance({}, still_at(26, {}, {later})), advance({}, still_at(26, {}, {later, later})), later);
}

TEST_CASE("two equal doughs mixed are the dough, also in temperature") {
  for (const double hours : {0.0, 1.0, 3.0, 8.0}) {
    const State dough = risen(hours, 500, 0.5, 2, 23);
    const State once = advance({}, still({}, {dough})), twice = advance({}, still({}, {dough, dough}));
    CHECK(only_shell(once).temperature_c == doctest::Approx(23).epsilon(1e-14));
    CHECK(only_shell(twice).temperature_c == doctest::Approx(23).epsilon(1e-14));
    CHECK(twice.heat_capacity_kj_k == doctest::Approx(2 * dough.heat_capacity_kj_k).epsilon(1e-14));
    check_twice(once, twice, dough);
  }
}

TEST_CASE("doughs of one age and different doses keep their yeast and its pace when they are mixed") {
  for (const double hours : {1.0, 4.0, 6.0, 12.0}) {
    const State weak = risen(hours, 300, 0.1), strong = risen(hours, 200, 1);
    const State both = advance({}, still_at(25, {}, {weak, strong}));
    CHECK(yeast_g(both) == doctest::Approx(yeast_g(weak) + yeast_g(strong)).epsilon(1e-13));
    // Pace of the gas in the first seconds: yeast at work times what is left of the sugars.
    const double left = 1 - only_shell(both).made_mmol / gas_capacity(), after_h = 1e-3;
    const double pace =
        (only_shell(advance(both, stage_in(Surroundings::dough(25), after_h))).made_mmol - only_shell(both).made_mmol) /
        after_h / left;
    CHECK(pace == doctest::Approx(Kitchen{}.gassing_rate * pace_of(both)).epsilon(1e-3));
    CHECK(pace_of(both) == doctest::Approx(0.6 * pace_of(weak) + 0.4 * pace_of(strong)).epsilon(1e-13));
  }
}

TEST_CASE("halves of a dough that come together again are the dough") {
  const State dough = of_two_ages();
  const State half = part_of(dough, dough.amounts.dough_g / 2);
  const State once = advance({}, still_at(25, {}, {dough})), joined = advance({}, still_at(25, {}, {half, half}));
  for (const auto grams : all_amounts)
    CHECK(joined.amounts.*grams == doctest::Approx(dough.amounts.*grams).epsilon(1e-15));
  const Stage room = rising_in(Surroundings::room(21), 60);
  CHECK(advance(joined, room).time_h == doctest::Approx(advance(once, room).time_h).epsilon(1e-9));
}

TEST_CASE("late salt slows the clock, from its moment on and by the solutes' factor") {
  const State plain = risen(1, 500, 0.5, 0);
  const State unsalted = advance({}, still_at(25, {}, {plain})), salted = advance(plain, still_at(25, salt_of(10)));
  CHECK(only_shell(salted).equivalent_h == only_shell(plain).equivalent_h);
  CHECK(only_shell(salted).made_mmol == doctest::Approx(only_shell(plain).made_mmol).epsilon(1e-15));
  const Stage hour = stage_in(Surroundings::dough(25), 1);
  const double fast = only_shell(advance(unsalted, hour)).equivalent_h - only_shell(unsalted).equivalent_h,
               slow = only_shell(advance(salted, hour)).equivalent_h - only_shell(salted).equivalent_h;
  CHECK(slow / fast == doctest::Approx(solute_factor(2, 65) / solute_factor(0, 65)).epsilon(1e-12));
  CHECK(slow < 0.9 * fast);
  const Stage rise = rising_in(Surroundings::dough(25), 50);
  CHECK(advance(salted, rise).time_h - salted.time_h > 1.08 * (advance(unsalted, rise).time_h - unsalted.time_h));
  // Half the salt at first and half later is all of it from then on.
  const State later = advance(risen(1, 500, 0.5, 1), still_at(25, salt_of(5)));
  CHECK(only_shell(advance(later, hour)).equivalent_h - only_shell(later).equivalent_h ==
        doctest::Approx(slow).epsilon(1e-12));
}

TEST_CASE("minutes of mixing pass for the dough that is there") {
  const State before = risen(1);
  Mix mix = still_at(25, salt_of(1));
  mix.mixing = ByMethod{.method = "hand", .minutes = 30};
  const State after = advance(before, mix);
  CHECK(after.time_h == doctest::Approx(before.time_h + 0.5).epsilon(1e-15));
  // At 25 °C with 2 % of salt and 65 % of water an hour is an equivalent hour.
  CHECK(only_shell(after).equivalent_h == doctest::Approx(only_shell(before).equivalent_h + 0.5).epsilon(1e-12));
  CHECK(after.cohorts[0].equivalent_h == doctest::Approx(1.5).epsilon(1e-12));
  CHECK(only_shell(after).made_mmol ==
        doctest::Approx(only_shell(advance(before, stage_in(Surroundings::dough(25), 0.5))).made_mmol).epsilon(1e-12));
  // A first mix with a rest: both pass, and its yeast is new at the end.
  Mix first = still_at(25, lean_of(500));
  first.rest_h = 0.75;
  first.mixing = ByMethod{.method = "hand", .minutes = 15};
  const State dough = advance({.time_h = 8}, first);
  CHECK(dough.time_h == doctest::Approx(9).epsilon(1e-15));
  CHECK(only_shell(dough).equivalent_h == 0);
  CHECK(dough.cohorts[0].equivalent_h == 0);
  CHECK(only_shell(dough).made_mmol == 0);
}

TEST_CASE("mixes that cannot be are refused in words") {
  const State dough = risen(1);
  const std::string no_flour = "flour_g: the first mix has no flour; begin with flour and water";
  CHECK(said([] { advance({}, still(water_of(100))); }) == no_flour);
  CHECK(said([] { advance({}, still({.water_g = 100, .salt_g = 2, .instant_g = 1})); }) == no_flour);
  CHECK(says(said([] { advance({}, still({})); }),
             "flour_g: the mix has nothing in it; give flour_g, water_g, or what else joins the dough"));
  CHECK(says(said([] { advance({}, still({}, {State{}})); }), "the mix has nothing in it"));
  CHECK(says(said([&] { advance(dough, still({})); }), "the mix has nothing in it"));

  const State middle = advance(lean_dough(), stage_in(Surroundings::room(22), 3), {}, {.stop_h = 1.0});
  CHECK(said([&] { advance(middle, still(water_of(10))); }) == "state: a stage is under way; end it before the mix");
  CHECK(said([&] { advance({}, still(lean_of(100), {middle})); }) ==
        "doughs: a dough that is mixed in is in the middle of a stage; end its stage first");
  CHECK(says(said([&] {
               simulate({.steps = {still(lean_of(500)), still(water_of(10))}}, {}, middle);
             }),
             "the state is in the middle of a stage, but step 2 of the process is a mix"));

  Mix rests = still(lean_of(100));
  rests.rest_h = 0.5;
  CHECK_NOTHROW(advance({}, rests));
  const std::string no_rest =
      "rest_h: a mix that joins a dough cannot rest first; let flour and water rest in a stage of their own, and mix "
      "the other dough in then";
  CHECK(said([&] { advance(dough, rests); }) == no_rest);
  rests.doughs = {dough};  // as it is when it joins, after the rest
  const State joined = advance({}, rests);
  CHECK(joined.time_h == 0.5);
  rests.rest_h = 0;
  CHECK(only_shell(joined).made_mmol == only_shell(advance({}, rests)).made_mmol);

  Mix hot = still(water_of(300));
  hot.formula.water_c = 60;
  const State warm = lean_dough(200, 0.5, 2, 44);
  CHECK_THROWS_AS(advance(warm, hot), OutsideModel);
  Mix unknown = still(water_of(100));
  unknown.formula.water_c.reset();
  CHECK(says(said([&] { advance(dough, unknown); }), "the main water has no temperature; give water_c"));
  unknown.dough_c = 25;
  CHECK_NOTHROW(advance(dough, unknown));
}

TEST_CASE("a dough that is stopped and goes on has the core it had, whatever rows are written") {
  Mix mix;
  mix.formula = {.flour_g = 1800, .water_g = 1160, .salt_g = 36, .instant_g = 5};
  mix.dough_c = 26;
  Stage rest;
  rest.surroundings = Surroundings::sequence({{0, Surroundings::room(22)}, {1, Surroundings::refrigerator(4)}});
  rest.until_h = 3;
  const Process process{.steps = {mix, rest}};
  const auto core_at = [](const Timeline& timeline, double hour) {
    for (std::size_t row = 0; row < timeline.time_h.size(); ++row) {
      if (std::abs(timeline.time_h[row] - hour) < 1e-9) return timeline.core_c[row];
    }
    return std::nan("");
  };
  const Timeline whole = simulate(process);
  for (const double stop_h : {0.3, 1.0, 1.1}) {
    const State stopped = simulate(process, {}, std::nullopt, {.stop_h = stop_h}).state;
    const Timeline resumed = simulate(process, {}, stopped);
    for (const double hour : {1.15, 2.0, 3.0}) {
      CAPTURE(stop_h);
      CAPTURE(hour);
      CHECK(core_at(resumed, hour) == doctest::Approx(core_at(whole, hour)).epsilon(1e-5));
      if (hour > 2)
        CHECK(core_at(simulate(process, {}, std::nullopt, {.every_min = 30}), hour) == core_at(whole, hour));
    }
  }
  // The same by the trapezoidal rule along rows of three seconds, from the surfaces, with Incropera's settling time.
  const Timeline fine = simulate(process, {}, std::nullopt, {.every_min = 0.05});
  const double settling_h =
      node_of(rest.piece, simulate({.steps = {mix, rest}}).state, Place{.temperature_c = 22.0}).settling_h;
  double inside_k = 0;
  for (std::size_t row = 1; row < fine.time_h.size(); ++row) {
    const double z = (fine.time_h[row] - fine.time_h[row - 1]) / settling_h;
    const double before_k = fine.mean_c[row - 1] - fine.surface_c[row - 1],
                 now_k = fine.mean_c[row] - fine.surface_c[row];
    inside_k = (inside_k * (1 - z / 2) + z / 2 * (before_k + now_k)) / (1 + z / 2);
    CHECK(fine.core_c[row] - fine.mean_c[row] == doctest::Approx(0.5 * inside_k).epsilon(0.01));
  }
}

TEST_CASE("a preferment may be past what a dough bears; late salt makes none of it") {
  Mix first;
  first.formula = {.flour_g = 300, .water_g = 300, .instant_g = 1};
  first.dough_c = 24;
  Stage ripening;
  ripening.surroundings = Surroundings::dough(24);
  ripening.until_h = 2;
  Mix flour, salt;
  flour.formula = {.flour_g = 700, .water_g = 350, .salt_g = 18};
  flour.dough_c = salt.dough_c = 24;
  salt.formula = {.salt_g = 6};
  const auto over_h = [&](const std::vector<Step>& steps) {
    return *simulate({.steps = steps}, {}, std::nullopt, {.every_min = 0}).stages[0].over_proofed_h;
  };
  const double alone_h = over_h({first, ripening});
  CHECK(over_h({first, ripening, salt, ripening}) == doctest::Approx(alone_h).epsilon(1e-12));
  const double as_preferment_h = over_h({first, ripening, flour, ripening});
  CHECK(as_preferment_h > 1.2 * alone_h);  // 0.87 of the largest volume instead of 0.60
  Stage bounded = ripening;
  bounded.acceptable_rise_percent = {50, 100};
  CHECK(over_h({first, bounded, flour, ripening}) < alone_h);
}
