// What no question may do, whatever its bytes: crash, end without an answer or a reason, hand out what the library
// would not read itself.
#include <ferment/ferment.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <string>
#include <vector>

#include <ferment/day/day.hpp>
#include <ferment/day/document.hpp>
#include <ferment/dough/state.hpp>
#include <ferment/forecast/forecast.hpp>
#include <ferment/mix/mix.hpp>
#include <ferment/process/simulate.hpp>
#include <ferment/process/step.hpp>

#include <nlohmann/json.hpp>

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t longest = 4096;

[[noreturn]] void fail(const std::string& what, const std::string& question) {
  std::fprintf(stderr, "%s\n%s\n", what.c_str(), question.c_str());
  std::abort();
}

double number_at(const Json& table, const char* key, double otherwise) {
  return table.contains(key) && table[key].is_number() ? table[key].get<double>() : otherwise;
}

/// The question with so few draws, rows and digits that it is answered soon. Text that is no JSON stays as it is.
std::string made_quick(const std::string& text) {
  Json question = Json::parse(text, nullptr, false);
  if (!question.is_object() || !question.contains("ask")) return text;
  bool is_changed = false;
  const auto bound = [&](const char* key, double low, double high, double usual) {
    const double value = number_at(question, key, usual);
    if (value >= low && value <= high) return;
    question[key] = std::clamp(value, low, high);
    if (high >= 2) question[key] = static_cast<int>(std::clamp(value, low, high));
    is_changed = true;
  };
  const bool draws = question["ask"] == "forecast" || question["ask"] == "choose";
  if (draws) bound("draws", -1, 4, 512);
  if (draws) bound("tolerance", 3e-3, 1, 3e-2);
  if (question["ask"] == "simulate") bound("tolerance", 1e-5, 1, 1e-5);
  if (question["ask"] == "simulate" && number_at(question, "every_min", 1) != 0) bound("every_min", 30, 1e6, 1);
  if (!is_changed) return text;
  return question.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// Reads a part of an answer and writes it again.
template <class Value>
void require_readable(const Json& answer, const char* key, const std::string& question) {
  if (!answer.contains(key)) return;
  try {
    const Value value = ferment::from_document<Value>(answer[key].dump());
    const Value again = ferment::from_document<Value>(ferment::to_document(value));
    if (!ferment::same(ferment::form_of<Value>(), &value, &again)) fail(std::string(key) + " changes", question);
  } catch (const std::exception& error) {
    fail(std::string(key) + " of the answer is refused: " + error.what(), question);
  }
}

void require_reason(const std::string& question) {
  const std::string reason = ferment_last_error();
  if (reason.empty()) fail("it failed without a reason", question);
  if (reason.size() > 2 * longest) fail("the reason has " + std::to_string(reason.size()) + " bytes", question);
  // Of an answer, not of a key that a question has.
  const std::string no_number = "a document cannot hold a number that is none";
  if (reason.find(no_number) != std::string::npos && question.find("cannot hold") == std::string::npos)
    fail("no document holds the answer: " + reason, question);
  try {
    Json(reason).dump();
  } catch (const Json::type_error&) {
    fail("the reason is no UTF-8: " + reason, question);
  }
}

void require_answer(const std::string& answer, const std::string& question) {
  char* none = nullptr;
  const std::string nothing = "ask: nothing is asked";
  if (ferment_ask(answer.c_str(), &none) != FERMENT_INVALID_INPUT || none != nullptr ||
      std::string(ferment_last_error()).compare(0, nothing.size(), nothing) != 0)
    fail("the answer is no document: " + std::string(ferment_last_error()), question);
  const Json told = Json::parse(answer);
  if (!told.contains("format")) return;  // a schema
  require_readable<ferment::Mix>(told, "mix", question);
  require_readable<ferment::State>(told, "state", question);
  require_readable<ferment::Process>(told, "process", question);
}

// ---- questions that are still JSON: bytes alone seldom get past the parser ---------------------------------------

/// Chance, from the fuzzer's seed.
class Lots {
 public:
  explicit Lots(unsigned seed) : state_(seed) {}
  std::size_t below(std::size_t end) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return static_cast<std::size_t>(state_ >> 33) % end;
  }
  template <class List>
  const auto& of(const List& list) {
    return list[below(std::size(list))];
  }

 private:
  std::uint64_t state_;
};

