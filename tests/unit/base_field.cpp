#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <string>

#include <ferment/ferment.hpp>

#include "dough/shell.hpp"
#include "refusal.hpp"

using namespace ferment;

namespace {

constexpr double nan_ = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

/// As the messages write a number: six digits, a true minus sign.
std::string shown(double value) {
  std::ostringstream out;
  out << std::abs(value);
  return (value < 0 ? "−" : "") + out.str();
}

/// The refusal as an error, or nothing if the call is let through by the edge. Any other outcome than InvalidInput
/// counts as let through: a value inside the bounds may still have no answer.
std::optional<InvalidInput> refusal(const std::function<void(double)>& call, double value) {
  try {
    call(value);
  } catch (const InvalidInput& error) {
    return error;
  } catch (const Error&) {
  }
  return std::nullopt;
}

void check_refusal(const std::optional<InvalidInput>& refused, const Field& field, double value) {
  REQUIRE_MESSAGE(refused, std::string(field.name), " accepts ", value);
  const std::string text = refused->what();
  INFO(text);
  CHECK(says(text, std::string(field.label)));
  if (!field.unit.empty()) CHECK(says(text, std::string(field.unit)));
  CHECK(says(text, shown(field.low) + " to " + shown(field.high)));
  CHECK(refused->status() == Status::invalid_input);
  const ErrorDetail& detail = refused->detail();
  CHECK(text.starts_with(detail.path + ": "));  // the member that has the field
  REQUIRE(detail.value);
  if (std::isnan(value)) {
    CHECK(std::isnan(*detail.value));
  } else {
    CHECK(*detail.value == value);
  }
  CHECK(detail.low == field.low);
  CHECK(detail.high == field.high);
}

void check_edges(const Field& field, const std::function<void(double)>& call) {
  INFO(std::string(field.name));
  for (const double bad :
       {nan_, infinity, -infinity, std::nextafter(field.low, -infinity), std::nextafter(field.high, infinity),
        field.low - 1, field.high + 1, -std::numeric_limits<double>::max(), std::numeric_limits<double>::max()}) {
    check_refusal(refusal(call, bad), field, bad);
  }
  for (const double good : {field.low, field.high, std::nextafter(field.low, infinity),
                            std::nextafter(field.high, -infinity), (field.low + field.high) / 2}) {
    const auto refused = refusal(call, good);
    CHECK_MESSAGE(!refused, std::string(field.name), " refuses ", good, ": ",
                  std::string(refused ? refused->what() : ""));
  }
}

const Dough plain{.dough_c = 25, .yeast_percent = 1};

Dough with(auto Dough::*member, double value) {
  Dough dough = plain;
  dough.*member = value;
  return dough;
}

/// A plain mix that is accepted whatever one member is within its bounds.
Mix a_mix() {
  return {.formula = {.flour_g = 500, .water_g = 325, .salt_g = 10, .instant_g = 3},
          .room_c = 20,
          .bowl = {"steel", 900},
          .mixing = ByWork{5}};
}

/// The mix with one weight of its formula changed.
std::function<void(double)> weight_of(double Formula::*member) {
  return [member](double x) {
    Mix mix = a_mix();
    mix.formula.*member = x;
    require(mix);
  };
}

/// The mix changed by `change(mix, x)`.
template <class Change>
std::function<void(double)> mix_with(Change change) {
  return [change](double x) {
    Mix mix = a_mix();
    change(mix, x);
    require(mix);
  };
}

/// The surroundings changed by `change(place, x)`.
template <class Change>
std::function<void(double)> place_with(Change change) {
  return [change](double x) {
    Surroundings surroundings = Surroundings::room(20);
    change(surroundings.places[0], x);
    require(surroundings);
  };
}

/// The stage changed by `change(stage, x)`.
template <class Change>
std::function<void(double)> stage_with(Change change) {
  return [change](double x) {
    Stage stage;
    stage.surroundings = Surroundings::room(20);
    change(stage, x);
    require(stage);
  };
}

/// The state of a mixed dough, changed by `change(state, x)`.
template <class Change>
std::function<void(double)> state_with(Change change) {
  return [change](double x) {
    Mix mix;
    mix.formula = {.flour_g = 500, .water_g = 330, .salt_g = 10, .instant_g = 3};
    mix.dough_c = 24;
    State state = advance(State{}, mix);
    change(state, x);
    require(state);
  };
}

/// Where each input enters the library: a public function, called with the value and otherwise plain numbers.
const std::map<std::string_view, std::vector<std::function<void(double)>>> entrances{
    {"dough_c",
     {[](double x) { rise_after(1, with(&Dough::dough_c, x)); },
      [](double x) { hours_to_rise(50, with(&Dough::dough_c, x)); }, [](double x) { speed(x); },
      [](double x) { Surroundings::dough(x); },
      [](double x) {
        friction_from_batch(x, std::clamp(x, -30.0, 60.0), std::clamp(x, -30.0, 60.0), std::clamp(x, 0.0, 60.0));
      },
      [](double x) { reachable_rise(with(&Dough::dough_c, x)); },
      [](double x) { explain(50, with(&Dough::dough_c, x)); },
      [](double x) { yeast_for_rise(50, 2, with(&Dough::dough_c, x)); }, [](double x) { cautions({.dough_c = x}); }}},
    {"from_c", {[](double x) { same_rise(1, x, 20); }}},
    {"to_c", {[](double x) { same_rise(1, 20, x); }}},
    {"temperature_c",
     {[](double x) { temperature_factor(Cardinal{}, x); }, [](double x) { temperature_factor(ConstantQ10{}, x); },
      [](double x) { local_q10(SquareRoot{}, x); }, [](double x) { saturation_pressure_pa(x); },
      [](double x) { co2_solubility(x); }}},
    {"desired_c",
     {[](double x) { water_by_factor_rule(x, 20, 20, 0); }, [](double x) { water_by_heat_balance(a_mix(), x); }}},
    {"flour_c",
     {[](double x) { water_by_factor_rule(25, x, 20, 0); }, [](double x) { dough_by_factor_rule(20, x, 20, 0); }}},
    {"room_c",
     {[](double x) { Surroundings::room(x); }, [](double x) { water_by_factor_rule(25, 20, x, 0); },
      [](double x) { dough_by_factor_rule(20, 20, x, 0); }}},
    {"preferment_c",
     {[](double x) { water_by_factor_rule(25, 20, 20, 0, x); },
      [](double x) { dough_by_factor_rule(20, 20, 20, 0, x); }}},
    {"water_c", {[](double x) { dough_by_factor_rule(x, 20, 20, 0); }}},
    {"tap_c", {[](double x) { ice_by_trade_rule(1000, x, 0); }, mix_with([](Mix& m, double x) { m.tap_c = x; })}},
    {"refrigerator_c",
     {[](double x) { Surroundings::refrigerator(x); }, [](double x) { cautions({.refrigerator_c = x}); }}},
    {"friction_k",
     {[](double x) { water_by_factor_rule(25, 20, 20, x); }, [](double x) { dough_by_factor_rule(20, 20, 20, x); }}},
    {"salt_percent",
     {[](double x) { hours_to_rise(50, with(&Dough::salt_percent, x)); },
      [](double x) { rise_after(1, with(&Dough::salt_percent, x)); }, [](double x) { speed(25, x); },
      [](double x) { water_activity(x, 65); }, [](double x) { osmolality(x, 65); },
      [](double x) { solute_factor(x, 65); }, [](double x) { cautions({.salt_percent = x}); }}},
    {"water_percent",
     {[](double x) { hours_to_rise(50, with(&Dough::water_percent, x)); },
      [](double x) { rise_after(1, with(&Dough::water_percent, x)); }, [](double x) { speed(25, 2, x); },
      [](double x) { water_activity(2, x); }, [](double x) { osmolality(2, x); },
      [](double x) { cautions({.water_percent = x}); }}},
    {"sugar_percent",
     {[](double x) { hours_to_rise(50, with(&Dough::sugar_percent, x)); },
      [](double x) { rise_after(1, with(&Dough::sugar_percent, x)); }, [](double x) { speed(25, 2, 65, x); },
      [](double x) { water_activity(2, 65, x); }, [](double x) { osmolality(2, 65, x); },
      [](double x) { gas_capacity(x); }, [](double x) { cautions({.sugar_percent = x}); }}},
    {"gluten_percent",
     {[](double x) { hours_to_rise(50, with(&Dough::gluten_percent, x)); }, [](double x) { held_ratio(2, 1, x); },
      [](double x) { free_ratio(2, 1, x); }, [](double x) { cautions({.gluten_percent = x}); },
      [](double x) { over_proof_ratio(with(&Dough::gluten_percent, x), Standing::tin, false); }}},
    {"altitude_m",
     {[](double x) { hours_to_rise(50, with(&Dough::altitude_m, x)); }, [](double x) { air_pressure_pa(x); },
      [](double x) { rise_after(1, with(&Dough::altitude_m, x)); }, [](double x) { cautions({.altitude_m = x}); }}},
    {"rise_percent",
     {stage_with([](Stage& s, double x) { s.until_rise_percent = x; }), [](double x) { hours_to_rise(x, plain); },
      [](double x) { explain(x, plain); }, [](double x) { yeast_for_rise(x, 2, plain); },
      [](double x) { cautions({.rise_percent = x}); }}},
    {"time_h", {[](double x) { rise_after(x, plain); }, [](double x) { same_rise(x, 20, 25); }}},
    {"target_h", {[](double x) { yeast_for_rise(50, x, plain); }}},
    {"perishable_h", {[](double x) { cautions({.perishable_h = x}); }}},
    {"water_g", {[](double x) { ice_by_trade_rule(x, 20, 10); }}},
    {"loss_fraction", {[](double x) {
       after_handling({}, {10, 0.3}, 25, x);
     }}},
    {"co2_mmol",
     {[](double x) {
        co2_in_cells_mmol({}, {x, 0.3}, 25);
      },
      [](double x) { equivalent_hours_for_gas(x, 1); },
      [](double x) {
        volume_ml({}, {x, 0.3}, 25);
      }}},
    {"air_mmol",
     {[](double x) {
        co2_in_cells_mmol({}, {1, x}, 25);
      },
      [](double x) {
        volume_ml({}, {1, x}, 25);
      },
      [](double x) {
        after_handling({}, {1, x}, 25, 0.5);
      },
      state_with([](State& s, double x) { only_shell(s).gas.air_mmol = x; })}},
    {"volume_ratio",
     {[](double x) { held_ratio(x); }, [](double x) { free_ratio(x); },
      [](double x) { over_proof_ratio(plain, Standing::tin, true, x); },
      state_with([](State& s, double x) { s.anchor_ratio = x; })}},
    {"volume_ml", {[](double x) { co2_for_volume_mmol({}, 0.3, x, 25); }}},
    {"mixed_volume_ml", {state_with([](State& s, double x) { s.mixed_volume_ml = x; })}},
    {"equivalent_h",
     {[](double x) { gas_made(x, 1); }, state_with([](State& s, double x) { only_shell(s).equivalent_h = x; })}},
    {"flour_g", {mix_with([](Mix& m, double x) { m.formula.flours = {{x}}; }), mix_with([](Mix& m, double x) {
                   m.formula.preferments = {{x, 50}};
                 })}},
    {"ice_g", {weight_of(&Formula::ice_g)}},
    {"salt_g", {weight_of(&Formula::salt_g)}},
    {"sugar_g", {weight_of(&Formula::sugar_g)}},
    {"gluten_g", {weight_of(&Formula::gluten_g)}},
    {"milk_g", {weight_of(&Formula::milk_g)}},
    {"egg_g", {weight_of(&Formula::egg_g)}},
    {"butter_g", {weight_of(&Formula::butter_g)}},
    {"oil_g", {weight_of(&Formula::oil_g)}},
    {"instant_g", {weight_of(&Formula::instant_g)}},
    {"active_dry_g", {weight_of(&Formula::active_dry_g)}},
    {"compressed_g", {weight_of(&Formula::compressed_g)}},
    {"piece_g", {[](double x) { require(Piece{.mass_g = x}); }, [](double x) { scaled_to(a_mix().formula, 1, x); }}},
    {"pieces", {[](double x) { require(Piece{.pieces = x}); }, [](double x) { scaled_to(a_mix().formula, x, 2); }}},
    {"loss_percent", {[](double x) { scaled_to(a_mix().formula, 4, 400, x); }}},
    {"moisture_percent",
     {mix_with([](Mix& m, double x) { m.formula.flours = {{.mass_g = 100, .moisture_percent = x}}; }),
      [](double x) { heat_of_hydration(x); }, [](double x) { flour_specific_heat(x); },
      [](double x) { with_moisture(flour_named("bread").composition, x); }}},
    {"poured_water_percent", {[](double x) {
       try {
         formula_from_percent({.flour_g = 500, .water_percent = x, .milk_percent = 60});
       } catch (const InvalidInput& error) {  // with the milk's it may be too much water, in other words
         if (error.problem().starts_with(field::poured_water_percent.label)) throw;
       }
     }}},
    {"flours_percent", {[](double x) {
       // Shares that do not make 100 % are refused by another rule, in other words.
       try {
         formula_from_percent({.flour_g = 500, .flours = {{.percent = x}}});
       } catch (const InvalidInput& error) {
         if (std::string(error.what()).find("outside") != std::string::npos ||
             std::string(error.what()).find("must be a number") != std::string::npos)
           throw;
       }
     }}},
    {"liquid_percent", {[](double x) {
       try {
         formula_from_percent({.flour_g = 500, .oil_percent = x});
       } catch (const InvalidInput& error) {  // as the field, by the ingredient's own name
         if (error.detail().path != "oil_percent") throw;
         require(field::liquid_percent, x);
       }
     }}},
    {"bowl_c", {mix_with([](Mix& m, double x) { m.bowl.temperature_c = x; })}},
    {"milk_c", {mix_with([](Mix& m, double x) { m.formula.milk_c = x; })}},
    {"egg_c", {mix_with([](Mix& m, double x) { m.formula.egg_c = x; })}},
    {"butter_c", {mix_with([](Mix& m, double x) { m.formula.butter_c = x; })}},
    {"ice_c",
     {mix_with([](Mix& m, double x) { m.formula.ice_c = x; }), [](double x) { ice_by_heat_balance(500, 20, 5, x); }}},
    {"bowl_g", {mix_with([](Mix& m, double x) { m.bowl.mass_g = x; })}},
    {"contact", {mix_with([](Mix& m, double x) { m.bowl.contact = x; })}},
    {"mixing_min", {mix_with([](Mix& m, double x) {
       m.mixing = ByMethod{"hand", x};
     })}},
    {"work_kj_per_kg", {mix_with([](Mix& m, double x) { m.mixing = ByWork{x}; })}},
    {"hydration_kj_per_kg",
     {mix_with([](Mix& m, double x) {
        m.mixing = ByWork{5, x};
      }),
      mix_with([](Mix& m, double x) { m.mixing = ByMethod{.hydration_kj_per_kg = x}; })}},
    {"net_gain_kj_per_kg", {mix_with([](Mix& m, double x) { m.mixing = ByNetGain{x}; })}},
    {"sd_kj_per_kg", {mix_with([](Mix& m, double x) {
       m.mixing = ByNetGain{5, x};
     })}},
    {"rest_h", {mix_with([](Mix& m, double x) { m.rest_h = x; })}},
    {"stands_h",
     {mix_with([](Mix& m, double x) { m.formula.waters = {{.mass_g = 50, .temperature_c = 30, .stands_h = x}}; })}},
    {"cup_h",
     {mix_with([](Mix& m, double x) { m.formula.waters = {{.mass_g = 50, .temperature_c = 30, .cup_h = x}}; })}},
    {"start_c",
     {[](double x) {
        drifted_c({x, 20, 1}, 1);
      },
      [](double x) {
        drift_equivalent_h(Cardinal{}, {x, 20, 1}, 1);
      }}},
    {"surroundings_c",
     {[](double x) {
        drifted_c({20, x, 1}, 1);
      },
      [](double x) {
        drift_hours(Cardinal{}, {20, x, 1}, 1e-3);
      }}},
    {"time_constant_h",
     {[](double x) {
        drifted_c({20, 20, x}, 1);
      },
      [](double x) {
        drift_equivalent_h(Cardinal{}, {20, 20, x}, 1);
      }}},
    {"heat_loss_w_per_k", {mix_with([](Mix& m, double x) { m.heat_loss_w_per_k = x; })}},
    {"proof_box_c", {[](double x) { Surroundings::proof_box(x); }}},
    {"humidity_percent", {place_with([](Place& p, double x) { p.humidity_percent = x; })}},
    {"heat_transfer_w_per_m2_k", {place_with([](Place& p, double x) { p.heat_transfer_w_per_m2_k = x; })}},
    {"half_range_k", {[](double x) { Surroundings::daily_swing(20, x); }}},
    {"warmest_h", {[](double x) { Surroundings::daily_swing(20, 2, x); }}},
    {"diameter_cm",
     {[](double x) { require(Piece{.shape = Shape::ball, .diameter_cm = x}); },
      [](double x) { require(Piece{.shape = Shape::oblong, .diameter_cm = x}); },
      [](double x) { require(Piece{.diameter_cm = x}); }}},
    {"length_cm", {[](double x) { require(Piece{.shape = Shape::oblong, .length_cm = x}); }}},
    {"depth_cm", {[](double x) { require(Piece{.depth_cm = x}); }}},
    {"vessel_g", {[](double x) { require(Piece{.vessel_g = x}); }}},
    {"dough_g", {[](double x) { node_of(Piece{}, DoughBody{.mass_g = x}, Place{.temperature_c = 20.0}); }}},
    {"piece_heat_loss_w_per_k", {[](double x) { require(Piece{.heat_loss_w_per_k = x}); }}},
    {"until_h", {stage_with([](Stage& s, double x) { s.until_h = x; })}},
    {"folds_h", {stage_with([](Stage& s, double x) {
       s.until_rise_percent = 100;
       s.folds_h = {x};
     })}},
    {"start_h",
     {[](double x) {
        Surroundings::sequence({{x, Surroundings::room(20)}});
      },
      [](double x) {
        Mix mix = a_mix();
        mix.dough_c = 24;
        simulate({.steps = {mix}, .start_h = x});
      }}},
};

}  // namespace

