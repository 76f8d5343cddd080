// Ways of mixing and the heat they leave in the dough.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include <ferment/base/export.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/given.hpp>

namespace ferment {

/// A way of mixing and the work it leaves in the dough as heat, kJ per kg of dough, after its usual time; or its net
/// gain, where what bakers find is less than the flour's own heat of hydration and more.
struct MixingMethod {
  std::string_view name;   ///< as in code, day files and options
  std::string_view label;  ///< as in tables
  double work_kj_per_kg = 0;
  double low_kj_per_kg = 0;
  double high_kj_per_kg = 0;
  double usual_min = 0;
  bool is_net_gain = false;  ///< the numbers hold the heat of hydration, too
  std::string_view source;
};
FERMENT_API std::span<const MixingMethod> mixing_methods();

/// The method of that name. @throws InvalidInput naming the known ones
FERMENT_API const MixingMethod& mixing_method_named(std::string_view name);

/// Mixing heat from a method and its minutes: work in proportion to the time, hydration of the flour by its moisture
/// (unless the method's number is a net gain), and exchange with the room over the minutes.
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

template <>
FERMENT_API const Form& form_of<ByMethod>();

template <>
FERMENT_API const Form& form_of<ByWork>();

template <>
FERMENT_API const Form& form_of<ByNetGain>();

}  // namespace ferment
