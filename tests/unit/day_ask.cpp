#include <ferment/day/ask.hpp>

#include <atomic>
#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <ferment/ferment.hpp>

#include <nlohmann/json.hpp>

#include "refusal.hpp"

using namespace ferment;
using Json = nlohmann::ordered_json;

namespace {

/// Buns with a night in the refrigerator, with a clock.
const std::string buns = R"({
  "title": "Buns for a choir", "start": "17:00",
  "today": {"room_c": 20, "flour_c": 19, "tap_c": 11},
  "water": {"desired_c": 24},
  "dough": {"flour_g": 900, "yeast_percent": 0.6, "water_percent": 50, "milk_percent": 12},
  "bowl": {"mass_g": 1100},
  "mixing": {"method": "stand_mixer", "minutes": 8},
  "stage": [
    {"name": "bulk", "piece": "tub", "room_c": 20, "until_rise_percent": 70, "handling": ["divide", "round"]},
    {"name": "proof", "piece": "ball", "piece_g": 85, "proof_box_c": 27, "until_rise_percent": 60}
  ]
})";

/// The day without its clock, kept from what a process would be asked.
Day day_of(const std::string& text) { return from_document<Day>(text); }

std::string question(const std::string& what, const std::string& members = "") {
  return R"({"ask": ")" + what + R"(", "day": )" + buns + (members.empty() ? "" : ", " + members) + "}";
}

/// The members of an answer that are those of a plain form.
template <class Value>
Value plain(const std::string& answer) {
  const Json all = Json::parse(answer);
  Json kept = Json::object();
  for (const Row& row : form_of<Value>().rows) {
    REQUIRE(all.contains(std::string(row.name)));
    kept[std::string(row.name)] = all[std::string(row.name)];
  }
  return from_document<Value>(kept.dump());
}

/// One member of an answer as a document of its own.
template <class Value>
Value member(const std::string& answer, const std::string& name) {
  return from_document<Value>(Json::parse(answer).at(name).dump());
}

std::vector<Notice> notices_in(const std::string& answer, const std::string& name = "notices") {
  std::vector<Notice> notices;
  const Json all = Json::parse(answer);
  for (const Json& notice : all.at(name)) notices.push_back(from_document<Notice>(notice.dump()));
  return notices;
}

template <class Value>
bool same(const Value& a, const Value& b) {
  return ferment::same(form_of<Value>(), &a, &b);
}
bool same(const std::vector<Notice>& a, const std::vector<Notice>& b) {
  bool all = a.size() == b.size();
  for (std::size_t i = 0; all && i < a.size(); ++i) all = same(a[i], b[i]);
  return all;
}

/// A forecast as an answer has it: without the hour of every draw.
Forecast without_draws(Forecast forecast) {
  for (StageForecast& stage : forecast.stages) {
    stage.ready.clear();
    stage.too_late.clear();
  }
  return forecast;
}

std::string told(const std::string& question) {
  return said([&] { ask(question); });
}

template <class Refusal>
std::string path_of(const std::string& question) {
  try {
    ask(question);
  } catch (const Refusal& error) {
    return error.detail().path;
  }
  return "answered";
}

const ForecastOptions few{.draws = 16};
const std::string few_draws = R"("draws": 16)";

}  // namespace

// ---- every kind of question --------------------------------------------------------------------------------------

TEST_CASE("water: the plan, the mix with it, and what was assumed") {
  const std::string answer = ask(question("water"));
  const Day day = day_of(buns);
  const WaterPlan plan = water_of(day);
  CHECK(Json::parse(answer).at("format") == "libferment water answer");
  CHECK(same(plain<WaterPlan>(answer), plan));
  CHECK(same(member<Mix>(answer, "mix"), with_water(mix_of(day), plan)));
  CHECK(same(notices_in(answer), plan.notices));
  CHECK(same(notices_in(answer, "assumed"), assumptions_of(day)));
  CHECK(notices_in(answer, "assumed").size() == 1);  // the salt
}

