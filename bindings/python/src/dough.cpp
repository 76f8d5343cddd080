#include <pybind11/stl.h>

#include <ferment/dough/formula.hpp>
#include <ferment/dough/gas.hpp>
#include <ferment/dough/ingredient.hpp>
#include <ferment/dough/solutes.hpp>
#include <ferment/dough/volume.hpp>
#include <ferment/dough/yeast.hpp>

#include "numbers.hpp"
#include "values.hpp"

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

constexpr std::array percents{
    std::pair{"flour_g", &Percent::flour_g},
    std::pair{"dough_g", &Percent::dough_g},
    std::pair{"water_percent", &Percent::water_percent},
    std::pair{"poured_water_percent", &Percent::poured_water_percent},
    std::pair{"salt_percent", &Percent::salt_percent},
    std::pair{"sugar_percent", &Percent::sugar_percent},
    std::pair{"gluten_percent", &Percent::gluten_percent},
    std::pair{"milk_percent", &Percent::milk_percent},
    std::pair{"egg_percent", &Percent::egg_percent},
    std::pair{"butter_percent", &Percent::butter_percent},
    std::pair{"oil_percent", &Percent::oil_percent},
    std::pair{"instant_percent", &Percent::instant_percent},
    std::pair{"active_dry_percent", &Percent::active_dry_percent},
    std::pair{"compressed_percent", &Percent::compressed_percent},
    std::pair{"instant_equivalent_percent", &Percent::instant_equivalent_percent},
};

NumbersByName to_dict(const Percent& percent) {
  NumbersByName values;
  for (const auto& [name, member] : percents) values[name] = percent.*member;
  return values;
}

std::string repr(const Percent& percent) {
  std::string text = "Percent(";
  for (const auto& [name, member] : percents) {
    if (percent.*member != 0)
      text += std::string(text.back() == '(' ? "" : ", ") + name + "=" + short_number(percent.*member);
  }
  return text + ")";
}

void bind_formula(py::module_& module) {
  using Optional = std::optional<double>;
  py::class_<Flour> flour(module, "Flour", R"(A flour of a mix.

Args: mass_g: g. kind: bread, all_purpose, whole_wheat, medium_rye or dark_rye. moisture_percent: of its weight, the
table's if not given. temperature_c: °C, the mix's flour_c if not given. Checked when it is used.)");
  flour
      .def(py::init([](double mass_g, const std::string& kind, Optional moisture_percent, Optional temperature_c) {
             flour_named(kind);
             return Flour{mass_g, kind, moisture_percent, temperature_c};
           }),
           "mass_g"_a, "kind"_a = "bread", py::kw_only(), "moisture_percent"_a = py::none(),
           "temperature_c"_a = py::none())
      .def_readonly("mass_g", &Flour::mass_g)
      .def_readonly("kind", &Flour::kind)
      .def_readonly("moisture_percent", &Flour::moisture_percent)
      .def_readonly("temperature_c", &Flour::temperature_c);
  add_value_methods(flour, 1, {"mass_g", "kind", "moisture_percent", "temperature_c"});

  py::class_<Water> water(module, "Water", R"(A portion of water of its own temperature, besides the main water.

Args: mass_g: g. temperature_c: °C. wets_yeast: the yeast is wetted in it and joins with it. stands_h: h or a timedelta
that it stands in the room first, nearing the room's temperature with the time constant cup_h (h). Checked when it is
used.)");
  water
      .def(py::init([](double mass_g, double temperature_c, bool wets_yeast, const Duration& stands_h, double cup_h) {
             return Water{mass_g, temperature_c, wets_yeast, hours_of(field::stands_h, stands_h), cup_h};
           }),
           "mass_g"_a, "temperature_c"_a, py::kw_only(), "wets_yeast"_a = false, "stands_h"_a = 0.0,
           "cup_h"_a = Water{}.cup_h)
      .def_readonly("mass_g", &Water::mass_g)
      .def_readonly("temperature_c", &Water::temperature_c)
      .def_readonly("wets_yeast", &Water::wets_yeast)
      .def_readonly("stands_h", &Water::stands_h)
      .def_readonly("cup_h", &Water::cup_h);
  add_value_methods(water, 2, {"mass_g", "temperature_c", "wets_yeast", "stands_h", "cup_h"});

  py::class_<Preferment> preferment(
      module, "Preferment",
      R"(Dough of an earlier mix: its flour and water count in the formula, and it is wetted already.

Args: flour_g, water_g: g. temperature_c: °C, the room's if not given. Checked when it is used.)");
  preferment
      .def(py::init([](double flour_g, double water_g, Optional temperature_c) {
             return Preferment{flour_g, water_g, temperature_c};
           }),
           "flour_g"_a, "water_g"_a, py::kw_only(), "temperature_c"_a = py::none())
      .def_readonly("flour_g", &Preferment::flour_g)
      .def_readonly("water_g", &Preferment::water_g)
      .def_readonly("temperature_c", &Preferment::temperature_c);
  add_value_methods(preferment, 2, {"flour_g", "water_g", "temperature_c"});

  py::class_<Percent> percent(module, "Percent",
                              R"(A mix in baker's percent: percent of the weight of all flour, added gluten included.

water_percent counts all water, also that of milk, egg, butter and preferments; poured_water_percent only what is
poured.)");
  for (const auto& [name, member] : percents) percent.def_readonly(name, member);
  percent.def("to_dict", &to_dict).def("__repr__", &repr);

  py::class_<FlourShare> share(module, "FlourShare", R"(One flour's share of a formula given in percent.

Args: percent: of the flours, added gluten and preferments apart. kind, moisture_percent, temperature_c: as Flour.)");
  share
      .def(py::init([](double percent, const std::string& kind, Optional moisture_percent, Optional temperature_c) {
             flour_named(kind);
             return FlourShare{kind, percent, moisture_percent, temperature_c};
           }),
           "percent"_a, "kind"_a = "bread", py::kw_only(), "moisture_percent"_a = py::none(),
           "temperature_c"_a = py::none())
      .def_readonly("percent", &FlourShare::percent)
      .def_readonly("kind", &FlourShare::kind)
      .def_readonly("moisture_percent", &FlourShare::moisture_percent)
      .def_readonly("temperature_c", &FlourShare::temperature_c);
  add_value_methods(share, 1, {"percent", "kind", "moisture_percent", "temperature_c"});
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
        return convert_yeast(yeast_percent, yeast_named(from), yeast_named(to));
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
        return gas_made(equivalent_h, yeast_percent, yeast_named(yeast), sugar_percent, kitchen_or_default(kitchen));
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
        return equivalent_hours_for_gas(co2_mmol, yeast_percent, yeast_named(yeast), sugar_percent,
                                        kitchen_or_default(kitchen));
      },
      "co2_mmol"_a, py::kw_only(), "yeast_percent"_a, "yeast"_a = "instant", "sugar_percent"_a = 0.0,
      "kitchen"_a = py::none(),
      R"(Equivalent hours until that much CO2 is made, the inverse of gas_made.

Args: numbers; co2_mmol in mmol per 100 g flour. Raises InvalidInput; NoSolution naming the most the sugars give.
Source: closed form with Lambert's W before the yeast grows, a logarithm after.)");
}
