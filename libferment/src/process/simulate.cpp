#include <ferment/process/simulate.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <string>
#include <utility>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/rise/cautions.hpp>

#include "base/text.hpp"
#include "dough/shell.hpp"
#include "process/dough_physics.hpp"
#include "process/run.hpp"
#include "rise/cautions_checked.hpp"

namespace ferment {
namespace {

std::string where(const Step& step, std::size_t index) {
  const auto* stage = std::get_if<Stage>(&step);
  return stage != nullptr ? "stage \"" + stage->name + "\"" : "mix (step " + std::to_string(index + 1) + ")";
}

}  // namespace

void throw_from(const Error& error, const Step& step, std::size_t index) {
  ErrorDetail detail = error.detail();
  detail.path = "steps[" + std::to_string(index) + "]" + (detail.path.empty() ? "" : "." + detail.path);
  throw_error(error.status(), where(step, index) + ": " + error.problem(), std::move(detail));
}

namespace {

/// Writes a timeline's rows.
class Recorder {
 public:
  static constexpr std::size_t most_rows = 1'000'000;

  Recorder(Timeline& timeline, double every_min) : timeline_(timeline), every_h_(every_min / 60) {}

  void now(const StageRun& run) {
    const State& s = run.state();
    const Shell& now = run.shell();
    row(run, {s.time_h, now.temperature_c, now.equivalent_h, now.made_mmol, run.ratio_now()}, s.inside_k);
  }
  /// The full minutes inside a leg.
  void leg(const StageRun& run, const Leg& leg) {
    if (!(every_h_ > 0)) return;
    const double from_h = leg.start_h(), to_h = from_h + leg.hours();
    std::optional<Settling> inside;
    for (double k = std::ceil(from_h / every_h_ - same_minute); k * every_h_ < to_h - same_minute * every_h_; ++k) {
      const double after_h = std::max(k * every_h_ - from_h, 0.0);
      if (from_h + after_h <= timeline_.time_h.back() + same_minute * every_h_) continue;
      if (!inside) inside = run.inside(leg, leg.quarters());
      row(run, run.at(leg, after_h), inside->at(after_h));
    }
  }
  void end(const StageRun& run) {
    if (timeline_.time_h.back() < run.state().time_h || timeline_.stage.back() != timeline_.stages.size()) now(run);
  }

 private:
  static constexpr double same_minute = 1e-6;

  void row(const StageRun& run, const Moment& m, double inside_k) {
    if (timeline_.time_h.size() >= most_rows) {
      throw InvalidInput("a row every " + number(60 * every_h_) + " min makes more than " + std::to_string(most_rows) +
                             " rows",
                         {.path = "every_min",
                          .value = 60 * every_h_,
                          .advice = "take a longer every_min, or 0 for starts and ends alone"});
    }
    timeline_.time_h.push_back(m.time_h);
    timeline_.mean_c.push_back(m.mean_c);
    timeline_.equivalent_h.push_back(m.equivalent_h);
    timeline_.co2_mmol.push_back(m.made_mmol);
    timeline_.rise_percent.push_back(run.rise_percent(m.ratio));
    timeline_.stage.push_back(timeline_.stages.size());
    const Node* node = run.node();
    timeline_.air_c.push_back(node != nullptr ? run.air_at(m.time_h) : m.mean_c);
    timeline_.surface_c.push_back(m.mean_c - run.settled_k(m.mean_c, m.time_h));
    timeline_.core_c.push_back(m.mean_c + (node != nullptr ? (node->core_over_mean - 1) * inside_k : 0));
  }

  Timeline& timeline_;
  double every_h_;
};

class NoticeList {
 public:
  explicit NoticeList(std::vector<Notice>& list) : list_(list) {}
  void add(Notice notice) {
    const bool known = std::any_of(list_.begin(), list_.end(),
                                   [&](const Notice& n) { return n.code == notice.code && n.text == notice.text; });
    if (!known) list_.push_back(std::move(notice));
  }
  void add(std::vector<Notice> notices) {
    for (Notice& notice : notices) add(std::move(notice));
  }
  /// Only the first of its kind: the same caution for another number says nothing new.
  void add_kind(std::vector<Notice> notices) {
    for (Notice& notice : notices) {
      const bool known =
          std::any_of(list_.begin(), list_.end(), [&](const Notice& n) { return n.code == notice.code; });
      if (!known) list_.push_back(std::move(notice));
    }
  }

