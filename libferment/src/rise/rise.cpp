// The array functions run as passes over blocks; each pass is a short loop over one generic formula. A scalar call
// is an array of one.
#include <ferment/rise/rise.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>

#include <boost/math/tools/toms748_solve.hpp>

#include <ferment/base/error.hpp>
#include <ferment/clock/speed.hpp>
#include <ferment/clock/temperature_law.hpp>

#include "base/blocks.hpp"
#include "base/indexed.hpp"
#include "base/loops.hpp"
#include "base/text.hpp"
#include "clock/speed_pass.hpp"
#include "clock/temperature_law_formula.hpp"
#include "dough/gas_formula.hpp"
#include "dough/solutes_formula.hpp"
#include "dough/volume_formula.hpp"
#include "dough/yeast_formula.hpp"

namespace ferment {
namespace {

using Buffer = std::array<double, block_size>;
constexpr double unreachable_target = 0;  ///< no rise that can be asked for takes no work
constexpr double never = std::numeric_limits<double>::infinity();

/// The parameters that the loops read, the same for all scenarios of a call. Loops take them by value: a store through
/// an output pointer could otherwise change them, and the loop would not vectorise.
struct Constants {
  formula::GasCurve<double> curve;
  double dry_matter_share, lean_capacity, void_fraction, density, onset, limit;
  formula::SoluteRule solutes;

  Constants(const Kitchen& kitchen, Yeast yeast)
      : curve(kitchen, start_up_h(yeast, kitchen)), dry_matter_share(formula::dry_matter_share(yeast)),
        lean_capacity(kitchen.gas_capacity), void_fraction(kitchen.void_fraction), density(kitchen.gas_free_density),
        onset(kitchen.retention_onset), limit(kitchen.retention_limit), solutes(kitchen) {}
};

/// One block of scenarios: inputs by pointer, intermediate results in place.
struct Block {
  const double *dough_c, *yeast, *salt, *water, *sugar, *gluten, *pressure;
  Buffer water_activity, speed;
  Buffer mixed_air, capacity;  ///< mmol per 100 g flour: air after mixing; CO2 capacity of the water
  Buffer dose, per_dose;       ///< gassing dry matter, g per 100 g flour, and its reciprocal
  Buffer cells_per_ratio;      ///< mmol of cell gas per mixed volume of growth
};

/// A call's inputs, checked.
class Scenarios {
 public:
  Scenarios(const Doughs& doughs, std::size_t n, const Kitchen& kitchen)
      : law_(law_of(kitchen)), dough_c_((require_doughs(doughs, n), doughs.dough_c), n),
        yeast_(doughs.yeast_percent, n), salt_(doughs.salt_percent, n), water_(doughs.water_percent, n),
        sugar_(doughs.sugar_percent, n), gluten_(doughs.gluten_percent, n),
        pressures_(air_pressures(doughs.altitude_m)), pressure_(pressures_of(doughs.altitude_m), n) {}

  const TemperatureLaw& law() const { return law_; }
  void point(Block& b, std::size_t start) const {
    b.dough_c = dough_c_.at(start);
    b.yeast = yeast_.at(start);
    b.salt = salt_.at(start);
    b.water = water_.at(start);
    b.sugar = sugar_.at(start);
    b.gluten = gluten_.at(start);
    b.pressure = pressure_.at(start);
  }

 private:
  static void require_doughs(const Doughs& doughs, std::size_t n) {
    require_column(field::dough_c, doughs.dough_c, n);
    if (!doughs.yeast_percent.is_single() && doughs.yeast_percent.size() != n)
      require_column(field::yeast_percent, doughs.yeast_percent, n);
    require_yeast(doughs.yeast_percent, doughs.yeast);
    require_column(field::salt_percent, doughs.salt_percent, n);
    require_column(field::water_percent, doughs.water_percent, n);
    require_column(field::sugar_percent, doughs.sugar_percent, n);
    require_column(field::gluten_percent, doughs.gluten_percent, n);
    require_column(field::altitude_m, doughs.altitude_m, n);
  }

