// An invented day that several tests vary.
#pragma once

#include <optional>
#include <utility>

#include <ferment/ferment.hpp>

/// A bulk's end: by a time or by a rise.
struct BulkEnd {
  std::optional<double> until_h = {};
  std::optional<double> until_rise_percent = {};
};

/// A dough mixed to 24 °C, its bulk, and the final proof of twelve rolls to a rise of 65 %, in one place.
inline ferment::Process day_of_rolls(ferment::Surroundings around, const BulkEnd& end, double instant_g = 5) {
  ferment::Mix mix;
  mix.formula = {.flour_g = 900, .water_g = 600, .salt_g = 18, .instant_g = instant_g};
  mix.dough_c = 24;
  ferment::Stage bulk;
  bulk.surroundings = std::move(around);
  bulk.until_h = end.until_h;
  bulk.until_rise_percent = end.until_rise_percent;
  bulk.handling = {ferment::Handling::divide, ferment::Handling::round};
  ferment::Stage proof = bulk;
  proof.name = "proof";
  proof.piece.shape = ferment::Shape::ball;
  proof.piece.pieces = 12;
  proof.until_h = std::nullopt;
  proof.until_rise_percent = 65;
  proof.final_proof = true;
  return {.steps = {mix, bulk, proof}};
}