TEST_CASE("every row of the field table refuses what lies outside it, in its own words") {
  CHECK(input_fields().size() == 83);
  for (const Field& field : input_fields()) {
    check_edges(field, [&](double x) { require(field, x); });
    CHECK(field.low < field.high);
    CHECK_FALSE(field.label.empty());
    CHECK_FALSE(field.meaning.empty());
    if (field.initial) CHECK((*field.initial >= field.low && *field.initial <= field.high));
    REQUIRE(find_field(field.name) != nullptr);
    CHECK(find_field(field.name)->name == field.name);
  }
  CHECK(find_field("no_such_field") == nullptr);
  CHECK(find_field("growth_lag_h") != nullptr);
}

TEST_CASE("every function refuses what the table refuses") {
  std::set<std::string_view> reached;
  for (const auto& [name, calls] : entrances) {
    const Field* field = find_field(name);
    REQUIRE(field != nullptr);
    for (const auto& call : calls) check_edges(*field, call);
    reached.insert(name);
  }
  // The yeast dose is bounded by its kind and has its own test.
  for (const Field& field : input_fields()) {
    if (field.name == "yeast_percent" || field.name == "instant_equivalent_percent") continue;
    CHECK_MESSAGE(reached.contains(field.name), std::string(field.name), " enters nowhere in this test");
  }
}

