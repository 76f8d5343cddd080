// How a mix is poured into the heat balance.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <ferment/heat/balance.hpp>
#include <ferment/mix/mix.hpp>

namespace ferment {

inline constexpr double friction_found_at_c = 21;  ///< where a friction is usually found, flour and room alike
inline constexpr std::size_t main_water = 0;       ///< its index among the portions

/// What is in the bowl, as the heat balance takes it; the main water comes first.
struct Contents {
  std::vector<HeatPortion> portions;
  /// Of each portion what would be left of a temperature of its own in a room where everything else is as warm as the
  /// room: 1 for main water and ice, less for other water that stands, 0 for all else.
  std::vector<double> kept_in_even_room;
  HeatSources sources;
  double dough_kg = 0;
  double wetted_kg = 0;    ///< of it, what meets before the rest
  double work_low_kj = 0;  ///< the 90 % band of the work
  double work_middle_kj = 0;
  double work_high_kj = 0;
  double reading_sd_kj = 0;           ///< what readings of temperatures, or batches, differ by
  double hydration_half_band_kj = 0;  ///< half the band of the hydration
};

/// A dough as one portion of the heat balance, which joins after a rest.
HeatPortion portion_of(const State& dough, const std::string& name);

/// The contents of a mix that is checked, the doughs of other processes too; after a rest, or at once, a dough that is
/// there already joins if `dough` has a mass.
Contents contents_of(const Mix& mix, const HeatPortion& dough = {});

/// The same with all main water, ice too, as liquid at 0 °C: from there the dough is linear in the water's temperature.
/// @throws InvalidInput without a room or main water
Contents cold_contents_of(const Mix& mix);

/// Refuses a mix without a room, which a heat balance needs. @throws InvalidInput
void require_room(const Mix& mix);

/// The dough of cold contents, °C, in a room where everything but the portions of water has one temperature.
double dough_in_even_room(const Contents& cold, const HeatBalance& balance, double even_c);

/// How many temperatures the trade's rule counts.
double factors_of(const Mix& mix);

/// Dough temperature at the end of mixing. @throws InvalidInput without the main water's temperature; OutsideModel if
/// ice would not melt, or the dough be outside −2 to 45 °C
double mixed_c(const Mix& mix, const Contents& contents);

inline HeatBalance balance_of(const Contents& contents) { return heat_balance(contents.portions, contents.sources); }

}  // namespace ferment
