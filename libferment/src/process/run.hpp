// The one way of a dough through its steps. Whoever wants to know something of it is an observer:
//   mixed(mix, state)      after a mix, before it counts
//   begun(run)             a stage begins, or goes on
//   passed(run, leg)       if there is one: every leg, before the state moves to its end
//   ended(run, is_ended)   at a stage's end before its handling, or where it stopped; may look ahead
//   needs_core             whether the state that comes of it must know its core
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>
#include <variant>

#include <ferment/base/error.hpp>
#include <ferment/process/simulate.hpp>

#include "process/mix_in.hpp"
#include "process/stage_run.hpp"

namespace ferment {

/// Where a process begins, or goes on: with a state or its start. Throws for a state of another process.
State beginning(const Process& process, const std::optional<State>& given);

/// Throws the error again with the step's name before its words.
[[noreturn]] void throw_from(const Error& error, const Step& step, std::size_t index);

/// What a step is if it is a stage.
inline Role role_of(const Process& process, std::size_t step) {
  const auto next = process.steps.begin() + static_cast<std::ptrdiff_t>(step) + 1;
  const auto* const mix = next != process.steps.end() ? std::get_if<Mix>(&*next) : nullptr;
  const bool joins_flour =
      mix != nullptr && (mix->formula.flour_g > 0 || !mix->formula.flours.empty() || !mix->doughs.empty());
  if (joins_flour) return Role::preferment;
  const bool is_last =
      std::none_of(next, process.steps.end(), [](const Step& its) { return std::holds_alternative<Stage>(its); });
  return is_last ? Role::last : Role::one_of_many;
}

/// Takes the state through a step, or as far as the options let it; false if it stopped in the middle of a stage.
/// What it throws leaves the state as it was. Nothing is checked that a form can check.
template <class Observer>
bool run_step(State& state, const Step& step, Role role, const Kitchen& kitchen, const SimulateOptions& options,
              Observer& observer) {
  if (const auto* mix = std::get_if<Mix>(&step)) {
    State next = mixed_in(state, *mix, kitchen);
    observer.mixed(*mix, next);  // may refuse it
    state = std::move(next);
    return true;
  }
  StageRun run(state, std::get<Stage>(step), role, kitchen, options, Observer::needs_core);
  observer.begun(run);
  StageRun::EachLeg each_leg;
  if constexpr (requires(const Leg& leg) { observer.passed(run, leg); }) {
    each_leg = [&](const StageRun& r, const Leg& leg) { observer.passed(r, leg); };
  }
  const bool ended = run.run(each_leg);
  const State end = run.state();
  observer.ended(run, ended);
  state = ended ? run.finished(end) : end;
  return ended;
}

}  // namespace ferment
