#include <ferment/heat/piece.hpp>

#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/heat/mixing.hpp>

#include "base/named.hpp"
#include "base/text.hpp"
#include "dough/volume_formula.hpp"

namespace ferment {
namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double dough_w_per_m_k = 0.40;   // just mixed: 0.30 to 0.50, computed from its composition
constexpr double cloth_m2_k_per_w = 0.02;  // common practice, no source
constexpr double gap_w_per_m2_k = 7;       // air under a lid: convection and radiation, computed
constexpr double shiny_share = 4.5 / 8;    // of the heat transfer of a matt surface: polished steel hardly radiates
constexpr double ball_contact = 0.15;      // share of the surface on the worktop; engineering estimate
constexpr double oblong_contact = 0.25;    // share of the round surface; engineering estimate
constexpr double oblong_slenderness = 4;   // length over thickness; common practice, no source
constexpr double tub_shallowness = 2;      // width over depth; common practice, no source
constexpr double psychrometric_pa_per_k = 66.9 / formula::atmosphere;  // per Pa of air pressure

constexpr std::array covers{std::pair{Cover::film, std::string_view("film")},
                            std::pair{Cover::cloth, std::string_view("cloth")},
                            std::pair{Cover::lid, std::string_view("lid")},
                            std::pair{Cover::open, std::string_view("open")}};

constexpr std::array worktop_rows{
    WorktopRow{"air", 0, "as the air around"},
    WorktopRow{"wood", 5.2, "computed, thick wood over three hours: k/√(παt), k 0.15 W/(m·K) (from memory)"},
    WorktopRow{"stone", 27, "computed, thick granite over three hours: k/√(παt), k 2.8 W/(m·K) (from memory)"},
};

/// A part of the surface, what lies outside it and inside.
struct Face {
  double area_m2;
  double outside_m2_k_per_w;
  double inside_m2_k_per_w;
  bool open = false;
};

/// What the faces of a piece are made of: the air's side of each.
class Outside {
 public:
  Outside(const Piece& piece, const Place& place, Cover usual_cover, Worktop usual_worktop)
      : air_(place.heat_transfer_w_per_m2_k.value_or(row_of(place.air).heat_transfer_w_per_m2_k)),
        cover_(piece.cover.value_or(usual_cover)), worktop_(piece.worktop.value_or(usual_worktop)) {}

  Face free(double area_m2, double inside) const {
    return {area_m2, 1 / air_ + (cover_ == Cover::cloth ? cloth_m2_k_per_w : 0), inside, cover_ == Cover::open};
  }
  /// Under a lid, or a cloth over the rim, there is air between.
  Face top_of_tub(double area_m2, double inside) const {
    Face face = free(area_m2, inside);
    if (cover_ == Cover::lid || cover_ == Cover::cloth) face.outside_m2_k_per_w += 1 / gap_w_per_m2_k;
    return face;
  }
  Face wall(double area_m2, double inside, const BowlMaterial& material) const {
    return {area_m2, 1 / (air_ * (material.shiny ? shiny_share : 1)) + material.wall_m2_k_per_w, inside};
  }
  Face base(double area_m2, double inside, double wall_m2_k_per_w, double without_worktop) const {
    const double worktop = worktop_rows[static_cast<std::size_t>(worktop_)].heat_transfer_w_per_m2_k;
    return {area_m2, worktop > 0 ? 1 / worktop + wall_m2_k_per_w : without_worktop, inside};
  }
  bool lies_in_air() const { return worktop_ == Worktop::air; }

