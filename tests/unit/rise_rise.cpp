#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <string>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/clock/speed.hpp>
#include <ferment/dough/gas.hpp>
#include <ferment/dough/volume.hpp>
#include <ferment/rise/rise.hpp>

#include "box.hpp"
#include "naive.hpp"

using namespace ferment;
using naive::Real;

namespace {

constexpr double epsilon = 0x1p-52;
constexpr double infinity = std::numeric_limits<double>::infinity();

double worse(double worst, double error) { return error <= worst ? worst : error; }

double hours_by_array(double rise, const Dough& d, const Kitchen& kitchen) {
  double out = -1;
  hours_to_rise(rise,
                {d.dough_c, d.yeast_percent, d.yeast, d.salt_percent, d.water_percent, d.sugar_percent,
                 d.gluten_percent, d.altitude_m},
                {&out, 1}, kitchen, Unreachable::infinity);
  return out;
}

/// Rises where closed forms are tried hardest: the smallest that may be asked, next to what the dough can hold, next to
/// what it can make, and anything between.
double any_rise(box::Numbers& numbers, const Dough& dough, const Kitchen& kitchen, int kind) {
  const double reach = reachable_rise(dough, kitchen);
  switch (kind) {
    case 0: return 0.1;
    case 1: return std::min(1000.0, std::max(0.1, reach * (1 - numbers.magnitude(1e-10, 1e-1))));
    default: return numbers.magnitude(0.1, std::min(1000.0, std::max(0.11, reach)));
  }
}

struct Chained {
  int cases = 0;
  int unreachable = 0;
  double worst = 0;         ///< where the condition number is below `well`
  double worst_scaled = 0;  ///< error over epsilon × condition, where it is not
  int ill = 0;
  double largest_condition = 0;
};
constexpr double well = 500;

/// hours_to_rise against the 100-digit chain. Where the gas or what the dough can hold is nearly spent the answer hangs
/// on the last digits of the inputs: rounding each input by half a unit in its last place moves it by up to condition ×
/// 2^-53. A double computation cannot be asked to be better than a small multiple of that; 8 covers the dozen roundings
/// of the chain that are as harmful as those of the inputs.
void chain_against(const Dough& dough, double rise, const Kitchen& kitchen, Chained& seen) {
  const naive::Chain chain(rise, dough, kitchen);
  const double got = hours_by_array(rise, dough, kitchen);
  if (!chain.holds() || !(chain.speed() > 0) || !chain.makes()) {
    ++seen.unreachable;
    CHECK(got == infinity);
    return;
  }
  const Real wanted = chain.hours();
  const double condition = chain.condition(wanted);
  const double error = naive::relative_error(got, wanted);
  INFO("rise ", rise, ", ", dough.dough_c, " °C, yeast ", dough.yeast_percent, ", salt ", dough.salt_percent,
       ", water ", dough.water_percent, ", sugar ", dough.sugar_percent, ", gluten ", dough.gluten_percent, ": got ",
       got, " h, wanted ", static_cast<double>(wanted), ", error ", error, ", condition ", condition);
  ++seen.cases;
  seen.largest_condition = std::max(seen.largest_condition, condition);
  if (condition < well) {
    CHECK(error <= 1e-12);
    seen.worst = worse(seen.worst, error);
  } else {
    ++seen.ill;
    CHECK(error <= std::max(1e-12, 8 * epsilon * condition));
    seen.worst_scaled = worse(seen.worst_scaled, error / (epsilon * condition));
  }
}

void report(const std::string& what, const Chained& seen) {
  MESSAGE(what, ": ", seen.cases, " cases, worst relative error ", seen.worst, "; of these ", seen.ill,
          " ill-conditioned (up to ", seen.largest_condition, "), worst error ", seen.worst_scaled,
          " epsilon × condition; ", seen.unreachable, " never reached");
}

}  // namespace

TEST_CASE("hours to a rise against the chain in 100 digits: the default kitchen") {
  box::Numbers numbers(91);
  Chained seen;
  for (int i = 0; i < 240; ++i) {
    const Dough dough = box::any_dough(numbers);
    chain_against(dough, any_rise(numbers, dough, {}, i % 4), {}, seen);
  }
  report("default kitchen", seen);
  CHECK(seen.cases > 160);
  CHECK(seen.ill < seen.cases / 2);
}