 private:
  std::vector<Notice>& list_;
};

std::string at_hour(double time_h) { return number(time_h, 4) + " h"; }

void note_stage(NoticeList& notices, const StageRun& run, const StageResult& result, const State& before,
                const Kitchen& kitchen) {
  const Stage& stage = run.stage();
  const double piece_g = run.node() != nullptr ? run.node()->mass_g : before.amounts.dough_g;
  for (const Place& place : stage.surroundings.places) {
    const bool cold_room = place.air == Air::refrigerator || place.air == Air::fan_refrigerator;
    if (place.temperature_c && !place.is_dough && cold_room)
      notices.add_kind(cautions({.refrigerator_c = place.temperature_c}, kitchen));
    const std::optional<Course>& course = place.course;
    if (course && course->time_h.back() < result.end_h - 1e-9) {
      notices.add({"measured_temperature_ended",
                   Severity::caution,
                   {{"time_h", course->time_h.back()}},
                   "stage \"" + stage.name + "\" goes on after the last measured temperature, at " +
                       at_hour(course->time_h.back()) + "; from there that temperature is held"});
    }
  }
  if (!before.cohorts.empty()) {
    double dose = 0;
    for (const Cohort& cohort : before.cohorts) dose += cohort.dose_g;
    const double instant = dose / (0.30 / 0.33);
    notices.add_kind(cautions({.yeast_percent = instant,
                               .yeast = Yeast::instant,
                               .sugar_percent = percent_of_flour(before, before.amounts.sugar_g)},
                              kitchen));
    for (const double dough_c : {result.start_c, result.end_c})
      notices.add_kind(cautions({.dough_c = dough_c}, kitchen));
  }
  if (result.over_proofed_h && *result.over_proofed_h < result.end_h - 1e-9) {
    notices.add({"stage_over_proofed",
                 Severity::warning,
                 {{"over_proofed_h", *result.over_proofed_h}, {"end_h", result.end_h}},
                 "stage \"" + stage.name + "\": the dough is over-proofed at " + at_hour(*result.over_proofed_h) +
                     ", before the stage ends at " + at_hour(result.end_h) +
                     "; ask for a smaller rise or a shorter time"});
  }
  constexpr double small_g = 50, full_rise_percent = 80;
  if (run.is_proof() && standing_of(stage) == Standing::free && piece_g < small_g &&
      result.rise_percent > full_rise_percent) {
    notices.add(
        {"small_pieces",
         Severity::info,
         {{"piece_g", piece_g}},
         "stage \"" + stage.name + "\": pieces of " + number(piece_g, 3) +
             " g that stand free stop rising at about twice their size, sooner than reckoned (common practice)"});
  }
  for (const Place& place : stage.surroundings.places) {
    if (stage.piece.cover == Cover::open && !place.is_dough) {
      notices.add(
          {"open_dough_dries",
           Severity::caution,
           {},
           "stage \"" + stage.name +
               "\": a dough that is not covered cools by drying until a skin forms, which is not modelled; cover it"});
      break;
    }
  }
}

void note_mix(NoticeList& notices, const Mix& mix, double flour_g) {
  const Formula& f = mix.formula;
  if (!f.preferments.empty()) {
    notices.add({"preferment_without_history",
                 Severity::caution,
                 {},
                 "a preferment is given by flour and water alone: its yeast and the gas it has spent are not counted; "
                 "ferment it in a stage of its own"});
  }
  notices.add_kind(cautions_checked(f, flour_g));
  const bool yeast = f.instant_g + f.active_dry_g + f.compressed_g > 0;
  if (!yeast) return;
  const Yeast kind = f.instant_g > 0 ? Yeast::instant : f.active_dry_g > 0 ? Yeast::active_dry : Yeast::compressed;
  for (const Water& water : f.waters) {
    if (water.wets_yeast) notices.add(cautions({.yeast = kind, .water_c = water.temperature_c}));
  }
}

/// What a timeline has of a process: rows, results of the stages, notices.
class Telling {
 public:
  static constexpr bool needs_core = true;
  Telling(Timeline& timeline, const Kitchen& kitchen, const SimulateOptions& options)
      : timeline_(timeline), kitchen_(kitchen), options_(options), recorder_(timeline, options.every_min),
        notices_(timeline.notices) {}

