#include <ferment/day/day.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <doctest/doctest.h>
#include <ferment/ferment.hpp>

#include "refusal.hpp"

using namespace ferment;

namespace {

bool has_code(const std::vector<Notice>& notices, std::string_view code) {
  return std::any_of(notices.begin(), notices.end(), [&](const Notice& notice) { return notice.code == code; });
}

/// A loaf in a room of 19 °C, mixed from 8:00 on by hand.
Day loaf() {
  Day day;
  day.start = "8:00";
  day.today.room_c = 19;
  day.water.desired_c = 24;
  day.dough = {.flour_g = 800, .yeast_percent = 0.5};
  day.stages = {{.name = "bulk", .until_rise_percent = 80, .where = {.room_c = 19}}};
  return day;
}

/// Three stages, to be changed: by a rise, after hours, by a rise.
Day three_stages() {
  Day day = loaf();
  day.stages.push_back({.name = "bench", .until_h = 0.5});
  day.stages.push_back({.name = "proof", .until_rise_percent = 60});
  return day;
}

/// What is said of a day document that the day's forms refuse.
std::string refused(const std::string& members) {
  return said([&] { from_document<Day>("{" + members + "}"); });
}

/// The same of a stage with an end, in a day.
std::string refused_stage(const std::string& members) {
  return refused("\"stage\": [{\"name\": \"bulk\", \"until_h\": 2, " + members + "}]");
}

/// What is said where a day that its forms allow is made a process.
std::string refused_process(const Day& day) {
  return said([&] { process_of(day); });
}

Mix mix_in(const Process& process) { return std::get<Mix>(process.steps.at(0)); }
Stage stage_in(const Process& process, std::size_t i) { return std::get<Stage>(process.steps.at(i + 1)); }

/// The dough's temperature after the process's mix.
double mixed_c(const Day& day) { return whole_of(advance(State{}, process_of(day).steps.at(0))).temperature_c; }

template <class Value>
bool same(const Value& a, const Value& b) {
  return ferment::same(form_of<Value>(), &a, &b);
}

/// A day with milk, butter, a bowl and a mixer, whose minutes are in the room.
Day rich_day() {
  Day day = loaf();
  day.today = {.flour_c = 17, .room_c = 20.5, .tap_c = 9, .bowl_c = 18, .milk_c = 6, .egg_c = 7, .butter_c = 14};
  day.water.desired_c = 25.5;
  day.dough = {.flour_g = 1200,
               .yeast = Yeast::compressed,
               .yeast_percent = 1.5,
               .water_percent = 45,
               .sugar_percent = 6,
               .milk_percent = 12,
               .egg_percent = 5,
               .butter_percent = 8};
  day.bowl = {.material = "steel", .mass_g = 1400};
  day.mixing = {.method = "stand_mixer", .minutes = 9};
  return day;
}

/// The same with a third of the water in a sponge that stood over night.
Day with_sponge(Day day) {
  day.today.preferment_c = 16;
  day.preferment = {.flour_percent = 20,
                    .water_percent = 80,
                    .yeast_percent = 0.2,
                    .yeast = Yeast::instant,
                    .stands_h = 11,
                    .temperature_c = 18};
  return day;
}

}  // namespace

// ---- times of day ------------------------------------------------------------------------------------------------

TEST_CASE("a time of day is the first one from an hour on") {
  CHECK(moment_h("8:15") == 8.25);
  CHECK(moment_h("08:15") == 8.25);
  CHECK(moment_h("0:00") == 0);
  CHECK(moment_h("23:59") == 23 + 59 / 60.0);
  CHECK(moment_h("7:30", 8) == 31.5);   // after midnight
  CHECK(moment_h("7:30", 7.5) == 7.5);  // at that very moment
  CHECK(moment_h("7:30", 7.5 + 1e-6) == 31.5);
  CHECK(moment_h("7:30", 50) == 55.5);   // two midnights later
  CHECK(moment_h("23:00", -1.5) == 23);  // never before the day
  CHECK(moment_h("0:00", 24) == 24);
  CHECK(moment_h("11:05", 11 + 5 / 60.0) == 11 + 5 / 60.0);
}

TEST_CASE("a day in front of a time of day counts from the day's own, whatever came before") {
  CHECK(moment_h("+1 7:30") == 31.5);
  CHECK(moment_h("+1 7:30", 100) == 31.5);
  CHECK(moment_h("+0 7:30", 8) == 7.5);
  CHECK(moment_h("+12 0:45") == 288.75);
}

TEST_CASE("what is no time of day is refused") {
  for (const char* const text : {"",         " ",
                                 "8",        "8:",
                                 ":15",      "8:5",
                                 "8:155",    "8:60",
                                 "24:00",    "008:15",
                                 "8.15",     "8:15 ",
                                 " 8:15",    "8:15pm",
                                 "-1:00",    "+1",
                                 "+1 ",      "+ 7:30",
                                 "1 7:30",   "+1  7:30",
                                 "+1 24:00", "+1\t7:30",
                                 "-1 7:30",  "+100 8:00",
                                 "noon",     "8:1\xef\xbc\x95",
                                 "8:15\n"}) {
    INFO(text);
    CHECK(says(said([&] { moment_h(text); }), "no time of day"));
  }
  CHECK(said([] { moment_h("8 Uhr"); }) ==
        "\"8 Uhr\" is no time of day; write 8:15 or 18:30, or \"+1 7:30\" for the next morning");
  CHECK(says(said([] { moment_h(std::string(5000, '8')); }), "a text of 5000 is no time of day"));
  const double none = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(moment_h("8:15", none), InvalidInput);
}

TEST_CASE("an hour as a time of day") {
  CHECK(moment_text(0) == "0:00");
  CHECK(moment_text(8.25) == "8:15");
  CHECK(moment_text(31.5) == "+1 7:30");
  CHECK(moment_text(288.75) == "+12 0:45");
  CHECK(moment_text(23.999) == "+1 0:00");  // to the minute
  CHECK(moment_text(-0.5) == "\u22121 23:30");
  CHECK(moment_text(-24) == "\u22121 0:00");
  for (int minute = 0; minute < 3 * 24 * 60; ++minute) {
    const double hour = minute / 60.0;
    REQUIRE(std::abs(moment_h(moment_text(hour)) - hour) < 1e-12);
  }
  for (const double hour : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(), 1e300})
    CHECK_THROWS_AS(moment_text(hour), InvalidInput);
}

// ---- what is refused ---------------------------------------------------------------------------------------------

TEST_CASE("an amount is given in percent or in grams") {
  for (const std::string name : {"yeast", "water", "salt", "sugar", "gluten", "milk", "egg", "butter", "oil"}) {
    const std::string both = "\"dough\": {\"water_percent\": 60, \"" + name + "_percent\": 5, \"" + name + "_g\": 40}";
    const std::string its = name == "water" ? "\"dough\": {\"water_percent\": 60, \"water_g\": 40}" : both;
    CHECK(refused(its) == "dough." + name + "_percent: both " + name + "_percent and " + name +
                              "_g are given; leave one of the two out");
  }
  CHECK(refused("\"flour\": [{\"percent\": 40}, {\"percent\": 60, \"mass_g\": 600}]") ==
        "flour[1].percent: both percent and mass_g are given; leave one of the two out");
}

TEST_CASE("what a day's dough needs besides") {
  CHECK(refused("\"dough\": {\"pieces\": 12}") ==
        "dough.piece_g: pieces and piece_g belong together; give both, and the weights are scaled");
  CHECK(refused("\"dough\": {\"piece_g\": 80}") ==
        "dough.pieces: pieces and piece_g belong together; give both, and the weights are scaled");
  for (const std::string moist : {"milk_percent", "milk_g", "egg_percent", "egg_g", "butter_percent", "butter_g"}) {
    CHECK(refused("\"dough\": {\"" + moist + "\": 10}") ==
          "dough.water_percent: a dough with milk, egg or butter needs its water, too; say how much is poured besides, "
          "0 if none");
  }
  CHECK(refused("\"dough\": {\"oil_percent\": 3}") == "accepted");
}

