#include <pybind11/stl.h>

#include <ferment/base/field.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/base/units.hpp>
#include <ferment/clock/temperature_law.hpp>

#include "form.hpp"
#include "inputs.hpp"
#include "rooms.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

constexpr Field fahrenheit_point{"fahrenheit",
                                 "temperature",
                                 "°F",
                                 -459.67,
                                 1e6,
                                 field::must_be_given,
                                 Quantity::ratio,
                                 "a temperature point",
                                 "absolute zero",
                                 "absolute zero is −459.67 °F"};
constexpr Field celsius_point{"celsius",
                              "temperature",
                              "°C",
                              -273.15,
                              1e6,
                              field::must_be_given,
                              Quantity::ratio,
                              "a temperature point",
                              "absolute zero",
                              "absolute zero is −273.15 °C"};
constexpr Field fahrenheit_difference{"fahrenheit_degrees",
                                      "difference",
                                      "°F",
                                      -1e6,
                                      1e6,
                                      field::must_be_given,
                                      Quantity::ratio,
                                      "a difference of temperatures",
                                      "",
                                      "give a finite difference"};

constexpr Field ounces_weight{"ounces", "weight", "oz", 0, 1e6, field::must_be_given, Quantity::mass};
constexpr Field grams_weight{"grams", "weight", "g", 0, 3e7, field::must_be_given, Quantity::mass};

/// A conversion of one number, for numbers and arrays.
template <class Convert>
auto conversion(const Field& from, Convert convert) {
  return [&from, convert](const Number& argument) {
    return Inputs().add(from, argument).run([&](std::span<const Values> in, std::span<double> out) {
      require(from, in[0]);
      for (std::size_t i = 0; i < out.size(); ++i) out[i] = convert(in[0][i]);
    });
  };
}

}  // namespace

void bind_base(py::module_& module) {
  module.def("celsius", conversion(fahrenheit_point, [](double f) { return celsius(f); }), "fahrenheit"_a,
             R"(A temperature point in °F as °C: (F - 32)/1.8.

Args: fahrenheit: a number or an array, °F, at or above -459.67.
Returns: °C. Raises InvalidInput if not finite or below absolute zero. Source: definition of the scales.)");
  module.def("fahrenheit", conversion(celsius_point, [](double c) { return fahrenheit(c); }), "celsius"_a,
             R"(A temperature point in °C as °F: 1.8 C + 32.

Args: celsius: a number or an array, °C, at or above -273.15.
Returns: °F. Raises InvalidInput if not finite or below absolute zero. Source: definition of the scales.)");
  module.def("kelvins", conversion(fahrenheit_difference, [](double f) { return kelvins(f); }), "fahrenheit_degrees"_a,
             R"(A *difference* of temperatures in Fahrenheit degrees as K: F/1.8.

Args: fahrenheit_degrees: a number or an array. 20 °F of friction are 11.1 K.
Returns: K. Raises InvalidInput if not finite. Source: definition of the scales.)");

  module.def("grams", conversion(ounces_weight, [](double oz) { return grams(oz); }), "ounces"_a,
             R"(A weight in avoirdupois ounces as grams: 28.349523125 g each.

Args: ounces: a number or an array, at or above 0. Returns: g. Raises InvalidInput. Source: definition (international
pound, 1959).)");
  module.def("ounces", conversion(grams_weight, [](double g) { return ounces(g); }), "grams"_a,
             R"(A weight in grams as avoirdupois ounces.

Args: grams: a number or an array, at or above 0. Returns: oz. Raises InvalidInput. Source: definition (international
pound, 1959).)");

  py::class_<Field>(module, "Field",
                    "A row of the field table: name, unit, bounds, default, meaning and source of an input.")
      .def_property_readonly("name", [](const Field& f) { return std::string(f.name); })
      .def_property_readonly("label", [](const Field& f) { return std::string(f.label); })
      .def_property_readonly("unit", [](const Field& f) { return std::string(f.unit); })
      .def_readonly("low", &Field::low, "lowest allowed value")
      .def_readonly("high", &Field::high, "highest allowed value")
      .def_property_readonly(
          "initial", [](const Field& f) { return f.initial; }, "default, or None if the input must be given")
      .def_property_readonly("quantity", [](const Field& f) { return std::string(name_of(f.quantity)); })
      .def_property_readonly("meaning", [](const Field& f) { return std::string(f.meaning); })
      .def_property_readonly("source", [](const Field& f) { return std::string(f.source); })
      .def("__repr__",
           [](const Field& f) { return "<Field " + std::string(f.name) + " [" + std::string(f.unit) + "]>"; });
  py::class_<Parameter, Field>(module, "Parameter", "A row of the parameter table: a field with its prior.")
      .def_property_readonly(
          "scale", [](const Parameter& p) { return std::string(name_of(p.scale)); },
          "fixed, linear, logarithmic or logit: the coordinate it is learned in")
      .def_readonly("prior_sd", &Parameter::prior_sd, "sd in that coordinate");
  module.def(
      "moved", &moved, "parameter"_a, "value"_a, "by"_a,
      "A value moved in the coordinate in which its parameter is learned, and kept inside the table's bounds.\n\n"
      "Args: value: in the parameter's unit, by: in its coordinate. Raises InvalidInput for what is no number. "
      "Source: Parameter.scale.");
  module.def(
      "fields", [] { return std::vector<Field>(input_fields().begin(), input_fields().end()); },
      "All inputs: the field table.");
  module.def(
      "parameters", [] { return std::vector<Parameter>(parameters().begin(), parameters().end()); },
      "All parameters of a kitchen: the parameter table.");

  bind_form<Notice>(module, 4).def("__repr__", Worded{"notice_text"}, py::prepend());

  bind_form<LearnedBake>(module);
  bind_form<LearnedGain>(module);
  bind_form<Kitchen>(module)
      .def_static("named", &kitchen_named, "name"_a,
                  "A frozen named parameter set. Known: \"2026-2\", the default, and \"2026-1\". Raises InvalidInput.")
      .def_property_readonly(
          "name", [](const Kitchen& k) { return name_of(k); },
          "its own name, or that of the frozen set it is; empty for a changed one")
      .def_property_readonly("temperature_law", &law_of, "the temperature law with its parameters")
      .def(
          "with_law", [](const Kitchen& k, const TemperatureLaw& law) { return with_law(k, law); }, "law"_a,
          "The kitchen with this temperature law and its parameters. Raises InvalidInput.")
      .def_property_readonly(
          "covariance",
          [](const Kitchen& k) {
            const std::vector<double> matrix = covariance_of(k);
            const auto n = static_cast<py::ssize_t>(learnable().size());
            return py::array_t<double>({n, n}, matrix.data());
          },
          "n × n, in the fitted coordinates of the learnable parameters, in the order of the table; the prior's if it "
          "has none of its own")
      .def("__repr__", Worded{"kitchen_text"}, py::prepend());
}
