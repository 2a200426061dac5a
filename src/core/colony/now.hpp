// Private. What the stages of one day hand on to each other, for as many members as fit one vector.
#pragma once

#include "colony/day.hpp"
#include "colony/lanes.hpp"
#include "colony/luck.hpp"
#include "colony/rows.hpp"

namespace beegarth::colony {

// Four sums side by side, so that no addition waits long for another.
template <class F>
struct Parts {
  F part[4]{};
  BEEGARTH_INLINE void add(int i, F x) { part[i % 4] += x; }
  BEEGARTH_INLINE F sum() const { return (part[0] + part[1]) + (part[2] + part[3]); }
};

// What the evening hands on to the morning, so that the ring of hive bees need be gone through only once a
// day. It can be had again from the rows at any time (hive_at_evening), with the same bits.
template <class F>
struct Evening {
  F hive{};       // hive bees of all ages
  F for_field{};  // by the share of the rate at which they leave for the field tomorrow
};

// As age_hive_bees() of step_bees.hpp leaves it. days_since: 0 on the evening itself, 1 on the morning after,
// when the hands have turned.
template <class F>
__attribute__((noinline)) Evening<F> hive_at_evening(const float* at, const Day& d, std::size_t days_since) {
  Parts<F> hive;
  Parts<F> for_field;
  for (std::size_t age = 0; age < hive_ages; age += 4) {
    for (std::size_t k = 0; k < 4; ++k) {
      const F bees = load<F>(at + d.hands.hive[age + k + days_since] * lanes);
      hive.part[k] += bees;
      for_field.part[k] += bees * d.leaving.share[age + k + 1];
    }
  }
  return {hive.sum() + load<F>(at + row::old_hive * lanes), for_field.sum()};
}

// For how many mornings there may still be brood of a kind in any of these members. Where there is none, sums
// over it are passed over; they would be exactly nothing.
struct BroodLeft {
  int worker = worker_days + 1, drone = drone_days + 1;
};

template <class F>
BroodLeft brood_left(const float* at) {
  const auto any = [at](int first, int count) {
    for (int i = 0; i < count; ++i) {
      if (any_of(above_zero(load<F>(at + (first + i) * lanes)))) return true;
    }
    return false;
  };
  BroodLeft left;
  if (!any(row::worker_brood, worker_days)) left.worker = 0;
  if (!any(row::drone_brood, drone_days)) left.drone = 0;
  return left;
}

template <class F>
struct Now {
  float* at;  // row 0 of the first of these members
  const Day& day;
  const Rates& rates;
  Luck<F> luck;
  Evening<F> evening;  // yesterday's in the morning, today's once the bees have aged
  BroodLeft& brood_for;

  // carried from stage to stage
  F nurses{}, foragers{}, winter{}, bees{};
  F per_bee{};                         // one over the bees of the morning
  F larvae{}, brood{}, drone_brood{};  // before today's eggs
  F stores{}, nectar{}, pollen{};      // kg, until they are put away (put_away)
  F pollen_for_brood{};                // kg, before the larvae have eaten
  F emerged_mites{}, died{}, free_cells{}, left{};
  Mask<F> lays{};  // where a mated queen is free and laying

  BEEGARTH_INLINE F get(int r) const { return load<F>(at + r * lanes); }
  BEEGARTH_INLINE void put(int r, F x) { store<F>(at + r * lanes, x); }
  BEEGARTH_INLINE F trait(Trait t) const { return get(row::first_trait + static_cast<int>(t)); }
  BEEGARTH_INLINE Mask<F> is(int r) const { return above_zero(get(r)); }  // of a row that is 0 or 1
  BEEGARTH_INLINE void scale(int r, F by) { put(r, get(r) * by); }
  BEEGARTH_INLINE void add(int r, F x) { put(r, get(r) + x); }
  BEEGARTH_INLINE void put_where(Mask<F> where, int r, F x) { put(r, pick(where, x, get(r))); }

  // Of a whole ring, in the order of its rows.
  template <int count>
  BEEGARTH_INLINE F sum(int first) const {
    Parts<F> parts;
#pragma GCC unroll 32
    for (int i = 0; i < count; ++i) parts.add(i, get(first + i));
    return parts.sum();
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
