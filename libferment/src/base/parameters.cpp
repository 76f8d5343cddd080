#include <ferment/base/parameters.hpp>

#include <algorithm>
#include <array>
#include <cmath>

#include <Eigen/Dense>

#include <ferment/base/error.hpp>

#include "base/text.hpp"

namespace ferment {
namespace {

/// A row of the table, and of the form.
template <auto value>
Parameter parameter(std::string_view name, std::string_view label, std::string_view unit, double low, double high,
                    Quantity quantity, Scale scale, double prior_sd, std::string_view meaning,
                    std::string_view source) {
  return {{.name = name,
           .label = label,
           .unit = unit,
           .low = low,
           .high = high,
           .initial = Kitchen{}.*value,
           .quantity = quantity,
           .meaning = meaning,
           .source = source},
          scale,
          prior_sd,
          value,
          forms::Member<value>::access};
}

std::vector<Parameter> make_table() {
  using enum Scale;
  using enum Quantity;
  using K = Kitchen;
  return {
      parameter<&K::t_min_c>(
          "t_min_c", "lower cardinal temperature", "°C", -10, 8, temperature, linear, 1.5,
          "notional temperature below which the clock stands still",
          "Gause 1932 growth series and Slator 1906 temperature coefficients, own fits: −2 to −1.5 °C"),
      parameter<&K::t_opt_c>("t_opt_c", "optimum temperature", "°C", 28, 45, temperature, linear, 2,
                             "temperature at which the clock runs fastest",
                             "White & Munns 1951, J Inst Brewing 57:280: fermentation rises to 40 °C"),
      parameter<&K::t_max_above_opt_k>("t_max_above_opt_k", "upper cardinal temperature above the optimum", "K", 0.5,
                                       15, temperature_difference, logarithmic, 0.3,
                                       "upper cardinal temperature less the optimum",
                                       "Salvadó et al. 2011: growth ends at 45.4 °C"),
      parameter<&K::q10>("q10", "temperature coefficient Q10", "", 1.1, 6, ratio, logarithmic, 0.15,
                         "factor per 10 K of the constant-Q10 law",
                         "own summary of Slator 1906 (from memory) and Gause 1932, 15 to 32 °C"),
      parameter<&K::activation_energy_kj>("activation_energy_kj", "activation energy", "kJ/mol", 5, 150, ratio,
                                          logarithmic, 0.25, "activation energy of the Arrhenius law",
                                          "Slator 1906 (from memory), 20 to 30 °C: 60 ± 15 kJ/mol"),
      parameter<&K::root_t_min_c>("root_t_min_c", "lower limit of the square-root law", "°C", -10, 8, temperature,
                                  fixed, 0, "notional minimum of the square-root law",
                                  "Ratkowsky et al. 1983; value as t_min_c"),
      parameter<&K::root_t_max_c>("root_t_max_c", "upper limit of the square-root law", "°C", 38, 55, temperature,
                                  fixed, 0, "notional maximum of the square-root law",
                                  "Ratkowsky et al. 1983; fitted to Slator 1906 (from memory)"),
      parameter<&K::root_decline_per_k>("root_decline_per_k", "decline of the square-root law", "1/K", 0.05, 2, ratio,
                                        fixed, 0, "c of the square-root law",
                                        "Ratkowsky et al. 1983; fitted to Slator 1906 (from memory)"),
      parameter<&K::aw_min>("aw_min", "lowest water activity", "", 0.80, 0.97, ratio, linear, 0.02,
                            "water activity at which gas production ends",
                            "gas of doughs with 0, 1.5 and 3 % salt (second-hand: Foods 2020, 9:952, and a study "
                            "quoted by a salt maker); growth ends earlier, at 0.90 to 0.92 (from memory)"),
      parameter<&K::gassing_rate>("gassing_rate", "gassing rate", "mmol/(g·h)", 2, 40, ratio, logarithmic, 0.30,
                                  "CO2 per gram of gassing yeast dry matter and hour at the reference dough",
                                  "van Hoek et al. 1998 and dough assays, from memory: 12 to 28 at 30 °C without salt"),
      parameter<&K::start_up_compressed_h>("start_up_compressed_h", "start-up time of compressed yeast", "h", 0.01, 2,
                                           duration, logarithmic, 0.5,
                                           "time constant of the approach to full rate, equivalent hours",
                                           "range from memory: 0.1 to 0.3 h"),
      parameter<&K::start_up_instant_h>("start_up_instant_h", "start-up time of instant yeast", "h", 0.01, 2, duration,
                                        logarithmic, 0.5,
                                        "time constant of the approach to full rate, equivalent hours",
                                        "range from memory: 0.1 to 0.3 h"),
      parameter<&K::start_up_active_dry_h>("start_up_active_dry_h", "start-up time of wetted active dry yeast", "h",
                                           0.01, 2, duration, logarithmic, 0.5,
                                           "time constant of the approach to full rate, equivalent hours",
                                           "range from memory: 0.1 to 0.3 h"),
      parameter<&K::start_up_active_dry_unwetted_h>("start_up_active_dry_unwetted_h",
                                                    "start-up time of active dry yeast stirred in dry", "h", 0.01, 2,
                                                    duration, logarithmic, 0.5,
                                                    "time constant of the approach to full rate, equivalent hours",
                                                    "from memory: longer when not wetted first"),
      parameter<&K::growth_rate>("growth_rate", "growth rate", "1/h", 0.02, 1, ratio, logarithmic, 0.3,
                                 "specific growth rate of the yeast per equivalent hour",
                                 "fit to secondary dough data; 0.30 1/h at 30 °C with salt"),
      parameter<&K::growth_lag_h>("growth_lag_h", "lag before growth", "h", 0.2, 12, duration, logarithmic, 0.35,
                                  "equivalent hours before the yeast begins to grow",
                                  "fit to secondary dough data: 2.4 h at 27 °C"),
      parameter<&K::growth_increment>("growth_increment", "growth increment", "g per 100 g flour", 0.01, 2, ratio,
                                      logarithmic, 0.5, "yeast dry matter a dough can add, whatever the dose",
                                      "fit to secondary dough data: an increment, not a capacity"),
      parameter<&K::gas_capacity>(
          "gas_capacity", "gas capacity of lean dough", "mmol per 100 g flour", 10, 120, ratio, logarithmic, 0.20,
          "CO2 the flour's own sugars can give",
          "sugars of flour from memory (Kent & Evers): 700 to 1300 mL per 100 g; the warmth of sponges and "
          "the volume of standard baking tests ask for the upper half"),
      parameter<&K::retention_onset>("retention_onset", "volume at which gas begins to leak", "times the mixed volume",
                                     1.2, 5, ratio, linear, 0.3,
                                     "volume over the volume just after mixing up to which all gas is held",
                                     "range from memory: 2.2 to 3, weak to strong flour"),
      parameter<&K::retention_limit>("retention_limit", "largest volume", "times the mixed volume", 1.5, 9, ratio,
                                     linear, 0.5, "volume over the volume just after mixing that is never passed",
                                     "range from memory: 4 to 5.5"),
      parameter<&K::void_fraction>("void_fraction", "void after mixing", "of volume", 0.005, 0.3, ratio, linear, 0.02,
                                   "share of air in the dough just after mixing",
                                   "Campbell et al. 1993; range from memory 3 to 10 %"),
      parameter<&K::gas_free_density>("gas_free_density", "gas-free density", "g/mL", 1.0, 1.5, ratio, linear, 0.015,
                                      "density of the dough without gas", "from memory: 1.24 to 1.28 g/mL"),
      parameter<&K::water_exponent>("water_exponent", "exponent of the water", "", 0, 1.5, ratio, linear, 0.3,
                                    "speed goes with (water/65 %) to this power, beside water activity",
                                    "common practice, no source: stiff dough is slower, slack dough faster; more would "
                                    "over-ripen liquid preferments"),
      parameter<&K::high_sugar_factor>("high_sugar_factor", "speed of a very sweet dough", "times", 0.1, 5, ratio,
                                       logarithmic, 0.5,
                                       "speed of doughs with 20 % sugar and more over what water activity makes it; "
                                       "phased in from 10 %",
                                       "hardly known: ordinary and osmotolerant yeasts differ by as much"),
      parameter<&K::kept_by_fold>("kept_by_fold", "gas kept by folding", "of the gas in the cells", 0, 1, ratio, logit,
                                  0.6, "share of the cells' gas that a fold leaves", "common practice, no source"),
      parameter<&K::kept_by_divide>("kept_by_divide", "gas kept by dividing", "of the gas in the cells", 0, 1, ratio,
                                    logit, 0.8, "share of the cells' gas that dividing leaves",
                                    "from memory: dividing and moulding together expel 50 to 90 %"),
      parameter<&K::kept_by_round>("kept_by_round", "gas kept by rounding", "of the gas in the cells", 0, 1, ratio,
                                   logit, 0.6, "share of the cells' gas that rounding leaves",
                                   "from memory: dividing and moulding together expel 50 to 90 %"),
      parameter<&K::kept_by_mould>("kept_by_mould", "gas kept by moulding by hand", "of the gas in the cells", 0, 1,
                                   ratio, logit, 0.5, "share of the cells' gas that moulding by hand leaves",
                                   "from memory: dividing and moulding together expel 50 to 90 %"),
      parameter<&K::kept_by_machine_mould>("kept_by_machine_mould", "gas kept by moulding by machine",
                                           "of the gas in the cells", 0, 1, ratio, logit, 0.5,
                                           "share of the cells' gas that moulding by machine leaves",
                                           "from memory: dividing and moulding together expel 50 to 90 %"),
      parameter<&K::piece_heat_loss_factor>("piece_heat_loss_factor", "heat loss of the pieces", "times", 0.2, 5, ratio,
                                            logarithmic, 0.2,
                                            "heat loss of every piece over what its shape and cover give, unless it "
                                            "was measured",
                                            "own estimate: still air and contact are known to a fifth"),
      parameter<&K::over_proof_tin>("over_proof_tin", "over-proof limit in a tin or tub", "of the largest volume", 0.1,
                                    1, ratio, fixed, 0,
                                    "share of the largest volume at which dough in a tin or tub is over-proofed",
                                    "common practice, no source: 85 to 90 %"),
      parameter<&K::over_proof_free>("over_proof_free", "over-proof limit standing free", "of the largest volume", 0.1,
                                     1, ratio, fixed, 0,
                                     "share of the largest volume at which dough standing free is over-proofed",
                                     "common practice, no source"),
      parameter<&K::over_proof_bulk>("over_proof_bulk", "over-proof limit of a bulk that ends by time",
                                     "of the largest volume", 0.1, 1, ratio, fixed, 0,
                                     "share of the largest volume at which a bulk that ends by time is over-proofed",
                                     "common practice, no source"),
      parameter<&K::over_proof_rise_free_percent>("over_proof_rise_free_percent",
                                                  "over-proof limit of a final proof standing free", "%", 10, 400,
                                                  percent, fixed, 0, "rise at which a final proof is over-proofed",
                                                  "common practice, no source"),
      parameter<&K::over_proof_rise_tin_percent>("over_proof_rise_tin_percent",
                                                 "over-proof limit of a final proof in a tin", "%", 10, 400, percent,
                                                 fixed, 0, "rise at which a final proof is over-proofed",
                                                 "common practice, no source"),
      parameter<&K::bake_sd>("bake_sd", "spread from bake to bake", "of ln gassing rate", 0, 1, ratio, fixed, 0,
                             "sd of the yeast's part from bake to bake",
                             "weighing, flour and age of the yeast; a collaborative test of one yeast has 0.05 "
                             "(AACC 89-01, from memory)"),
      parameter<&K::model_sd>("model_sd", "spread of the model", "of ln gassing rate", 0, 1, ratio, fixed, 0,
                              "sd of what the model gets wrong from bake to bake",
                              "own estimate from simulated kitchens"),
      parameter<&K::packet_sd>("packet_sd", "spread from packet to packet", "of ln gassing rate", 0, 1, ratio, fixed, 0,
                               "sd of the yeast's part from one packet of it to the next",
                               "own estimate: half of what yeasts differ by"),
      parameter<&K::log_time_scale>("log_time_scale", "noise of a logged time", "of ln time", 0.005, 1, ratio, fixed, 0,
                                    "scale of the noise of the logged time to a rise, Student's t with 4 degrees of "
                                    "freedom; its sd is 1.41 times that",
                                    "own estimate: a look is right to a few minutes of the first hour"),
  };
}

void require_covariance(const Kitchen& kitchen, const std::vector<Parameter>& learned) {
  if (kitchen.covariance.empty()) return;
  const auto n = learned.size();
  if (kitchen.covariance.size() != n * n) {
    throw InvalidInput("covariance has " + std::to_string(kitchen.covariance.size()) + " numbers",
                       {.path = "covariance",
                        .advice = "it must have " + std::to_string(n * n) + " (" + std::to_string(n) +
                                  " learnable parameters squared), or none for the prior"});
  }
  const auto size = static_cast<Eigen::Index>(n);
  const Eigen::Map<const Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>> matrix(
      kitchen.covariance.data(), size, size);
  if (!matrix.allFinite())
    throw InvalidInput("covariance holds a value that is not a finite number", {.path = "covariance"});
  const double largest = matrix.cwiseAbs().maxCoeff();
  if ((matrix - matrix.transpose()).cwiseAbs().maxCoeff() > 1e-9 * largest) {
    throw InvalidInput("covariance is not symmetric",
                       {.path = "covariance", .advice = "give the same number above and below the diagonal"});
  }
  const double smallest =
      Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(matrix, Eigen::EigenvaluesOnly).eigenvalues().minCoeff();
  if (smallest < -1e-9 * largest) {
    throw InvalidInput(
        "covariance is not positive semi-definite: its smallest eigenvalue is " + number(smallest),
        {.path = "covariance", .value = smallest, .low = 0.0, .advice = "no set of uncertainties has such a matrix"});
  }
}

std::vector<double> diagonal(const std::vector<double>& sds) {
  const std::size_t n = sds.size();
  std::vector<double> matrix(n * n, 0.0);
  for (std::size_t i = 0; i < n; ++i) matrix[i * n + i] = sds[i] * sds[i];
  return matrix;
}

}  // namespace

std::span<const Parameter> parameters() {
  static const std::vector<Parameter> table = make_table();
  return table;
}

std::vector<Parameter> learnable() {
  std::vector<Parameter> rows;
  for (const Parameter& parameter : parameters()) {
    if (parameter.scale != Scale::fixed) rows.push_back(parameter);
  }
  return rows;
}

std::vector<double> covariance_of(const Kitchen& kitchen) {
  require_kitchen(kitchen);
  if (!kitchen.covariance.empty()) return kitchen.covariance;
  std::vector<double> sds;
  for (const Parameter& parameter : learnable()) sds.push_back(parameter.prior_sd);
  return diagonal(sds);
}

namespace {

/// Before sweet doughs, water beyond its activity, handling and heat loss were uncertain.
Kitchen set_2026_1() {
  Kitchen kitchen{.aw_min = 0.92,
                  .gas_capacity = 45,
                  .water_exponent = 0,
                  .kept_by_divide = 0.5,
                  .kept_by_round = 0.4,
                  .kept_by_mould = 0.2,
                  .over_proof_bulk = 0.87,
                  .over_proof_rise_tin_percent = 130,
                  .model_sd = 0,
                  .packet_sd = 0};
  std::vector<double> sds;
  bool is_new = false;
  for (const Parameter& parameter : learnable()) {
    is_new |= parameter.value == &Kitchen::water_exponent;
    sds.push_back(is_new ? 0 : parameter.value == &Kitchen::aw_min ? 0.012 : parameter.prior_sd);
  }
  kitchen.covariance = diagonal(sds);
  return kitchen;
}

struct FrozenSet {
  std::string_view name;
  Kitchen kitchen;
};
const std::array<FrozenSet, 2>& frozen_sets() {
  static const std::array<FrozenSet, 2> sets{{{"2026-2", {}}, {"2026-1", set_2026_1()}}};
  return sets;
}

}  // namespace

Kitchen kitchen_named(std::string_view name) {
  for (const FrozenSet& set : frozen_sets()) {
    if (set.name == name) return set.kitchen;
  }
  throw InvalidInput("no parameter set is named \"" + std::string(name) + "\"",
                     {.path = "kitchen", .advice = "known: \"2026-1\", \"2026-2\""});
}

std::string name_of(const Kitchen& kitchen) {
  if (!kitchen.name.empty()) return kitchen.name;
  for (const FrozenSet& set : frozen_sets()) {
    if (same(form_of<Kitchen>(), &kitchen, &set.kitchen)) return std::string(set.name);
  }
  return "";
}

bool has_learned(const Kitchen& kitchen) {
  if (kitchen.covariance.empty()) return false;
  return std::none_of(frozen_sets().begin(), frozen_sets().end(),
                      [&](const FrozenSet& set) { return set.kitchen.covariance == kitchen.covariance; });
}

double moved(const Parameter& parameter, double value, double by) {
  require(parameter, value);
  if (std::isnan(by))
    throw InvalidInput("a step of the " + std::string(parameter.label) + " is no number", {.path = "by"});
  switch (parameter.scale) {
    case Scale::fixed: return value;
    case Scale::linear: value += by; break;
    case Scale::logarithmic: value *= std::exp(by); break;
    case Scale::logit: value /= value + (1 - value) * std::exp(-by); break;
  }
  return std::clamp(value, parameter.low, parameter.high);
}

void require_kitchen(const Kitchen& kitchen) {
  if (!kitchen.learned_from.empty()) kitchen_named(kitchen.learned_from);  // refuses what is none
  require_parameters(kitchen);
  require_covariance(kitchen, learnable());
}

namespace {

/// The bounds alone, close together: a kitchen is looked at in every call.
struct Bounds {
  double Kitchen::*value;
  double low, high;
};
std::vector<Bounds> make_bounds() {
  std::vector<Bounds> all;
  for (const Parameter& parameter : parameters()) all.push_back({parameter.value, parameter.low, parameter.high});
  return all;
}

bool all_inside(const Kitchen& kitchen) {
  static const std::vector<Bounds> all = make_bounds();
  bool inside = true;
  for (const Bounds& its : all) inside &= (kitchen.*its.value >= its.low) & (kitchen.*its.value <= its.high);
  return inside;
}

}  // namespace

void require_parameters(const Kitchen& kitchen) {
  name_of(kitchen.law);  // refuses what is none
  if (!all_inside(kitchen)) {
    for (const Parameter& parameter : parameters()) require(parameter, kitchen.*parameter.value);
  }
  if (kitchen.t_opt_c - kitchen.t_min_c <= kitchen.t_max_above_opt_k) {
    throw InvalidInput("optimum temperature " + number(kitchen.t_opt_c) +
                           " °C is not above the middle of the lower cardinal temperature " + number(kitchen.t_min_c) +
                           " °C and the upper one " + number(kitchen.t_opt_c + kitchen.t_max_above_opt_k) + " °C",
                       {.path = "t_opt_c",
                        .value = kitchen.t_opt_c,
                        .low = kitchen.t_min_c + kitchen.t_max_above_opt_k,
                        .advice =
                            "the cardinal law needs that (Rosso et al. 1993): lower t_min_c or t_max_above_opt_k"});
  }
  if (kitchen.retention_limit <= kitchen.retention_onset) {
    throw InvalidInput("largest volume " + number(kitchen.retention_limit) +
                           " is not above the volume at which gas begins to leak, " + number(kitchen.retention_onset) +
                           " times the mixed volume",
                       {.path = "retention_limit",
                        .value = kitchen.retention_limit,
                        .low = kitchen.retention_onset,
                        .advice = "raise retention_limit or lower retention_onset"});
  }
}

template <>
const Names& names_of<Law>() {
  static constexpr std::string_view list[] = {"cardinal", "square_root", "arrhenius", "constant_q10"};
  static constexpr Names names{"temperature law", "law", list};
  return names;
}

template <>
const Names& names_of<Scale>() {
  static constexpr std::string_view list[] = {"fixed", "linear", "logarithmic", "logit"};
  static constexpr Names names{"scale", "scale", list};
  return names;
}

template <>
const Names& names_of<SeenAs>() {
  static constexpr std::string_view list[] = {"at", "not_yet", "past", "height", "over_proofed", "dough"};
  static constexpr Names names{"sighting", "was", list};
  return names;
}

template <>
const Form& form_of<LearnedBake>() {
  using B = LearnedBake;
  static const Form form =
      made_form<B>("LearnedBake", "What a kitchen keeps of a bake it was learned from.", {},
                   {row<&B::name>("name", "its own"), row<&B::date>("date", "such as 2026-11-29"),
                    row<&B::packet>("packet", "of yeast"),
                    row<&B::dough_c>("dough_c", "°C when the stage began that was looked at last"),
                    row<&B::looks>("looks", "how many"), row<&B::was>("was", "how the most surprising look was seen"),
                    row<&B::seen>("seen", "of the most surprising look: h since its stage began, % of rise or °C"),
                    or_never(
                        row<&B::expected>("expected", "the same as the kitchen expects it; none where it never comes")),
                    or_never(row<&B::standardised>("standardised", "the difference, by noise and bake")),
                    row<&B::surprising>("surprising", "whether it is hardly believed"),
                    row<&B::explanation>("explanation", "what would explain it, if it is a surprise")});
  return form;
}

template <>
const Form& form_of<LearnedGain>() {
  using G = LearnedGain;
  static const Form form = made_form<G>("LearnedGain", "What a kitchen has learned of a way of mixing.", {},
                                        {row<&G::method>("method", "of mixing"),
                                         row<&G::net_gains_kj_per_kg>("net_gains_kj_per_kg", "of each batch"),
                                         row<&G::minutes>("minutes", "of the latest; 0: it has none")});
  return form;
}

template <>
const Form& form_of<Kitchen>() {
  static const Form form = [] {
    std::vector<Row> rows{row<&Kitchen::name>("name", "your own name of it"),
                          row<&Kitchen::law>("law", "the temperature law that drives the clock")};
    for (const Parameter& its : parameters()) rows.push_back({.name = its.name, .field = &its, .access = its.access});
    rows.push_back(row<&Kitchen::covariance>(
        "covariance",
        "of the learnable parameters in the coordinates in which they are learned, n × n; the prior's if empty"));
    rows.push_back(row<&Kitchen::learned_from>("learned_from", "the frozen set before the first log"));
    rows.push_back(row<&Kitchen::packet>("packet", "of the yeast that it knows"));
    rows.push_back(row<&Kitchen::history>("history", "the bakes it was learned from"));
    rows.push_back(row<&Kitchen::mixing>("mixing", "what it has learned of ways of mixing"));
    return made_form<Kitchen>("Kitchen",
                              "Every parameter of the model with its uncertainty. Kitchen() is the frozen set "
                              "2026-2; libferment.parameters() lists units, bounds, priors and sources.",
                              {}, std::move(rows), require_kitchen);
  }();
  return form;
}

}  // namespace ferment
