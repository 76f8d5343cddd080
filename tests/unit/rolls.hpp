// An invented day that several tests vary.
#pragma once

#include <utility>

#include <ferment/ferment.hpp>

/// A dough mixed to 24 °C, its bulk, and the final proof of twelve rolls to a rise of 65 %, in one place.
inline ferment::Process day_of_rolls(ferment::Surroundings around, decltype(ferment::Stage::until) bulk_until,
                                     double instant_g = 5) {
  ferment::Mix mix;
  mix.formula = {.flour_g = 900, .water_g = 600, .salt_g = 18, .instant_g = instant_g};
  mix.dough_c = 24;
  ferment::Stage bulk;
  bulk.surroundings = std::move(around);
  bulk.until = bulk_until;
  bulk.handling = {ferment::Handling::divide, ferment::Handling::round};
  ferment::Stage proof = bulk;
  proof.name = "proof";
  proof.piece.shape = ferment::Ball{};
  proof.piece.pieces = 12;
  proof.until = ferment::UntilRise{65};
  proof.final_proof = true;
  return {.steps = {mix, bulk, proof}};
}
