#include <ferment/heat/piece.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>
#include <ferment/base/form.hpp>
#include <ferment/heat/bowl.hpp>

#include "base/named.hpp"
#include "base/text.hpp"
#include "dough/volume_formula.hpp"
#include "heat/node.hpp"

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
constexpr double flat_shallowness = 10;    // width over thickness; common practice, no source
constexpr double tin_slenderness = 2;      // length over width; common practice, no source
constexpr double tin_shallowness =
    4;  // width over depth of the dough put in, a third of the tin; common practice, no source
constexpr double psychrometric_pa_per_k = 66.9 / formula::atmosphere;  // per Pa of air pressure

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
  Outside(const Piece& piece, double air_w_per_m2_k, Cover usual_cover, Worktop usual_worktop)
      : air_(air_w_per_m2_k), cover_(piece.cover.value_or(usual_cover)),
        worktop_(piece.worktop.value_or(usual_worktop)) {}

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
  /// Bright sheet, bare to the air whatever the cover.
  Face steel(double area_m2, double inside) const { return {area_m2, 1 / (air_ * shiny_share), inside}; }
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

double through_w_per_k(const Face& face) { return face.area_m2 / (face.outside_m2_k_per_w + face.inside_m2_k_per_w); }

double cylinder_m3(double diameter_m, double length_m) { return pi * diameter_m * diameter_m / 4 * length_m; }

