// The looks at a process: when a kitchen's dough has the rises that were seen, and how likely that makes them.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include <ferment/process/seen.hpp>
#include <ferment/process/simulate.hpp>
#include <ferment/rise/rise.hpp>

#include "forecast/look.hpp"

namespace ferment {

/// Noise of a dough's height in straight sides, percent of rise; of a thermometer in the dough, K; of ln time of a
/// dough that is found over-proofed. Source: own estimates.
inline constexpr double height_scale_percent = 6, dough_scale_k = 0.5, over_proofed_scale = 0.2;

/// A process up to the last stage that was looked at, and what was seen of it: each look with the step of its stage.
/// Stages before that one end as they really did; the last one is followed to its last look.
class Looks {
 public:
  /// @throws InvalidInput for a stage that is none of the process's, a look before its stage begins or after it ended,
  /// looks that contradict one another, an earlier stage whose end is not known
  Looks(const Process& process, std::span<const Sighting> seen);

  std::size_t size() const { return looks_.size(); }
  const Look& operator[](std::size_t i) const { return looks_[i]; }
  SeenAs was(std::size_t i) const { return was_[i]; }
  /// When the last stage that was looked at began, by the default kitchen.
  double dough_c() const { return dough_c_; }
  /// The dough, where all looks are at the rise of a first stage held at one temperature, so that the closed form
  /// answers for them as a run does: looked at, not assumed.
  const std::optional<Dough>& plain() const { return plain_; }
  double rise_percent(std::size_t i) const { return places_[i].rise_percent; }
  /// What a kitchen makes of each look, on the look's scale; infinite where a dough never has the rise, or the run
  /// cannot be. Throws only what the caller's options throw.
  std::vector<double> expected(const Kitchen& kitchen, const SimulateOptions& options) const;
  /// ln of the likelihood of all looks where that is expected.
  double log_likelihood(const std::vector<double>& expected, const Noise& noise) const;

 private:
  friend class Watching;
  friend class WatchingMoments;
  enum class Kind { rise, height, temperature };
  struct Place {
    std::size_t step;
    Kind kind;
    double rise_percent, time_h;
  };
  void place(const Sighting& seen);
  void follow_to_the_last_look(std::span<const Sighting> seen);
  void add_look(const Sighting& seen, double begin_h);
  void find_plain();

  Process process_;
  std::size_t last_ = 0;  ///< step of the last stage that was looked at
  bool has_moments_ = false;
  std::vector<Look> looks_ = {};
  std::vector<Place> places_ = {};
  std::vector<SeenAs> was_ = {};
  double dough_c_ = 0;
  std::optional<Dough> plain_ = {};
};

}  // namespace ferment
