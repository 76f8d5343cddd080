// What a program does with libferment: an answer, and a question without one.
#include <cstdio>
#include <cstring>

#include <ferment/ferment.h>
#include <ferment/ferment.hpp>

int main() {
  if (std::strcmp(ferment_version(), FERMENT_VERSION) != 0) {
    std::puts("the library is not of the version of its headers");
    return 1;
  }
  const ferment::Dough dough{.dough_c = 25, .yeast_percent = 1};
  const double hours = ferment::hours_to_rise(100, dough);
  std::printf("doubled after %.3f h\n", hours);
  if (!(hours > 1.07609 && hours < 1.07630)) return 1;  // row F14-4 of tests/reference: an independent implementation
  try {
    ferment::hours_to_rise(900, dough);
  } catch (const ferment::NoSolution& error) {
    std::printf("no solution: %s\n", error.what());
    return 0;
  }
  std::puts("a rise of 900 % was not refused");
  return 1;
}
