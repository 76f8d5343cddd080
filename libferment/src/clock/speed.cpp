#include <ferment/clock/speed.hpp>

#include <array>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/clock/temperature_law.hpp>

#include "base/blocks.hpp"
#include "base/indexed.hpp"
#include "base/loops.hpp"
#include "base/text.hpp"
#include "clock/speed_pass.hpp"

namespace ferment {

namespace {

/// Refuses temperatures at which the yeast stands still.
void require_runs(const TemperatureLaw& law, const Values& dough_c, const Field& which) {
  std::size_t first = 0;
  std::size_t count = 0;
  for (std::size_t i = dough_c.size(); i-- > 0;) {
    double factor = 0;
    temperature_factors(law, dough_c.data() + i, &factor, 1);
    if (factor > 0) continue;
    first = i;
    ++count;
  }
  if (count == 0) return;
  ErrorDetail detail{.path = std::string(which.name),
                     .value = dough_c[first],
                     .advice = "choose a temperature between the limits of the kitchen's law"};
  add_index(detail, dough_c, first, count);
  throw OutsideModel("at a dough temperature of " + number(dough_c[first]) +
                         " °C the yeast stands still, no time there gives a rise",
                     detail);
}

// g++ 12 exports a loop that is compiled for several vector widths even where visibility is hidden: so the loops are
// local, and the pass's functions call them.

FERMENT_WIDE_LOOPS void activity_loop(const SoluteBlock& solutes, double* water_activity, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    water_activity[i] = formula::water_activity(solutes.salt[i], solutes.water[i], solutes.sugar[i]);
  }
}

FERMENT_WIDE_LOOPS void solute_loop(const SoluteBlock& solutes, const double* water_activity, formula::SoluteRule rule,
                                    double* factor, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) factor[i] *= formula::activity_factor(water_activity[i], rule);
  if (rule.water_exponent == 0.5) {
    for (std::size_t i = 0; i < n; ++i) factor[i] *= formula::water_factor(solutes.water[i], 0.5);
  } else {
    for (std::size_t i = 0; i < n; ++i) factor[i] *= formula::water_factor(solutes.water[i], rule.water_exponent);
  }
  if (rule.log_sweet == 0) return;
  for (std::size_t i = 0; i < n; ++i) factor[i] *= formula::sweet_factor(solutes.sugar[i], rule.log_sweet);
}

}  // namespace

void water_activities(const SoluteBlock& solutes, double* water_activity, std::size_t n) {
  activity_loop(solutes, water_activity, n);
}

void times_solute_factors(const SoluteBlock& solutes, const double* water_activity, const formula::SoluteRule& rule,
                          double* factor, std::size_t n) {
  solute_loop(solutes, water_activity, rule, factor, n);
}

void speed(const ClockInputs& inputs, std::span<double> out, const Kitchen& kitchen) {
  const std::size_t n = out.size();
  const TemperatureLaw law = law_of(kitchen);
  require_column(field::dough_c, inputs.dough_c, n);
  require_column(field::salt_percent, inputs.salt_percent, n);
  require_column(field::water_percent, inputs.water_percent, n);
  require_column(field::sugar_percent, inputs.sugar_percent, n);
  const Column<block_size> dough(inputs.dough_c, n), salt(inputs.salt_percent, n), water(inputs.water_percent, n),
      sugar(inputs.sugar_percent, n);
  const formula::SoluteRule rule(kitchen);
  for_blocks(n, block_size, [&](std::size_t start, std::size_t count) {
    std::array<double, block_size> activity;
    const SoluteBlock solutes{salt.at(start), water.at(start), sugar.at(start)};
    water_activities(solutes, activity.data(), count);
    temperature_factors(law, dough.at(start), out.data() + start, count);
    times_solute_factors(solutes, activity.data(), rule, out.data() + start, count);
  });
}

double speed(double dough_c, double salt_percent, double water_percent, double sugar_percent, const Kitchen& kitchen) {
  double out = 0;
  speed({dough_c, salt_percent, water_percent, sugar_percent}, {&out, 1}, kitchen);
  return out;
}

void same_rise(const Values& time_h, const Values& from_c, const Values& to_c, std::span<double> out,
               const Kitchen& kitchen) {
  const std::size_t n = out.size();
  const TemperatureLaw law = law_of(kitchen);
  require_column(field::time_h, time_h, n);
  require_column(field::from_c, from_c, n);
  require_column(field::to_c, to_c, n);
  require_runs(law, from_c, field::from_c);
  require_runs(law, to_c, field::to_c);
  const Column<block_size> from(from_c, n), to(to_c, n);
  for_blocks(n, block_size, [&](std::size_t start, std::size_t count) {
    std::array<double, block_size> known, here;
    temperature_factors(law, from.at(start), known.data(), count);
    temperature_factors(law, to.at(start), here.data(), count);
    for (std::size_t i = 0; i < count; ++i) out[start + i] = time_h[start + i] * (known[i] / here[i]);
  });
}

double same_rise(double time_h, double from_c, double to_c, const Kitchen& kitchen) {
  double out = 0;
  same_rise(Values(time_h), Values(from_c), Values(to_c), {&out, 1}, kitchen);
  return out;
}

}  // namespace ferment
