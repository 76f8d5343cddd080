// The cautions and limits of validity that belong to plain numbers.
#pragma once

#include <optional>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/dough/yeast.hpp>

namespace ferment {

/// What is known of a plan; leave out what is not.
struct PlainNumbers {
  std::optional<double> dough_c = {};
  std::optional<double> yeast_percent = {};
  Yeast yeast = Yeast::instant;
  std::optional<double> salt_percent = {};
  std::optional<double> water_percent = {};
  std::optional<double> sugar_percent = {};
  std::optional<double> gluten_percent = {};
  std::optional<double> altitude_m = {};
  std::optional<double> rise_percent = {};  ///< of the bulk, from the end of mixing
  std::optional<double> water_c = {};       ///< any number: a planned water may be impossible, and the notice says so
  std::optional<double> refrigerator_c = {};
  std::optional<double> perishable_h =
      {};  ///< hours a dough with egg, milk or other perishable food is held at dough_c
};

/// The notices, most severe first; empty if there is nothing to say. Codes:
/// water_kills_yeast, water_scalds, water_hot_for_yeast, water_warm_for_yeast, water_below_freezing,
/// water_cold_for_instant, law_outside_range, yeast_very_low, yeast_very_high, sugar_high, sugar_very_high,
/// rise_over_proofed, perishable_held, refrigerator_warm, dough_cold, dough_warm. Limits: science of the trade, common
/// practice; food safety defers to the local food code.
/// @throws InvalidInput outside the field table's bounds (but any finite water_c of use is answered)
FERMENT_API std::vector<Notice> cautions(const PlainNumbers& numbers, const Kitchen& kitchen = {});

}  // namespace ferment
