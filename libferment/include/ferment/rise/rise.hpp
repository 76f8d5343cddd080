// Hours to a rise and back, at a constant dough temperature.
#pragma once

#include <span>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/names.hpp>
#include <ferment/base/notice.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/dough/yeast.hpp>

namespace ferment {

/// One dough at one temperature. Percent of flour weight, added gluten included in the flour.
struct Dough {
  Given dough_c;        ///< °C, the dough's own temperature
  Given yeast_percent;  ///< as weighed
  Yeast yeast = Yeast::instant;
  double salt_percent = *field::salt_percent.initial;
  double water_percent = *field::water_percent.initial;
  double sugar_percent = *field::sugar_percent.initial;
  double gluten_percent = *field::gluten_percent.initial;
  double altitude_m = *field::altitude_m.initial;
};

/// Many doughs: every member has one value for all or one for each.
struct Doughs {
  Values dough_c;
  Values yeast_percent;
  Yeast yeast = Yeast::instant;
  Values salt_percent = *field::salt_percent.initial;
  Values water_percent = *field::water_percent.initial;
  Values sugar_percent = *field::sugar_percent.initial;
  Values gluten_percent = *field::gluten_percent.initial;
  Values altitude_m = *field::altitude_m.initial;
};

/// Hours from the end of mixing until the dough has gained `rise_percent` of its volume, at a constant dough
/// temperature. The yeast meets flour and water at the end of mixing. Model §1 to §3, closed form.
/// @throws InvalidInput outside the field table; NoSolution for a rise beyond what the dough can hold or make,
///         naming the reachable rise; OutsideModel where the yeast stands still
FERMENT_API double hours_to_rise(double rise_percent, const Dough& dough, const Kitchen& kitchen = {});

/// The same for arrays: every input has one value or out.size() values. With Unreachable::infinity out is infinite
/// where the rise is never reached. out must not overlap the inputs and has no meaning after an error.
/// @throws as above, naming the first offending index and the count
FERMENT_API void hours_to_rise(const Values& rise_percent, const Doughs& doughs, std::span<double> out,
                               const Kitchen& kitchen = {}, Unreachable unreachable = Unreachable::raise);

/// Rise in percent after `time_h` hours, the inverse of hours_to_rise; 0 at 0 h. @throws InvalidInput
FERMENT_API double rise_after(double time_h, const Dough& dough, const Kitchen& kitchen = {});

/// The same for arrays. @throws InvalidInput
FERMENT_API void rise_after(const Values& time_h, const Doughs& doughs, std::span<double> out,
                            const Kitchen& kitchen = {});

/// The rise a dough nears but never reaches, percent: what it can hold, or what its sugars can make.
/// @throws InvalidInput
FERMENT_API double reachable_rise(const Dough& dough, const Kitchen& kitchen = {});

/// Yeast dose, percent as weighed of dough.yeast's kind, with which the rise takes that long (dough.yeast_percent is
/// not read). Bracketed root in the logarithm of the dose (TOMS 748); more yeast is always faster.
/// @throws InvalidInput; NoSolution naming the hours that 0.01 and 5 % as instant yeast give; OutsideModel
FERMENT_API double yeast_for_rise(double rise_percent, double target_h, const Dough& dough,
                                  const Kitchen& kitchen = {});

/// Which factor made how much of a time.
struct Factor {
  std::string name = {};  ///< "yeast", "temperature", "salt", "water", "sugar", "gluten", "altitude"
  double from_value = 0;  ///< value in the reference dough
  double to_value = 0;    ///< value in this dough
  double times = 1;       ///< hours × this
};

struct Explanation {
  double reference_h = 0;  ///< hours of the same rise in the reference dough with 1 % instant yeast
  std::vector<Factor> factors;
  double hours = 0;  ///< reference_h × all factors
};

/// Walks from the reference dough (25 °C, 2 % salt, 65 % water, no sugar, 1 % instant yeast, sea level) to this one,
/// one change at a time in the order of the factors; their product is exact, each factor depends a little on the order.
/// A change after which the rise is out of reach for the moment counts together with the next one.
/// @throws as hours_to_rise
FERMENT_API Explanation explain(double rise_percent, const Dough& dough, const Kitchen& kitchen = {});

/// How a dough stands while it proofs, for the over-proof limit.
enum class Standing { tin, free };

/// Volume over mixed volume above which a dough is over-proofed: a share of the largest volume (0.87 in a tin or tub,
/// 0.65 standing free) and, for a final proof that started at `start_ratio`, at most its own rise limit (200 % in a
/// tin, 130 % standing free). A bulk has other limits besides, those of its stage: simulate. Common practice, no
/// source; the limits are parameters of the kitchen. @throws InvalidInput
FERMENT_API double over_proof_ratio(const Dough& dough, Standing standing, bool final_proof, double start_ratio = 1,
                                    const Kitchen& kitchen = {});

template <>
FERMENT_API const Names& names_of<Standing>();

template <>
FERMENT_API const Form& form_of<Dough>();

template <>
FERMENT_API const Form& form_of<Factor>();

template <>
FERMENT_API const Form& form_of<Explanation>();

}  // namespace ferment
