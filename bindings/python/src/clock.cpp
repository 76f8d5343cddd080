#include <pybind11/stl.h>

#include <ferment/clock/drift.hpp>
#include <ferment/clock/speed.hpp>
#include <ferment/clock/temperature_law.hpp>
#include <ferment/rise/cautions.hpp>
#include <ferment/rise/rise.hpp>

#include "form.hpp"
#include "inputs.hpp"
#include "rooms.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

using Optional = std::optional<double>;

/// The law of `kitchen=None` is that of the default set, checked once.
TemperatureLaw law_or_default(const std::optional<Kitchen>& kitchen) {
  static const TemperatureLaw standard = law_of(Kitchen{});
  return kitchen ? law_of(*kitchen) : standard;
}

template <class Law>
void bind_law(py::module_& module, std::size_t positional = 0) {
  bind_form<Law>(module, positional)
      .def(
          "factor",
          [](const Law& law, const Number& temperature_c) {
            return Inputs()
                .add(field::temperature_c, temperature_c)
                .run([&](std::span<const Values> in, std::span<double> out) {
                  if (in[0].is_single()) {
                    out[0] = temperature_factor(law, in[0][0]);
                  } else {
                    temperature_factor(law, std::span<const double>(in[0].data(), in[0].size()), out);
                  }
                });
          },
          "temperature_c"_a, R"(Speed at a temperature over the speed at 25 °C; 0 where the yeast stands still.

Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput.)")
      .def(
          "local_q10",
          [](const Law& law, const Number& temperature_c) {
            return Inputs()
                .add(field::temperature_c, temperature_c)
                .run([&](std::span<const Values> in, std::span<double> out) {
                  require(field::temperature_c, in[0]);
                  for_each_value(in[0], out, [&](double value) { return local_q10(law, value); });
                });
          },
          "temperature_c"_a, R"(Local temperature coefficient, exp(10 K d ln factor/dT).

Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where the
factor is 0.)");
}

/// A dough from keyword arguments, for functions that take one.
Dough dough(double dough_c, double yeast_percent, const std::string& yeast, double salt_percent, double water_percent,
            double sugar_percent, double gluten_percent, double altitude_m) {
  return {dough_c,       yeast_percent, named<Yeast>(yeast), salt_percent,
          water_percent, sugar_percent, gluten_percent,      altitude_m};
}

/// The arguments that describe a dough, in the order of Dough's members.
struct DoughArguments {
  const Number &dough_c, &yeast_percent;
  const std::string& yeast;
  const Number &salt_percent, &water_percent, &sugar_percent, &gluten_percent, &altitude_m;

  void add_to(Inputs& inputs) const {
    inputs.add(field::dough_c, dough_c)
        .add(field::yeast_percent, yeast_percent)
        .add(field::salt_percent, salt_percent)
        .add(field::water_percent, water_percent)
        .add(field::sugar_percent, sugar_percent)
        .add(field::gluten_percent, gluten_percent)
        .add(field::altitude_m, altitude_m);
  }
};

/// The doughs of read inputs, of which the first is the question's own.
Doughs doughs_of(std::span<const Values> in, Yeast yeast) {
  return {.dough_c = in[1],
          .yeast_percent = in[2],
          .yeast = yeast,
          .salt_percent = in[3],
          .water_percent = in[4],
          .sugar_percent = in[5],
          .gluten_percent = in[6],
          .altitude_m = in[7]};
}

/// The default of an argument, from its field.
py::float_ usual(const Field& field) { return py::float_(*field.initial); }

