#include "forecast/curve_search.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <limits>
#include <tuple>
#include <utility>

#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr std::size_t grid_points = 17;
constexpr double settled = 1e-8;       // a crossing is looked for until it is that close
constexpr double on_time = 1e-6;       // and taken if it is that close; a turn that comes so close is a solution, too
constexpr double one_solution = 1e-9;  // relative: two such points are one
constexpr double steepest = 1e-10;     // of the range: what does not change less by then jumps
constexpr double narrowest = 1e-14;    // of the range: nothing is looked for in between
constexpr double least_jump =
    1.0 / 60;  // a smaller one, where a draw or two change sides, is passed: nobody reads it on a clock
constexpr double close_by = 0.004;  // relative, as far_off
constexpr double least_dip = 1e-3;
constexpr double far_off =
    0.1;  // relative, and some hours: so far off the rough curve is on the same side of a value as the true one
constexpr double far = 1e9;  // instead of infinity, which a parabola does not bear

int side(double value, double wanted) { return std::abs(value - wanted) <= settled ? 0 : value > wanted ? 1 : -1; }

}  // namespace

CurveSearch::CurveSearch(SearchedCurve curve) : curve_(std::move(curve)) {
  std::vector<double> xs(grid_points);
  for (std::size_t i = 0; i < grid_points; ++i) {
    const double share = static_cast<double>(i) / (grid_points - 1);
    xs[i] = i + 1 == grid_points ? curve_.high : curve_.low + (curve_.high - curve_.low) * share;
  }
  if (curve_.present && *curve_.present > curve_.low && *curve_.present < curve_.high) xs.push_back(*curve_.present);
  add(xs);
}

double CurveSearch::value(double x) {
  const auto known = values_.find(x);
  if (known != values_.end()) return known->second;
  return values_[x] = curve_.value(x);
}

void CurveSearch::add(const std::vector<double>& xs) {
  if (xs.empty()) return;
  const std::vector<double> rough = curve_.rough(xs);
  for (std::size_t i = 0; i < xs.size(); ++i) knots_.push_back({xs[i], rough[i]});
  std::sort(knots_.begin(), knots_.end(), [](const Knot& a, const Knot& b) { return a.x < b.x; });
}

void CurveSearch::add_middles(const std::function<bool(const Knot&, const Knot&)>& wanted) {
  std::vector<double> middles;
  for (std::size_t i = 0; i + 1 < knots_.size(); ++i) {
    if (wanted(knots_[i], knots_[i + 1])) middles.push_back((knots_[i].x + knots_[i + 1].x) / 2);
  }
  add(middles);
}

/// More knots about turns and where the curve ends, and, of a wanted value, about the points at which the rough curve
/// has it.
void CurveSearch::look_closer(std::optional<double> wanted) {
  const double least = (curve_.high - curve_.low) / (16 * grid_points);
  for (int round = 0; round < 4; ++round) {
    std::vector<double> turns;
    for (std::size_t i = 0; i < knots_.size(); ++i) {
      if (turn_at(i) != Turn::none) turns.push_back(knots_[i].x);
    }
    add_middles([&](const Knot& a, const Knot& b) {
      const auto [low, high] = std::minmax(a.rough, b.rough);
      if (!(low < never) || b.x - a.x < least) return false;
      const double change = high < never ? high - low : 0;
      const double beside = wanted ? change + 2 * far_off / (round + 1) * (*wanted + 1) : never;
      if (wanted && !(*wanted > low - beside && *wanted < high + beside)) return false;
      const bool turns_here = std::any_of(turns.begin(), turns.end(), [&](double x) { return x == a.x || x == b.x; });
      const double around = wanted ? change / 2 + (round < 2 ? 0.02 * *wanted : 0) : 0;
      const bool has_it = wanted && *wanted > low - around && *wanted < high + around;
      return turns_here || high == never || has_it;
    });
  }
}

CurveSearch::Turn CurveSearch::turn_at(std::size_t knot) const {
  const double here = knots_[knot].rough;
  if (knot == 0 || knot + 1 == knots_.size() || !(here < never)) return Turn::none;
  const double before = knots_[knot - 1].rough, after = knots_[knot + 1].rough;
  if (here <= before && here <= after && (here < before || here < after)) return Turn::lowest;
  if (here >= before && here >= after && (here > before || here > after)) return Turn::highest;
  return Turn::none;
}

