#include <pybind11/stl.h>

#include <cmath>

#include <ferment/base/error.hpp>
#include <ferment/heat/bowl.hpp>
#include <ferment/heat/piece.hpp>
#include <ferment/heat/surroundings.hpp>

#include "form.hpp"
#include "inputs.hpp"
#include "rooms.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

using Optional = std::optional<double>;
/// Times and temperatures, or a temperature log as a whole.
Course course_of(const Time& log, const std::optional<Number>& temperatures) {
  const bool whole = !temperatures && py::hasattr(log.object, "temperature_c");
  if (!temperatures && !whole) {
    throw InvalidInput("times alone are no measured temperatures",
                       {.path = "temperature_c", .advice = "give one for each, or a TemperatureLog in place of both"});
  }
  const Time time_h{whole ? py::object(log.object.attr("time_h")) : log.object};
  const Number temperature_c = whole ? Number{log.object.attr("temperature_c")} : *temperatures;
  Field hours = field::start_h;  // under the argument's name
  hours.name = "time_h";
  return {column_of(hours, time_h), column_of(field::temperature_c, temperature_c)};
}

Surroundings checked(Surroundings surroundings) {
  require(surroundings);
  return surroundings;
}

Surroundings in_air(Place place, Air air, Optional humidity_percent, Optional heat_transfer_w_per_m2_k) {
  place.air = air;
  place.humidity_percent = humidity_percent;
  place.heat_transfer_w_per_m2_k = heat_transfer_w_per_m2_k;
  return checked({{std::move(place)}});
}

/// Air of one temperature, refused under the argument's name.
Surroundings steady_air(const Field& field, const char* argument, double air_c, Air air, Optional humidity_percent,
                        Optional heat_transfer_w_per_m2_k) {
  Field named = field;
  named.name = argument;
  require(named, air_c);
  return in_air({.temperature_c = air_c}, air, humidity_percent, heat_transfer_w_per_m2_k);
}

void bind_surroundings(py::module_& module) {
  bind_form<DailySwing>(module, 3);
  bind_form<Course>(module, 2);
  bind_form<Place>(module, 1);

  bind_form<Surroundings>(module, 1)
      .def_static(
          "room",
          [](double room_c, Optional humidity_percent, Optional heat_transfer_w_per_m2_k) {
            return steady_air(field::room_c, "room_c", room_c, Air::room, humidity_percent, heat_transfer_w_per_m2_k);
          },
          "room_c"_a, py::kw_only(), "humidity_percent"_a = py::none(), "heat_transfer_w_per_m2_k"_a = py::none(),
          "A room of one temperature, °C, -30 to 60. Raises InvalidInput.")
      .def_static(
          "refrigerator",
          [](double air_c, bool fan, Optional humidity_percent, Optional heat_transfer_w_per_m2_k) {
            return steady_air(field::refrigerator_c, "air_c", air_c, fan ? Air::fan_refrigerator : Air::refrigerator,
                              humidity_percent, heat_transfer_w_per_m2_k);
          },
          "air_c"_a, py::kw_only(), "fan"_a = false, "humidity_percent"_a = py::none(),
          "heat_transfer_w_per_m2_k"_a = py::none(),
          "A refrigerator with air of that temperature, °C, -30 to 30, still or moved by a fan. Raises InvalidInput.")
      .def_static(
          "measured",
          [](const Time& time_h, const std::optional<Number>& temperature_c, const std::string& air,
             Optional humidity_percent, Optional heat_transfer_w_per_m2_k) {
            return in_air({.course = course_of(time_h, temperature_c)}, named<Air>(air), humidity_percent,
                          heat_transfer_w_per_m2_k);
          },
          "time_h"_a, "temperature_c"_a = py::none(), py::kw_only(), "air"_a = "room",
          "humidity_percent"_a = py::none(), "heat_transfer_w_per_m2_k"_a = py::none(),
          R"(Air of measured temperatures, straight lines between the readings.

Args: time_h: h of the process, rising. temperature_c: °C, one for each; or a TemperatureLog in place of both, whose
hours count from its first reading. Raises InvalidInput.)")
      .def_static(
          "daily_swing",
          [](double mean_c, double half_range_k, double warmest_h, const std::string& air, Optional humidity_percent,
             Optional heat_transfer_w_per_m2_k) {
            return in_air({.swing = DailySwing{mean_c, half_range_k, warmest_h}}, named<Air>(air), humidity_percent,
                          heat_transfer_w_per_m2_k);
          },
          "mean_c"_a, "half_range_k"_a, "warmest_h"_a = *field::warmest_h.initial, py::kw_only(), "air"_a = "room",
          "humidity_percent"_a = py::none(), "heat_transfer_w_per_m2_k"_a = py::none(),
          R"(A room that is warmest at warmest_h (h of the process), half_range_k above its mean, and coldest 12 h
later.

Args: mean_c: °C. half_range_k: K. Raises InvalidInput.)")
      .def_static(
          "proof_box",
          [](double air_c, Optional humidity_percent, Optional heat_transfer_w_per_m2_k) {
            return steady_air(field::proof_box_c, "air_c", air_c, Air::proof_box, humidity_percent,
                              heat_transfer_w_per_m2_k);
          },
          "air_c"_a, py::kw_only(), "humidity_percent"_a = py::none(), "heat_transfer_w_per_m2_k"_a = py::none(),
          "A proof box with air of that temperature, °C, 0 to 60. Raises InvalidInput.")
      .def_static(
          "humid_proof_box",
          [](double air_c) {
            return steady_air(field::proof_box_c, "air_c", air_c, Air::humid_proof_box, std::nullopt, std::nullopt);
          },
          "air_c"_a,
          "A proof box with steam or a pan of hot water in it, °C, 0 to 60: on a colder dough water condenses, "
          "which warms it sooner. Raises InvalidInput.")
      .def_static("dough", &Surroundings::dough, "dough_c"_a,
                  "A dough that is held at a temperature of its own, °C, -2 to 45. Raises InvalidInput.")
      .def_static(
          "dough_measured",
          [](const Time& time_h, const std::optional<Number>& temperature_c) {
            return checked({{{.course = course_of(time_h, temperature_c), .is_dough = true}}});
          },
          "time_h"_a, "temperature_c"_a = py::none(),
          R"(A dough whose own temperature was measured, by a probe in it; straight lines between the readings.

Args: time_h: h of the process, rising. temperature_c: °C, one for each; or a TemperatureLog in place of both, whose
hours count from its first reading. Raises InvalidInput.)")
      .def_static(
          "sequence",
          [](const std::vector<std::pair<double, Surroundings>>& parts) { return Surroundings::sequence(parts); },
          "parts"_a,
          R"(One after the other: a list of (from_h, Surroundings), from_h in hours of the process, rising. Raises
InvalidInput.)")
      .def(
          "temperature_at",
          [](const Surroundings& s, const Time& time_h) {
            return Inputs().add(field::start_h, time_h).run([&](std::span<const Values> in, std::span<double> out) {
              for (std::size_t i = 0; i < out.size(); ++i) out[i] = temperature_at(place_at(s, in[0][i]), in[0][i]);
            });
          },
          "time_h"_a, "Temperature at hours of the process, °C; a number or an array.");

  module.def(
      "airs",
      [] {
        NumbersByName values;
        for (const AirRow& row : airs()) values[py::str(std::string(row.name))] = row.heat_transfer_w_per_m2_k;
        return values;
      },
      "Kinds of air and the heat they take from a matt surface, W/(m² K), radiation included. Source: computed, "
      "Incropera's correlations (from "
      "memory).");
  module.def(
      "worktops",
      [] {
        NumbersByName values;
        for (const WorktopRow& row : worktops()) values[py::str(std::string(row.name))] = row.heat_transfer_w_per_m2_k;
        return values;
      },
      "Worktops and the heat they take from what stands on them over three hours, W/(m² K); 0 is as the air. Source: "
      "computed, k/√(παt).");
}

