#include "day/asked.hpp"

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "day/moment.hpp"

namespace ferment {

template <>
const Names& names_of<Ask>() {
  static constexpr std::string_view list[] = {"water", "mixing", "simulate", "forecast", "choose",   "look",
                                              "learn", "update", "rise",     "explain",  "cautions", "keys"};
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
constexpr std::string_view about_kitchen = "the parameters; the frozen set 2026-2 if not given";
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
  if (question.what == Choosable::start && question.subject.state)
    throw InvalidInput("a dough that is made cannot begin later", {.path = "state", .advice = "leave it out"});
  if (!question.ready.empty()) require_moment(question.ready, "ready");
  const bool moves = question.what == Choosable::refrigerate || question.what == Choosable::take_out;
  if (moves && question.moved.empty())
    throw InvalidInput("which stage's dough is moved is not said", {.path = "moved", .advice = "name the stage"});
}

void of_look(const LookQuestion& question) {
  contradictions(question.subject);
  if (!question.subject.state) return;
  throw InvalidInput("a state does not remember what its dough did before",
                     {.path = "state", .advice = "leave it out"});
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
const Form& form_of<LookQuestion>() {
  using Q = LookQuestion;
  static const Form form = made_form<Q>("LookQuestion", "When a look at the dough would tell most of a stage.", {},
                                        joined(joined({row<&Q::stage>("stage", "asked about; the last if not given")},
                                                      rows_of_part<&Q::subject>()),
                                               rows_of_part<&Q::options>()),
                                        of_look);
  return form;
}
template <>
const Form& form_of<LookAnswer>() {
  using A = LookAnswer;
  static const Form form = made_form<A>("LookAnswer", "A look that is worth its while.", {},
                                        joined(rows_of_part<&A::of>(), rows_of_part<&A::look>()));
  return form;
}
template <>
const Form& form_of<LearnQuestion>() {
  using Q = LearnQuestion;
  static const Form form =
      made_form<Q>("LearnQuestion", "What days have taught.", {},
                   joined({row<&Q::days>("days", "as in day files, with what was seen"),
                           row<&Q::kitchen>("kitchen", "the one before; the frozen set 2026-2 if not given")},
                          rows_of_part<&Q::options>()));
  return form;
}
template <>
const Form& form_of<UpdateQuestion>() {
  using Q = UpdateQuestion;
  static const Form form =
      made_form<Q>("UpdateQuestion", "What one day more has taught.", {},
                   joined({must_be_given(row<&Q::day>("day", "as in a day file, with what was seen")),
                           row<&Q::kitchen>("kitchen", "the one before; the frozen set 2026-2 if not given")},
                          rows_of_part<&Q::options>()));
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
const Form& form_of<LearnAnswer>() {
  using A = LearnAnswer;
  static const Form form =
      made_form<A>("LearnAnswer", "What was learned.", {},
                   joined(rows_of_part<&A::calibration>(), {row<&A::learned>("learned", "parameter by parameter")}));
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

}  // namespace ferment
