// Deterministic numbers inside a box: the same on every machine and in every run.
#pragma once

#include <cmath>
#include <cstdint>
#include <vector>

#include <ferment/base/parameters.hpp>
#include <ferment/rise/rise.hpp>

namespace box {

class Numbers {
 public:
  explicit Numbers(std::uint64_t seed) : state_(seed) {}
  /// splitmix64 (Steele, Lea & Flood 2014), top 53 bits: std::uniform_real_distribution differs between libraries.
  double unit() {
    state_ += 0x9e3779b97f4a7c15u;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    z ^= z >> 31;
    return static_cast<double>(z >> 11) * 0x1p-53;
  }
  double between(double low, double high) { return low + (high - low) * unit(); }
  /// Evenly spread over the magnitudes; low > 0.
  double magnitude(double low, double high) {
    return std::fmin(high, std::fmax(low, low * std::pow(high / low, unit())));
  }
  std::size_t index(std::size_t n) { return static_cast<std::size_t>(unit() * static_cast<double>(n)); }

 private:
  std::uint64_t state_;
};

/// Bounds are where closed forms break: one in three is the low bound, one in three the high one.
inline double edgy(Numbers& numbers, double low, double high) {
  const double place = numbers.unit();
  return place < 1.0 / 3 ? low : place < 2.0 / 3 ? high : numbers.between(low, high);
}

/// A valid kitchen with every parameter at a bound or between. Pairs bound by a rule of require_kitchen are drawn again
/// until they keep it.
inline ferment::Kitchen any_kitchen(Numbers& numbers) {
  ferment::Kitchen kitchen;
  for (;;) {
    for (const ferment::Parameter& p : ferment::parameters()) kitchen.*p.value = edgy(numbers, p.low, p.high);
    if (kitchen.t_opt_c - kitchen.t_min_c > kitchen.t_max_above_opt_k &&
        kitchen.retention_limit > kitchen.retention_onset)
      return kitchen;
  }
}

inline constexpr ferment::Yeast all_yeasts[] = {ferment::Yeast::instant, ferment::Yeast::active_dry,
                                                ferment::Yeast::active_dry_unwetted, ferment::Yeast::compressed};
inline constexpr ferment::Law all_laws[] = {ferment::Law::cardinal, ferment::Law::square_root, ferment::Law::arrhenius,
                                            ferment::Law::constant_q10};

/// Trade weight for the same gassing, compressed 1: bounds of the dose as weighed, 0.01 to 5 % as instant yeast.
inline double per_instant(ferment::Yeast yeast) {
  switch (yeast) {
    case ferment::Yeast::instant: return 1;
    case ferment::Yeast::active_dry:
    case ferment::Yeast::active_dry_unwetted: return 0.40 / 0.33;
    case ferment::Yeast::compressed: break;
  }
  return 1 / 0.33;
}

inline ferment::Dough any_dough(Numbers& numbers) {
  ferment::Dough dough{.dough_c = 0, .yeast_percent = 0};
  dough.yeast = all_yeasts[numbers.index(4)];
  dough.yeast_percent = numbers.magnitude(0.0100001, 4.9999) * per_instant(dough.yeast);
  dough.dough_c = edgy(numbers, 0.5, 38);
  dough.salt_percent = edgy(numbers, 0, 6);
  dough.water_percent = edgy(numbers, 40, 130);
  dough.sugar_percent = edgy(numbers, 0, 40);
  dough.gluten_percent = edgy(numbers, 0, 10);
  dough.altitude_m = edgy(numbers, -500, 6000);
  return dough;
}

}  // namespace box