TEST_CASE("a refused value is never shown as one that is allowed") {
  int confusing = 0;
  std::string example;
  for (const Field& field : input_fields()) {
    for (const double bad : {std::nextafter(field.low, -infinity), std::nextafter(field.high, infinity)}) {
      const auto refused = refusal([&](double x) { require(field, x); }, bad);
      REQUIRE(refused);
      const std::string text = refused->what();
      const std::string bound =
          shown(bad < field.low ? field.low : field.high) + (field.unit.empty() ? "" : " " + std::string(field.unit));
      if (!says(text, std::string(field.label) + " " + bound + " is outside")) continue;
      ++confusing;
      example = text;
    }
  }
  CHECK_MESSAGE(confusing == 0, confusing, " messages, such as: ", example);
}

TEST_CASE("a temperature that looks like Fahrenheit is told how to convert it") {
  for (const Field& field : input_fields()) {
    if (field.quantity != Quantity::temperature) continue;
    for (const double f : {field.high * 1.8 + 32, field.high + 1, field.high + 20}) {
      const double as_c = (f - 32) / 1.8;
      if (f <= field.high || as_c < field.low || as_c > field.high) continue;
      const auto refused = refusal([&](double x) { require(field, x); }, f);
      REQUIRE(refused);
      INFO(std::string(refused->what()));
      CHECK(says(refused->what(), "did you mean " + shown(f) + " °F?"));
    }
    // What is no temperature in °F either gets no such advice.
    const double hopeless = field.high * 1.8 + 33;
    const auto refused = refusal([&](double x) { require(field, x); }, hopeless);
    REQUIRE(refused);
    CHECK_FALSE(says(refused->what(), "celsius("));
  }
  const auto refused = refusal([](double x) { dough_by_factor_rule(x, 20, 20, 0); }, 78);
  REQUIRE(refused);
  CHECK(says(refused->what(), "water temperature 78 °C is outside 0 to 60 °C; did you mean 78 °F?"));
}

