#include "forecast/sobol.hpp"

#include <bit>
#include <span>
#include <string>

#include <ferment/base/error.hpp>

namespace ferment {
namespace {

/// A primitive polynomial, its coefficients as bits, and the first direction numbers.
struct Direction {
  std::uint32_t polynomial;
  std::array<std::uint32_t, 8> first;
};
constexpr Direction table[] = {
    {3, {1}},
    {7, {1, 3}},
    {11, {1, 3, 1}},
    {13, {1, 1, 1}},
    {19, {1, 1, 3, 3}},
    {25, {1, 3, 5, 13}},
    {37, {1, 1, 5, 5, 17}},
    {41, {1, 1, 5, 5, 5}},
    {47, {1, 1, 7, 11, 19}},
    {55, {1, 1, 5, 1, 1}},
    {59, {1, 1, 1, 3, 11}},
    {61, {1, 3, 5, 5, 31}},
    {67, {1, 3, 3, 9, 7, 49}},
    {91, {1, 1, 1, 15, 21, 21}},
    {97, {1, 3, 1, 13, 27, 49}},
    {103, {1, 1, 1, 15, 7, 5}},
    {109, {1, 3, 1, 15, 13, 25}},
    {115, {1, 1, 5, 5, 19, 61}},
    {131, {1, 3, 7, 11, 23, 15, 103}},
    {137, {1, 3, 7, 13, 13, 15, 69}},
    {143, {1, 1, 3, 13, 7, 35, 63}},
    {145, {1, 3, 5, 9, 1, 25, 53}},
    {157, {1, 3, 1, 13, 9, 35, 107}},
    {167, {1, 3, 1, 5, 27, 61, 31}},
    {171, {1, 1, 5, 11, 19, 41, 61}},
    {185, {1, 3, 5, 3, 3, 13, 69}},
    {191, {1, 1, 7, 13, 1, 19, 1}},
    {193, {1, 3, 7, 5, 13, 19, 59}},
    {203, {1, 1, 3, 9, 25, 29, 41}},
    {211, {1, 3, 5, 13, 23, 1, 55}},
    {213, {1, 3, 7, 3, 13, 59, 17}},
    {229, {1, 3, 1, 3, 5, 53, 69}},
    {239, {1, 1, 5, 5, 23, 33, 13}},
    {241, {1, 1, 7, 7, 1, 61, 123}},
    {247, {1, 1, 7, 9, 13, 61, 49}},
    {253, {1, 3, 3, 5, 3, 55, 33}},
    {285, {1, 3, 1, 15, 31, 13, 49, 245}},
    {299, {1, 3, 5, 15, 31, 59, 63, 97}},
    {301, {1, 3, 1, 11, 11, 11, 77, 249}},
};
static_assert(std::size(table) == Sobol::most_dimensions - 1);

std::array<std::uint32_t, 32> directions_of(const Direction& row) {
  const auto degree = static_cast<std::size_t>(std::bit_width(row.polynomial) - 1);
  std::array<std::uint32_t, 32> v{};
  for (std::size_t j = 0; j < v.size(); ++j) {
    if (j < degree) {
      v[j] = row.first[j] << (31 - j);
      continue;
    }
    v[j] = v[j - degree] ^ (v[j - degree] >> degree);
    for (std::size_t k = 1; k < degree; ++k) {
      if ((row.polynomial >> (degree - k) & 1) != 0) v[j] ^= v[j - k];
    }
  }
  return v;
}

}  // namespace

Sobol::Sobol(std::size_t dimensions) : directions_(dimensions), point_(dimensions) {
  if (dimensions < 1 || dimensions > most_dimensions)
    throw InvalidInput("points of " + std::to_string(dimensions) + " dimensions, of 1 to " +
                           std::to_string(most_dimensions),
                       {.path = "dimensions"});
  for (std::size_t j = 0; j < bits; ++j) directions_[0][j] = std::uint32_t{1} << (31 - j);
  for (std::size_t i = 1; i < dimensions; ++i) directions_[i] = directions_of(table[i - 1]);
}

const std::vector<std::uint32_t>& Sobol::next() {
  const auto changed = static_cast<std::size_t>(std::countr_one(index_++));
  for (std::size_t i = 0; i < point_.size(); ++i) point_[i] ^= directions_[i][changed];
  return point_;
}

}  // namespace ferment
