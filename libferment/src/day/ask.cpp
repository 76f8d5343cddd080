#include <ferment/day/ask.hpp>

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/day/document.hpp>

#include "day/asked.hpp"
#include "day/day_parts.hpp"
#include "day/document_json.hpp"
#include "day/moment.hpp"

namespace ferment {
namespace {

/// What is asked about: a process, what was seen of its dough, and the kitchen for its yeast.
struct Followed {
  Process process;
  std::vector<Sighting> seen = {};
  Kitchen kitchen;
};

/// Errors of making it are the day's.
Followed followed(const Subject& subject) {
  if (subject.process) return {.process = *subject.process, .kitchen = subject.kitchen};
  try {
    const Log log = log_of(*subject.day, subject.kitchen);
    // A dough that is given as it is now no longer needs what it was seen to do before.
    return {log.process, subject.state ? std::vector<Sighting>{} : log.seen, with_packet(subject.kitchen, log.packet)};
  } catch (const Error& error) {
    throw_within("day", error);
  }
}

/// What is made of the process that is asked about; what its steps and looks are refused for is told of the day's.
template <class Work>
auto within_subject(const Subject& subject, Work work) {
  const Followed its = followed(subject);
  try {
    return work(its);
  } catch (const Error& error) {
    const std::string path = error.detail().path;
    if (path.rfind("seen[", 0) == 0 && subject.day) throw_at("day." + path_of_look(*subject.day, path), error);
    if (path.rfind("steps[", 0) != 0) throw;
    throw_at(subject.day ? "day." + path_of_step(path) : "process." + path, error);
  }
}

template <class Options>
Options with_seen(Options options, const Followed& its) {
  options.seen.insert(options.seen.begin(), its.seen.begin(), its.seen.end());
  return options;
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
  SimulateAnswer told = within_subject(subject, [&](const Followed& its) -> SimulateAnswer {
    return {about(subject), simulate(its.process, its.kitchen, subject.state, question.options)};
  });
  add_notices(told.timeline.notices, subject);
  return told;
}

ForecastAnswer answer(const ForecastQuestion& question) {
  const Subject& subject = question.subject;
  ForecastAnswer told = within_subject(subject, [&](const Followed& its) -> ForecastAnswer {
    return {about(subject), forecast(its.process, its.kitchen, subject.state, with_seen(question.options, its))};
  });
  add_notices(told.forecast.notices, subject);
  for (StageForecast& stage : told.forecast.stages) {
    if (question.every_draw) continue;
    stage.ready.clear();
    stage.too_late.clear();
  }
  return told;
}

LookAnswer answer(const LookQuestion& question) {
  return within_subject(question.subject, [&](const Followed& its) -> LookAnswer {
    return {about(question.subject),
            next_look(its.process, question.stage, its.kitchen, with_seen(question.options, its))};
  });
}

LearnAnswer answered_with(Calibration told) {
  std::vector<Learned> learned = learned_of(told.kitchen);
  return {std::move(told), std::move(learned)};
}

LearnAnswer answer(const LearnQuestion& question) {
  return answered_with(calibrate_days(question.days, question.kitchen, question.options));
}

LearnAnswer answer(const UpdateQuestion& question) {
  return within_day([&]() -> LearnAnswer {
    try {
      return answered_with(calibrate_days({question.day}, question.kitchen, question.options));
    } catch (const Error& error) {
      constexpr std::string_view only = "days[0].";
      const std::string& path = error.detail().path;
      if (path.rfind(only, 0) != 0) throw;
      throw_at(path.substr(only.size()), error);
    }
  });
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

Choice chosen(const ChooseQuestion& question, const Followed& its) {
  const Process& process = its.process;
  const Kitchen& kitchen = its.kitchen;
  const ForecastOptions options = with_seen(question.options, its);
  const Wanted wanted{question.stage.empty() ? last_stage_of(process) : question.stage, wanted_h(question, process)};
  const Subject& subject = question.subject;
  switch (question.what) {
    case Choosable::yeast: return yeast_for(process, wanted, question.scale_g, kitchen, subject.state, options);
    case Choosable::water: return water_for(process, wanted, kitchen, subject.state, options);
    case Choosable::room: return room_for(process, wanted, question.air, kitchen, subject.state, options);
    case Choosable::start: return latest_start(process, wanted, kitchen, options);
    case Choosable::refrigerate: {
      constexpr double usual_c = 4;
      const auto todays_c = subject.day ? subject.day->today.refrigerator_c : std::nullopt;
      const Surroundings to = Surroundings::refrigerator(question.refrigerator_c.value_or(todays_c.value_or(usual_c)));
      return refrigerate_from(process, wanted, question.moved, to, kitchen, subject.state, options);
    }
    case Choosable::take_out: break;
  }
  if (!question.room_c)
    throw InvalidInput("the room into which the dough comes has no temperature", {.path = "room_c"});
  const Surroundings to = Surroundings::room(*question.room_c);
  return take_out_at(process, wanted, question.moved, to, kitchen, subject.state, options);
}

ChooseAnswer answer(const ChooseQuestion& question) {
  ChooseAnswer told = within_subject(question.subject, [&](const Followed& its) -> ChooseAnswer {
    return {about(question.subject), chosen(question, its)};
  });
  add_notices(told.choice.notices, question.subject);
  return told;
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
          &form_of<LookQuestion>(),
          &form_of<LearnQuestion>(),
          &form_of<UpdateQuestion>(),
          &form_of<RiseQuestion>(),
          &form_of<ExplainQuestion>(),
          &form_of<CautionsQuestion>(),
          &form_of<KeysQuestion>(),
          &form_of<WaterAnswer>(),
          &form_of<MixingAnswer>(),
          &form_of<SimulateAnswer>(),
          &form_of<ForecastAnswer>(),
          &form_of<ChooseAnswer>(),
          &form_of<LookAnswer>(),
          &form_of<LearnAnswer>(),
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
    case Ask::look: return answered<LookQuestion>(question, options);
    case Ask::learn: return answered<LearnQuestion>(question, options);
    case Ask::update: return answered<UpdateQuestion>(question, options);
    case Ask::choose: return answered<ChooseQuestion>(question, options);
    case Ask::rise: return answered<RiseQuestion>(question, options);
    case Ask::explain: return answered<ExplainQuestion>(question, options);
    case Ask::cautions: return answered<CautionsQuestion>(question, options);
    case Ask::keys: break;
  }
  return schema_named(read<KeysQuestion>(question).of);
}

}  // namespace ferment