TEST_CASE("water of a kitchen: its parameters count in the preferment's history") {
  const std::string sponge = R"("preferment": {"flour_percent": 20, "water_percent": 80, "yeast_percent": 0.3,
                                "stands_h": 9, "temperature_c": 20}, )";
  std::string text = question("water", R"("kitchen": {"gassing_rate": 12})");
  text.insert(text.find("\"bowl\""), sponge);
  std::string of_day = buns;
  of_day.insert(of_day.find("\"bowl\""), sponge);
  Kitchen kitchen;
  kitchen.gassing_rate = 12;
  const Day day = day_of(of_day);
  CHECK(same(member<Mix>(ask(text), "mix"), with_water(mix_of(day, kitchen), water_of(day, kitchen))));
  CHECK_FALSE(same(mix_of(day, kitchen), mix_of(day)));
}

TEST_CASE("mixing: what the batches say") {
  std::string text = question("mixing"), of_day = buns;
  const std::string batch = R"("batch": [{"dough": "24.5C", "water": "70F", "flour_c": 19, "room_c": 21},
                               {"dough_c": 23.5, "water_c": 19, "flour_c": 18.5, "room_c": 20}], )";
  text.insert(text.find("\"bowl\""), batch);
  of_day.insert(of_day.find("\"bowl\""), batch);
  CHECK(same(plain<LearnedMixing>(ask(text)), learned_mixing(day_of(of_day))));
  CHECK(same(notices_in(ask(text), "assumed"), assumptions_of(day_of(of_day))));
}

TEST_CASE("simulate: a timeline, of a day and of a process") {
  const std::string answer = ask(question("simulate", R"("every_min": 10)"));
  const Process process = process_of(day_of(buns));
  const Timeline timeline = simulate(process, {}, std::nullopt, {.every_min = 10});
  CHECK(same(plain<Timeline>(answer), timeline));
  CHECK(same(notices_in(answer), timeline.notices));
  CHECK(Json::parse(answer).at("title") == "Buns for a choir");
  CHECK(Json::parse(answer).at("clock") == true);
  CHECK(timeline.time_h.size() > 10);

  const std::string plainly = ask(R"({"ask": "simulate", "every_min": 10, "process": )" + to_document(process) + "}");
  CHECK(same(plain<Timeline>(plainly), timeline));
  CHECK(Json::parse(plainly).at("clock") == false);
  CHECK(Json::parse(plainly).at("assumed").empty());
}

TEST_CASE("simulate from where the dough is now") {
  const Process process = process_of(day_of(buns));
  const State state = simulate(process, {}, std::nullopt, {.every_min = 0, .stop_h = 19.0}).state;
  const std::string answer = ask(question("simulate", R"("every_min": 0, "state": )" + to_document(state)));
  CHECK(same(plain<Timeline>(answer), simulate(process, {}, state, {.every_min = 0})));
  CHECK(plain<Timeline>(answer).time_h.front() == 19);
}

TEST_CASE("forecast: every stage, with and without its draws") {
  const std::string answer = ask(question("forecast", few_draws));
  const Forecast plainly = forecast(process_of(day_of(buns)), {}, std::nullopt, few);
  CHECK(same(plain<Forecast>(answer), without_draws(plainly)));
  CHECK(same(notices_in(answer), plainly.notices));
  CHECK(same(plain<Forecast>(ask(question("forecast", few_draws + R"(, "every_draw": true)"))), plainly));
  CHECK(plainly.stages.at(1).ready.size() == 16);
}

TEST_CASE("a forecast in which a stage is never ready in some draws, or in all, is an answer") {
  std::string text = R"({"ask": "forecast", "draws": 32, "every_draw": true, "day": {"today": {"room_c": 20},
    "water": {"desired_c": 24}, "dough": {"yeast_percent": 0.6},
    "stage": [{"name": "bulk", "dough_c": 24, "until_rise_percent": 000}]}})";
  for (const auto& [rise, least, most] : {std::tuple{"275", 0.01, 0.99}, std::tuple{"900", 1.0, 1.0}}) {
    std::string asked = text;
    asked.replace(asked.find("000"), 3, rise);
    const auto stage = plain<Forecast>(ask(asked)).stages.at(0);
    CHECK(stage.never_ready >= least);
    CHECK(stage.never_ready <= most);
    CHECK(std::isinf(stage.ready.back()));
  }
}

