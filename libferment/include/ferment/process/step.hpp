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
enum class Handling { fold, divide, round, mould, machine_mould };

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
  /// In a tin or tub, or free: for the over-proof limit. A ball, an oblong and a flat disc stand free, if not given.
  std::optional<Standing> standing = {};
  /// Its own over-proof limit counts. If not given, so it is in the last stage of a process whose piece is no tub,
  /// unless all of it is in a refrigerator.
  std::optional<bool> final_proof = {};
  /// Lowest and highest; if not given, of a rise that ends the stage 75 and 150 %, in a final proof 80 and 133 %.
  std::optional<std::pair<double, double>> acceptable_rise_percent = {};
};

/// As given, or by the shape of its piece.
FERMENT_API Standing standing_of(const Stage& stage);

/// As given, or by its piece and its place in the process.
FERMENT_API bool is_final_proof(const Stage& stage, bool is_last);

/// As given, or by the rise that ends the stage (common practice, no source); nothing for one that ends by time.
FERMENT_API std::optional<std::pair<double, double>> acceptable_rise(const Stage& stage, bool is_final_proof);

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
