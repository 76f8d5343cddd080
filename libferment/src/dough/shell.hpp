// The one shell that a dough has today.
#pragma once

#include <ferment/dough/state.hpp>

namespace ferment {

inline const Shell& only_shell(const State& state) { return state.shells.front(); }
inline Shell& only_shell(State& state) { return state.shells.front(); }

}  // namespace ferment
