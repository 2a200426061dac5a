// Private. The stages of a day that concern mites.
#pragma once

#include "colony/now.hpp"

namespace beegarth::colony {

// Mites on bees enter the cells that are capped today: the faster the more cells per bee, drone cells by
// preference.
template <class F>
BEEGARTH_INLINE void mites_enter(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = d.rates;
  const F one = all<F>(1.0F);
  const F workers = now.get(worker_row(d.turn, worker_capping_age));
  const F drones = now.get(drone_row(d.turn, drone_capping_age)) * r.drone_cell_preference;
  const F cells = workers + drones;
  const F plenty = least(cells / (most(now.bees, one) * r.usual_cells_per_bee), all<F>(2.0F));
  const F rate = now.trait(Trait::mite_invasion) * plenty * most(one + now.get(row::luck_mites), F{});
  const F mites = now.get(row::mites);
  const F entering = mites * (one - exp_minus(rate));
  const F into_drones = entering * (drones / most(cells, one));
  now.put(worker_mites_row(d.turn, 0), entering - into_drones);
  now.put(drone_mites_row(d.turn, 0), into_drones);

  const F with_brood = now.brood / (now.brood + 1000.0F);
  const F loss =
      all<F>(r.mite_winter_loss_per_day) + with_brood * (r.mite_loss_per_day - r.mite_winter_loss_per_day);
  const F carried_in = now.trait(Trait::mite_immigration) * d.mites_in * now.get(row::alive);
  now.put(row::mites, (mites - entering) * (one - loss) + now.emerged_mites + carried_in);
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
