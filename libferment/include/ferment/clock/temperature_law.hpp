// Four interchangeable temperature laws, each 1 at 25 °C.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/base/parameters.hpp>

namespace ferment {

/// Factor q10^((T − 25)/10). Honest for 15 to 32 °C only.
struct ConstantQ10 {
  double q10 = Kitchen{}.q10;
};

/// Factor exp(−(Ea/R)(1/T_K − 1/298.15)). Honest for 18 to 32 °C only.
struct Arrhenius {
  double activation_energy_kj = Kitchen{}.activation_energy_kj;  ///< kJ/mol
};

/// Factor ∝ [(T − Tmin)(1 − e^(c(T − Tmax)))]², 0 outside (Tmin, Tmax) (Ratkowsky et al. 1983, J Bacteriol 154:1222).
struct SquareRoot {
  double t_min_c = Kitchen{}.root_t_min_c;
  double t_max_c = Kitchen{}.root_t_max_c;
  double decline_per_k = Kitchen{}.root_decline_per_k;
};

/// Cardinal temperatures with inflexion (Rosso et al. 1993, J Theor Biol 162:447), 0 outside (Tmin, Tmax).
/// Needs Topt > (Tmin + Tmax)/2.
struct Cardinal {
  double t_min_c = Kitchen{}.t_min_c;
  double t_opt_c = Kitchen{}.t_opt_c;
  double t_max_c = Kitchen{}.t_opt_c + Kitchen{}.t_max_above_opt_k;
};

using TemperatureLaw = std::variant<Cardinal, SquareRoot, Arrhenius, ConstantQ10>;

/// The law of a kitchen, with its parameters. @throws InvalidInput from require_kitchen
FERMENT_API TemperatureLaw law_of(const Kitchen& kitchen);

/// A copy of the kitchen with this law and its parameters. @throws InvalidInput from require_kitchen
FERMENT_API Kitchen with_law(Kitchen kitchen, const TemperatureLaw& law);

/// Speed at a temperature over the speed at 25 °C, a ratio; 0 where the yeast stands still.
/// @param temperature_c  −50 to 120 °C
/// @throws InvalidInput for a temperature or a law parameter outside the tables
FERMENT_API double temperature_factor(const TemperatureLaw& law, double temperature_c);

/// The same for many temperatures; out has one value per temperature. @throws InvalidInput
FERMENT_API void temperature_factor(const TemperatureLaw& law, std::span<const double> temperature_c,
                                    std::span<double> out);

/// Local temperature coefficient, exp(10 K · d ln factor/dT), a ratio: the Q10 a constant law would need here.
/// @throws InvalidInput; OutsideModel where the factor is 0
FERMENT_API double local_q10(const TemperatureLaw& law, double temperature_c);

/// A notice if a law is asked outside the temperatures it is honest for.
FERMENT_API std::optional<Notice> law_notice(const TemperatureLaw& law, double temperature_c);

template <>
FERMENT_API const Form& form_of<Cardinal>();

template <>
FERMENT_API const Form& form_of<SquareRoot>();

template <>
FERMENT_API const Form& form_of<Arrhenius>();

template <>
FERMENT_API const Form& form_of<ConstantQ10>();

}  // namespace ferment
