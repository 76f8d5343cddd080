// What is done to the dough.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/dough/formula.hpp>
#include <ferment/heat/mixing.hpp>
#include <ferment/heat/piece.hpp>
#include <ferment/heat/surroundings.hpp>
#include <ferment/process/state.hpp>
#include <ferment/rise/rise.hpp>

namespace ferment {

/// One addition of ingredients: what comes into the bowl, how warm, and how it is mixed. Temperatures that are not
/// given are the room's. In a process it joins the dough that is there; only the first one needs flour.
struct Mix {
  Formula formula = {};
  double room_c = std::numeric_limits<double>::quiet_NaN();  ///< must be given
  std::optional<double> flour_c = {};                        ///< of flours and gluten that do not say their own
  std::optional<double> water_c = {};                        ///< of the main water; what the water plan answers
  std::optional<double> tap_c = {};                          ///< cold water as it comes; needed to plan ice
  double ice_c = -18;                                        ///< from a freezer; 0 when it is wet
  std::optional<double> milk_c = {};
  std::optional<double> egg_c = {};
  std::optional<double> butter_c = {};
  Bowl bowl = {};
  std::optional<Mixing> mixing = {};             ///< kneading by hand if not given
  bool heat_of_solution = true;                  ///< salt (66 kJ/kg) and sugar (16 kJ/kg) cool as they dissolve
  double rest_h = 0;                             ///< flour, water, milk and egg rest that long before all else joins
  std::optional<double> heat_loss_w_per_k = {};  ///< of the covered dough to the room; by its weight if not given
  std::vector<State> doughs = {};      ///< doughs of other processes, mixed in as they are: a sponge, old dough
  std::optional<double> dough_c = {};  ///< measured at the end of mixing, in place of the heat balance's
  bool yeast_unwetted = false;         ///< active dry yeast is stirred in dry, without water of its own
};

/// Refuses a mix outside the field table, or with nothing in it. @throws InvalidInput
FERMENT_API void require_mix(const Mix& mix);

/// What presses gas out of a dough; the kitchen has the share of each.
enum class Handling { fold, divide, round, mould };

/// "fold", "divide", "round" or "mould".
FERMENT_API std::string_view name_of(Handling handling);
/// @throws InvalidInput naming the known ones
FERMENT_API Handling handling_named(std::string_view name);

struct UntilTime {
  double hours = 0;  ///< from the stage's start
};
struct UntilRise {
  double rise_percent = 100;  ///< volume gained since the stage's start
};

/// Time passes in some surroundings until a time or a rise, then the dough is handled.
struct Stage {
  std::string name = "bulk";
  Piece piece = {};
  Surroundings surroundings = {};
  std::variant<UntilTime, UntilRise> until = UntilTime{};
  std::vector<double> folds_h = {};     ///< hours from the stage's start, rising
  std::vector<Handling> handling = {};  ///< what ends the stage, in order
  Standing standing = Standing::tin;    ///< in a tin or tub, or free: for the over-proof limit
  bool final_proof = false;             ///< its own over-proof limit counts
  std::optional<std::pair<double, double>> acceptable_rise_percent = {};  ///< lowest and highest
};

/// Refuses a stage outside the field table. @throws InvalidInput
FERMENT_API void require_stage(const Stage& stage);

using Step = std::variant<Mix, Stage>;

/// What happens to a dough, step after step.
struct Process {
  std::vector<Step> steps = {};
  double start_h = 0;     ///< of the hour axis: 0, or the hour of the day it begins
  double altitude_m = 0;  ///< above the sea
};

}  // namespace ferment