TEST_CASE("hours to a rise against the chain in 100 digits: kitchens at their bounds, every law") {
  box::Numbers numbers(92);
  Chained seen;
  for (int i = 0; i < 560; ++i) {
    Kitchen kitchen = box::any_kitchen(numbers);
    kitchen.law = box::all_laws[i % 4];
    const Dough dough = box::any_dough(numbers);
    chain_against(dough, any_rise(numbers, dough, kitchen, (i / 4) % 4), kitchen, seen);
  }
  report("any kitchen", seen);
  CHECK(seen.cases > 300);
}

TEST_CASE("hours to a rise against the chain in 100 digits: where growth begins") {
  // The clock's two branches meet at the lag; the rise of just that hour sits on the seam.
  box::Numbers numbers(93);
  Chained seen;
  for (int i = 0; i < 150; ++i) {
    const Kitchen kitchen = i % 2 ? box::any_kitchen(numbers) : Kitchen{};
    Dough dough = box::any_dough(numbers);
    const double per_hour = speed(dough.dough_c, dough.salt_percent, dough.water_percent, dough.sugar_percent, kitchen);
    if (!(per_hour > 0)) continue;
    const double lag = kitchen.growth_lag_h / per_hour;
    if (lag > 900) continue;
    const double rise = rise_after(lag * (1 + (i % 3 - 1) * 1e-9), dough, kitchen);
    if (!(rise >= 0.1 && rise < 0.999 * reachable_rise(dough, kitchen))) continue;
    chain_against(dough, rise, kitchen, seen);
  }
  report("at the lag", seen);
  CHECK(seen.cases > 30);
}

TEST_CASE("hours to a rise against the chain in 100 digits: growth before the start-up is over") {
  // The slowest start-up with the shortest lag: the deficit is far from spent when the yeast begins to grow.
  box::Numbers numbers(102);
  Chained seen;
  for (int i = 0; i < 400; ++i) {
    Kitchen kitchen = box::any_kitchen(numbers);
    kitchen.growth_lag_h = i % 2 ? 0.2 : numbers.magnitude(0.2, 1);
    kitchen.start_up_instant_h = i % 4 < 2 ? 2 : numbers.magnitude(0.5, 2);
    kitchen.aw_min = 0.85;
    Dough dough = box::any_dough(numbers);
    dough.yeast = Yeast::instant;
    dough.yeast_percent = numbers.magnitude(0.0100001, 4.9999);
    dough.dough_c = numbers.between(10, 30);
    const double theta = kitchen.growth_lag_h * (1 + numbers.magnitude(1e-6, 20));
    const double per_hour = speed(dough.dough_c, dough.salt_percent, dough.water_percent, dough.sugar_percent, kitchen);
    if (!(theta <= 900 * per_hour)) continue;  // stands still, or nearly
    const double rise = rise_after(theta / per_hour, dough, kitchen);
    if (!(rise >= 0.1 && rise < std::min(1000.0, 0.999 * reachable_rise(dough, kitchen)))) continue;
    chain_against(dough, rise, kitchen, seen);
  }
  report("growth during start-up", seen);
  CHECK(seen.cases > 100);
}

TEST_CASE("rise after a time against the chain in 100 digits") {
  box::Numbers numbers(94);
  double worst = 0;
  int plain = 0;
  for (int i = 0; i < 400; ++i) {
    Kitchen kitchen = i % 3 ? box::any_kitchen(numbers) : Kitchen{};
    kitchen.law = box::all_laws[i % 4];
    const Dough dough = box::any_dough(numbers);
    const naive::Chain chain(100, dough, kitchen);
    if (!(chain.speed() > 0)) {
      CHECK(rise_after(10, dough, kitchen) == 0);
      continue;
    }
    const double time = numbers.magnitude(0.05, 1000);
    const Real wanted = chain.rise_after(time);
    const double condition = chain.rise_condition(time);
    const double error = naive::relative_error(rise_after(time, dough, kitchen), wanted);
    INFO("time ", time, ", rise ", static_cast<double>(wanted), ", condition ", condition, ", error ", error);
    CHECK(error <= std::max(1e-12, 8 * epsilon * condition));
    if (condition < well) {
      worst = worse(worst, error);
      ++plain;
    }
  }
  MESSAGE("rise after a time: worst relative error ", worst, " in ", plain, " well-conditioned cases");
  CHECK(worst <= 1e-12);
  CHECK(plain > 150);
}

