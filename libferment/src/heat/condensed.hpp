// A measured temperature with fewer readings, for doughs that do not follow each of them.
#pragma once

#include <ferment/heat/surroundings.hpp>

namespace ferment {

/// The series by straight lines over as many readings as its integral allows: from its start to any moment that is off
/// by at most some `most_k_h`, K·h. A dough of time constant τ relaxes to such air within 2·most_k_h/τ of itself, and
/// its clock, an integral over its own temperature, is off by `most_k_h` times the law's slope; readings that scatter
/// about a line cancel.
Course condensed(const Course& course, double most_k_h);

}  // namespace ferment
