// Private. What the stages of one day hand on to each other, for as many members as fit one vector.
#pragma once

#include "colony/day.hpp"
#include "colony/lanes.hpp"
#include "colony/luck.hpp"
#include "colony/rows.hpp"

namespace beegarth::colony {

template <class F>
struct Now {
  float* at;  // row 0 of the first of these members
  const Day& day;
  Luck<F> luck;

  // carried from stage to stage
  F hive{}, nurses{}, foragers{}, winter{}, bees{};
  F larvae{}, brood{}, young_brood{}, drone_brood{};
  F emerged_mites{}, died{}, income{}, free_cells{}, pollen_share{}, starving{}, left{};

  BEEGARTH_INLINE F get(int r) const { return load<F>(at + r * lanes); }
  BEEGARTH_INLINE void put(int r, F x) { store<F>(at + r * lanes, x); }
  BEEGARTH_INLINE F trait(Trait t) const { return get(row::first_trait + static_cast<int>(t)); }
  BEEGARTH_INLINE void scale(int r, F by) { put(r, get(r) * by); }
  BEEGARTH_INLINE void add(int r, F x) { put(r, get(r) + x); }
};

template <class F>
BEEGARTH_INLINE F flag(bool yes) {
  return all<F>(yes ? 1.0F : 0.0F);
}
// 1 where a < b, else 0.
template <class F>
BEEGARTH_INLINE F below(F a, F b) {
  return pick(a < b, all<F>(1.0F), F{});
}

}  // namespace beegarth::colony