TEST_CASE("rise to hours to rise, wherever the gas is not spent") {
  box::Numbers numbers(95);
  double worst = 0;
  double worst_default = 0;
  int count = 0;
  for (int i = 0; i < 20000; ++i) {
    Kitchen kitchen = i % 2 ? box::any_kitchen(numbers) : Kitchen{};
    kitchen.law = i % 2 ? box::all_laws[i / 2 % 4] : Law::cardinal;
    const Dough dough = box::any_dough(numbers);
    const double reach = reachable_rise(dough, kitchen);
    const double rise = numbers.magnitude(0.1, 1000);
    if (rise > 0.99 * reach) continue;
    const double hours = hours_by_array(rise, dough, kitchen);
    if (!(hours < 1000)) continue;
    const double error = std::abs(rise_after(hours, dough, kitchen) / rise - 1);
    INFO("rise ", rise, " of ", reach, ", hours ", hours);
    CHECK(error <= 1e-9);
    worst = worse(worst, error);
    if (i % 2 == 0) worst_default = worse(worst_default, error);
    ++count;
  }
  MESSAGE("rise → hours → rise: worst relative error ", worst, " (default kitchen ", worst_default, ") in ", count);
  CHECK(count > 5000);
}

TEST_CASE("dose to hours to dose") {
  box::Numbers numbers(96);
  double worst = 0;
  int count = 0;
  for (int i = 0; i < 3000; ++i) {
    const Kitchen kitchen = i % 2 ? box::any_kitchen(numbers) : Kitchen{};
    Dough dough = box::any_dough(numbers);
    const double rise = numbers.magnitude(1, 400);
    if (rise > 0.99 * reachable_rise(dough, kitchen)) continue;
    const double hours = hours_by_array(rise, dough, kitchen);
    if (!(hours >= 0.01 && hours <= 1000)) continue;
    const double dose = dough.yeast_percent;
    dough.yeast_percent = std::numeric_limits<double>::quiet_NaN();  // is not read
    const double back = yeast_for_rise(rise, hours, dough, kitchen);
    CHECK(std::abs(back / dose - 1) <= 1e-9);
    worst = worse(worst, std::abs(back / dose - 1));
    ++count;
  }
  MESSAGE("dose → hours → dose: worst relative error ", worst, " in ", count);
  CHECK(count > 600);
}

TEST_CASE("a dose at either end of its range is found, one beyond names the reachable hours") {
  for (const Yeast yeast : box::all_yeasts) {
    Dough dough{.dough_c = 25, .yeast_percent = 1, .yeast = yeast};
    for (const double instant : {0.01 * (1 + 1e-9), 5 * (1 - 1e-9)}) {
      dough.yeast_percent = instant * box::per_instant(yeast);
      const double hours = hours_to_rise(100, dough);
      CHECK(yeast_for_rise(100, hours, dough) == doctest::Approx(dough.yeast_percent).epsilon(1e-9));
    }
  }
  const Dough dough{.dough_c = 25, .yeast_percent = 1};
  Dough least = dough;
  least.yeast_percent = 0.01;
  Dough most = dough;
  most.yeast_percent = 5;
  for (const double impossible : {0.02, 500.0}) {
    try {
      yeast_for_rise(100, impossible, dough);
      FAIL("accepted");
    } catch (const NoSolution& error) {
      REQUIRE(error.detail().low);
      CHECK(*error.detail().low == doctest::Approx(hours_to_rise(100, most)).epsilon(1e-9));
      CHECK(*error.detail().high == doctest::Approx(hours_to_rise(100, least)).epsilon(1e-9));
      CHECK(error.detail().path == "target_h");
    }
  }
}