TEST_CASE("a preferment's contradictions") {
  const auto told = [](const std::string& members) { return refused("\"preferment\": {" + members + "}"); };
  const std::string flour = "\"flour_percent\": 20, ", both = flour + "\"water_percent\": 100";
  CHECK(told(both) == "accepted");
  CHECK(told("\"water_percent\": 100") == "preferment.flour_g: DayPreferment needs one of flour_g and flour_percent");
  CHECK(told(both + ", \"flour_g\": 100") ==
        "preferment.flour_g: DayPreferment takes only one of flour_g and flour_percent");
  CHECK(told(flour + "\"flour_c\": 3").find("preferment.flour_c: the key \"flour_c\" is unknown") == 0);
  CHECK(told("\"flour_percent\": 20") == "preferment.water_g: DayPreferment needs one of water_g and water_percent");
  CHECK(told(both + ", \"yeast_g\": 1, \"yeast_percent\": 1") ==
        "preferment.yeast_g: both yeast_g and yeast_percent are given; leave one of the two out");
  CHECK(told(both + ", \"stands_h\": 8") == "preferment.temperature_c: a preferment that stands needs its temperature");
  CHECK(told(both + ", \"yeast_percent\": 1, \"temperature_c\": 20") ==
        "preferment.stands_h: a preferment with yeast needs the hours that it stands");
}

TEST_CASE("the heat of mixing is said once") {
  const auto told = [](const std::string& members) { return refused("\"mixing\": {" + members + "}"); };
  const std::string once =
      "mixing.method: method, work_kj_per_kg and net_gain_kj_per_kg are each all of the heat; "
      "give one of them";
  CHECK(told("\"method\": \"hand\", \"work_kj_per_kg\": 8") == once);
  CHECK(told("\"method\": \"hand\", \"net_gain_kj_per_kg\": 8") == once);
  CHECK(told("\"work_kj_per_kg\": 8, \"net_gain_kj_per_kg\": 8") == once);
  CHECK(told("\"net_gain_kj_per_kg\": 8, \"hydration_kj_per_kg\": 15") ==
        "mixing.hydration_kj_per_kg: a net gain holds the heat of hydration already; leave it out");
  CHECK(told("\"method\": \"hand\", \"sd_kj_per_kg\": 1") ==
        "mixing.sd_kj_per_kg: it is the spread of a net gain, and there is none; give net_gain_kj_per_kg, too, or "
        "leave it out");
  CHECK(told("\"work_kj_per_kg\": 8, \"minutes\": 6") ==
        "mixing.minutes: work is the same whatever its minutes; leave them out, or give the method");
  CHECK(told("\"minutes\": 6") == "mixing.method: minutes need a method; such as stand_mixer");
  CHECK(told("\"hydration_kj_per_kg\": 15") ==
        "mixing.method: a heat of hydration needs a method; such as stand_mixer");
  CHECK(told("\"method\": \"moonlight\"").find("mixing.method: ") == 0);
  CHECK(told("\"net_gain_kj_per_kg\": 8, \"minutes\": 6, \"sd_kj_per_kg\": 1") == "accepted");
}

TEST_CASE("a place has one temperature") {
  CHECK(refused_stage("\"room_c\": 18, \"refrigerator_c\": 4") ==
        "stage[0].room_c: a place has one temperature or log, and here are 2; write a place for each, with the time "
        "from which it counts");
  CHECK(refused_stage("\"place\": [{\"room_c\": 18, \"dough_c\": 24, \"proof_box_c\": 30}]") ==
        "stage[0].place[0].room_c: a place has one temperature or log, and here are 3; write a place for each, with "
        "the time from which it counts");
  CHECK(refused_stage("\"room_c\": 18, \"place\": [{\"from\": \"22:00\"}]") ==
        "stage[0].place[0].room_c: a place needs a temperature; room_c, refrigerator_c, proof_box_c or dough_c");
  CHECK(refused_stage("\"dough_c\": 24, \"swing_k\": 2") ==
        "stage[0].swing_k: a swing needs the mean temperature of air; give room_c, too");
  CHECK(refused_stage("\"room_c\": 24, \"fan\": true") ==
        "stage[0].fan: a fan is reckoned with in a refrigerator alone");
  CHECK(refused_stage("\"room_c\": 18, \"from\": \"late\"").find("stage[0].from: \"late\" is no time of day") == 0);
  CHECK(refused_stage("\"room_c\": 18, \"swing_k\": 1, \"warmest\": \"4pm\"")
            .find("stage[0].warmest: \"4pm\" is no time of day") == 0);
}

TEST_CASE("humidity and a heat transfer of air that has no temperature are refused") {
  for (const std::string member : {"humidity_percent", "heat_transfer_w_per_m2_k"}) {
    CHECK(refused_stage("\"" + member + "\": 20") ==
          "stage[0]." + member +
              ": it is of air, and its temperature is not given; give room_c, refrigerator_c or "
              "proof_box_c, too");
  }
  CHECK(refused_stage("\"room_c\": 20, \"humidity_percent\": 70") == "accepted");
}

TEST_CASE("a log is refused under its own name") {
  for (const std::string name : {"room_log", "refrigerator_log", "proof_box_log", "dough_log"}) {
    const std::string falling = "\"" + name + R"(": {"time_h": [0, 2, 1], "temperature_c": [18, 18, 18]})";
    CHECK(refused_stage(falling).find("stage[0]." + name + ".time_h: ") == 0);
    const std::string uneven = "\"" + name + R"(": {"time_h": [0, 1], "temperature_c": [18]})";
    CHECK(refused_stage(uneven).find("stage[0]." + name) == 0);
  }
  CHECK(refused_stage(R"("dough_log": {"time_h": [0, 1], "temperature_c": [18, 58]})")
            .find("stage[0].dough_log: dough temperature 58 °C is outside −2 to 45 °C") == 0);
}

TEST_CASE("what was seen says something") {
  const auto told = [](const std::string& members) {
    return refused("\"seen\": [{\"stage\": \"bulk\", " + members + "}]");
  };
  CHECK(told("\"at\": \"11:00\"") ==
        "seen[0].rise_percent: nothing is said of what was seen; give a rise, a height or the dough's temperature");
  CHECK(told("\"at\": \"11:00\", \"rise_percent\": 50, \"over_proofed\": true") ==
        "seen[0].rise_percent: more than one thing is said of the rise; write a look of its own for each");
  CHECK(told("\"at\": \"11\", \"dough_c\": 22").find("seen[0].at: \"11\" is no time") == 0);
  CHECK(told("\"rise_percent\": 50") ==
        "seen[0].at: when it was looked at is said once; at, or between with two times");
  CHECK(told("\"between\": [\"10:30\"], \"rise_percent\": 50").find("seen[0].between: between needs two times") == 0);
  CHECK(told("\"at\": \"65min\", \"not_yet_percent\": 50") == "accepted");
  CHECK(told("\"at\": \"+1 0:10\", \"already_past\": \"50%\", \"dough\": \"72F\"") == "accepted");
}

TEST_CASE("a stage's name, ends and piece") {
  CHECK(refused("\"stage\": [{\"name\": \"\", \"until_h\": 2}]") == "stage[0].name: a stage has no name; such as bulk");
  CHECK(refused_stage("\"until_rise_percent\": 80") ==
        "stage[0].until_h: a stage ends by a rise or after a time, not by both; leave one of the two out");
  CHECK(refused_stage("\"ended\": \"soon\"").find("stage[0].ended: \"soon\" is no time of day") == 0);
  for (const std::string member : {"\"piece_g\": 400", "\"pieces\": 2", "\"diameter_cm\": 20", "\"length_cm\": 30",
                                   "\"depth_cm\": 9", "\"material\": \"glass\"", "\"vessel_g\": 300",
                                   "\"cover\": \"cloth\"", "\"worktop\": \"stone\"", "\"heat_loss_w_per_k\": 0.4"}) {
    CHECK(refused_stage(member) ==
          "stage[0].piece: what is said of a piece needs its shape; tub, ball, oblong, flat or tin");
    CHECK(refused_stage("\"piece\": \"tub\", " + member) == "accepted");
  }
  CHECK(refused("\"stage\": [{\"name\": \"bulk\"}]") ==
        "stage[0].until_rise_percent: stage \"bulk\" has no end; give until_rise_percent or until_h, or from to the "
        "next stage");
  CHECK(refused(R"("stage": [{"name": "bulk", "until_h": 2}, {"name": "proof", "from": "12:00", "until_h": 1}])") ==
        "stage[0].until_rise_percent: stage \"bulk\" has an end, and the next one says from when it is there; leave "
        "out one of the two");
  CHECK(refused(R"("stage": [{"name": "bulk"}, {"name": "proof", "from": "12:00", "until_h": 1}])") == "accepted");
}

