// The looks at a process: when a kitchen's dough has the rises that were seen.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include <ferment/process/seen.hpp>
#include <ferment/process/simulate.hpp>

#include "forecast/look.hpp"

namespace ferment {

/// A process whose stages end as they really did, and what was seen of it: each look with the step of its stage.
class Looks {
 public:
  /// @throws InvalidInput for a stage that is none of the process's, a look before its stage begins, looks that
  /// contradict one another
  Looks(const Process& process, std::span<const Sighting> seen);

  std::size_t size() const { return looks_.size(); }
  const Look& operator[](std::size_t i) const { return looks_[i]; }
  /// ln of the hours from its stage's start to the rise of each look; infinite where a kitchen's dough never has it, or
  /// the run cannot be. Throws only what the caller's options throw.
  std::vector<double> expected(const Kitchen& kitchen, const SimulateOptions& options) const;

 private:
  friend class Watching;
  struct Place {
    std::size_t step;
    double rise_percent;
  };
  const Process& process_;
  std::vector<Look> looks_ = {};
  std::vector<Place> places_ = {};
  std::vector<double> begins_h_ = {};
};

}  // namespace ferment
