#include <ferment/clock/temperature_law.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <ferment/base/error.hpp>

#include "base/dual.hpp"
#include "base/loops.hpp"
#include "base/text.hpp"
#include "clock/line.hpp"
#include "clock/speed_pass.hpp"
#include "clock/temperature_law_formula.hpp"

namespace ferment {
namespace {

/// Beyond this a temperature coefficient says nothing any more.
constexpr double largest_q10 = 1e6;

/// The rows of the parameter table that the cardinal law reads, for the usual case of the check below.
struct CardinalRows {
  const Parameter &t_min, &t_opt, &above;
  CardinalRows()
      : t_min(row(&Kitchen::t_min_c)), t_opt(row(&Kitchen::t_opt_c)), above(row(&Kitchen::t_max_above_opt_k)) {}
  static const Parameter& row(double Kitchen::*value) {
    return *std::find_if(parameters().begin(), parameters().end(),
                         [value](const Parameter& p) { return p.value == value; });
  }
  bool accept(const Cardinal& law) const {
    const double k = law.t_max_c - law.t_opt_c;
    return t_min.low <= law.t_min_c && law.t_min_c <= t_min.high && t_opt.low <= law.t_opt_c &&
           law.t_opt_c <= t_opt.high && above.low <= k && k <= above.high && law.t_opt_c - law.t_min_c > k;
  }
};

template <class Factor>
FERMENT_INLINE void each(const Factor& factor, const double* t, double* out, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) out[i] = factor(t[i]);
}

// A clone cannot be a template: one loop per law.
FERMENT_WIDE_LOOPS void loop(const formula::CardinalFactor<double>& f, const double* t, double* out, std::size_t n) {
  each(f, t, out, n);
}
FERMENT_WIDE_LOOPS void loop(const formula::SquareRootFactor<double>& f, const double* t, double* out, std::size_t n) {
  each(f, t, out, n);
}
FERMENT_WIDE_LOOPS void loop(const formula::ArrheniusFactor<double>& f, const double* t, double* out, std::size_t n) {
  each(f, t, out, n);
}
FERMENT_WIDE_LOOPS void loop(const formula::ConstantQ10Factor<double>& f, const double* t, double* out, std::size_t n) {
  each(f, t, out, n);
}

}  // namespace

void require_law(const TemperatureLaw& law) {
  static const CardinalRows rows;
  const auto* cardinal = std::get_if<Cardinal>(&law);
  if (cardinal == nullptr || !rows.accept(*cardinal)) with_law(Kitchen{}, law);
}

TemperatureLaw law_of(const Kitchen& kitchen) {
  require_parameters(kitchen);
  return law_of_checked(kitchen);
}

TemperatureLaw law_of_checked(const Kitchen& kitchen) {
  switch (kitchen.law) {
    case Law::cardinal: return Cardinal{kitchen.t_min_c, kitchen.t_opt_c, kitchen.t_opt_c + kitchen.t_max_above_opt_k};
    case Law::square_root: return SquareRoot{kitchen.root_t_min_c, kitchen.root_t_max_c, kitchen.root_decline_per_k};
    case Law::arrhenius: return Arrhenius{kitchen.activation_energy_kj};
    case Law::constant_q10: return ConstantQ10{kitchen.q10};
  }
  name_of(kitchen.law);  // throws
  return {};
}

Kitchen with_law(Kitchen kitchen, const TemperatureLaw& law) {
  if (const auto* cardinal = std::get_if<Cardinal>(&law)) {
    kitchen.law = Law::cardinal;
    kitchen.t_min_c = cardinal->t_min_c;
    kitchen.t_opt_c = cardinal->t_opt_c;
    kitchen.t_max_above_opt_k = cardinal->t_max_c - cardinal->t_opt_c;
  } else if (const auto* root = std::get_if<SquareRoot>(&law)) {
    kitchen.law = Law::square_root;
    kitchen.root_t_min_c = root->t_min_c;
    kitchen.root_t_max_c = root->t_max_c;
    kitchen.root_decline_per_k = root->decline_per_k;
  } else if (const auto* arrhenius = std::get_if<Arrhenius>(&law)) {
    kitchen.law = Law::arrhenius;
    kitchen.activation_energy_kj = arrhenius->activation_energy_kj;
  } else if (const auto* constant = std::get_if<ConstantQ10>(&law)) {
    kitchen.law = Law::constant_q10;
    kitchen.q10 = constant->q10;
  }
  require_parameters(kitchen);
  return kitchen;
}

