#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include <ferment/base/error.hpp>
#include <ferment/clock/speed.hpp>

#include "box.hpp"
#include "naive.hpp"

using namespace ferment;
using naive::Real;

TEST_CASE("speed against 100 digits") {
  box::Numbers numbers(81);
  double worst = 0;
  for (int i = 0; i < 4000; ++i) {
    Kitchen kitchen = i % 3 ? box::any_kitchen(numbers) : Kitchen{};
    kitchen.law = box::all_laws[numbers.index(4)];
    const Dough d = box::any_dough(numbers);
    const naive::Chain chain(100, d, kitchen);
    const Real wanted = chain.speed();
    const double got = speed(d.dough_c, d.salt_percent, d.water_percent, d.sugar_percent, kitchen);
    if (wanted == 0) {
      CHECK(got == 0);
      continue;
    }
    const Real activity = naive::water_activity(d.salt_percent, d.water_percent, d.sugar_percent);
    const double condition = static_cast<double>(activity / (activity - kitchen.aw_min));
    const double error = naive::relative_error(got, wanted);
    CHECK(error <= std::max(1e-12, 4 * 0x1p-52 * condition));
    if (condition < 500) worst = std::max(worst, error);
  }
  MESSAGE("speed: worst relative error ", worst);
  CHECK(worst <= 1e-12);
}

TEST_CASE("speed of the reference dough is 1, and 0 where the yeast stands still") {
  CHECK(speed(25) == doctest::Approx(1).epsilon(1e-15));
  CHECK(speed(-2) == 0);
  CHECK(speed(45) == 0);
  CHECK(speed(25, 6, 40, 40) == 0);
}

TEST_CASE("speed: arrays of every length equal the scalar bit for bit, single values and arrays mixed") {
  box::Numbers numbers(82);
  for (const std::size_t n : {std::size_t{0}, std::size_t{1}, std::size_t{2}, std::size_t{127}, std::size_t{128},
                              std::size_t{129}, std::size_t{1000}}) {
    std::vector<double> t(n), salt(n), water(n), sugar(n), from(n), out(n, -1), time(n), back(n, -1);
    for (std::size_t i = 0; i < n; ++i) {
      t[i] = numbers.between(1, 44);
      from[i] = numbers.between(1, 44);
      salt[i] = numbers.between(0, 6);
      water[i] = numbers.between(40, 130);
      sugar[i] = numbers.between(0, 40);
      time[i] = numbers.between(0, 1000);
    }
    speed({t, salt, water, sugar}, out);
    same_rise(time, from, t, back);
    for (std::size_t i = 0; i < n; ++i) {
      CHECK(out[i] == speed(t[i], salt[i], water[i], sugar[i]));
      CHECK(back[i] == same_rise(time[i], from[i], t[i]));
    }
    speed({24.0, salt, 65.0, sugar}, out);
    same_rise(2.0, from, 18.0, back);
    for (std::size_t i = 0; i < n; ++i) {
      CHECK(out[i] == speed(24, salt[i], 65, sugar[i]));
      CHECK(back[i] == same_rise(2, from[i], 18));
    }
    speed({t}, out);
    for (std::size_t i = 0; i < n; ++i) CHECK(out[i] == speed(t[i]));
  }
}

TEST_CASE("speed: an array of another length is refused and says which") {
  std::vector<double> out(4);
  const std::vector<double> three(3, 20.0);
  const auto text = [&](const ClockInputs& inputs) -> std::string {
    try {
      speed(inputs, out);
    } catch (const InvalidInput& error) {
      return error.what();
    }
    return {};
  };
  CHECK(text({three}).find("dough temperature has 3 values where 4 are wanted") != std::string::npos);
  const std::vector<double> salt(5, 2.0);
  CHECK(text({25.0, salt}).find("salt has 5 values where 4 are wanted") != std::string::npos);
  const std::vector<double> one(1, 2.0);
  CHECK(text({25.0, one}).find("salt has 1 values where 4 are wanted") != std::string::npos);
  CHECK_THROWS_AS(same_rise(three, 20, 25, out), InvalidInput);
  CHECK_THROWS_AS(same_rise(1, three, 25, out), InvalidInput);
  CHECK_THROWS_AS(same_rise(1, 20, three, out), InvalidInput);
}

TEST_CASE("the same rise elsewhere") {
  CHECK(same_rise(2, 24, 24) == 2);
  CHECK(same_rise(0, 24, 18) == 0);
  CHECK(same_rise(2, 24, 18) > 2);
  CHECK(same_rise(2, 24, 18) == doctest::Approx(2 * speed(24) / speed(18)).epsilon(1e-14));
  CHECK(same_rise(same_rise(3, 24, 18), 18, 24) == doctest::Approx(3).epsilon(1e-14));
  for (const double still : {-2.0, 45.0}) {
    CHECK_THROWS_AS(same_rise(1, 20, still), OutsideModel);
    CHECK_THROWS_AS(same_rise(1, still, 20), OutsideModel);
  }
  try {
    std::vector<double> out(3);
    same_rise(1.0, std::vector{20.0, 20.0, 20.0}, std::vector{20.0, -2.0, 45.0}, out);
    FAIL("accepted");
  } catch (const OutsideModel& error) {
    CHECK(error.detail().index == 1u);
    CHECK(error.detail().path == "to_c");
    CHECK(error.detail().value == -2.0);
    CHECK_MESSAGE(std::string(error.what()).find("index 1") != std::string::npos, std::string(error.what()));
    CHECK(error.detail().count == 2u);
  }
}

TEST_CASE("warmer is faster up to the optimum and slower beyond") {
  for (double t = -2; t < 40; t += 0.5) CHECK(speed(t + 0.5) > speed(t));
  for (double t = 40; t < 45; t += 0.5) CHECK(speed(t + 0.5) < speed(t));
}
