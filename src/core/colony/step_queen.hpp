// Private. The stages of a day that concern queens, eggs, queen cells and swarms.
#pragma once

#include "colony/now.hpp"
#include "colony/step_food.hpp"

namespace beegarth::colony {

// A queen that never mated and is too old to, or one whose sperm is spent (change_queen puts her there).
template <class F>
BEEGARTH_INLINE Mask<F> queen_lays_drones(const Now<F>& now) {
  const Mask<F> late = above(now.get(row::queen_clock), virgin_too_old_days);
  return now.is(row::queen) & !now.is(row::mated) & late & !now.is(row::caged);
}

template <class F>
BEEGARTH_INLINE F queen_years(const Now<F>& now) {
  return now.get(row::queen_age) * (1.0F / 365.0F);
}

// Whether a mated queen is free and laying.
template <class F>
BEEGARTH_INLINE void look_at_queen(Now<F>& now) {
  const Mask<F> ready = above(now.get(row::queen_clock), mated_to_laying_days - 0.5F);
  now.lays = now.is(row::queen) & now.is(row::mated) & ready & !now.is(row::caged);
}

// Share of the queen's best that season and warmth allow: the season ends sooner in some colonies than in
// others.
template <class F>
BEEGARTH_INLINE F season_share(const Now<F>& now) {
  const Day& d = now.day;
  if (d.lengthening) return all<F>(d.laying);
  const F end = now.trait(Trait::season_end);
  const F share = (all<F>(d.light) - end) / most(all<F>(d.season_turn) - end, all<F>(0.5F));
  return least(most(share, F{}), all<F>(1.0F)) * (d.warm * d.season_peak);
}

// The queen lays what season, warmth, nurses, pollen, care and room allow.
template <class F>
BEEGARTH_INLINE void lay(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = now.rates;
  if (d.laying > 0 || d.swarm_rate > 0) now.free_cells = room_of(now).free_cells;
  F eggs{};
  if (d.laying > 0) {
    const F old = most(queen_years(now) - r.laying_falls_from_years, F{});
    const F vigour = now.get(row::luck_laying) + 1.0F - old * r.laying_falls_per_year;
    const F power = now.trait(Trait::laying_max) * now.get(row::vigour) * most(vigour, F{});
    const F nursed = now.nurses / (now.nurses + r.half_laying_bees);
    const F honey = least((now.stores + now.nectar) * (1.0F / r.laying_stores_kg), all<F>(1.0F));
    const F fed = now.pollen_for_brood / (now.pollen_for_brood + r.pollen_half_kg) * honey;
    const F care = most(now.nurses * r.care_cells_per_bee - now.brood, F{});
    const F limit = least(now.free_cells, care) * (1.0F / r.egg_wait_days);
    eggs = only(now.lays, least(power * nursed * fed * season_share(now), limit));
    F males{};
    if (d.drone_share > 0) males = now.bees / (now.bees + r.drone_half_bees) * d.drone_share * eggs;
    const Mask<F> drone_layers = queen_lays_drones(now);
    if (any_of(drone_layers)) {
      males += only(drone_layers, least(all<F>(d.drone_layer_eggs), limit));
    }
    now.put(d.hands.drone_youngest, males);
    now.put(d.hands.worker[0], eggs);
    now.brood_for.worker = worker_days + 1;
    if (d.drone_share > 0 || any_of(drone_layers)) now.brood_for.drone = drone_days + 1;
    now.brood = now.brood + eggs;
  }
  now.put(row::eggs_today, eggs);
}

// Where swarm preparations start today: in a crowded nest in the season, with odds that rise with the age of
// the queen.
template <class F>
BEEGARTH_INLINE Mask<F> swarm_starts(const Now<F>& now, Mask<F> has_cells) {
  const Day& d = now.day;
  const Rates& r = now.rates;
  if (d.swarm_rate == 0) return every<F>(false);
  const Mask<F> able = above(now.bees, r.swarm_min_bees) & now.lays & !has_cells;
  if (!any_of(able)) return able;
  const F one = all<F>(1.0F);
  const F crowded_cells = most(drawn_nest_combs(now), one) * (d.cells_per_comb * r.crowded_free_share);
  const F crowded = one - least(now.free_cells / crowded_cells, one);
  const F full = least(most(now.bees / most(d.bees_at_home, 1.0F) - r.full_hive_from_share, F{}), one);
  const F old = least(queen_years(now), all<F>(3.0F)) * r.swarm_age_weight + (1.0F - r.swarm_age_weight);
  const F inclined = now.trait(Trait::swarming) * old * (crowded * r.crowded_weight + full);
  return able & less(now.luck.swarm, one - exp_minus(inclined * d.swarm_rate));
}

// Preparations go on from day to day, are given up with odds of their own, or when the weather has kept the
// swarm in until the virgins are due.
template <class F>
BEEGARTH_INLINE void prepare_swarm(Now<F>& now) {
  const Rates& r = now.rates;
  const F cells = now.get(row::cells);
  const Mask<F> has_cells = above_zero(cells);
  const Mask<F> starts = swarm_starts(now, has_cells);
  if (!any_of(has_cells | starts)) return;
  const F age = now.get(row::cell_age) + flag(has_cells);
  const Mask<F> swarming = now.is(row::cells_are_swarm);
  const Mask<F> tired = below(now.luck.swarm, r.give_up_per_day) & below(age, cell_sealed_age);
  const Mask<F> too_late = above(age, cell_emerging_age - 1.5F);
  const Mask<F> gives_up = swarming & has_cells & now.is(row::queen) & (tired | too_late);
  const Mask<F> new_or_none = gives_up | starts;
  const F new_age = only(!new_or_none, age);
  const Mask<F> for_swarm = (swarming & !gives_up) | starts;
  now.put(row::cells, pick(starts, all<F>(r.swarm_cells), only(!gives_up, cells)));
  now.put(row::cell_age, new_age);
  now.put(row::cells_are_swarm, flag(for_swarm));
  note_event(now, Event::swarm_preparation, for_swarm & above(new_age, cell_charged_age - 0.5F));
}

// A part of everything that can fly leaves with the queen.
template <class F>
BEEGARTH_INLINE void leave_with_queen(Now<F>& now, Mask<F> goes, F share) {
  const F one = all<F>(1.0F);
  const F gone = only(goes, share);
  const F stays = one - gone;
  for (int i = 0; i < hive_ages; ++i) now.scale(row::hive + i, stays);
  for (const int pool : {+row::old_hive, +row::foragers, +row::winter, +row::winter_harmed, +row::mites}) {
    now.scale(pool, stays);
  }
  now.evening = hive_at_evening<F>(now.at, now.day, 0);
  now.scale(row::drones, one - gone * 0.5F);
  const F leaving = now.bees * gone;
  now.left = now.left + leaving;
  const F provisions = leaving * (now.rates.swarm_honey_g_per_bee / 1000);
  now.stores = most(now.stores - provisions, F{});
  now.put(row::stores, now.stores);
  now.put_where(goes, row::queen, F{});
  now.bees = now.bees * stays;
}

// The prime swarm leaves on the first fit day once a cell is sealed.
template <class F>
BEEGARTH_INLINE void swarm(Now<F>& now) {
  if (!now.day.swarm_weather) return;
  const Mask<F> sealed = above(now.get(row::cell_age), cell_sealed_age - 0.5F);
  const Mask<F> goes = now.is(row::cells_are_swarm) & sealed & now.lays;
  if (!any_of(goes)) return;
  const F share = least(most(now.luck.forage * 0.05F + now.rates.swarm_share, F{}), all<F>(1.0F));
  leave_with_queen(now, goes, share);
  note_event(now, Event::swarm, goes);
}

// The queen and what is to follow her, while a day changes them.
template <class F>
struct Succession {
  Mask<F> queen, mated, lost;
  F clock, cells, cell_age;
};

// A colony that finds itself without a queen raises another while it has brood young enough.
template <class F>
BEEGARTH_INLINE void raise_queen(Now<F>& now, Succession<F>& s) {
  const Mask<F> without = below(s.cells, 1.0F) & now.is(row::alive) & !s.queen;
  if (!any_of(without)) return;
  F young = now.get(row::eggs_today);
  for (std::size_t age = 1; age <= 4; ++age) young += now.get(now.day.hands.worker[age]);
  const Mask<F> raises = without & above(young, 10.0F);
  s.cells += only(raises, all<F>(now.rates.emergency_cells));
  s.cell_age = pick(raises, all<F>(emergency_larva_age), s.cell_age);
}

// Where a swarm has left, the first virgin may leave with a part of the bees; another takes her place.
template <class F>
BEEGARTH_INLINE void send_cast(Now<F>& now, Mask<F> hatches) {
  const Rates& r = now.rates;
  if (!now.day.swarm_weather || !any_of(hatches)) return;
  const Mask<F> goes = hatches & above(now.bees, r.cast_min_bees) & below(now.luck.swarm, r.cast_odds);
  if (!any_of(goes)) return;
  leave_with_queen(now, goes, all<F>(r.cast_share));
  note_event(now, Event::cast, goes);
}

// Virgins emerge where no queen of a swarm that has not left forbids it.
template <class F>
BEEGARTH_INLINE void hatch_queen(Now<F>& now, Succession<F>& s) {
  const Mask<F> due = above_zero(s.cells) & above(s.cell_age, cell_emerging_age - 0.5F) & now.is(row::alive);
  const Mask<F> hatches = due & !(s.queen & now.is(row::cells_are_swarm));
  send_cast(now, hatches & now.is(row::cells_are_swarm));
  s.queen = s.queen | hatches;
  s.mated = s.mated & !hatches;
  s.clock = only(!hatches, s.clock);
  s.cells = only(!hatches, s.cells);
  s.cell_age = only(!hatches, s.cell_age);
  now.put_where(hatches, row::cells_are_swarm, F{});
  now.put_where(hatches, row::caged, F{});
  now.put_where(hatches, row::queen_age, F{});
  now.put_where(hatches, row::vigour, now.luck.laying * 0.1F + 1.0F);
}

// Virgins fly on fit days, come back mated or do not come back.
template <class F>
BEEGARTH_INLINE void mate_queen(Now<F>& now, Succession<F>& s) {
  if (!now.day.mating_weather) return;
  const Mask<F> flies = s.queen & !s.mated & above(s.clock, virgin_mature_days - 0.5F) &
                        below(s.clock, virgin_too_old_days) & !now.is(row::caged);
  const Mask<F> mates = flies & below(now.luck.queen, now.day.mates_below);
  const Mask<F> lost = flies & !mates & below(now.luck.queen, now.rates.mating_odds_per_day);
  s.mated = s.mated | mates;
  s.clock = only(!mates, s.clock);
  s.queen = s.queen & !lost;
  s.lost = s.lost | lost;
}

// Queens fail or are superseded, the oftener the older; the colony sees to the next one. On most days nothing
// of this happens to any of the members.
template <class F>
BEEGARTH_INLINE void change_queen(Now<F>& now) {
  const Rates& r = now.rates;
  const F one = all<F>(1.0F);
  Succession<F> s{.queen = now.is(row::queen),
                  .mated = now.is(row::mated),
                  .lost = {},
                  .clock = now.get(row::queen_clock),
                  .cells = now.get(row::cells),
                  .cell_age = {}};
  s.clock += flag(s.queen);
  const F years = queen_years(now) + r.queen_age_from_years;
  const Mask<F> old_queen = s.queen & s.mated;
  const F fails = years * r.queen_fails_per_day;
  s.lost = old_queen & less(now.luck.queen, fails);
  const Mask<F> supersedes =
      old_queen & below(s.cells, 1.0F) & less(one - years * now.day.supersedes, now.luck.queen);
  now.add(row::queen_age, one);
  const Mask<F> unsettled = above_zero(s.cells) | (now.is(row::alive) & !old_queen);
  if (any_of(unsettled | s.lost | supersedes)) {
    // Some of those that fail stay, with no sperm left: they lay drones and keep others from being raised.
    const Mask<F> spent = s.lost & less(now.luck.queen, fails * r.queen_fails_as_drone_layer);
    const Mask<F> gone = s.queen & !s.mated & above(s.clock, virgin_too_old_days) &
                         below(now.luck.queen, r.drone_layer_lost_per_day);
    s.lost = s.lost | gone;
    s.queen = s.queen & (spent | !s.lost);
    s.mated = s.mated & !spent;
    s.clock = pick(spent, all<F>(virgin_too_old_days + 1), s.clock);
    s.cells += only(supersedes, all<F>(r.supersede_cells));
    s.cell_age = only(!supersedes, now.get(row::cell_age));
    raise_queen(now, s);
    hatch_queen(now, s);
    mate_queen(now, s);
    s.clock = only(s.queen, s.clock);
    now.put(row::queen, flag(s.queen));
    now.put(row::mated, flag(s.mated & s.queen));
    now.put_where(!s.queen, row::caged, F{});
    now.put(row::cells, s.cells);
    now.put(row::cell_age, s.cell_age);
    note_event(now, Event::queen_loss, s.lost);
    note_event(now, Event::supersedure, supersedes);
  }
  now.put(row::queen_clock, s.clock);
}

}  // namespace beegarth::colony
