#include <pybind11/stl.h>

#include <variant>

#include <ferment/day/day.hpp>
#include <ferment/learn/calibrate.hpp>

#include "form.hpp"
#include "interrupt.hpp"
#include "rooms.hpp"
#include "threads.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

using Bakes = std::variant<std::vector<Day>, std::vector<Log>>;

}  // namespace

void bind_learn(py::module_& module) {
  bind_form<Sighting>(module, 3);
  bind_form<Log>(module);
  bind_form<Learned>(module);
  bind_form<Residual>(module);
  bind_form<Calibration>(module);
  bind_form<LawFit>(module);
  register_options("calibration", form_of<CalibrateOptions>());
  module.def(
      "_calibration",
      [](const Bakes& bakes, const std::optional<Kitchen>& prior, std::size_t threads, const py::kwargs& keywords) {
        const CalibrateOptions options = options_with<CalibrateOptions>("calibration", keywords, threads);
        const Kitchen& before = kitchen_or_default(prior);
        const py::gil_scoped_release release;
        if (const auto* days = std::get_if<std::vector<Day>>(&bakes)) return calibrate_days(*days, before, options);
        return calibrate(std::get<std::vector<Log>>(bakes), before, options);
      },
      "bakes"_a, "prior"_a = py::none(), py::kw_only(), "threads"_a = 0, "calibration, of days or of logs alone.");
  register_options("compare_laws", form_of<CalibrateOptions>());
  module.def(
      "_compare_laws",
      [](const std::vector<Log>& logs, const std::optional<Kitchen>& prior, std::size_t threads,
         const py::kwargs& keywords) {
        const CalibrateOptions options = options_with<CalibrateOptions>("compare_laws", keywords, threads);
        const Kitchen& before = kitchen_or_default(prior);
        const py::gil_scoped_release release;
        return compare_laws(logs, before, options);
      },
      "logs"_a, "prior"_a = py::none(), py::kw_only(), "threads"_a = 0, "compare_laws, of logs.");
  module.def(
      "log_of",
      [](const Day& day, const std::optional<Kitchen>& kitchen) { return log_of(day, kitchen_or_default(kitchen)); },
      "day"_a, "kitchen"_a = py::none(),
      R"(A day as a Log: its process, with the hours at which its stages really ended, and what was seen.

log.process and log.seen are what forecast takes for a day under way. Raises as process_of: InvalidInput, also for a
stage that is none of the day's or a time that cannot be. Hours are h of the day, from its 0:00, if it has a clock.
Source: as process_of.)");
  py::reinterpret_borrow<py::class_<Kitchen>>(module.attr("Kitchen"))
      .def_property_readonly("learned", &learned_of,
                             "how much it knows of each parameter beside the frozen set that it was learned from")
      .def_property_readonly("notices", &notices_of, "bakes that surprise, and what its bakes could not teach")
      .def(
          "updated_with",
          [](const Kitchen& kitchen, const std::variant<Day, Log>& bake) {
            const CalibrateOptions options{.interrupt = Interrupt()};
            const py::gil_scoped_release release;
            if (const auto* day = std::get_if<Day>(&bake)) return calibrate_days({*day}, kitchen, options).kitchen;
            return calibrate({std::get<Log>(bake)}, kitchen, options).kitchen;
          },
          "day"_a,
          "The kitchen that one bake more has taught, a Day or a Log; spreads stay. To learn anew, give calibrate the "
          "whole logbook. Raises InvalidInput, NotConverged, NoSolution.");
  module.def("with_packet", &with_packet, "kitchen"_a, "packet"_a,
             R"(The kitchen for a packet of yeast that it does not know: its gassing rate is less certain by packet_sd.

Raises InvalidInput. Source: packet_sd of parameters().)");
}