  /// Air pressures of many altitudes; most calls have one kitchen.
  static std::vector<double> air_pressures(const Values& altitude_m) {
    std::vector<double> pressures(altitude_m.is_single() ? 0 : altitude_m.size());
    for (std::size_t i = 0; i < pressures.size(); ++i) pressures[i] = formula::air_pressure(altitude_m[i]);
    return pressures;
  }
  Values pressures_of(const Values& altitude_m) const {
    return altitude_m.is_single() ? Values(formula::air_pressure(altitude_m[0])) : Values(pressures_);
  }

  TemperatureLaw law_;
  Column<block_size> dough_c_, yeast_, salt_, water_, sugar_, gluten_;
  std::vector<double> pressures_;
  Column<block_size> pressure_;
};

// The loops are kept short on purpose: each is one chain of dependent operations, and several turns of a short loop
// run at once in a processor that reorders instructions, of a long one none.

FERMENT_WIDE_LOOPS void water_and_vapour(Block& b, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) b.capacity[i] = formula::log_co2_solubility(b.dough_c[i]);
  for (std::size_t i = 0; i < n; ++i) b.capacity[i] = math::exp(b.capacity[i]);
  for (std::size_t i = 0; i < n; ++i) b.mixed_air[i] = formula::saturation_pressure(b.dough_c[i]);
}

FERMENT_WIDE_LOOPS void cell_gas(Block& b, Constants c, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    const auto air =
        formula::cell_air(b.dough_c[i], b.pressure[i], b.water_activity[i], b.water[i], b.mixed_air[i], b.capacity[i]);
    const double dough_g = 100 + b.water[i] + b.salt[i] + b.sugar[i] + b.yeast[i];
    const double mixed_volume = dough_g / (c.density * (1 - c.void_fraction));
    b.cells_per_ratio[i] = mixed_volume / air.molar_volume;
    b.mixed_air[i] = b.cells_per_ratio[i] * c.void_fraction;
    b.capacity[i] = air.capacity;
    b.dose[i] = c.dry_matter_share * b.yeast[i];
    b.per_dose[i] = 1 / b.dose[i];
  }
}

/// Everything before gas and time: speed and the air and water of the dough.
void prepare(Block& b, const TemperatureLaw& law, const Constants& c, std::size_t n) {
  const SoluteBlock solutes{b.salt, b.water, b.sugar};
  water_activities(solutes, b.water_activity.data(), n);
  temperature_factors(law, b.dough_c, b.speed.data(), n);
  times_solute_factors(solutes, b.water_activity.data(), c.solutes, b.speed.data(), n);
  water_and_vapour(b, n);
  cell_gas(b, c, n);
}

/// rise → hours at full rate that the gas takes; 0 where the dough cannot hold or make it.
FERMENT_WIDE_LOOPS void full_rate_hours(const Block& b, Constants c, const double* rise_percent, double* target,
                                        std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    const auto retention = formula::retention(c.onset, c.limit, b.gluten[i], 1.0);
    const double growth = rise_percent[i] / 100;
    const double cells = formula::free_growth(growth, retention) * b.cells_per_ratio[i];
    target[i] = math::select(growth < retention.limit - 1,
                             formula::held_for_cells(cells, b.mixed_air[i], b.capacity[i]), never);
  }
  for (std::size_t i = 0; i < n; ++i) {
    const double gas = target[i];
    const double capacity = formula::gas_capacity(c.lean_capacity, b.sugar[i]);
    target[i] =
        math::select(gas < capacity, formula::work_for_gas(gas, capacity, c.curve) * b.per_dose[i], unreachable_target);
  }
}

FERMENT_WIDE_LOOPS void start(Constants c, const double* target, double* y, std::size_t n) {
  std::size_t late = 0;
  for (std::size_t i = 0; i < n; ++i) late += target[i] * c.curve.per_start_up >= formula::late_from;
  if (late == n) {
    for (std::size_t i = 0; i < n; ++i)
      y[i] = c.curve.start_up * formula::start_up_inverse_in_loops<true>(target[i] * c.curve.per_start_up);
    return;
  }
  for (std::size_t i = 0; i < n; ++i)
    y[i] = c.curve.start_up * formula::start_up_inverse_in_loops(target[i] * c.curve.per_start_up);
}

