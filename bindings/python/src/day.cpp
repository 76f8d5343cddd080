#include <pybind11/stl.h>

#include <ferment/day/ask.hpp>
#include <ferment/day/day.hpp>
#include <ferment/day/document.hpp>

#include "form.hpp"
#include "interrupt.hpp"
#include "rooms.hpp"
#include "threads.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

void bind_forms_of_day(py::module_& module) {
  bind_form<Today>(module);
  bind_form<WantedWater>(module);
  bind_form<DayDough>(module);
  bind_form<DayFlour>(module);
  bind_form<DayPreferment>(module);
  bind_form<YeastWater>(module);
  bind_form<DayBowl>(module);
  bind_form<DayMixing>(module);
  bind_form<Batch>(module);
  bind_form<DayPlace>(module);
  bind_form<Seen>(module);
  bind_form<DayStage>(module);
  bind_form<Day>(module);
  bind_form<LearnedMixing>(module);
}

}  // namespace

void bind_day(py::module_& module) {
  bind_forms_of_day(module);
  using MaybeKitchen = std::optional<Kitchen>;
  module.def(
      "process_of",
      [](const Day& day, const MaybeKitchen& kitchen) { return process_of(day, kitchen_or_default(kitchen)); }, "day"_a,
      "kitchen"_a = py::none(),
      R"(The day as a process: its real mix, then its stages, one after the other.

The mix has the water that is planned or was poured, or the dough as measured. Hours are of the day, from its 0:00, if
`start` or `mixed` says so; else from the end of mixing. What was done counts before what was planned.

Args: day; kitchen: the parameters, for a preferment that ferments. Returns a Process.
Raises InvalidInput naming what is missing; NoSolution for a dough that no water makes.)");
  module.def(
      "mix_of", [](const Day& day, const MaybeKitchen& kitchen) { return mix_of(day, kitchen_or_default(kitchen)); },
      "day"_a, "kitchen"_a = py::none(),
      R"(The day's mix without a temperature of its water: formula, bowl, preferment, mixing heat.

Args: day; kitchen: the parameters, for a preferment that ferments. Returns a Mix. Raises InvalidInput.)");
  module.def(
      "water_of",
      [](const Day& day, const MaybeKitchen& kitchen) { return water_of(day, kitchen_or_default(kitchen)); }, "day"_a,
      "kitchen"_a = py::none(),
      R"(The day's water, by the heat balance and by the trade's rule.

Args: day, with [water] desired and [today] room; kitchen. Returns a WaterPlan. Raises InvalidInput; NoSolution.)");
  module.def(
      "learned_mixing",
      [](const Day& day, const MaybeKitchen& kitchen) { return learned_mixing(day, kitchen_or_default(kitchen)); },
      "day"_a, "kitchen"_a = py::none(),
      R"(What the day's batches say of the mixing: friction, K, and net gain, kJ per kg of dough.

Args: day, with batches, or with its own dough and water measured; kitchen. Raises InvalidInput, naming the batch.)");
  module.def("assumptions_of", &assumptions_of, "day"_a,
             "What is reckoned with and was not given, and where a stage's dough is if it does not say: notices.");
  module.def("has_clock", &has_clock, "day"_a, "Whether the hours of the day's process are of the day, from its 0:00.");
  module.def("moment_h", &moment_h, "text"_a, "after_h"_a = 0.0,
             R"(A time of day such as "18:30" as hours from the day's 0:00: the first one from `after_h` on.

"+1 7:30" is the next morning whatever came before. Raises InvalidInput.)");
  module.def("moment_text", &moment_text, "hours"_a, "Hours from the day's 0:00 as a time of day, to the minute.");
  module.def(
      "ask",
      [](const std::string& question, std::size_t threads) {
        const AskOptions options{Interrupt(), threads_of(threads)};
        const py::gil_scoped_release release;
        return ask(question, options);
      },
      "question"_a, "threads"_a = 0,
      R"(A question in, its answer out, both as the JSON text of documents.

Args: question: such as '{"ask": "water", "day": {...}}'; threads: 0 for as many as the machine has.
Raises InvalidInput with the way to what is wrong; NoSolution; OutsideModel.)");
}
