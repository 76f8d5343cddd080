// Threads for the draws of a forecast: the library has none of its own.
#pragma once

#include <cstddef>

#include <ferment/forecast/forecast.hpp>

#include "form.hpp"
#include "interrupt.hpp"

/// As the library takes it; 0: as many threads as the machine has, at most eight. A few draws are not worth a thread.
ferment::ForEach threads_of(std::size_t threads);

/// Every option of a function that works off much, from its keywords.
template <class Options>
Options options_with(const char* function, const py::dict& keywords, std::size_t threads) {
  auto options = options_from<Options>(function, keywords);
  options.interrupt = Interrupt();
  options.for_each = threads_of(threads);
  return options;
}