/// Between two neighbouring marks the curve runs one way: its ends, turns, what is chosen now, and both sides of where
/// it is infinite; and every knot that is close to the wanted value, where the true curve may turn beside the rough
/// one. Where the rough curve is far from it, that tells well enough on which side the true one is.
std::vector<CurveSearch::Mark> CurveSearch::marks(std::optional<double> wanted) {
  std::vector<Mark> marks;
  std::vector<std::size_t> others;
  double level = 0;  // how far the rough curve is off, where that was seen last
  const auto near = [&](double rough, double share) {
    return !wanted || std::abs(rough - *wanted) < share * (std::abs(*wanted) + 2);
  };
  for (std::size_t i = 0; i < knots_.size(); ++i) {
    const double x = knots_[i].x, rough = knots_[i].rough;
    const bool is_end = i == 0 || i + 1 == knots_.size();
    const auto borders = [&](std::size_t other) { return (knots_[other].rough < never) != (rough < never); };
    const bool matters = is_end || turn_at(i) != Turn::none || x == curve_.present || borders(i - 1) || borders(i + 1);
    const bool is_close = wanted && near(rough + level, close_by);
    if (!matters && !is_close) continue;
    marks.push_back(near(rough, far_off) ? mark_at(x) : Mark{x, rough});
    if (std::isfinite(marks.back().value - rough)) level = marks.back().value - rough;
  }
  return marks;
}

/// The lowest (sign 1) or highest (−1) point of the curve between two; or one beyond `enough`, if that is given.
CurveSearch::Mark CurveSearch::extreme(double from, double to, Mark best, double sign, std::optional<double> enough) {
  constexpr int bits =
      16;  // of the point between 1 and 2: of a turn's value it leaves less than 1e-9 of the change beside it
  std::uintmax_t evaluations = 40;
  const auto lowered = [&](double t) {
    if (enough && sign * best.value < sign * *enough - settled)
      return far;  // it is known, and nothing more is evaluated
    const Mark mark = mark_at(from + (t - 1) * (to - from));
    if (sign * mark.value < sign * best.value) best = mark;
    return std::clamp(sign * mark.value, -far, far);
  };
  boost::math::tools::brent_find_minima(lowered, 1.0, 2.0, bits, evaluations);
  return best;
}

/// The same at a mark of several, if it is higher or lower than both its neighbours.
std::optional<CurveSearch::Mark> CurveSearch::extreme_at(const std::vector<Mark>& marks, std::size_t i,
                                                         std::optional<double> wanted) {
  if (i == 0 || i + 1 == marks.size() || !(marks[i].value < never)) return std::nullopt;
  const double before = marks[i - 1].value, here = marks[i].value, after = marks[i + 1].value;
  const double sign = here <= before && here <= after ? 1 : here >= before && here >= after ? -1 : 0;
  if (sign == 0) return std::nullopt;
  // From knot to knot between the neighbours: the true curve may turn some knots beside the rough one.
  std::vector<double> xs{marks[i - 1].x};
  for (const Knot& knot : knots_) {
    if (knot.x > xs[0] && knot.x < marks[i + 1].x && knot.x != marks[i].x) xs.push_back(knot.x);
  }
  xs.insert(std::upper_bound(xs.begin(), xs.end(), marks[i].x), marks[i].x);
  xs.push_back(marks[i + 1].x);
  auto at = static_cast<std::size_t>(std::find(xs.begin(), xs.end(), marks[i].x) - xs.begin());
  const auto height = [&](std::size_t i) { return sign * value(xs[i]); };
  const std::size_t last = xs.size() - 1;
  while (at > 0 && height(at - 1) < height(at)) --at;
  while (at < last && height(at + 1) < height(at)) ++at;
  const double from = xs[at > 0 ? at - 1 : 0], to = xs[std::min(at + 1, last)];
  const Mark best = mark_at(xs[at]);
  if (wanted) {
    double dip = least_dip;
    for (const double x : {from, to}) {
      if (const double beside = std::abs(value(x) - best.value); beside < never) dip = std::max(dip, 2 * beside);
    }
    const double beyond = sign * (best.value - *wanted);
    if (beyond > dip) return std::nullopt;
    if (!(beyond > 0)) return best;
  }
  return extreme(from, to, best, sign, wanted);
}

