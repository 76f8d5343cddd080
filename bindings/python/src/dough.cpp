#include <pybind11/stl.h>

#include <ferment/dough/formula.hpp>
#include <ferment/dough/gas.hpp>
#include <ferment/dough/ingredient.hpp>
#include <ferment/dough/solutes.hpp>
#include <ferment/dough/volume.hpp>
#include <ferment/dough/yeast.hpp>

#include "form.hpp"
#include "inputs.hpp"
#include "rooms.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

/// A physical law of one number, for numbers and arrays. The whole array is checked before the first value is worked
/// out.
template <class Law>
auto of_one(const Field& field, Law law) {
  return [&field, law](const Number& argument) {
    return Inputs().add(field, argument).run([&](std::span<const Values> in, std::span<double> out) {
      require(field, in[0]);
      for (std::size_t i = 0; i < out.size(); ++i) out[i] = law(in[0][i]);
    });
  };
}

void bind_formula(py::module_& module) {
  bind_form<Flour>(module, 2);
  bind_form<Water>(module, 2);
  bind_form<Preferment>(module, 2);
  bind_form<FlourShare>(module, 2);
  bind_form<PercentFormula>(module);
  bind_form<Percent>(module).def("__repr__", Worded{"percent_text"}, py::prepend());
}

}  // namespace

void bind_dough(py::module_& module) {
  bind_formula(module);
  module.def("water_activity", &water_activity, py::kw_only(), "salt_percent"_a, "water_percent"_a,
             "sugar_percent"_a = 0.0,
             R"(Water activity of the dough's water, exp(-0.0180153 osmolality), a ratio.

Args: percent of flour weight, numbers. Raises InvalidInput.
Source: ideal dilute solution with an osmotic coefficient of 0.92; within 0.005 of Robinson & Stokes 1959 (from
memory).)");
  module.def(
      "convert_yeast",
      [](double yeast_percent, const std::string& from, const std::string& to) {
        return convert_yeast(yeast_percent, named<Yeast>(from), named<Yeast>(to));
      },
      "yeast_percent"_a, py::kw_only(), "from_yeast"_a, "to_yeast"_a,
      R"(The dose of another kind of yeast that gasses alike, percent of flour.

Args: yeast_percent: number; kinds: instant, active_dry, active_dry_unwetted, compressed. Raises InvalidInput.
Source: trade weight ratios compressed 1 : active dry 0.40 : instant 0.33.)");
  module.def("air_pressure_pa", of_one(field::altitude_m, [](double v) { return air_pressure_pa(v); }), "altitude_m"_a,
             R"(Air pressure, Pa, at an altitude in m. Any shape in, the same shape out.

Raises InvalidInput outside -500 to 6000 m. Source: ISO 2533 standard atmosphere.)");
  module.def("saturation_pressure_pa", of_one(field::temperature_c, [](double v) { return saturation_pressure_pa(v); }),
             "temperature_c"_a,
             R"(Saturation vapour pressure over water, Pa. Any shape in, the same shape out.

Raises InvalidInput. Source: Buck 1996.)");
  module.def("co2_solubility", of_one(field::temperature_c, [](double v) { return co2_solubility(v); }),
             "temperature_c"_a,
             R"(Solubility of CO2 in water, mol/(kg atm). Any shape in, the same shape out.

Raises InvalidInput. Source: Weiss 1974, Mar Chem 2:203.)");
  module.def(
      "gas_made",
      [](double equivalent_h, double yeast_percent, const std::string& yeast, double sugar_percent,
         const std::optional<Kitchen>& kitchen) {
        return gas_made(equivalent_h, yeast_percent, named<Yeast>(yeast), sugar_percent, kitchen_or_default(kitchen));
      },
      "equivalent_h"_a, py::kw_only(), "yeast_percent"_a, "yeast"_a = "instant", "sugar_percent"_a = 0.0,
      "kitchen"_a = py::none(),
      R"(CO2 made after some equivalent hours, mmol per 100 g flour.

Args: numbers; equivalent_h in hours at the reference dough (25 °C, 2 % salt, 65 % water, no sugar). Raises
InvalidInput. Source: model of this library: start-up, growth by a fixed increment after a lag, exhaustion of the
sugars.)");
  module.def(
      "equivalent_hours_for_gas",
      [](double co2_mmol, double yeast_percent, const std::string& yeast, double sugar_percent,
         const std::optional<Kitchen>& kitchen) {
        return equivalent_hours_for_gas(co2_mmol, yeast_percent, named<Yeast>(yeast), sugar_percent,
                                        kitchen_or_default(kitchen));
      },
      "co2_mmol"_a, py::kw_only(), "yeast_percent"_a, "yeast"_a = "instant", "sugar_percent"_a = 0.0,
      "kitchen"_a = py::none(),
      R"(Equivalent hours until that much CO2 is made, the inverse of gas_made.

Args: numbers; co2_mmol in mmol per 100 g flour. Raises InvalidInput; NoSolution naming the most the sugars give.
Source: closed form with Lambert's W before the yeast grows, a logarithm after.)");
}