TEST_CASE("rise: arrays of every length equal the scalar bit for bit, single values and arrays mixed") {
  box::Numbers numbers(97);
  for (const bool default_kitchen : {true, false}) {
    Kitchen kitchen = default_kitchen ? Kitchen{} : box::any_kitchen(numbers);
    for (const std::size_t n : {std::size_t{0}, std::size_t{1}, std::size_t{2}, std::size_t{127}, std::size_t{128},
                                std::size_t{129}, std::size_t{1000}}) {
      std::vector<double> rise(n), time(n), t(n), yeast(n), salt(n), water(n), sugar(n), gluten(n), altitude(n),
          out(n, -1), back(n, -1);
      for (std::size_t i = 0; i < n; ++i) {
        const Dough d = box::any_dough(numbers);
        rise[i] = numbers.magnitude(0.1, 1000);
        time[i] = numbers.magnitude(1e-3, 1000);
        t[i] = numbers.between(-2, 45);
        yeast[i] = numbers.magnitude(0.0101, 4.9);
        salt[i] = d.salt_percent;
        water[i] = d.water_percent;
        sugar[i] = d.sugar_percent;
        gluten[i] = d.gluten_percent;
        altitude[i] = d.altitude_m;
      }
      const auto scalar = [&](std::size_t i) {
        return Dough{.dough_c = t[i],
                     .yeast_percent = yeast[i],
                     .salt_percent = salt[i],
                     .water_percent = water[i],
                     .sugar_percent = sugar[i],
                     .gluten_percent = gluten[i],
                     .altitude_m = altitude[i]};
      };
      const Doughs all{t, yeast, Yeast::instant, salt, water, sugar, gluten, altitude};
      hours_to_rise(rise, all, out, kitchen, Unreachable::infinity);
      rise_after(time, all, back, kitchen);
      for (std::size_t i = 0; i < n; ++i) {
        CHECK(out[i] == hours_by_array(rise[i], scalar(i), kitchen));
        CHECK(back[i] == rise_after(time[i], scalar(i), kitchen));
        if (out[i] < infinity) CHECK(out[i] == hours_to_rise(rise[i], scalar(i), kitchen));
      }
      // Each input in turn as the only array, and as the only single value.
      const auto mixed_inputs = [&](Values Doughs::*member, auto Dough::*scalar_member,
                                    const std::vector<double>& values, double single) {
        Doughs one_array{.dough_c = 24, .yeast_percent = 0.7};
        one_array.*member = values;
        hours_to_rise(80, one_array, out, kitchen, Unreachable::infinity);
        Doughs one_single = all;
        one_single.*member = single;
        rise_after(time, one_single, back, kitchen);
        for (std::size_t i = 0; i < n; ++i) {
          Dough d{.dough_c = 24, .yeast_percent = 0.7};
          d.*scalar_member = values[i];
          CHECK(out[i] == hours_by_array(80, d, kitchen));
          d = scalar(i);
          d.*scalar_member = single;
          CHECK(back[i] == rise_after(time[i], d, kitchen));
        }
      };
      if (n > 129) continue;
      mixed_inputs(&Doughs::dough_c, &Dough::dough_c, t, 25);
      mixed_inputs(&Doughs::yeast_percent, &Dough::yeast_percent, yeast, 1);
      mixed_inputs(&Doughs::salt_percent, &Dough::salt_percent, salt, 2);
      mixed_inputs(&Doughs::water_percent, &Dough::water_percent, water, 65);
      mixed_inputs(&Doughs::sugar_percent, &Dough::sugar_percent, sugar, 3);
      mixed_inputs(&Doughs::gluten_percent, &Dough::gluten_percent, gluten, 1);
      mixed_inputs(&Doughs::altitude_m, &Dough::altitude_m, altitude, 800);
    }
  }
}

TEST_CASE("rise: digits do not depend on the neighbours in an array") {
  // A dough that settles slowly must not give its block further steps: slow start-up and a short lag beside easy
  // doughs.
  box::Numbers numbers(104);
  std::size_t different = 0;
  for (int round = 0; round < 40; ++round) {
    Kitchen kitchen = round % 2 ? box::any_kitchen(numbers) : Kitchen{};
    kitchen.growth_lag_h = 0.2;
    kitchen.start_up_instant_h = numbers.magnitude(0.1, 2);
    kitchen.aw_min = 0.85;
    constexpr std::size_t n = 200;
    std::vector<double> rise(n), t(n), yeast(n), out(n);
    for (std::size_t i = 0; i < n; ++i) {
      rise[i] = numbers.magnitude(0.1, 400);
      t[i] = numbers.between(9, 38);
      yeast[i] = numbers.magnitude(0.0101, 4.9);
    }
    hours_to_rise(rise, {.dough_c = t, .yeast_percent = yeast}, out, kitchen, Unreachable::infinity);
    for (std::size_t i = 0; i < n; ++i)
      different += out[i] != hours_by_array(rise[i], {.dough_c = t[i], .yeast_percent = yeast[i]}, kitchen);
  }
  CHECK_MESSAGE(different == 0, different, " of 8000 differ");
}

