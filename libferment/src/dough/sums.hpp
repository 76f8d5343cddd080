// Sums of a formula that is checked already: inside a draw nothing is checked again.
#pragma once

#include <ferment/dough/formula.hpp>

namespace ferment {

/// As amounts_of.
Amounts sums_of(const Formula& formula);

/// As percent_of; it refuses a formula without flour, but nothing else.
Percent shares_of(const Formula& formula);

/// Refuses percentages that no bread dough has, as require_dough.
void require_shares(const Percent& percent);

}  // namespace ferment