TEST_CASE("choose: yeast, to the user's scale") {
  const Process process = process_of(day_of(buns));
  const Choice plainly = yeast_for(process, {"proof", 23.5}, 0.1, {}, std::nullopt, few);
  for (const std::string when : {R"("ready": "23:30")", R"("ready_h": 23.5)"}) {
    const std::string answer =
        ask(question("choose", R"("what": "yeast", "stage": "proof", "scale_g": 0.1, )" + when + ", " + few_draws));
    CHECK(same(plain<Choice>(answer), plainly));
    CHECK(same(notices_in(answer), plainly.notices));
  }
  CHECK(plainly.what == "yeast_g");
  const std::string last =  // the last stage, if none is said
      ask(question("choose", R"("what": "yeast", "scale": "0.1g", "ready": "23:30", )" + few_draws));
  CHECK(same(plain<Choice>(last), plainly));
}

TEST_CASE("choose: water, room, start and the refrigerator") {
  const Process process = process_of(day_of(buns));
  const double median_h = forecast(process, {}, std::nullopt, few).stages.at(1).ready_h;
  const auto asked = [&](const std::string& members, double ready_h) {
    return plain<Choice>(
        ask(question("choose", members + R"(, "ready_h": )" + Json(ready_h).dump() + ", " + few_draws)));
  };
  const Wanted later{"proof", median_h + 0.25}, slower{"proof", median_h + 0.2};
  CHECK(same(asked(R"("what": "water")", later.ready_h), water_for(process, later, {}, std::nullopt, few)));
  CHECK(same(asked(R"("what": "room")", later.ready_h), room_for(process, later, Air::room, {}, std::nullopt, few)));
  CHECK(same(asked(R"("what": "room", "air": "proof_box")", later.ready_h),
             room_for(process, later, Air::proof_box, {}, std::nullopt, few)));
  CHECK(same(asked(R"("what": "start")", later.ready_h), latest_start(process, later, {}, few)));
  const auto refrigerated = [&](double air_c) {
    return refrigerate_from(process, slower, "bulk", Surroundings::refrigerator(air_c), {}, std::nullopt, few);
  };
  const std::string move = R"("what": "refrigerate", "moved": "bulk")";
  CHECK(same(asked(move + R"(, "refrigerator_c": 12)", slower.ready_h), refrigerated(12)));
  CHECK_FALSE(same(refrigerated(12), refrigerated(13)));
}

TEST_CASE("choose: when to take the dough out") {
  Day day = day_of(buns);
  day.stages[0].where = {.refrigerator_c = 8};
  const Process process = process_of(day);
  const Wanted wanted{"bulk", 19};
  const Choice plainly = take_out_at(process, wanted, "bulk", Surroundings::room(22), {}, std::nullopt, few);
  const Json asked{{"ask", "choose"},  {"what", "take_out"}, {"stage", "bulk"}, {"moved", "bulk"},
                   {"ready", "19:00"}, {"room", "22C"},      {"draws", 16},     {"day", Json::parse(to_document(day))}};
  Json question = asked;
  CHECK(same(plain<Choice>(ask(question.dump())), plainly));
  question.erase("room");
  CHECK(told(question.dump()) == "room_c: the room into which the dough comes has no temperature");
}