void bind_speed(py::module_& module) {
  module.def(
      "speed",
      [](const Number& dough_c, const Number& salt_percent, const Number& water_percent, const Number& sugar_percent,
         const std::optional<Kitchen>& kitchen, const std::string& missing) {
        return Inputs()
            .add(field::dough_c, dough_c)
            .add(field::salt_percent, salt_percent)
            .add(field::water_percent, water_percent)
            .add(field::sugar_percent, sugar_percent)
            .missing(missing)
            .run([&](std::span<const Values> in, std::span<double> out) {
              speed({in[0], in[1], in[2], in[3]}, out, kitchen_or_default(kitchen));
            });
      },
      py::kw_only(), "dough_c"_a, "salt_percent"_a = usual(field::salt_percent),
      "water_percent"_a = usual(field::water_percent), "sugar_percent"_a = usual(field::sugar_percent),
      "kitchen"_a = py::none(), "missing"_a = "raise",
      R"(Equivalent hours per hour: temperature factor × solute factor, 1 at the reference dough.

Args: numbers or arrays that broadcast: dough_c in °C, the rest percent of flour weight.
Returns: a number, or an array of the common shape; 0 where the yeast stands still.
Raises InvalidInput. Source: the kitchen's temperature law; linear in water activity.

missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out.)");
}

void bind_rise(py::module_& module) {
  module.def(
      "hours_to_rise",
      [](const Number& rise_percent, const Number& dough_c, const Number& yeast_percent, const std::string& yeast,
         const Number& salt_percent, const Number& water_percent, const Number& sugar_percent,
         const Number& gluten_percent, const Number& altitude_m, const std::optional<Kitchen>& kitchen,
         const std::string& unreachable, const std::string& missing) {
        const DoughArguments arguments{dough_c,       yeast_percent, yeast,          salt_percent,
                                       water_percent, sugar_percent, gluten_percent, altitude_m};
        const Yeast kind = named<Yeast>(yeast);
        const Unreachable policy = named<Unreachable>(unreachable);
        Inputs inputs;
        inputs.missing(missing);
        inputs.add(field::rise_percent, rise_percent);
        arguments.add_to(inputs);
        return inputs.run([&](std::span<const Values> in, std::span<double> out) {
          hours_to_rise(in[0], doughs_of(in, kind), out, kitchen_or_default(kitchen), policy);
        });
      },
      "rise_percent"_a, py::kw_only(), "dough_c"_a, "yeast_percent"_a, "yeast"_a = "instant",
      "salt_percent"_a = usual(field::salt_percent), "water_percent"_a = usual(field::water_percent),
      "sugar_percent"_a = usual(field::sugar_percent), "gluten_percent"_a = usual(field::gluten_percent),
      "altitude_m"_a = usual(field::altitude_m), "kitchen"_a = py::none(), "unreachable"_a = "raise",
      "missing"_a = "raise",
      R"(Hours from the end of mixing until the dough has gained that much of its volume, at a constant dough
temperature.

Args: numbers or arrays that broadcast: rise_percent % of the volume just after mixing (doubled is 100); dough_c the
dough's own temperature in °C, not the room's; yeast_percent as weighed, and the others, percent of flour weight;
altitude_m in m. yeast: instant, active_dry (wetted first), active_dry_unwetted or compressed. unreachable: "raise", or
"inf" for maps. Returns: hours, a number or an array of the common shape. Raises InvalidInput; NoSolution for a rise
the dough cannot hold or make, naming the reachable rise; OutsideModel where the yeast stands still. For arrays the
message names the first index and the count. Source: clock, gas and retention of the model in closed form (Rosso et al.
1993; Weiss 1974; Buck 1996; ISO 2533).

missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out.)");

  module.def(
      "rise_after",
      [](const Time& time_h, const Number& dough_c, const Number& yeast_percent, const std::string& yeast,
         const Number& salt_percent, const Number& water_percent, const Number& sugar_percent,
         const Number& gluten_percent, const Number& altitude_m, const std::optional<Kitchen>& kitchen,
         const std::string& missing) {
        const DoughArguments arguments{dough_c,       yeast_percent, yeast,          salt_percent,
                                       water_percent, sugar_percent, gluten_percent, altitude_m};
        const Yeast kind = named<Yeast>(yeast);
        Inputs inputs;
        inputs.missing(missing);
        inputs.add(field::time_h, time_h);
        arguments.add_to(inputs);
        return inputs.run([&](std::span<const Values> in, std::span<double> out) {
          rise_after(in[0], doughs_of(in, kind), out, kitchen_or_default(kitchen));
        });
      },
      "time_h"_a, py::kw_only(), "dough_c"_a, "yeast_percent"_a, "yeast"_a = "instant",
      "salt_percent"_a = usual(field::salt_percent), "water_percent"_a = usual(field::water_percent),
      "sugar_percent"_a = usual(field::sugar_percent), "gluten_percent"_a = usual(field::gluten_percent),
      "altitude_m"_a = usual(field::altitude_m), "kitchen"_a = py::none(), "missing"_a = "raise",
      R"(Rise in percent after some hours at a constant dough temperature, the inverse of hours_to_rise.

Args: time_h: hours or a timedelta, a number or an array; the others as in hours_to_rise.
Returns: percent, a number or an array of the common shape; 0 at 0 h. Raises InvalidInput.
Source: as hours_to_rise.

missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out.)");
}

