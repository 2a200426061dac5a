// Private. The stages of a day that concern mites.
#pragma once

#include "colony/now.hpp"

namespace beegarth::colony {

// Mites on bees enter the cells that are capped today: the faster the more cells per bee, drone cells by
// preference.
template <class F>
BEEGARTH_INLINE void mites_enter(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = now.rates;
  const F one = all<F>(1.0F);
  const F drones = now.get(d.hands.drone_capped) * r.drone_cell_preference;
  const F cells = now.get(d.hands.worker[worker_capping_age]) + drones;
  const F mites = now.get(row::mites);
  const F brood_share = now.brood / (now.brood + r.mite_brood_half_cells);
  F entering{};
  F into_drones{};
  if (any_of(above_zero(cells))) {
    const F plenty =
        least(cells / (most(now.bees, one) * r.usual_cells_per_bee), all<F>(r.cells_per_bee_most));
    const F rate = now.trait(Trait::mite_invasion) * plenty * most(now.get(row::luck_mites) + 1.0F, F{});
    entering = mites * (one - exp_minus(rate));
    into_drones = entering * (drones / most(cells, one));
  }
  now.put(d.hands.worker_mites, entering - into_drones);
  now.put(d.hands.drone_mites, into_drones);

  // Without brood mites die with the bees that carry them: no reason was found to give them other death rates
  // (cold-climate winter study, 10 colonies, 57 degrees north).
  const F broodless = one - brood_share;
  const F own = all<F>(r.mite_loss_per_day) + broodless * (r.mite_winter_loss_per_day - r.mite_loss_per_day);
  const F stay = one - most(own, broodless * now.died * now.per_bee);
  F come = now.emerged_mites;
  if (d.mites_in > 0) come += only(now.is(row::alive), now.trait(Trait::mite_immigration) * d.mites_in);
  now.put(row::mites, least((mites - entering) * stay + come, now.bees * r.mites_per_bee_most));
  now.put(row::mites_emerged_today, now.emerged_mites);
}

// What a treatment kills today, on bees and under cappings.
template <class F>
BEEGARTH_INLINE void treat(Now<F>& now) {
  const Day& d = now.day;
  const F effect = now.trait(Trait::treatment_effect);
  if (d.kill_on_bees > 0) now.scale(row::mites, exp_minus(effect * d.kill_on_bees));
  if (d.kill_under_cappings > 0) {
    const F keep = exp_minus(effect * d.kill_under_cappings);
    for (int i = 0; i < worker_capped_days; ++i) now.scale(row::worker_mites + i, keep);
    for (int i = 0; i < drone_capped_days; ++i) now.scale(row::drone_mites + i, keep);
  }
}

}  // namespace beegarth::colony