TEST_CASE("rise: hours to a rise, and the rise after hours") {
  const Dough dough{.dough_c = 23, .yeast_percent = 0.8, .yeast = Yeast::compressed, .sugar_percent = 4};
  const std::string of_dough = R"("dough": "23C", "yeast_percent": 0.8, "yeast": "compressed", "sugar": "4%"})";
  Json answer = Json::parse(ask(R"({"ask": "rise", "rise_percent": 90, )" + of_dough));
  CHECK(answer.at("hours").get<double>() == hours_to_rise(90, dough));
  CHECK(answer.at("rise_percent").get<double>() == 90);
  answer = Json::parse(ask(R"({"ask": "rise", "time": "150min", )" + of_dough));
  CHECK(answer.at("rise_percent").get<double>() == rise_after(2.5, dough));
  CHECK(answer.at("hours").get<double>() == 2.5);
  const std::string sweet =
      ask(R"({"ask": "rise", "rise_percent": 200, "dough_c": 36, "yeast_percent": 3, "sugar_percent": 25})");
  CHECK(same(notices_in(sweet), cautions({.dough_c = 36,
                                          .yeast_percent = 3,
                                          .salt_percent = 2,
                                          .water_percent = 65,
                                          .sugar_percent = 25,
                                          .gluten_percent = 0,
                                          .altitude_m = 0,
                                          .rise_percent = 200})));
  CHECK_FALSE(notices_in(sweet).empty());
  CHECK(Json::parse(ask(R"({"ask": "rise", "time_h": 0, "dough_c": 24, "yeast_percent": 1})")).at("rise_percent") == 0);
}

TEST_CASE("explain and cautions") {
  const std::string why = ask(R"({"ask": "explain", "rise_percent": 80, "dough_c": 21, "yeast_percent": 0.4})");
  CHECK(same(plain<Explanation>(why), explain(80, {.dough_c = 21, .yeast_percent = 0.4})));
  const std::string beware = ask(R"({"ask": "cautions", "water_c": 71, "refrigerator": "50F", "perishable": "9h"})");
  CHECK(same(notices_in(beware), cautions({.water_c = 71, .refrigerator_c = 10, .perishable_h = 9})));
  CHECK(notices_in(beware).size() >= 3);
  CHECK(notices_in(ask(R"({"ask": "cautions"})")).empty());
}

TEST_CASE("keys: the schema of every form that is asked or answered") {
  CHECK(ask(R"({"ask": "keys", "of": "Day"})") == schema_of(form_of<Day>()));
  CHECK(ask(R"({"ask": "keys", "of": "Process"})") == schema_of(form_of<Process>()));
  for (const std::string name : {"WaterQuestion",
                                 "MixingQuestion",
                                 "SimulateQuestion",
                                 "ForecastQuestion",
                                 "ChooseQuestion",
                                 "RiseQuestion",
                                 "ExplainQuestion",
                                 "CautionsQuestion",
                                 "KeysQuestion",
                                 "WaterAnswer",
                                 "MixingAnswer",
                                 "SimulateAnswer",
                                 "ForecastAnswer",
                                 "ChooseAnswer",
                                 "RiseAnswer",
                                 "Explanation",
                                 "CautionsAnswer",
                                 "Mix",
                                 "State",
                                 "Kitchen"}) {
    CAPTURE(name);
    CHECK(Json::parse(ask(R"({"ask": "keys", "of": ")" + name + "\"}")).at("title") == name);
  }
  CHECK(told(R"({"ask": "keys", "of": "Dya"})").find("of: no form is called \"Dya\"; did you mean Day?") == 0);
  CHECK(says(told(R"({"ask": "keys"})"), "KeysQuestion needs of"));
}

TEST_CASE("a schema lets its documents be")  // of what it lists, and nothing else
{
  const Json schema = Json::parse(ask(R"({"ask": "keys", "of": "SimulateQuestion"})"));
  for (const std::string name : {"ask", "day", "process", "state", "kitchen", "every_min"}) {
    CAPTURE(name);
    CHECK(schema.at("properties").contains(name));
  }
  CHECK(schema.at("properties").at("ask").at("const") == "simulate");
  CHECK(schema.at("required") == Json::array({"ask"}));
  for (const std::string name : {"format", "version", "$schema"})
    CHECK(schema.at("$defs").at("State").at("properties").contains(name));
}

