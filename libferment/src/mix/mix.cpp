#include <ferment/mix/mix.hpp>

#include <ferment/base/error.hpp>
#include <ferment/base/field.hpp>

#include "dough/sums.hpp"

namespace ferment {
namespace {

void contradictions(const Mix& mix) {
  double dough_g = sums_of(mix.formula).dough_g;
  for (const State& dough : mix.doughs) dough_g += dough.amounts.dough_g;
  if (!(dough_g > 0)) {
    throw InvalidInput("the mix has nothing in it", {.path = "flour_g",
                                                     .value = 0.0,
                                                     .advice = "give flour_g, water_g, or what else joins the dough"});
  }
  if (!mix.room_c && !mix.dough_c) {  // a measured dough needs no balance
    throw InvalidInput("a mix needs the temperature of the room, room_c; or dough_c, measured at the end of mixing",
                       {.path = "room_c"});
  }
}

}  // namespace

template <>
const Form& form_of<Mix>() {
  static const Form form = made_form<Mix>(
      "Mix",
      "One addition of ingredients: what comes into the bowl, how warm, and how it is mixed. In a process it joins the "
      "dough that is there, and takes its rest and the minutes that its mixing says; only the first needs flour.",
      {},
      joined(joined({row<&Mix::room_c>("room_c", field::mix_room_c)}, rows_of_part<&Mix::formula>()),
             {row<&Mix::tap_c>(field::tap_c), row<&Mix::bowl>("bowl", "the bowl, with its hook or paddle"),
              row<&Mix::mixing>("mixing", "the heat of mixing; kneading by hand if not given"),
              row<&Mix::heat_of_solution>("heat_of_solution", "salt and sugar cool as they dissolve"),
              row<&Mix::rest_h>(field::rest_h), row<&Mix::heat_loss_w_per_k>(field::heat_loss_w_per_k),
              row<&Mix::doughs>("doughs", "doughs of other processes, mixed in as they are"),
              row<&Mix::dough_c>("dough_c", field::measured_dough_c),
              row<&Mix::perishable>("perishable", "holds perishable food other than milk and egg"),
              row<&Mix::yeast_unwetted>("yeast_unwetted", "active dry yeast is stirred in dry")}),
      contradictions);
  return form;
}

}  // namespace ferment
