// A mass of dough with a shape, as heat sees it: one node whose mean temperature relaxes to its surroundings.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/names.hpp>
#include <ferment/heat/surroundings.hpp>

namespace ferment {

/// How the dough is kept from drying. Under a lid there is air between; film lies on the dough.
enum class Cover { film, cloth, lid, open };

/// What the dough or its tub stands on.
enum class Worktop { air, wood, stone };

struct WorktopRow {
  std::string_view name;
  double heat_transfer_w_per_m2_k = 0;  ///< W/(m²·K); 0: as the air
  std::string_view source;
};
FERMENT_API std::span<const WorktopRow> worktops();

/// What a piece is like: a cylinder of dough in a round bowl or tub, a sphere, a long cylinder, a flat disc with two
/// faces and an edge, or a block in a tin of sheet steel that stands in the air.
enum class Shape { tub, ball, oblong, flat, tin };

/// Dough in one piece. Its weight, or all of the dough shared between `pieces`, or what its dimensions hold.
struct Piece {
  Shape shape = Shape::tub;
  std::optional<double> mass_g = {};
  double pieces = 1;  ///< equal ones, if their weight is not given
  /// In place of a ball's weight; a tub is half as deep as wide without, a flat disc a tenth; the width of a tin.
  std::optional<double> diameter_cm = {};
  std::optional<double> length_cm = {};  ///< of an oblong, four times as long as thick without; of a tin, twice as wide
  std::optional<double> depth_cm =
      {};  ///< of the dough in a tub or a tin, of a flat disc; in a tin a quarter of its width
  std::string material = "plastic";  ///< of a tub; a row of `bowl_materials()`
  double vessel_g = 0;               ///< weight of a tub or a tin, which warms and cools with the dough; 0: not counted
  std::optional<Cover> cover = {};   ///< a tub has a lid, other pieces film, if not given
  std::optional<Worktop> worktop = {};           ///< a tub stands on wood, other pieces in the air, if not given
  std::optional<double> heat_loss_w_per_k = {};  ///< of the piece, in place of what its shape and cover give
};

/// The dough of a piece.
struct DoughBody {
  double mass_g = 0;               ///< all of the dough
  double specific_heat_kj = 2.8;   ///< kJ/(kg·K)
  double density_g_per_ml = 1.18;  ///< with the gas in it
  double water_activity = 0.98;    ///< for an open piece
};

/// A piece as one node: capacity_j_k·dT/dt = −heat_loss_w_per_k·(T − air) + sources, T the mean temperature of the
/// dough.
struct Node {
  double mass_g = 0;
  double volume_ml = 0;
  double area_cm2 = 0;
  double capacity_j_k = 0;
  double heat_loss_w_per_k = 0;
  double condensing_w_per_k = 0;  ///< what is added to it in humid air that is 10 K warmer, phased in from 0 K on
  double time_constant_h = 0;
  double inside_k_per_w = 0;  ///< mean of the dough less its surface, per W of loss
  double core_over_mean = 1;  ///< (core − surface)/(mean − surface) of a settled profile: ball 2.5, oblong 2, tub 1.5
  double settling_h =
      0;  ///< time constant in which a profile settles after a change: the second eigenvalue's, Biot number 1
  double open_m2 = 0;  ///< surface that water evaporates from
  double open_inside_m2_k_per_w = 0;
  double open_outside_w_per_m2_k = 0;
  double vapour_w_per_m2_pa = 0;  ///< heat by vapour per Pa of difference
  double water_activity = 0;
  double humidity = 0;  ///< of the air, 0 to 1
};

/// The piece in such air: a sphere, a cylinder or a shallow cylinder in its tub, every face with the resistance of air,
/// cover or wall, and of the dough inside (corrected lumped: L/(3k) for a slab of half-thickness L, R/(4k) for a
/// cylinder, R/(5k) for a sphere; k 0.40 W/(m·K)). The tub has the dough's temperature.
/// @param pressure_pa  of the air, for an open piece
/// @throws InvalidInput outside the field table, for a piece heavier than the dough, dimensions that contradict the
/// weight, or
///         an open piece in air of unknown humidity
/// Source: lumped analysis with the mean of a parabolic profile, Incropera, ch. 5 (from memory); evaporation by the
/// psychrometric constant, 66.9 Pa/K at sea level.
FERMENT_API Node node_of(const Piece& piece, const DoughBody& dough, const Place& place, double pressure_pa = 101325);

/// Heat that leaves the node, W, at a mean temperature in air of that temperature: air, cover, wall, vapour if it is
/// open, and water that condenses on it.
FERMENT_API double heat_loss_w(const Node& node, double mean_c, double air_c);

template <>
FERMENT_API const Names& names_of<Cover>();

template <>
FERMENT_API const Names& names_of<Worktop>();

template <>
FERMENT_API const Names& names_of<Shape>();

template <>
FERMENT_API const Form& form_of<Piece>();

template <>
FERMENT_API const Form& form_of<Node>();

}  // namespace ferment
