// The water plan: how warm the main water must be, by the heat balance and by the trade's rule, and why they differ.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/base/values.hpp>
#include <ferment/mix/mix.hpp>

namespace ferment {

/// How much one thing counts for the dough's temperature.
struct HeatShare {
  std::string name = {};     ///< "main water", "bread flour", "bowl", …, "room" for the exchange with it
  double mass_g = 0;         ///< of dough; 0 for bowl and room
  double temperature_c = 0;  ///< as it comes
  double dough_k_per_k = 0;  ///< K of dough per K of this; all of them sum to 1
  double water_k_per_k = 0;  ///< K by which the main water must change per K of this, for the same dough
};

struct WaterPlan {
  double desired_c = 0;
  double water_c = 0;  ///< what the main water must have, ice in it counted; below 0 °C only with ice
  double water_g = 0;  ///< the main water, ice included
  double pour_g = 0;   ///< to pour: all of it, or what the ice leaves
  double pour_c = 0;   ///< how warm to pour it: water_c, or the tap's if there is ice
  double ice_g = 0;
  double factor_rule_c = 0;     ///< the trade's rule for the same dough
  double friction_k = 0;        ///< that it was asked with
  bool friction_given = false;  ///< else what the balance itself needs where everything is at 21 °C
  double difference_k = 0;      ///< factor_rule_c − water_c
  double dough_by_rule_c = 0;   ///< the dough that the rule's water would make
  std::string reason = {};      ///< why they differ, in words
  std::vector<HeatShare> shares = {};
  double gain_k = 0;           ///< warming by work, hydration and dissolving
  double k_per_kj_per_kg = 0;  ///< K of dough per kJ of mixing per kg of dough
  double low_c = 0;            ///< likely dough temperature, lower end of 90 %
  double high_c = 0;           ///< upper end
  double wetted_c = 0;         ///< what meets before the rest (flour, main water, milk, egg), when it has met
  double rested_c = 0;         ///< at the end of the rest
  double dough_g = 0;
  std::vector<Notice> notices = {};
};

/// Water temperature by the heat balance: every ingredient by its own heat capacity, the bowl, heat of hydration and of
/// solution, mixing work or one net gain from logged batches, a rest with its drift to the room. Solved for the main
/// water, or for ice in it where the answer is colder than the tap.
/// @param desired_c   °C at the end of mixing
/// @param friction_k  K, for the factor rule alone (for the balance: net_gain_from_friction); if not given, what the
/// balance needs where everything is at 21 °C
/// @throws InvalidInput outside the field table, or for percentages that no dough has; NoSolution if water of 60 °C is
/// not warm
///         or all of it as ice not cold enough, naming the reachable dough temperatures
/// Source: enthalpy balance; specific heats of heat/properties; see heat/balance and mix/mixing for the rest.
FERMENT_API WaterPlan water_by_heat_balance(const Mix& mix, double desired_c,
                                            std::optional<double> friction_k = std::nullopt);

/// The mix with the plan's water and ice in it. @throws InvalidInput from require_mix
FERMENT_API Mix with_water(const Mix& mix, const WaterPlan& plan);

/// The balance forward: dough temperature at the end of mixing, °C; the main water's temperature must be given.
/// @throws InvalidInput; OutsideModel if ice would not melt, or the dough be outside −2 to 45 °C
FERMENT_API double dough_by_heat_balance(const Mix& mix);

/// Water temperatures for many rooms, °C: plan after plan of the same mix with another desired, flour and room
/// temperature. Each has one value or out.size(). As with the factor rule, the answer may lie below 0 °C (ice) or above
/// 60 °C (impossible).
/// @throws InvalidInput
FERMENT_API void water_map(const Mix& mix, const Values& desired_c, const Values& flour_c, const Values& room_c,
                           std::span<double> out);

template <>
FERMENT_API const Form& form_of<HeatShare>();

template <>
FERMENT_API const Form& form_of<WaterPlan>();

}  // namespace ferment
