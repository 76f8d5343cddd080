// Kinds of baker's yeast and what a dose of each is worth.
#pragma once

#include <string_view>

#include <ferment/base/export.hpp>
#include <ferment/base/names.hpp>
#include <ferment/base/parameters.hpp>

namespace ferment {

enum class Yeast {
  instant,              ///< instant dry yeast
  active_dry,           ///< active dry yeast, wetted in warm water first
  active_dry_unwetted,  ///< active dry yeast stirred in dry
  compressed            ///< fresh yeast
};

/// The dose of another kind that gasses alike, percent of flour in, percent of flour out, by the trade's weight
/// ratios compressed 1 : active dry 0.40 : instant 0.33 (source: trade textbook excerpt).
/// @throws InvalidInput outside the field table's bounds (0.01 to 5 % as instant yeast)
FERMENT_API double convert_yeast(double yeast_percent, Yeast from, Yeast to);

/// Gassing dry matter of a dose, g per 100 g flour: 0.30·compressed, (0.30/0.40)·active dry, (0.30/0.33)·instant.
/// Arguments and errors as convert_yeast.
FERMENT_API double gassing_dry_matter(double yeast_percent, Yeast yeast);

/// Time constant of the approach to full rate, equivalent hours.
FERMENT_API double start_up_h(Yeast yeast, const Kitchen& kitchen = {});

/// Refuses doses outside 0.01 to 5 % as instant yeast, in the words and numbers of the kind as weighed.
/// @throws InvalidInput
FERMENT_API void require_yeast(const Values& yeast_percent, Yeast yeast);

template <>
FERMENT_API const Names& names_of<Yeast>();

}  // namespace ferment