  void mixed(const Mix& mix, const State& state) {
    require(state);
    note_mix(notices_, mix, state.amounts.flour_g);
  }
  void begun(StageRun& run) {
    if (options_.be_back_by) run.watch_acceptable();
    before_ = run.state();
    const Node* const node = run.node();
    time_constant_h_ = node != nullptr ? std::optional(node->time_constant_h) : std::nullopt;
    recorder_.now(run);
  }
  void passed(const StageRun& run, const Leg& leg) {
    recorder_.leg(run, leg);
    if (run.state().cohorts.empty()) return;
    Point before{.temperature_c = run.shell().temperature_c};
    for (const Point& point : leg.quarters()) {
      warm_h_ += (point.after_h - before.after_h) *
                 share_between(before.temperature_c, point.temperature_c, warm_for_growth_c, field::dough_c.high);
      before = point;
    }
  }
  void ended(StageRun& run, bool is_ended) {
    recorder_.end(run);
    const State& s = run.state();
    const StageProgress& progress = *s.stage;
    StageResult result{.name = run.stage().name,
                       .start_h = progress.start_h,
                       .end_h = s.time_h,
                       .start_c = progress.start_c,
                       .end_c = only_shell(s).temperature_c,
                       .rise_percent = run.rise_percent(run.ratio_now()),
                       .equivalent_h = only_shell(s).equivalent_h - only_shell(before_).equivalent_h,
                       .folds_done = progress.folds_done,
                       .time_constant_h = time_constant_h_,
                       .heat_made_j = progress.heat_made_j,
                       .heat_lost_j = progress.heat_lost_j,
                       .ended = is_ended};
    if (is_ended && options_.be_back_by) run.look_ahead();
    result.over_proofed_h = run.over_proofed_h();
    result.be_back_by_h = run.too_late_h();
    note_stage(notices_, run, result, before_, kitchen_);
    timeline_.stages.push_back(std::move(result));
  }
  /// When all is told.
  void finish() {
    if (timeline_.state.perishable_h > 0) {
      notices_.add(cautions({.perishable_h = timeline_.state.perishable_h}, kitchen_));
    }
    if (warm_h_ > most_warm_h) {
      notices_.add({"dough_held_warm",
                    Severity::caution,
                    {{"hours", warm_h_}},
                    "the dough is warmer than " + number(warm_for_growth_c) + " °C for " + number(warm_h_, 2) +
                        " h: yeast hardly multiplies there, and a long rise takes longer than reckoned"});
    }
    std::stable_sort(timeline_.notices.begin(), timeline_.notices.end(),
                     [](const Notice& a, const Notice& b) { return a.severity > b.severity; });
  }

