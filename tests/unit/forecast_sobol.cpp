#include "forecast/sobol.hpp"

#include <cstdint>

#include <doctest/doctest.h>
#include <boost/random/sobol.hpp>

using ferment::Sobol;

TEST_CASE("Sobol's points are those of Boost.Random, which has its own copy of the direction numbers") {
  for (const std::size_t dimensions : {std::size_t{1}, std::size_t{2}, std::size_t{19}, Sobol::most_dimensions}) {
    Sobol points(dimensions);
    boost::random::sobol others(dimensions);
    std::size_t different = 0;
    for (int draw = 0; draw < 4096; ++draw) {
      for (const std::uint32_t number : points.next()) different += number != others() >> 32 ? 1 : 0;
    }
    CHECK(different == 0);
  }
}
