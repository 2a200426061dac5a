// Private. The stages of a day that concern queens, queen cells and swarms.
#pragma once

#include "colony/now.hpp"
#include "colony/step_bees.hpp"

namespace beegarth::colony {

template <class F>
BEEGARTH_INLINE void note_event(Now<F>& now, Event event, F happened) {
  const int at = row::first_event + static_cast<int>(event);
  now.put(at, least(now.get(at), pick(happened > F{}, all<F>(now.day.number), all<F>(never))));
}

// Swarm preparations start in a crowded nest in the season, with odds that rise with the age of the queen;
// they are given up with odds of their own, or when the weather has kept the swarm in until the virgins are
// due.
template <class F>
BEEGARTH_INLINE void prepare_swarm(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = d.rates;
  const F one = all<F>(1.0F);
  const F cells = now.get(row::cells);
  const F age = now.get(row::cell_age) + below(F{}, cells);
  const F nest_cells = most(all<F>(d.nest_combs) - now.get(row::undrawn_nest), one) * d.cells_per_comb;
  const F crowded = one - clamp01(now.free_cells / (nest_cells * r.crowded_free_share));
  const F full = clamp01(now.bees / most(d.bees_at_home, 1.0F) - 0.4F);
  const F old = least(now.get(row::queen_age) * (1.0F / 365.0F), all<F>(3.0F));
  const F inclined = now.trait(Trait::swarming) * (old * 0.5F + 0.5F) * (crowded * 0.7F + full) *
                     below(all<F>(r.swarm_min_bees), now.bees) * queen_lays(now) * below(cells, one);
  const F odds = one - exp_minus(inclined * (r.swarm_rate_per_day * d.swarm_season));
  const F starts = below(now.luck.swarm, odds);

  const F swarming = now.get(row::cells_are_swarm);
  const F open = below(age, all<F>(cell_sealed_age));
  const F tired = below(now.luck.swarm, all<F>(r.give_up_per_day)) * open;
  const F too_late = below(all<F>(cell_emerging_age) - 1.5F, age);
  const F gives_up = swarming * below(F{}, cells) * now.get(row::queen) * most(tired, too_late);
  const F goes_on = one - gives_up;
  now.put(row::cells, cells * goes_on + starts * r.swarm_cells);
  now.put(row::cell_age, age * goes_on * (one - starts));
  now.put(row::cells_are_swarm, swarming * goes_on * (one - starts) + starts);
  note_event(now, Event::swarm_preparation,
             now.get(row::cells_are_swarm) * below(all<F>(cell_charged_age) - 0.5F, now.get(row::cell_age)));
}

// A part of everything that can fly leaves with the queen.
template <class F>
BEEGARTH_INLINE void leave_with_queen(Now<F>& now, F goes, F share) {
  const F one = all<F>(1.0F);
  const F stays = one - goes * share;
  for (int i = 0; i < hive_ages; ++i) now.scale(row::hive + i, stays);
  for (const int pool : {+row::old_hive, +row::foragers, +row::winter, +row::winter_harmed, +row::mites}) {
    now.scale(pool, stays);
  }
  now.scale(row::drones, one - goes * 0.5F * share);
  const F leavers = now.bees * (one - stays);
  const F provisions = leavers * (now.day.rates.swarm_honey_g_per_bee * 1e-3F);
  now.put(row::stores, most(now.get(row::stores) - provisions, F{}));
  now.scale(row::queen, one - goes);
  now.left = now.left + leavers;
  now.bees = now.bees * stays;
}

// The prime swarm leaves on the first fit day once a cell is sealed.
template <class F>
BEEGARTH_INLINE void swarm(Now<F>& now) {
  const Day& d = now.day;
  const F sealed = below(all<F>(cell_sealed_age) - 0.5F, now.get(row::cell_age));
  const F goes = now.get(row::cells_are_swarm) * sealed * queen_lays(now) * d.swarm_weather;
  const F share = clamp01(all<F>(d.rates.swarm_share) + now.luck.forage * 0.05F);
  leave_with_queen(now, goes, share);
  note_event(now, Event::swarm, goes);
}

// Queens fail or are superseded, the oftener the older; a colony that finds itself without one raises another
// while it has brood young enough; virgins emerge, fly on fit days, come back or do not.
template <class F>
BEEGARTH_INLINE void change_queen(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = d.rates;
  const F one = all<F>(1.0F);
  F queen = now.get(row::queen);
  F mated = now.get(row::mated);
  F clock = now.get(row::queen_clock) + queen;
  F cells = now.get(row::cells);
  F cell_age = now.get(row::cell_age);
  F of_swarm = now.get(row::cells_are_swarm);
  const F luck = now.luck.queen;

  const F years = now.get(row::queen_age) * (1.0F / 365.0F) + 0.3F;
  const F fails = queen * mated * below(luck, years * r.queen_fails_per_day);
  const F supersedes =
      queen * mated * below(one - years * (r.supersede_per_day * d.laying), luck) * below(cells, one);
  queen = queen * (one - fails);
  cells = cells + supersedes * r.supersede_cells;
  cell_age = cell_age * (one - supersedes);

  const F can_raise =
      (one - queen) * below(cells, one) * below(all<F>(10.0F), now.young_brood) * now.get(row::alive);
  cells = cells + can_raise * r.emergency_cells;
  cell_age = cell_age * (one - can_raise) + can_raise * emergency_larva_age;

  const F hatches = below(F{}, cells) * below(all<F>(cell_emerging_age) - 0.5F, cell_age) *
                    now.get(row::alive) * (one - queen * of_swarm);
  queen = most(queen, hatches);
  mated = mated * (one - hatches);
  clock = clock * (one - hatches);
  cells = cells * (one - hatches);
  cell_age = cell_age * (one - hatches);
  of_swarm = of_swarm * (one - hatches);

  const F flies = queen * (one - mated) * below(all<F>(virgin_mature_days) - 0.5F, clock) *
                  below(clock, all<F>(virgin_too_old_days)) * d.mating_weather * (one - now.get(row::caged));
  const F mates = flies * below(luck, all<F>(r.mating_odds_per_day * r.mating_return_odds));
  const F lost = flies * (one - mates) * below(luck, all<F>(r.mating_odds_per_day));
  mated = most(mated, mates);
  clock = clock * (one - mates);
  queen = queen * (one - lost);

  now.put(row::queen_age, (now.get(row::queen_age) + one) * (one - hatches));
  const F new_vigour = one + now.luck.laying * 0.1F;
  now.put(row::vigour, now.get(row::vigour) * (one - hatches) + new_vigour * hatches);
  now.put(row::queen, queen);
  now.put(row::mated, mated * queen);
  now.scale(row::caged, queen * (one - hatches));
  now.put(row::queen_clock, clock * queen);
  now.put(row::cells, cells);
  now.put(row::cell_age, cell_age);
  now.put(row::cells_are_swarm, of_swarm);
  note_event(now, Event::queen_loss, most(fails, lost));
}

}  // namespace beegarth::colony
