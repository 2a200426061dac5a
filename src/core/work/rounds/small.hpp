// The best plan over a dozen places at most, by trying every set of them on every day (dynamic programming
// over sets: Held & Karp 1962).
#pragma once

#include "work/rounds/search.hpp"

namespace beegarth::work::rounds {

constexpr int small_places = 12;

Tours best_of_all_sets(const Terrain& terrain);

}  // namespace beegarth::work::rounds
