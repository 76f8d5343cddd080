#include <ferment/day/document.hpp>

#include <cmath>
#include <limits>
#include <string>

#include <doctest/doctest.h>
#include <ferment/ferment.hpp>

#include "day/quantity.hpp"
#include "refusal.hpp"

using namespace ferment;

namespace {

Stage read_stage(const std::string& members) {
  return from_document<Stage>("{\"name\": \"bulk\", \"surroundings\": {\"places\": [{\"temperature\": \"18C\"}]}, " +
                              members + "}");
}

/// The way to what is wrong.
std::string path_to(const std::string& members) {
  try {
    read_stage(members);
  } catch (const InvalidInput& error) {
    return error.detail().path;
  }
  return "accepted";
}

}  // namespace

TEST_CASE("a value, its document and the value again") {
  Process process;
  process.start_h = 8.1;
  Mix mix;
  mix.formula = {.flour_g = 900, .water_g = 600.0 / 7, .salt_g = -0.0, .instant_g = 1e-3, .water_c = 21.7};
  mix.mixing = ByNetGain{.net_gain_kj_per_kg = 1.0 / 3};
  mix.room_c = 21;
  mix.bowl = {.material = "glass", .mass_g = 800};
  Stage bulk;
  bulk.name = "a \"bulk\" — ½ °C\n";
  bulk.surroundings = Surroundings::daily_swing(18, 2);
  bulk.until_rise_percent = 90;
  bulk.folds_h = {0.5, 1};
  bulk.handling = {Handling::divide};
  bulk.acceptable_rise_percent = std::pair{70.0, 130.0};
  process.steps = {mix, bulk};
  const std::string text = to_document(process);
  const Process again = from_document<Process>(text);
  CHECK(same(form_of<Process>(), &process, &again));
  CHECK(std::signbit(std::get<Mix>(again.steps[0]).formula.salt_g));
  CHECK(to_document(again) == text);
  CHECK(text.rfind("{\"format\":\"libferment process\",\"version\":1,", 0) == 0);
}

TEST_CASE("every number comes back as it was") {
  for (const double value :
       {0.1, 1.0 / 3, 5e-324, 1.7976931348623157e308, 9007199254740993.0, -2.5e-9, 1e22, 123456.0}) {
    Notice notice{.code = "x", .values = {{"value", value}}, .text = ""};
    CHECK(from_document<Notice>(to_document(notice)).values[0].second == value);
  }
  const Notice none{.code = "x", .values = {{"value", std::numeric_limits<double>::quiet_NaN()}}, .text = ""};
  CHECK_THROWS_AS(to_document(none), InvalidInput);
  const Notice no_text{.code = "x", .values = {}, .text = "\xff"};
  CHECK_THROWS_AS(to_document(no_text), InvalidInput);
}

TEST_CASE("a state that is read back goes on with the same digits") {
  Mix mix;
  mix.formula = {.flour_g = 500, .water_g = 325, .salt_g = 10, .instant_g = 3};
  mix.dough_c = 24;
  Stage bulk;
  bulk.surroundings = Surroundings::room(19);
  bulk.until_rise_percent = 80;
  const Timeline half = simulate({.steps = {mix, bulk}}, {}, std::nullopt, {.stop_h = 1.0});
  const State read = from_document<State>(to_document(half.state));
  const Process process{.steps = {mix, bulk}};
  CHECK(simulate(process, {}, read).stages[0].end_h == simulate(process, {}, half.state).stages[0].end_h);
}

TEST_CASE("an hour that never comes is null") {
  StageForecast stage;
  stage.name = "proof";
  stage.ready_h = std::numeric_limits<double>::infinity();
  const std::string text = to_document(stage);
  CHECK(text.find("\"ready_h\":null") != std::string::npos);
  CHECK(std::isinf(from_document<StageForecast>(text).ready_h));
}

TEST_CASE("a quantity is a number under its full name, or a text with its unit") {
  CHECK(read_stage("\"until_h\": 2.5").until_h == 2.5);
  CHECK(read_stage("\"until\": \"2.5h\"").until_h == 2.5);
  CHECK(read_stage("\"ends\": \"18h\"").ends_h == 18);
  CHECK(read_stage("\"until\": \"90 min\"").until_h == 1.5);
  CHECK(read_stage("\"until\": \"1h 30min\"").until_h == 1.5);
  CHECK(read_stage("\"until_rise\": \"85 %\"").until_rise_percent == 85);
  CHECK(read_stage("\"until_h\": 3, \"folds\": [\"30min\", \"1,5h\"]").folds_h == std::vector<double>{0.5, 1.5});
  CHECK(read_stage("\"until_h\": 3, \"acceptable_rise\": [\"70%\", \"130%\"]").acceptable_rise_percent ==
        std::pair{70.0, 130.0});
  const Formula formula = from_document<Formula>(R"({"flour": "2lb", "water": "68F", "salt": "0.5oz"})");
  CHECK(formula.flour_g == doctest::Approx(907.18474).epsilon(1e-12));  // 2 lb of the international pound
  CHECK(formula.water_c == 20.0);
  CHECK(formula.water_g == 0);
  CHECK(formula.salt_g == doctest::Approx(14.1747615625).epsilon(1e-12));
  CHECK(from_document<Formula>(R"({"flour": "68F"})").flour_c == 20.0);
  CHECK(from_document<Formula>(R"({"water_g": 300, "flour": "1.2kg"})").flour_g == 1200);
  CHECK(from_document<Flour>(R"({"mass": "1kg", "kind": "Dark rye"})").kind == "dark_rye");
}