/// The finite end, moved as far as the curve is finite; or, if a value is wanted, until that is passed or cannot be.
CurveSearch::Mark CurveSearch::last_finite(Mark finite, Mark infinite, std::optional<double> wanted) {
  double steepness = 0;
  int steady = 0;  // moves in a row that did not steepen: it jumps to infinity and does not grow towards it
  while (std::abs(infinite.x - finite.x) > narrowest * (curve_.high - curve_.low)) {
    const Mark middle = mark_at((finite.x + infinite.x) / 2);
    if (middle.x == finite.x || middle.x == infinite.x) break;
    if (!(middle.value < never)) {
      infinite = middle;
      continue;
    }
    const double steeper = std::abs((middle.value - finite.value) / (middle.x - finite.x));
    steady = steeper <= 1.4 * steepness ? steady + 1 : 0;
    steepness = steeper;
    const bool passed = wanted && side(middle.value, *wanted) != side(finite.value, *wanted);
    finite = middle;
    const double missing = wanted ? std::abs(finite.value - *wanted) : settled;
    if (passed || (steady > 2 && 20 * steepness * std::abs(infinite.x - finite.x) < missing)) break;
  }
  return finite;
}

/// Two evaluated marks, as close as the knots are, on both sides of a crossing that the rough curve foresees between
/// two marks.
std::pair<CurveSearch::Mark, CurveSearch::Mark> CurveSearch::foreseen(Mark from, Mark to, double wanted) {
  const bool begins_late = from.value > wanted;
  std::vector<double> xs{from.x};
  for (const Knot& knot : knots_) {
    if (knot.x > from.x && knot.x < to.x) xs.push_back(knot.x);
  }
  xs.push_back(to.x);
  const auto rough_late = [&](const Knot& k) {
    return k.x > from.x && k.x < to.x && (k.rough > wanted) != begins_late;
  };
  const auto crossed = std::find_if(knots_.begin(), knots_.end(), rough_late);
  const double x = crossed == knots_.end() ? to.x : crossed->x;
  auto at = static_cast<std::size_t>(std::find(xs.begin(), xs.end(), x) - xs.begin());
  // From there outwards, until the true curve is on both sides.
  while (at + 1 < xs.size() && (value(xs[at]) > wanted) == begins_late) ++at;
  while (at > 1 && (value(xs[at - 1]) > wanted) != begins_late) --at;
  return {mark_at(xs[at - 1]), mark_at(xs[at])};
}

/// Moves one of two marks, on both sides of the value, to where the curve alike passes it: mostly a solution after one
/// step or two, because the draws in the middle are the same ones.
void CurveSearch::approach(Mark& from, Mark& to, double wanted) {
  constexpr int most_steps = 4;
  for (int step = 0; step < most_steps && side(from.value, wanted) != 0 && side(to.value, wanted) != 0; ++step) {
    const auto missed_by = [&](double x) { return std::min(curve_.alike(x), far) - wanted; };
    const double at_from = missed_by(from.x), at_to = missed_by(to.x);
    if (!(at_from * at_to < 0)) return;
    std::uintmax_t evaluations = 50;
    const auto close = [&](double a, double b) { return std::abs(b - a) <= narrowest * (curve_.high - curve_.low); };
    const auto [low, high] =
        boost::math::tools::toms748_solve(missed_by, from.x, to.x, at_from, at_to, close, evaluations);
    const Mark next = mark_at(std::abs(missed_by(low)) < std::abs(missed_by(high)) ? low : high);
    if (next.x <= from.x || next.x >= to.x) return;
    ((next.value > wanted) == (from.value > wanted) ? from : to) = next;
  }
}