void bind_pieces(py::module_& module) {
  bind_form<Node>(module)
      .def("heat_loss_w", &heat_loss_w, "mean_c"_a, "air_c"_a,
           "W that leave it, vapour included, at a mean temperature in air of that temperature, °C.")
      .def("__repr__", Worded{"node_text"}, py::prepend());

  py::class_<Piece> piece = bind_form<Piece>(module, 1);
  const Form& form = form_of<Piece>();
  define_maker(
      form, "ball", 1, [](void* piece) { static_cast<Piece*>(piece)->shape = Shape::ball; },
      {"shape", "length_cm", "depth_cm", "material", "vessel_g"}, "A round piece. Raises InvalidInput.");
  define_maker(
      form, "oblong", 1, [](void* piece) { static_cast<Piece*>(piece)->shape = Shape::oblong; },
      {"shape", "depth_cm", "material", "vessel_g"},
      "A long piece, four times as long as thick if neither is given. Raises InvalidInput.");
  define_maker(
      form, "tub", 1, [](void* piece) { static_cast<Piece*>(piece)->shape = Shape::tub; }, {"shape", "length_cm"},
      "Dough in a round bowl or tub, half as deep as wide if neither is given. Raises InvalidInput.");
  define_maker(
      form, "flat", 1, [](void* piece) { static_cast<Piece*>(piece)->shape = Shape::flat; },
      {"shape", "length_cm", "material", "vessel_g"},
      "A disc with two faces and an edge: pizza, focaccia. Ten times as wide as thick if neither is given. Raises "
      "InvalidInput.");
  define_maker(
      form, "tin", 1, [](void* piece) { static_cast<Piece*>(piece)->shape = Shape::tin; }, {"shape", "material"},
      "Dough in a tin of sheet steel that stands in the air: length_cm, diameter_cm wide, depth_cm of the dough; twice "
      "as long as wide and half as deep if not given; vessel_g is the tin. Raises InvalidInput.");
  piece.def(
      "node",
      [](const Piece& p, double dough_g, const Surroundings& surroundings, double specific_heat_kj,
         double density_g_per_ml, double time_h) {
        return node_of(p,
                       {.mass_g = dough_g, .specific_heat_kj = specific_heat_kj, .density_g_per_ml = density_g_per_ml},
                       place_at(surroundings, time_h));
      },
      "dough_g"_a, "surroundings"_a, py::kw_only(), "specific_heat_kj"_a = DoughBody{}.specific_heat_kj,
      "density_g_per_ml"_a = DoughBody{}.density_g_per_ml, "time_h"_a = 0.0,
      R"(The piece as heat sees it: a Node with its heat loss and time constant.

Args: dough_g: g of all of the dough. surroundings: Surroundings, read at time_h. specific_heat_kj: kJ/(kg K).
density_g_per_ml: with the gas in it. Raises InvalidInput.)");
}

}  // namespace

void bind_piece(py::module_& module) {
  bind_surroundings(module);
  bind_pieces(module);
}
