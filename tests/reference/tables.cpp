// Values from outside the library, row by row: each id of a table has its answer here, each answer its row there.
#include <doctest/doctest.h>

#include <array>
#include <cctype>
#include <cmath>
#include <functional>
#include <map>
#include <set>

#include <ferment/ferment.hpp>

#include "clock/temperature_law_formula.hpp"
#include "csv.hpp"
#include "dough/solutes_formula.hpp"
#include "dough/volume_formula.hpp"

using namespace ferment;

namespace {

using csv::after;
using csv::before;
using csv::numbers;
using Answer = std::function<std::vector<double>(const std::string& inputs)>;
using Answers = std::map<std::string, Answer>;

/// Reads the table and hands every row with its answer to `compare`; a row without an answer and an answer without a
/// row fail.
void each_row(const std::string& table, std::size_t rows, const Answers& answers,
              const std::function<void(const csv::Row&, const std::vector<double>&)>& compare) {
  std::set<std::string> unread;
  for (const auto& [id, answer] : answers) unread.insert(id);
  std::size_t count = 0;
  for (const csv::Row& row : csv::read(table)) {
    const std::string& id = row.at("id");
    INFO(table, " ", id, ": ", row.at("source"));
    const auto answer = answers.find(id);
    REQUIRE_MESSAGE(answer != answers.end(), "no answer to this row");
    CHECK_MESSAGE(unread.erase(id) == 1, "this id stands twice in the table");
    CHECK_FALSE(row.at("source").empty());
    CHECK_FALSE(row.at("status").empty());
    compare(row, answer->second(row.contains("inputs") ? row.at("inputs") : ""));
    ++count;
  }
  CHECK(count == rows);
  for (const std::string& id : unread) FAIL_CHECK(id << " is not in " << table);
}

/// A row whose column `misses` says why the library is outside its band must be outside: a stale mark fails.
void within_band(const csv::Row& row, const std::vector<double>& got) {
  const double low = std::stod(row.at("low"));
  const double high = std::stod(row.at("high"));
  const std::string& misses = row.at("misses");
  REQUIRE_FALSE(got.empty());
  for (const double value : got) {
    INFO("computed ", value, ", band ", low, " to ", high, "; the row's column misses says: ", misses);
    const bool inside = low <= value && value <= high;
    if (misses.empty())
      CHECK(inside);
    else
      CHECK_FALSE_MESSAGE(inside, "it no longer misses its band: clear the column");
  }
}

/// One tolerance for all numbers of a row, or one for each.
void within_tolerance(const csv::Row& row, const std::vector<double>& got, double rounding = 0) {
  const std::vector<double> wanted = numbers(row.at("expected"));
  const std::vector<double> tolerance = numbers(row.at("tolerance"));
  REQUIRE_FALSE(wanted.empty());
  REQUIRE(got.size() == wanted.size());
  REQUIRE((tolerance.size() == 1 || tolerance.size() == wanted.size()));
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    INFO("computed ", got[i], ", expected ", wanted[i]);
    CHECK(std::abs(got[i] - wanted[i]) <=
          (tolerance.size() == 1 ? tolerance[0] : tolerance.at(i)) + rounding * std::abs(wanted[i]));
  }
}

/// Heat that dissolving takes up, kJ per kg: what the plan's gain loses with 10 g more of it.
double solution_kj_per_kg(double Formula::*member) {
  Mix mix{.formula = {.flour_g = 500, .water_g = 325}, .room_c = 20, .mixing = ByWork{0, 0.0}};
  mix.formula.*member = 10;
  const WaterPlan with = water_by_heat_balance(mix, 22);
  double capacity_kj = 0;
  for (const HeatShare& share : with.shares)
    capacity_kj += share.name == "main water" ? 0.325 * water::specific_heat_kj / share.dough_k_per_k : 0;
  return -with.gain_k * capacity_kj / 0.010;
}

/// The check values of this chapter were computed with a start-up of 0.25 h for every yeast.
Kitchen table_kitchen(const std::string& inputs = "") {
  const bool is_older = inputs.find("parameter set 2026-1") != std::string::npos;
  Kitchen kitchen = kitchen_named(is_older ? "2026-1" : "2026-2");
  kitchen.start_up_compressed_h = 0.25;
  kitchen.start_up_instant_h = 0.25;
  kitchen.start_up_active_dry_h = 0.25;
  kitchen.start_up_active_dry_unwetted_h = 0.25;
  return kitchen;
}

