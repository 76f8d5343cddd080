// Every point at which a curve has a value, and which values it takes at all, from few evaluations.
//
// The curve is dear to evaluate, has turns, regions where it is infinite, and jumps. A rough curve, a fraction as dear
// and a little beside it, tells where it turns; the true one is evaluated at its turns, and between two of them it runs
// one way.
#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace ferment {

struct SearchedCurve {
  double low = 0, high = 0;                                              ///< where it is looked at
  std::function<double(double)> value = {};                              ///< infinite where it has none
  std::function<std::vector<double>(const std::vector<double>&)> rough;  ///< at many points at once
  std::optional<double> present = {};  ///< a point that is looked at besides: what is chosen now
  /// One that costs next to nothing, and about the point that was evaluated last has the same values.
  std::function<double(double)> alike = {};
};

/// Values that a curve takes without a gap, and where it takes the lowest and the highest.
struct ValueRange {
  double low, high, at_low, at_high;
};

class CurveSearch {
 public:
  explicit CurveSearch(SearchedCurve curve);

  /// Every point whose value is `wanted` (a turn's within 1e-6), rising; of a stretch on which it is so throughout,
  /// both ends.
  std::vector<double> solutions(double wanted);
  /// The values it takes, rising, without those that its jumps leave out; none if it is infinite throughout.
  std::vector<ValueRange> ranges();
  /// The one value that it has throughout, if it has.
  std::optional<double> only_value() const;
  /// The curve, each point evaluated once.
  double value(double x);

 private:
  struct Knot {
    double x, rough;
  };
  enum class Turn { none, lowest, highest };
  /// A point at which the true curve was evaluated.
  struct Mark {
    double x, value;
  };
  struct Jump {
    Mark from, to;
  };

  void add(const std::vector<double>& xs);
  void add_middles(const std::function<bool(const Knot&, const Knot&)>& wanted);
  void look_closer(std::optional<double> wanted);
  Turn turn_at(std::size_t knot) const;
  Mark mark_at(double x) { return {x, value(x)}; }
  std::vector<Mark> marks(std::optional<double> wanted);
  Mark extreme(double from, double to, Mark best, double sign, std::optional<double> enough);
  std::optional<Mark> extreme_at(const std::vector<Mark>& marks, std::size_t i, std::optional<double> wanted);
  Mark last_finite(Mark finite, Mark infinite, std::optional<double> wanted);
  std::pair<Mark, Mark> foreseen(Mark from, Mark to, double wanted);
  std::optional<double> crossing(Mark from, Mark to, double wanted);
  void approach(Mark& from, Mark& to, double wanted);
  std::pair<double, double> rough_ends() const;  ///< lowest and highest finite value
  void find_jumps();
  void note_jump(Mark from, Mark to);

  SearchedCurve curve_;
  std::vector<Knot> knots_ = {};
  std::map<double, double> values_ = {};
  std::vector<Jump> jumps_ = {};
};

}  // namespace ferment
