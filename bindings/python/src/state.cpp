#include <pybind11/stl.h>

#include <cmath>

#include <ferment/process/simulate.hpp>
#include <ferment/process/state.hpp>

#include "numbers.hpp"
#include "values.hpp"

using namespace ferment;
using namespace pybind11::literals;

namespace {

using Optional = std::optional<double>;

void bind_parts(py::module_& module) {
  py::class_<Amounts> amounts(
      module, "Amounts", R"(What a dough holds in all, g: all flour (added gluten included), all water, ... A value.)");
  amounts
      .def(py::init([](double flour_g, double gluten_g, double water_g, double salt_g, double sugar_g,
                       double perishable_g, double dough_g) {
             return Amounts{flour_g, gluten_g, water_g, salt_g, sugar_g, perishable_g, dough_g};
           }),
           py::kw_only(), "flour_g"_a = 0.0, "gluten_g"_a = 0.0, "water_g"_a = 0.0, "salt_g"_a = 0.0, "sugar_g"_a = 0.0,
           "perishable_g"_a = 0.0, "dough_g"_a = 0.0)
      .def_readonly("flour_g", &Amounts::flour_g)
      .def_readonly("gluten_g", &Amounts::gluten_g)
      .def_readonly("water_g", &Amounts::water_g)
      .def_readonly("salt_g", &Amounts::salt_g)
      .def_readonly("sugar_g", &Amounts::sugar_g)
      .def_readonly("perishable_g", &Amounts::perishable_g)
      .def_readonly("dough_g", &Amounts::dough_g);
  add_value_methods(amounts, 0, {"flour_g", "gluten_g", "water_g", "salt_g", "sugar_g", "perishable_g", "dough_g"});

  py::class_<Cohort> cohort(
      module, "Cohort",
      R"(The yeast of one addition, with its own clock: g of gassing dry matter per 100 g of flour, equivalent hours. A
value.)");
  cohort
      .def(py::init([](const std::string& yeast, double dose_g, double mass_g, double room_g, double increment_g,
                       double equivalent_h, double growing_h, bool past_lag) {
             return Cohort{yeast_named(yeast), dose_g, mass_g, room_g, increment_g, equivalent_h, growing_h, past_lag};
           }),
           py::kw_only(), "yeast"_a = "instant", "dose_g"_a = 0.0, "mass_g"_a = 0.0, "room_g"_a = 0.0,
           "increment_g"_a = 0.0, "equivalent_h"_a = 0.0, "growing_h"_a = 0.0, "past_lag"_a = false)
      .def_property_readonly("yeast", [](const Cohort& c) { return std::string(name_of(c.yeast)); })
      .def_readonly("dose_g", &Cohort::dose_g, "as it came in")
      .def_readonly("mass_g", &Cohort::mass_g, "when its growth clock began")
      .def_readonly("room_g", &Cohort::room_g, "what it can still grow from there")
      .def_readonly("increment_g", &Cohort::increment_g, "its share of the growth increment")
      .def_readonly("equivalent_h", &Cohort::equivalent_h, "its age")
      .def_readonly("growing_h", &Cohort::growing_h, "of its growth clock")
      .def_readonly("past_lag", &Cohort::past_lag);
  add_value_methods(cohort, 0,
                    {"yeast", "dose_g", "mass_g", "room_g", "increment_g", "equivalent_h", "growing_h", "past_lag"});

  py::class_<StageProgress> progress(module, "StageProgress", "How far a stage has come that is not over. A value.");
  progress
      .def(py::init([](double start_h, double start_c, double start_ratio, std::size_t folds_done,
                       Optional over_proofed_h, double heat_made_j, double heat_lost_j) {
             return StageProgress{start_h, start_c, start_ratio, folds_done, over_proofed_h, heat_made_j, heat_lost_j};
           }),
           py::kw_only(), "start_h"_a = 0.0, "start_c"_a = 0.0, "start_ratio"_a = 1.0, "folds_done"_a = 0,
           "over_proofed_h"_a = py::none(), "heat_made_j"_a = 0.0, "heat_lost_j"_a = 0.0)
      .def_readonly("start_h", &StageProgress::start_h)
      .def_readonly("start_c", &StageProgress::start_c)
      .def_readonly("start_ratio", &StageProgress::start_ratio)
      .def_readonly("folds_done", &StageProgress::folds_done)
      .def_readonly("over_proofed_h", &StageProgress::over_proofed_h)
      .def_readonly("heat_made_j", &StageProgress::heat_made_j)
      .def_readonly("heat_lost_j", &StageProgress::heat_lost_j);
  add_value_methods(progress, 0,
                    {"start_h", "start_c", "start_ratio", "folds_done", "over_proofed_h", "heat_made_j",
                     "heat_lost_j"});
}

}  // namespace

