#include <doctest/doctest.h>

#include <string>
#include <thread>
#include <vector>

#include <ferment/ferment.hpp>

#include "box.hpp"

using namespace ferment;

namespace {

/// Everything the library answers, as one row of numbers.
std::vector<double> everything(std::uint64_t seed) {
  box::Numbers numbers(seed);
  std::vector<double> all;
  const auto keep = [&](double x) { all.push_back(x); };
  for (int round = 0; round < 40; ++round) {
    Kitchen kitchen = round % 2 ? box::any_kitchen(numbers) : Kitchen{};
    kitchen.law = box::all_laws[round % 4];
    const Dough dough = box::any_dough(numbers);
    std::vector<double> rise(300), t(300), out(300);
    for (double& x : rise) x = numbers.magnitude(0.1, 1000);
    for (double& x : t) x = numbers.between(-2, 45);
    hours_to_rise(rise, {.dough_c = t, .yeast_percent = 0.5}, out, kitchen, Unreachable::infinity);
    all.insert(all.end(), out.begin(), out.end());
    rise_after(3, {.dough_c = t, .yeast_percent = 0.5}, out, kitchen);
    all.insert(all.end(), out.begin(), out.end());
    speed({t}, out, kitchen);
    all.insert(all.end(), out.begin(), out.end());
    temperature_factor(law_of(kitchen), t, out);
    all.insert(all.end(), out.begin(), out.end());
    keep(reachable_rise(dough, kitchen));
    keep(speed(dough.dough_c, dough.salt_percent, dough.water_percent, dough.sugar_percent, kitchen));
    keep(local_q10(law_of(kitchen), 25));
    keep(gas_made(5, 1, Yeast::instant, 0, kitchen));
    keep(equivalent_hours_for_gas(5, 1, Yeast::instant, 0, kitchen));
    keep(water_activity(dough.salt_percent, dough.water_percent, dough.sugar_percent));
    keep(volume_ml({}, {5, 0.3}, 25, kitchen));
    keep(held_ratio(2, 1, 0, kitchen));
    keep(water_by_factor_rule(25, 20, 21, 3));
    keep(celsius(78));
    keep(same_rise(2, 24, 20, kitchen));
    keep(yeast_for_rise(50, 3, {.dough_c = 24, .yeast_percent = 1}));
    for (const Factor& factor : explain(50, {.dough_c = 22, .yeast_percent = 0.6}).factors) keep(factor.times);
    keep(static_cast<double>(cautions({.dough_c = 40, .sugar_percent = 20, .water_c = 70}, kitchen).size()));
    for (const double c : covariance_of(kitchen)) keep(c);
    try {
      hours_to_rise(50, {.dough_c = 99, .yeast_percent = 1});
    } catch (const Error& error) {
      keep(static_cast<double>(std::string(error.what()).size()));
    }
  }
  return all;
}

}  // namespace

TEST_CASE("eight threads at once get the digits of one") {
  // Run alone, this is also the first use of every table in the library.
  std::vector<std::vector<double>> results(8);
  std::vector<std::thread> threads;
  for (std::vector<double>& result : results) threads.emplace_back([&result] { result = everything(7); });
  for (std::thread& thread : threads) thread.join();
  const std::vector<double> alone = everything(7);
  CHECK(alone.size() > 40000);
  for (const std::vector<double>& result : results) CHECK(result == alone);
}
