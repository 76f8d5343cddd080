#include <pybind11/stl.h>

#include <ferment/process/check.hpp>

#include "numbers.hpp"

using namespace ferment;
using namespace pybind11::literals;

void bind_process(py::module_& module) {
  using Optional = std::optional<double>;
  module.def(
      "check",
      [](Optional dough_c, Optional yeast_percent, const std::string& yeast, Optional salt_percent, Optional water_percent, Optional sugar_percent,
         Optional gluten_percent, Optional altitude_m, Optional rise_percent, Optional water_c, Optional refrigerator_c, Optional perishable_h,
         const std::optional<Kitchen>& kitchen) {
        return check({.dough_c = dough_c,
                      .yeast_percent = yeast_percent,
                      .yeast = yeast_named(yeast),
                      .salt_percent = salt_percent,
                      .water_percent = water_percent,
                      .sugar_percent = sugar_percent,
                      .gluten_percent = gluten_percent,
                      .altitude_m = altitude_m,
                      .rise_percent = rise_percent,
                      .water_c = water_c,
                      .refrigerator_c = refrigerator_c,
                      .perishable_h = perishable_h},
                     kitchen_or_default(kitchen));
      },
      py::kw_only(), "dough_c"_a = py::none(), "yeast_percent"_a = py::none(), "yeast"_a = "instant", "salt_percent"_a = py::none(),
      "water_percent"_a = py::none(), "sugar_percent"_a = py::none(), "gluten_percent"_a = py::none(), "altitude_m"_a = py::none(),
      "rise_percent"_a = py::none(), "water_c"_a = py::none(), "refrigerator_c"_a = py::none(), "perishable_h"_a = py::none(),
      "kitchen"_a = py::none(),
      R"(The notices that belong to plain numbers, most severe first; an empty list if there is nothing to say.

Args: numbers, all optional: °C, percent of flour, m, h. perishable_h: hours a dough with egg, milk or other perishable
food is held at dough_c. Raises InvalidInput outside the field table, but answers any finite water_c.
Source: limits of the trade (common practice) and of the laws; food safety defers to the local food code.)");
}