void bind_state(py::module_& module) {
  bind_parts(module);
  py::class_<State> state(module, "State",
                          R"(Everything there is to know of a dough at a moment. A value; simulate makes it.

time_h: h of the process. temperature_c: °C, mean of the dough. amounts: Amounts, g. cohorts: list of Cohort. co2_mmol,
air_mmol, made_mmol: per 100 g of flour. stage: the StageProgress of a stage that is under way, or None. save and load
keep it in a file. Raises InvalidInput for what no process makes.)");
  state
      .def(py::init([](double time_h, double altitude_m, std::size_t steps_done, const Amounts& amounts,
                       double heat_capacity_kj_k, Optional temperature_c, double inside_k,
                       const std::vector<Cohort>& cohorts, double equivalent_h, double made_mmol, double co2_mmol,
                       double air_mmol, double mixed_volume_ml, double anchor_ratio, double perishable_h,
                       const std::optional<StageProgress>& stage) {
             const State made{.time_h = time_h,
                              .altitude_m = altitude_m,
                              .steps_done = steps_done,
                              .amounts = amounts,
                              .heat_capacity_kj_k = heat_capacity_kj_k,
                              .temperature_c = temperature_c.value_or(State{}.temperature_c),
                              .inside_k = inside_k,
                              .cohorts = cohorts,
                              .equivalent_h = equivalent_h,
                              .made_mmol = made_mmol,
                              .gas = {co2_mmol, air_mmol},
                              .mixed_volume_ml = mixed_volume_ml,
                              .anchor_ratio = anchor_ratio,
                              .perishable_h = perishable_h,
                              .stage = stage};
             require_state(made);
             return made;
           }),
           py::kw_only(), "time_h"_a = 0.0, "altitude_m"_a = 0.0, "steps_done"_a = 0, "amounts"_a = Amounts{},
           "heat_capacity_kj_k"_a = 0.0, "temperature_c"_a = py::none(), "inside_k"_a = 0.0,
           "cohorts"_a = std::vector<Cohort>{}, "equivalent_h"_a = 0.0, "made_mmol"_a = 0.0, "co2_mmol"_a = 0.0,
           "air_mmol"_a = 0.0, "mixed_volume_ml"_a = 0.0, "anchor_ratio"_a = 1.0, "perishable_h"_a = 0.0,
           "stage"_a = py::none())
      .def_readonly("time_h", &State::time_h)
      .def_readonly("altitude_m", &State::altitude_m)
      .def_readonly("steps_done", &State::steps_done)
      .def_readonly("amounts", &State::amounts)
      .def_readonly("heat_capacity_kj_k", &State::heat_capacity_kj_k)
      .def_property_readonly("temperature_c",
                             [](const State& s) {
                               return std::isnan(s.temperature_c) ? std::nullopt : Optional(s.temperature_c);
                             })
      .def_readonly("inside_k", &State::inside_k, "K, mean of the dough less its surface as the core feels it")
      .def_readonly("cohorts", &State::cohorts)
      .def_readonly("equivalent_h", &State::equivalent_h)
      .def_readonly("made_mmol", &State::made_mmol)
      .def_property_readonly("co2_mmol", [](const State& s) { return s.gas.co2_mmol; })
      .def_property_readonly("air_mmol", [](const State& s) { return s.gas.air_mmol; })
      .def_readonly("mixed_volume_ml", &State::mixed_volume_ml)
      .def_readonly("anchor_ratio", &State::anchor_ratio)
      .def_readonly("perishable_h", &State::perishable_h)
      .def_readonly("stage", &State::stage)
      .def(
          "volume_ratio",
          [](const State& s, const std::optional<Kitchen>& kitchen) {
            return volume_ratio(s, kitchen_or_default(kitchen));
          },
          "kitchen"_a = py::none(), "Volume over the volume just after mixing. Raises InvalidInput without a dough.")
      .def("part", &part_of, "mass_g"_a,
           "A part of the dough, g: the same dough, less of it. Raises InvalidInput if it weighs less.")
      .def("as_beginning", &as_beginning,
           "The state as the beginning of another process. Raises InvalidInput in the middle of a stage.")
      .def(
          "save",
          [](const py::object& self, const py::object& path) {
            py::module_::import("libferment._saved").attr("save_state")(self, path);
          },
          "path"_a,
          "Write the state to a file, whole or not at all: JSON with a version. Raises InvalidInput if it cannot be "
          "written.")
      .def_static(
          "load",
          [](const py::object& path) {
            return py::cast<State>(py::module_::import("libferment._saved").attr("load_state")(path));
          },
          "path"_a,
          "Read a saved state, to the same digits. Raises InvalidInput if it is damaged, of another version, or no "
          "state.")
      .def_static(
          "from_dict",
          [](const Document& values) {
            return py::cast<State>(py::module_::import("libferment._saved").attr("state_from")(values));
          },
          "values"_a, "The state that to_dict gave. Raises InvalidInput if it is damaged.");
  add_value_methods(state, 0,
                    {"time_h", "altitude_m", "steps_done", "amounts", "heat_capacity_kj_k", "temperature_c", "inside_k",
                     "cohorts", "equivalent_h", "made_mmol", "co2_mmol", "air_mmol", "mixed_volume_ml", "anchor_ratio",
                     "perishable_h", "stage"});
}