double doubling_h(double compressed_percent, double salt_percent) {
  return hours_to_rise(100,
                       {.dough_c = 25,
                        .yeast_percent = compressed_percent,
                        .yeast = Yeast::compressed,
                        .salt_percent = salt_percent,
                        .water_percent = 62},
                       table_kitchen());
}

/// mmol CO2 per g of hexose at full yield, out of the slope of the gas capacity: 1.0526 g hexose per g sucrose, yield
/// 0.95.
double mmol_per_g_hexose() { return (gas_capacity(1) - gas_capacity(0)) / (1.0526 * 0.95); }

double ml_per_mmol(double temperature_c) {
  return 1e3 * formula::gas_constant * (temperature_c + formula::zero_celsius) / formula::atmosphere;
}

std::vector<double> hours_to_double(const std::string& inputs) {
  const bool compressed = inputs.find("% compressed") != std::string::npos;
  const Dough dough{.dough_c = before(inputs, " C"),
                    .yeast_percent = before(inputs, compressed ? " % compressed" : " % instant"),
                    .yeast = compressed ? Yeast::compressed : Yeast::instant,
                    .salt_percent = before(inputs, " % salt"),
                    .water_percent = before(inputs, " % water")};
  return {hours_to_rise(100, dough, table_kitchen(inputs))};
}

std::vector<double> default_factor(const std::string& inputs) {
  return {temperature_factor(Cardinal{}, before(inputs, " C"))};
}

/// m mol/kg of NaCl are 5.8443·m g per 100 g of water; 2 mol/kg are more than a dough's 6 %, so the formula is asked
/// itself.
std::vector<double> salt_solution(double molality) {
  return {formula::water_activity<double>(5.8443 * molality, 100.0, 0.0)};
}

/// Minutes from moulding to +80 % of the volume at the start of the proof: the row's process at one dough temperature.
std::vector<double> proof_minutes(const std::string& inputs) {
  const auto grams = [&](const char* name) { return 10 * before(inputs, name); };  // on 1 kg of flour
  Mix mix;
  mix.formula = {.flour_g = 1000, .water_g = grams(" % water"), .salt_g = grams(" % salt")};
  mix.formula.active_dry_g = grams(" % active dry");
  mix.dough_c = after(inputs, "constant");
  Stage bulk;
  bulk.surroundings = Surroundings::dough(*mix.dough_c);
  bulk.standing = Standing::free;
  Stage bench_rest = bulk, proof = bulk;
  bulk.until_h = before(inputs, " min from the end of mixing") / 60;
  bulk.folds_h = {after(inputs, "one fold after") / 60};
  bulk.handling = {Handling::divide, Handling::round};
  bench_rest.until_h = before(inputs, " min rest") / 60;
  bench_rest.handling = {Handling::mould};
  proof.until_rise_percent = 80;
  proof.final_proof = true;
  const StageResult last = simulate({.steps = {mix, bulk, bench_rest, proof}}, table_kitchen()).stages.back();
  return {60 * (last.end_h - last.start_h)};
}

Body dissolving_body() { return {.dough_g = 100 + 68 + 2 + 2, .water_g = 68, .water_activity = water_activity(2, 68)}; }

}  // namespace

