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
  const Rates& rates;
  Luck<F> luck;

  // carried from stage to stage
  F hive{}, old_for_field{};  // hive bees; the same by share of the rate at which they leave for the field
  F nurses{}, foragers{}, winter{}, bees{};
  F larvae{}, brood{}, drone_brood{};  // before today's eggs
  F emerged_mites{}, died{}, pollen{}, free_cells{}, left{};

  BEEGARTH_INLINE F get(int r) const { return load<F>(at + r * lanes); }
  BEEGARTH_INLINE void put(int r, F x) { store<F>(at + r * lanes, x); }
  BEEGARTH_INLINE F trait(Trait t) const { return get(row::first_trait + static_cast<int>(t)); }
  BEEGARTH_INLINE Mask<F> is(int r) const { return above_zero(get(r)); }  // of a row that is 0 or 1
  BEEGARTH_INLINE void scale(int r, F by) { put(r, get(r) * by); }
  BEEGARTH_INLINE void add(int r, F x) { put(r, get(r) + x); }
  BEEGARTH_INLINE void put_where(Mask<F> where, int r, F x) { put(r, pick(where, x, get(r))); }

  // The sum of a whole ring, in the order of its rows: four at a time, so that no addition waits long for another.
  template <int count>
  BEEGARTH_INLINE F sum(int first) const {
    F part[4]{};
#pragma GCC unroll 32
    for (int i = 0; i < count; ++i) part[i % 4] += get(first + i);
    return (part[0] + part[1]) + (part[2] + part[3]);
  }
};

template <class F>
BEEGARTH_INLINE Mask<F> below(F a, float b) {
  return less(a, all<F>(b));
}
template <class F>
BEEGARTH_INLINE Mask<F> above(F a, float b) {
  return less(all<F>(b), a);
}
template <class F>
BEEGARTH_INLINE Mask<F> every(bool yes) {
  return less(F{}, all<F>(yes ? 1.0F : 0.0F));
}

// Notes the first day on which it happened.
template <class F>
BEEGARTH_INLINE void note_event(Now<F>& now, Event event, Mask<F> happened) {
  const int at = row::first_event + static_cast<int>(event);
  now.put(at, least(now.get(at), pick(happened, all<F>(now.day.number), all<F>(never))));
}

}  // namespace beegarth::colony