TEST_CASE("a day's date and times") {
  for (const std::string date : {"29.11.2026", "2026-11-9", "2026/11/29", "2026-13-01", "2026-00-10", "2026-11-31",
                                 "2026-02-29", "2100-02-29", "2026-01-00"}) {
    CHECK(refused("\"date\": \"" + date + "\"") == "date: \"" + date + "\" is no date; write it as 2026-11-29");
  }
  for (const std::string date : {"2026-12-31", "2028-02-29", "2000-02-29"})
    CHECK(refused("\"date\": \"" + date + "\"") == "accepted");
  CHECK(says(refused("\"date\": \"" + std::string(4000, '9') + "\""), "date: a text of 4000 is no date"));
  CHECK(refused("\"start\": \"8\"").find("start: \"8\" is no time of day") == 0);
  CHECK(refused("\"mixed\": \"8\"").find("mixed: \"8\" is no time of day") == 0);
}

TEST_CASE("a bowl and flours are of their tables") {
  CHECK(refused("\"bowl\": {\"material\": \"gold\", \"mass_g\": 500}").find("bowl.material: ") == 0);
  CHECK(refused("\"bowl\": {\"material\": \"glass\"}").find("bowl.mass_g: DayBowl needs mass_g") == 0);
  CHECK(refused("\"flour\": [{\"kind\": \"moon_dust\", \"percent\": 100}]").find("flour[0].kind: ") == 0);
}

// ---- what cannot be made a process -------------------------------------------------------------------------------

TEST_CASE("a day that says too little for a process names what is missing") {
  Day day = loaf();
  day.stages.clear();
  CHECK(refused_process(day) == "stage: the day has no stage; give one with a name and an end");
  day = loaf();
  day.water.desired_c.reset();
  CHECK(refused_process(day) ==
        "water.desired_c: the dough's temperature at the end of mixing is not known; give [water] desired, or [dough] "
        "measured, or dough to the first stage");
  CHECK(said([&] { water_of(day); }) ==
        "water.desired_c: which dough the water is to make is not said; most wheat doughs are wanted at 20 to 28 °C");
  day = loaf();
  day.today.room_c.reset();
  CHECK(said([&] { water_of(day); }) ==
        "today.room_c: the water's temperature needs the room's; measure it where the dough is mixed");
  CHECK(*mix_in(process_of(day)).dough_c == 24);  // no balance can be made: the dough is said to come of it
}

TEST_CASE("times of day say nothing in a day without one") {
  const std::string needs =
      ": a time of day says nothing without the day's own; give start, when flour and water "
      "meet, or mixed, when they were";
  Day day = three_stages();
  day.start.clear();
  CHECK_FALSE(has_clock(day));
  CHECK(refused_process(day) == "accepted");
  day.stages[0].ended = "12:00";
  CHECK(refused_process(day) == "stage[0].ended" + needs);
  day.stages[0].ended.clear();
  day.stages[0].until_rise_percent.reset();
  day.stages[1].where.from = "12:00";
  CHECK(refused_process(day) == "stage[1].from" + needs);
  day = three_stages();
  day.start.clear();
  day.stages[1].where = {.room_c = 18, .swing_k = 2};
  CHECK(refused_process(day) == "stage[1].swing_k" + needs);
  day.stages[1].where = {};
  day.stages[1].places = {{.from = "12:00", .refrigerator_c = 4}};
  CHECK(refused_process(day) == "stage[1].place[0].from" + needs);
}

TEST_CASE("where a dough is must be known") {
  Day day = three_stages();
  day.today.room_c.reset();
  day.stages[1].piece = Shape::ball;
  CHECK(refused_process(day) == "stage[1].room_c: a piece has no place; give it one, or [today] room");
  day = three_stages();
  day.stages[1].places = {{.room_c = 18}, {.refrigerator_c = 4}};
  CHECK(refused_process(day) ==
        "stage[1].place[1].from: from when the dough is there is not said; a time of day, such as 22:00");
}

TEST_CASE("what only the process refuses is told with the day's own way to it") {
  const auto path_of = [](const Day& day) -> std::string {
    try {
      process_of(day);
    } catch (const InvalidInput& error) {
      return error.detail().path;
    }
    return "accepted";
  };
  Day day = three_stages();
  day.stages[1].folds_h = {0.4, 0.2};
  CHECK(path_of(day) == "stage[1].folds_h");
  day = three_stages();
  day.stages[2].places = {{.from = "20:00", .room_c = 18}, {.from = "+0 19:00", .refrigerator_c = 4}};
  CHECK(path_of(day) == "stage[2].place");
  day = loaf();
  day.flours = {{.percent = 60}, {.kind = "dark_rye", .percent = 30}};
  CHECK(path_of(day) == "flour[0].percent");
  day = loaf();
  day.dough.gluten_percent = 5;
  day.preferment = {.flour_percent = 97, .water_percent = 50};
  CHECK(path_of(day) == "preferment.flour_percent");
  day = loaf();
  day.preferment = {.flour_percent = 60, .water_percent = 120};  // 72 % of a dough with 65 %
  CHECK(path_of(day) == "dough.water_percent");
  day = loaf();
  day.dough.salt_g = 80;  // 10 %
  CHECK(path_of(day) == "dough.salt_g");
  day = loaf();
  day.dough.yeast_percent = 9;
  CHECK(path_of(day) == "dough.yeast_percent");
  day = loaf();
  day.dough.pieces = 10000;
  day.dough.piece_g = 1000;
  CHECK(path_of(day) == "dough.pieces");
  day = with_sponge(loaf());
  day.preferment->yeast_percent = 12;
  CHECK(path_of(day) == "preferment.yeast_percent");
  day = with_sponge(loaf());
  day.preferment->water_percent = 45;
  day.preferment->salt_percent = 2;
  CHECK(path_of(day) == "accepted");
}

TEST_CASE("grams are of the day's own flour") {
  Day day = loaf();
  day.dough.flour_g.reset();
  CHECK(refused_process(day) == "accepted");  // percentages need none
  const auto told = [](Day day, const std::string& path) {
    return refused_process(day) ==
           path + ": a weight in grams needs the flour's weight beside it; give [dough] flour_g";
  };
  Day grams = day;
  grams.dough.salt_g = 16;
  CHECK(told(grams, "dough.salt_g"));
  grams = day;
  grams.dough.yeast_percent.reset();
  grams.dough.yeast_g = 4;
  CHECK(told(grams, "dough.yeast_g"));
  grams = day;
  grams.preferment = {.flour_g = 100, .water_g = 100};
  CHECK(told(grams, "preferment.flour_g"));
  grams = day;
  grams.bowl = {.mass_g = 900};
  CHECK(told(grams, "bowl.mass_g"));
  grams = day;
  grams.yeast_water = {.water_g = 50, .temperature_c = 38};
  CHECK(told(grams, "yeast_water.water_g"));
}

TEST_CASE("other contradictions of a day's mix") {
  Day day = loaf();
  day.today.preferment_c = 18;
  CHECK(refused_process(day) ==
        "preferment: the preferment has a temperature and no weight; give its flour and its "
        "water");
  day = loaf();
  day.water.friction_at_c = 21;
  CHECK(refused_process(day) == "water.friction_k: a room where a friction was found needs the friction");
  day = loaf();
  day.flours = {{.mass_g = 500}, {.kind = "dark_rye", .mass_g = 300}};
  CHECK(refused_process(day) ==
        "dough.flour_g: all the flour is given, and each flour's weight; give the flours in "
        "percent, or leave flour_g out");
  day.dough.flour_g.reset();
  day.flours[1] = {.kind = "dark_rye", .percent = 30};
  CHECK(refused_process(day) ==
        "flour[1].mass_g: some flours are weighed and some are not; give all in percent or all "
        "in grams");
  day = loaf();
  day.flours = {{.percent = 100}, {.kind = "dark_rye"}};
  CHECK(refused_process(day) == "flour[1].percent: a flour has no share; its percent of the flours");
}

