// A day as a process, and what it takes for granted.
#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include <ferment/base/error.hpp>
#include <ferment/day/day.hpp>
#include <ferment/mix/water_plan.hpp>

#include "base/text.hpp"
#include "day/day_parts.hpp"
#include "day/moment.hpp"
#include "mix/filling.hpp"

namespace ferment {
namespace {

constexpr double around_h = 12;  // what was done is the nearest such hour to what was planned

/// The hours of a process that begins with a day's mix.
struct Hours {
  double start_h = 0;
  double mixed_h = 0;
  bool is_clock = false;  ///< of the day, from its 0:00; else from the end of mixing
};

Hours hours_of(const Day& day, const Mix& mix) {
  const double mixing_h = mix.rest_h + (mix.mixing ? mixing_minutes(*mix.mixing) / 60 : 0);
  if (!has_clock(day)) return {.start_h = -mixing_h};
  const double planned_h = day.start.empty() ? 0 : moment_h(day.start);
  // What was done may be a little before what was planned.
  const double mixed_h =
      day.mixed.empty() ? planned_h + mixing_h : moment_h(day.mixed, day.start.empty() ? 0 : planned_h - around_h);
  return {mixed_h - mixing_h, mixed_h, true};
}

double moment_of(const Hours& hours, const std::string& text, double after_h, const std::string& path) {
  if (hours.is_clock) return moment_h(text, after_h);
  throw InvalidInput("a time of day says nothing without the day's own",
                     {.path = path, .advice = "give start, when flour and water meet, or mixed, when they were"});
}

/// A log's hours count from the end of mixing.
Course placed(Course log, const Hours& hours) {
  for (double& time_h : log.time_h) time_h += hours.mixed_h;
  return log;
}

bool has_temperature(const DayPlace& place) { return temperatures_of(place) > 0; }

Place place_of(const DayPlace& written, const Hours& hours, const std::string& path) {
  Place place;
  const auto set = [&](const std::optional<double>& temperature_c, const std::optional<Course>& log, Air air) {
    if (!temperature_c && !log) return;
    place.temperature_c = temperature_c;
    if (log) place.course = placed(*log, hours);
    place.air = air;
  };
  set(written.room_c, written.room_log, Air::room);
  set(written.refrigerator_c, written.refrigerator_log, written.fan ? Air::fan_refrigerator : Air::refrigerator);
  set(written.proof_box_c, written.proof_box_log, written.humid ? Air::humid_proof_box : Air::proof_box);
  set(written.dough_c, written.dough_log, Air::room);
  place.is_dough = written.dough_c || written.dough_log;
  place.humidity_percent = written.humidity_percent;
  place.heat_transfer_w_per_m2_k = written.heat_transfer_w_per_m2_k;
  if (written.swing_k) {
    const double warmest_h = moment_of(hours, written.warmest, 0, path + ".swing_k");
    place.swing = DailySwing{.mean_c = *place.temperature_c, .half_range_k = *written.swing_k, .warmest_h = warmest_h};
    place.temperature_c.reset();
  }
  return place;
}

Piece piece_of(const DayStage& stage) {
  return {.shape = *stage.piece,
          .mass_g = stage.piece_g,
          .pieces = stage.pieces,
          .diameter_cm = stage.diameter_cm,
          .length_cm = stage.length_cm,
          .depth_cm = stage.depth_cm,
          .material = stage.material,
          .vessel_g = stage.vessel_g,
          .cover = stage.cover,
          .worktop = stage.worktop,
          .heat_loss_w_per_k = stage.heat_loss_w_per_k};
}

/// The dough's temperature at the end of mixing, where the day says it.
std::optional<double> said_dough_c(const Day& day) {
  if (day.dough.measured_c) return day.dough.measured_c;
  if (day.water.desired_c) return day.water.desired_c;
  if (day.stages.empty()) return std::nullopt;
  const DayPlace& first = day.stages.front().where;
  if (first.dough_log) return temperature_at({.course = first.dough_log, .is_dough = true}, 0);
  return first.dough_c;
}

/// Whether the dough's temperature follows from the water that was poured.
bool goes_forward(const Day& day) { return !day.dough.measured_c && day.water.poured_c && day.today.room_c; }

/// The real mix: as measured; with the water that was poured; with the water that is planned; or, where no balance can
/// be made, with the dough that is said to come of it.
Mix real_mix_of(const Day& day, const Kitchen& kitchen) {
  Mix mix = mix_of(day, kitchen);
  const WantedWater& water = day.water;
  if (water.poured_c && !day.dough.measured_c && !day.today.room_c) {
    throw InvalidInput("the dough that poured water makes needs the room's temperature",
                       {.path = "today.room_c", .advice = "measure it where the dough is mixed"});
  }
  if (day.dough.measured_c) {
    mix.dough_c = day.dough.measured_c;
    if (water.poured_c) mix.formula.water_c = water.poured_c;
  } else if (goes_forward(day)) {
    mix.formula.water_c = water.poured_c;
  } else if (water.desired_c && day.today.room_c && mix.formula.water_g > 0) {
    mix = with_water(mix, water_of(day, kitchen));
  } else if (const auto dough_c = said_dough_c(day)) {
    mix.dough_c = dough_c;
  } else {
    throw InvalidInput("the dough's temperature at the end of mixing is not known",
                       {.path = "water.desired_c",
                        .advice = "give [water] desired, or [dough] measured, or dough to the first stage"});
  }
  return mix;
}

/// When a stage begins: then, or not before.
struct Begin {
  double time_h;
  bool is_known;
};

class Stages {
 public:
  Stages(const Day& day, const Hours& hours, const Mix& mix)
      : day_(day), hours_(hours), mix_(mix), after_h_(hours.mixed_h), done_h_(hours.mixed_h) {}