/// One Halley step for all that are open (1, else 0); returns how many still are. A settled scenario is left alone, so
/// that its digits do not depend on its neighbours.
FERMENT_WIDE_LOOPS std::size_t settle(const Block& b, Constants c, const double* target, double* y, double* hours,
                                      double* open, std::size_t n) {
  std::size_t unsettled = 0;
  Buffer grown_hours, first, second;
  for (std::size_t i = 0; i < n; ++i) {
    const auto done = formula::growth_work(math::larger(y[i], c.curve.lag), b.dose[i], c.curve);
    first[i] = done.work;
    second[i] = done.spent;
  }
  for (std::size_t i = 0; i < n; ++i) {
    const auto growth = formula::growing_hours({first[i], second[i]}, b.dose[i], b.per_dose[i], c.curve);
    grown_hours[i] = growth.hours;
    first[i] = growth.first;
    second[i] = growth.second;
  }
  for (std::size_t i = 0; i < n; ++i) {
    const double from = math::larger(y[i], c.curve.lag);
    const auto next = formula::settle(from, target[i], {grown_hours[i], first[i], second[i]}, c.curve);
    const bool growing = y[i] > c.curve.lag;
    const double leftover = math::select(growing, next.leftover, 0.0);
    const double stepped = math::select(growing, next.hours, y[i]);
    hours[i] = math::select(open[i] > 0, stepped, hours[i]);
    y[i] = math::select(growing, math::larger(next.full_rate_hours, c.curve.lag), y[i]);
    const bool still_open = (open[i] > 0) & (leftover > formula::settled_share * hours[i]);
    open[i] = math::select(still_open, 1.0, 0.0);
    unsettled += still_open;
  }
  return unsettled;
}

FERMENT_WIDE_LOOPS void by_speed(const Block& b, const double* target, double* hours, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    hours[i] = math::select((target[i] > unreachable_target) & (b.speed[i] > 0), hours[i] / b.speed[i], never);
  }
}

void hours_of_block(Block& b, const TemperatureLaw& law, const Constants& c, const double* rise_percent, double* hours,
                    std::size_t n) {
  Buffer target, y, open;
  prepare(b, law, c, n);
  full_rate_hours(b, c, rise_percent, target.data(), n);
  start(c, target.data(), y.data(), n);
  std::fill_n(open.begin(), n, 1.0);
  std::fill_n(hours, n, 0.0);
  int steps = 0;
  while (settle(b, c, target.data(), y.data(), hours, open.data(), n) > 0) {
    if (++steps > formula::most_settling_steps) {
      throw NotConverged("the hours to a rise did not settle", {.advice = "please report the input that led here"});
    }
  }
  by_speed(b, target.data(), hours, n);
}

FERMENT_WIDE_LOOPS void rises(const Block& b, Constants c, const double* time_h, double* rise_percent, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    const double work = formula::work_after(b.speed[i] * time_h[i], b.dose[i], c.curve);
    const double gas = formula::gas_for_work(work, formula::gas_capacity(c.lean_capacity, b.sugar[i]), c.curve);
    const double cells = formula::in_cells(gas, b.mixed_air[i], b.capacity[i]);
    const auto retention = formula::retention(c.onset, c.limit, b.gluten[i], 1.0);
    rise_percent[i] = 100 * formula::held_growth(cells / b.cells_per_ratio[i], retention);
  }
}

Doughs array_of_one(const Dough& d) {
  return {d.dough_c,       d.yeast_percent, d.yeast,          d.salt_percent,
          d.water_percent, d.sugar_percent, d.gluten_percent, d.altitude_m};
}

bool all_single(const Doughs& d) {
  return d.dough_c.is_single() && d.yeast_percent.is_single() && d.salt_percent.is_single() &&
         d.water_percent.is_single() && d.sugar_percent.is_single() && d.gluten_percent.is_single() &&
         d.altitude_m.is_single();
}