 private:
  double air_;
  Cover cover_;
  Worktop worktop_;
};

/// Second eigenvalues at a Biot number of 1: sphere, cylinder, slab (Incropera, ch. 5, from memory).
constexpr double second_of_sphere = 4.71239, second_of_cylinder = 4.07948, second_of_slab = 3.42562;

struct Body {
  double volume_m3;
  double core_over_mean;
  double settling_m;  ///< radius or half-thickness over the second eigenvalue
  std::vector<Face> faces;
};

double cylinder_m3(double diameter_m, double length_m) { return pi * diameter_m * diameter_m / 4 * length_m; }

/// One dimension from the volume and the others: what was given, or what is left.
Body body_of(const Ball& ball, const Outside& outside, double volume_m3) {
  const double radius = ball.diameter_cm ? *ball.diameter_cm / 200 : std::cbrt(3 * volume_m3 / (4 * pi));
  const double area = 4 * pi * radius * radius;
  const double inside = radius / (5 * dough_w_per_m_k);
  const double contact = outside.lies_in_air() ? 0 : ball_contact;
  Body body{4 * pi / 3 * radius * radius * radius,
            2.5,
            radius / second_of_sphere,
            {outside.free(area * (1 - contact), inside)}};
  if (contact > 0) body.faces.push_back(outside.base(area * contact, inside, 0, 0));
  return body;
}

Body body_of(const Oblong& oblong, const Outside& outside, double volume_m3) {
  double diameter = 0, length = 0;
  if (oblong.diameter_cm) diameter = *oblong.diameter_cm / 100;
  if (oblong.length_cm) length = *oblong.length_cm / 100;
  if (!oblong.diameter_cm && !oblong.length_cm) diameter = std::cbrt(4 * volume_m3 / (pi * oblong_slenderness));
  if (!(diameter > 0)) diameter = std::sqrt(4 * volume_m3 / (pi * length));
  if (!(length > 0)) length = 4 * volume_m3 / (pi * diameter * diameter);
  const double inside = diameter / (8 * dough_w_per_m_k);
  const double round = pi * diameter * length, ends = pi * diameter * diameter / 2;
  const double contact = outside.lies_in_air() ? 0 : oblong_contact;
  Body body{cylinder_m3(diameter, length),
            2,
            diameter / 2 / second_of_cylinder,
            {outside.free(round * (1 - contact) + ends, inside)}};
  if (contact > 0) body.faces.push_back(outside.base(round * contact, inside, 0, 0));
  return body;
}

Body body_of(const Tub& tub, const Outside& outside, double volume_m3) {
  double diameter = 0, depth = 0;
  if (tub.diameter_cm) diameter = *tub.diameter_cm / 100;
  if (tub.depth_cm) depth = *tub.depth_cm / 100;
  if (!tub.diameter_cm && !tub.depth_cm) diameter = std::cbrt(4 * volume_m3 * tub_shallowness / pi);
  if (!(diameter > 0)) diameter = std::sqrt(4 * volume_m3 / (pi * depth));
  if (!(depth > 0)) depth = 4 * volume_m3 / (pi * diameter * diameter);
  const BowlMaterial& material = bowl_material_named(tub.material);
  const double flat = pi * diameter * diameter / 4;
  const double across = depth / (6 * dough_w_per_m_k), round = diameter / (8 * dough_w_per_m_k);
  const Face wall = outside.wall(pi * diameter * depth, round, material);
  return {cylinder_m3(diameter, depth),
          1.5,
          depth / 2 / second_of_slab,
          {outside.top_of_tub(flat, across), wall,
           outside.base(flat, across, material.wall_m2_k_per_w, wall.outside_m2_k_per_w)}};
}

bool is_tub(const Piece& piece) { return std::holds_alternative<Tub>(piece.shape); }

void require_if_given(const Field& field, const std::optional<double>& value) {
  if (value) require(field, *value);
}

/// Whether the dimensions alone make the volume.
bool has_all_dimensions(const Piece& piece) {
  if (const auto* ball = std::get_if<Ball>(&piece.shape)) return ball->diameter_cm.has_value();
  if (const auto* oblong = std::get_if<Oblong>(&piece.shape)) return oblong->length_cm && oblong->diameter_cm;
  const Tub& tub = std::get<Tub>(piece.shape);
  return tub.diameter_cm && tub.depth_cm;
}

double saturation_slope(double t) {
  const double below = 257.14 + t;
  return formula::saturation_pressure(t) * ((18.678 - t / 117.25) * below - (18.678 - t / 234.5) * t) / (below * below);
}

/// Temperature of an open face: what comes through the dough leaves with air and vapour. Newton's steps; the balance is
/// monotone and convex in the temperature.
double open_face_c(const Node& node, double mean_c, double air_c) {
  const double inside = 1 / node.open_inside_m2_k_per_w;
  const double air_pa = node.humidity * formula::saturation_pressure(air_c);
  const double per_pa = node.vapour_w_per_m2_pa;
  double face_c = mean_c;
  for (int step = 0; step < 50; ++step) {
    const double left = node.open_outside_w_per_m2_k * (face_c - air_c) +
                        per_pa * (node.water_activity * formula::saturation_pressure(face_c) - air_pa) -
                        inside * (mean_c - face_c);
    const double slope =
        node.open_outside_w_per_m2_k + per_pa * node.water_activity * saturation_slope(face_c) + inside;
    const double moved = left / slope;
    face_c -= moved;
    if (std::abs(moved) < 1e-12) break;
  }
  return face_c;
}

}  // namespace