  Stage next(std::size_t index) {
    const DayStage& written = day_.stages[index];
    const std::string path = "stage[" + std::to_string(index) + "]";
    const bool is_replaced = index > 0 && !day_.stages[index - 1].ended.empty();  // it begins when that ended
    if (!written.where.from.empty()) is_known_ = true;
    if (!written.where.from.empty() && !is_replaced)
      after_h_ = moment_of(hours_, written.where.from, after_h_, path + ".from");
    begins_.push_back({std::max(after_h_, is_replaced ? done_h_ : after_h_), is_known_});
    set_surroundings(written, path);
    if (written.piece) piece_ = piece_of(written);
    Stage stage;
    stage.name = written.name;
    stage.piece = piece_;
    stage.surroundings = surroundings_;
    stage.until_h = written.until_h;
    stage.until_rise_percent = written.until_rise_percent;
    stage.folds_h = written.folds_h;
    stage.handling = written.handling;
    stage.standing = written.standing;
    stage.final_proof = written.final_proof;
    stage.acceptable_rise_percent = written.acceptable_rise_percent;
    set_end(stage, index, path);
    return stage;
  }
  const std::vector<Begin>& begins() const { return begins_; }

 private:
  void set_surroundings(const DayStage& written, const std::string& path) {
    const bool adds = !written.places.empty();
    std::vector<Place> places;
    placed_h_ = after_h_;
    if (has_temperature(written.where)) {
      places.push_back(place_of(written.where, hours_, path));
    } else if (adds && written.places.front().from.empty()) {
      // its first further place is the first one
    } else if (written.piece && day_.today.room_c) {
      places.push_back({.temperature_c = day_.today.room_c});
    } else if (written.piece) {
      throw InvalidInput("a piece has no place", {.path = path + ".room_c", .advice = "give it one, or [today] room"});
    } else if (!surroundings_.places.empty()) {
      if (!adds) return;
      places = surroundings_.places;
    } else {
      places.push_back({.temperature_c = mixed_dough_c(), .is_dough = true});
    }
    for (std::size_t i = 0; i < written.places.size(); ++i) {
      const std::string its_path = path + ".place[" + std::to_string(i) + "]";
      Place place = place_of(written.places[i], hours_, its_path);
      if (!written.places[i].from.empty()) {
        placed_h_ = moment_of(hours_, written.places[i].from, placed_h_, its_path + ".from");
        place.from_h = placed_h_;
      } else if (!places.empty()) {
        throw InvalidInput("from when the dough is there is not said",
                           {.path = its_path + ".from", .advice = "a time of day, such as 22:00"});
      }
      places.push_back(std::move(place));
    }
    surroundings_.places = std::move(places);
  }