Dough one_of(const Doughs& d, std::size_t i) {
  return {d.dough_c[i],       d.yeast_percent[i],  d.yeast,        d.salt_percent[i], d.water_percent[i],
          d.sugar_percent[i], d.gluten_percent[i], d.altitude_m[i]};
}

/// Why the clock of a dough stands still, as an error to throw.
OutsideModel stands_still(const Dough& dough, const Kitchen& kitchen, ErrorDetail detail) {
  if (temperature_factor(law_of(kitchen), dough.dough_c) >=
      std::numeric_limits<double>::min()) {  // below it, hours overflow
    detail.path = "salt_percent";
    detail.value = dough.salt_percent;
    detail.advice = "use less salt or sugar, or more water";
    return OutsideModel("a dough with " + number(dough.salt_percent) + " % salt and " + number(dough.sugar_percent) +
                            " % sugar in " + number(dough.water_percent) +
                            " % water is too dense for the yeast, which stands still",
                        detail);
  }
  detail.path = "dough_c";
  detail.value = dough.dough_c;
  detail.advice = "choose a temperature between the limits of the kitchen's law";
  return OutsideModel("at a dough temperature of " + number(dough.dough_c) +
                          " °C the yeast stands still and no rise is ever reached",
                      detail);
}

/// `scenarios` are the rises if they differ, else the answers: what tells an array of one from a single value.
[[noreturn]] void refuse_unreachable(double rise_percent, const Dough& dough, const Kitchen& kitchen,
                                     const Values& scenarios, std::size_t first, std::size_t count) {
  ErrorDetail detail;
  add_index(detail, scenarios, first, count);
  const double reach = reachable_rise(dough, kitchen);
  // A rise within reach that takes for ever is a matter of the clock.
  if (rise_percent < reach * (1 - 1e-9) ||
      !(speed(dough.dough_c, dough.salt_percent, dough.water_percent, dough.sugar_percent, kitchen) > 0)) {
    throw stands_still(dough, kitchen, detail);
  }
  const double held =
      100 * (formula::retention(kitchen.retention_onset, kitchen.retention_limit, dough.gluten_percent, 1.0).limit - 1);
  const bool holds_less = held - reach < 1;  // percent: else its sugars run out first
  detail.path = "rise_percent";
  detail.value = rise_percent;
  detail.low = 0.0;
  detail.high = reach;
  detail.advice = holds_less ? "ask for less" : "add sugar or ask for less";
  throw NoSolution("a rise of " + number(rise_percent) + " % is never reached: this dough can " +
                       (holds_less ? "hold" : "make") + " gas for a rise below " + number(reach) + " %",
                   detail);
}

}  // namespace

void hours_to_rise(const Values& rise_percent, const Doughs& doughs, std::span<double> out, const Kitchen& kitchen,
                   Unreachable unreachable) {
  const std::size_t n = out.size();
  const Scenarios scenarios(doughs, n, kitchen);
  const Constants constants(kitchen, doughs.yeast);
  Block block;
  for_column<block_size>(field::rise_percent, rise_percent, n,
                         [&](std::size_t first, const double* rise, std::size_t count) {
                           scenarios.point(block, first);
                           hours_of_block(block, scenarios.law(), constants, rise, out.data() + first, count);
                         });
  if (unreachable == Unreachable::infinity) return;
  const Lost lost = lost_in(out);
  if (lost.count == 0) return;
  const bool is_one = rise_percent.is_single() && all_single(doughs);
  refuse_unreachable(rise_percent[lost.first], one_of(doughs, lost.first), kitchen, is_one ? rise_percent : Values(out),
                     lost.first, lost.count);
}

double hours_to_rise(double rise_percent, const Dough& dough, const Kitchen& kitchen) {
  return single([&](std::span<double> out) { hours_to_rise(Values(rise_percent), array_of_one(dough), out, kitchen); });
}

