// What comes into the bowl, how warm, and how it is mixed.
#pragma once

#include <optional>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/dough/formula.hpp>
#include <ferment/dough/state.hpp>
#include <ferment/heat/bowl.hpp>
#include <ferment/mix/mixing.hpp>

namespace ferment {

/// One addition of ingredients: what comes into the bowl, how warm, and how it is mixed. Temperatures that are not
/// given are the room's. In a process it joins the dough that is there; only the first one needs flour.
struct Mix {
  Formula formula = {};
  std::optional<double> room_c = {};  ///< must be given, unless dough_c is
  std::optional<double> tap_c = {};   ///< cold water as it comes; needed to plan ice
  Bowl bowl = {};
  std::optional<Mixing> mixing = {};             ///< kneading by hand if not given
  bool heat_of_solution = true;                  ///< salt (66 kJ/kg) and sugar (16 kJ/kg) cool as they dissolve
  double rest_h = 0;                             ///< flour, water, milk and egg rest that long before all else joins
  std::optional<double> heat_loss_w_per_k = {};  ///< of the covered dough to the room; by its weight if not given
  std::vector<State> doughs = {};  ///< doughs of other processes, as they are when they join, after a rest: a sponge
  std::optional<double> dough_c = {};  ///< measured at the end of mixing, in place of the heat balance's
  bool perishable = false;             ///< holds perishable food other than milk and egg
  bool yeast_unwetted = false;         ///< active dry yeast is stirred in dry, without water of its own
};

template <>
FERMENT_API const Form& form_of<Mix>();

}  // namespace ferment