void bind_drift(py::module_& module) {
  module.def(
      "same_rise",
      [](const Time& time_h, const Number& from_c, const Number& to_c, const std::optional<Kitchen>& kitchen,
         const std::string& missing) {
        return Inputs()
            .add(field::time_h, time_h)
            .add(field::from_c, from_c)
            .add(field::to_c, to_c)
            .missing(missing)
            .run([&](std::span<const Values> in, std::span<double> out) {
              same_rise(in[0], in[1], in[2], out, kitchen_or_default(kitchen));
            });
      },
      "time_h"_a, py::kw_only(), "from_c"_a, "to_c"_a, "kitchen"_a = py::none(), "missing"_a = "raise",
      R"(A known time at another dough temperature, hours: "2 h at 24 °C; mine is 18 °C".

Args: numbers or arrays that broadcast: time_h in hours or a timedelta, from_c and to_c dough temperatures in °C.
The yeast's strength and the formula cancel as long as they are the same; the dough makes the same gas, and a colder one
stands a little lower at it. Raises InvalidInput; OutsideModel where the yeast stands still.
Source: ratio of the kitchen's temperature law.

missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out.)");

  module.def(
      "drifted_c",
      [](const Number& start_c, const Time& time_h, const Number& surroundings_c, const Time& time_constant_h,
         const std::string& missing) {
        return Inputs()
            .add(field::start_c, start_c)
            .add(field::time_h, time_h)
            .add(field::surroundings_c, surroundings_c)
            .add(field::time_constant_h, time_constant_h)
            .missing(missing)
            .run([](std::span<const Values> in, std::span<double> out) {
              drifted_c({in[0], in[2], in[3]}, in[1], out);
            });
      },
      "start_c"_a, "time_h"_a, py::kw_only(), "surroundings_c"_a, "time_constant_h"_a, "missing"_a = "raise",
      R"(Temperature of a dough that relaxes to its surroundings, °C: surroundings + (start - surroundings)
exp(-t/time_constant).

Args: numbers or arrays that broadcast: °C; times in hours or timedeltas. Raises InvalidInput. Source: Newton's law of
cooling.

missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out.)");
  module.def(
      "drift_equivalent_h",
      [](const Time& time_h, const Number& start_c, const Number& surroundings_c, const Time& time_constant_h,
         const std::optional<Kitchen>& kitchen, const std::string& missing) {
        const TemperatureLaw law = law_or_default(kitchen);
        return Inputs()
            .add(field::time_h, time_h)
            .add(field::start_c, start_c)
            .add(field::surroundings_c, surroundings_c)
            .add(field::time_constant_h, time_constant_h)
            .missing(missing)
            .run([&](std::span<const Values> in, std::span<double> out) {
              drift_equivalent_h(law, {in[1], in[2], in[3]}, in[0], out);
            });
      },
      "time_h"_a, py::kw_only(), "start_c"_a, "surroundings_c"_a, "time_constant_h"_a, "kitchen"_a = py::none(),
      "missing"_a = "raise",
      R"(Equivalent hours of temperature that pass in a drifting dough: the integral of the kitchen's temperature
factor, exactly.

Args: numbers or arrays that broadcast: hours or timedeltas, °C. Salt and sugar multiply the result as they do speed().
Returns: equivalent hours. Raises InvalidInput. Source: closed form by partial fractions for the cardinal law (Rosso et
al. 1993), Gauss-Legendre quadrature to rounding for the others.

missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out.)");
  module.def(
      "drift_hours",
      [](const Time& equivalent_h, const Number& start_c, const Number& surroundings_c, const Time& time_constant_h,
         const std::string& unreachable, const std::optional<Kitchen>& kitchen, const std::string& missing) {
        const TemperatureLaw law = law_or_default(kitchen);
        const Unreachable policy = named<Unreachable>(unreachable);
        return Inputs()
            .add(field::equivalent_h, equivalent_h)
            .add(field::start_c, start_c)
            .add(field::surroundings_c, surroundings_c)
            .add(field::time_constant_h, time_constant_h)
            .missing(missing)
            .run([&](std::span<const Values> in, std::span<double> out) {
              drift_hours(law, {in[1], in[2], in[3]}, in[0], out, policy);
            });
      },
      "equivalent_h"_a, py::kw_only(), "start_c"_a, "surroundings_c"_a, "time_constant_h"_a, "unreachable"_a = "raise",
      "kitchen"_a = py::none(), "missing"_a = "raise",
      R"(Hours until equivalent hours have passed in a drifting dough; the inverse of drift_equivalent_h.

Args: numbers or arrays that broadcast: equivalent hours, °C, hours or timedeltas. unreachable: "raise", or "inf" for
maps. Raises InvalidInput; NoSolution where the clock stops before, naming what it reaches. Source: as
drift_equivalent_h, by Halley's method.

missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out.)");
  module.def(
      "series_equivalent_h",
      [](const py::array_t<double, py::array::c_style | py::array::forcecast>& time_h,
         const py::array_t<double, py::array::c_style | py::array::forcecast>& temperature_c,
         const std::optional<Kitchen>& kitchen) {
        if (time_h.ndim() != 1 || temperature_c.ndim() != 1) {
          throw InvalidInput("a temperature series is two lists of one dimension, times and temperatures",
                             {.path = "time_h"});
        }
        const auto length = [](const auto& array) { return static_cast<std::size_t>(array.size()); };
        py::array_t<double> out(time_h.size());
        series_equivalent_h(law_or_default(kitchen), {time_h.data(), length(time_h)},
                            {temperature_c.data(), length(temperature_c)}, {out.mutable_data(), length(out)});
        return out;
      },
      "time_h"_a, "temperature_c"_a, py::kw_only(), "kitchen"_a = py::none(),
      R"(Equivalent hours over a measured temperature that is linear between readings, from the first reading to each.

Args: time_h: hours, rising; temperature_c: °C, one for each; arrays of one dimension with at least two readings.
Returns: equivalent hours, an array. Raises InvalidInput. Source: exact antiderivative of the cardinal law; quadrature
for the others.)");
}

