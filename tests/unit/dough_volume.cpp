#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <string>

#include <ferment/base/error.hpp>
#include <ferment/dough/volume.hpp>

#include "box.hpp"
#include "naive.hpp"

using namespace ferment;
using naive::Real;

namespace {

constexpr double epsilon = 0x1p-52;

struct Case {
  Body body;
  double t;
  Kitchen kitchen;
  Real dry, molar_volume, capacity, mixed_ml, gas_free_ml;
};

Case any_case(box::Numbers& numbers) {
  Case c;
  c.body = {.dough_g = box::edgy(numbers, 100, 400),
            .water_g = box::edgy(numbers, 40, 130),
            .water_activity = box::edgy(numbers, 0.8, 1),
            .pressure_pa = box::edgy(numbers, 4e4, 1.2e5)};
  c.t = box::edgy(numbers, -2, 45);
  for (const Parameter& p : parameters()) {
    if (p.name == "void_fraction" || p.name == "gas_free_density")
      c.kitchen.*p.value = box::edgy(numbers, p.low, p.high);
  }
  const Real kelvin = c.t + naive::zero_celsius;
  c.dry = c.body.pressure_pa - c.body.water_activity * naive::saturation_pressure(c.t);
  c.molar_volume = 1000 * naive::gas_constant * kelvin / c.dry;
  c.capacity = naive::co2_solubility(c.t) * (c.dry / naive::atmosphere) * c.body.water_g;
  c.gas_free_ml = Real(c.body.dough_g) / c.kitchen.gas_free_density;
  c.mixed_ml = c.gas_free_ml + c.gas_free_ml * c.kitchen.void_fraction / (1 - Real(c.kitchen.void_fraction));
  return c;
}

double worse(double worst, double error) { return error <= worst ? worst : error; }

}  // namespace

TEST_CASE("Buck, Weiss and the standard atmosphere against 100 digits") {
  double vapour = 0;
  double solubility = 0;
  double pressure = 0;
  for (int i = 0; i <= 1700; ++i) {
    const double t = -50 + 0.1 * i;
    vapour = worse(vapour, naive::relative_error(saturation_pressure_pa(t), naive::saturation_pressure(t)));
    solubility = worse(solubility, naive::relative_error(co2_solubility(t), naive::co2_solubility(t)));
  }
  for (int i = 0; i <= 1300; ++i) {
    const double metres = -500 + 5 * i;
    pressure = worse(pressure, naive::relative_error(air_pressure_pa(metres), naive::air_pressure(metres)));
  }
  MESSAGE("worst relative errors: vapour pressure ", vapour, ", solubility ", solubility, ", air pressure ", pressure);
  CHECK(vapour <= 1e-12);
  CHECK(solubility <= 1e-12);
  CHECK(pressure <= 1e-12);
  CHECK(air_pressure_pa(0) == 101325);
}

TEST_CASE("the exponent of the standard atmosphere is g0·M/(R*·L) of ISO 2533") {
  // g0 9.80665 m/s², M 28.964420 kg/kmol, R* 8314.32 J/(kmol·K), L 6.5 K/km.
  CHECK(9.80665 * 28.964420 / (8314.32 * 0.0065) == doctest::Approx(5.255876).epsilon(1e-6));
  CHECK(std::log(air_pressure_pa(6000) / 101325) / std::log(1 - 0.0065 * 6000 / 288.15) ==
        doctest::Approx(5.255876).epsilon(1e-12));
}

TEST_CASE("mixed volume, its air and the split of CO2 against 100 digits") {
  box::Numbers numbers(61);
  double mixed = 0;
  double air = 0;
  double split = 0;
  double volume = 0;
  for (int i = 0; i < 3000; ++i) {
    const Case c = any_case(numbers);
    mixed = worse(mixed, naive::relative_error(mixed_volume_ml(c.body, c.kitchen), c.mixed_ml));
    const Real wanted_air = c.mixed_ml * c.kitchen.void_fraction / c.molar_volume;
    air = worse(air, naive::relative_error(mixed_air_mmol(c.body, c.t, c.kitchen), wanted_air));
    // From no gas to more than any dough makes; from the air of mixing to next to none after many handlings.
    const Gas gas{.co2_mmol = i % 20 == 0 ? 0 : numbers.magnitude(1e-6, 1000), .air_mmol = numbers.magnitude(1e-6, 10)};
    const Real cells = naive::in_cells(gas.co2_mmol, gas.air_mmol, c.capacity);
    split = worse(split, naive::relative_error(co2_in_cells_mmol(c.body, gas, c.t), cells));
    volume = worse(volume, naive::relative_error(volume_ml(c.body, gas, c.t, c.kitchen),
                                                 c.gas_free_ml + (gas.air_mmol + cells) * c.molar_volume));
  }
  MESSAGE("worst relative errors: mixed volume ", mixed, ", air ", air, ", CO2 in the cells ", split, ", volume ",
          volume);
  CHECK(mixed <= 1e-12);
  CHECK(air <= 1e-12);
  CHECK(split <= 1e-12);
  CHECK(volume <= 1e-12);
}

