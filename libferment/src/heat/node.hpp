// A piece that is checked already, as heat sees it.
#pragma once

#include <ferment/heat/piece.hpp>

namespace ferment {

/// As node_of, without a look at the piece's own members.
Node node_of_checked(const Piece& piece, const DoughBody& dough, const Place& place, double pressure_pa);

}  // namespace ferment