void bind_dose(py::module_& module) {
  module.def(
      "reachable_rise",
      [](double dough_c, double yeast_percent, const std::string& yeast, double salt_percent, double water_percent,
         double sugar_percent, double gluten_percent, double altitude_m, const std::optional<Kitchen>& kitchen) {
        return reachable_rise(dough(dough_c, yeast_percent, yeast, salt_percent, water_percent, sugar_percent,
                                    gluten_percent, altitude_m),
                              kitchen_or_default(kitchen));
      },
      py::kw_only(), "dough_c"_a, "yeast_percent"_a, "yeast"_a = "instant",
      "salt_percent"_a = *field::salt_percent.initial, "water_percent"_a = *field::water_percent.initial,
      "sugar_percent"_a = *field::sugar_percent.initial, "gluten_percent"_a = *field::gluten_percent.initial,
      "altitude_m"_a = *field::altitude_m.initial, "kitchen"_a = py::none(),
      R"(The rise a dough nears but never reaches, percent: what it can hold, or what its sugars can make.

Args: numbers, as in hours_to_rise. Raises InvalidInput. Source: as hours_to_rise.)");

  module.def(
      "yeast_for_rise",
      [](const Number& rise_percent, const Time& target_h, const Number& dough_c, const std::string& yeast,
         const Number& salt_percent, const Number& water_percent, const Number& sugar_percent,
         const Number& gluten_percent, const Number& altitude_m, const std::optional<Kitchen>& kitchen,
         const std::string& missing) {
        const Yeast kind = named<Yeast>(yeast);
        return Inputs()
            .missing(missing)
            .add(field::rise_percent, rise_percent)
            .add(field::target_h, target_h)
            .add(field::dough_c, dough_c)
            .add(field::salt_percent, salt_percent)
            .add(field::water_percent, water_percent)
            .add(field::sugar_percent, sugar_percent)
            .add(field::gluten_percent, gluten_percent)
            .add(field::altitude_m, altitude_m)
            .run([&](std::span<const Values> in, std::span<double> out) {
              for_each_scenario(in, out, [&](std::size_t i) {
                const Dough asked{.dough_c = in[2][i],
                                  .yeast_percent = 1,
                                  .yeast = kind,
                                  .salt_percent = in[3][i],
                                  .water_percent = in[4][i],
                                  .sugar_percent = in[5][i],
                                  .gluten_percent = in[6][i],
                                  .altitude_m = in[7][i]};
                return yeast_for_rise(in[0][i], in[1][i], asked, kitchen_or_default(kitchen));
              });
            });
      },
      "rise_percent"_a, "target_h"_a, py::kw_only(), "dough_c"_a, "yeast"_a = "instant",
      "salt_percent"_a = usual(field::salt_percent), "water_percent"_a = usual(field::water_percent),
      "sugar_percent"_a = usual(field::sugar_percent), "gluten_percent"_a = usual(field::gluten_percent),
      "altitude_m"_a = usual(field::altitude_m), "kitchen"_a = py::none(), "missing"_a = "raise",
      R"(Yeast dose, percent of flour as weighed, with which the rise takes that long.

Args: numbers or arrays that broadcast: rise_percent %, target_h hours or timedeltas, the others as in hours_to_rise.
Returns: percent of that kind of yeast. Raises InvalidInput; NoSolution naming the hours that the smallest and largest
dose give; OutsideModel. Source: bracketed root of hours_to_rise in the logarithm of the dose.

missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out.)");
}