TEST_CASE("a document stands in another one as it is, if it is of that form") {
  const std::string process = to_document(process_of(day_of(buns)));
  CHECK(says(told(R"({"ask": "simulate", "day": )" + process + "}"),
             "day.format: it is the text \"libferment process\", and \"libferment day\" is wanted"));
  std::string later = process;
  later.replace(later.find("\"version\":1"), 11, "\"version\":8");
  CHECK(path_of<InvalidInput>(R"({"ask": "simulate", "process": )" + later + "}") == "process.version");
  CHECK(ask(R"({"format": "libferment water question", "version": 1, "ask": "water", "day": )" + buns + "}") ==
        ask(question("water")));
  CHECK(path_of<InvalidInput>(R"({"format": "libferment day", "ask": "water", "day": )" + buns + "}") == "format");
}

// ---- what cannot be answered -------------------------------------------------------------------------------------

TEST_CASE("a question says what it asks") {
  CHECK(told("{}") ==
        "ask: nothing is asked; known: water, mixing, simulate, forecast, choose, look, learn, update, rise, explain, "
        "cautions, keys");
  CHECK(told(R"({"ask": "watr"})").find("ask: question \"watr\" is unknown; did you mean water?") == 0);
  CHECK(told(R"({"ask": ["water"]})") == "ask: a text is wanted, got a list");
  CHECK(told("[1]") == "a question is a table, got a list");
  CHECK(told("") == "the text is empty; a document begins with {");
  CHECK(says(told(R"({"ask": "water", )"), "line 1, column"));
  CHECK(says(told(R"({"ask": ")" + std::string(5000, 'a') + "\"}"), "is unknown"));
  CHECK(told(R"({"ask": ")" + std::string(5000, 'a') + "\"}").size() < 400);
}

TEST_CASE("a message never cuts through a letter") {
  for (std::size_t ahead = 56; ahead < 62; ++ahead) {
    const std::string name = std::string(ahead, 'a') + "\u00e9\u20ac\U0001f35e";
    for (const std::string& asked : {"{\"ask\": \"" + name + "\"}", R"({"ask": "keys", "of": ")" + name + "\"}",
                                     "{\"ask\": \"water\", \"day\": {\"date\": \"" + name + "\"}}",
                                     "{\"ask\": \"water\", \"day\": \"" + name + "\"}"})
      CHECK_NOTHROW(Json(told(asked)).dump());  // throws for what is no UTF-8
  }
}

TEST_CASE("an error carries the way through the question") {
  const auto changed = [](const std::string& what, const std::string& from, const std::string& to) {
    std::string text = question(what, what == "forecast" ? few_draws : "");
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
  };
  using Bad = InvalidInput;
  for (const std::string what : {"simulate", "forecast"}) {
    CAPTURE(what);
    CHECK(path_of<Bad>(changed(what, R"("until_rise_percent": 60)", R"("until_h": -1)")) == "day.stage[1].until_h");
    CHECK(path_of<Bad>(changed(what, R"("until_rise_percent": 60)", R"("until": "3kg")")) == "day.stage[1].until");
    CHECK(path_of<Bad>(changed(what, R"("proof_box_c": 27)", R"("proof_box_c": 27, "from": "20:00")")) ==
          "day.stage[0].until_rise_percent");
    CHECK(path_of<Bad>(changed(what, R"("piece_g": 85)", R"("piece_g": 85000)")) == "day.stage[1].piece_g");
    CHECK(path_of<Bad>(changed(what, R"("piece_g": 85)", R"("folds_h": [2, 1])")) == "day.stage[1].folds_h");
    CHECK(path_of<Bad>(changed(what, R"("piece_g": 85)", R"("cover": "open")")) == "day.stage[1].humidity_percent");
  }
  CHECK(path_of<NoSolution>(changed("simulate", "\"until_rise_percent\": 60", "\"until_rise_percent\": 900")) ==
        "day.stage[1].until_rise_percent");
  CHECK(path_of<Bad>(changed("water", R"("desired_c": 24)", R"("desired_c": 240)")) == "day.water.desired_c");
  CHECK(path_of<Bad>(changed("water", R"("water": {"desired_c": 24})", R"("water": {})")) == "day.water.desired_c");
  CHECK(path_of<Bad>(changed("water", R"("water_percent": 50)", R"("water_percent": 20)")) ==
        "day.dough.water_percent");
  CHECK(path_of<Bad>(question("mixing")) == "day.batch");
  CHECK(path_of<Bad>(changed("water", R"("mass_g": 1100)", R"("mas_g": 1100)")) == "day.bowl.mas_g");
  CHECK(path_of<Bad>(question("water", R"("kitchen": {"gassing_rate": -1})")) == "kitchen.gassing_rate");
  CHECK(path_of<Bad>(question("water", R"("draws": 4)")) == "draws");  // no option of this question
  CHECK(path_of<Bad>(question("forecast", R"("draws": 1)")) == "draws");
  CHECK(path_of<Bad>(question("forecast", R"("draws": 16.5)")) == "draws");
  CHECK(path_of<Bad>(question("simulate", R"("every_min": -1)")) == "every_min");
  CHECK(path_of<NoSolution>(changed("water", R"("desired_c": 24)", R"("desired_c": 44)")).find("day") == 0);
}