TEST_CASE("rise: an array of another length is refused and says which") {
  std::vector<double> out(4);
  const std::vector<double> three(3, 1.0);
  const auto refuses = [&](const std::function<void()>& call, const char* label) {
    try {
      call();
      FAIL_CHECK("accepted: " << std::string(label));
    } catch (const InvalidInput& error) {
      CHECK_MESSAGE(std::string(error.what()).find(std::string(label) + " has 3 values where 4 are wanted") !=
                        std::string::npos,
                    std::string(error.what()));
    }
  };
  const Doughs plain{.dough_c = 25, .yeast_percent = 1};
  const std::pair<Values Doughs::*, const char*> members[] = {{&Doughs::dough_c, "dough temperature"},
                                                              {&Doughs::yeast_percent, "yeast"},
                                                              {&Doughs::salt_percent, "salt"},
                                                              {&Doughs::water_percent, "water"},
                                                              {&Doughs::sugar_percent, "sugar"},
                                                              {&Doughs::gluten_percent, "added gluten"},
                                                              {&Doughs::altitude_m, "altitude"}};
  for (const auto& [member, label] : members) {
    Doughs doughs = plain;
    doughs.*member = three;
    refuses([&] { hours_to_rise(50, doughs, out); }, label);
    refuses([&] { rise_after(1, doughs, out); }, label);
  }
  refuses([&] { hours_to_rise(three, plain, out); }, "rise");
  refuses([&] { rise_after(three, plain, out); }, "time");
}

TEST_CASE("a rise never reached is infinite for maps, otherwise an error with first place and count") {
  const std::vector<double> rise{50, 100, 900, 100, 900};
  const std::vector<double> t{25, 25, 25, -2, 45};
  std::vector<double> out(5, -1);
  const Doughs doughs{.dough_c = t, .yeast_percent = 1};
  hours_to_rise(rise, doughs, out, {}, Unreachable::infinity);
  CHECK(out[0] < infinity);
  CHECK(out[1] < infinity);
  for (const std::size_t i : {2u, 3u, 4u}) CHECK(out[i] == infinity);
  try {
    hours_to_rise(rise, doughs, out);
    FAIL("accepted");
  } catch (const NoSolution& error) {
    CHECK(error.detail().index == 2u);
    CHECK(error.detail().count == 3u);
    CHECK(error.detail().value == 900.0);
    CHECK(std::string(error.what()).find("(first at index 2, 3 of 5)") != std::string::npos);
    REQUIRE(error.detail().high);
    CHECK(std::abs(*error.detail().high - reachable_rise({.dough_c = 25, .yeast_percent = 1})) < 1e-9);
  }
  // The first may be a dough whose yeast stands still: another kind of error, with the same facts.
  try {
    hours_to_rise(100, Doughs{.dough_c = std::vector{-2.0, 25.0, 45.0}, .yeast_percent = 1}, std::span(out).first(3));
    FAIL("accepted");
  } catch (const OutsideModel& error) {
    CHECK(error.detail().index == 0u);
    CHECK(error.detail().count == 2u);
    CHECK(error.detail().path == "dough_c");
  }
  // One alone has no place.
  try {
    hours_to_rise(900, {.dough_c = 25, .yeast_percent = 1});
    FAIL("accepted");
  } catch (const NoSolution& error) {
    CHECK_FALSE(error.detail().index);
    CHECK(std::string(error.what()).find("index") == std::string::npos);
  }
  CHECK_THROWS_AS(
      hours_to_rise(50,
                    {.dough_c = 25, .yeast_percent = 1, .salt_percent = 6, .water_percent = 40, .sugar_percent = 40}),
      OutsideModel);
}

