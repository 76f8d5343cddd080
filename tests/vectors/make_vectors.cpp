// Vectors for the bindings: scenarios with the answers of the C++ interface.
//   make_vectors FOLDER          writes the files
//   make_vectors --check FOLDER  compares the files with today's answers; 1 if they differ
#include <charconv>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <fstream>
#include <iostream>
#include <iterator>
#include <optional>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <ferment/ferment.hpp>
#include <nlohmann/json.hpp>

namespace {

using ferment::Yeast;

constexpr double tolerance = 1e-12;

struct Rise {
  double rise_percent;
  ferment::Dough dough;
};

struct Water {
  double desired_c, flour_c, room_c, friction_k;
  std::optional<double> preferment_c = {};
};

constexpr Yeast instant = Yeast::instant;
constexpr Yeast active_dry = Yeast::active_dry;
constexpr Yeast unwetted = Yeast::active_dry_unwetted;
constexpr Yeast compressed = Yeast::compressed;

Rise rise(double rise_percent, double dough_c, double yeast_percent, Yeast yeast, double salt = 2, double water = 65,
          double sugar = 0, double altitude_m = 0) {
  return {rise_percent,
          {.dough_c = dough_c,
           .yeast_percent = yeast_percent,
           .yeast = yeast,
           .salt_percent = salt,
           .water_percent = water,
           .sugar_percent = sugar,
           .altitude_m = altitude_m}};
}

std::vector<Rise> rises() {
  std::vector<Rise> all{// every kind of yeast, quick and slow
                        rise(100, 25, 1, instant), rise(100, 25, 1.2, active_dry), rise(100, 25, 1.2, unwetted),
                        rise(100, 25, 2, compressed), rise(100, 18, 0.2, instant), rise(100, 18, 0.25, active_dry),
                        rise(100, 18, 0.25, unwetted), rise(100, 18, 0.6, compressed),
                        // the first minutes: gas that the water takes up
                        rise(0.1, 25, 1, instant), rise(1, 25, 1, compressed), rise(5, 5, 1, instant),
                        rise(0.5, 35, 3, unwetted),
                        // the smallest and the largest doses
                        rise(50, 22, 0.01, instant), rise(100, 24, 0.02, instant), rise(100, 27, 5, instant),
                        rise(100, 27, 15, compressed), rise(75, 20, 0.031, compressed), rise(75, 21, 0.1, unwetted),
                        // beyond the volume at which gas begins to leak
                        rise(170, 26, 1, instant), rise(200, 24, 0.8, active_dry), rise(250, 28, 2, compressed),
                        rise(300, 25, 1, instant), rise(200, 12, 0.1, instant),
                        // salt, water, altitude
                        rise(100, 25, 1, instant, 0), rise(100, 25, 1, instant, 3.5),
                        rise(100, 25, 0.5, instant, 2.2, 50), rise(100, 25, 0.5, instant, 1.8, 95),
                        rise(100, 25, 1, instant, 2, 65, 0, 1600), rise(100, 21, 0.3, compressed, 2, 70, 0, 3500),
                        rise(100, 25, 1, instant, 2, 65, 0, -400),
                        // sugar: below what feeds, and pressing
                        rise(100, 26, 1, instant, 2, 62, 3), rise(100, 27, 2, instant, 1.5, 58, 10),
                        rise(120, 27, 4, compressed, 1.2, 55, 20), rise(180, 28, 3, active_dry, 1, 60, 15, 800)};
  for (const double dough_c : {-1.0, 0.5, 4.0, 8.0, 13.5, 30.0, 36.0, 40.0, 42.5, 44.0}) {
    all.push_back(rise(80, dough_c, 0.7, instant));
    all.push_back(rise(60, dough_c, 0.15, compressed, 2.1, 72));
  }
  return all;
}

std::vector<Water> waters() {
  return {{25, 21, 22, 6},      {24, 18.5, 19.25, 3}, {26.7, 20, 22.2, 11.1}, {23, 27, 30, 14},
          {25, -18, 21, 8},     {24, 20, 21, 5, 18},  {26, 22, 24, 12, 4},    {22.5, 19, 17, 0.5, 20.3},
          {27, 24, 26, -2, 25}, {20, 33, 35, 25, 30}};
}

std::string shortest(double value) {
  char text[32];
  return {text, std::to_chars(std::begin(text), std::end(text), value).ptr};
}

std::string seventeen_digits(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.17g", value);
  return text;
}

/// A file: a note, then one scenario a line, its answer last.
std::string json(const std::string& answer, const std::vector<std::pair<std::string, double>>& scenarios) {
  std::ostringstream out;
  out << "{\n"
         "\"note\": \"Answers of the C++ interface with the parameter set 2026-2. They pin that all bindings give the "
         "same digits, "
         "not that the model is right; that is tested against outside values in tests/reference. Made by "
         "tests/vectors/make_vectors.cpp.\",\n"
         "\"relative_tolerance\": "
      << shortest(tolerance) << ",\n\"scenarios\": [\n";
  for (std::size_t i = 0; i < scenarios.size(); ++i) {
    out << scenarios[i].first << ", \"" << answer << "\": " << seventeen_digits(scenarios[i].second) << "}"
        << (i + 1 < scenarios.size() ? ",\n" : "\n");
  }
  out << "]\n}\n";
  return out.str();
}

std::string hours_to_rise() {
  std::vector<std::pair<std::string, double>> scenarios;
  int growing = 0;
  int leaking = 0;
  const ferment::Kitchen kitchen;
  for (const auto& [rise_percent, dough] : rises()) {
    std::ostringstream line;
    line << "{\"rise_percent\": " << shortest(rise_percent) << ", \"dough_c\": " << shortest(dough.dough_c)
         << ", \"yeast_percent\": " << shortest(dough.yeast_percent) << ", \"yeast\": \""
         << ferment::name_of(dough.yeast) << "\", \"salt_percent\": " << shortest(dough.salt_percent)
         << ", \"water_percent\": " << shortest(dough.water_percent)
         << ", \"sugar_percent\": " << shortest(dough.sugar_percent)
         << ", \"altitude_m\": " << shortest(dough.altitude_m);
    const double hours = ferment::hours_to_rise(rise_percent, dough);
    const double speed = ferment::speed(dough.dough_c, dough.salt_percent, dough.water_percent, dough.sugar_percent);
    growing += hours * speed > kitchen.growth_lag_h;
    leaking += 1 + rise_percent / 100 > kitchen.retention_onset;
    scenarios.emplace_back(line.str(), hours);
  }
  const int all = static_cast<int>(scenarios.size());
  if (growing < 10 || growing > all - 10 || leaking < 5) {
    throw std::runtime_error(
        "the scenarios no longer cover the dough before and after its yeast grows, and leaking gas: " +
        std::to_string(growing) + " growing, " + std::to_string(leaking) + " leaking of " + std::to_string(all));
  }
  return json("hours", scenarios);
}

std::string water_by_factor_rule() {
  std::vector<std::pair<std::string, double>> scenarios;
  for (const Water& water : waters()) {
    std::ostringstream line;
    line << "{\"desired_c\": " << shortest(water.desired_c) << ", \"flour_c\": " << shortest(water.flour_c)
         << ", \"room_c\": " << shortest(water.room_c) << ", \"friction_k\": " << shortest(water.friction_k)
         << ", \"preferment_c\": " << (water.preferment_c ? shortest(*water.preferment_c) : "null");
    scenarios.emplace_back(line.str(), ferment::water_by_factor_rule(water.desired_c, water.flour_c, water.room_c,
                                                                     water.friction_k, water.preferment_c));
  }
  return json("water_c", scenarios);
}

/// An invented day with a bowl, milk, a preferment that ferments, and a refrigerator overnight.
constexpr const char* a_day =
    R"({"start": "17:00", "today": {"room": "21C", "flour": "66F", "milk": "8C", "preferment": "19C"}, )"
    R"("water": {"desired": "25C"}, "dough": {"flour_g": 850, "water_percent": 58, "milk": "60g", )"
    R"("yeast": "compressed", "yeast_percent": 0.9, "sugar": "2%"}, )"
    R"("preferment": {"flour_g": 120, "water_g": 110, "yeast_percent": 0.2, )"
    R"("stands": "9h", "temperature": "20C"}, "bowl": {"material": "glass", "mass_g": 1400}, )"
    R"("mixing": {"method": "hand", "minutes": 9, "rest": "25min"}, "stage": [{"name": "bulk", "piece": "tub", )"
    R"("room": "20C", "until_rise": "70%", "folds": ["40min"], "handling": ["divide", "mould"]}, {"name": "proof", )"
    R"("piece": "oblong", "pieces": 2, "refrigerator": "5C", "place": [{"from": "6:30", "room": "22C"}], )"
    R"("until_rise": "60%", "final_proof": true}]})";

std::string answers() {
  const std::string day = std::string(R"("day": )") + a_day + "}";
  const std::pair<std::string, const char*> asked[]{
      {R"({"ask": "water", )" + day, "/water_c"},
      {R"({"ask": "water", )" + day, "/low_c"},
      {R"({"ask": "simulate", "every_min": 0, )" + day, "/stages/0/end_h"},
      {R"({"ask": "simulate", "every_min": 0, )" + day, "/stages/1/end_h"},
      {R"({"ask": "forecast", "draws": 64, )" + day, "/stages/1/ready_h"},
      {R"({"ask": "forecast", "draws": 64, )" + day, "/stages/1/be_back_by_h"},
      {R"({"ask": "choose", "what": "yeast", "ready_h": 34, "draws": 64, )" + day, "/value"},
      {R"({"ask": "rise", "rise_percent": 90, "dough": "77F", "yeast_percent": 0.6})", "/hours"},
      {R"({"ask": "rise", "time": "2h 30min", "dough_c": 23, "yeast_percent": 0.6})", "/rise_percent"},
      {R"({"ask": "explain", "rise_percent": 90, "dough_c": 19, "yeast_percent": 0.6})", "/factors/1/times"}};
  std::vector<std::pair<std::string, double>> scenarios;
  for (const auto& [question, pointer] : asked) {
    const auto answer = nlohmann::json::parse(ferment::ask(question));
    const double value = answer.at(nlohmann::json::json_pointer(pointer)).get<double>();
    scenarios.emplace_back("{\"question\": " + question + ", \"pointer\": \"" + pointer + "\"", value);
  }
  return json("value", scenarios);
}

/// The answer of a scenario's line and the text before it; NaN for other lines.
std::pair<std::string, double> split(const std::string& line, const std::string& answer) {
  const std::string key = ", \"" + answer + "\": ";
  const std::size_t at = line.find(key);
  if (at == std::string::npos) return {line, std::nan("")};
  return {line.substr(0, at), std::strtod(line.c_str() + at + key.size(), nullptr)};
}

bool same(const std::string& path, const std::string& answer, const std::string& today) {
  std::ifstream file(path);
  if (!file) throw std::runtime_error("cannot read " + path);
  std::istringstream expected(today);
  std::string old_line;
  std::string new_line;
  int number = 0;
  while (true) {
    const bool old_there = static_cast<bool>(std::getline(file, old_line));
    const bool new_there = static_cast<bool>(std::getline(expected, new_line));
    ++number;
    if (!old_there && !new_there) return true;
    const auto [old_text, old_answer] = split(old_there ? old_line : "", answer);
    const auto [new_text, new_answer] = split(new_there ? new_line : "", answer);
    const bool both_answer = !std::isnan(old_answer) && !std::isnan(new_answer);
    const bool answers_agree = both_answer ? std::fabs(old_answer - new_answer) <= tolerance * std::fabs(old_answer)
                                           : std::isnan(old_answer) && std::isnan(new_answer);
    if (old_there == new_there && old_text == new_text && answers_agree) continue;
    std::cerr << path << ":" << number << " differs from today's answer\n  file:  " << old_line
              << "\n  today: " << new_line
              << "\nIf the change is meant, write the files anew with make_vectors and say so in CHANGELOG.md.\n";
    return false;
  }
}

void write(const std::string& path, const std::string& text) {
  std::ofstream file(path);
  file << text;
  if (!file.flush()) throw std::runtime_error("cannot write " + path);
}

struct File {
  const char* name;
  const char* answer;
  std::string (*today)();
};
constexpr File files[]{{"hours_to_rise.json", "hours", hours_to_rise},
                       {"ask.json", "value", answers},
                       {"water_by_factor_rule.json", "water_c", water_by_factor_rule}};

}  // namespace

int main(int count, char** arguments) {
  const std::vector<std::string> words(arguments + 1, arguments + count);
  const bool check = words.size() == 2 && words[0] == "--check";
  if (!check && words.size() != 1) {
    std::cerr << "usage: make_vectors [--check] FOLDER\n";
    return 2;
  }
  try {
    bool good = true;
    for (const File& file : files) {
      const std::string path = words.back() + "/" + file.name;
      const std::string text = file.today();
      if (check) {
        good = same(path, file.answer, text) && good;
      } else {
        write(path, text);
      }
    }
    return good ? 0 : 1;
  } catch (const std::exception& error) {
    std::cerr << "make_vectors: " << error.what() << "\n";
    return 1;
  }
}