TEST_CASE("what is wrong is told with the way to it") {
  const auto text = [](const std::string& members) { return said([&] { read_stage(members); }); };
  CHECK(text("\"until_hours\": 2") ==
        "until_hours: the key \"until_hours\" is unknown; did you mean until_h? known: name, surroundings, "
        "until, until_rise, ends, piece, folds, handling, standing, final_proof, acceptable_rise");
  CHECK(text("\"until\": 2") ==
        "until: the number 2 has no unit; write a text, such as \"2.5h\" or \"90min\", or until_h and the number");
  CHECK(text("\"until\": \"2\"") == "until: length of a stage 2 has no unit; write for example 2.5h or 90min");
  CHECK(text("\"until\": \"2kg\"") ==
        "until: length of a stage 2 has the unit \"kg\"; write for example 2.5h or 90min");
  CHECK(text("\"until_h\": \"2h\"") ==
        "until_h: a number is wanted, got the text \"2h\"; write the number alone; its unit is "
        "in the name");
  CHECK(path_to("\"until_h\": 2, \"until\": \"2h\"") == "until");
  CHECK(path_to("\"until_h\": 2, \"until_h\": 2") == "until_h");
  CHECK(path_to("\"until_h\": 2, \"folds_h\": [0.5, true]") == "folds_h[1]");
  CHECK(path_to("\"until_h\": 2, \"piece\": {\"mass_g\": -1}") == "piece.mass_g");
  CHECK(path_to("\"until_h\": 2, \"piece\": {\"mas_g\": 1}") == "piece.mas_g");
  CHECK(path_to("\"until_h\": 2, \"handling\": [\"fold\", \"throw\"]") == "handling[1]");
  CHECK(path_to("\"until_h\": 2, \"surroundings\": {}") == "surroundings");  // twice
  CHECK(path_to("\"until_h\": NaN") == "until_h");
  CHECK(path_to("\"until_h\": 1e999") == "until_h");
}

TEST_CASE("a temperature in °F that cannot be is told as it was written") {
  const auto told = [](const char* text) { return said([&] { quantity_from(field::room_c, text); }); };
  CHECK(told("250F") == "room temperature 121.111 °C is outside −30 to 60 °C");
  CHECK(told("-40F") == "room temperature −40 °C is outside −30 to 60 °C");
  CHECK(told("150F") == "room temperature 65.5556 °C is outside −30 to 60 °C");
  CHECK(told("70C") == "room temperature 70 °C is outside −30 to 60 °C; did you mean 70 °F?");
  CHECK(quantity_from(field::room_c, " \u22124,5 °C ") == -4.5);
  CHECK(quantity_from(field::friction_k, "9F") == 5);
  CHECK(quantity_from(field::flour_g, "0,5kg") == 500);
  for (const char* const text :
       {"", "C", "1,000kg", "1.2.3C", "--4C", "4C5C", "4 C °", "12345678901234567890C", "1e3g"})
    CHECK_THROWS_AS(quantity_from(field::flour_g, text), InvalidInput);
}

TEST_CASE("text that is no document") {
  const auto told = [](const std::string& text) { return said([&] { from_document<Stage>(text); }); };
  CHECK(told("") == "the text is empty; a document begins with {");
  CHECK(told("[]") == "a table is wanted, got a list");
  CHECK(told("{\"name\": \"bulk\",\n \"until_h\": }") ==
        "until_h: it is not valid JSON at line 2, column 13; look there for a comma, a quote or a bracket");
  CHECK(told("{\"name\": \"bu").find("line 1, column 13") != std::string::npos);
  CHECK(told("{\"name\": \"\xc3\x28\"}").find("line 1") != std::string::npos);
  CHECK(told(std::string(100000, '[')).find("more than 32 deep") != std::string::npos);
  CHECK(told(std::string(longest_document + 1, ' ')).find("bytes") != std::string::npos);
  CHECK(told("{\"" + std::string(1000000, 'a') + "\": 1}").find("1000000 letters") != std::string::npos);
  CHECK(told("{\"format\": \"libferment process\"}").find("\"libferment stage\" is wanted") != std::string::npos);
  CHECK(told("{\"version\": 7}").find("reads version 1") != std::string::npos);
  CHECK(told("{\"until_h\": 2, \"surroundings\": {\"places\": []}}") ==
        "name: Stage needs name: such as bulk; give name");
}

TEST_CASE("of several forms the type decides, or the keys") {
  const auto mixing = [](const char* text) {
    return from_document<Mix>("{\"room_c\": 20, \"flour_g\": 500, \"mixing\": " + std::string(text) + "}").mixing;
  };
  CHECK(std::get<ByMethod>(*mixing("\"hand\"")).method == "hand");
  CHECK(std::get<ByMethod>(*mixing("{\"method\": \"hand\"}")).method == "hand");
  CHECK(std::get<ByNetGain>(*mixing("{\"net_gain_kj_per_kg\": 5}")).net_gain_kj_per_kg == 5);
  CHECK(std::get<ByWork>(*mixing("{\"type\": \"ByWork\", \"work_kj_per_kg\": 9}")).work_kj_per_kg == 9);
  CHECK_THROWS_AS(mixing("{}"), InvalidInput);
  CHECK_THROWS_AS(mixing("{\"type\": \"Stage\"}"), InvalidInput);
}

TEST_CASE("schemas") {
  const std::string schema = schema_of(form_of<Process>());
  CHECK(schema.find("\"https://json-schema.org/draft/2020-12/schema\"") != std::string::npos);
  CHECK(schema.find("\"until_rise_percent\"") != std::string::npos);
}
