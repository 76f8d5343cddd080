// The kitchen: every parameter of the model with its uncertainty, so that any answer can be asked for
// one kitchen. The default values are the frozen set "2026-2".
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/names.hpp>

namespace ferment {

/// Which temperature law drives the clock.
enum class Law { cardinal, square_root, arrhenius, constant_q10 };

/// What an hour says: the dough stood at a rise, was not yet there, or was past it; it had that rise by its height in
/// straight sides; it was over-proofed; its temperature was measured.
enum class SeenAs { at, not_yet, past, height, over_proofed, dough };

/// What a kitchen keeps of a bake it was learned from.
struct LearnedBake {
  std::string name = {};
  std::string date = {};
  std::string packet = {};  ///< of yeast
  double dough_c = 0;       ///< when the stage began that was looked at last
  double looks = 0;         ///< how many
  SeenAs was = SeenAs::at;  ///< how the most surprising look was seen
  double seen = 0;          ///< of the most surprising look: h since its stage began, % of rise or °C
  double expected = 0;      ///< the same as the kitchen expects it; infinite where it never comes
  double standardised = 0;  ///< the difference, by noise and bake
  bool surprising = false;
  std::string explanation = {};  ///< what would explain it, if it is a surprise
};

/// What a kitchen has learned of a way of mixing.
struct LearnedGain {
  std::string method = {};
  std::vector<double> net_gains_kj_per_kg = {};  ///< of each batch
  double minutes = 0;                            ///< of the latest; 0: it has none
};

/// Parameters of the model. A plain value: copy it, change it, keep it. Bounds, units, priors, meanings and
/// sources of every member stand in the parameter table, `parameters()`.
struct Kitchen {
  std::string name = {};  ///< your own; a frozen set is known by its values: name_of
  Law law = Law::cardinal;

  double t_min_c = -2;
  double t_opt_c = 40;
  double t_max_above_opt_k = 5;
  double q10 = 2.2;
  double activation_energy_kj = 60;
  double root_t_min_c = -2;
  double root_t_max_c = 47;
  double root_decline_per_k = 0.37;
  double aw_min = 0.88;

  double gassing_rate = 11;
  double start_up_compressed_h = 0.2;
  double start_up_instant_h = 0.25;
  double start_up_active_dry_h = 0.25;
  double start_up_active_dry_unwetted_h = 0.8;
  double growth_rate = 0.24;
  double growth_lag_h = 2.7;
  double growth_increment = 0.18;
  double gas_capacity = 50;

  double retention_onset = 2.6;
  double retention_limit = 4.8;
  double void_fraction = 0.06;
  double gas_free_density = 1.26;

  double water_exponent = 0.5;
  double high_sugar_factor = 1;
  double kept_by_fold = 0.85;
  double kept_by_divide = 0.70;
  double kept_by_round = 0.60;
  double kept_by_mould = 0.40;
  double kept_by_machine_mould = 0.20;
  double piece_heat_loss_factor = 1;

  double over_proof_tin = 0.87;
  double over_proof_free = 0.65;
  double over_proof_bulk = 0.60;
  double over_proof_rise_free_percent = 130;
  double over_proof_rise_tin_percent = 200;

  double bake_sd = 0.12;
  double model_sd = 0.08;
  double packet_sd = 0.15;
  double log_time_scale = 0.10;

  /// Covariance of the learnable parameters in their fitted coordinates (`Scale`), row by row in the order of
  /// `learnable()`. Empty: the prior, independent parameters.
  std::vector<double> covariance = {};

  std::string learned_from = {};  ///< the frozen set before the first log; empty if nothing was learned
  std::string packet = {};        ///< of the yeast that it knows
  std::vector<LearnedBake> history = {};
  std::vector<LearnedGain> mixing = {};
};

/// The coordinate in which a parameter is learned: not at all, itself, its logarithm, ln(x/(1 − x)) of a share.
enum class Scale { fixed, linear, logarithmic, logit };

/// A row of the parameter table: a field, its prior and where its value is.
struct Parameter : Field {
  Scale scale = Scale::fixed;
  double prior_sd = 0;  ///< sd in that coordinate
  double Kitchen::*value = nullptr;
  Access access = {};  ///< of its row in the form of Kitchen
};

/// The parameter table, in the order of the members of Kitchen.
FERMENT_API std::span<const Parameter> parameters();

/// The rows of the table that logs can teach, in the order of the covariance.
FERMENT_API std::vector<Parameter> learnable();

/// The covariance matrix of the kitchen, n × n row by row, n = learnable().size(); the prior's if empty.
/// @throws InvalidInput as require_kitchen
FERMENT_API std::vector<double> covariance_of(const Kitchen& kitchen);

/// A value moved in the coordinate in which its parameter is learned, and kept inside the table's bounds.
/// @throws InvalidInput for a value outside them, or a step that is no number
FERMENT_API double moved(const Parameter& parameter, double value, double by);

/// A frozen named parameter set. Known: "2026-2", the default, and "2026-1".
/// @throws InvalidInput naming the known sets
FERMENT_API Kitchen kitchen_named(std::string_view name);

/// Its own name; without one that of the frozen set whose values it has, all of them; else empty.
FERMENT_API std::string name_of(const Kitchen& kitchen);

/// Whether its uncertainty is other than a frozen set's.
FERMENT_API bool has_learned(const Kitchen& kitchen);

/// Refuses a kitchen outside the table's bounds, with an optimum that the cardinal law cannot have
/// (t_opt_c must lie above the middle of t_min_c and the maximum; Rosso et al. 1993), with a retention limit
/// not above its onset, or with a covariance that is no symmetric positive semi-definite matrix.
/// @throws InvalidInput
FERMENT_API void require_kitchen(const Kitchen& kitchen);

/// The same without the covariance, which only answers about uncertainty read: what every call checks.
/// @throws InvalidInput
FERMENT_API void require_parameters(const Kitchen& kitchen);

template <>
FERMENT_API const Names& names_of<Law>();

template <>
FERMENT_API const Names& names_of<Scale>();

template <>
FERMENT_API const Names& names_of<SeenAs>();

template <>
FERMENT_API const Form& form_of<LearnedBake>();

template <>
FERMENT_API const Form& form_of<LearnedGain>();

template <>
FERMENT_API const Form& form_of<Kitchen>();

}  // namespace ferment
