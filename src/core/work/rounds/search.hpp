// A good plan by taking out and putting in again: a few neighbouring places leave the plan, others take the
// room, and what came of it is kept where it is better, or little worse while the search is young (ruin and
// recreate with annealing: Schrimpf et al. 2000; strings of neighbours: Christiaens & Vanden Berghe 2020).
#pragma once

#include <cstdint>
#include <vector>

#include "base/random.hpp"
#include "work/rounds/pool.hpp"
#include "work/rounds/tour.hpp"

namespace beegarth::work::rounds {

struct Tours {
  std::vector<Tour> days;
  Worth score = 0;
  Ticks way = 0;
};

Tours no_tours(const Terrain& terrain);
void add_up(Tours& tours);                    // score and way, from the days
bool better(const Tours& a, const Tours& b);  // worth more or, worth the same, shorter on the road

struct WalkPlan {
  std::int64_t looks = 0;  // how often a place may be held against a gap
  double warmest = 0;      // how much worse is put up with, in mean scores of a place
  double coldest = 0;
};

// One walk from `from`; the best it met. Tours of plans that were kept go into the pool.
Tours walk(const Terrain& terrain, const Tours& from, const WalkPlan& plan, Stream& random, Pool& pool);

}  // namespace beegarth::work::rounds