// ---- the mix -----------------------------------------------------------------------------------------------------

TEST_CASE("amounts in grams and in percent make the same mix") {
  Day percent = loaf();
  percent.dough = {.flour_g = 800,
                   .yeast_percent = 0.5,
                   .water_percent = 65,
                   .salt_percent = 2,
                   .sugar_percent = 5,
                   .gluten_percent = 2,
                   .milk_percent = 10,
                   .egg_percent = 5,
                   .butter_percent = 3,
                   .oil_percent = 2};
  Day grams = loaf();
  grams.dough = {.flour_g = 800,
                 .yeast_g = 4,
                 .water_g = 520,
                 .salt_g = 16,
                 .sugar_g = 40,
                 .gluten_g = 16,
                 .milk_g = 80,
                 .egg_g = 40,
                 .butter_g = 24,
                 .oil_g = 16};
  const Mix mix = mix_of(grams);
  CHECK(same(mix, mix_of(percent)));
  const Formula& f = mix.formula;
  CHECK(f.flour_g == 784);  // less the gluten
  CHECK(f.gluten_g == 16);
  CHECK(f.water_g == 520);
  CHECK(f.salt_g == 16);
  CHECK(f.sugar_g == 40);
  CHECK(f.milk_g == 80);
  CHECK(f.egg_g == 40);
  CHECK(f.butter_g == 24);
  CHECK(f.oil_g == 16);
  CHECK(f.instant_g == 4);
}

TEST_CASE("each kind of yeast comes into its own member") {
  for (const auto& [kind, member] :
       {std::pair{Yeast::instant, &Formula::instant_g}, std::pair{Yeast::active_dry, &Formula::active_dry_g},
        std::pair{Yeast::active_dry_unwetted, &Formula::active_dry_g},
        std::pair{Yeast::compressed, &Formula::compressed_g}}) {
    Day day = loaf();
    day.dough.yeast = kind;
    const Mix mix = mix_of(day);
    CHECK(mix.formula.*member == 4);
    CHECK(mix.formula.instant_g + mix.formula.active_dry_g + mix.formula.compressed_g == 4);
    CHECK(mix.yeast_unwetted == (kind == Yeast::active_dry_unwetted));
  }
}

TEST_CASE("without amounts a dough has 65 % of water and 2 % of salt") {
  const Percent percent = percent_of(mix_of(loaf()).formula);
  CHECK(percent.flour_g == 800);
  CHECK(percent.water_percent == doctest::Approx(65).epsilon(1e-14));
  CHECK(percent.salt_percent == doctest::Approx(2).epsilon(1e-14));
  CHECK(percent.instant_percent == doctest::Approx(0.5).epsilon(1e-14));
}

TEST_CASE("weighed flours are all but the gluten and the preferment's") {
  Day day = loaf();
  day.dough.flour_g.reset();
  day.dough.gluten_g = 10;
  day.preferment = {.flour_g = 200, .water_g = 160};
  day.flours = {{.kind = "bread", .mass_g = 600},
                {.kind = "dark_rye", .mass_g = 150, .moisture_percent = 13, .temperature_c = 11}};
  const Formula f = mix_of(day).formula;
  CHECK(amounts_of(f).flour_g == doctest::Approx(960).epsilon(1e-14));
  REQUIRE(f.flours.size() == 2);
  CHECK(f.flours[0].mass_g.value == doctest::Approx(600).epsilon(1e-14));
  CHECK(f.flours[1].mass_g.value == doctest::Approx(150).epsilon(1e-14));
  CHECK(f.flours[1].kind == "dark_rye");
  CHECK(f.flours[1].moisture_percent == 13.0);
  CHECK(f.flours[1].temperature_c == 11.0);
  CHECK(f.water_g == doctest::Approx(0.65 * 960 - 160).epsilon(1e-14));

  day.dough.gluten_g.reset();
  day.dough.gluten_percent = 2;
  day.preferment = {.flour_percent = 23, .water_percent = 80};
  const Formula shares = mix_of(day).formula;  // 750 g are the other 75 %
  CHECK(amounts_of(shares).flour_g == doctest::Approx(1000).epsilon(1e-14));
  CHECK(shares.gluten_g == doctest::Approx(20).epsilon(1e-14));
  CHECK(shares.preferments.at(0).flour_g.value == doctest::Approx(230).epsilon(1e-14));
  CHECK(shares.preferments.at(0).water_g.value == doctest::Approx(184).epsilon(1e-14));
}

TEST_CASE("pieces scale every weight, what is lost included") {
  Day day = rich_day();
  const Percent before = percent_of(mix_of(day).formula);
  day.dough.pieces = 24;
  day.dough.piece_g = 95;
  day.dough.loss_percent = 5;
  const Percent after = percent_of(mix_of(day).formula);
  CHECK(after.dough_g == doctest::Approx(2400).epsilon(1e-13));
  CHECK(after.flour_g != doctest::Approx(before.flour_g).epsilon(1e-3));
  CHECK(after.water_percent == doctest::Approx(before.water_percent).epsilon(1e-13));
  CHECK(after.butter_percent == doctest::Approx(before.butter_percent).epsilon(1e-13));
  CHECK(after.compressed_percent == doctest::Approx(before.compressed_percent).epsilon(1e-13));

  day.dough.flour_g.reset();  // the pieces say how much flour there is
  CHECK(percent_of(mix_of(day).formula).dough_g == doctest::Approx(2400).epsilon(1e-13));
}

TEST_CASE("temperatures, bowl and yeast water arrive where they belong") {
  Day day = rich_day();
  day.today.ice_c = -6;
  day.yeast_water = {.water_g = 60, .temperature_c = 37, .stands_h = 0.2};
  const Mix mix = mix_of(day);
  CHECK(mix.formula.flour_c == 17.0);
  CHECK(mix.formula.milk_c == 6.0);
  CHECK(mix.formula.egg_c == 7.0);
  CHECK(mix.formula.butter_c == 14.0);
  CHECK(mix.formula.ice_c == -6);
  CHECK(mix.room_c == 20.5);
  CHECK(mix.tap_c == 9.0);
  CHECK_FALSE(mix.formula.water_c);
  const Bowl bowl{.material = "steel", .mass_g = 1400, .temperature_c = 18};
  CHECK(same(mix.bowl, bowl));
  REQUIRE(mix.formula.waters.size() == 1);
  const Water portion{.mass_g = 60, .temperature_c = 37, .wets_yeast = true, .stands_h = 0.2};
  CHECK(same(mix.formula.waters[0], portion));
  CHECK(mix.formula.water_g == doctest::Approx(0.45 * 1200 - 60).epsilon(1e-14));
  const auto mixing = std::get<ByMethod>(*mix.mixing);
  CHECK(mixing.method == "stand_mixer");
  CHECK(mixing.minutes == 9.0);
}

TEST_CASE("mixing heat as the day says it") {
  Day day = loaf();
  CHECK_FALSE(mix_of(day).mixing);
  day.mixing = {.work_kj_per_kg = 9, .hydration_kj_per_kg = 14, .rest_h = 0.4};
  const ByWork work{.work_kj_per_kg = 9, .hydration_kj_per_kg = 14};
  CHECK(same(std::get<ByWork>(*mix_of(day).mixing), work));
  CHECK(mix_of(day).rest_h == 0.4);
  day.mixing = {.minutes = 7, .net_gain_kj_per_kg = 6, .sd_kj_per_kg = 0.7};
  const ByNetGain gain{.net_gain_kj_per_kg = 6, .sd_kj_per_kg = 0.7, .minutes = 7};
  CHECK(same(std::get<ByNetGain>(*mix_of(day).mixing), gain));
  day.mixing = {.net_gain_kj_per_kg = 6};
  CHECK(same(std::get<ByNetGain>(*mix_of(day).mixing), ByNetGain{.net_gain_kj_per_kg = 6}));
}

