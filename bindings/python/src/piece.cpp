#include <pybind11/stl.h>

#include <cmath>

#include <ferment/base/error.hpp>
#include <ferment/heat/mixing.hpp>
#include <ferment/heat/piece.hpp>
#include <ferment/heat/surroundings.hpp>

#include "numbers.hpp"
#include "values.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

using Optional = std::optional<double>;
using PlaceTemperature = std::variant<double, DailySwing, Course>;

Course course_of(const Time& time_h, const Number& temperature_c) {
  return {column_of(field::start_h, time_h), column_of(field::temperature_c, temperature_c)};
}

Surroundings checked(Surroundings surroundings) {
  require_surroundings(surroundings);
  return surroundings;
}

Surroundings in_air(PlaceTemperature temperature_c, Air air, Optional humidity_percent,
                    Optional heat_transfer_w_per_m2_k) {
  return checked({{{.temperature_c = std::move(temperature_c),
                    .air = air,
                    .humidity_percent = humidity_percent,
                    .heat_transfer_w_per_m2_k = heat_transfer_w_per_m2_k}}});
}

void bind_surroundings(py::module_& module) {
  py::class_<DailySwing> swing(
      module, "DailySwing",
      R"(A temperature that swings over the day: mean_c + half_range_k·cos(2π(t − warmest_h)/24 h).

Args: mean_c: °C. half_range_k: K, warmest less mean. warmest_h: h of the process. Checked when it is used.)");
  swing
      .def(py::init([](double mean_c, double half_range_k, double warmest_h) {
             return DailySwing{mean_c, half_range_k, warmest_h};
           }),
           "mean_c"_a, "half_range_k"_a, "warmest_h"_a = DailySwing{}.warmest_h)
      .def_readonly("mean_c", &DailySwing::mean_c)
      .def_readonly("half_range_k", &DailySwing::half_range_k)
      .def_readonly("warmest_h", &DailySwing::warmest_h);
  add_value_methods(swing, 2, {"mean_c", "half_range_k", "warmest_h"});

  py::class_<Course> course(
      module, "Course", R"(Measured temperatures, straight lines between; before the first and after the last as there.

Args: time_h: h of the process, rising; numbers, timedeltas or an array. temperature_c: °C, one for each. Checked when
it is used.)");
  course.def(py::init(&course_of), "time_h"_a, "temperature_c"_a)
      .def_readonly("time_h", &Course::time_h)
      .def_readonly("temperature_c", &Course::temperature_c);
  add_value_methods(course, 2, {"time_h", "temperature_c"});

  py::class_<Place> place(module, "Place", R"(One place of the surroundings.

Args: temperature_c: °C, a number, DailySwing or Course. from_h: h of the process from which on the dough is there.
air: "room", "refrigerator", "fan_refrigerator" or "proof_box". humidity_percent: relative, for an open dough.
heat_transfer_w_per_m2_k: in place of the air's own. is_dough: the temperature is the dough's own. Checked when it is
used.)");
  place
      .def(py::init([](PlaceTemperature temperature_c, Optional from_h, const std::string& air,
                       Optional humidity_percent, Optional heat_transfer_w_per_m2_k, bool is_dough) {
             return Place{from_h.value_or(Place{}.from_h),
                          std::move(temperature_c),
                          air_named(air),
                          humidity_percent,
                          heat_transfer_w_per_m2_k,
                          is_dough};
           }),
           "temperature_c"_a, py::kw_only(), "from_h"_a = py::none(), "air"_a = "room",
           "humidity_percent"_a = py::none(), "heat_transfer_w_per_m2_k"_a = py::none(), "is_dough"_a = false)
      .def_readonly("temperature_c", &Place::temperature_c)
      .def_property_readonly("from_h",
                             [](const Place& p) { return std::isfinite(p.from_h) ? Optional(p.from_h) : std::nullopt; })
      .def_property_readonly("air", [](const Place& p) { return std::string(name_of(p.air)); })
      .def_readonly("humidity_percent", &Place::humidity_percent)
      .def_readonly("heat_transfer_w_per_m2_k", &Place::heat_transfer_w_per_m2_k)
      .def_readonly("is_dough", &Place::is_dough);
  add_value_methods(place, 1,
                    {"temperature_c", "from_h", "air", "humidity_percent", "heat_transfer_w_per_m2_k", "is_dough"});

  const auto air_options = [](auto& cls, const char* name, Air air, const char* doc) {
    cls.def_static(
        name,
        [air](double air_c, Optional humidity_percent, Optional heat_transfer_w_per_m2_k) {
          return in_air(air_c, air, humidity_percent, heat_transfer_w_per_m2_k);
        },
        "air_c"_a, py::kw_only(), "humidity_percent"_a = py::none(), "heat_transfer_w_per_m2_k"_a = py::none(), doc);
  };
  py::class_<Surroundings> surroundings(module, "Surroundings", R"(What the dough sits in over the day. A value.

A function of the process's hours: it never restarts with a stage. Best made by room, refrigerator, proof_box, measured,
daily_swing, dough, dough_measured or sequence. Args: places: list of Place, in the order of time. Raises
InvalidInput.)");
  surroundings.def(py::init([](std::vector<Place> places) { return checked({std::move(places)}); }), "places"_a)
      .def_readonly("places", &Surroundings::places)
      .def_static(
          "room",
          [](double room_c, Optional humidity_percent, Optional heat_transfer_w_per_m2_k) {
            return in_air(room_c, Air::room, humidity_percent, heat_transfer_w_per_m2_k);
          },
          "room_c"_a, py::kw_only(), "humidity_percent"_a = py::none(), "heat_transfer_w_per_m2_k"_a = py::none(),
          "A room of one temperature, °C, -30 to 60. Raises InvalidInput.")
      .def_static(
          "refrigerator",
          [](double air_c, bool fan, Optional humidity_percent, Optional heat_transfer_w_per_m2_k) {
            return in_air(air_c, fan ? Air::fan_refrigerator : Air::refrigerator, humidity_percent,
                          heat_transfer_w_per_m2_k);
          },
          "air_c"_a, py::kw_only(), "fan"_a = false, "humidity_percent"_a = py::none(),
          "heat_transfer_w_per_m2_k"_a = py::none(),
          "A refrigerator with air of that temperature, °C, -30 to 30, still or moved by a fan. Raises InvalidInput.")
      .def_static(
          "measured",
          [](const Time& time_h, const Number& temperature_c, const std::string& air, Optional humidity_percent,
             Optional heat_transfer_w_per_m2_k) {
            return in_air(course_of(time_h, temperature_c), air_named(air), humidity_percent, heat_transfer_w_per_m2_k);
          },
          "time_h"_a, "temperature_c"_a, py::kw_only(), "air"_a = "room", "humidity_percent"_a = py::none(),
          "heat_transfer_w_per_m2_k"_a = py::none(),
          R"(Air of measured temperatures, straight lines between the readings.

Args: time_h: h of the process, rising. temperature_c: °C, one for each. Raises InvalidInput.)")
      .def_static(
          "daily_swing",
          [](double mean_c, double half_range_k, double warmest_h, const std::string& air, Optional humidity_percent,
             Optional heat_transfer_w_per_m2_k) {
            return in_air(DailySwing{mean_c, half_range_k, warmest_h}, air_named(air), humidity_percent,
                          heat_transfer_w_per_m2_k);
          },
          "mean_c"_a, "half_range_k"_a, "warmest_h"_a = DailySwing{}.warmest_h, py::kw_only(), "air"_a = "room",
          "humidity_percent"_a = py::none(), "heat_transfer_w_per_m2_k"_a = py::none(),
          R"(A room that is warmest at warmest_h (h of the process), half_range_k above its mean, and coldest 12 h
later.

Args: mean_c: °C. half_range_k: K. Raises InvalidInput.)")
      .def_static("dough", &Surroundings::dough, "dough_c"_a,
                  "A dough that is held at a temperature of its own, °C, -2 to 45. Raises InvalidInput.")
      .def_static(
          "dough_measured",
          [](const Time& time_h, const Number& temperature_c) {
            return checked({{{.temperature_c = course_of(time_h, temperature_c), .is_dough = true}}});
          },
          "time_h"_a, "temperature_c"_a,
          R"(A dough whose own temperature was measured, by a probe in it; straight lines between the readings.

Args: time_h: h of the process, rising. temperature_c: °C, one for each. Raises InvalidInput.)")
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
  air_options(surroundings, "proof_box", Air::proof_box,
              "A proof box with air of that temperature, °C, 0 to 60. Raises InvalidInput.");
  add_value_methods(surroundings, 1, {"places"});

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

/// A piece's shape from its name and dimensions, of which only those it has may be given.
std::variant<Tub, Ball, Oblong> shape_of(const std::string& shape, Optional diameter_cm, Optional length_cm,
                                         Optional depth_cm, const std::string& material, double vessel_g) {
  const auto refuse = [&](bool given, const char* name) {
    if (given) throw InvalidInput("a " + shape + " has no " + name, {.path = name, .advice = "leave it out"});
  };
  if (shape == "tub") {
    refuse(length_cm.has_value(), "length_cm");
    return Tub{diameter_cm, depth_cm, material, vessel_g};
  }
  refuse(depth_cm.has_value(), "depth_cm");
  refuse(material != Tub{}.material, "material");
  refuse(vessel_g != 0, "vessel_g");
  if (shape == "oblong") return Oblong{length_cm, diameter_cm};
  if (shape != "ball")
    throw InvalidInput("shape \"" + shape + "\" is unknown", {.path = "shape", .advice = "known: ball, oblong, tub"});
  refuse(length_cm.has_value(), "length_cm");
  return Ball{diameter_cm};
}

Piece piece_of(std::variant<Tub, Ball, Oblong> shape, Optional mass_g, double pieces,
               const std::optional<std::string>& cover, const std::optional<std::string>& worktop,
               Optional heat_loss_w_per_k) {
  Piece piece{.shape = std::move(shape), .mass_g = mass_g, .pieces = pieces, .heat_loss_w_per_k = heat_loss_w_per_k};
  if (cover) piece.cover = cover_named(*cover);
  if (worktop) piece.worktop = worktop_named(*worktop);
  require_piece(piece);
  return piece;
}

/// A member that only some shapes have.
template <class Get>
auto of_shape(Get get) {
  return [get](const Piece& p) { return std::visit(get, p.shape); };
}

void bind_pieces(py::module_& module) {
  py::class_<Node>(module, "Node",
                   R"(A piece of dough as heat sees it: capacity_j_k dT/dt = -heat_loss_w_per_k (T - air) + sources.

T is the mean temperature of the dough. Source: lumped analysis with the mean of a parabolic profile, Incropera, ch. 5
(from memory).)")
      .def_readonly("mass_g", &Node::mass_g)
      .def_readonly("volume_ml", &Node::volume_ml)
      .def_readonly("area_cm2", &Node::area_cm2)
      .def_readonly("capacity_j_k", &Node::capacity_j_k)
      .def_readonly("heat_loss_w_per_k", &Node::heat_loss_w_per_k)
      .def_readonly("time_constant_h", &Node::time_constant_h)
      .def("heat_loss_w", &heat_loss_w, "mean_c"_a, "air_c"_a,
           "W that leave it, vapour included, at a mean temperature in air of that temperature, °C.")
      .def("__repr__", [](const Node& n) {
        return "<Node " + short_number(n.mass_g) + " g, " + short_number(n.heat_loss_w_per_k) + " W/K, time constant " +
               short_number(n.time_constant_h) + " h>";
      });

  using Text = std::optional<std::string>;
  py::class_<Piece> piece(module, "Piece", R"(Dough in one piece, a ball, an oblong, or in a tub. A value.

Best made by ball, oblong or tub. Args: shape: "tub", "ball" or "oblong". mass_g: g; or pieces: the dough in so many
equal ones; or all dimensions (diameter_cm; length_cm and diameter_cm; diameter_cm and depth_cm), cm. material,
vessel_g: of a tub, see bowl_materials(); g, 0: not counted. cover: "film", "cloth", "lid" or "open"; a lid for a tub,
film for others if not given. worktop: "air", "wood" or "stone"; wood for a tub, air for others if not given.
heat_loss_w_per_k: W/K of the piece, in place of what its shape and cover give. Raises InvalidInput.)");
  piece
      .def(py::init([](const std::string& shape, Optional mass_g, double pieces, Optional diameter_cm,
                       Optional length_cm, Optional depth_cm, const std::string& material, double vessel_g,
                       const Text& cover, const Text& worktop, Optional heat_loss_w_per_k) {
             return piece_of(shape_of(shape, diameter_cm, length_cm, depth_cm, material, vessel_g), mass_g, pieces,
                             cover, worktop, heat_loss_w_per_k);
           }),
           "shape"_a = "tub", py::kw_only(), "mass_g"_a = py::none(), "pieces"_a = 1.0, "diameter_cm"_a = py::none(),
           "length_cm"_a = py::none(), "depth_cm"_a = py::none(), "material"_a = Tub{}.material, "vessel_g"_a = 0.0,
           "cover"_a = py::none(), "worktop"_a = py::none(), "heat_loss_w_per_k"_a = py::none())
      .def_static(
          "ball",
          [](Optional mass_g, double pieces, Optional diameter_cm, const Text& cover, const Text& worktop,
             Optional heat_loss_w_per_k) {
            return piece_of(Ball{diameter_cm}, mass_g, pieces, cover, worktop, heat_loss_w_per_k);
          },
          "mass_g"_a = py::none(), py::kw_only(), "pieces"_a = 1.0, "diameter_cm"_a = py::none(),
          "cover"_a = py::none(), "worktop"_a = py::none(), "heat_loss_w_per_k"_a = py::none(),
          "A round piece. Raises InvalidInput.")
      .def_static(
          "oblong",
          [](Optional mass_g, double pieces, Optional length_cm, Optional diameter_cm, const Text& cover,
             const Text& worktop, Optional heat_loss_w_per_k) {
            return piece_of(Oblong{length_cm, diameter_cm}, mass_g, pieces, cover, worktop, heat_loss_w_per_k);
          },
          "mass_g"_a = py::none(), py::kw_only(), "pieces"_a = 1.0, "length_cm"_a = py::none(),
          "diameter_cm"_a = py::none(), "cover"_a = py::none(), "worktop"_a = py::none(),
          "heat_loss_w_per_k"_a = py::none(),
          "A long piece, four times as long as thick if neither is given. Raises InvalidInput.")
      .def_static(
          "tub",
          [](Optional mass_g, double pieces, Optional diameter_cm, Optional depth_cm, const std::string& material,
             double vessel_g, const Text& cover, const Text& worktop, Optional heat_loss_w_per_k) {
            return piece_of(Tub{diameter_cm, depth_cm, material, vessel_g}, mass_g, pieces, cover, worktop,
                            heat_loss_w_per_k);
          },
          "mass_g"_a = py::none(), py::kw_only(), "pieces"_a = 1.0, "diameter_cm"_a = py::none(),
          "depth_cm"_a = py::none(), "material"_a = Tub{}.material, "vessel_g"_a = 0.0, "cover"_a = py::none(),
          "worktop"_a = py::none(), "heat_loss_w_per_k"_a = py::none(),
          "Dough in a round bowl or tub, half as deep as wide if neither is given. Raises InvalidInput.")
      .def_property_readonly("shape",
                             [](const Piece& p) -> std::string {
                               return std::holds_alternative<Tub>(p.shape)    ? "tub"
                                      : std::holds_alternative<Ball>(p.shape) ? "ball"
                                                                              : "oblong";
                             })
      .def_readonly("mass_g", &Piece::mass_g)
      .def_readonly("pieces", &Piece::pieces)
      .def_property_readonly("diameter_cm", of_shape([](const auto& s) -> Optional { return s.diameter_cm; }))
      .def_property_readonly("length_cm", of_shape([](const auto& s) -> Optional {
                               if constexpr (requires { s.length_cm; }) return s.length_cm;
                               return std::nullopt;
                             }))
      .def_property_readonly("depth_cm", of_shape([](const auto& s) -> Optional {
                               if constexpr (requires { s.depth_cm; }) return s.depth_cm;
                               return std::nullopt;
                             }))
      .def_property_readonly("material", of_shape([](const auto& s) -> std::string {
                               if constexpr (requires { s.material; }) return s.material;
                               return Tub{}.material;
                             }))
      .def_property_readonly("vessel_g", of_shape([](const auto& s) -> double {
                               if constexpr (requires { s.vessel_g; }) return s.vessel_g;
                               return 0;
                             }))
      .def_property_readonly("cover",
                             [](const Piece& p) {
                               return p.cover ? Text(std::string(name_of(*p.cover))) : std::nullopt;
                             })
      .def_property_readonly("worktop",
                             [](const Piece& p) {
                               return p.worktop ? Text(std::string(name_of(*p.worktop))) : std::nullopt;
                             })
      .def_readonly("heat_loss_w_per_k", &Piece::heat_loss_w_per_k)
      .def(
          "node",
          [](const Piece& p, double dough_g, const Surroundings& surroundings, double specific_heat_kj,
             double density_g_per_ml, double time_h) {
            return node_of(
                p, {.mass_g = dough_g, .specific_heat_kj = specific_heat_kj, .density_g_per_ml = density_g_per_ml},
                place_at(surroundings, time_h));
          },
          "dough_g"_a, "surroundings"_a, py::kw_only(), "specific_heat_kj"_a = DoughBody{}.specific_heat_kj,
          "density_g_per_ml"_a = DoughBody{}.density_g_per_ml, "time_h"_a = 0.0,
          R"(The piece as heat sees it: a Node with its heat loss and time constant.

Args: dough_g: g of all of the dough. surroundings: Surroundings, read at time_h. specific_heat_kj: kJ/(kg K).
density_g_per_ml: with the gas in it. Raises InvalidInput.)");
  add_value_methods(piece, 0,
                    {"shape", "mass_g", "pieces", "diameter_cm", "length_cm", "depth_cm", "material", "vessel_g",
                     "cover", "worktop", "heat_loss_w_per_k"});
}

}  // namespace

void bind_piece(py::module_& module) {
  bind_surroundings(module);
  bind_pieces(module);
}
