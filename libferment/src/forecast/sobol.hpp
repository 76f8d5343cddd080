// Sobol's points: numbers that fill a cube evenly.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace ferment {

/// Sobol's sequence in up to 40 dimensions, in the order of Gray's code, without the point at the origin; each number
/// in units of 2^-32.
/// Source: Joe & Kuo 2008, SIAM J Sci Comput 30:2635 (direction numbers new-joe-kuo-6.21201); Bratley & Fox 1988, ACM
/// TOMS 14:88 (algorithm 659).
class Sobol {
 public:
  static constexpr std::size_t most_dimensions = 40;
  explicit Sobol(std::size_t dimensions);
  /// The next point; it stays as it is until the next call.
  const std::vector<std::uint32_t>& next();

 private:
  static constexpr std::size_t bits = 32;
  std::vector<std::array<std::uint32_t, bits>> directions_;
  std::vector<std::uint32_t> point_;
  std::uint32_t index_ = 0;
};

}  // namespace ferment
