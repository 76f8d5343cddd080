// A piece that is checked already, as heat sees it.
#pragma once

#include <ferment/heat/piece.hpp>

namespace ferment {

/// As node_of, without a look at the piece's own members.
Node node_of_checked(const Piece& piece, const DoughBody& dough, const Place& place, double pressure_pa);

/// How much warmer humid air must be for all of the heat that condensing water adds.
inline constexpr double condensing_fully_k = 10;

/// Whether its heat loss is no straight line over the difference to the air.
inline bool has_vapour(const Node& node) { return node.open_m2 > 0 || node.condensing_w_per_k > 0; }

/// Multiplies all of its heat loss.
void lose_heat_times(double factor, Node& node);

}  // namespace ferment
