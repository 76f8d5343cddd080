// Draws weighted by what was seen of today's dough: they have been followed through it anyway.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include <ferment/forecast/forecast.hpp>

#include "forecast/draws.hpp"

namespace ferment {

/// A look that no draw expected: so many sds from what they do, noise included.
struct Surprise {
  std::size_t look;
  double seen, expected;  ///< on the look's scale
  double standardised;
};

/// Draws, and how much each counts; the weights are empty where all count the same.
struct WeightedDraws {
  std::vector<Draw> draws;
  std::vector<double> weights = {};  ///< of sum 1
  double effective = 0;              ///< draws: 1/Σ weight²
  std::vector<Surprise> surprises = {};
};

/// The draws of a forecast, weighted by the likelihood of its options' looks; more of them where few are left.
/// @throws InvalidInput for the options, the kitchen, the looks, or looks together with a state
WeightedDraws weighted_draws(const Process& process, const Kitchen& kitchen, const std::optional<State>& state,
                             const ForecastOptions& options);

/// Values as equally likely ones, rising: as many quantiles of the weighted ones as there are values.
std::vector<double> evenly_likely(const std::vector<double>& values, const std::vector<double>& weights);

/// So many draws that stand for all: the first ones, or the same share of the weight each.
std::vector<std::size_t> representatives(const WeightedDraws& of, std::size_t count);

/// Between which two of rising values, and how far from the first to the second, half of the weight lies below.
struct Middle {
  std::size_t low, high;
  double share;
};
Middle middle_of(const std::vector<double>& weights_in_order);

}  // namespace ferment