void bind_explanation(py::module_& module) {
  bind_form<Factor>(module);
  bind_form<Explanation>(module)
      .def_property_readonly(
          "factors",
          [](const Explanation& e) {
            NumbersByName d;
            for (const Factor& f : e.factors) d[py::str(f.name)] = f.times;
            return d;
          },
          "name → hours times this; to_dict has the values as well")
      .def("__repr__", Worded{"explanation_text"}, py::prepend());
  module.def(
      "explain",
      [](const Number& rise_percent, const Number& dough_c, const Number& yeast_percent, const std::string& yeast,
         const Number& salt_percent, const Number& water_percent, const Number& sugar_percent,
         const Number& gluten_percent, const Number& altitude_m,
         const std::optional<Kitchen>& kitchen) -> std::variant<Explanation, py::array> {
        const DoughArguments arguments{dough_c,       yeast_percent, yeast,          salt_percent,
                                       water_percent, sugar_percent, gluten_percent, altitude_m};
        const Yeast kind = named<Yeast>(yeast);
        Inputs inputs;
        inputs.add(field::rise_percent, rise_percent);
        arguments.add_to(inputs);
        std::vector<Explanation> all;
        const Answer hours = inputs.run([&](std::span<const Values> in, std::span<double> out) {
          const Doughs doughs = doughs_of(in, kind);
          for_each_scenario(in, out, [&](std::size_t i) {
            const Dough its{doughs.dough_c[i],        doughs.yeast_percent[i], kind,
                            doughs.salt_percent[i],   doughs.water_percent[i], doughs.sugar_percent[i],
                            doughs.gluten_percent[i], doughs.altitude_m[i]};
            all.push_back(explain(in[0][i], its, kitchen_or_default(kitchen)));
            return all.back().hours;
          });
        });
        if (PyFloat_Check(hours.object.ptr())) return all.front();
        const py::object numpy = py::module_::import("numpy");
        py::object objects = numpy.attr("empty")(all.size(), "dtype"_a = "object");
        for (std::size_t i = 0; i < all.size(); ++i) objects[py::int_(i)] = py::cast(all[i]);
        return py::array(objects.attr("reshape")(hours.object.attr("shape")));
      },
      "rise_percent"_a, py::kw_only(), "dough_c"_a, "yeast_percent"_a, "yeast"_a = "instant",
      "salt_percent"_a = usual(field::salt_percent), "water_percent"_a = usual(field::water_percent),
      "sugar_percent"_a = usual(field::sugar_percent), "gluten_percent"_a = usual(field::gluten_percent),
      "altitude_m"_a = usual(field::altitude_m), "kitchen"_a = py::none(),
      R"(The factors that made a time: yeast ×, temperature ×, salt ×, water ×, sugar ×, gluten ×, altitude ×.

Args: as in hours_to_rise; of arrays an array of Explanations comes back. Walks from the reference dough (25 °C, 1 %
instant yeast, 2 % salt, 65 % water, no sugar, sea level) to this one, one change at a time; the product is exact, each
factor depends a little on the order. Raises as hours_to_rise. Source: ratios of hours_to_rise.)");
}