TEST_CASE("friction that looks like a difference in Fahrenheit is told how to convert it") {
  const auto refused = refusal([](double x) { water_by_factor_rule(25, 20, 20, x); }, 36);
  REQUIRE(refused);
  CHECK(says(refused->what(), "did you mean a difference of 36 °F?"));
  CHECK_FALSE(says(refused->what(), "celsius("));
  CHECK_FALSE(says(refusal([](double x) { water_by_factor_rule(25, 20, 20, x); }, 46)->what(), "kelvins("));
}

TEST_CASE("an array names its first offending place and how many offend") {
  const std::vector<double> values{20, 25, 99, 25, nan_, 300};
  try {
    require(field::dough_c, values);
    FAIL("accepted");
  } catch (const InvalidInput& error) {
    CHECK(says(error.what(), "dough temperature 99 °C"));
    CHECK(says(error.what(), "(first at index 2, 3 of 6)"));
    CHECK(error.detail().index == 2u);
    CHECK(error.detail().count == 3u);
    CHECK(error.detail().value == 99.0);
  }
  CHECK_THROWS_AS(require(field::dough_c, std::vector{25.0, -infinity}), InvalidInput);
  CHECK_NOTHROW(require(field::dough_c, std::vector{25.0, 45.0, -2.0}));
  try {
    require(field::dough_c, 99.0);
    FAIL("accepted");
  } catch (const InvalidInput& error) {
    CHECK_FALSE(says(error.what(), "index"));
    CHECK_FALSE(error.detail().index);
  }
}