  double mixed_dough_c() const {
    if (mix_.dough_c) return *mix_.dough_c;
    return goes_forward(day_) ? dough_by_heat_balance(mix_) : *day_.water.desired_c;
  }

  /// What was done counts before what was planned; a stage without an end goes on until the next one begins.
  void set_end(Stage& stage, std::size_t index, const std::string& path) {
    const DayStage& written = day_.stages[index];
    const bool is_done = !written.ended.empty(), is_last = index + 1 == day_.stages.size();
    const std::string end = is_done ? written.ended : is_last ? "" : day_.stages[index + 1].where.from;
    if (end.empty()) {
      is_known_ = is_known_ && written.until_h;
      after_h_ += written.until_h.value_or(0);
      return;
    }
    is_known_ = true;
    const std::string its_path = is_done ? path + ".ended" : "stage[" + std::to_string(index + 1) + "].from";
    const double planned_h = std::max(after_h_, placed_h_);
    after_h_ = moment_of(hours_, end, is_done ? std::max(done_h_, planned_h - around_h) : planned_h, its_path);
    if (is_done) done_h_ = after_h_;
    stage.until_h.reset();
    stage.until_rise_percent.reset();
    stage.ends_h = after_h_;
  }

  const Day& day_;
  Hours hours_;
  const Mix& mix_;
  double after_h_;        ///< what is planned next is not before
  double done_h_;         ///< nor what was done
  double placed_h_ = 0;   ///< when the stage's last place begins
  bool is_known_ = true;  ///< when the next stage begins: nothing before it ends by a rise
  std::vector<Begin> begins_ = {};
  Surroundings surroundings_ = {};
  Piece piece_ = {};
};

void assume(std::vector<Notice>& notices, std::string code, std::optional<double> value, std::string name,
            std::string text) {
  Notice notice{.code = std::move(code), .severity = Severity::info, .values = {}, .text = std::move(text)};
  if (value) notice.values = {{std::move(name), *value}};
  notices.push_back(std::move(notice));
}

/// A day's process, and when its stages begin.
struct Whole {
  Process process;
  Hours hours;
  std::vector<Begin> begins;
};

Whole whole_of(const Day& day, const Kitchen& kitchen) {
  require(day);
  if (day.stages.empty())
    throw InvalidInput("the day has no stage", {.path = "stage", .advice = "give one with a name and an end"});
  const Mix mix = real_mix_of(day, kitchen);
  const Hours hours = hours_of(day, mix);
  Process process;
  process.start_h = hours.start_h;
  process.altitude_m = day.dough.altitude_m;
  process.steps.emplace_back(mix);
  Stages stages(day, hours, mix);
  for (std::size_t i = 0; i < day.stages.size(); ++i) process.steps.emplace_back(stages.next(i));
  try {
    require(process);
  } catch (const Error& error) {
    throw_at(path_of_step(error.detail().path), error);
  }
  const Formula& f = mix.formula;
  if (!(f.instant_g + f.active_dry_g + f.compressed_g > 0) && mix.doughs.empty()) {
    throw InvalidInput("the dough has no yeast",
                       {.path = "dough.yeast_percent", .advice = "3 g on 500 g of flour are 0.6 percent"});
  }
  return {std::move(process), hours, stages.begins()};
}

/// The hour of a look.
double hour_of(const std::string& at, const Day& day, std::size_t stage, const Whole& whole, const char* path) {
  const Begin& begin = whole.begins[stage];
  const std::optional<double> since_h = hours_since(at);
  if (!since_h) return moment_of(whole.hours, at, begin.time_h, path);
  if (begin.is_known) return begin.time_h + *since_h;
  throw InvalidInput("when stage \"" + day.stages[stage].name + "\" began is not known",
                     {.path = path, .advice = "give a time of day, or ended to the stage before"});
}

std::size_t stage_seen(const Day& day, const Seen& seen) {
  std::string known;
  for (std::size_t i = 0; i < day.stages.size(); ++i) {
    if (day.stages[i].name == seen.stage) return i;
    known.append(known.empty() ? "" : ", ").append(day.stages[i].name);
  }
  throw InvalidInput("no stage is called " + shown(seen.stage), {.path = "stage", .advice = "known: " + known});
}

/// Rise by the height of a dough in straight sides, %.
double rise_by_height(const Day& day, std::size_t index) {
  const Seen& seen = day.seen[index];
  std::optional<double> start_cm = seen.start_height_cm;
  for (std::size_t i = 0; i < day.seen.size() && !start_cm; ++i) {
    if (day.seen[i].stage == seen.stage) start_cm = day.seen[i].start_height_cm;
  }
  if (start_cm) return 100 * (*seen.height_cm / *start_cm - 1);
  throw InvalidInput("a height says nothing of the rise without the one when the stage began",
                     {.path = "start_height_cm", .advice = "measure it when the stage begins"});
}

/// One entry is a look at the rise, one at the temperature, or both.
void add_sightings(std::vector<Sighting>& all, const Day& day, std::size_t index, const Whole& whole) {
  const Seen& seen = day.seen[index];
  const std::size_t stage = stage_seen(day, seen);
  Sighting look{.stage = seen.stage, .time_h = 0};
  if (seen.between.empty()) {
    look.time_h = hour_of(seen.at, day, stage, whole, "at");
  } else {
    look.not_yet_h = hour_of(seen.between[0], day, stage, whole, "between");
    look.time_h = hour_of(seen.between[1], day, stage, whole, "between");
  }
  if (seen.dough_c) {
    Sighting its = look;
    its.was = SeenAs::dough;
    its.dough_c = seen.dough_c;
    its.not_yet_h.reset();
    all.push_back(its);
  }
  look.rise_percent = seen.rise_percent;
  if (seen.rise_percent) {
    look.was = seen.between.empty() ? SeenAs::at : SeenAs::past;
  } else if (seen.not_yet_percent) {
    look.was = SeenAs::not_yet;
    look.rise_percent = seen.not_yet_percent;
  } else if (seen.already_past_percent) {
    look.was = SeenAs::past;
    look.rise_percent = seen.already_past_percent;
  } else if (seen.height_cm) {
    look.was = SeenAs::height;
    look.rise_percent = rise_by_height(day, index);
  } else if (seen.over_proofed || seen.collapsed) {
    look.was = SeenAs::over_proofed;
  } else {
    return;
  }
  require(look);
  all.push_back(look);
}

}  // namespace

bool has_clock(const Day& day) { return !day.start.empty() || !day.mixed.empty(); }

Process process_of(const Day& day, const Kitchen& kitchen) { return whole_of(day, kitchen).process; }

Log log_of(const Day& day, const Kitchen& kitchen) {
  const Whole whole = whole_of(day, kitchen);
  Log log{.name = day.date.empty() ? day.title : day.date,
          .date = day.date,
          .packet = day.dough.packet,
          .process = whole.process};
  for (std::size_t i = 0; i < day.seen.size(); ++i) {
    try {
      add_sightings(log.seen, day, i, whole);
    } catch (const Error& error) {
      throw_within("seen[" + std::to_string(i) + "]", error);
    }
  }
  return log;
}

void throw_at(const std::string& path, const Error& error) {
  ErrorDetail detail = error.detail();
  detail.path = path;
  throw_error(error.status(), error.problem(), std::move(detail));
}

std::string path_of_look(const Day& day, const std::string& path) {
  constexpr std::string_view begin = "seen[";
  const std::size_t end = path.find(']');
  if (path.rfind(begin, 0) != 0 || end == std::string::npos) return path_of_step(path);
  std::size_t look = std::stoul(path.substr(begin.size(), end - begin.size()));
  for (std::size_t i = 0; i < day.seen.size(); ++i) {
    const bool is_of_rise = day.seen[i].rise_percent || day.seen[i].not_yet_percent || day.seen[i].height_cm ||
                            day.seen[i].already_past_percent || day.seen[i].over_proofed || day.seen[i].collapsed;
    const std::size_t looks = day.seen[i].dough_c.has_value() + is_of_rise;
    const std::string rest = path.substr(end + 1);
    if (look < looks) return "seen[" + std::to_string(i) + "]" + (rest == ".time_h" ? ".at" : rest);
    look -= looks;
  }
  return path;
}

std::string path_of_step(const std::string& path) {
  constexpr std::string_view begin = "steps[";
  const std::size_t end = path.find(']');
  if (path.rfind(begin, 0) != 0 || end == std::string::npos) return path;
  const int step = std::stoi(path.substr(begin.size(), end - begin.size()));
  if (step == 0) return "dough";
  std::string rest = path.substr(end + 1);
  if (rest.rfind(".surroundings", 0) == 0) rest = ".place";
  if (rest.rfind(".piece.", 0) == 0) rest = rest.substr(6);
  if (rest == ".mass_g") rest = ".piece_g";
  return "stage[" + std::to_string(step - 1) + "]" + rest;
}

std::vector<Notice> assumptions_of(const Day& day) {
  std::vector<Notice> notices;
  if (!knows_flour(day) && !day.dough.pieces)
    assume(notices, "assumed_flour_g", assumed_flour_g, "flour_g", number(assumed_flour_g) + " g of flour");
  if (!day.dough.water_percent && !day.dough.water_g)
    assume(notices, "assumed_water_percent", 65, "water_percent", "65 % water");
  if (!day.dough.salt_percent && !day.dough.salt_g)
    assume(notices, "assumed_salt_percent", 2, "salt_percent", "2 % salt");
  if (!day.bowl) assume(notices, "assumed_no_bowl", {}, "", "no bowl");
  const WantedWater& water = day.water;
  if (water.friction_k && (water.desired_c || water.poured_c) && !water.friction_at_c &&
      !day.mixing.net_gain_kj_per_kg) {
    assume(notices, "assumed_friction_at_c", friction_found_at_c, "friction_at_c",
           "a friction found where flour and room had " + degrees(friction_found_at_c));
  }
  const DayStage* before = nullptr;
  for (const DayStage& stage : day.stages) {
    const bool has_place = has_temperature(stage.where) || (!stage.places.empty() && stage.places.front().from.empty());
    const std::string name = "stage \"" + stage.name + "\" is ";
    if (!has_place && stage.piece && day.today.room_c) {
      assume(notices, "assumed_place", day.today.room_c, "room_c",
             name + "in today's room, " + degrees(*day.today.room_c) + ": it has a piece and no place");
    } else if (!has_place && before != nullptr) {
      assume(notices, "assumed_place", {}, "", name + "where \"" + before->name + "\" is: it has no place of its own");
    } else if (!has_place && goes_forward(day)) {
      assume(notices, "assumed_place", {}, "",
             name + "held at the temperature that the dough has after mixing: it has no place");
    } else if (!has_place) {
      if (const auto dough_c = said_dough_c(day))
        assume(notices, "assumed_place", dough_c, "dough_c",
               name + "held at " + degrees(*dough_c) + ": it has no place");
    }
    before = &stage;
  }
  return notices;
}

}  // namespace ferment