TEST_CASE("Henry's law and the ideal gas law hold at the split") {
  box::Numbers numbers(62);
  for (int i = 0; i < 1000; ++i) {
    const Case c = any_case(numbers);
    const Gas gas{.co2_mmol = numbers.between(0.1, 60), .air_mmol = numbers.between(0.01, 1)};
    const double cells = co2_in_cells_mmol(c.body, gas, c.t);
    const double share = cells / (cells + gas.air_mmol);
    CHECK(gas.co2_mmol - cells == doctest::Approx(static_cast<double>(c.capacity) * share).epsilon(1e-10));
  }
}

TEST_CASE("volume to CO2 and back") {
  box::Numbers numbers(63);
  double worst = 0;
  for (int i = 0; i < 5000; ++i) {
    const Case c = any_case(numbers);
    const double air = mixed_air_mmol(c.body, c.t, c.kitchen);
    const double co2 = numbers.magnitude(0.01, 300);
    const double volume = volume_ml(c.body, {co2, air}, c.t, c.kitchen);
    const double back = co2_for_volume_mmol(c.body, air, volume, c.t, c.kitchen);
    // A volume near that of the gas-free dough holds few digits of its gas.
    const double gas_ml = (co2_in_cells_mmol(c.body, {co2, air}, c.t)) * static_cast<double>(c.molar_volume);
    const double error = std::abs(back / co2 - 1);
    CHECK(error <= std::max(1e-12, 4 * epsilon * volume / gas_ml));
    if (gas_ml > 1e-2) worst = worse(worst, error);
  }
  MESSAGE("CO2 → volume → CO2: worst relative error ", worst);
  CHECK(worst <= 1e-9);
  const Body body;
  const double air = mixed_air_mmol(body, 25);
  const double smallest = volume_ml(body, {0, air}, 25);
  CHECK(smallest == doctest::Approx(mixed_volume_ml(body)).epsilon(1e-14));
  CHECK(co2_for_volume_mmol(body, air, smallest, 25) == 0);
  try {
    co2_for_volume_mmol(body, air, 0.99 * smallest, 25);
    FAIL("accepted");
  } catch (const NoSolution& error) {
    CHECK(error.detail().low == smallest);
  }
}

TEST_CASE("retention against 100 digits, both ways") {
  box::Numbers numbers(64);
  double there = 0;
  double back = 0;
  for (int i = 0; i < 4000; ++i) {
    const Kitchen kitchen = box::any_kitchen(numbers);
    const double gluten = box::edgy(numbers, 0, 10);
    const Real stronger = 1 + Real("0.05") * gluten;
    const Real onset = kitchen.retention_onset * stronger;
    const Real limit = kitchen.retention_limit * stronger;
    const double most = static_cast<double>(limit);
    const double anchor = i % 3 ? 1.0 : numbers.between(0.9, most * 0.999);
    const double from = std::max(anchor, static_cast<double>(onset));
    const double free = i % 2 ? from + numbers.magnitude(1e-6, 30) : numbers.between(anchor, 20);
    const Real wanted = naive::held_ratio(free, onset, limit, anchor);
    const double held = held_ratio(free, anchor, gluten, kitchen);
    there = worse(there, naive::relative_error(held, wanted));
    CHECK(held <= most * (1 + epsilon));
    if (!(held < most * (1 - 4 * epsilon))) continue;  // at the limit there is nothing to invert
    // Inverse of the double that came out, exactly.
    const Real u = anchor < onset ? onset : Real(anchor);
    const Real exact = held <= u ? Real(held) : Real(u - (limit - onset) * log((limit - held) / (limit - u)));
    const double returned = free_ratio(held, anchor, gluten, kitchen);
    // Near the limit the last digit of a volume is worth (φM − φC)/(φM − V) of free volume.
    const double condition = held > u
                                 ? static_cast<double>((limit - onset) * (limit + held) / ((limit - held) * exact)) +
                                       static_cast<double>((limit - onset) * (limit + u) / ((limit - u) * exact))
                                 : 1;
    const double error = naive::relative_error(returned, exact);
    INFO("held ", held, " of ", most, ", condition ", condition);
    CHECK(error <= std::max(1e-12, 4 * epsilon * condition));
    if (condition < 500) back = worse(back, error);
  }
  MESSAGE("retention: worst relative error free → held ", there, ", held → free ", back);
  CHECK(there <= 1e-12);
  CHECK(back <= 1e-12);
}