/// Where the curve passes the value between two marks on its two sides; nothing if it jumps over it.
std::optional<double> CurveSearch::crossing(Mark from, Mark to, double wanted) {
  std::tie(from, to) = foreseen(from, to, wanted);
  if (!(from.value < never)) from = last_finite(to, from, wanted);
  if (!(to.value < never)) to = last_finite(from, to, wanted);
  if (side(from.value, wanted) * side(to.value, wanted) > 0) return std::nullopt;
  if (from.x > to.x) std::swap(from, to);
  if (curve_.alike) approach(from, to, wanted);
  double best = from.x, best_miss = never;
  const auto miss = [&](double x) {
    const double by = std::min(value(x), far) - wanted;
    if (std::abs(by) < best_miss) {
      best = x;
      best_miss = std::abs(by);
    }
    return std::abs(by) < settled ? 0.0 : by;
  };
  std::uintmax_t evaluations = 100;
  // A step that stays as high while the bracket shrinks a thousandfold is a jump.
  double step_before = never;
  const auto close = [&](double a, double b) {
    const double width = std::abs(a - b) / (curve_.high - curve_.low), step = std::abs(value(a) - value(b));
    if (width <= 1e3 * steepest && !(step_before < never)) step_before = step;
    return width <= narrowest || (width <= steepest && step > step_before / 2);
  };
  const double at_from = miss(from.x), at_to = miss(to.x);
  if (at_from == 0) return from.x;
  if (at_to == 0) return to.x;
  const auto [low, high] = boost::math::tools::toms748_solve(miss, from.x, to.x, at_from, at_to, close, evaluations);
  if (best_miss <= on_time) return best;
  if (std::abs(value(low) - value(high)) < least_jump) return best;
  note_jump(mark_at(low), mark_at(high));
  return std::nullopt;
}

void CurveSearch::note_jump(Mark from, Mark to) {
  if (from.x > to.x) std::swap(from, to);
  if (std::isfinite(from.value) && std::isfinite(to.value)) jumps_.push_back({from, to});
}

std::vector<double> CurveSearch::solutions(double wanted) {
  look_closer(wanted);
  std::vector<Mark> all = marks(wanted);
  std::vector<Mark> turns;
  std::vector<double> solutions;
  for (std::size_t i = 0, n = all.size(); i < n; ++i) {
    const std::optional<Mark> found = extreme_at(all, i, wanted);
    if (!found) continue;
    if (std::abs(found->value - wanted) <= on_time && side(found->value, wanted) != 0) solutions.push_back(found->x);
    turns.push_back(*found);
  }
  all.insert(all.end(), turns.begin(), turns.end());
  std::sort(all.begin(), all.end(), [](const Mark& a, const Mark& b) { return a.x < b.x; });
  for (std::size_t i = 0; i < all.size(); ++i) {
    const int here = side(all[i].value, wanted);
    if (here == 0) solutions.push_back(all[i].x);
    if (i + 1 == all.size()) break;
    if (here * side(all[i + 1].value, wanted) >= 0) continue;
    if (const auto solution = crossing(all[i], all[i + 1], wanted)) solutions.push_back(*solution);
  }
  std::sort(solutions.begin(), solutions.end());
  const auto same = [](double a, double b) { return std::abs(a - b) <= one_solution * (1 + std::abs(a)); };
  solutions.erase(std::unique(solutions.begin(), solutions.end(), same), solutions.end());
  return solutions;
}

/// Jumps show on the rough curve as a step that does not shrink with the distance; then their ends are found on the
/// true one.
void CurveSearch::find_jumps() {
  const std::vector<Knot> seen = knots_;
  const auto steepness = [&](std::size_t i) {
    const double change = std::abs(seen[i + 1].rough - seen[i].rough);
    return std::isfinite(change) ? change / (seen[i + 1].x - seen[i].x) : 0;
  };
  for (std::size_t i = 0; i + 1 < seen.size(); ++i) {
    const double change = std::abs(seen[i + 1].rough - seen[i].rough);
    const double around = std::max(i > 0 ? steepness(i - 1) : 0, i + 2 < seen.size() ? steepness(i + 1) : 0);
    if (!(change < never) || change < 10 * least_jump || steepness(i) < 2 * around) continue;
    // The true curve's jump is near the rough one's: one knot farther on both sides.
    Mark from = mark_at(seen[i > 0 ? i - 1 : 0].x), to = mark_at(seen[std::min(i + 2, seen.size() - 1)].x);
    double step = std::abs(to.value - from.value);
    for (int halving = 0; halving < 40 && std::isfinite(step) && step > change / 4; ++halving) {
      const Mark middle = mark_at((from.x + to.x) / 2);
      if (!(middle.value < never)) break;
      (std::abs(middle.value - from.value) > std::abs(to.value - middle.value) ? to : from) = middle;
      step = std::abs(to.value - from.value);
    }
    if (step > change / 4 && std::abs(to.x - from.x) < 1e-9 * (curve_.high - curve_.low)) note_jump(from, to);
  }
}

