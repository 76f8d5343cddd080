#include <ferment/mix/net_gain.hpp>

#include <cmath>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "mix/filling.hpp"

namespace ferment {
namespace {

/// The mix with a gain of nothing, and the minutes of its own mixing.
Mix without_gain(Mix mix) {
  mix.mixing = ByNetGain{.net_gain_kj_per_kg = 0, .minutes = mix.mixing ? mixing_minutes(*mix.mixing) : 0};
  return mix;
}

/// The one gain that takes the dough from what it would be without to what it was.
double gain_between(double without_c, double dough_c, const Contents& contents, const HeatBalance& balance) {
  return (dough_c - without_c) / (balance.k_per_kj_work * contents.dough_kg);
}

void require_gain_of_batch(double gain) {
  Field of_batch = field::net_gain_kj_per_kg;
  of_batch.label = "net mixing gain of this batch";
  of_batch.advice =
      "one of the temperatures or weights must be wrong; measure flour, room, water, bowl and dough again";
  require(of_batch, gain);
}

}  // namespace

double net_gain_from_batch(const Mix& mix, double dough_c) {
  require(mix);
  require(field::dough_c, dough_c);
  if (!mix.formula.water_c)
    throw InvalidInput("the main water has no temperature",
                       {.path = "water_c", .advice = "give the one it was poured with, water_c"});
  const Contents contents = contents_of(without_gain(mix));
  const HeatBalance balance = balance_of(contents);
  const double gain = gain_between(balance.dough_c, dough_c, contents, balance);
  require_gain_of_batch(gain);
  return gain;
}

BatchMean net_gain_from_batches(std::span<const Mix> mixes, std::span<const double> dough_c) {
  if (mixes.size() != dough_c.size()) {
    throw InvalidInput(std::to_string(mixes.size()) + " mixes with " + std::to_string(dough_c.size()) +
                           " dough temperatures",
                       {.path = "dough_c", .advice = "give one for each"});
  }
  return mean_of_batches(mixes.size(), [&](std::size_t i) { return net_gain_from_batch(mixes[i], dough_c[i]); });
}

ByNetGain net_gain_of(const BatchMean& batches, double minutes) {
  if (batches.each.empty()) throw InvalidInput("no batch given", {.path = "batches", .advice = "one is enough"});
  require(field::mixing_min, minutes);
  constexpr double prior_batches = 4;  // a spread from few batches is hardly known: it is drawn toward the usual one
  const auto n = static_cast<double>(batches.each.size());
  const double usual = *field::sd_kj_per_kg.initial;
  const double seen = batches.sd.value_or(0);
  const double variance = (prior_batches * usual * usual + (n - 1) * seen * seen) / (prior_batches + n - 1);
  return {batches.mean, std::sqrt(variance * (1 + 1 / n)), minutes};
}

double net_gain_from_friction(const Mix& mix, double friction_k, double desired_c, double measured_at_c) {
  require(mix);
  require(field::friction_k, friction_k);
  require(field::desired_c, desired_c);
  Field measured_at = field::room_c;
  measured_at.name = "measured_at_c";
  measured_at.label = "room temperature where the friction was found";
  require(measured_at, measured_at_c);
  const double n = factors_of(mix);
  // The rule's water there may be one that cannot be poured; the number it makes of the friction holds all the same.
  const double water_c = n * desired_c - (n - 1) * measured_at_c - friction_k;
  const Contents contents = cold_contents_of(without_gain(mix));
  const HeatBalance balance = balance_of(contents);
  const double without_c = dough_in_even_room(contents, balance, measured_at_c) + balance.weights[main_water] * water_c;
  const double gain = gain_between(without_c, desired_c, contents, balance);
  Field worth = field::net_gain_kj_per_kg;
  worth.label = "net mixing gain worth this friction";
  require(worth, gain);
  return gain;
}

}  // namespace ferment