/// Every key of a day, a process and the options.
void add_keys(const ferment::Form& form, std::vector<const ferment::Form*>& seen, std::vector<std::string>& keys) {
  if (std::find(seen.begin(), seen.end(), &form) != seen.end()) return;
  seen.push_back(&form);
  for (const ferment::Row& row : form.rows) {
    keys.emplace_back(row.name);
    for (const auto part : row.forms) add_keys(part(), seen, keys);
  }
}

const std::vector<std::string>& all_keys() {
  static const std::vector<std::string> keys = [] {
    std::vector<std::string> keys{"kitchen", "process", "every_draw", "ready", "ready_h", "moved", "what", "scale_g"};
    std::vector<const ferment::Form*> seen;
    for (const auto form : {ferment::form_of<ferment::Day>, ferment::form_of<ferment::Process>,
                            ferment::form_of<ferment::ForecastOptions>, ferment::form_of<ferment::SimulateOptions>})
      add_keys(form(), seen, keys);
    return keys;
  }();
  return keys;
}

void collect(Json& node, std::vector<Json*>& nodes) {
  nodes.push_back(&node);
  if (node.is_structured())
    for (Json& child : node) collect(child, nodes);
}

Json any_value(Lots& lots, const std::vector<Json*>& nodes) {
  static const double numbers[] = {0,  -0.0, 1,   -1,  0.1, 2,   4,    10,     24,   27,
                                   45, 60,   100, 999, 1e4, 1e6, 1e-9, 5e-324, 1e308};
  static const char* const texts[] = {"18C",   "64F",     "90min", "2h",          "1kg",   "85 %",
                                      "8:15",  "+1 7:30", "23:59", "20:00",       "ball",  "tub",
                                      "open",  "oblong",  "room",  "refrigerate", "water", "take_out",
                                      "start", "yeast",   "bulk",  "stand_mixer", "past",  "2026-11-29"};
  switch (lots.below(6)) {
    case 0: return lots.below(2) == 1;
    case 1: return lots.of(texts);
    case 2: return *lots.of(nodes);
    default: return lots.of(numbers);
  }
}

void change(Json& question, Lots& lots) {
  std::vector<Json*> nodes;
  collect(question, nodes);
  Json& node = *lots.of(nodes);
  const Json value = any_value(lots, nodes);
  if (node.is_object() && lots.below(3) > 0) {
    node[lots.of(all_keys())] = value;
  } else if (node.is_structured() && !node.empty() && lots.below(3) == 0) {
    node.erase(std::next(node.begin(), static_cast<std::ptrdiff_t>(lots.below(node.size()))));
  } else if (node.is_array()) {
    node.push_back(node.empty() ? value : Json(lots.of(node)));
  } else if (node.is_number() && lots.below(2) == 0) {
    node = node.get<double>() * (0.25 + 0.25 * static_cast<double>(lots.below(8)));
  } else if (&node != &question && !node.is_object()) {
    node = value;
  }
}

}  // namespace

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned seed) {
  Lots lots(seed);
  Json question = lots.below(4) == 0 ? Json() : Json::parse(data, data + size, nullptr, false);
  if (!question.is_object()) return LLVMFuzzerMutate(data, size, most);
  for (std::size_t i = lots.below(3) + 1; i > 0; --i) change(question, lots);
  const std::string text = question.dump(-1, ' ', false, Json::error_handler_t::replace);
  if (text.size() > most) return LLVMFuzzerMutate(data, size, most);
  std::copy(text.begin(), text.end(), data);
  return text.size();
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size > longest) return -1;
  const std::string question = made_quick(std::string(reinterpret_cast<const char*>(data), size));
  char* answer = nullptr;
  const ferment_status status = ferment_ask(question.c_str(), &answer);
  if (status == FERMENT_OK) {
    const std::string text = answer;
    ferment_free(answer);
    require_answer(text, question);
    return 0;
  }
  if (answer != nullptr) fail("an answer was handed out beside a failure", question);
  if (status == FERMENT_INTERNAL || status == FERMENT_NOT_CONVERGED)
    fail("status " + std::to_string(status) + ": " + ferment_last_error(), question);
  require_reason(question);
  return 0;
}