std::span<const WorktopRow> worktops() { return worktop_rows; }

std::string_view name_of(Cover cover) {
  for (const auto& [kind, name] : covers) {
    if (kind == cover) return name;
  }
  throw InvalidInput("cover " + std::to_string(static_cast<int>(cover)) + " is unknown",
                     {.path = "cover", .advice = "known: 0 to 3"});
}

Cover cover_named(std::string_view name) {
  for (const auto& [kind, known] : covers) {
    if (known == name) return kind;
  }
  throw InvalidInput("cover \"" + std::string(name) + "\" is unknown",
                     {.path = "cover", .advice = "known: film, cloth, lid, open"});
}

std::string_view name_of(Worktop worktop) {
  const auto i = static_cast<std::size_t>(worktop);
  if (i < worktop_rows.size()) return worktop_rows[i].name;
  throw InvalidInput("worktop " + std::to_string(static_cast<int>(worktop)) + " is unknown",
                     {.path = "worktop", .advice = "known: 0 to 2"});
}

Worktop worktop_named(std::string_view name) {
  return static_cast<Worktop>(&row_named(worktop_rows, name, "worktop", "worktop") - worktop_rows.data());
}

void require_piece(const Piece& piece) {
  if (const auto* ball = std::get_if<Ball>(&piece.shape)) require_if_given(field::diameter_cm, ball->diameter_cm);
  if (const auto* oblong = std::get_if<Oblong>(&piece.shape)) {
    require_if_given(field::length_cm, oblong->length_cm);
    require_if_given(field::diameter_cm, oblong->diameter_cm);
  }
  if (const auto* tub = std::get_if<Tub>(&piece.shape)) {
    require_if_given(field::diameter_cm, tub->diameter_cm);
    require_if_given(field::depth_cm, tub->depth_cm);
    bowl_material_named(tub->material);
    require(field::vessel_g, tub->vessel_g);
  }
  require_if_given(field::piece_g, piece.mass_g);
  require(field::pieces, piece.pieces);
  require_if_given(field::piece_heat_loss_w_per_k, piece.heat_loss_w_per_k);
  if (piece.cover) name_of(*piece.cover);
  if (piece.worktop) name_of(*piece.worktop);
  if (!is_tub(piece) && piece.cover == Cover::lid) {
    throw InvalidInput("a ball or oblong has no lid",
                       {.path = "cover", .advice = "cover it with film or cloth, or leave it open"});
  }
  if (has_all_dimensions(piece) && (piece.mass_g || piece.pieces != 1)) {
    throw InvalidInput("the piece has its weight twice: by its dimensions and by " +
                           std::string(piece.mass_g ? "mass_g" : "pieces"),
                       {.path = "mass_g", .advice = "leave one out"});
  }
  if (piece.mass_g && piece.pieces != 1) {
    throw InvalidInput("the piece has its weight twice: mass_g and pieces",
                       {.path = "mass_g", .advice = "leave one out"});
  }
}