TEST_CASE("fermentation: published, recalled and computed values") {
  const Answers answers{
      {"F1",
       [](auto&) { return std::vector{temperature_factor(Cardinal{}, 15) / temperature_factor(Cardinal{}, 28)}; }},
      {"F2",
       [](auto&) { return std::vector{temperature_factor(Cardinal{}, 5.7) / temperature_factor(Cardinal{}, 15)}; }},
      {"F3",
       [](auto&) {
         std::vector<double> steps;
         for (const double t : {20.0, 25.0, 27.0})
           steps.push_back(temperature_factor(Cardinal{}, t + 1) / temperature_factor(Cardinal{}, t));
         return steps;
       }},
      {"F4", [](auto&) { return std::vector{doubling_h(2, 2) / doubling_h(2, 0)}; }},
      {"F5a", [](auto&) { return std::vector{doubling_h(1, 2) / doubling_h(2, 2)}; }},
      {"F5b", [](auto&) { return std::vector{doubling_h(4, 2) / doubling_h(2, 2)}; }},
      {"F6", [](auto&) { return std::vector{doubling_h(2, 2)}; }},
      {"F7a", [](auto&) { return std::vector{mmol_per_g_hexose() * ml_per_mmol(0)}; }},
      {"F7b", [](auto&) { return std::vector{mmol_per_g_hexose() * ml_per_mmol(28.5)}; }},
      {"F8",
       [](const std::string& inputs) {
         // The row gives the whole cell gas, air and CO2. The air is that of the mixed dough; the CO2 is what fills the
         // rest. The ratio does not depend on how much of it is air: dissolved/cells = a/(n_air + n_gas).
         const double t = before(inputs, " C");
         const Body body = dissolving_body();
         CHECK(before(inputs, " g water") == body.water_g);
         const double air = mixed_air_mmol(body, t);
         const double gas_free_ml = body.dough_g / Kitchen{}.gas_free_density;
         const double held = co2_for_volume_mmol(body, air, gas_free_ml + before(inputs, " mL cell gas"), t);
         const double in_cells = co2_in_cells_mmol(body, {held, air}, t);
         return std::vector{(held - in_cells) / in_cells};
       }},
      {"F9", [](auto&) { return std::vector{mixed_volume_ml(Body{.dough_g = 173.5})}; }},
      {"F11-0.5", [](auto&) { return salt_solution(0.5); }},
      {"F11-1", [](auto&) { return salt_solution(1); }},
      {"F11-2", [](auto&) { return salt_solution(2); }},
      {"F12-10", default_factor},
      {"F12-18", default_factor},
      {"F12-30", default_factor},
      {"F12-38", default_factor},
      {"F13-1", hours_to_double},
      {"F13-2", hours_to_double},
      {"F13-3", hours_to_double},
      {"F13-4", hours_to_double},
      {"F13-5", hours_to_double},
      {"F13-6", hours_to_double},
      {"F14-1", hours_to_double},
      {"F14-2", hours_to_double},
      {"F14-3", hours_to_double},
      {"F14-4", hours_to_double},
      {"F14-5", hours_to_double},
      {"F14-6", hours_to_double},
      {"F10", proof_minutes},
  };
  each_row("fermentation.csv", 31, answers, within_band);
}