TEST_CASE("a process of a question has its own ways") {
  Process process = process_of(day_of(buns));
  std::get<Stage>(process.steps[2]).until_rise_percent = 900;
  CHECK(path_of<NoSolution>(R"({"ask": "simulate", "process": )" + to_document(process) + "}") ==
        "process.steps[2].until_rise_percent");
  CHECK(path_of<InvalidInput>(R"({"ask": "simulate", "process": {"steps": [{"flour_g": -4}]}})")
            .find("process.steps[0]") == 0);
}

TEST_CASE("a question's own contradictions") {
  const std::string process = to_document(process_of(day_of(buns)));
  for (const std::string what : {"simulate", "forecast"}) {
    CHECK(told(question(what, "\"process\": " + process)) ==
          "day: a question is about a day or about a process; leave one of the two out");
    CHECK(told("{\"ask\": \"" + what + "\"}") ==
          "day: a question is about a day or about a process; give one of the "
          "two");
  }
  const std::string twice =
      "ready_h: when the stage is to be ready is said once; ready_h, in hours of the process; or "
      "ready, a time of day";
  CHECK(told(question("choose", R"("what": "yeast", "ready_h": 23, "ready": "23:00")")) == twice);
  CHECK(told(question("choose", R"("what": "yeast")")) == twice);
  CHECK(says(told(question("choose", R"("ready_h": 23)")), "ChooseQuestion needs what"));
  CHECK(path_of<InvalidInput>(question("choose", R"("what": "luck", "ready_h": 23)")) == "what");
  for (const std::string what : {"refrigerate", "take_out"}) {
    CHECK(told(question("choose", "\"what\": \"" + what + "\", \"ready_h\": 23")) ==
          "moved: which stage's dough is moved is not said; name the stage");
  }
  CHECK(path_of<InvalidInput>(question("choose", R"("what": "yeast", "ready_h": 23, "stage": "prof")")) == "stage");
  CHECK(says(told(question("choose", R"("what": "yeast", "ready": "half past nine")")), "no time of day"));
  CHECK(path_of<InvalidInput>(question("choose", R"("what": "yeast", "ready": "half past nine")")) == "ready");
  CHECK(told(R"({"ask": "choose", "what": "yeast", "ready": "23:00", "process": )" + process + "}") ==
        "ready: a time of day says nothing without the day's own; give the day start or mixed; or ready_h");
  const std::string one = "rise_percent: a rise or a time is given, the other one asked; rise_percent, or time_h";
  CHECK(told(R"({"ask": "rise", "dough_c": 24, "yeast_percent": 1})") == one);
  CHECK(told(R"({"ask": "rise", "dough_c": 24, "yeast_percent": 1, "time_h": 1, "rise_percent": 80})") == one);
  CHECK(path_of<InvalidInput>(R"({"ask": "rise", "rise_percent": 80, "yeast_percent": 1})") == "dough_c");
  CHECK(says(told(R"({"ask": "rise", "rise_percent": 80, "yeast_percent": 1})"), "needs dough_c"));
}

