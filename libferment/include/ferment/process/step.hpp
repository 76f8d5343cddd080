// What is done to the dough.
#pragma once

#include <limits>
#include <optional>

#include <ferment/base/export.hpp>
#include <ferment/dough/formula.hpp>
#include <ferment/heat/mixing.hpp>

namespace ferment {

/// One addition of ingredients: what comes into the bowl, how warm, and how it is mixed. Temperatures that are not given are
/// the room's.
struct Mix {
  Formula formula = {};
  double room_c = std::numeric_limits<double>::quiet_NaN();  ///< must be given
  std::optional<double> flour_c = {};                        ///< of flours and gluten that do not say their own
  std::optional<double> water_c = {};                        ///< of the main water; what the water plan answers
  std::optional<double> tap_c = {};                          ///< cold water as it comes; needed to plan ice
  double ice_c = -18;                                        ///< from a freezer; 0 when it is wet
  std::optional<double> milk_c = {};
  std::optional<double> egg_c = {};
  std::optional<double> butter_c = {};
  Bowl bowl = {};
  std::optional<Mixing> mixing = {};             ///< kneading by hand if not given
  bool heat_of_solution = true;                  ///< salt (66 kJ/kg) and sugar (16 kJ/kg) cool as they dissolve
  double rest_h = 0;                             ///< flour, water, milk and egg rest that long before all else joins
  std::optional<double> heat_loss_w_per_k = {};  ///< of the covered dough to the room; by its weight if not given
};

/// Refuses a mix outside the field table, or without flour. @throws InvalidInput
FERMENT_API void check_mix(const Mix& mix);

}  // namespace ferment