TEST_CASE("water temperature by the trade's rules") {
  const auto f = [](const std::string& inputs, const char* name) { return celsius(after(inputs, name)); };
  const Answer rule = [&](const std::string& in) {
    return std::vector{fahrenheit(
        water_by_factor_rule(f(in, "desired"), f(in, "flour"), f(in, "room"), kelvins(after(in, "friction"))))};
  };
  const Answer ice = [&](const std::string& in) {
    constexpr double g_per_lb = 453.59237;  // exact, international pound
    return std::vector{ice_by_trade_rule(before(in, " lb water") * g_per_lb, f(in, "tap"), f(in, "wanted")) / g_per_lb};
  };
  const Answer exact_ice = [](const std::string& in) {
    const double ice_c =
        in.find("ice at -18 C") != std::string::npos ? -18 : 0;  // "same constants": the library's are the row's
    return std::vector{ice_by_heat_balance(numbers(in).at(0), after(in, "tap"), after(in, "wanted"), ice_c)};
  };
  // W11 gives the mix of W12 and W13 too.
  const std::string w11 =
      "flour 1.000 kg 21 C c 1.80; water 0.650 kg c 4.186; salt 0.020 kg 21 C c 0.88; no bowl; no heat; desired 25 C";
  const auto plan = [&](const std::string& in, const std::function<void(Mix&)>& change) {
    const double flour_g = 1000 * after(in, "flour"), room_c = numbers(in).at(1), desired_c = after(in, "desired");
    CHECK(flour_specific_heat(13) == after(in, "C c"));
    CHECK(water::specific_heat_kj == numbers(in.substr(in.find("water"))).at(1));
    CHECK(mixing_specific_heat("salt") == numbers(in.substr(in.find("salt"))).at(2));
    Mix mix{.formula = {.flours = {{.mass_g = flour_g, .moisture_percent = 13}},
                        .water_g = 1000 * after(in, "water"),
                        .salt_g = 1000 * after(in, "salt")},
            .room_c = room_c,
            .mixing = ByWork{0, 0.0},
            .heat_of_solution = false};
    if (change) change(mix);
    return std::vector{water_by_heat_balance(mix, desired_c).water_c};
  };
  const auto with_heat = [](Mix& mix) {
    mix.mixing = ByWork{10, 10.0};
    mix.bowl = {.material = "steel", .mass_g = 1200, .contact = 1};
    CHECK(heat_capacity_kj(mix.bowl) == doctest::Approx(0.588).epsilon(1e-12));
  };
  const Answers answers{
      {"W1", rule},
      {"W2",
       [&](const std::string& in) {
         return std::vector{1.8 * friction_from_batch(f(in, "dough"), f(in, "flour"), f(in, "room"), f(in, "water"))};
       }},
      {"W3", rule},
      {"W4",
       [&](const std::string& in) {
         return std::vector{fahrenheit(dough_by_factor_rule(f(in, "water"), f(in, "flour"), f(in, "shop"), 0))};
       }},
      {"W5", rule},
      {"W6", rule},
      {"W7", ice},
      {"W8", ice},
      {"W9", exact_ice},
      {"W10", exact_ice},
      {"W11", [&](const std::string& in) { return plan(in, {}); }},
      {"W12", [&](const std::string&) { return plan(w11, with_heat); }},
      {"W13",
       [&](const std::string& in) {
         return plan(w11, [&](Mix& mix) {
           with_heat(mix);
           const double portion_g = before(in, " g of the 650 g");
           mix.formula.waters = {{.mass_g = portion_g, .temperature_c = before(in, " C; answer")}};
           mix.formula.water_g -= portion_g;
         });
       }},
      {"W14",
       [](const std::string& in) {
         // The warming of 1 kg of dough by the work alone.
         const HeatPortion dough{.mass_g = 1000, .capacity_kj_k = after(in, "c "), .temperature_c = 20};
         return std::vector{heat_balance({&dough, 1}, {.work_kj = 3.6 * after(in, "work "), .room_c = 20}).dough_c -
                            20};
       }},
  };
  each_row("water_temperature.csv", 14, answers, [](const csv::Row& row, const std::vector<double>& got) {
    // A tolerance of 0 is exact in °F; the way through °C rounds, a few units in the last place.
    within_tolerance(row, got, 16 * 0x1p-53);
  });
}

TEST_CASE("vapour pressure, solubility and air pressure") {
  const auto each = [](const std::string& inputs, double (*law)(double)) {
    std::vector<double> out;
    for (const double x : numbers(inputs)) out.push_back(law(x));
    return out;
  };
  std::size_t values = 0;
  const auto counted = [&](std::vector<double> out) {
    values += out.size();
    return out;
  };
  // These rows carry their inputs in the column of inputs, several to a row.
  const auto lamb = [](const std::string& in) {
    return Composition{.water = after(in, "water"),
                       .protein = after(in, "protein"),
                       .fat = after(in, "fat"),
                       .ash = after(in, "ash")};
  };
  const std::string h1 = "water .7342; protein .2029; fat .0525; ash .0106; 5 C";
  const Answers answers{
      {"H1", [&](const std::string& in) { return std::vector{specific_heat(lamb(in), before(in, " C"))}; }},
      {"H2",
       [&](const std::string& in) {
         return std::vector{before(in, " kg of H1") * before(in, " K") * specific_heat(lamb(h1), 5)};
       }},
      {"H3", [](const std::string& in) { return std::vector{specific_heat(Component::water, before(in, " C"))}; }},
      {"H11", [&](const std::string& in) { return counted(each(in, saturation_pressure_pa)); }},
      {"H12", [&](const std::string& in) { return counted(each(in, co2_solubility)); }},
      {"H13", [&](const std::string& in) { return counted(each(in, air_pressure_pa)); }},
  };
  each_row("heat.csv", 6, answers,
           [](const csv::Row& row, const std::vector<double>& got) { within_tolerance(row, got); });
  CHECK(values == 14);
}

