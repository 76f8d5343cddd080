// What is done to the dough.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/names.hpp>
#include <ferment/heat/piece.hpp>
#include <ferment/heat/surroundings.hpp>
#include <ferment/mix/mix.hpp>
#include <ferment/rise/rise.hpp>

namespace ferment {

/// What presses gas out of a dough; the kitchen has the share of each.
enum class Handling { fold, divide, round, mould };

/// Time passes in some surroundings until a rise, for some hours, or until an hour, one of the three; then the dough is
/// handled.
struct Stage {
  std::string name = "bulk";
  Piece piece = {};
  Surroundings surroundings = {};
  std::optional<double> until_h = {};             ///< from the stage's start
  std::optional<double> until_rise_percent = {};  ///< volume gained since the stage's start
  std::optional<double> ends_h = {};              ///< hour of the process; if that is over, it ends at once
  std::vector<double> folds_h = {};               ///< hours from the stage's start, rising
  std::vector<Handling> handling = {};            ///< what ends the stage, in order
  Standing standing = Standing::tin;              ///< in a tin or tub, or free: for the over-proof limit
  bool final_proof = false;                       ///< its own over-proof limit counts
  std::optional<std::pair<double, double>> acceptable_rise_percent = {};  ///< lowest and highest
};

using Step = std::variant<Mix, Stage>;

/// What happens to a dough, step after step.
struct Process {
  std::vector<Step> steps = {};
  double start_h = 0;     ///< of the hour axis: 0, or the hour of the day it begins
  double altitude_m = 0;  ///< above the sea
};

template <>
FERMENT_API const Names& names_of<Handling>();

template <>
FERMENT_API const Form& form_of<Stage>();

template <>
FERMENT_API const Form& form_of<Process>();

}  // namespace ferment
