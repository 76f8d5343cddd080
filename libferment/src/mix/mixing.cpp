#include <ferment/mix/mixing.hpp>

#include <array>

#include <ferment/base/error.hpp>

#include "base/named.hpp"

namespace ferment {
namespace {

constexpr std::string_view practice = "common practice, no source";
constexpr std::array methods{
    MixingMethod{"folds", "stretch and fold", 0.3, 0, 0.5, 4, practice},
    MixingMethod{"hand", "kneading by hand", 2, 0.5, 4, 10,
                 "estimate from a friction of 0 to 10 °F less hydration (friction: trade article)"},
    MixingMethod{"stand_mixer", "stand mixer", 6, 3, 12, 9, "estimate from a friction of 20 to 26 °F (trade articles)"},
    MixingMethod{"spiral", "spiral mixer, gentle", 8, 4, 14, 10, "estimate, 1 to 4 Wh/kg; common practice, no source"},
    MixingMethod{"spiral_intensive", "spiral mixer, intensive", 18, 10, 25, 14,
                 "estimate, 3 to 7 Wh/kg; common practice, no source"},
    MixingMethod{"diving_arm", "fork or diving-arm mixer", 4, 2, 8, 15, practice},
    MixingMethod{"food_processor", "food processor", 10, 6, 25, 1,
                 "estimate from a friction of 25 °F (cooking magazine)"},
    MixingMethod{"high_speed", "horizontal high-speed mixer", 25, 18, 45, 12, practice},
    MixingMethod{"mechanical_development", "mechanical development", 39.6, 36, 43, 3,
                 "11 Wh/kg: baking trade dictionary; band: mixer maker's note"},
};

}  // namespace

std::span<const MixingMethod> mixing_methods() { return methods; }

const MixingMethod& mixing_method_named(std::string_view name) {
  return row_named(methods, name, "mixing method", "method");
}

double mixing_minutes(const Mixing& mixing) {
  if (const auto* by = std::get_if<ByMethod>(&mixing))
    return by->minutes.value_or(mixing_method_named(by->method).usual_min);
  const auto* gain = std::get_if<ByNetGain>(&mixing);
  return gain ? gain->minutes : 0;
}

template <>
const Form& form_of<ByMethod>() {
  static const Form form = [] {
    Form form = made_form<ByMethod>(
        "ByMethod", "Mixing heat from a method and its minutes; hydration and exchange with the room come on top.", {},
        {must_be_given(of_table(row<&ByMethod::method>("method", "a row of mixing_methods()"),
                                [](const std::string& method) { mixing_method_named(method); })),
         row<&ByMethod::minutes>("minutes", field::mixing_min),
         row<&ByMethod::hydration_kj_per_kg>(field::hydration_kj_per_kg)});
    form.shorthand = "method";
    return form;
  }();
  return form;
}

template <>
const Form& form_of<ByWork>() {
  static const Form form =
      made_form<ByWork>("ByWork", "Mixing heat from known work; hydration comes on top.", {.work_kj_per_kg = 0},
                        {row<&ByWork::work_kj_per_kg>(field::work_kj_per_kg),
                         row<&ByWork::hydration_kj_per_kg>(field::hydration_kj_per_kg)});
  return form;
}

template <>
const Form& form_of<ByNetGain>() {
  static const Form form =
      made_form<ByNetGain>("ByNetGain", "One number from logged batches in place of work, hydration and losses.",
                           {.net_gain_kj_per_kg = 0},
                           {row<&ByNetGain::net_gain_kj_per_kg>(field::net_gain_kj_per_kg),
                            row<&ByNetGain::sd_kj_per_kg>(field::sd_kj_per_kg),
                            row<&ByNetGain::minutes>("minutes", field::gain_min)});
  return form;
}

}  // namespace ferment
