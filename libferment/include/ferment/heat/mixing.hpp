// How warm the dough leaves the mixer: the trade's factor rule with its friction, and the heat balance.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/form.hpp>

namespace ferment {

/// Water temperature by the factor rule, °C: n · desired − flour − room (− preferment) − friction, n = 3, or 4 with a
/// preferment. The answer may lie below 0 or above 60 °C; `cautions` has them.
/// Source: trade textbooks (see tests/reference/water_temperature.csv).
/// @throws InvalidInput outside the field table's bounds
FERMENT_API double water_by_factor_rule(double desired_c, double flour_c, double room_c, double friction_k,
                                        std::optional<double> preferment_c = std::nullopt);

/// The same for arrays: every input has one value or out.size() values. @throws InvalidInput
FERMENT_API void water_by_factor_rule(const Values& desired_c, const Values& flour_c, const Values& room_c,
                                      const Values& friction_k, const std::optional<Values>& preferment_c,
                                      std::span<double> out);

/// Dough temperature that the factor rule expects, °C: (flour + room + water (+ preferment) + friction)/n.
/// @throws InvalidInput
FERMENT_API double dough_by_factor_rule(double water_c, double flour_c, double room_c, double friction_k,
                                        std::optional<double> preferment_c = std::nullopt);

/// Friction of a batch, K: n · dough − flour − room − water (− preferment). Use it for the next batch of the same size
/// on the same mixer. @throws InvalidInput, also if the batch's friction lies outside −10 to 25 K
FERMENT_API double friction_from_batch(double dough_c, double flour_c, double room_c, double water_c,
                                       std::optional<double> preferment_c = std::nullopt);

/// How much of the water to replace by ice at 0 °C when the tap is too warm, g, by the trade's rule:
/// water · (tap − wanted)/(tap + 80) in °C, which is (tap − wanted)/(tap + 112) in °F. Pour water_g less the ice.
/// @throws InvalidInput; NoSolution if the wanted water is warmer than the tap
FERMENT_API double ice_by_trade_rule(double water_g, double tap_c, double wanted_c);

// ---- the heat balance -----------------------------------------------------------------------------------------

/// The bowl the dough is mixed in, with its hook or paddle.
struct Bowl {
  std::string material = "steel";            ///< a row of `bowl_materials()`
  double mass_g = 0;                         ///< 0: no bowl
  std::optional<double> temperature_c = {};  ///< the room's if not given
  double contact = 0.8;                      ///< share of it that comes to the dough's temperature
};

struct BowlMaterial {
  std::string_view name;
  double specific_heat_kj = 0;  ///< kJ/(kg·K)
  double wall_m2_k_per_w = 0;   ///< resistance of a usual wall
  bool shiny = false;           ///< gives off little heat by radiation
  std::string_view source;
};
FERMENT_API std::span<const BowlMaterial> bowl_materials();

/// The material of that name. @throws InvalidInput naming the known ones
FERMENT_API const BowlMaterial& bowl_material_named(std::string_view name);

/// kJ the bowl takes up per K of the dough. @throws InvalidInput for an unknown material, naming the known ones
FERMENT_API double heat_capacity_kj(const Bowl& bowl);

/// A way of mixing and the work it leaves in the dough as heat, kJ per kg of dough, after its usual time.
struct MixingMethod {
  std::string_view name;   ///< as in code, day files and options
  std::string_view label;  ///< as in tables
  double work_kj_per_kg = 0;
  double low_kj_per_kg = 0;
  double high_kj_per_kg = 0;
  double usual_min = 0;
  std::string_view source;
};
FERMENT_API std::span<const MixingMethod> mixing_methods();

/// The method of that name. @throws InvalidInput naming the known ones
FERMENT_API const MixingMethod& mixing_method_named(std::string_view name);

/// Mixing heat from a method and its minutes: work in proportion to the time, hydration of the flour by its moisture,
/// and exchange with the room over the minutes.
struct ByMethod {
  std::string method = "hand";
  std::optional<double> minutes = {};              ///< the method's usual time if not given
  std::optional<double> hydration_kj_per_kg = {};  ///< per kg of flour; by its moisture if not given
};

/// Mixing heat from known work.
struct ByWork {
  Given work_kj_per_kg;                            ///< per kg of dough; 1 Wh/kg is 3.6
  std::optional<double> hydration_kj_per_kg = {};  ///< per kg of flour; by its moisture if not given
};

/// One number from logged batches in place of work, hydration and losses; of it, the flour's heat of hydration comes
/// when flour and water meet. With minutes, exchange with the room over them is reckoned apart, as with a method, so
/// that a number found in a cold room serves a warm one.
struct ByNetGain {
  Given net_gain_kj_per_kg;  ///< per kg of dough
  double sd_kj_per_kg =
      *field::sd_kj_per_kg
           .initial;   ///< from batch to batch: readings of dough, water and flour within ± 0.5 K in 9 of 10
  double minutes = 0;  ///< of mixing in the room; 0: losses are in the gain
};

/// Work and hydration, or one net gain: never both.
using Mixing = std::variant<ByMethod, ByWork, ByNetGain>;

/// Minutes of mixing in the room that a way of mixing says; 0 if it says none. @throws InvalidInput for an unknown
/// method
FERMENT_API double mixing_minutes(const Mixing& mixing);

/// What the plan must find again among the portions.
enum class PortionKind { other, main_water, flour, preferment };

/// Something that comes into the bowl, or the bowl itself.
struct HeatPortion {
  std::string name = {};
  PortionKind kind = PortionKind::other;
  double mass_g = 0;         ///< of dough; 0 for the bowl
  double capacity_kj_k = 0;  ///< heat it takes per K
  double temperature_c = 0;  ///< as it comes
  double uptake_kj = 0;      ///< taken up on joining: heat of solution, melting of ice
  bool after_rest = false;   ///< joins when flour and water have rested
};

/// The heat of mixing and of the rest before it.
struct HeatSources {
  double hydration_kj = 0;       ///< given off when flour and water meet
  double work_kj = 0;            ///< by mixing, after the rest, evenly over mixing_h
  double room_c = 0;             ///< what the bowl stands in
  double loss_w_per_k = 0;       ///< heat lost to the room per K while mixing
  double rest_loss_w_per_k = 0;  ///< and while resting, when not all is in the bowl
  double rest_h = 0;
  double mixing_h = 0;
};

/// The balance as a weighted mean: dough_c = Σ weights·temperature + room_weight·room + gain_k, and all weights sum
/// to 1.
struct HeatBalance {
  double dough_c = 0;                ///< at the end of mixing
  double wetted_c = 0;               ///< when flour and water have met, before the rest
  double rested_c = 0;               ///< at the end of the rest
  double capacity_kj_k = 0;          ///< dough and bowl
  double wetted_capacity_kj_k = 0;   ///< what flour and water meet with
  std::vector<double> weights = {};  ///< one for each portion: K of dough per K of the portion
  double room_weight = 0;            ///< by exchange with the room
  double gain_k = 0;                 ///< by work, hydration, solution and melting
  double k_per_kj_wetted = 0;        ///< K of dough per kJ given off when flour and water meet
  double k_per_kj_work = 0;          ///< K of dough per kJ of mixing
};

/// The enthalpy balance of mixing, exact for constant heat capacities: portions come together, wetted flour gives off
/// heat, the rest relaxes to the room exponentially, the others join, and work comes in evenly while the room takes its
/// share.
/// @throws InvalidInput if nothing has a heat capacity, or for a number that is not finite or a negative capacity, loss
/// or time Source: conservation of energy; relaxation by Newton's law of cooling.
FERMENT_API HeatBalance heat_balance(std::span<const HeatPortion> portions, const HeatSources& sources);

/// Ice in place of that much of the water, g, from the enthalpies: water·c·(tap − wanted)/(c·tap + L − c_ice·ice).
/// Valid for wanted water below 0 °C too, which is a way to say how much cold is wanted. More than water_g: not enough
/// even as ice.
/// @throws InvalidInput; NoSolution if the wanted water is warmer than the tap
FERMENT_API double ice_by_heat_balance(double water_g, double tap_c, double wanted_c, double ice_c = 0);

/// Heat lost by covered dough in its bowl, W/K, estimated from its weight: 0.45·(kg/1.67)^(2/3), the surface's growth.
/// Computed for 1.67 kg in a 20 cm bowl: 0.40 (shiny steel) to 0.50 (plastic or glass, lid); engineering estimate.
/// @throws InvalidInput for a negative or non-finite weight
FERMENT_API double bowl_heat_loss_w_per_k(double dough_g);

/// Mean of a number found from several batches, and its spread.
struct BatchMean {
  double mean = 0;
  std::optional<double> sd = {};  ///< from batch to batch; nothing from one batch
  std::vector<double> each = {};
};

/// Mean and sample standard deviation. @throws InvalidInput without a batch, or for a number that is not finite
FERMENT_API BatchMean mean_of_batches(std::vector<double> each);

/// The same of what number_of(0), … makes of each batch. @throws InvalidInput as number_of does, naming the batch
FERMENT_API BatchMean mean_of_batches(std::size_t count, const std::function<double(std::size_t)>& number_of);

/// Friction from several batches, K: friction_from_batch of each, their mean and spread.
/// @throws InvalidInput, naming the batch
FERMENT_API BatchMean friction_from_batches(const Values& dough_c, const Values& flour_c, const Values& room_c,
                                            const Values& water_c,
                                            const std::optional<Values>& preferment_c = std::nullopt);

template <>
FERMENT_API const Form& form_of<Bowl>();

template <>
FERMENT_API const Form& form_of<ByMethod>();

template <>
FERMENT_API const Form& form_of<ByWork>();

template <>
FERMENT_API const Form& form_of<ByNetGain>();

}  // namespace ferment
