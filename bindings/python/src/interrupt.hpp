// Ctrl-C in the middle of a long call.
#pragma once

#include <pybind11/pybind11.h>

#include <chrono>
#include <memory>
#include <thread>

namespace py = pybind11;

/// Looks for signals every 50 ms, for the callbacks of long calls: what one raises, such as KeyboardInterrupt, ends the
/// call. Only on the thread that made it, which is where Python may run their handlers. Called without the GIL.
class Interrupt {
 public:
  void operator()() const {
    if (std::this_thread::get_id() != caller_) return;
    const auto now = std::chrono::steady_clock::now();
    if (now < *next_) return;
    *next_ = now + every;
    const py::gil_scoped_acquire acquire;
    if (PyErr_CheckSignals() != 0) throw py::error_already_set();
  }

 private:
  static constexpr std::chrono::milliseconds every{50};
  std::thread::id caller_ = std::this_thread::get_id();
  std::shared_ptr<std::chrono::steady_clock::time_point> next_ =
      std::make_shared<std::chrono::steady_clock::time_point>(std::chrono::steady_clock::now() + every);
};
