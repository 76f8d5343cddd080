// The yeast of one addition, with its own clock; and what becomes of it when doughs are mixed. Per 100 g of flour.
#pragma once

#include <span>
#include <vector>

#include <ferment/base/export.hpp>
#include <ferment/base/form.hpp>
#include <ferment/base/parameters.hpp>
#include <ferment/dough/yeast.hpp>

namespace ferment {

/// Yeast that came into the dough together. g are gassing dry matter per 100 g of flour, hours are equivalent hours.
struct Cohort {
  Yeast yeast = Yeast::instant;  ///< decides its start-up
  double dose_g = 0;             ///< as it came in
  double mass_g =
      0;  ///< when its growth clock began: the dose, or what it had grown to when it was mixed into a new dough
  double room_g = 0;        ///< what it can still grow from there
  double increment_g = 0;   ///< its share of the dough's growth increment
  double equivalent_h = 0;  ///< its age
  double growing_h = 0;     ///< of its growth clock
  bool past_lag = false;    ///< grows at once: it had begun before it was mixed into a new dough
};

/// What the cohort has grown to, g per 100 g flour.
FERMENT_API double mass_now(const Cohort& cohort, const Kitchen& kitchen = {});

/// The cohort `equivalent_h` later. @throws InvalidInput
FERMENT_API Cohort aged(const Cohort& cohort, double equivalent_h);

/// A dough that goes into a mix.
struct CohortPart {
  double flour_share = 1;  ///< of all flour after the mix
  std::vector<Cohort> cohorts = {};
};

/// The yeast of a mix: old doughs, new yeast (its dose per 100 g of all flour), and fresh flour for the rest of the
/// flour shares. Everything is diluted by the flour. What the doughs can still grow, and the fresh flour's growth
/// increment with it, is shared in proportion to the masses, so that a young cohort's share is that of its dose; a
/// cohort that has begun to grow goes on without a new lag, from the mass it has. Parts of one dough that come together
/// again are shared as before. Source: model of this library. (Sharing by dose alone would make a preferment's grown
/// yeast shrink or jump on mixing.)
/// @throws InvalidInput if shares are negative or sum to more than 1
FERMENT_API std::vector<Cohort> mixed_cohorts(std::span<const CohortPart> parts, std::span<const Cohort> added,
                                              const Kitchen& kitchen = {});

/// A new cohort of a dose, percent of flour as weighed; its share of the growth increment is set when it is mixed in.
/// @throws InvalidInput unless the dose is a positive number
FERMENT_API Cohort new_cohort(double yeast_percent, Yeast yeast);

template <>
FERMENT_API const Form& form_of<Cohort>();

}  // namespace ferment
