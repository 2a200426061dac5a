// Private. The stages of a day that concern luck and bees.
#pragma once

#include "colony/now.hpp"

namespace beegarth::colony {

// Luck lasts: each score keeps a part of what it was yesterday.
template <class F>
BEEGARTH_INLINE void turn_luck(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = now.rates;
  now.put(row::luck_laying, now.get(row::luck_laying) * r.vigour_keeps + now.luck.laying * d.laying_step);
  now.put(row::luck_forage, now.get(row::luck_forage) * r.forage_keeps + now.luck.forage * d.forage_step);
  now.put(row::luck_mites, now.get(row::luck_mites) * r.mite_keeps + now.luck.mites * d.mite_step);
}

// The mothers that entered the cells that open today come out with their young. Returns the share of worker
// cells with one mite or more, mites entering at random.
template <class F>
BEEGARTH_INLINE F mites_emerge(Now<F>& now, F worker_cells, F drone_cells) {
  const F mothers = now.get(now.day.hands.worker_mites);
  const F drone_mothers = now.get(now.day.hands.drone_mites);
  if (!any_of(above_zero(mothers + drone_mothers))) return F{};
  const Rates& r = now.rates;
  const F one = all<F>(1.0F);
  const F cells = most(worker_cells, one);
  const F drones = most(drone_cells, one);
  // Of m mothers in c cells come m * reproduction / (1 + crowding * m / c).
  now.emerged_mites =
      mothers * cells / (cells + mothers * r.mite_crowding) *
          most(now.trait(Trait::mite_reproduction) + now.day.mite_young_more, F{}) +
      drone_mothers * drones / (drones + drone_mothers * r.mite_crowding) * r.mite_reproduction_drone;
  return one - exp_minus(mothers / cells);
}

// The oldest workers, drones and mites under cappings come out; the youngest hive bees make room for them.
template <class F>
BEEGARTH_INLINE void emerge(Now<F>& now) {
  const Day& d = now.day;
  const F cells = now.get(d.hands.worker[0]);
  const F drone_cells = now.get(d.hands.drone_youngest);
  const F infested = mites_emerge(now, cells, drone_cells);
  const F born = cells - cells * infested * now.rates.infested_brood_dies;
  F winter{};
  if (d.lengthening) {  // counted anew from the next autumn on
    now.put(row::winter_reared, F{});
    now.put(row::winter_reared_infested, F{});
  } else if (d.winter_share > 0) {
    winter = born * d.winter_share;
    const F harmed = winter * infested;
    now.add(row::winter_reared, winter);
    now.add(row::winter_reared_infested, harmed);
    now.add(row::winter, winter - harmed);
    now.add(row::winter_harmed, harmed);
  }
  now.add(row::drones, drone_cells);
  now.add(row::old_hive, now.get(d.hands.hive[0]));
  now.put(d.hands.hive[0], born - winter);
  now.evening.hive += born - winter;
  now.put(row::emerged_today, born);
  // Their cells are free until the queen lays.
  now.put(d.hands.worker[0], F{});
  now.put(d.hands.drone_youngest, F{});
}

// Counts adults, brood and food as the morning finds them.
template <class F>
BEEGARTH_INLINE void count(Now<F>& now) {
  now.foragers = now.get(row::foragers);
  now.winter = now.get(row::winter) + now.get(row::winter_harmed);
  now.bees = now.evening.hive + now.foragers + now.winter;
  now.stores = now.get(row::stores);
  now.nectar = now.get(row::nectar);
  now.pollen = now.get(row::pollen);

  if (now.brood_for.worker > 0) {
    --now.brood_for.worker;
    F larvae{};
#pragma GCC unroll 8
    for (int age = egg_days; age < worker_capping_age; ++age) {
      larvae += now.get(now.day.hands.worker[static_cast<std::size_t>(age)]);
    }
    now.larvae = larvae;
    now.brood = now.template sum<worker_days>(row::worker_brood);
  }
  if (now.brood_for.drone > 0) {
    --now.brood_for.drone;
    now.drone_brood = now.template sum<drone_days>(row::drone_brood);
  }
}

// Hive bees die slowly and leave for the field by age, the more the fewer foragers there are (social
// inhibition of Khoury et al. 2011). Returns those that leave.
template <class F>
BEEGARTH_INLINE F age_hive_bees(Now<F>& now, F burden, F recruit) {
  const Rates& r = now.rates;
  const Leaving& leaving = now.day.leaving;
  const F keep = all<F>(1.0F - r.hive_loss_per_day) - burden;
  const F keep_recruited = keep * recruit;
  const F left = now.evening.for_field * keep_recruited;
  Parts<F> hive;
  Parts<F> for_field;
  static_assert(hive_ages % 4 == 0);
  std::size_t age = 0;
  for (; age + 4 < leaving.first; age += 4) {  // too young for the field, today and tomorrow
    for (std::size_t k = 0; k < 4; ++k) {
      const int at = now.day.hands.hive[age + k];
      const F bees = now.get(at) * keep;
      now.put(at, bees);
      hive.part[k] += bees;
    }
  }
  for (; age < hive_ages; age += 4) {
    for (std::size_t k = 0; k < 4; ++k) {
      const int at = now.day.hands.hive[age + k];
      const F bees = now.get(at) * (keep - keep_recruited * leaving.share[age + k]);
      now.put(at, bees);
      hive.part[k] += bees;
      for_field.part[k] += bees * leaving.share[age + k + 1];
    }
  }
  const F old = now.get(row::old_hive) * (all<F>(1.0F - r.old_hive_loss_per_day) - burden);
  const F old_left = old * recruit;
  now.put(row::old_hive, old - old_left);
  now.evening = {hive.sum() + (old - old_left), for_field.sum()};
  return left + old_left;
}

// Winter bees die slowly until they must work again: they wear out by rearing brood and flying for it.
template <class F>
BEEGARTH_INLINE void age_winter_bees(Now<F>& now, F burden, F brood_per_bee) {
  if (!any_of(above_zero(now.winter))) return;
  const float idle = now.day.winter_idle_work;
  const F rearing = least(brood_per_bee, all<F>(1.0F)) * (1.0F - idle) + idle;
  const F loss = now.trait(Trait::winter_loss) + rearing * now.day.winter_work_loss + burden;
  F harmed = now.get(row::winter_harmed);
  if (any_of(above_zero(harmed))) {
    harmed = harmed * exp_minus(loss * now.rates.harmed_winter_loss_times);
    now.put(row::winter_harmed, harmed);
  }
  const F sound = now.get(row::winter) * exp_minus(loss);
  now.put(row::winter, sound);
  now.winter = sound + harmed;
}

// Bees die, foragers by the hour, all of them the faster the more mites there are; hive bees become foragers.
template <class F>
BEEGARTH_INLINE void age_bees(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = now.rates;
  const F before = now.bees;
  const F one = all<F>(1.0F);
  const F per_bee = one / most(before, one);
  now.per_bee = per_bee;
  const F burden = least(now.get(row::mites) * per_bee, one) * r.mite_burden_loss_per_day;
  const F recruit = most(all<F>(d.recruit_most) - now.foragers * per_bee * d.recruit_checked, F{});
  const F lost = burden + r.forager_rest_loss_per_day + now.trait(Trait::forager_loss) * d.flight_hours;
  const F stay = now.foragers * exp_minus(lost);
  age_winter_bees(now, burden, now.brood * per_bee);
  now.foragers = stay + age_hive_bees(now, burden, recruit);
  now.put(row::foragers, now.foragers);
  now.scale(row::drones, all<F>(d.drones_keep));
  now.nurses = now.evening.hive + now.winter;
  now.bees = now.nurses + now.foragers;
  now.died = before - now.bees;
}

}  // namespace beegarth::colony
