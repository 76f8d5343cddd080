// Questions and answers as values with forms: what may stand in a document that asks, and in one that answers.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <ferment/day/ask.hpp>
#include <ferment/day/day.hpp>
#include <ferment/forecast/next_look.hpp>
#include <ferment/forecast/questions.hpp>
#include <ferment/process/simulate.hpp>
#include <ferment/rise/cautions.hpp>

namespace ferment {

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
struct LookQuestion {
  std::string stage = {};
  Subject subject = {};
  ForecastOptions options = {};
};
struct LearnQuestion {
  std::vector<Day> days = {};
  Kitchen kitchen = {};
  CalibrateOptions options = {};
};
struct UpdateQuestion {
  Day day = {};
  Kitchen kitchen = {};
  CalibrateOptions options = {};
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
struct LookAnswer {
  Subjects of = {};
  NextLook look = {};
};
struct LearnAnswer {
  Calibration calibration = {};
  std::vector<Learned> learned = {};
};
struct RiseAnswer {
  double rise_percent = 0;
  double hours = 0;
  std::vector<Notice> notices = {};
};
struct CautionsAnswer {
  std::vector<Notice> notices = {};
};

template <>
const Form& form_of<Subject>();
template <>
const Form& form_of<WaterQuestion>();
template <>
const Form& form_of<MixingQuestion>();
template <>
const Form& form_of<SimulateQuestion>();
template <>
const Form& form_of<ForecastQuestion>();
template <>
const Form& form_of<ChooseQuestion>();
template <>
const Form& form_of<LookQuestion>();
template <>
const Form& form_of<LookAnswer>();
template <>
const Form& form_of<LearnQuestion>();
template <>
const Form& form_of<UpdateQuestion>();
template <>
const Form& form_of<RiseQuestion>();
template <>
const Form& form_of<ExplainQuestion>();
template <>
const Form& form_of<PlainNumbers>();
template <>
const Form& form_of<CautionsQuestion>();
template <>
const Form& form_of<KeysQuestion>();
template <>
const Form& form_of<WaterAnswer>();
template <>
const Form& form_of<MixingAnswer>();
template <>
const Form& form_of<Subjects>();
template <>
const Form& form_of<SimulateAnswer>();
template <>
const Form& form_of<ForecastAnswer>();
template <>
const Form& form_of<ChooseAnswer>();
template <>
const Form& form_of<LearnAnswer>();
template <>
const Form& form_of<RiseAnswer>();
template <>
const Form& form_of<CautionsAnswer>();

}  // namespace ferment
