#include "forecast/weights.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

#include <ferment/base/error.hpp>

#include "forecast/sighting.hpp"

namespace ferment {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr double few_effective = 100;  ///< draws: below it, more are drawn
constexpr std::size_t many_draws = 2048;

/// The noise is heavy-tailed, so that a slip counts little; then it must be told.
std::vector<Surprise> surprises(const Looks& looks, const std::vector<std::vector<double>>& expected,
                                const Noise& noise) {
  constexpr double surprising = 4;
  std::vector<Surprise> found;
  for (std::size_t i = 0; i < looks.size(); ++i) {
    double n = 0, sum = 0, squares = 0;
    for (const std::vector<double>& draw : expected) {
      if (!(draw[i] < never)) continue;
      n += 1;
      sum += draw[i];
      squares += draw[i] * draw[i];
    }
    if (!(n > 0)) continue;
    const Look& look = looks[i];
    const double mean = sum / n, scale = look.scale.value_or(noise.scale);
    const double off = (look.seen - mean) / std::sqrt(squares / n - mean * mean + 2 * scale * scale);
    const bool is_bound_that_holds = (look.was == SeenAs::not_yet && off < 0) || (look.was == SeenAs::past && off > 0);
    if (std::abs(off) > surprising && !is_bound_that_holds) found.push_back({i, look.seen, mean, off});
  }
  return found;
}

void weigh(WeightedDraws& all, const Looks& looks, const Noise& noise, const ForecastOptions& options) {
  SimulateOptions simulation{.heat_of_fermentation = options.heat_of_fermentation,
                             .every_min = 0,
                             .be_back_by = false,
                             .tolerance = options.tolerance,
                             .interrupt = options.interrupt};
  std::vector<double> log_weights(all.draws.size());
  std::vector<std::vector<double>> expected(all.draws.size());
  for_each_draw(options.for_each, all.draws.size(), [&](std::size_t i) {
    expected[i] = looks.expected(all.draws[i].kitchen, simulation);
    log_weights[i] = looks.log_likelihood(expected[i], noise);
  });
  all.surprises = surprises(looks, expected, noise);
  const double largest = *std::max_element(log_weights.begin(), log_weights.end());
  all.weights.clear();
  all.effective = 0;
  if (!(largest > -never)) return;  // no draw can be so
  double total = 0, squares = 0;
  for (const double log_weight : log_weights) {
    all.weights.push_back(std::exp(log_weight - largest));
    total += all.weights.back();
  }
  for (double& weight : all.weights) {
    weight /= total;
    squares += weight * weight;
  }
  all.effective = 1 / squares;
}

/// Where the i-th of rising values stands among all, 0 to 1: the middle of its weight.
std::vector<double> places_of(const std::vector<double>& weights_in_order) {
  std::vector<double> places;
  double below = 0;
  for (const double weight : weights_in_order) {
    places.push_back(below + weight / 2);
    below += weight;
  }
  return places;
}

}  // namespace

WeightedDraws weighted_draws(const Process& process, const Kitchen& kitchen, const std::optional<State>& state,
                             const ForecastOptions& options) {
  WeightedDraws all{drawn(kitchen, options)};
  all.effective = static_cast<double>(all.draws.size());
  if (options.seen.empty()) return all;
  if (state) {
    throw InvalidInput("a state does not remember what its dough did before",
                       {.path = "seen",
                        .advice = "give the process from its start, with the hours at which its "
                                  "stages ended, and no state"});
  }
  const Looks looks(process, options.seen);
  const Noise noise{kitchen.log_time_scale};
  weigh(all, looks, noise, options);
  if (all.effective < few_effective && options.draws < many_draws) {
    ForecastOptions more = options;
    more.draws = many_draws;
    all.draws = drawn(kitchen, more);
    weigh(all, looks, noise, options);
  }
  return all;
}

std::vector<double> evenly_likely(const std::vector<double>& values, const std::vector<double>& weights) {
  std::vector<double> rising = values;
  std::sort(rising.begin(), rising.end());
  if (weights.empty()) return rising;
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  std::vector<double> in_order;
  for (const std::size_t i : order) in_order.push_back(weights[i]);
  const std::vector<double> places = places_of(in_order);
  std::vector<double> likely;
  std::size_t above = 0;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const double place = (static_cast<double>(i) + 0.5) / static_cast<double>(values.size());
    while (above < places.size() && places[above] <= place) ++above;
    const double low = rising[above == 0 ? 0 : above - 1], high = rising[std::min(above, places.size() - 1)];
    const bool is_between = above > 0 && above < places.size();
    const double share = is_between ? (place - places[above - 1]) / (places[above] - places[above - 1]) : 0;
    likely.push_back(high < never ? low + share * (high - low) : share < 0.5 ? low : high);
  }
  return likely;
}

std::vector<std::size_t> representatives(const WeightedDraws& of, std::size_t count) {
  count = std::min(count, of.draws.size());
  std::vector<std::size_t> chosen(count);
  std::iota(chosen.begin(), chosen.end(), std::size_t{0});
  if (of.weights.empty()) return chosen;
  double below = 0;
  std::size_t draw = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double place = (static_cast<double>(i) + 0.5) / static_cast<double>(count);
    while (draw + 1 < of.weights.size() && below + of.weights[draw] < place) below += of.weights[draw++];
    chosen[i] = draw;
  }
  return chosen;
}

Middle middle_of(const std::vector<double>& weights_in_order) {
  const std::vector<double> places = places_of(weights_in_order);
  constexpr double rounding = 1e-12;
  const auto above = std::upper_bound(places.begin(), places.end(), 0.5 + rounding);
  const auto high = static_cast<std::size_t>(std::min(above, places.end() - 1) - places.begin());
  const std::size_t low = above == places.begin() ? 0 : static_cast<std::size_t>(above - places.begin()) - 1;
  const double between = places[high] - places[low];
  return {low, high, between > 0 ? std::clamp((0.5 - places[low]) / between, 0.0, 1.0) : 0};
}

}  // namespace ferment
