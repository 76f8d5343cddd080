#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/dough/gas.hpp>
#include <ferment/dough/yeast.hpp>
#include <ferment/rise/rise.hpp>

#include "box.hpp"
#include "naive.hpp"
#include "refusal.hpp"

using namespace ferment;

namespace {
constexpr Yeast nonsense = static_cast<Yeast>(17);
}  // namespace

TEST_CASE("names of the kinds") {
  for (const Yeast yeast : box::all_yeasts) CHECK(named<Yeast>(name_of(yeast)) == yeast);
  CHECK(name_of(Yeast::instant) == "instant");
  CHECK(name_of(Yeast::active_dry) == "active_dry");
  CHECK(name_of(Yeast::active_dry_unwetted) == "active_dry_unwetted");
  CHECK(name_of(Yeast::compressed) == "compressed");
  for (const char* bad : {"", "Instant", "fresh", "sourdough"}) {
    try {
      named<Yeast>(bad);
      FAIL("accepted");
    } catch (const InvalidInput& error) {
      for (const Yeast yeast : box::all_yeasts) CHECK(says(error.what(), std::string(name_of(yeast))));
    }
  }
}

TEST_CASE("a kind that does not exist is refused everywhere") {
  CHECK_THROWS_AS(name_of(nonsense), InvalidInput);
  CHECK_THROWS_AS(convert_yeast(1, nonsense, Yeast::instant), InvalidInput);
  CHECK_THROWS_AS(convert_yeast(1, Yeast::instant, nonsense), InvalidInput);
  CHECK_THROWS_AS(gassing_dry_matter(1, nonsense), InvalidInput);
  CHECK_THROWS_AS(start_up_h(nonsense), InvalidInput);
  CHECK_THROWS_AS(gas_made(1, 1, nonsense), InvalidInput);
  CHECK_THROWS_AS(equivalent_hours_for_gas(1, 1, nonsense), InvalidInput);
  const Dough dough{.dough_c = 25, .yeast_percent = 1, .yeast = nonsense};
  CHECK_THROWS_AS(hours_to_rise(50, dough), InvalidInput);
  CHECK_THROWS_AS(rise_after(1, dough), InvalidInput);
  CHECK_THROWS_AS(reachable_rise(dough), InvalidInput);
  CHECK_THROWS_AS(yeast_for_rise(50, 2, dough), InvalidInput);
  CHECK_THROWS_AS(explain(50, dough), InvalidInput);
  CHECK_THROWS_AS(require_yeast(1.0, nonsense), InvalidInput);
}

TEST_CASE("the trade's weight ratios") {
  CHECK(convert_yeast(1, Yeast::compressed, Yeast::active_dry) == doctest::Approx(0.40).epsilon(1e-15));
  CHECK(convert_yeast(1, Yeast::compressed, Yeast::instant) == doctest::Approx(0.33).epsilon(1e-15));
  CHECK(convert_yeast(0.33, Yeast::instant, Yeast::active_dry_unwetted) == doctest::Approx(0.40).epsilon(1e-15));
  box::Numbers numbers(5);
  int changed = 0;
  for (int i = 0; i < 1000; ++i) {
    const double dose = numbers.magnitude(0.04, 4.9);
    for (const Yeast yeast : box::all_yeasts) changed += convert_yeast(dose, yeast, yeast) != dose;
  }
  CHECK_MESSAGE(changed == 0, changed, " of 4000 doses are not their own equal");
  for (const Yeast from : box::all_yeasts) {
    for (const Yeast to : box::all_yeasts) {
      for (int i = 0; i < 50; ++i) {
        const double dose = numbers.magnitude(0.0101, 4.99) * box::per_instant(from);
        CHECK(convert_yeast(convert_yeast(dose, from, to), to, from) == doctest::Approx(dose).epsilon(1e-14));
        CHECK(gassing_dry_matter(convert_yeast(dose, from, to), to) ==
              doctest::Approx(gassing_dry_matter(dose, from)).epsilon(1e-14));
        CHECK(naive::relative_error(gassing_dry_matter(dose, from), naive::dry_matter(dose, from)) <= 1e-12);
      }
    }
  }
}

TEST_CASE("start-up times are the kitchen's") {
  Kitchen kitchen;
  CHECK(start_up_h(Yeast::compressed, kitchen) == 0.2);
  CHECK(start_up_h(Yeast::instant, kitchen) == 0.25);
  CHECK(start_up_h(Yeast::active_dry, kitchen) == 0.25);
  CHECK(start_up_h(Yeast::active_dry_unwetted, kitchen) == 0.8);
}

TEST_CASE("a dose outside 0.01 to 5 % as instant yeast is refused in the words of its kind") {
  for (const Yeast yeast : box::all_yeasts) {
    const double low = 0.01 * box::per_instant(yeast);
    const double high = 5 * box::per_instant(yeast);
    const std::string kind = yeast == Yeast::compressed ? "compressed yeast"
                             : yeast == Yeast::instant  ? "instant yeast"
                                                        : "active dry yeast";
    CHECK_NOTHROW(require_yeast(low * (1 + 1e-12), yeast));
    CHECK_NOTHROW(require_yeast(high * (1 - 1e-12), yeast));
    constexpr double infinity = std::numeric_limits<double>::infinity();
    for (const double bad : {low * (1 - 1e-12), high * (1 + 1e-12), 0.0, -1.0, infinity, -infinity,
                             std::numeric_limits<double>::quiet_NaN()}) {
      Dough dough{.dough_c = 25, .yeast_percent = bad, .yeast = yeast};
      CHECK_THROWS_AS(hours_to_rise(50, dough), InvalidInput);
      CHECK_THROWS_AS(rise_after(1, dough), InvalidInput);
      CHECK_THROWS_AS(gas_made(1, bad, yeast), InvalidInput);
      try {
        require_yeast(bad, yeast);
        FAIL("accepted");
      } catch (const InvalidInput& error) {
        INFO(std::string(error.what()));
        CHECK(says(error.what(), kind));
        CHECK(says(error.what(), "%"));
        CHECK(error.detail().path == "yeast_percent");
        REQUIRE(error.detail().low);
        CHECK(*error.detail().low == doctest::Approx(low));
        CHECK(*error.detail().high == doctest::Approx(high));
      }
    }
  }
  CHECK_NOTHROW(require_yeast(0.01, Yeast::instant));
  CHECK_NOTHROW(require_yeast(5.0, Yeast::instant));
}