 private:
  Timeline& timeline_;
  const Kitchen& kitchen_;
  const SimulateOptions& options_;
  Recorder recorder_;
  NoticeList notices_;
  State before_ = {};
  static constexpr double warm_for_growth_c = 33, most_warm_h = 2;
  std::optional<double> time_constant_h_ = {};
  double warm_h_ = 0;  ///< spent above that
};

/// One who wants to know nothing.
struct Silence {
  static constexpr bool needs_core = true;
  void mixed(const Mix& /*mix*/, const State& state) { require(state); }
  void begun(const StageRun& /*run*/) {}
  void ended(const StageRun& /*run*/, bool /*is_ended*/) {}
};

/// Refuses a step that cannot be, or not in this state.
void require_step(const State& state, const Step& step) {
  std::visit([](const auto& its) { require(its); }, step);
  if (std::holds_alternative<Mix>(step)) return;
  if (!(state.amounts.dough_g > 0)) {
    throw InvalidInput("there is no dough yet", {.advice = "mix flour and water before the first stage"});
  }
  require_rising_dough(state);
}

}  // namespace

State beginning(const Process& process, const std::optional<State>& given) {
  require(field::start_h, process.start_h);
  require(field::altitude_m, process.altitude_m);
  if (process.steps.empty())
    throw InvalidInput("the process has no steps", {.path = "steps", .advice = "begin with a mix of flour and water"});
  if (!given) return {.time_h = process.start_h, .altitude_m = process.altitude_m};
  require(*given);
  const std::size_t done = given->steps_done, steps = process.steps.size();
  if (done >= steps) {
    throw InvalidInput("the state has done " + std::to_string(done) + " steps and the process has " +
                           std::to_string(steps),
                       {.path = "state",
                        .advice = "give the process it belongs to, or make it the beginning of another"});
  }
  if (given->stage && !std::holds_alternative<Stage>(process.steps[done])) {
    throw InvalidInput("the state is in the middle of a stage, but step " + std::to_string(done + 1) +
                           " of the process is a mix",
                       {.path = "state", .advice = "give the process it belongs to"});
  }
  return *given;
}

namespace {

constexpr Field every_min{"every_min",
                          "grid of the timeline",
                          "min",
                          0,
                          1e5,
                          1,
                          Quantity::ratio,
                          "grid of the timeline; 0 for starts and ends alone",
                          "",
                          "0 for starts and ends alone"};
constexpr Field stop_h = [] {
  Field field = field::start_h;
  field.initial = {};
  field.meaning = "hour of the process at which to stop, also in the middle of a stage";
  return field;
}();

}  // namespace

double volume_ratio(const State& state, const Kitchen& kitchen) {
  require_parameters(kitchen);
  const Shell whole = whole_of(state);
  return DoughVolume(state, kitchen).ratio(whole.gas, whole.temperature_c, state.anchor_ratio);
}

Node node_of(const Piece& piece, const State& state, const Place& place, const Kitchen& kitchen) {
  require(piece);
  return node_of_checked(piece, state, place, kitchen);
}

State advance(const State& state, const Step& step, const Kitchen& kitchen, const SimulateOptions& options) {
  require_parameters(kitchen);
  require(state);
  require(options);
  if (state.stage && std::holds_alternative<Mix>(step)) {
    throw InvalidInput("a stage is under way", {.path = "state", .advice = "end it before the mix"});
  }
  require_step(state, step);
  State after = state;
  Silence silence;
  run_step(after, step, Role::one_of_many, kitchen, options, silence);
  return after;
}

Timeline simulate(const Process& process, const Kitchen& kitchen, const std::optional<State>& given,
                  const SimulateOptions& options) {
  require_parameters(kitchen);
  require(options);
  Timeline timeline;
  timeline.state = beginning(process, given);
  Telling telling(timeline, kitchen, options);
  State& state = timeline.state;
  while (state.steps_done < process.steps.size()) {
    const std::size_t index = state.steps_done;
    const Step& step = process.steps[index];
    if (options.progress) options.progress({index, process.steps.size(), state.time_h});
    if (options.stop_h && state.time_h >= *options.stop_h) break;
    try {
      require_step(state, step);
      if (!run_step(state, step, role_of(process, index), kitchen, options, telling)) break;
    } catch (const Error& error) {
      if (timeline.time_h.size() == Recorder::most_rows) throw;  // no fault of the step
      throw_from(error, step, index);
    }
  }
  telling.finish();
  return timeline;
}

template <>
const Form& form_of<SimulateOptions>() {
  using O = SimulateOptions;
  static const Form form =
      made_form<O>("SimulateOptions", "How a process is run through.", {},
                   {row<&O::heat_of_fermentation>("heat_of_fermentation", "the dough is warmed by its fermentation"),
                    row<&O::every_min>(every_min),
                    row<&O::be_back_by>("be_back_by", "follow each stage beyond its end to the over-proofed dough"),
                    row<&O::stop_h>("stop_h", stop_h), row<&O::tolerance>(tolerance_field)});
  return form;
}

template <>
const Form& form_of<StageResult>() {
  using R = StageResult;
  static const Form form = made_form<R>(
      "StageResult",
      "What a stage came to. Hours are of the process; rises are those of the stage before the handling that ends it.",
      {},
      {row<&R::name>("name", "of the stage"), row<&R::start_h>("start_h", "h of the process"),
       row<&R::end_h>("end_h", "h of the process"), row<&R::start_c>("start_c", "°C of the dough"),
       row<&R::end_c>("end_c", "°C of the dough"), row<&R::rise_percent>("rise_percent", "% since the stage's start"),
       row<&R::equivalent_h>("equivalent_h", "equivalent hours that the stage took"),
       row<&R::folds_done>("folds_done", "folds made; those planned after its end are not"),
       row<&R::over_proofed_h>("over_proofed_h",
                               "h when it is, or would be, over-proofed; none if not within 48 h of "
                               "its end"),
       row<&R::be_back_by_h>("be_back_by_h",
                             "h when the dough has passed its highest acceptable rise or is over-proofed, or would "
                             "have; none if not within 48 h of the stage's end"),
       row<&R::time_constant_h>("time_constant_h",
                                "h, of the piece in its first surroundings; none where the dough's "
                                "temperature is given"),
       row<&R::heat_made_j>("heat_made_j", "J per piece, by fermentation"),
       row<&R::heat_lost_j>("heat_lost_j", "J per piece, to the surroundings"),
       row<&R::ended>("ended", "false if the simulation stopped before its end")});
  return form;
}

template <>
const Form& form_of<Timeline>() {
  using T = Timeline;
  static const Form form = made_form<T>(
      "Timeline",
      "What a process did, minute by minute: columns of one length, the stages, the state at the end, and cautions.",
      {},
      {column(row<&T::time_h>("time_h", "h of the process")),
       column(row<&T::mean_c>("mean_c", "°C, mean of the dough")),
       column(row<&T::core_c>("core_c",
                              "°C in the middle, an estimate: a parabolic profile that settles after each "
                              "change")),
       column(row<&T::surface_c>("surface_c", "°C at the surface, an estimate for a settled profile")),
       column(row<&T::air_c>("air_c", "°C of the surroundings; the dough's where that is given")),
       column(row<&T::equivalent_h>("equivalent_h", "equivalent hours since the first yeast")),
       column(row<&T::co2_mmol>("co2_mmol", "CO2 made, mmol per 100 g of flour")),
       column(row<&T::rise_percent>("rise_percent", "%, since the start of the stage")),
       column(row<&T::stage>("stage", "index of the stage in stages")), row<&T::stages>("stages", "what each came to"),
       row<&T::state>("state", "at the end"), row<&T::notices>("notices", "cautions, most severe first")});
  return form;
}

}  // namespace ferment