TEST_CASE("a friction of the user's own counts, whatever else is said of the mixing") {
  Day day = loaf();
  day.water.friction_k = 8;
  const Mix bare = [&] {
    Mix mix = mix_of(day);
    mix.mixing.reset();
    return mix;
  }();
  const auto gain_of = [](const Day& of) { return std::get<ByNetGain>(*mix_of(of).mixing); };
  CHECK(gain_of(day).net_gain_kj_per_kg.value ==
        net_gain_from_friction(bare, 8, 24, 21));  // found at 21 °C, if not said
  CHECK(gain_of(day).sd_kj_per_kg == 2);
  CHECK(has_code(assumptions_of(day), "assumed_friction_at_c"));
  CHECK(water_of(day).friction_k == 8);
  CHECK(water_of(day).friction_given);
  day.water.friction_at_c = 17;
  CHECK(gain_of(day).net_gain_kj_per_kg.value == net_gain_from_friction(bare, 8, 24, 17));
  CHECK_FALSE(has_code(assumptions_of(day), "assumed_friction_at_c"));

  // 3 K less friction is some 3 K of dough less, for rule and balance alike; also beside a method and its minutes.
  day.mixing = {.method = "hand", .minutes = 12};
  CHECK(gain_of(day).minutes == 12);
  Day gentle = day;
  gentle.water.friction_k = 3;
  CHECK(water_of(gentle).water_c - water_of(day).water_c > 4);
  day.batches = {{.dough_c = 25, .water_c = 26, .flour_c = 20, .room_c = 21}};
  CHECK(water_of(day).friction_k == 8);
  CHECK(gain_of(day).sd_kj_per_kg == 2);
  day.mixing = {.net_gain_kj_per_kg = 6};  // a number of the same kind, for the balance itself
  CHECK(gain_of(day).net_gain_kj_per_kg.value == 6);
}

// ---- preferments -------------------------------------------------------------------------------------------------

TEST_CASE("a preferment with its hours is a dough that fermented, to the digit") {
  for (const Yeast kind : {Yeast::instant, Yeast::compressed, Yeast::active_dry_unwetted}) {
    Day day = loaf();
    day.dough.altitude_m = 600;
    day.dough.yeast = kind;
    day.preferment = {
        .flour_g = 200, .water_g = 160, .yeast_g = 1, .salt_percent = 1, .stands_h = 9, .temperature_c = 20};
    day.today.preferment_c = 17;

    Mix sponge;
    sponge.formula = {.flour_g = 200, .water_g = 160, .salt_g = 2};
    (kind == Yeast::instant      ? sponge.formula.instant_g
     : kind == Yeast::compressed ? sponge.formula.compressed_g
                                 : sponge.formula.active_dry_g) = 1;
    sponge.yeast_unwetted = kind == Yeast::active_dry_unwetted;
    sponge.dough_c = 20;
    Stage stands;
    stands.surroundings = Surroundings::dough(20);
    stands.until_h = 9;
    State fermented = as_beginning(simulate({.steps = {sponge, stands}, .altitude_m = 600}).state);
    fermented.shells.front().temperature_c = 17;

    const Mix mix = mix_of(day);
    REQUIRE(mix.doughs.size() == 1);
    CHECK(mix.formula.preferments.empty());
    CHECK(same(mix.doughs[0], fermented));

    Mix by_hand = mix;
    by_hand.doughs = {fermented};
    by_hand.formula.flour_g = 600;
    by_hand.formula.water_g = 360;  // 65 % of 800 g, less the sponge's
    CHECK(same(mix, by_hand));
    const WaterPlan plan = water_by_heat_balance(by_hand, 24);
    const Process process = process_of(day);
    CHECK(same(mix_in(process), with_water(by_hand, plan)));
    Process other = process;
    other.steps[0] = with_water(by_hand, plan);
    const Timeline told = simulate(process);
    CHECK(told.stages[0].end_h == simulate(other).stages[0].end_h);
    for (const Notice& notice : told.notices) CHECK(notice.code != "preferment_without_history");
  }
}

TEST_CASE("a preferment's own yeast in percent, its kind and its warmth") {
  Day day = loaf();
  day.preferment = {.flour_percent = 25, .water_percent = 80, .yeast_g = 1, .stands_h = 9, .temperature_c = 20};
  Day percent = day;
  percent.preferment->yeast_g.reset();
  percent.preferment->yeast_percent = 0.5;  // of 200 g
  CHECK(same(mix_of(day), mix_of(percent)));
  CHECK(whole_of(mix_of(day).doughs[0]).temperature_c == 20);  // as it stood
  Day other = day;
  other.preferment->yeast = Yeast::compressed;
  CHECK_FALSE(same(mix_of(day), mix_of(other)));
  Day colder = day;
  colder.today.preferment_c = 5;
  CHECK(whole_of(mix_of(colder).doughs[0]).temperature_c == 5);
  CHECK(water_of(colder).water_c > water_of(day).water_c + 1);
}

TEST_CASE("pieces scale a preferment with its grams of yeast") {
  Day day = loaf();
  day.preferment = {.flour_g = 200, .water_g = 160, .yeast_g = 1, .stands_h = 9, .temperature_c = 20};
  const State before = mix_of(day).doughs[0];
  day.dough.pieces = 8;
  day.dough.piece_g = 400;
  const Mix scaled = mix_of(day);
  const State& after = scaled.doughs.at(0);
  const double factor = after.amounts.flour_g / before.amounts.flour_g;
  CHECK(factor > 1.5);
  CHECK(after.amounts.dough_g == doctest::Approx(factor * before.amounts.dough_g).epsilon(1e-12));
  CHECK(after.cohorts.at(0).dose_g == doctest::Approx(before.cohorts.at(0).dose_g).epsilon(1e-12));  // per 100 g
  CHECK(amounts_of(scaled.formula).dough_g + after.amounts.dough_g == doctest::Approx(3200).epsilon(1e-12));
}

TEST_CASE("a preferment without its hours is warmth and weight, and the forecast says so") {
  Day day = loaf();
  day.preferment = {.flour_percent = 25, .water_percent = 80};
  day.today.preferment_c = 9;
  const Mix mix = mix_of(day);
  CHECK(mix.doughs.empty());
  REQUIRE(mix.formula.preferments.size() == 1);
  CHECK(mix.formula.preferments[0].temperature_c == 9.0);
  bool is_said = false;
  for (const Notice& notice : simulate(process_of(day)).notices)
    is_said = is_said || notice.code == "preferment_without_history";
  CHECK(is_said);
}

// ---- water and process agree -------------------------------------------------------------------------------------

TEST_CASE("the process's mix makes the dough that the water was planned for") {
  std::vector<Day> days = {loaf(), rich_day()};
  days.push_back(with_sponge(rich_day()));
  days.push_back(rich_day());
  days.back().preferment = {.flour_percent = 20, .water_percent = 80};
  const std::size_t n = days.size();
  for (std::size_t i = 0; i < n; ++i) {
    days.push_back(days[i]);
    days.back().mixing.rest_h = 0.6;
    days.push_back(days[i]);
    days.back().mixing = {.minutes = 12, .net_gain_kj_per_kg = 9};
    days.push_back(days.back());
    days.back().yeast_water = {.water_g = 50, .temperature_c = 38, .stands_h = 0.25};
    days.push_back(days[i]);
    days.back().today.tap_c = 24;  // ice
    days.back().today.room_c = 31;
    days.back().today.flour_c = 30;
    days.push_back(days[i]);
    days.back().dough.pieces = 30;
    days.back().dough.piece_g = 70;
  }
  CHECK(days.size() == 24);
  std::size_t with_ice = 0;
  for (std::size_t i = 0; i < days.size(); ++i) {
    CAPTURE(i);
    const WaterPlan plan = water_of(days[i]);
    const Mix mix = mix_in(process_of(days[i]));
    with_ice += plan.ice_g > 0 ? 1 : 0;
    CHECK_FALSE(mix.dough_c);
    CHECK(same(mix, with_water(mix_of(days[i]), plan)));
    CHECK(std::abs(mixed_c(days[i]) - *days[i].water.desired_c) < 1e-9);
  }
  CHECK(with_ice > 0);
}

