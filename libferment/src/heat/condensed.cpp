#include "heat/condensed.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace ferment {
namespace {

constexpr double most_k = 0.5;  // that a reading is off its line: a clock is no straight function of temperature

/// A straight line over x hours from its start.
struct Line {
  double start_c, per_h;
};

class Sums {
 public:
  explicit Sums(const Course& course)
      : hour_(course.time_h), c_(course.temperature_c), area_(hour_.size()), moment_(hour_.size()) {
    for (std::size_t k = 1; k < hour_.size(); ++k) {
      const double h = hour_[k] - hour_[k - 1], area = h * (c_[k - 1] + c_[k]) / 2;
      area_[k] = area_[k - 1] + area;
      moment_[k] = moment_[k - 1] + (hour_[k - 1] - hour_[0]) * area + h * h * (c_[k - 1] + 2 * c_[k]) / 6;
    }
  }

  /// The line with the series' area and moment between two readings: its best one by least squares.
  Line line(std::size_t from, std::size_t to) const {
    const double width = hour_[to] - hour_[from], area = area_[to] - area_[from];
    if (to == from + 1) return {c_[from], (c_[to] - c_[from]) / width};
    const double middle = (hour_[from] + hour_[to]) / 2 - hour_[0];
    const double per_h = 12 * (moment_[to] - moment_[from] - middle * area) / (width * width * width);
    return {area / width - per_h * width / 2, per_h};
  }
  bool fits(std::size_t from, std::size_t to, double most_k_h) const {
    const auto [start_c, per_h] = line(from, to);
    for (std::size_t k = from; k <= to; ++k) {
      const double x = hour_[k] - hour_[from];
      if (std::abs(area_[k] - area_[from] - x * (start_c + per_h * x / 2)) > most_k_h ||
          std::abs(c_[k] - start_c - per_h * x) > most_k)
        return false;
    }
    return true;
  }
  /// The last reading to which one line fits.
  std::size_t reach(std::size_t from, double most_k_h) const {
    const std::size_t last = hour_.size() - 1;
    std::size_t good = from + 1, step = 1;
    while (good < last && fits(from, std::min(good + step, last), most_k_h)) {
      good = std::min(good + step, last);
      step *= 2;
    }
    for (; step > 0; step /= 2) {
      if (good + step <= last && fits(from, good + step, most_k_h)) good += step;
    }
    return good;
  }

 private:
  const std::vector<double>& hour_;
  const std::vector<double>& c_;
  std::vector<double> area_, moment_;
};

}  // namespace

Course condensed(const Course& course, double most_k_h) {
  const Sums sums(course);
  const std::size_t last = course.time_h.size() - 1;
  const auto [coldest, warmest] = std::minmax_element(course.temperature_c.begin(), course.temperature_c.end());
  Course few;
  const auto add = [&, low = *coldest, high = *warmest](double time_h, double c) {
    few.time_h.push_back(time_h);
    few.temperature_c.push_back(std::clamp(c, low, high));
  };
  constexpr double at_once_h = 1e-6;
  // Before the first reading and after the last their own temperatures are held.
  double end_c = course.temperature_c.front(), width_before = 0;
  for (std::size_t from = 0; from < last;) {
    const std::size_t to = sums.reach(from, most_k_h);
    const Line line = sums.line(from, to);
    const double width = course.time_h[to] - course.time_h[from];
    // Where two lines meet, one reading between their ends gives the one what it takes from the other; too much, and
    // there is a step.
    const double taken_k_h = std::abs(end_c - line.start_c) * std::max(width_before, width) / 4;
    if (taken_k_h > most_k_h / 2 || (from == 0 && to > 1)) {
      add(course.time_h[from], end_c);
      add(course.time_h[from] + std::min(at_once_h, width / 2), line.start_c);
    } else {
      add(course.time_h[from], (end_c + line.start_c) / 2);
    }
    end_c = line.start_c + line.per_h * width;
    width_before = width;
    from = to;
  }
  if (end_c != course.temperature_c.back()) {
    add(course.time_h[last] - std::min(at_once_h, (course.time_h[last] - few.time_h.back()) / 2), end_c);
  }
  add(course.time_h[last], course.temperature_c.back());
  return few;
}

}  // namespace ferment