TEST_CASE("free volume to held and back") {
  box::Numbers numbers(65);
  double worst = 0;
  for (int i = 0; i < 5000; ++i) {
    const double gluten = box::edgy(numbers, 0, 10);
    const double anchor = i % 2 ? 1.0 : numbers.between(1, 4.5);
    const double free = numbers.between(anchor, 12);
    worst = worse(worst, std::abs(free_ratio(held_ratio(free, anchor, gluten), anchor, gluten) / free - 1));
  }
  MESSAGE("free → held → free: worst relative error ", worst);
  CHECK(worst <= 1e-9);
}

TEST_CASE("all gas is held up to the onset, none beyond the limit") {
  CHECK(held_ratio(2.6) == 2.6);
  CHECK(held_ratio(1.7) == 1.7);
  CHECK(free_ratio(2.6) == 2.6);
  CHECK(held_ratio(3) < 3);
  CHECK(held_ratio(100) == 4.8);
  CHECK(held_ratio(100, 1, 10) == doctest::Approx(4.8 * 1.5));
  CHECK(held_ratio(2.6 * 1.05, 1, 1) == doctest::Approx(2.6 * 1.05).epsilon(1e-15));  // 5 % per percent of gluten
  CHECK(held_ratio(4, 4) == 4);  // a dough handled while it leaked starts where it stands
  for (double free = 2.6; free < 20; free += 0.1) CHECK(held_ratio(free + 0.1) > held_ratio(free));
  for (const double beyond : {4.8, 4.9, 100.0}) {
    try {
      free_ratio(beyond);
      FAIL("accepted");
    } catch (const NoSolution& error) {
      CHECK(std::string(error.what()).find("4.8") != std::string::npos);
      CHECK(error.detail().high == 4.8);
    }
  }
}

TEST_CASE("handling takes CO2 and air of the cells alike and leaves what is dissolved") {
  const Body body;
  const Gas before{.co2_mmol = 12, .air_mmol = 0.35};
  const double cells = co2_in_cells_mmol(body, before, 27);
  for (const double loss : {0.0, 0.15, 0.5, 0.8, 1.0}) {
    const Gas after = after_handling(body, before, 27, loss);
    CHECK(after.air_mmol == doctest::Approx(0.35 * (1 - loss)).epsilon(1e-15));
    CHECK(after.co2_mmol == doctest::Approx(12 - loss * cells).epsilon(1e-15));
    CHECK(after.co2_mmol >= 12 - cells - 1e-12);
  }
}

TEST_CASE("volume functions refuse impossible doughs and gas") {
  constexpr double nan_ = std::numeric_limits<double>::quiet_NaN();
  constexpr double infinity = std::numeric_limits<double>::infinity();
  const auto refuses = [](const std::function<void()>& call) { CHECK_THROWS_AS(call(), InvalidInput); };
  for (const double bad : {nan_, infinity, -infinity, -1.0, 1e7}) {
    for (double Body::*member : {&Body::dough_g, &Body::water_g, &Body::water_activity, &Body::pressure_pa}) {
      Body body;
      body.*member = bad;
      refuses([&] { mixed_volume_ml(body); });
      refuses([&] { mixed_air_mmol(body, 25); });
      refuses([&] { volume_ml(body, {1, 0.3}, 25); });
      refuses([&] { co2_in_cells_mmol(body, {1, 0.3}, 25); });
      refuses([&] { co2_for_volume_mmol(body, 0.3, 200, 25); });
      refuses([&] { after_handling(body, {1, 0.3}, 25, 0.5); });
    }
    refuses([&] { volume_ml({}, {1, bad}, 25); });
    refuses([&] { co2_in_cells_mmol({}, {bad, 0.3}, 25); });
    refuses([&] { co2_for_volume_mmol({}, bad, 200, 25); });
    refuses([&] { held_ratio(bad); });
    refuses([&] { held_ratio(2, bad); });
    refuses([&] { free_ratio(bad); });
    refuses([&] { free_ratio(2, bad); });
  }
  for (const double anchor : {4.8, 4.9, 99.0}) {  // no dough was ever there
    refuses([&] { held_ratio(5, anchor); });
    refuses([&] { free_ratio(4, anchor); });
  }
  for (const double bad : {nan_, infinity, -infinity}) refuses([&] { co2_for_volume_mmol({}, 0.3, bad, 25); });
  for (const double bad : {nan_, infinity, -3.0, 46.0}) refuses([&] { volume_ml({}, {1, 0.3}, bad); });
}

TEST_CASE("no air, no cells: without a nucleus CO2 stays dissolved up to the water's capacity") {
  const Body body;
  CHECK(co2_in_cells_mmol(body, {0, 0}, 25) == 0);
  const double capacity = co2_solubility(25) * body.water_g *
                          (body.pressure_pa - body.water_activity * saturation_pressure_pa(25)) / 101325;
  CHECK(co2_in_cells_mmol(body, {0.5 * capacity, 0}, 25) == 0);
  CHECK(co2_in_cells_mmol(body, {3 * capacity, 0}, 25) == doctest::Approx(2 * capacity).epsilon(1e-13));
}
