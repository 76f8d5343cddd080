#include <ferment/heat/bowl.hpp>

#include <array>
#include <cmath>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "base/finite.hpp"
#include "base/named.hpp"

namespace ferment {
namespace {

// c and k of materials: ranges of Incropera and Perry's from memory, the middle of each; walls of 4 mm glass, 8 mm
// ceramic, 2 mm plastic and silicone, 3 mm polycarbonate, 5 mm wood (common practice, no source).
constexpr std::string_view handbooks = "Incropera and Perry's (from memory)";
constexpr std::array materials{
    BowlMaterial{"steel", 0.49, 0, true, handbooks},
    BowlMaterial{"aluminium", 0.90, 0, true, handbooks},
    BowlMaterial{"glass", 0.84, 0.0035, false, handbooks},
    BowlMaterial{"ceramic", 0.90, 0.006, false, handbooks},
    BowlMaterial{"plastic", 1.85, 0.010, false, "polypropylene; Incropera and Perry's (from memory)"},
    BowlMaterial{"polycarbonate", 1.2, 0.015, false, handbooks},
    BowlMaterial{"silicone", 1.4, 0.010, false, handbooks},
    BowlMaterial{"wood", 2.0, 0.030, false, handbooks},
};

}  // namespace

std::span<const BowlMaterial> bowl_materials() { return materials; }

const BowlMaterial& bowl_material_named(std::string_view name) {
  return row_named(materials, name, "bowl material", "bowl");
}

double heat_capacity_kj(const Bowl& bowl) {
  const BowlMaterial& material = bowl_material_named(bowl.material);
  require(field::bowl_g, bowl.mass_g);
  require(field::contact, bowl.contact);
  return bowl.contact * bowl.mass_g / 1000 * material.specific_heat_kj;
}

double bowl_heat_loss_w_per_k(double dough_g) {
  require_at_least(0, dough_g, "dough_g");
  return 0.45 * std::pow(dough_g / 1670, 2.0 / 3);
}

template <>
const Form& form_of<Bowl>() {
  static const Form form =
      made_form<Bowl>("Bowl", "The bowl the dough is mixed in, with its hook or paddle.", {},
                      {of_table(row<&Bowl::material>("material", "a row of bowl_materials()"),
                                [](const std::string& material) { bowl_material_named(material); }),
                       row<&Bowl::mass_g>("mass_g", field::bowl_g),
                       row<&Bowl::temperature_c>("temperature_c", field::bowl_c), row<&Bowl::contact>(field::contact)});
  return form;
}

}  // namespace ferment