double temperature_factor(const TemperatureLaw& law, double temperature_c) {
  double out = 0;
  require(field::temperature_c, temperature_c);  // as a single value: no index in the message
  temperature_factor(law, std::span<const double>(&temperature_c, 1), std::span<double>(&out, 1));
  return out;
}

void temperature_factor(const TemperatureLaw& law, std::span<const double> temperature_c, std::span<double> out) {
  require_law(law);
  require(field::temperature_c, temperature_c);
  if (out.size() != temperature_c.size()) {
    throw InvalidInput("out has " + std::to_string(out.size()) + " places for " + std::to_string(temperature_c.size()) +
                       " temperatures");
  }
  temperature_factors(law, temperature_c.data(), out.data(), out.size());
}

void temperature_factors(const TemperatureLaw& checked_law, const double* dough_c, double* factor, std::size_t n) {
  std::visit([&](const auto& kind) { loop(formula::factor_of<double>(kind), dough_c, factor, n); }, checked_law);
}

double local_q10(const TemperatureLaw& law, double temperature_c) {
  if (!(temperature_factor(law, temperature_c) > 0)) {
    throw OutsideModel("at " + number(temperature_c) + " °C this law is zero and has no temperature coefficient",
                       {.path = "temperature_c",
                        .value = temperature_c,
                        .advice = "ask between its lower and upper limits"});
  }
  const Dual factor =
      std::visit([&](const auto& kind) { return formula::factor_of<Dual>(kind)(Dual(temperature_c, 1)); }, law);
  const double q10 = std::exp(10 * factor.slope / factor.value);
  if (!(q10 <= largest_q10)) {
    throw OutsideModel("at " + number(temperature_c) +
                           " °C, so near the lower limit of this law, the temperature coefficient grows without bound",
                       {.path = "temperature_c", .value = temperature_c, .advice = "ask at a warmer temperature"});
  }
  return q10;
}

std::optional<Notice> law_notice(const TemperatureLaw& law, double temperature_c) {
  double low = 0;
  double high = 0;
  std::string name;
  if (std::holds_alternative<ConstantQ10>(law)) {
    low = 15;
    high = 32;
    name = "a constant Q10";
  } else if (std::holds_alternative<Arrhenius>(law)) {
    low = 18;
    high = 32;
    name = "the Arrhenius law";
  } else {
    return std::nullopt;
  }
  if (temperature_c >= low && temperature_c <= high) return std::nullopt;
  return Notice{"law_outside_range",
                Severity::caution,
                {{"dough_c", temperature_c}, {"low", low}, {"high", high}},
                number(temperature_c) + " °C is outside " + number(low) + " to " + number(high) + " °C, where " + name +
                    " is honest; use the cardinal law"};
}

template <>
const Form& form_of<ConstantQ10>() {
  static const Form form =
      made_form<ConstantQ10>("ConstantQ10", "Factor q10^((T - 25)/10). Honest for 15 to 32 °C only.", {},
                             {row<&ConstantQ10::q10>(*find_field("q10"))});
  return form;
}

template <>
const Form& form_of<Arrhenius>() {
  static const Form form =
      made_form<Arrhenius>("Arrhenius",
                           "Factor exp(-(Ea/R)(1/T - 1/298.15 K)), Ea in kJ/mol. Honest for 18 to 32 °C only.", {},
                           {row<&Arrhenius::activation_energy_kj>(*find_field("activation_energy_kj"))});
  return form;
}

template <>
const Form& form_of<SquareRoot>() {
  static const Form form = made_form<SquareRoot>(
      "SquareRoot", "Factor proportional to [(T - Tmin)(1 - exp(c(T - Tmax)))]^2 (Ratkowsky et al. 1983), 0 outside.",
      {},
      {row<&SquareRoot::t_min_c>("t_min_c", *find_field("root_t_min_c")),
       row<&SquareRoot::t_max_c>("t_max_c", *find_field("root_t_max_c")),
       row<&SquareRoot::decline_per_k>("decline_per_k", *find_field("root_decline_per_k"))});
  return form;
}

template <>
const Form& form_of<Cardinal>() {
  static const Form form = made_form<Cardinal>(
      "Cardinal", "Cardinal temperatures with inflexion (Rosso et al. 1993), 0 outside (Tmin, Tmax). The default law.",
      {},
      {row<&Cardinal::t_min_c>(*find_field("t_min_c")), row<&Cardinal::t_opt_c>(*find_field("t_opt_c")),
       row<&Cardinal::t_max_c>("t_max_c", "upper cardinal temperature, °C")});
  return form;
}

}  // namespace ferment