void bind_over_proof(py::module_& module) {
  bind_form<Dough>(module).def(
      "at",
      [](const Dough& d, double dough_c) {
        Dough other = d;
        other.dough_c = dough_c;
        return other;
      },
      "dough_c"_a, "the same dough at another temperature, °C");
  module.def(
      "over_proof_ratio",
      [](const Dough& d, const std::string& standing, bool final_proof, double start_ratio,
         const std::optional<Kitchen>& k) {
        return over_proof_ratio(d, named<Standing>(standing), final_proof, start_ratio, kitchen_or_default(k));
      },
      "dough"_a, py::kw_only(), "standing"_a, "final_proof"_a, "start_ratio"_a = 1.0, "kitchen"_a = py::none(),
      "Volume over mixed volume above which a dough is over-proofed, standing in a \"tin\" (or tub) or \"free\". "
      "Common practice, no source; the "
      "shares are parameters of the kitchen. Raises InvalidInput.");
}

void bind_cautions(py::module_& module) {
  module.def(
      "cautions",
      [](Optional dough_c, Optional yeast_percent, const std::string& yeast, Optional salt_percent,
         Optional water_percent, Optional sugar_percent, Optional gluten_percent, Optional altitude_m,
         Optional rise_percent, Optional water_c, Optional refrigerator_c, Optional perishable_h,
         const std::optional<Kitchen>& kitchen) {
        return cautions({.dough_c = dough_c,
                         .yeast_percent = yeast_percent,
                         .yeast = named<Yeast>(yeast),
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
      py::kw_only(), "dough_c"_a = py::none(), "yeast_percent"_a = py::none(), "yeast"_a = "instant",
      "salt_percent"_a = py::none(), "water_percent"_a = py::none(), "sugar_percent"_a = py::none(),
      "gluten_percent"_a = py::none(), "altitude_m"_a = py::none(), "rise_percent"_a = py::none(),
      "water_c"_a = py::none(), "refrigerator_c"_a = py::none(), "perishable_h"_a = py::none(),
      "kitchen"_a = py::none(),
      R"(The notices that belong to plain numbers, most severe first; an empty list if there is nothing to say.

Args: numbers, all optional: °C, percent of flour, m, h. perishable_h: hours a dough with egg, milk or other perishable
food is held at dough_c. Raises InvalidInput outside the field table, but answers any finite water_c.
Source: limits of the trade (common practice) and of the laws; food safety defers to the local food code.)");
}
}  // namespace

void bind_laws(py::module_& module) {
  bind_law<ConstantQ10>(module, 1);
  bind_law<Arrhenius>(module, 1);
  bind_law<SquareRoot>(module);
  bind_law<Cardinal>(module);
}

void bind_clock(py::module_& module) {
  bind_speed(module);
  bind_rise(module);
  bind_drift(module);
  bind_dose(module);
  bind_explanation(module);
  bind_over_proof(module);
  bind_cautions(module);
}