TEST_CASE("a measured dough counts before the one that was desired") {
  Day day = rich_day();
  day.dough.measured_c = 27.3;
  const Process process = process_of(day);
  CHECK(mix_in(process).dough_c == 27.3);
  CHECK_FALSE(mix_in(process).formula.water_c);
  CHECK(mixed_c(day) == 27.3);
  day.water.poured_c = 31;
  CHECK(mix_in(process_of(day)).formula.water_c == 31.0);
  CHECK(mixed_c(day) == 27.3);
}

TEST_CASE("a dough that cannot be had is no solution") {
  Day day = loaf();
  day.today.room_c = 2;
  day.water.desired_c = 43;
  CHECK_THROWS_AS(water_of(day), NoSolution);
  CHECK_THROWS_AS(process_of(day), NoSolution);
}

TEST_CASE("water that was poured goes forward through the balance") {
  Day day = rich_day();
  day.water.poured_c = 22;  // counts before the dough that was desired
  const Mix mix = mix_in(process_of(day));
  Mix by_hand = mix_of(day);
  by_hand.formula.water_c = 22;
  CHECK(same(mix, by_hand));
  CHECK(mixed_c(day) == dough_by_heat_balance(by_hand));
  CHECK(std::abs(mixed_c(day) - 25.5) > 0.5);

  day.today.room_c.reset();  // no balance can be made
  CHECK(says(said([&] { process_of(day); }), "today.room_c: the dough that poured water makes needs the room's"));
}

TEST_CASE("a friction counts for poured water, too") {
  Day day = loaf();
  day.water = {.poured_c = 30, .friction_k = 4};
  const double gentle_c = mixed_c(day);
  day.water.friction_k = 15;
  CHECK(mixed_c(day) - gentle_c > 2);
}

// ---- the stages --------------------------------------------------------------------------------------------------

TEST_CASE("what was done is the nearest such hour, and after all places of its stage") {
  Day day = loaf();
  day.start = "8:00";
  day.mixed = "7:55";  // a little before the plan, and not tomorrow
  day.dough.measured_c = 24;
  DayStage bulk;
  bulk.name = "bulk";
  bulk.where.room_c = 22;
  bulk.places = {{.from = "22:00", .refrigerator_c = 4}, {.from = "7:00", .room_c = 22}};
  bulk.ended = "9:00";
  DayStage proof;
  proof.name = "proof";
  proof.where.from = "12:00";  // planned; it begins when the bulk was over
  proof.ended = "9:50";
  day.stages = {bulk, proof};
  const Process process = process_of(day);
  CHECK(advance(State{.time_h = process.start_h}, process.steps[0]).time_h == doctest::Approx(7 + 55 / 60.0));
  CHECK(std::get<Stage>(process.steps[1]).ends_h == 33.0);
  CHECK(std::get<Stage>(process.steps[2]).ends_h == doctest::Approx(33 + 50 / 60.0));

  day.stages[0].ended.clear();
  day.stages[0].places.clear();
  day.stages[0].until_h = 3;
  day.stages[1].where.from.clear();
  day.stages[1].ended = "10:50";  // planned from 10:55 on
  CHECK(std::get<Stage>(process_of(day).steps[2]).ends_h == doctest::Approx(10 + 50 / 60.0));
}

TEST_CASE("a stage that only says where the dough goes later begins where the one before it was") {
  Day day = loaf();
  day.start = "8:00";
  DayStage bulk;
  bulk.name = "bulk";
  bulk.where.room_c = 22;
  bulk.until_h = 2;
  DayStage proof;
  proof.name = "proof";
  proof.until_h = 14;
  proof.places = {{.from = "22:00", .refrigerator_c = 4}};
  day.stages = {bulk, proof};
  const auto places = std::get<Stage>(process_of(day).steps[2]).surroundings.places;
  REQUIRE(places.size() == 2);
  CHECK(places[0].temperature_c == 22.0);
  CHECK_FALSE(places[0].from_h);
  CHECK(places[1].from_h == 22.0);
  CHECK(has_code(assumptions_of(day), "assumed_place"));
}

TEST_CASE("batches are reckoned as the day itself: the preferment as it stood, the flour as it was") {
  Day day = loaf();
  day.preferment = {.flour_g = 100, .water_g = 80, .temperature_c = 5};
  day.batches = {{.dough_c = 23, .water_c = 25, .flour_c = 20, .room_c = 20}};
  const double stood = learned_mixing(day).net_gain_kj_per_kg.mean;
  day.today.preferment_c = 5;
  CHECK(learned_mixing(day).net_gain_kj_per_kg.mean == stood);
  day.flours = {{.percent = 100, .temperature_c = 5}};  // today's, not the batch's
  CHECK(learned_mixing(day).net_gain_kj_per_kg.mean == doctest::Approx(stood).epsilon(1e-12));
}

TEST_CASE("a day has no more stages than anybody bakes") {
  Day day = loaf();
  DayStage stage;
  stage.until_h = 1;
  for (int i = 0; i < 101; ++i) {
    stage.name = "stage " + std::to_string(i);
    day.stages.push_back(stage);
  }
  CHECK(says(said([&] { require(day); }), "at most 100 stages"));
}

TEST_CASE("a process by hand is the day's, member by member") {
  Day day = rich_day();
  day.start = "7:15";
  day.dough.altitude_m = 450;
  day.mixing.rest_h = 0.5;
  day.stages = {{.name = "bulk",
                 .until_rise_percent = 90,
                 .where = {.room_c = 20.5, .swing_k = 1.5, .warmest = "15:00"},
                 .piece = Shape::tub,
                 .depth_cm = 11,
                 .material = "glass",
                 .vessel_g = 650,
                 .cover = Cover::cloth,
                 .worktop = Worktop::stone,
                 .folds_h = {0.5, 1},
                 .handling = {Handling::divide, Handling::round}},
                {.name = "bench", .until_h = 0.4, .piece = Shape::ball, .piece_g = 90, .handling = {Handling::mould}},
                {.name = "proof",
                 .until_rise_percent = 70,
                 .where = {.proof_box_c = 29, .humidity_percent = 80, .heat_transfer_w_per_m2_k = 9},
                 .places = {{.from = "21:30", .refrigerator_c = 4, .fan = true}, {.from = "6:00", .room_c = 18.5}},
                 .piece = Shape::oblong,
                 .diameter_cm = 6,
                 .length_cm = 24,
                 .cover = Cover::open,
                 .standing = Standing::free,
                 .final_proof = true,
                 .acceptable_rise_percent = std::pair{60.0, 95.0}}};
  day.stages[2].places[0].humidity_percent = 60;
  day.stages[2].places[1].humidity_percent = 50;

  Mix mix;
  mix.formula = {.flour_g = 1200,
                 .water_g = 540,
                 .salt_g = 24,
                 .sugar_g = 72,
                 .milk_g = 144,
                 .egg_g = 60,
                 .butter_g = 96,
                 .compressed_g = 18,
                 .flour_c = 17,
                 .milk_c = 6,
                 .egg_c = 7,
                 .butter_c = 14};
  mix.room_c = 20.5;
  mix.tap_c = 9;
  mix.bowl = {.material = "steel", .mass_g = 1400, .temperature_c = 18};
  mix.mixing = ByMethod{.method = "stand_mixer", .minutes = 9};
  mix.rest_h = 0.5;
  const WaterPlan plan = water_by_heat_balance(mix, 25.5);

  Stage bulk;
  bulk.name = "bulk";
  bulk.piece = {.shape = Shape::tub,
                .depth_cm = 11,
                .material = "glass",
                .vessel_g = 650,
                .cover = Cover::cloth,
                .worktop = Worktop::stone};
  bulk.surroundings = Surroundings::daily_swing(20.5, 1.5, 15);
  bulk.until_rise_percent = 90;
  bulk.folds_h = {0.5, 1};
  bulk.handling = {Handling::divide, Handling::round};
  Stage bench;
  bench.name = "bench";
  bench.piece = {.shape = Shape::ball, .mass_g = 90};
  bench.surroundings = Surroundings::room(20.5);  // a piece without a place is in today's room
  bench.until_h = 0.4;
  bench.handling = {Handling::mould};
  Stage proof;
  proof.name = "proof";
  proof.piece = {.shape = Shape::oblong, .diameter_cm = 6, .length_cm = 24, .cover = Cover::open};
  proof.surroundings.places = {
      {.temperature_c = 29, .air = Air::proof_box, .humidity_percent = 80, .heat_transfer_w_per_m2_k = 9},
      {.from_h = 21.5, .temperature_c = 4, .air = Air::fan_refrigerator, .humidity_percent = 60},
      {.from_h = 30, .temperature_c = 18.5, .humidity_percent = 50}};
  proof.until_rise_percent = 70;
  proof.standing = Standing::free;
  proof.final_proof = true;
  proof.acceptable_rise_percent = std::pair{60.0, 95.0};
  const Process by_hand{.steps = {with_water(mix, plan), bulk, bench, proof}, .start_h = 7.25, .altitude_m = 450};
  const Process process = process_of(day);
  CHECK(to_document(process) == to_document(by_hand));  // shows what differs
  CHECK(same(process, by_hand));
}

