// One stage under way: legs one after the other, until it ends, stops, or the dough does something that must be told.
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

#include <ferment/base/field.hpp>
#include <ferment/process/simulate.hpp>

#include "dough/shell.hpp"
#include "heat/settling.hpp"
#include "process/dough_physics.hpp"
#include "process/leg.hpp"

namespace ferment {

/// A dough at a moment inside a leg.
struct Moment {
  double time_h, mean_c, equivalent_h, made_mmol, ratio;
};

/// A dough is followed so long beyond a stage's end; what has not happened by then happens "after more than two days".
inline constexpr double look_ahead_h = 48;

inline constexpr Field tolerance_field{"tolerance",
                                       "tolerance",
                                       "",
                                       1e-12,
                                       1e-1,
                                       {},
                                       Quantity::ratio,
                                       "of the speeds along a step; the result is far closer"};

/// What comes after a stage, as far as it matters: a preferment is mixed in, and may be past what a dough bears.
enum class Role { one_of_many, last, preferment };

class StageRun {
 public:
  /// Takes the state into the stage, or goes on in it. The references must outlive the run.
  StageRun(State state, const Stage& stage, Role role, const Kitchen& kitchen, const SimulateOptions& options,
           bool follows_core);
  StageRun(const StageRun&) = delete;
  StageRun& operator=(const StageRun&) = delete;

  using EachLeg = std::function<void(const StageRun&, const Leg&)>;
  /// Runs to the stage's end, or to options.stop_h; true if it ended. Throws for a rise that is never reached.
  bool run(const EachLeg& each_leg);
  /// Notes when the volume passes a rise, percent; also beyond the end. The answer is its index in `watched`.
  std::size_t watch(double rise_percent);
  /// When it did, or has since the run began; nothing if it has not.
  const std::optional<double>& watched(std::size_t index) const { return watches_[index].when_h; }
  /// The same for the acceptable rises, if the stage has such.
  void watch_acceptable();
  bool has_acceptable() const { return lowest_.has_value(); }
  std::optional<double> lowest_h() const { return lowest_ ? watched(*lowest_) : std::nullopt; }
  std::optional<double> highest_h() const { return lowest_ ? watched(*lowest_ + 1) : std::nullopt; }
  std::optional<double> over_proofed_h() const { return state_.stage->over_proofed_h; }
  /// When it passed the highest acceptable rise or was over-proofed, whichever was first.
  std::optional<double> too_late_h() const;
  /// Goes on beyond the end, with nothing done to the dough, until it is over-proofed and all watched rises are passed,
  /// at most so many hours. Take the state of the end before.
  void look_ahead(double hours = look_ahead_h);
  /// The same, until all watched rises are passed.
  void look_for_watched(double hours = look_ahead_h);
  /// A state of this stage's end after the handling. The stage is over then.
  State finished(State end) const;

  const State& state() const { return state_; }
  const Shell& shell() const { return only_shell(state_); }
  const Stage& stage() const { return stage_; }
  bool is_proof() const { return is_proof_; }
  const Node* node() const { return setting_.place->is_dough ? nullptr : &setting_.node; }
  Moment at(const Leg& leg, double after_h) const { return moment(leg.at(after_h)); }
  /// Volume over mixed volume at a leg's quarters.
  Four ratios(const Quarters& quarters) const;
  double ratio_of(double rise_percent) const { return state_.stage->start_ratio * (1 + rise_percent / 100); }
  double rise_percent(double ratio) const { return 100 * (ratio / state_.stage->start_ratio - 1); }
  double ratio_now() const { return volume_.ratio(shell().gas, shell().temperature_c, state_.anchor_ratio); }
  double air_at(double time_h) const { return temperature_at(*setting_.place, time_h); }
  /// Mean of the dough less its surface, settled: the surface follows a change at once. 0 where its temperature is
  /// given.
  double settled_k(double mean_c, double time_h) const;
  /// The same as the core feels it, along a leg from the state on, of which these are the quarters.
  Settling inside(const Leg& leg, const Quarters& quarters) const;

 private:
  enum class Until { end, over_proofed, watched };
  bool go(Until until, double horizon_h, const EachLeg& each_leg);
  void enter_place();
  double next_break_h() const;
  Leg next_leg(double to_h);
  double up_to_growth(double hours) const;
  Leg cut_at_growth(Leg leg) const;
  Leg cut_at_condensing(Leg leg) const;
  Leg cut_at_ratio(const Leg& leg, double before_h, double by_h, double ratio) const;
  Moment moment(const Point& point) const;
  void refuse_outside(const Leg& leg, double before_h, const Point& by) const;
  void accept(const Leg& leg, const Quarters& quarters);
  void press(State& state, double kept) const;
  bool all_watched() const;
  bool is_over(Until until) const { return all_watched() && (until == Until::watched || state_.stage->over_proofed_h); }
  void go_beyond(Until until, double hours);
  [[noreturn]] void refuse_rise(double largest_ratio, double largest_h) const;

  State state_;
  const Stage& stage_;
  const Kitchen& kitchen_;
  const SimulateOptions& options_;
  Speed speed_;
  GasMaking making_;
  DoughVolume volume_;
  Setting setting_;
  struct Watch {
    double ratio;
    std::optional<double> when_h;
  };
  std::vector<Watch> watches_;
  std::optional<std::size_t> lowest_;  ///< of the watches: the lowest acceptable rise; the next one is the highest
  bool is_proof_ = false;
  std::optional<std::pair<double, double>> acceptable_;
  double over_proof_ratio_ = 0;
  bool follows_core_;
  double step_h_ = 0;  ///< what the next leg tries
};

/// Share of a change from one temperature to another that lies between two.
double share_between(double from_c, double to_c, double low_c, double high_c);

/// Refuses a dough with yeast that no field table knows; says what to mix otherwise.
void require_rising_dough(const State& state);

}  // namespace ferment