TEST_CASE("a time of day that is wanted is the first one from where the dough is now") {
  const Process process = process_of(day_of(buns));
  State state = simulate(process, {}, std::nullopt, {.every_min = 0, .stop_h = 19.0}).state;
  state.time_h += 24;  // a day later
  state.stage->start_h += 24;
  const std::string answer = ask(question("choose", R"("what": "room", "air": "proof_box", "ready": "23:00", )" +
                                                        few_draws + R"(, "state": )" + to_document(state)));
  CHECK(std::abs(plain<Choice>(answer).ready_h - 47) < 1e-6);
}

// ---- options -----------------------------------------------------------------------------------------------------

TEST_CASE("options reach the functions") {
  const Process process = process_of(day_of(buns));
  const Forecast usual = without_draws(forecast(process, {}, std::nullopt, few));
  const auto reaches = [&](const std::string& members, const ForecastOptions& options) {
    const auto answer = plain<Forecast>(ask(question("forecast", members)));
    CHECK(same(answer, without_draws(forecast(process, {}, std::nullopt, options))));
    return !same(answer, usual);
  };
  CHECK(reaches(R"("draws": 24)", {.draws = 24}));
  CHECK(reaches(R"("draws": 16, "seed": 11)", {.draws = 16, .seed = 11}));
  CHECK(reaches(R"("draws": 16, "tolerance": 0.001)", {.draws = 16, .tolerance = 0.001}));
  CHECK(reaches(R"("draws": 16, "heat_of_fermentation": false)", {.draws = 16, .heat_of_fermentation = false}));
  CHECK_FALSE(reaches(R"("draws": 16)", few));

  const auto choice = plain<Choice>(
      ask(question("choose", R"("what": "start", "ready_h": 24, "draws": 24, "seed": 11, "tolerance": 0.001)")));
  CHECK(same(choice, latest_start(process, {"proof", 24}, {}, {.draws = 24, .tolerance = 0.001, .seed = 11})));

  const auto timeline =
      plain<Timeline>(ask(question("simulate", R"("tolerance": 0.01, "stop_h": 19, "every_min": 5)")));
  CHECK(same(timeline, simulate(process, {}, std::nullopt, {.every_min = 5, .stop_h = 19.0, .tolerance = 0.01})));
  Kitchen kitchen;
  kitchen.gassing_rate = 12;
  CHECK(same(plain<Forecast>(ask(question("forecast", few_draws + R"(, "kitchen": {"gassing_rate": 12})"))),
             without_draws(forecast(process, kitchen, std::nullopt, few))));
}

TEST_CASE("a program may end a long call") {
  struct Stop {};
  for (const std::string& asked : {question("simulate"), question("forecast", few_draws),
                                   question("choose", R"("what": "yeast", "ready_h": 23.5, )" + few_draws)}) {
    int calls = 0;
    const auto stop_after = [&calls](int most) {
      return AskOptions{.interrupt = [&calls, most] {
        if (++calls > most) throw Stop{};
      }};
    };
    CHECK_THROWS_AS(ask(asked, stop_after(0)), Stop);
    CHECK_THROWS_AS(ask(asked, stop_after(5)), Stop);
    calls = 0;
    CHECK(ask(asked, stop_after(1 << 30)) == ask(asked));
    CHECK(calls > 5);
  }
}

TEST_CASE("a program may bring its own way to work off draws") {
  std::size_t done = 0;
  const AskOptions backwards{.for_each = [&done](std::size_t count, const std::function<void(std::size_t)>& work) {
    for (std::size_t i = count; i-- > 0;) work(i);
    done += count;
  }};
  const std::string asked = question("forecast", few_draws);
  CHECK(ask(asked, backwards) == ask(asked));
  CHECK(done >= 16);
}

TEST_CASE("answers are documents: whole, and read again") {
  for (const std::string& asked :
       {question("water"), question("simulate", R"("every_min": 30)"), question("forecast", few_draws)}) {
    const Json answer = Json::parse(ask(asked));
    CHECK(answer.at("version") == 1);
    CHECK(answer.at("format").get<std::string>().find("libferment ") == 0);
    CHECK(ask(asked) == answer.dump());
  }
}
