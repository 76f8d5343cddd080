// The cautions of plain numbers in a kitchen that is known to be sound.
#pragma once

#include <vector>

#include <ferment/rise/cautions.hpp>

namespace ferment {

/// As cautions, for the default kitchen. @throws InvalidInput for the numbers
std::vector<Notice> cautions_checked(const PlainNumbers& numbers);

}  // namespace ferment