TEST_CASE("errors are one tree with a status each") {
  const auto status_of = [](const std::function<void()>& call) {
    try {
      call();
    } catch (const Error& error) {
      return error.status();
    }
    return Status::ok;
  };
  CHECK(status_of([] { hours_to_rise(100, with(&Dough::salt_percent, 7)); }) == Status::invalid_input);
  CHECK(status_of([] { hours_to_rise(100, with(&Dough::dough_c, -2)); }) == Status::outside_model);
  CHECK(status_of([] { hours_to_rise(900, plain); }) == Status::no_solution);
  CHECK(status_of([] { throw NotConverged("x"); }) == Status::not_converged);
  CHECK_THROWS_AS(hours_to_rise(900, plain), std::runtime_error);
  CHECK(static_cast<int>(Status::ok) == 0);
  CHECK(static_cast<int>(Status::internal) == 99);
}

TEST_CASE("an empty array is no input") {
  const std::vector<double> nothing;
  std::vector<double> three(3, 0.0);
  Doughs doughs{.dough_c = 25, .yeast_percent = 1};
  doughs.salt_percent = nothing;
  CHECK_THROWS_AS(hours_to_rise(100, doughs, three), InvalidInput);
  doughs = {.dough_c = nothing, .yeast_percent = 1};
  CHECK_THROWS_AS(rise_after(1, doughs, three), InvalidInput);
  CHECK_THROWS_AS(same_rise(nothing, 20, 25, three), InvalidInput);
  CHECK_FALSE(Values(nothing).is_single());
  CHECK(Values(nothing).size() == 0);
  CHECK(Values(std::span<const double>()).size() == 0);
}
