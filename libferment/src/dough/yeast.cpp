#include <ferment/dough/yeast.hpp>

#include <array>
#include <string>

#include <ferment/base/error.hpp>

#include "base/text.hpp"
#include "dough/yeast_formula.hpp"

namespace ferment {
namespace {

constexpr std::array kinds{std::pair{Yeast::instant, std::string_view("instant")},
                           std::pair{Yeast::active_dry, std::string_view("active_dry")},
                           std::pair{Yeast::active_dry_unwetted, std::string_view("active_dry_unwetted")},
                           std::pair{Yeast::compressed, std::string_view("compressed")}};

}  // namespace

std::string_view name_of(Yeast yeast) {
  for (const auto& [kind, name] : kinds) {
    if (kind == yeast) return name;
  }
  throw InvalidInput("yeast kind " + std::to_string(static_cast<int>(yeast)) + " is unknown",
                     {.path = "yeast",
                      .value = static_cast<double>(yeast),
                      .low = 0.0,
                      .high = 3.0,
                      .advice = "known: 0 instant, 1 active_dry, 2 active_dry_unwetted, 3 compressed"});
}

Yeast yeast_named(std::string_view name) {
  for (const auto& [kind, known] : kinds) {
    if (known == name) return kind;
  }
  throw InvalidInput("yeast kind \"" + std::string(name) + "\" is unknown",
                     {.path = "yeast",
                      .advice = "known: instant, active_dry (wetted first), active_dry_unwetted, compressed (fresh)"});
}

void require_yeast(const Values& yeast_percent, Yeast yeast) {
  name_of(yeast);
  const double per_instant = formula::compressed_ratio(yeast) / formula::compressed_ratio(Yeast::instant);
  Field bound = field::yeast_percent;
  bound.low = field::instant_equivalent_percent.low * per_instant;
  bound.high = field::instant_equivalent_percent.high * per_instant;
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

}  // namespace ferment