TEST_CASE("hours are of the day, or from the end of mixing") {
  Day day = loaf();
  day.mixing = {.method = "hand", .minutes = 15, .rest_h = 0.5};
  CHECK(has_clock(day));
  CHECK(process_of(day).start_h == 8);
  CHECK(advance({.time_h = 8}, process_of(day).steps[0]).time_h == doctest::Approx(8.75).epsilon(1e-14));
  day.mixed = "9:40";  // counts before what was planned
  CHECK(process_of(day).start_h == doctest::Approx(9 + 40 / 60.0 - 0.75).epsilon(1e-14));
  CHECK(simulate(process_of(day)).stages[0].start_h == doctest::Approx(9 + 40 / 60.0).epsilon(1e-14));
  day.start.clear();
  CHECK(has_clock(day));
  CHECK(simulate(process_of(day)).stages[0].start_h == doctest::Approx(9 + 40 / 60.0).epsilon(1e-14));
  day.mixed.clear();
  CHECK_FALSE(has_clock(day));
  CHECK(process_of(day).start_h == -0.75);
  CHECK(simulate(process_of(day)).stages[0].start_h == 0);
  day.start = "23:30";
  day.mixed = "0:20";  // after midnight
  CHECK(simulate(process_of(day)).stages[0].start_h == doctest::Approx(24 + 20 / 60.0).epsilon(1e-14));
}

TEST_CASE("a piece without a place is in today's room, also after a refrigerator") {
  Day day = three_stages();
  day.today.room_c = 21;
  day.stages[0].where = {.refrigerator_c = 5};
  day.stages[1].piece = Shape::ball;
  const Process process = process_of(day);
  CHECK(same(stage_in(process, 0).surroundings, Surroundings::refrigerator(5)));
  CHECK(same(stage_in(process, 1).surroundings, Surroundings::room(21)));
  CHECK(same(stage_in(process, 2).surroundings, Surroundings::room(21)));
  CHECK(stage_in(process, 2).piece.shape == Shape::ball);
}

TEST_CASE("what a stage does not say of its place and piece is that of the stage before") {
  Day day = three_stages();
  day.stages[0].piece = Shape::tub;
  day.stages[0].material = "steel";
  day.stages[0].where = {.proof_box_c = 26};
  day.stages[2].where = {.refrigerator_c = 5};
  const Process process = process_of(day);
  CHECK(same(stage_in(process, 1).surroundings, Surroundings::proof_box(26)));
  CHECK(same(stage_in(process, 1).piece, stage_in(process, 0).piece));
  CHECK(same(stage_in(process, 2).surroundings, Surroundings::refrigerator(5)));
  CHECK(stage_in(process, 2).piece.material == "steel");
}

TEST_CASE("a first stage without place and piece is held at the dough's temperature after mixing") {
  Day day = loaf();
  day.stages[0].where = {};
  CHECK(same(stage_in(process_of(day), 0).surroundings, Surroundings::dough(24)));
  day.dough.measured_c = 26.5;
  CHECK(same(stage_in(process_of(day), 0).surroundings, Surroundings::dough(26.5)));
  day.dough.measured_c.reset();
  day.water.poured_c = 40;  // it became another dough than the desired one
  const Mix mix = mix_in(process_of(day));
  CHECK(same(stage_in(process_of(day), 0).surroundings, Surroundings::dough(dough_by_heat_balance(mix))));
  day.water.desired_c.reset();
  CHECK(same(stage_in(process_of(day), 0).surroundings, Surroundings::dough(dough_by_heat_balance(mix))));
}

TEST_CASE("a dough that is held is said by the first stage alone") {
  Day day = loaf();
  day.water.desired_c.reset();
  day.stages[0].where = {.dough_c = 23};
  const Process process = process_of(day);
  CHECK(mix_in(process).dough_c == 23.0);
  CHECK(same(stage_in(process, 0).surroundings, Surroundings::dough(23)));
}

TEST_CASE("places follow one another by the time of day") {
  Day day = three_stages();
  day.stages[0].where = {.room_c = 19};
  day.stages[0].places = {{.from = "20:00", .refrigerator_c = 5}, {.from = "6:30", .room_c = 22}};
  const Surroundings wanted{{{.temperature_c = 19},
                             {.from_h = 20, .temperature_c = 5, .air = Air::refrigerator},
                             {.from_h = 30.5, .temperature_c = 22}}};
  CHECK(same(stage_in(process_of(day), 0).surroundings, wanted));
  day.stages[0].where = {};  // the first of the further ones is the first, then
  day.stages[0].places[0].from.clear();
  const Surroundings later{{{.temperature_c = 5, .air = Air::refrigerator}, {.from_h = 30.5, .temperature_c = 22}}};
  CHECK(same(stage_in(process_of(day), 0).surroundings, later));
}

TEST_CASE("the time from which a stage is there ends the one before it") {
  Day day = three_stages();
  day.stages[0].until_rise_percent.reset();
  day.stages[1].where.from = "13:20";
  day.stages[1].until_h.reset();
  day.stages[2].where.from = "7:00";
  day.stages[2].until_rise_percent.reset();
  day.stages[2].until_h = 1;
  const Process process = process_of(day);
  CHECK(stage_in(process, 0).ends_h == 13 + 20 / 60.0);
  CHECK_FALSE(stage_in(process, 0).until_h);
  CHECK_FALSE(stage_in(process, 0).until_rise_percent);
  CHECK(stage_in(process, 1).ends_h == 31.0);
  CHECK_FALSE(stage_in(process, 2).ends_h);
  CHECK(stage_in(process, 2).until_h == 1.0);
  CHECK(same(stage_in(process, 1).surroundings, Surroundings::room(19)));  // a time alone is no place
  CHECK(simulate(process).stages[1].start_h == 13 + 20 / 60.0);
}

TEST_CASE("an end that really was counts before the planned one") {
  Day day = three_stages();
  day.stages[0].ended = "11:05";
  day.stages[1].ended = "11:50";
  Process process = process_of(day);
  CHECK(stage_in(process, 0).ends_h == 11 + 5 / 60.0);
  CHECK_FALSE(stage_in(process, 0).until_rise_percent);
  CHECK(stage_in(process, 1).ends_h == 11 + 50 / 60.0);
  CHECK_FALSE(stage_in(process, 1).until_h);
  day.stages[1].ended = "0:10";  // after midnight
  CHECK(stage_in(process_of(day), 1).ends_h == 24 + 10 / 60.0);
  day.stages[1] = {.name = "bench", .until_h = 0.5, .where = {.from = "11:30", .room_c = 20}};
  process = process_of(day);  // ended before the next one was planned to begin
  CHECK(stage_in(process, 0).ends_h == 11 + 5 / 60.0);
}

