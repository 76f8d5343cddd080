#include <ferment/dough/yeast.hpp>

#include <array>
#include <string>

#include <ferment/base/error.hpp>

#include "base/text.hpp"
#include "dough/yeast_formula.hpp"

namespace ferment {
void require_yeast(const Values& yeast_percent, Yeast yeast) {
  name_of(yeast);
  const double per_instant = formula::compressed_ratio(yeast) / formula::compressed_ratio(Yeast::instant);
  Field bound = field::yeast_percent;
  bound.low = field::instant_equivalent_percent.low * per_instant;
  bound.high = field::instant_equivalent_percent.high * per_instant;
  if (yeast_percent.is_single() && yeast_percent[0] >= bound.low && yeast_percent[0] <= bound.high) return;
  const std::string label = std::string(yeast == Yeast::compressed ? "compressed"
                                        : yeast == Yeast::instant  ? "instant"
                                                                   : "active dry") +
                            " yeast";
  const std::string advice =
      std::string(bound.advice.empty() ? field::instant_equivalent_percent.advice : bound.advice);
  bound.label = label;
  bound.advice = advice;
  require(bound, yeast_percent);
}

double convert_yeast(double yeast_percent, Yeast from, Yeast to) {
  name_of(from);
  name_of(to);
  require_yeast(yeast_percent, from);
  return yeast_percent * (formula::compressed_ratio(to) / formula::compressed_ratio(from));
}

double gassing_dry_matter(double yeast_percent, Yeast yeast) {
  name_of(yeast);
  require_yeast(yeast_percent, yeast);
  return formula::dry_matter_share(yeast) * yeast_percent;
}

double start_up_h(Yeast yeast, const Kitchen& kitchen) {
  switch (yeast) {
    case Yeast::instant: return kitchen.start_up_instant_h;
    case Yeast::active_dry: return kitchen.start_up_active_dry_h;
    case Yeast::active_dry_unwetted: return kitchen.start_up_active_dry_unwetted_h;
    case Yeast::compressed: return kitchen.start_up_compressed_h;
  }
  name_of(yeast);  // throws
  return 0;
}

template <>
const Names& names_of<Yeast>() {
  static constexpr std::string_view list[] = {"instant", "active_dry", "active_dry_unwetted", "compressed"};
  static constexpr Names names{"yeast kind", "yeast", list};
  return names;
}

}  // namespace ferment