Node node_of(const Piece& piece, const DoughBody& dough, const Place& place, double pressure_pa) {
  require_piece(piece);
  row_of(place.air);
  require_if_given(field::heat_transfer_w_per_m2_k, place.heat_transfer_w_per_m2_k);
  require_if_given(field::humidity_percent, place.humidity_percent);
  require(field::dough_g, dough.mass_g);
  require(
      {"density_g_per_ml", "density of the dough", "g/mL", 0.05, 2, field::must_be_given, Quantity::ratio, {}, {}, {}},
      dough.density_g_per_ml);
  require({"specific_heat_kj",
           "specific heat of the dough",
           "kJ/(kg·K)",
           0.5,
           5,
           field::must_be_given,
           Quantity::ratio,
           {},
           {},
           {}},
          dough.specific_heat_kj);
  require({"pressure_pa", "air pressure", "Pa", 1e4, 2e5, field::must_be_given, Quantity::ratio, {}, {}, {}},
          pressure_pa);
  const double density_kg_m3 = 1000 * dough.density_g_per_ml;
  const double mass_g = piece.mass_g.value_or(dough.mass_g / piece.pieces);
  const bool tub = is_tub(piece);
  const Outside outside(piece, place, tub ? Cover::lid : Cover::film, tub ? Worktop::wood : Worktop::air);
  const Body body =
      std::visit([&](const auto& shape) { return body_of(shape, outside, mass_g / 1000 / density_kg_m3); },
                 piece.shape);

  Node node;
  node.mass_g = has_all_dimensions(piece) ? 1000 * body.volume_m3 * density_kg_m3 : mass_g;
  if (node.mass_g > dough.mass_g * (1 + 1e-9)) {
    throw InvalidInput("a piece of " + number(node.mass_g) + " g is more than all of the dough, " +
                           number(dough.mass_g) + " g",
                       {.path = "mass_g", .value = node.mass_g, .high = dough.mass_g, .advice = "give a smaller one"});
  }
  node.volume_ml = 1e6 * body.volume_m3;
  node.core_over_mean = body.core_over_mean;
  const double diffusivity_m2_h = 3600 * dough_w_per_m_k / (density_kg_m3 * 1000 * dough.specific_heat_kj);
  node.settling_h = body.settling_m * body.settling_m / diffusivity_m2_h;
  node.capacity_j_k = node.mass_g * dough.specific_heat_kj;
  if (const auto* in = std::get_if<Tub>(&piece.shape))
    node.capacity_j_k += in->vessel_g * bowl_material_named(in->material).specific_heat_kj;

  double dropped_inside = 0;  // mean less face, per K of mean over air, over the surface
  double area = 0;
  for (const Face& face : body.faces) {
    const double through = face.area_m2 / (face.outside_m2_k_per_w + face.inside_m2_k_per_w);
    area += face.area_m2;
    dropped_inside += through * face.inside_m2_k_per_w;
    node.heat_loss_w_per_k += through;
    if (!face.open) continue;
    node.open_m2 += face.area_m2;
    node.open_inside_m2_k_per_w = face.inside_m2_k_per_w;
    node.open_outside_w_per_m2_k = 1 / face.outside_m2_k_per_w;
  }
  node.area_cm2 = 1e4 * area;
  node.inside_k_per_w = dropped_inside / area / node.heat_loss_w_per_k;
  if (piece.heat_loss_w_per_k) {
    node.heat_loss_w_per_k = *piece.heat_loss_w_per_k;  // measured: whatever leaves is in it
    node.open_m2 = 0;
  }
  if (node.open_m2 > 0) {
    if (!place.humidity_percent) {
      throw InvalidInput("a dough that is not covered needs the humidity of its air",
                         {.path = "humidity_percent", .advice = "give humidity_percent, or cover it"});
    }
    node.humidity = *place.humidity_percent / 100;
    node.water_activity = dough.water_activity;
    node.vapour_w_per_m2_pa = row_of(place.air).by_convection_w_per_m2_k / (psychrometric_pa_per_k * pressure_pa);
  }
  node.time_constant_h = node.capacity_j_k / node.heat_loss_w_per_k / 3600;
  return node;
}

double heat_loss_w(const Node& node, double mean_c, double air_c) {
  const double by_air = node.heat_loss_w_per_k * (mean_c - air_c);
  if (!(node.open_m2 > 0)) return by_air;
  const double dry = 1 / (node.open_inside_m2_k_per_w + 1 / node.open_outside_w_per_m2_k);
  const double through = (mean_c - open_face_c(node, mean_c, air_c)) / node.open_inside_m2_k_per_w;
  return by_air + node.open_m2 * (through - dry * (mean_c - air_c));
}

}  // namespace ferment