TEST_CASE("a log's hours count from the end of mixing") {
  Day day = loaf();
  day.mixing = {.method = "hand", .minutes = 30};
  day.stages[0].where = {.room_log = Course{{0, 2, 5}, {18, 19.5, 21}}};
  const Course wanted{{8.5, 10.5, 13.5}, {18, 19.5, 21}};
  const Place place = stage_in(process_of(day), 0).surroundings.places.at(0);
  REQUIRE(place.course);
  CHECK(same(*place.course, wanted));
  CHECK(place.air == Air::room);
  day.stages[0].where = {.dough_log = Course{{0, 2}, {24, 23}}};
  CHECK(stage_in(process_of(day), 0).surroundings.places.at(0).is_dough);
  day.stages[0].where = {.refrigerator_log = Course{{0, 2}, {6, 5}}, .fan = true};
  CHECK(stage_in(process_of(day), 0).surroundings.places.at(0).air == Air::fan_refrigerator);
  day.stages[0].where = {.proof_box_log = Course{{0, 2}, {28, 29}}};
  CHECK(stage_in(process_of(day), 0).surroundings.places.at(0).air == Air::proof_box);
  day.start.clear();
  day.mixing = {};
  day.stages[0].where = {.room_log = Course{{0, 2, 5}, {18, 19.5, 21}}};
  CHECK(stage_in(process_of(day), 0).surroundings.places.at(0).course->time_h == std::vector<double>{0, 2, 5});
}

TEST_CASE("a swing, a fan and humid air reach the process") {
  Day day = loaf();
  day.stages[0].where = {.room_c = 18, .swing_k = 2.5};
  CHECK(same(stage_in(process_of(day), 0).surroundings, Surroundings::daily_swing(18, 2.5, 16)));
  day.stages[0].where = {.refrigerator_c = 5, .fan = true};
  CHECK(same(stage_in(process_of(day), 0).surroundings, Surroundings::refrigerator(5, true)));
  day.stages[0].where = {.proof_box_c = 28, .humidity_percent = 85};
  CHECK(same(stage_in(process_of(day), 0).surroundings, Surroundings::proof_box(28, 85)));
  day.stages[0].where = {.room_c = 18, .heat_transfer_w_per_m2_k = 6.5};
  CHECK(stage_in(process_of(day), 0).surroundings.places.at(0).heat_transfer_w_per_m2_k == 6.5);
}

TEST_CASE("acceptable rises and a measured heat loss reach the process") {
  Day day = loaf();
  day.stages[0].acceptable_rise_percent = std::pair{70.0, 120.0};
  day.stages[0].piece = Shape::tub;
  day.stages[0].heat_loss_w_per_k = 0.35;
  const Stage stage = stage_in(process_of(day), 0);
  CHECK(stage.acceptable_rise_percent == std::pair{70.0, 120.0});
  CHECK(stage.piece.heat_loss_w_per_k == 0.35);
  CHECK(refused_stage("\"acceptable_rise_percent\": [120, 70]").find("stage[0].acceptable_rise_percent: ") == 0);
}

// ---- batches -----------------------------------------------------------------------------------------------------

TEST_CASE("what batches say of the mixing is what the plain functions say") {
  Day day = loaf();
  day.bowl = {.mass_g = 900};
  day.batches = {{.dough_c = 23, .water_c = 20, .flour_c = 18, .room_c = 19},
                 {.dough_c = 25.2, .water_c = 23, .flour_c = 20, .room_c = 22}};
  const LearnedMixing learned = learned_mixing(day);
  CHECK(learned.friction_k.each ==
        std::vector<double>{friction_from_batch(23, 18, 19, 20), friction_from_batch(25.2, 20, 22, 23)});
  Mix mix = mix_of(loaf());
  mix.bowl.mass_g = 900;
  mix.room_c = 19;
  mix.formula.flour_c = 18;
  mix.formula.water_c = 20;
  CHECK(learned.net_gain_kj_per_kg.each.at(0) == net_gain_from_batch(mix, 23));
  CHECK(learned.minutes == 0);
  const ByNetGain wanted = net_gain_of(learned.net_gain_kj_per_kg, 0);
  CHECK(same(std::get<ByNetGain>(*mix_of(day).mixing), wanted));
  CHECK(water_of(day).friction_k == learned.friction_k.mean);
  day.mixing.net_gain_kj_per_kg = 4;  // said: batches do not count against it
  CHECK(std::get<ByNetGain>(*mix_of(day).mixing).net_gain_kj_per_kg.value == 4);
}

TEST_CASE("minutes of batches take the exchange with the room out of their gain") {
  Day day = loaf();
  day.batches = {{.dough_c = 23, .water_c = 20, .flour_c = 18, .room_c = 19, .minutes = 10},
                 {.dough_c = 24, .water_c = 21, .flour_c = 18, .room_c = 19, .minutes = 14}};
  CHECK(learned_mixing(day).minutes == 12);  // their mean
  day.mixing = {.method = "stand_mixer", .minutes = 8};
  CHECK(learned_mixing(day).minutes == 8);
  CHECK(std::get<ByNetGain>(*mix_of(day).mixing).minutes == 8);
}

TEST_CASE("a day whose water and dough were measured is a batch itself") {
  Day day = loaf();
  CHECK(said([&] { learned_mixing(day); }) ==
        "batch: no batch is logged; write one with dough, water, flour and room, as measured");
  day.today.flour_c = 17.5;
  day.water.poured_c = 26;
  day.dough.measured_c = 23.4;
  Day other = loaf();
  other.today.flour_c = 17.5;
  other.batches = {{.dough_c = 23.4, .water_c = 26, .flour_c = 17.5, .room_c = 19}};
  CHECK(same(learned_mixing(day), learned_mixing(other)));
  day.batches = {{.dough_c = 22, .water_c = 24, .flour_c = 18, .room_c = 18}};
  CHECK(learned_mixing(day).friction_k.each ==
        std::vector<double>{friction_from_batch(22, 18, 18, 24), friction_from_batch(23.4, 17.5, 19, 26)});
  day.dough.measured_c.reset();
  CHECK(learned_mixing(day).friction_k.each.size() == 1);
}

TEST_CASE("a batch that cannot have been is named") {
  Day day = loaf();
  day.batches = {{.dough_c = 23, .water_c = 20, .flour_c = 18, .room_c = 19},
                 {.dough_c = 44, .water_c = 20, .flour_c = 18, .room_c = 19}};
  CHECK(says(said([&] { learned_mixing(day); }), "batch 2 of 2: "));
}

// ---- assumptions -------------------------------------------------------------------------------------------------

TEST_CASE("what is taken for granted is told") {
  const auto texts = [](const Day& day) {
    std::vector<std::string> texts;
    for (const Notice& notice : assumptions_of(day)) {
      CHECK(notice.severity == Severity::info);
      texts.push_back(notice.code + ": " + notice.text);
    }
    return texts;
  };
  using Texts = std::vector<std::string>;
  Day day = loaf();
  CHECK(texts(day) ==
        Texts{"assumed_water_percent: 65 % water", "assumed_salt_percent: 2 % salt", "assumed_no_bowl: no bowl"});
  day.dough = {.yeast_percent = 1};
  CHECK(texts(day).at(0) == "assumed_flour_g: 500 g of flour");
  day = rich_day();
  day.dough.salt_percent = 1.5;
  CHECK(texts(day).empty());

  day.stages[0].where = {};
  day.stages.push_back({.name = "bench", .until_h = 0.3});
  day.stages.push_back({.name = "proof", .until_h = 0.3, .piece = Shape::ball});
  const Texts places = {"assumed_place: stage \"bulk\" is held at 25.5 °C: it has no place",
                        "assumed_place: stage \"bench\" is where \"bulk\" is: it has no place of its own",
                        "assumed_place: stage \"proof\" is in today's room, 20.5 °C: it has a piece and no place"};
  CHECK(texts(day) == places);
  day.dough.measured_c = 26;
  CHECK(texts(day).at(0) == "assumed_place: stage \"bulk\" is held at 26 °C: it has no place");
  day.dough.measured_c.reset();
  day.water.poured_c = 30;  // another dough than the desired one comes of it
  CHECK(texts(day).at(0) ==
        "assumed_place: stage \"bulk\" is held at the temperature that the dough has after mixing: it has no place");
  for (const Notice& notice : assumptions_of(day))
    CHECK(notice.values.size() == (notice.text.find("today's room") != std::string::npos ? 1 : 0));
  day.stages[0].places = {{.room_c = 20}};
  CHECK(texts(day).at(0) == places[1]);
}
