// Days as they were written down teach a kitchen.
#include <algorithm>
#include <string>
#include <utility>

#include <ferment/base/error.hpp>
#include <ferment/day/day.hpp>

#include "day/day_parts.hpp"

namespace ferment {
namespace {

/// What a day's own batch says of its mixing, if it was measured.
void learn_mixing(Kitchen& kitchen, const Day& day) {
  const bool is_measured = day.dough.measured_c && day.water.poured_c && day.today.room_c;
  if (!is_measured || day.mixing.net_gain_kj_per_kg || day.mixing.work_kj_per_kg) return;
  Day alone = day;
  alone.batches.clear();
  const LearnedMixing learned = learned_mixing(alone, kitchen);
  const std::string method = method_of(day);
  auto known = std::find_if(kitchen.mixing.begin(), kitchen.mixing.end(),
                            [&](const LearnedGain& gain) { return gain.method == method; });
  if (known == kitchen.mixing.end()) known = kitchen.mixing.insert(known, {.method = method});
  known->net_gains_kj_per_kg.push_back(learned.net_gain_kj_per_kg.mean);
  known->minutes = learned.minutes;
}

std::string path_of(std::size_t day) { return "days[" + std::to_string(day) + "]"; }

/// An error of a log's process or looks, told of its day.
[[noreturn]] void throw_of_day(const Error& error, const std::vector<Day>& days,
                               const std::vector<std::size_t>& day_of_log) {
  constexpr std::string_view begin = "logs[";
  const std::string& path = error.detail().path;
  const std::size_t end = path.find(']');
  if (path.rfind(begin, 0) != 0 || end == std::string::npos) {
    if (path == "logs") throw_at("days", error);
    throw;
  }
  const std::size_t log = std::stoul(path.substr(begin.size(), end - begin.size()));
  const std::size_t day = day_of_log[log];
  const std::string rest = path.size() > end + 2 ? path_of_look(days[day], path.substr(end + 2)) : "";
  throw_at(path_of(day) + (rest.empty() ? "" : "." + rest), error);
}

}  // namespace

Calibration calibrate_days(const std::vector<Day>& days, const Kitchen& prior, const CalibrateOptions& options) {
  if (days.empty()) throw InvalidInput("there are no days", {.path = "days", .advice = "write down a bake first"});
  Kitchen before = prior;
  std::vector<Log> logs;
  std::vector<std::size_t> day_of_log;
  for (std::size_t i = 0; i < days.size(); ++i) {
    try {
      learn_mixing(before, days[i]);
      if (days[i].seen.empty()) continue;
      logs.push_back(log_of(days[i], prior));
      day_of_log.push_back(i);
    } catch (const Error& error) {
      throw_within(path_of(i), error);
    }
  }
  if (logs.empty() && before.mixing.size() == prior.mixing.size()) {
    throw InvalidInput("nothing was seen on any of these days",
                       {.path = "days", .advice = "write down a look: stage, at and rise_percent under [[seen]]"});
  }
  if (logs.empty()) return {.kitchen = std::move(before)};
  try {
    return calibrate(logs, before, options);
  } catch (const Error& error) {
    throw_of_day(error, days, day_of_log);
  }
}

}  // namespace ferment
