// Everything there is to know of a dough at a moment. A value: keep it, save it, go on from it.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/dough/cohort.hpp>
#include <ferment/dough/formula.hpp>
#include <ferment/dough/volume.hpp>

namespace ferment {

/// How far a stage has come that is not over.
struct StageProgress {
  double start_h = 0;      ///< on the process's hour axis
  double start_c = 0;      ///< °C of the dough then
  double start_ratio = 1;  ///< volume over mixed volume then
  std::size_t folds_done = 0;
  std::optional<double> over_proofed_h = {};  ///< when it was over-proofed, if it was
  double heat_made_j = 0;                     ///< by fermentation, so far, per piece
  double heat_lost_j = 0;                     ///< to the surroundings, so far, per piece
};

/// A layer of the dough with a temperature of its own: how far it has come. Gas is per 100 g of flour. After mixing a
/// dough is one.
struct Shell {
  double share = 1;          ///< of the dough
  double temperature_c = 0;  ///< its mean
  double equivalent_h = 0;   ///< of its clock, since the first yeast met flour and water
  double made_mmol = 0;      ///< CO2 made of the sugars that are in the dough
  Gas gas = {};              ///< held, as if nothing leaked since the anchor; and the air in the cells
};

/// A dough between two moments of a process. Gas is per 100 g of flour.
struct State {
  double time_h = 0;           ///< on the process's hour axis
  double altitude_m = 0;       ///< above the sea, for the air pressure
  std::size_t steps_done = 0;  ///< of its process
  Amounts amounts = {};
  double heat_capacity_kj_k = 0;  ///< of all of the dough
  double inside_k = 0;  ///< mean less surface as the core feels it: it follows by and by; 0 after mixing and handling
  std::vector<Shell> shells = {};    ///< from the core to the surface, one today; none without a dough
  std::vector<Cohort> cohorts = {};  ///< as old as the whole's clock has it; a shell that is ahead is older by as much
  double mixed_volume_ml = 0;        ///< volume just after mixing, per 100 g of flour
  double anchor_ratio = 1;           ///< volume over mixed volume at the last handling or mixing
  double perishable_h = 0;           ///< hours between 5 and 60 °C with milk or egg in it
  std::optional<StageProgress> stage = {};  ///< of the stage that is under way
};

/// All of the dough as one shell: means by the shares. @throws InvalidInput without a dough
FERMENT_API Shell whole_of(const State& state);

/// A part of the dough, g: the same dough, less of it. @throws InvalidInput if the dough weighs less
FERMENT_API State part_of(const State& state, double mass_g);

/// The state as the beginning of another process. @throws InvalidInput in the middle of a stage
FERMENT_API State as_beginning(State state);

template <>
FERMENT_API const Form& form_of<StageProgress>();

template <>
FERMENT_API const Form& form_of<Shell>();

template <>
FERMENT_API const Form& form_of<State>();

}  // namespace ferment