TEST_CASE("examples worked by hand") {
  const auto split = [] { return formula::in_cells(10.0, 0.33805, 1.84286); };
  const Answers answers{
      {"X1",
       [](auto&) {
         const Cardinal law{.t_min_c = 2, .t_opt_c = 36, .t_max_c = 45};
         std::vector<double> out;
         for (const double t : {25.0, 15.0, 40.0})
           out.push_back(temperature_factor(law, t) / temperature_factor(law, 36));
         return out;
       }},
      {"X2",
       [](auto&) {
         // The public factor is 1 at 25 °C; the rate there is b²·root(25)².
         const SquareRoot law{.t_min_c = 0, .t_max_c = 44, .decline_per_k = 0.25};
         const double root = 0.030 * formula::SquareRootFactor<double>(law).at_reference;
         std::vector<double> out;
         for (const double t : {25.0, 10.0, 20.0, 30.0, 40.0}) out.push_back(root * root * temperature_factor(law, t));
         return out;
       }},
      {"X3",
       [](auto&) {
         const Arrhenius law{60};
         return std::vector{temperature_factor(law, 25) / temperature_factor(law, 15),
                            temperature_factor(law, 30) / temperature_factor(law, 20)};
       }},
      {"X4",
       [](auto&) {
         // One unit of energy gives one logarithm; the law is exponential in its energy.
         const double per_kj =
             std::log(temperature_factor(Arrhenius{60}, 30) / temperature_factor(Arrhenius{60}, 20)) / 60;
         return std::vector{std::log(2.25) / per_kj};
       }},
      {"X5",
       [](auto&) {
         return std::vector{temperature_factor(ConstantQ10{2}, 28) / temperature_factor(ConstantQ10{2}, 25)};
       }},
      {"X6", [](auto&) { return std::vector{temperature_factor(ConstantQ10{2.594}, 26)}; }},
      {"X7",
       [](auto&) {
         std::vector<double> out;
         for (const double t : {0.0, 20.0, 28.5}) out.push_back(mmol_per_g_hexose() * ml_per_mmol(t));
         return out;
       }},
      {"X8",
       [&](auto&) {
         const Body body{.dough_g = 166, .water_g = 62};
         const double mixed_ml = mixed_volume_ml(body);
         const double air_ml = mixed_ml - body.dough_g / Kitchen{}.gas_free_density;
         return std::vector{mixed_ml, air_ml, air_ml / ml_per_mmol(30)};
       }},
      {"X9",
       [&](auto&) {
         return std::vector{split(), 10 - split()};
       }},
      {"X10",
       [&](auto&) {
         const Body body{.dough_g = 166, .water_g = 62};
         const double ml = body.dough_g / Kitchen{}.gas_free_density + (0.33805 + split()) * ml_per_mmol(30);
         return std::vector{ml / mixed_volume_ml(body)};
       }},
      {"X11",
       [](auto&) {
         return std::vector{osmolality(1, 62), osmolality(2, 62), osmolality(3, 62)};
       }},
      {"X12",
       [](auto&) {
         return std::vector{water_activity(1, 62), water_activity(2, 62), water_activity(3, 62)};
       }},
  };
  each_row("worked_examples.csv", 12, answers,
           [](const csv::Row& row, const std::vector<double>& got) { within_tolerance(row, got); });
}