std::pair<double, double> CurveSearch::rough_ends() const {
  double lowest = never, highest = -never;
  for (const Knot& knot : knots_) {
    lowest = std::min(lowest, knot.rough);
    if (knot.rough < never) highest = std::max(highest, knot.rough);
  }
  return {lowest, highest};
}

std::vector<ValueRange> CurveSearch::ranges() {
  look_closer(std::nullopt);
  const auto [lowest, highest] = rough_ends();
  if (!(lowest < never)) return {};
  look_closer(lowest);
  look_closer(highest);
  find_jumps();
  std::vector<Mark> all = marks(std::nullopt);
  for (std::size_t i = 0, n = all.size(); i + 1 < n; ++i) {
    const bool here = all[i].value < never, there = all[i + 1].value < never;
    if (here != there)
      all.push_back(here ? last_finite(all[i], all[i + 1], std::nullopt)
                         : last_finite(all[i + 1], all[i], std::nullopt));
  }
  // Of the turns only the outermost are told, and so are found to the last digit.
  const auto in_order = [&] {
    std::sort(all.begin(), all.end(), [](const Mark& a, const Mark& b) { return a.x < b.x; });
  };
  const auto find_outermost = [&](double sign) {
    in_order();
    const auto farther = [sign](const Mark& a, const Mark& b) {
      return b.value == never || (a.value < never && sign * a.value < sign * b.value);
    };
    const double edge = std::min_element(all.begin(), all.end(), farther)->value;
    if (!(edge < never)) return;
    // The true curve may be farther at another knot than the rough one.
    for (const Knot& knot : knots_) {
      if (std::abs(knot.rough - edge) < 4 * close_by * (std::abs(edge) + 2)) all.push_back(mark_at(knot.x));
    }
    in_order();
    const auto outermost = static_cast<std::size_t>(std::min_element(all.begin(), all.end(), farther) - all.begin());
    if (const auto found = extreme_at(all, outermost, std::nullopt)) all.push_back(*found);
  };
  find_outermost(1);
  find_outermost(-1);
  for (const auto& [from, to] : jumps_) all.insert(all.end(), {from, to});
  in_order();

  std::vector<ValueRange> pieces;
  for (std::size_t i = 0; i + 1 < all.size(); ++i) {
    Mark low = all[i], high = all[i + 1];
    const bool jumps = std::any_of(jumps_.begin(), jumps_.end(), [&](const Jump& jump) {
      const double most = std::abs(jump.to.value - jump.from.value) / 2;
      return jump.from.x <= low.x && high.x <= jump.to.x && std::abs(high.value - low.value) > most;
    });
    if (!(low.value < never && high.value < never) || jumps) continue;
    if (low.value > high.value) std::swap(low, high);
    pieces.push_back({low.value, high.value, low.x, high.x});
  }
  std::sort(pieces.begin(), pieces.end(), [](const ValueRange& a, const ValueRange& b) { return a.low < b.low; });
  std::vector<ValueRange> whole;
  for (const ValueRange& piece : pieces) {
    if (whole.empty() || piece.low > whole.back().high + on_time) {
      whole.push_back(piece);
    } else if (piece.high > whole.back().high) {
      whole.back().high = piece.high;
      whole.back().at_high = piece.at_high;
    }
  }
  return whole;
}

std::optional<double> CurveSearch::only_value() const {
  const auto [lowest, highest] = rough_ends();
  const bool is_finite = std::all_of(knots_.begin(), knots_.end(), [](const Knot& knot) { return knot.rough < never; });
  return is_finite && highest - lowest <= settled ? std::optional(lowest) : std::nullopt;
}

}  // namespace ferment
