// Model §2, yeast dose as gassing dry matter.
#pragma once

#include <ferment/dough/yeast.hpp>

namespace ferment::formula {

/// Weight of this kind that gasses like 1 g of compressed yeast.
constexpr double compressed_ratio(Yeast yeast) {
  switch (yeast) {
    case Yeast::instant: return 0.33;
    case Yeast::active_dry:
    case Yeast::active_dry_unwetted: return 0.40;
    case Yeast::compressed: break;
  }
  return 1;
}

/// g gassing dry matter per g of yeast as weighed.
constexpr double dry_matter_share(Yeast yeast) { return 0.30 / compressed_ratio(yeast); }

}  // namespace ferment::formula
