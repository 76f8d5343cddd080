#include <ferment/mix/mixing.hpp>

#include <array>

#include <ferment/base/error.hpp>

#include "base/named.hpp"

namespace ferment {
namespace {

constexpr std::string_view practice = "common practice, no source";
constexpr std::array methods{
    MixingMethod{"folds", "stretch and fold", 3, 0, 5.5, 4, true,
                 "less than kneading by hand; common practice, no source"},
    MixingMethod{
        "hand", "kneading by hand", 4, 2, 6.5, 10, true,
        "a friction of 3 to 7 K in a room of 21 °C: 0 to 10 °F in a trade textbook, about 6 K in other practice"},
    MixingMethod{"stand_mixer", "stand mixer", 6, 3, 12, 9, false,
                 "estimate from a friction of 20 to 26 °F (trade articles)"},
    MixingMethod{"spiral", "spiral mixer, gentle", 8, 4, 14, 10, false,
                 "estimate, 1 to 4 Wh/kg; common practice, no source"},
    MixingMethod{"spiral_intensive", "spiral mixer, intensive", 18, 10, 25, 14, false,
                 "estimate, 3 to 7 Wh/kg; common practice, no source"},
    MixingMethod{"diving_arm", "fork or diving-arm mixer", 4, 2, 8, 15, false, practice},
    MixingMethod{"food_processor", "food processor", 10, 6, 25, 1, false,
                 "estimate from a friction of 25 °F (cooking magazine)"},
    MixingMethod{"high_speed", "horizontal high-speed mixer", 18, 12, 25, 12, true,
                 "estimate from a friction of 25 to 35 °F (trade articles)"},
    MixingMethod{"mechanical_development", "mechanical development", 39.6, 36, 43, 3, false,
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
