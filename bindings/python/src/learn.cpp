#include <pybind11/stl.h>

#include <ferment/learn/calibrate.hpp>

#include "form.hpp"
#include "interrupt.hpp"
#include "rooms.hpp"

using namespace ferment;
using namespace pybind11::literals;

void bind_learn(py::module_& module) {
  bind_form<Sighting>(module, 3);
  bind_form<Log>(module);
  bind_form<Learned>(module);
  bind_form<Residual>(module);
  bind_form<Calibration>(module);
  register_options("calibrate", form_of<CalibrateOptions>());
  module.def(
      "calibrate",
      [](const std::vector<Log>& logs, const std::optional<Kitchen>& prior, const py::kwargs& keywords) {
        auto options = options_from<CalibrateOptions>("calibrate", keywords);
        options.interrupt = Interrupt();
        const py::gil_scoped_release release;
        return calibrate(logs, kitchen_or_default(prior), options);
      },
      "logs"_a, "prior"_a = py::none(), py::kw_only(),
      R"(A kitchen learned from logged bakes: a Calibration, with the kitchen, what was learned and what surprises.

Args: logs: of Log, each a process whose stages end by the hours at which they really ended, and what was seen of it.
prior: the kitchen before. Noise of ln time is Student's t with 4 degrees of freedom and scale log_time_scale, a ratio
(sd 0.141 for 0.10); bounds count by the distribution function; the bake's own effect is integrated out. Raises
InvalidInput naming the log and the look; NotConverged; NoSolution for a rise that no dough can have. Source: maximum a
posteriori with Laplace covariance; Lange et al. 1989; adaptive quadrature of Liu & Pierce 1994.)");
}