/// One dimension from the volume and the others: what was given, or what is left.
Body ball_of(const Piece& ball, const Outside& outside, double volume_m3) {
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

Body oblong_of(const Piece& oblong, const Outside& outside, double volume_m3) {
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

Body tub_of(const Piece& tub, const Outside& outside, double volume_m3) {
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

/// Two faces and an edge. Each face conducts as half of a slab that is as thick as the disc.
Body flat_of(const Piece& flat, const Outside& outside, double volume_m3) {
  double diameter = 0, depth = 0;
  if (flat.diameter_cm) diameter = *flat.diameter_cm / 100;
  if (flat.depth_cm) depth = *flat.depth_cm / 100;
  if (!flat.diameter_cm && !flat.depth_cm) diameter = std::cbrt(4 * volume_m3 * flat_shallowness / pi);
  if (!(diameter > 0)) diameter = std::sqrt(4 * volume_m3 / (pi * depth));
  if (!(depth > 0)) depth = 4 * volume_m3 / (pi * diameter * diameter);
  const double face = pi * diameter * diameter / 4;
  const double across = depth / (6 * dough_w_per_m_k), round = diameter / (8 * dough_w_per_m_k);
  const Face top = outside.free(face, across);
  return {cylinder_m3(diameter, depth),
          1.5,
          depth / 2 / second_of_slab,
          {top, outside.base(face, across, 0, top.outside_m2_k_per_w), outside.free(pi * diameter * depth, round)}};
}

/// A block in bright sheet steel, which is no resistance and hardly radiates: all its faces are in the air.
Body tin_of(const Piece& tin, const Outside& outside, double volume_m3) {
  double length = 0, width = 0, depth = 0;
  if (tin.length_cm) length = *tin.length_cm / 100;
  if (tin.diameter_cm) width = *tin.diameter_cm / 100;
  if (tin.depth_cm) depth = *tin.depth_cm / 100;
  if (!(width > 0)) {
    const double lengths = length > 0 ? length : tin_slenderness, depths = depth > 0 ? depth : 1 / tin_shallowness;
    const double power = 1.0 / (1 + (length > 0 ? 0 : 1) + (depth > 0 ? 0 : 1));
    width = std::pow(volume_m3 / (lengths * depths), power);
  }
  if (!(length > 0)) length = depth > 0 ? volume_m3 / (width * depth) : tin_slenderness * width;
  if (!(depth > 0)) depth = volume_m3 / (width * length);
  const auto inside = [](double across_m) { return across_m / (6 * dough_w_per_m_k); };
  const Face top = outside.free(length * width, inside(depth));
  const auto steel = [&](double area_m2, double across_m) { return outside.steel(area_m2, inside(across_m)); };
  return {length * width * depth,
          1.5,
          depth / 2 / second_of_slab,
          {top, outside.base(length * width, inside(depth), 0, outside.steel(1, 0).outside_m2_k_per_w),
           steel(2 * length * depth, width), steel(2 * width * depth, length)}};
}

Body body_of(const Piece& piece, const Outside& outside, double volume_m3) {
  switch (piece.shape) {
    case Shape::ball: return ball_of(piece, outside, volume_m3);
    case Shape::oblong: return oblong_of(piece, outside, volume_m3);
    case Shape::flat: return flat_of(piece, outside, volume_m3);
    case Shape::tin: return tin_of(piece, outside, volume_m3);
    case Shape::tub: break;
  }
  return tub_of(piece, outside, volume_m3);
}

/// Whether the dimensions alone make the volume.
bool has_all_dimensions(const Piece& piece) {
  switch (piece.shape) {
    case Shape::ball: return piece.diameter_cm.has_value();
    case Shape::oblong: return piece.length_cm && piece.diameter_cm;
    case Shape::tin: return piece.length_cm && piece.diameter_cm && piece.depth_cm;
    case Shape::flat:
    case Shape::tub: break;
  }
  return piece.diameter_cm && piece.depth_cm;
}

/// Refuses dimensions that its shape does not have.
void require_dimensions(const Piece& piece) {
  const auto refuse = [&](bool given, const char* name) {
    if (given)
      throw InvalidInput("a " + std::string(name_of(piece.shape)) + " has no " + name,
                         {.path = name, .advice = "leave it out"});
  };
  const Shape shape = piece.shape;
  const bool is_tub = shape == Shape::tub, is_tin = shape == Shape::tin;
  refuse(shape != Shape::oblong && !is_tin && piece.length_cm, "length_cm");
  refuse(!is_tub && !is_tin && shape != Shape::flat && piece.depth_cm, "depth_cm");
  refuse(!is_tub && piece.material != Piece{}.material, "material");  // a tin is steel
  refuse(!is_tub && !is_tin && piece.vessel_g != 0, "vessel_g");
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

namespace {

void contradictions(const Piece& piece) {
  require_dimensions(piece);
  if (piece.shape != Shape::tub && piece.cover == Cover::lid) {
    throw InvalidInput("only a tub has a lid",
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

}  // namespace

Node node_of(const Piece& piece, const DoughBody& dough, const Place& place, double pressure_pa) {
  require(piece);
  return node_of_checked(piece, dough, place, pressure_pa);
}

Node node_of_checked(const Piece& piece, const DoughBody& dough, const Place& place, double pressure_pa) {
  name_of(place.air);
  if (place.heat_transfer_w_per_m2_k) require(field::heat_transfer_w_per_m2_k, *place.heat_transfer_w_per_m2_k);
  if (place.humidity_percent) require(field::humidity_percent, *place.humidity_percent);
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
  const bool tub = piece.shape == Shape::tub;
  const auto body_in = [&](double air_w_per_m2_k) {
    const Outside outside(piece, air_w_per_m2_k, tub ? Cover::lid : Cover::film, tub ? Worktop::wood : Worktop::air);
    return body_of(piece, outside, mass_g / 1000 / density_kg_m3);
  };
  const AirRow& air = row_of(place.air);
  const Body body = body_in(place.heat_transfer_w_per_m2_k.value_or(air.heat_transfer_w_per_m2_k));

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
  const std::string_view vessel = piece.shape == Shape::tin ? "steel" : std::string_view(piece.material);
  if (piece.vessel_g > 0) node.capacity_j_k += piece.vessel_g * bowl_material_named(vessel).specific_heat_kj;

  double dropped_inside = 0;  // mean less face, per K of mean over air, over the surface
  double area = 0;
  for (const Face& face : body.faces) {
    const double through = through_w_per_k(face);
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
  if (air.condensing_w_per_m2_k > 0 && !place.heat_transfer_w_per_m2_k) {
    for (const Face& face : body_in(air.condensing_w_per_m2_k).faces) node.condensing_w_per_k += through_w_per_k(face);
    node.condensing_w_per_k -= node.heat_loss_w_per_k;
  }
  if (piece.heat_loss_w_per_k) {
    node.heat_loss_w_per_k = *piece.heat_loss_w_per_k;  // measured: whatever leaves is in it
    node.open_m2 = node.condensing_w_per_k = 0;
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

void lose_heat_times(double factor, Node& node) {
  node.heat_loss_w_per_k *= factor;
  node.condensing_w_per_k *= factor;
  node.open_m2 *= factor;
  node.time_constant_h /= factor;
}

double heat_loss_w(const Node& node, double mean_c, double air_c) {
  // Water condenses where the air's dew point lies above the dough. What that adds is phased in over 10 K, because a
  // step would make the answer depend on where a stage is split.
  const double warmer = std::clamp((air_c - mean_c) / condensing_fully_k, 0.0, 1.0);
  const double condensing = node.condensing_w_per_k * warmer * warmer * (3 - 2 * warmer);
  const double by_air = (node.heat_loss_w_per_k + condensing) * (mean_c - air_c);
  if (!(node.open_m2 > 0)) return by_air;
  const double dry = 1 / (node.open_inside_m2_k_per_w + 1 / node.open_outside_w_per_m2_k);
  const double through = (mean_c - open_face_c(node, mean_c, air_c)) / node.open_inside_m2_k_per_w;
  return by_air + node.open_m2 * (through - dry * (mean_c - air_c));
}

template <>
const Names& names_of<Cover>() {
  static constexpr std::string_view list[] = {"film", "cloth", "lid", "open"};
  static constexpr Names names{"cover", "cover", list};
  return names;
}

template <>
const Names& names_of<Worktop>() {
  static constexpr std::string_view list[] = {"air", "wood", "stone"};
  static constexpr Names names{"worktop", "worktop", list};
  return names;
}

template <>
const Names& names_of<Shape>() {
  static constexpr std::string_view list[] = {"tub", "ball", "oblong", "flat", "tin"};
  static constexpr Names names{"shape", "shape", list};
  return names;
}

template <>
const Form& form_of<Piece>() {
  using P = Piece;
  static const Form form = made_form<P>(
      "Piece",
      "A mass of dough with a shape: its weight, or all of the dough shared between pieces, or what its dimensions "
      "hold.",
      {},
      {row<&P::shape>("shape", "a tub (also a bowl), a ball, an oblong, a flat disc, or dough in a tin of sheet steel"),
       row<&P::mass_g>("mass_g", field::piece_g), row<&P::pieces>(field::pieces_of_dough),
       row<&P::diameter_cm>(field::diameter_cm), row<&P::length_cm>(field::length_cm),
       row<&P::depth_cm>(field::depth_cm),
       of_table(row<&P::material>("material", "of a tub, a row of bowl_materials()"),
                [](const std::string& material) { bowl_material_named(material); }),
       row<&P::vessel_g>(field::vessel_g), row<&P::cover>("cover", "a tub has a lid, other pieces film, if not given"),
       row<&P::worktop>("worktop", "a tub stands on wood, other pieces in the air, if not given"),
       row<&P::heat_loss_w_per_k>("heat_loss_w_per_k", field::piece_heat_loss_w_per_k)},
      contradictions);
  return form;
}

template <>
const Form& form_of<Node>() {
  using N = Node;
  static const Form form = made_form<N>(
      "Node", "A piece of dough as heat sees it: capacity_j_k dT/dt = -heat_loss_w_per_k (T - air) + sources.", {},
      {row<&N::mass_g>("mass_g", "g"), row<&N::volume_ml>("volume_ml", "mL"), row<&N::area_cm2>("area_cm2", "cm²"),
       row<&N::capacity_j_k>("capacity_j_k", "J/K"),
       row<&N::heat_loss_w_per_k>("heat_loss_w_per_k", "W per K between the mean of the dough and the air"),
       row<&N::condensing_w_per_k>("condensing_w_per_k",
                                   "W per K that is added in humid air 10 K warmer, phased in from 0 K on"),
       row<&N::time_constant_h>("time_constant_h", "h"),
       row<&N::inside_k_per_w>("inside_k_per_w", "K: mean of the dough less its surface, per W of loss"),
       row<&N::core_over_mean>("core_over_mean", "(core - surface)/(mean - surface) of a settled profile"),
       row<&N::settling_h>("settling_h", "h in which a profile settles after a change"),
       row<&N::open_m2>("open_m2", "m² that water evaporates from"),
       row<&N::open_inside_m2_k_per_w>("open_inside_m2_k_per_w", "m² K/W from the mean to the open surface"),
       row<&N::open_outside_w_per_m2_k>("open_outside_w_per_m2_k", "W/(m² K) from the open surface to the air"),
       row<&N::vapour_w_per_m2_pa>("vapour_w_per_m2_pa", "W/(m² Pa): heat by vapour per difference of pressure"),
       row<&N::water_activity>("water_activity", "of the dough"), row<&N::humidity>("humidity", "of the air, 0 to 1")});
  return form;
}

}  // namespace ferment
