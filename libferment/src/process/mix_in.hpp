// A mix joins the dough that is there.
#pragma once

#include <ferment/process/step.hpp>

namespace ferment {

/// The dough at the end of mixing. The mix takes its rest and the minutes that its mixing says.
State mixed_in(const State& state, const Mix& mix, const Kitchen& kitchen);

}  // namespace ferment