TEST_CASE("an array of one place names it") {
  double out = 0;
  try {
    hours_to_rise(900, Doughs{.dough_c = std::vector{25.0}, .yeast_percent = 1}, {&out, 1});
    FAIL("accepted");
  } catch (const NoSolution& error) {
    CHECK(error.detail().index == 0u);
    CHECK(error.detail().count == 1u);
  }
}

TEST_CASE("the reachable rise is what is neared and never reached") {
  box::Numbers numbers(98);
  for (int i = 0; i < 300; ++i) {
    const Dough dough = box::any_dough(numbers);
    const double reach = reachable_rise(dough);
    if (!(speed(dough.dough_c, dough.salt_percent, dough.water_percent, dough.sugar_percent) > 0)) continue;
    if (reach > 1 && reach < 999) {
      CHECK(hours_by_array(reach * 0.999, dough, {}) < infinity);
      CHECK(hours_by_array(reach * (1 + 1e-9), dough, {}) == infinity);
    }
    CHECK(rise_after(1000, dough) <= reach * (1 + 1e-12));
  }
}

TEST_CASE("the factors that made a time multiply to it") {
  const Dough dough{.dough_c = 21,
                    .yeast_percent = 0.4,
                    .yeast = Yeast::active_dry,
                    .salt_percent = 2.2,
                    .water_percent = 72,
                    .sugar_percent = 6,
                    .gluten_percent = 1,
                    .altitude_m = 1500};
  const Explanation explained = explain(100, dough);
  CHECK(explained.reference_h == hours_to_rise(100, {.dough_c = 25, .yeast_percent = 1}));
  CHECK(explained.hours == hours_to_rise(100, dough));
  const char* names[] = {"yeast", "temperature", "salt", "water", "sugar", "gluten", "altitude"};
  REQUIRE(explained.factors.size() == 7);
  double product = explained.reference_h;
  for (std::size_t i = 0; i < 7; ++i) {
    CHECK(std::string(explained.factors[i].name) == names[i]);
    product *= explained.factors[i].times;
  }
  CHECK(product == doctest::Approx(explained.hours).epsilon(1e-13));
  CHECK(explained.factors[1].from_value == 25);
  CHECK(explained.factors[1].to_value == 21);
  CHECK(explained.factors[0].times > 1);                 // less yeast
  CHECK(explained.factors[1].times > 1);                 // colder
  CHECK(explained.factors[2].times > 1);                 // more salt
  CHECK(speed(21, 2.2, 72, 0) > speed(21, 2.2, 65, 0));  // slacker: a faster clock, but more dough and water to fill
  CHECK(explained.factors[4].times > 1);                 // sweeter
  CHECK(explained.factors[6].times < 1);                 // higher
  CHECK_THROWS_AS(explain(900, dough), NoSolution);
}

TEST_CASE("a rise that only this dough reaches has no reference, and the error says which of the two lacks it") {
  // Sugar and gluten let this dough rise further than the reference dough ever does.
  const Dough dough{.dough_c = 25, .yeast_percent = 1, .sugar_percent = 8, .gluten_percent = 10};
  CHECK(hours_to_rise(430, dough) > 0);
  try {
    explain(430, dough);
    FAIL("accepted");
  } catch (const NoSolution& error) {
    CHECK(std::string(error.what()).find("reference dough") != std::string::npos);
    CHECK(error.detail().value == 430.0);
    REQUIRE(error.detail().high);
    CHECK(std::abs(*error.detail().high - reachable_rise({.dough_c = 25, .yeast_percent = 1})) < 1e-9);
  }
}

TEST_CASE("a rise that both this dough and the reference reach can be explained") {
  box::Numbers numbers(103);
  int count = 0;
  int refused = 0;
  std::string example;
  const double reference = reachable_rise({.dough_c = 25, .yeast_percent = 1});
  for (int i = 0; i < 2000; ++i) {
    const Dough dough = box::any_dough(numbers);
    const double rise = numbers.magnitude(50, reference * 0.999);
    const double hours = hours_by_array(rise, dough, {});
    if (!(hours < infinity)) continue;
    ++count;
    try {
      const Explanation explained = explain(rise, dough);
      double product = explained.reference_h;
      for (const Factor& factor : explained.factors) product *= factor.times;
      CHECK(std::abs(product / hours - 1) <= 1e-13);
    } catch (const Error& error) {
      ++refused;
      example = error.what();
    }
  }
  CHECK(count > 500);
  CHECK_MESSAGE(refused == 0, refused, " of ", count, ", such as: ", example);
}