void rise_after(const Values& time_h, const Doughs& doughs, std::span<double> out, const Kitchen& kitchen) {
  const std::size_t n = out.size();
  const Scenarios scenarios(doughs, n, kitchen);
  const Constants constants(kitchen, doughs.yeast);
  Block block;
  for_column<block_size>(field::time_h, time_h, n, [&](std::size_t first, const double* time, std::size_t count) {
    scenarios.point(block, first);
    prepare(block, scenarios.law(), constants, count);
    rises(block, constants, time, out.data() + first, count);
  });
}

double rise_after(double time_h, const Dough& dough, const Kitchen& kitchen) {
  return single([&](std::span<double> out) { rise_after(Values(time_h), array_of_one(dough), out, kitchen); });
}

double reachable_rise(const Dough& dough, const Kitchen& kitchen) {
  const Constants constants(kitchen, dough.yeast);
  const Scenarios scenarios(array_of_one(dough), 1, kitchen);
  Block b;
  scenarios.point(b, 0);
  prepare(b, scenarios.law(), constants, 1);
  const double all_gas = formula::gas_capacity(constants.lean_capacity, dough.sugar_percent);
  const double cells = formula::in_cells(all_gas, b.mixed_air[0], b.capacity[0]);
  const auto retention = formula::retention(constants.onset, constants.limit, dough.gluten_percent, 1.0);
  return 100 * (formula::held_ratio(1 + cells / b.cells_per_ratio[0], retention) - 1);
}

double yeast_for_rise(double rise_percent, double target_h, const Dough& dough, const Kitchen& kitchen) {
  require(field::target_h, target_h);
  const double per_instant = formula::compressed_ratio(dough.yeast) / formula::compressed_ratio(Yeast::instant);
  const double least = std::log(field::instant_equivalent_percent.low * per_instant * (1 + 1e-12));
  double most = std::log(field::instant_equivalent_percent.high * per_instant * (1 - 1e-12));
  Dough tried = dough;
  const auto late_by = [&](double log_dose) {
    tried.yeast_percent = std::exp(log_dose);
    return std::log(hours_to_rise(rise_percent, tried, kitchen) / target_h);
  };
  // Much yeast takes room that little yeast does not: a rise near the dough's limit is beyond it with the largest dose.
  const auto reaches = [&](double log_dose) {
    tried.yeast_percent = std::exp(log_dose);
    return rise_percent < reachable_rise(tried, kitchen);
  };
  constexpr double step = 0.02;  // of ln dose
  const double largest = most;
  while (!reaches(most) && most > least + step) most -= step;
  if (!reaches(most)) most = largest;  // refused with the words for the largest dose
  const double late_least = late_by(least);
  const double late_most = late_by(most);
  constexpr double same_time = 1e-9;  // of the hours: the ends of the table belong to it
  if (late_least < -same_time || late_most > same_time) {
    const double slowest = target_h * std::exp(late_least);
    const double fastest = target_h * std::exp(late_most);
    throw NoSolution("no yeast dose gives this rise in " + number(target_h) + " h: it takes " + number(fastest) +
                         " h with " + number(std::exp(most)) + " % and " + number(slowest) + " h with " +
                         number(std::exp(least)) + " %",
                     {.path = "target_h",
                      .value = target_h,
                      .low = fastest,
                      .high = slowest,
                      .advice = "choose a time between, or another dough temperature"});
  }
  if (late_least <= 0) return std::exp(least);
  if (late_most >= 0) return std::exp(most);
  std::uintmax_t evaluations = 100;
  const auto close = [](double a, double b) { return std::abs(a - b) <= 4e-16 * std::abs(a + b) + 1e-15; };
  const auto bracket =
      boost::math::tools::toms748_solve(late_by, least, most, late_least, late_most, close, evaluations);
  return std::exp((bracket.first + bracket.second) / 2);
}

