#include <pybind11/stl.h>

#include <ferment/heat/mixing.hpp>

#include "numbers.hpp"

using namespace ferment;
using namespace pybind11::literals;

void bind_heat(py::module_& module) {
  module.def(
      "water_by_factor_rule",
      [](const Number& desired_c, const Number& flour_c, const Number& room_c, const Number& friction_k, const std::optional<Number>& preferment_c) {
        Inputs inputs;
        inputs.add(field::desired_c, desired_c).add(field::flour_c, flour_c).add(field::room_c, room_c).add(field::friction_k, friction_k);
        const bool with_preferment = preferment_c.has_value();
        if (with_preferment) inputs.add(field::preferment_c, *preferment_c);
        return inputs.run([with_preferment](const std::vector<Values>& in, std::span<double> out) {
          water_by_factor_rule(in[0], in[1], in[2], in[3], with_preferment ? std::optional(in[4]) : std::nullopt, out);
        });
      },
      "desired_c"_a, py::kw_only(), "flour_c"_a, "room_c"_a, "friction_k"_a, "preferment_c"_a = py::none(),
      R"(Water temperature by the trade's factor rule, °C: n desired - flour - room (- preferment) - friction.

Args: numbers or arrays that broadcast, °C; friction_k in K, a *difference* of temperatures; n = 3, or 4 with a preferment.
Returns: a number, or an array of the common shape; may lie below 0 or above 60 °C: see check(water_c=...).
Raises InvalidInput. Source: trade textbooks.)");
  module.def("dough_by_factor_rule", &dough_by_factor_rule, "water_c"_a, py::kw_only(), "flour_c"_a, "room_c"_a, "friction_k"_a,
             "preferment_c"_a = py::none(),
             R"(Dough temperature the factor rule expects, °C: the mean of the known temperatures and friction.

Args: numbers, °C; friction_k in K. Raises InvalidInput. Source: trade textbooks.)");
  module.def("friction_from_batch", &friction_from_batch, py::kw_only(), "dough_c"_a, "flour_c"_a, "room_c"_a, "water_c"_a,
             "preferment_c"_a = py::none(),
             R"(Friction of a batch, K: n dough - flour - room - water (- preferment).

Args: numbers, °C, measured at one batch; use the result for the next batch of the same size on the same mixer.
Raises InvalidInput, also if the friction lies outside -10 to 25 K. Source: trade textbooks.)");
  module.def("ice_by_trade_rule", &ice_by_trade_rule, "water_g"_a, py::kw_only(), "tap_c"_a, "wanted_c"_a,
             R"(Ice at 0 °C to put in place of that much of the water, g: water (tap - wanted)/(tap + 80).

Args: numbers; water_g all of the water, g; temperatures °C. Raises InvalidInput; NoSolution if wanted is warmer than the tap.
Source: trade textbooks, in °F (tap - wanted)/(tap + 112).)");
}