// ---- a dough between moments -----------------------------------------------------------------------------------

TEST_CASE("over-proofed: a share of the largest volume, and of a final proof its own limit") {
  const Dough dough{.dough_c = 25, .yeast_percent = 1};
  CHECK(over_proof_ratio(dough, Standing::tin, false) == doctest::Approx(0.87 * 4.8));
  CHECK(over_proof_ratio(dough, Standing::free, false) == doctest::Approx(0.65 * 4.8));
  CHECK(over_proof_ratio(dough, Standing::tin, true, 1.2) == doctest::Approx(1.2 * 3));
  CHECK(over_proof_ratio(dough, Standing::free, true, 1.2) == doctest::Approx(1.2 * 2.3));
  CHECK(over_proof_ratio(dough, Standing::free, true, 2) == doctest::Approx(0.65 * 4.8));
  CHECK(over_proof_ratio({.dough_c = 25, .yeast_percent = 1, .gluten_percent = 2}, Standing::tin, false) ==
        doctest::Approx(0.87 * 4.8 * 1.1));
  for (const double bad : {std::numeric_limits<double>::quiet_NaN(), infinity, 0.0})
    CHECK_THROWS_AS(over_proof_ratio(dough, Standing::tin, true, bad), InvalidInput);
}

// ---- what a baker knows -----------------------------------------------------------------------------------------

TEST_CASE("warmer, more yeast, less salt, a lower rise and thinner air are faster") {
  for (const Yeast yeast : box::all_yeasts) {
    for (const double dose : {0.05, 0.5, 3.0}) {
      Dough dough{.dough_c = 24, .yeast_percent = dose * box::per_instant(yeast), .yeast = yeast};
      const auto faster = [&](auto Dough::*member, double from, double to, double step) {
        double before = infinity;
        for (double value = from; step > 0 ? value <= to : value >= to; value += step) {
          Dough changed = dough;
          changed.*member = value;
          const double hours = hours_to_rise(100, changed);
          CHECK(hours < before);
          before = hours;
        }
      };
      faster(&Dough::dough_c, 1, 40, 1);
      faster(&Dough::yeast_percent, 0.02 * box::per_instant(yeast), 4.9 * box::per_instant(yeast),
             0.1 * box::per_instant(yeast));
      faster(&Dough::salt_percent, 4, 0, -0.25);
      faster(&Dough::altitude_m, 0, 6000, 500);
      double before = 0;
      for (double rise = 1; rise < 360; rise += 7) {
        const double hours = hours_to_rise(rise, dough);
        CHECK(hours > before);
        before = hours;
      }
      before = -1;
      for (double hours = 0; hours < 100; hours += 0.5) {
        const double rise = rise_after(hours, dough);
        CHECK(rise >= before);
        before = rise;
      }
      CHECK(rise_after(0, dough) == 0);
    }
  }
}

TEST_CASE("above 4 % sugar a dough slows, up to 4 % its speed stays") {
  for (double sugar = 4; sugar < 18; sugar += 1) CHECK(speed(25, 2, 65, sugar + 1) < speed(25, 2, 65, sugar));
  CHECK(speed(25, 2, 65, 0) == speed(25, 2, 65, 4));
  CHECK(hours_to_rise(100, {.dough_c = 25, .yeast_percent = 1, .sugar_percent = 20}) >
        hours_to_rise(100, {.dough_c = 25, .yeast_percent = 1, .sugar_percent = 5}));
}

TEST_CASE("so near the law's lower limit that the hours overflow, the yeast stands still") {
  Kitchen kitchen;
  kitchen.t_min_c = 0;
  const Dough dough{.dough_c = 2.4e-159, .yeast_percent = 1};
  CHECK_THROWS_AS(hours_to_rise(1, dough, kitchen), OutsideModel);
  double hours = 0;
  hours_to_rise(Values(1.0), {.dough_c = 2.4e-159, .yeast_percent = 1}, {&hours, 1}, kitchen, Unreachable::infinity);
  CHECK(std::isinf(hours));
  CHECK_THROWS_AS(hours_to_rise(900, {.dough_c = 25, .yeast_percent = 1}), NoSolution);
}
