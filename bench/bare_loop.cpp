// The floor for hours_to_rise: our vector exp and log, called as often per scenario, over blocks of the same size, and
// nothing else. Reads four inputs and writes one output per scenario, as hours_to_rise does. Prints median seconds.
#include <algorithm>
#include <chrono>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "base/loops.hpp"
#include "base/math.hpp"

namespace {

constexpr std::size_t block_size = 128;

FERMENT_WIDE_LOOPS void exp_loop(const double* in, double* out, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) out[i] = ferment::math::exp(in[i]);
}
FERMENT_WIDE_LOOPS void expm1_loop(const double* in, double* out, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) out[i] = ferment::math::expm1(in[i]);
}
FERMENT_WIDE_LOOPS void log_loop(const double* in, double* out, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) out[i] = ferment::math::log(in[i]);
}
FERMENT_WIDE_LOOPS void log1p_loop(const double* in, double* out, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) out[i] = ferment::math::log1p(in[i]);
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 2) return 2;
  const auto n = static_cast<std::size_t>(std::atol(arguments[1]));
  std::vector<std::vector<double>> in(4, std::vector<double>(n));
  for (std::size_t i = 0; i < n; ++i) {
    for (auto& column : in) column[i] = 0.1 + 0.8 * static_cast<double>((i * 2654435761u) % 1000) / 1000;
  }
  std::vector<double> out(n);
  const std::size_t inner = std::max<std::size_t>(1, 200000 / n);
  std::vector<double> seconds;
  for (int run = 0; run < 31; ++run) {
    const auto begin = std::chrono::steady_clock::now();
    for (std::size_t turn = 0; turn < inner; ++turn) {
      for (std::size_t start = 0; start < n; start += block_size) {
        const std::size_t size = std::min(block_size, n - start);
        double* const place = out.data() + start;
        for (auto& column : in) exp_loop(column.data() + start, place, size);
        for (int k = 0; k < 2; ++k) expm1_loop(in[0].data() + start, place, size);
        log_loop(in[1].data() + start, place, size);
        for (int k = 0; k < 3; ++k) log1p_loop(in[2].data() + start, place, size);
      }
    }
    seconds.push_back(std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count() /
                      static_cast<double>(inner));
  }
  std::nth_element(seconds.begin(), seconds.begin() + 15, seconds.end());
  std::printf("%.9g\n", seconds[15]);
}