TEST_CASE("published examples of the bowl") {
  const auto unit = [](const std::string& in, const char* name) {
    const double value = after(in, name);
    return in.find(" F;") != std::string::npos ? celsius(value) : value;
  };
  const auto difference = [](const std::string& in, const char* name) {
    const double value = after(in, name);
    return in.find(" F;") != std::string::npos ? kelvins(value) : value;
  };
  const Answer rule = [&](const std::string& in) {
    std::optional<double> preferment;
    if (in.find("preferment") != std::string::npos) preferment = unit(in, "preferment");
    const double water = water_by_factor_rule(unit(in, "desired"), unit(in, "flour"), unit(in, "room"),
                                              difference(in, "friction"), preferment);
    return std::vector{in.find(" F;") != std::string::npos ? fahrenheit(water) : water};
  };
  const Answer ice_table = [](const std::string& in) {
    return std::vector{ice_by_trade_rule(1000, celsius(after(in, "tap")), celsius(after(in, "wanted"))) / 1000};
  };
  const Answer ice_in_water = [](const std::string& in) {
    const std::vector<double> n = numbers(in);  // kg ice, its °C, kg water, its °C
    const std::array portions{HeatPortion{.name = "ice",
                                          .mass_g = 1000 * n.at(0),
                                          .capacity_kj_k = n.at(0) * water::specific_heat_kj,
                                          .temperature_c = 0,
                                          .uptake_kj = n.at(0) * (water::melting_heat_kj -
                                                                  water::ice_specific_heat_kj * n.at(1))},
                              HeatPortion{.name = "water",
                                          .mass_g = 1000 * n.at(2),
                                          .capacity_kj_k = n.at(2) * water::specific_heat_kj,
                                          .temperature_c = n.at(3)}};
    return std::vector{heat_balance(portions, {.room_c = 20}).dough_c};
  };
  const Answer food = [](const std::string& in) {
    return std::vector{specific_heat(Composition{after(in, "water"), after(in, "protein"), after(in, "fat"),
                                                 after(in, "carbohydrate"), after(in, "fibre"), after(in, "ash")},
                                     before(in, " C"))};
  };
  const Answers answers{
      {"B1", rule},
      {"B2", rule},
      {"B3", rule},
      {"B4", rule},
      {"B5",
       [&](const std::string& in) {
         return std::vector{fahrenheit(dough_by_factor_rule(celsius(after(in, "water")), celsius(after(in, "flour")),
                                                            celsius(after(in, "shop")), 0))};
       }},
      {"B6", rule},
      {"B7", ice_table},
      {"B8", ice_table},
      {"B9", ice_in_water},
      {"B10", ice_in_water},
      {"B11",
       [](const std::string& in) {
         const std::vector<double> n = numbers(in);  // kg flour, °C, c, kg water, c, kJ per kg flour
         const HeatPortion flour{.capacity_kj_k = n.at(0) * n.at(2), .temperature_c = n.at(1)};
         HeatPortion water{.capacity_kj_k = n.at(3) * n.at(4), .temperature_c = 0};
         const HeatBalance cold =
             heat_balance(std::array{flour, water}, {.hydration_kj = n.at(0) * n.at(5), .room_c = n.at(1)});
         water.temperature_c = (n.at(1) - cold.dough_c) / cold.weights.at(1);
         CHECK(heat_balance(std::array{flour, water}, {.hydration_kj = n.at(0) * n.at(5), .room_c = n.at(1)}).dough_c ==
               doctest::Approx(n.at(1)).epsilon(1e-14));
         return std::vector{water.temperature_c};
       }},
      {"B12",
       [](const std::string& in) {
         return std::vector{heat_of_hydration(after(in, "moisture")) / 2.326};
       }},  // 1 Btu/lb is 2.326 kJ/kg
      {"B13", [](auto&) { return std::vector{mixing_method_named("mechanical_development").work_kj_per_kg}; }},
      {"B14",
       [](const std::string& in) {
         return std::vector{solution_kj_per_kg(&Formula::salt_g) * numbers(in).at(0) / 1000};
       }},
      {"B15",
       [](const std::string& in) {
         return std::vector{solution_kj_per_kg(&Formula::sugar_g) * numbers(in).at(0) / 1000};
       }},
      {"B16", food},
      {"B17", food},
      {"B18", food},
      {"B19", [](const std::string& in) { return std::vector{flour_specific_heat(numbers(in).at(0))}; }},
      {"B20",
       [](const std::string& in) {
         Composition bread = flour_named("bread").composition;
         const double share = (1 - numbers(in).at(0) / 100) / (1 - bread.water);
         bread = {numbers(in).at(0) / 100,    bread.protein * share, bread.fat * share,
                  bread.carbohydrate * share, bread.fibre * share,   bread.ash * share};
         return std::vector{specific_heat(bread, 25)};
       }},
      {"B21", [](const std::string& in) { return std::vector{specific_heat(Component::fat, before(in, " C"))}; }},
  };
  each_row("bowl_examples.csv", 21, answers, [](const csv::Row& row, const std::vector<double>& got) {
    csv::Row first = row;  // the unit after the number may hold figures of its own
    first["expected"] = row.at("expected").substr(0, row.at("expected").find(' '));
    within_tolerance(first, got, 16 * 0x1p-53);
  });
}

TEST_CASE("a table that is not there is an error, not an empty test") {
  CHECK_THROWS_AS(csv::read("no_such_table.csv"), std::runtime_error);
}