Explanation explain(double rise_percent, const Dough& dough, const Kitchen& kitchen) {
  Explanation result;
  result.hours = hours_to_rise(rise_percent, dough, kitchen);  // refuses what is to be refused, before anything else
  Dough walked{.dough_c = formula::reference_c, .yeast_percent = 1};
  if (const double reach = reachable_rise(walked, kitchen); rise_percent >= reach) {
    throw NoSolution(
        "this dough rises by " + number(rise_percent) + " % in " + number(result.hours) +
            " h, but the reference dough, from which the factors count, rises by less than " + number(reach) + " %",
        {.path = "rise_percent", .value = rise_percent, .low = 0.0, .high = reach, .advice = "explain a smaller rise"});
  }
  result.reference_h = hours_to_rise(rise_percent, walked, kitchen);
  double hours = result.reference_h;
  const auto step = [&](const char* name, double from, double to) {
    // A change after which the rise is out of reach for the moment counts together with the next one.
    double next = 0;
    hours_to_rise(Values(rise_percent), array_of_one(walked), {&next, 1}, kitchen, Unreachable::infinity);
    if (!(next < never)) next = hours;
    result.factors.push_back({name, from, to, next / hours});
    hours = next;
  };
  const auto change = [&](const char* name, auto Dough::*member) {
    const double from = walked.*member;
    walked.*member = dough.*member;
    step(name, from, dough.*member);
  };
  walked.yeast = dough.yeast;
  change("yeast", &Dough::yeast_percent);
  change("temperature", &Dough::dough_c);
  change("salt", &Dough::salt_percent);
  change("water", &Dough::water_percent);
  change("sugar", &Dough::sugar_percent);
  change("gluten", &Dough::gluten_percent);
  change("altitude", &Dough::altitude_m);
  return result;
}

double over_proof_ratio(const Dough& dough, Standing standing, bool final_proof, double start_ratio,
                        const Kitchen& kitchen) {
  require_parameters(kitchen);
  require(field::gluten_percent, dough.gluten_percent);
  require(field::volume_ratio, start_ratio);
  const double limit =
      formula::retention(kitchen.retention_onset, kitchen.retention_limit, dough.gluten_percent, 1.0).limit;
  const bool in_tin = standing == Standing::tin;
  const double share = limit * (in_tin ? kitchen.over_proof_tin : kitchen.over_proof_free);
  if (!final_proof) return share;
  const double rise_percent = in_tin ? kitchen.over_proof_rise_tin_percent : kitchen.over_proof_rise_free_percent;
  return math::smaller(share, start_ratio * (1 + rise_percent / 100));
}

template <>
const Names& names_of<Standing>() {
  static constexpr std::string_view list[] = {"tin", "free"};
  static constexpr Names names{"standing", "standing", list};
  return names;
}

template <>
const Form& form_of<Dough>() {
  using D = Dough;
  static const Form form =
      made_form<D>("Dough", "One dough at one temperature, for the functions between two moments of a process.",
                   {.dough_c = 0, .yeast_percent = 0},
                   {row<&D::dough_c>(field::dough_c), row<&D::yeast_percent>(field::yeast_percent),
                    row<&D::yeast>("yeast", "its kind"), row<&D::salt_percent>(field::salt_percent),
                    row<&D::water_percent>(field::water_percent), row<&D::sugar_percent>(field::sugar_percent),
                    row<&D::gluten_percent>(field::gluten_percent), row<&D::altitude_m>(field::altitude_m)});
  return form;
}

template <>
const Form& form_of<Factor>() {
  using F = Factor;
  static const Form form =
      made_form<F>("Factor", "Which factor made how much of a time.", {},
                   {row<&F::name>("name", "yeast, temperature, salt, water, sugar, gluten or altitude"),
                    row<&F::from_value>("from_value", "value in the reference dough"),
                    row<&F::to_value>("to_value", "value in this dough"), row<&F::times>("times", "hours times this")});
  return form;
}

template <>
const Form& form_of<Explanation>() {
  using E = Explanation;
  static const Form form =
      made_form<E>("Explanation", "The factors that made a time.", {},
                   {row<&E::reference_h>("reference_h",
                                         "hours of the same rise in the reference dough with 1 % instant yeast"),
                    row<&E::factors>("factors", "one change after the other"),
                    row<&E::hours>("hours", "reference_h times all factors")});
  return form;
}

}  // namespace ferment
