#include <ferment/day/ask.hpp>

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/day/day.hpp>
#include <ferment/day/document.hpp>
#include <ferment/forecast/questions.hpp>
#include <ferment/rise/cautions.hpp>

#include "day/day_parts.hpp"
#include "day/document_json.hpp"
#include "day/moment.hpp"

namespace ferment {
namespace {

// ---- questions ---------------------------------------------------------------------------------------------------

/// A day, or the process of a program's own; from its start, or from where a dough is now.
struct Subject {
  std::optional<Day> day = {};
  std::optional<Process> process = {};
  std::optional<State> state = {};
  Kitchen kitchen = {};
};

struct WaterQuestion {
  Day day = {};
  Kitchen kitchen = {};
};
struct MixingQuestion {
  Day day = {};
  Kitchen kitchen = {};
};
struct SimulateQuestion {
  Subject subject = {};
  SimulateOptions options = {};
};
struct ForecastQuestion {
  Subject subject = {};
  ForecastOptions options = {};
  bool every_draw = false;
};
struct ChooseQuestion {
  Choosable what = Choosable::yeast;
  std::string stage = {};
  std::optional<double> ready_h = {};
  std::string ready = {};
  double scale_g = 0;
  Air air = Air::room;
  std::string moved = {};
  std::optional<double> refrigerator_c = {};
  std::optional<double> room_c = {};
  Subject subject = {};
  ForecastOptions options = {};
};
struct RiseQuestion {
  std::optional<double> rise_percent = {};
  std::optional<double> time_h = {};
  Dough dough = {.dough_c = 0, .yeast_percent = 0};
  Kitchen kitchen = {};
};
struct ExplainQuestion {
  Given rise_percent;
  Dough dough = {.dough_c = 0, .yeast_percent = 0};
  Kitchen kitchen = {};
};
struct CautionsQuestion {
  PlainNumbers numbers = {};
  Kitchen kitchen = {};
};
struct KeysQuestion {
  std::string of = {};
};

// ---- answers that are no value of another room -------------------------------------------------------------------

struct WaterAnswer {
  WaterPlan plan = {};
  Mix mix = {};                      ///< with the plan's water
  std::vector<Notice> assumed = {};  ///< what was reckoned with and not given
};
struct MixingAnswer {
  LearnedMixing learned = {};
  std::vector<Notice> assumed = {};
};
/// Of a day or a process.
struct Subjects {
  std::string title = {};
  bool clock = false;  ///< its hours are of the day, from its 0:00
  std::vector<Notice> assumed = {};
};
struct SimulateAnswer {
  Subjects of = {};
  Timeline timeline = {};
};
struct ForecastAnswer {
  Subjects of = {};
  Forecast forecast = {};
};
struct ChooseAnswer {
  Subjects of = {};
  Choice choice = {};
};
struct RiseAnswer {
  double rise_percent = 0;
  double hours = 0;
  std::vector<Notice> notices = {};
};
struct CautionsAnswer {
  std::vector<Notice> notices = {};
};

}  // namespace

template <>
const Names& names_of<Ask>() {
  static constexpr std::string_view list[] = {"water", "mixing",  "simulate", "forecast", "choose",
                                              "rise",  "explain", "cautions", "keys"};
  static constexpr Names names{"question", "ask", list};
  return names;
}

template <>
const Names& names_of<Choosable>() {
  static constexpr std::string_view list[] = {"yeast", "water", "room", "start", "refrigerate", "take_out"};
  static constexpr Names names{"choice", "what", list};
  return names;
}

namespace {

/// The rows of a dough at one temperature, the fields of its numbers.
std::vector<Row> rows_of_numbers() {
  using N = PlainNumbers;
  return {row<&N::dough_c>(field::dough_c),
          row<&N::yeast_percent>(field::yeast_percent),
          row<&N::yeast>("yeast", "its kind"),
          row<&N::salt_percent>(field::salt_percent),
          row<&N::water_percent>(field::water_percent),
          row<&N::sugar_percent>(field::sugar_percent),
          row<&N::gluten_percent>(field::gluten_percent),
          row<&N::altitude_m>(field::altitude_m),
          row<&N::rise_percent>("rise_percent", field::rise_percent),
          row<&N::water_c>("water_c", "of water, any: what cannot be poured has its caution"),
          row<&N::refrigerator_c>(field::refrigerator_c),
          row<&N::perishable_h>(field::perishable_h)};
}

void contradictions(const Subject& subject) {
  if (subject.day.has_value() != subject.process.has_value()) return;
  throw InvalidInput("a question is about a day or about a process",
                     {.path = "day", .advice = subject.day ? "leave one of the two out" : "give one of the two"});
}

constexpr Field scale_g{
    "scale_g", "scale", "g", 0, 100, 0, Quantity::mass, "what the scale shows, for yeast: 0.1 or 1; 0 does not round",
    "",        ""};
constexpr Field ready_h = [] {
  Field field = field::start_h;
  field.name = "ready_h";
  field.initial = field::must_be_given;
  field.meaning = "hour at which the stage is to be ready";
  return field;
}();
constexpr Field refrigerator_c = [] {
  Field field = field::refrigerator_c;
  field.initial = field::must_be_given;
  field.meaning = "of the refrigerator it goes into; today's, or 4 °C, if not given";
  return field;
}();
constexpr Field take_out_room_c = [] {
  Field field = field::room_c;
  field.initial = field::must_be_given;
  field.meaning = "of the room it comes out into";
  return field;
}();
constexpr std::string_view about_kitchen = "the parameters; the frozen set 2026-1 if not given";
constexpr std::string_view about_notices = "cautions, most severe first";
constexpr std::string_view about_assumed = "what was reckoned with and not given";

void of_subject(const SimulateQuestion& question) { contradictions(question.subject); }
void of_forecast_subject(const ForecastQuestion& question) { contradictions(question.subject); }

void of_choice(const ChooseQuestion& question) {
  contradictions(question.subject);
  if (question.ready_h.has_value() == !question.ready.empty()) {
    throw InvalidInput("when the stage is to be ready is said once",
                       {.path = "ready_h", .advice = "ready_h, in hours of the process; or ready, a time of day"});
  }
  if (!question.ready.empty()) require_moment(question.ready, "ready");
  const bool moves = question.what == Choosable::refrigerate || question.what == Choosable::take_out;
  if (moves && question.moved.empty())
    throw InvalidInput("which stage's dough is moved is not said", {.path = "moved", .advice = "name the stage"});
}

void of_rise(const RiseQuestion& question) {
  if (question.rise_percent.has_value() != question.time_h.has_value()) return;
  throw InvalidInput("a rise or a time is given, the other one asked",
                     {.path = "rise_percent", .advice = "rise_percent, or time_h"});
}

}  // namespace

template <>
const Form& form_of<Subject>() {
  using S = Subject;
  static const Form form =
      made_form<S>("Subject", "A day, or a process.", {},
                   {row<&S::day>("day", "as in a day file"), row<&S::process>("process", "in place of a day"),
                    row<&S::state>("state", "where the dough is now; its start if not given"),
                    row<&S::kitchen>("kitchen", about_kitchen)});
  return form;
}

template <>
const Form& form_of<WaterQuestion>() {
  using Q = WaterQuestion;
  static const Form form = made_form<Q>("WaterQuestion", "A day's water.", {},
                                        {must_be_given(row<&Q::day>("day", "as in a day file")),
                                         row<&Q::kitchen>("kitchen", about_kitchen)});
  return form;
}
template <>
const Form& form_of<MixingQuestion>() {
  using Q = MixingQuestion;
  static const Form form = made_form<Q>("MixingQuestion", "What a day's batches say of the mixing.", {},
                                        {must_be_given(row<&Q::day>("day", "as in a day file")),
                                         row<&Q::kitchen>("kitchen", about_kitchen)});
  return form;
}
template <>
const Form& form_of<SimulateQuestion>() {
  using Q = SimulateQuestion;
  static const Form form = made_form<Q>("SimulateQuestion", "What a dough does, minute by minute.", {},
                                        joined(rows_of_part<&Q::subject>(), rows_of_part<&Q::options>()), of_subject);
  return form;
}
template <>
const Form& form_of<ForecastQuestion>() {
  using Q = ForecastQuestion;
  static const Form form =
      made_form<Q>("ForecastQuestion", "When the stages will be ready.", {},
                   joined(joined(rows_of_part<&Q::subject>(), rows_of_part<&Q::options>()),
                          {row<&Q::every_draw>("every_draw", "the answer holds the hour of every draw")}),
                   of_forecast_subject);
  return form;
}
template <>
const Form& form_of<ChooseQuestion>() {
  using Q = ChooseQuestion;
  static const Form form =
      made_form<Q>("ChooseQuestion", "What to choose so that a stage is ready at an hour.", {},
                   joined(joined({must_be_given(row<&Q::what>("what", "what may be chosen")),
                                  row<&Q::stage>("stage", "which is to be ready; the last if not given"),
                                  row<&Q::ready_h>(ready_h), row<&Q::ready>("ready", "time of day, such as 18:30"),
                                  row<&Q::scale_g>(scale_g),
                                  row<&Q::air>("air", "whose temperature is chosen, for room"),
                                  row<&Q::moved>("moved", "stage whose dough is moved, for refrigerate and take_out"),
                                  row<&Q::refrigerator_c>(refrigerator_c), row<&Q::room_c>(take_out_room_c)},
                                 rows_of_part<&Q::subject>()),
                          rows_of_part<&Q::options>()),
                   of_choice);
  return form;
}
template <>
const Form& form_of<RiseQuestion>() {
  using Q = RiseQuestion;
  static const Form form =
      made_form<Q>("RiseQuestion", "Hours to a rise, or the rise after hours, of a dough at one temperature.", {},
                   joined(joined({row<&Q::rise_percent>("rise_percent", field::rise_percent),
                                  row<&Q::time_h>("time_h", field::time_h)},
                                 rows_of_part<&Q::dough>()),
                          {row<&Q::kitchen>("kitchen", about_kitchen)}),
                   of_rise);
  return form;
}
template <>
const Form& form_of<ExplainQuestion>() {
  using Q = ExplainQuestion;
  static const Form form = made_form<Q>("ExplainQuestion", "The factors that make a time.", {.rise_percent = 0},
                                        joined(joined({row<&Q::rise_percent>("rise_percent", field::rise_percent)},
                                                      rows_of_part<&Q::dough>()),
                                               {row<&Q::kitchen>("kitchen", about_kitchen)}));
  return form;
}
template <>
const Form& form_of<PlainNumbers>() {
  static const Form form = made_form<PlainNumbers>("PlainNumbers", "What is known of a plan.", {}, rows_of_numbers());
  return form;
}
template <>
const Form& form_of<CautionsQuestion>() {
  using Q = CautionsQuestion;
  static const Form form =
      made_form<Q>("CautionsQuestion", "The cautions that belong to plain numbers.", {},
                   joined(rows_of_part<&Q::numbers>(), {row<&Q::kitchen>("kitchen", about_kitchen)}));
  return form;
}
template <>
const Form& form_of<KeysQuestion>() {
  static const Form form =
      made_form<KeysQuestion>("KeysQuestion", "The JSON Schema of a form.", {},
                              {must_be_given(
                                  row<&KeysQuestion::of>("of", "its name, such as Day, or that of a question"))});
  return form;
}

template <>
const Form& form_of<WaterAnswer>() {
  using A = WaterAnswer;
  static const Form form = made_form<A>("WaterAnswer", "How warm the water must be.", {},
                                        joined(rows_of_part<&A::plan>(), {row<&A::mix>("mix", "with the plan's water"),
                                                                          row<&A::assumed>("assumed", about_assumed)}));
  return form;
}
template <>
const Form& form_of<MixingAnswer>() {
  using A = MixingAnswer;
  static const Form form =
      made_form<A>("MixingAnswer", "What batches say of the mixing.", {},
                   joined(rows_of_part<&A::learned>(), {row<&A::assumed>("assumed", about_assumed)}));
  return form;
}
template <>
const Form& form_of<Subjects>() {
  using S = Subjects;
  static const Form form = made_form<S>("Subjects", "What was asked about.", {},
                                        {row<&S::title>("title", "of the day"),
                                         row<&S::clock>("clock", "hours are of the day, from its 0:00"),
                                         row<&S::assumed>("assumed", about_assumed)});
  return form;
}
template <>
const Form& form_of<SimulateAnswer>() {
  using A = SimulateAnswer;
  static const Form form = made_form<A>("SimulateAnswer", "What the dough does.", {},
                                        joined(rows_of_part<&A::of>(), rows_of_part<&A::timeline>()));
  return form;
}
template <>
const Form& form_of<ForecastAnswer>() {
  using A = ForecastAnswer;
  static const Form form = made_form<A>("ForecastAnswer", "When the stages will be ready.", {},
                                        joined(rows_of_part<&A::of>(), rows_of_part<&A::forecast>()));
  return form;
}
template <>
const Form& form_of<ChooseAnswer>() {
  using A = ChooseAnswer;
  static const Form form =
      made_form<A>("ChooseAnswer", "What to choose.", {}, joined(rows_of_part<&A::of>(), rows_of_part<&A::choice>()));
  return form;
}
template <>
const Form& form_of<RiseAnswer>() {
  using A = RiseAnswer;
  static const Form form = made_form<A>("RiseAnswer", "A rise and the hours it takes.", {},
                                        {row<&A::rise_percent>("rise_percent", "volume gained, %"),
                                         row<&A::hours>("hours", "h"), row<&A::notices>("notices", about_notices)});
  return form;
}
template <>
const Form& form_of<CautionsAnswer>() {
  static const Form form = made_form<CautionsAnswer>("CautionsAnswer", "Cautions.", {},
                                                     {row<&CautionsAnswer::notices>("notices", about_notices)});
  return form;
}

namespace {

/// The process that is asked about; errors of making it are the day's.
Process process_of(const Subject& subject) {
  if (subject.process) return *subject.process;
  try {
    return process_of(*subject.day, subject.kitchen);
  } catch (const Error& error) {
    throw_within("day", error);
  }
}

/// What is made of the process that is asked about; what its steps are refused for is told of the day's stages.
template <class Work>
auto within_subject(const Subject& subject, Work work) {
  const Process process = process_of(subject);
  try {
    return work(process);
  } catch (const Error& error) {
    const std::string path = error.detail().path;
    if (path.rfind("steps[", 0) != 0) throw;
    throw_at(subject.day ? "day." + path_of_step(path) : "process." + path, error);
  }
}

Subjects about(const Subject& subject) {
  if (!subject.day) return {};
  return {subject.day->title, has_clock(*subject.day), assumptions_of(*subject.day)};
}

template <class Work>
auto within_day(Work work) {
  try {
    return work();
  } catch (const Error& error) {
    throw_within("day", error);
  }
}

WaterAnswer answer(const WaterQuestion& question) {
  return within_day([&]() -> WaterAnswer {
    const WaterPlan plan = water_of(question.day, question.kitchen);
    return {plan, with_water(mix_of(question.day, question.kitchen), plan), assumptions_of(question.day)};
  });
}

MixingAnswer answer(const MixingQuestion& question) {
  return within_day([&]() -> MixingAnswer {
    return {learned_mixing(question.day, question.kitchen), assumptions_of(question.day)};
  });
}

/// What today's refrigerator is cautioned for, if nothing else says it.
void add_notices(std::vector<Notice>& notices, const Subject& subject) {
  if (!subject.day || !subject.day->today.refrigerator_c) return;
  for (Notice& notice : cautions({.refrigerator_c = subject.day->today.refrigerator_c})) {
    const auto same = [&](const Notice& other) { return other.code == notice.code; };
    if (std::none_of(notices.begin(), notices.end(), same)) notices.push_back(std::move(notice));
  }
}

SimulateAnswer answer(const SimulateQuestion& question) {
  const Subject& subject = question.subject;
  SimulateAnswer told = within_subject(subject, [&](const Process& process) -> SimulateAnswer {
    return {about(subject), simulate(process, subject.kitchen, subject.state, question.options)};
  });
  add_notices(told.timeline.notices, subject);
  return told;
}

ForecastAnswer answer(const ForecastQuestion& question) {
  const Subject& subject = question.subject;
  ForecastAnswer told = within_subject(subject, [&](const Process& process) -> ForecastAnswer {
    return {about(subject), forecast(process, subject.kitchen, subject.state, question.options)};
  });
  add_notices(told.forecast.notices, subject);
  for (StageForecast& stage : told.forecast.stages) {
    if (!question.every_draw) stage.ready.clear();
  }
  return told;
}

std::string last_stage_of(const Process& process) {
  for (auto step = process.steps.rbegin(); step != process.steps.rend(); ++step) {
    if (const auto* stage = std::get_if<Stage>(&*step)) return stage->name;
  }
  throw InvalidInput("the process has no stage", {.path = "process.steps"});
}

/// A time of day is the first one from the process's start on, or from where the dough is now.
double wanted_h(const ChooseQuestion& question, const Process& process) {
  if (question.ready_h) return *question.ready_h;
  const Subject& subject = question.subject;
  const double after_h = subject.state ? subject.state->time_h : process.start_h;
  if (subject.day && has_clock(*subject.day)) return moment_h(question.ready, after_h);
  throw InvalidInput("a time of day says nothing without the day's own",
                     {.path = "ready", .advice = "give the day start or mixed; or ready_h"});
}

Choice chosen(const ChooseQuestion& question, const Process& process) {
  const Wanted wanted{question.stage.empty() ? last_stage_of(process) : question.stage, wanted_h(question, process)};
  const Subject& subject = question.subject;
  const Kitchen& kitchen = subject.kitchen;
  switch (question.what) {
    case Choosable::yeast:
      return yeast_for(process, wanted, question.scale_g, kitchen, subject.state, question.options);
    case Choosable::water: return water_for(process, wanted, kitchen, subject.state, question.options);
    case Choosable::room: return room_for(process, wanted, question.air, kitchen, subject.state, question.options);
    case Choosable::start: return latest_start(process, wanted, kitchen, question.options);
    case Choosable::refrigerate: {
      constexpr double usual_c = 4;
      const auto todays_c = subject.day ? subject.day->today.refrigerator_c : std::nullopt;
      const Surroundings to = Surroundings::refrigerator(question.refrigerator_c.value_or(todays_c.value_or(usual_c)));
      return refrigerate_from(process, wanted, question.moved, to, kitchen, subject.state, question.options);
    }
    case Choosable::take_out: break;
  }
  if (!question.room_c)
    throw InvalidInput("the room into which the dough comes has no temperature", {.path = "room_c"});
  const Surroundings to = Surroundings::room(*question.room_c);
  return take_out_at(process, wanted, question.moved, to, kitchen, subject.state, question.options);
}

ChooseAnswer answer(const ChooseQuestion& question) {
  return within_subject(question.subject, [&](const Process& process) -> ChooseAnswer {
    return {about(question.subject), chosen(question, process)};
  });
}

RiseAnswer answer(const RiseQuestion& question) {
  const Dough& dough = question.dough;
  RiseAnswer told;
  if (question.rise_percent) {
    told.rise_percent = *question.rise_percent;
    told.hours = hours_to_rise(told.rise_percent, dough, question.kitchen);
  } else {
    told.hours = *question.time_h;
    told.rise_percent = rise_after(told.hours, dough, question.kitchen);
  }
  const bool is_seen = told.rise_percent >= field::rise_percent.low && told.rise_percent <= field::rise_percent.high;
  PlainNumbers numbers{.dough_c = dough.dough_c,
                       .yeast_percent = dough.yeast_percent,
                       .yeast = dough.yeast,
                       .salt_percent = dough.salt_percent,
                       .water_percent = dough.water_percent,
                       .sugar_percent = dough.sugar_percent,
                       .gluten_percent = dough.gluten_percent,
                       .altitude_m = dough.altitude_m};
  if (is_seen) numbers.rise_percent = told.rise_percent;
  told.notices = cautions(numbers, question.kitchen);
  return told;
}

Explanation answer(const ExplainQuestion& question) {
  return explain(question.rise_percent, question.dough, question.kitchen);
}

CautionsAnswer answer(const CautionsQuestion& question) { return {cautions(question.numbers, question.kitchen)}; }

/// The forms whose schemas are asked for.
std::vector<const Form*> shown_forms() {
  return {&form_of<Day>(),
          &form_of<Process>(),
          &form_of<Mix>(),
          &form_of<State>(),
          &form_of<Kitchen>(),
          &form_of<WaterQuestion>(),
          &form_of<MixingQuestion>(),
          &form_of<SimulateQuestion>(),
          &form_of<ForecastQuestion>(),
          &form_of<ChooseQuestion>(),
          &form_of<RiseQuestion>(),
          &form_of<ExplainQuestion>(),
          &form_of<CautionsQuestion>(),
          &form_of<KeysQuestion>(),
          &form_of<WaterAnswer>(),
          &form_of<MixingAnswer>(),
          &form_of<SimulateAnswer>(),
          &form_of<ForecastAnswer>(),
          &form_of<ChooseAnswer>(),
          &form_of<RiseAnswer>(),
          &form_of<Explanation>(),
          &form_of<CautionsAnswer>()};
}

/// A question's schema has what it asks, too: WaterQuestion "water".
std::string schema_with_ask(const Form& form) {
  constexpr std::string_view end = "Question";
  if (!form.name.ends_with(end)) return schema_of(form);
  std::string what(form.name.substr(0, form.name.size() - end.size()));
  what.front() = static_cast<char>(what.front() | 0x20);
  Json schema = Json::parse(schema_of(form));
  schema["properties"]["ask"] = Json{{"const", what}};
  schema["required"] = Json::array({"ask"});
  return schema.dump(1) + "\n";
}

constexpr std::size_t longest_name = 60;  // of what a message shows

std::string schema_named(const std::string& name) {
  std::vector<std::string_view> known;
  for (const Form* const form : shown_forms()) {
    if (form->name == name) return schema_with_ask(*form);
    known.push_back(form->name);
  }
  throw InvalidInput("no form is called \"" + begin_of(name, longest_name) + "\"",
                     {.path = "of", .advice = advice_for(begin_of(name, longest_name), known)});
}

template <class Question>
Question read(const Json& json) {
  const Form& form = form_of<Question>();
  Question question = *static_cast<const Question*>(form.blank.get());
  fill_from(form, &question, json, Heading::ask);
  require(form, &question);
  return question;
}

template <class Question>
std::string answered(const Json& json, const AskOptions& options) {
  Question question = read<Question>(json);
  if constexpr (requires { question.options.interrupt; }) question.options.interrupt = options.interrupt;
  if constexpr (requires { question.options.for_each; }) question.options.for_each = options.for_each;
  return to_document(answer(question));
}

}  // namespace

std::string ask(std::string_view text, const AskOptions& options) {
  const Json question = parsed(text);
  if (!question.is_object()) throw InvalidInput("a question is a table, got " + described(question));
  if (!question.contains("ask")) {
    std::string known;
    for (const std::string_view name : names_of<Ask>().names) known.append(known.empty() ? "" : ", ").append(name);
    throw InvalidInput("nothing is asked", {.path = "ask", .advice = "known: " + known});
  }
  if (!question["ask"].is_string())
    throw InvalidInput("a text is wanted, got " + described(question["ask"]), {.path = "ask"});
  const auto name = question["ask"].get<std::string>();
  switch (named<Ask>(begin_of(name, longest_name))) {
    case Ask::water: return answered<WaterQuestion>(question, options);
    case Ask::mixing: return answered<MixingQuestion>(question, options);
    case Ask::simulate: return answered<SimulateQuestion>(question, options);
    case Ask::forecast: return answered<ForecastQuestion>(question, options);
    case Ask::choose: return answered<ChooseQuestion>(question, options);
    case Ask::rise: return answered<RiseQuestion>(question, options);
    case Ask::explain: return answered<ExplainQuestion>(question, options);
    case Ask::cautions: return answered<CautionsQuestion>(question, options);
    case Ask::keys: break;
  }
  return schema_named(read<KeysQuestion>(question).of);
}

}  // namespace ferment
