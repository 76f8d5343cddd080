// The bowl the dough is mixed in, and the materials of bowls and tubs.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>

namespace ferment {

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

/// Heat lost by covered dough in its bowl, W/K, estimated from its weight: 0.45·(kg/1.67)^(2/3), the surface's growth.
/// Computed for 1.67 kg in a 20 cm bowl: 0.40 (shiny steel) to 0.50 (plastic or glass, lid); engineering estimate.
/// @throws InvalidInput for a negative or non-finite weight
FERMENT_API double bowl_heat_loss_w_per_k(double dough_g);

template <>
FERMENT_API const Form& form_of<Bowl>();

}  // namespace ferment
