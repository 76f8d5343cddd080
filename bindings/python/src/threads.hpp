// Threads for the draws of a forecast: the library has none of its own.
#pragma once

#include <cstddef>

#include <ferment/forecast/forecast.hpp>

/// As the library takes it; 0: as many threads as the machine has, at most eight. A few draws are not worth a thread.
ferment::ForEach threads_of(std::size_t threads);
