// The cautions of plain numbers in a kitchen that is known to be sound.
#pragma once

#include <vector>

#include <ferment/dough/formula.hpp>
#include <ferment/rise/cautions.hpp>

namespace ferment {

/// As cautions, for the default kitchen. @throws InvalidInput for the numbers
std::vector<Notice> cautions_checked(const PlainNumbers& numbers);

/// What an addition of ingredients to a dough with so much flour asks for: nothing of it is checked.
std::vector<Notice> cautions_checked(const Formula& formula, double flour_g);

}  // namespace ferment
