// Private. The stages of a day that concern bees, brood and food.
#pragma once

#include "colony/now.hpp"

namespace beegarth::colony {

// Luck lasts: each score keeps a part of what it was yesterday.
template <class F>
BEEGARTH_INLINE void turn_luck(Now<F>& now) {
  const Day& d = now.day;
  now.put(row::luck_laying,
          now.get(row::luck_laying) * d.rates.vigour_keeps + now.luck.laying * d.laying_step);
  now.put(row::luck_forage,
          now.get(row::luck_forage) * d.rates.forage_keeps + now.luck.forage * d.forage_step);
  now.put(row::luck_mites, now.get(row::luck_mites) * d.rates.mite_keeps + now.luck.mites * d.mite_step);
}

// The oldest workers, drones and mites under cappings come out; the youngest hive bees make room for them.
template <class F>
BEEGARTH_INLINE void emerge(Now<F>& now) {
  const Day& d = now.day;
  const F cells = now.get(worker_row(d.turn, 0));
  const F mothers = now.get(worker_mites_row(d.turn, 0));
  const F drone_cells = now.get(drone_row(d.turn, 0));
  const F drone_mothers = now.get(drone_mites_row(d.turn, 0));
  const F one = all<F>(1.0F);
  const F load = mothers / most(cells, one);
  const F drone_load = drone_mothers / most(drone_cells, one);
  const F infested = one - exp_minus(load);  // cells with one mite or more, mites entering at random
  now.emerged_mites =
      mothers * now.trait(Trait::mite_reproduction) / (one + load * d.rates.mite_crowding) +
      drone_mothers * d.rates.mite_reproduction_drone / (one + drone_load * d.rates.mite_crowding);
  const F born = cells * (one - infested * d.rates.infested_brood_dies);
  const F winter = born * d.winter_share;
  now.scale(row::winter_reared, flag<F>(d.lengthening == 0));
  now.scale(row::winter_reared_infested, flag<F>(d.lengthening == 0));
  now.add(row::winter_reared, winter);
  now.add(row::winter_reared_infested, winter * infested);
  now.add(row::winter, winter * (one - infested));
  now.add(row::winter_harmed, winter * infested);
  now.add(row::drones, drone_cells);
  now.add(row::old_hive, now.get(hive_row(d.turn, 0)));
  now.put(hive_row(d.turn, 0), born - winter);
  now.put(row::emerged_today, born);
}

// Counts the adults as the morning finds them.
template <class F>
BEEGARTH_INLINE void count_bees(Now<F>& now) {
  F hive = now.get(row::old_hive);
  for (int i = 0; i < hive_ages; ++i) hive = hive + now.get(row::hive + i);
  now.hive = hive;
  now.foragers = now.get(row::foragers);
  now.winter = now.get(row::winter) + now.get(row::winter_harmed);
  now.bees = now.hive + now.foragers + now.winter;
}

template <class F>
BEEGARTH_INLINE void count_brood(Now<F>& now) {
  const std::int32_t turn = now.day.turn;
  // The hand still points at the cohort that came out this morning: age 0 is not laid yet.
  F young{};
  for (int age = 1; age <= 4; ++age) young = young + now.get(worker_row(turn, age));
  F larvae = now.get(worker_row(turn, 3)) + now.get(worker_row(turn, 4));
  for (int age = 5; age < worker_capping_age; ++age) larvae = larvae + now.get(worker_row(turn, age));
  F brood = now.get(worker_row(turn, 1)) + now.get(worker_row(turn, 2)) + larvae;
  for (int age = worker_capping_age; age < worker_days; ++age) brood = brood + now.get(worker_row(turn, age));
  F drones{};
  for (int age = 1; age < drone_days; ++age) drones = drones + now.get(drone_row(turn, age));
  now.young_brood = young;
  now.larvae = larvae;
  now.brood = brood;
  now.drone_brood = drones;
}

// Bees die: hive bees slowly, foragers by the hour, winter bees slowly until they must work again. Hive bees
// leave for the field by age, the more the fewer foragers there are (social inhibition of Khoury et al.
// 2011).
template <class F>
BEEGARTH_INLINE void age_bees(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = d.rates;
  const F one = all<F>(1.0F);
  const F bees = most(now.bees, one);
  const F burden = least(now.get(row::mites) / bees, one) * r.mite_burden_loss_per_day;
  const F keep = one - burden - r.hive_loss_per_day;
  const F old_keep = one - burden - r.old_hive_loss_per_day;
  const F recruit =
      most(all<F>(r.recruit_max_per_day) - now.foragers / bees * r.social_inhibition_per_day, F{}) *
      d.recruiting;
  F leaving{};
  F staying{};
  for (int age = 0; age < hive_ages; ++age) {
    const int at = hive_row(d.turn, age);
    const F lives = now.get(at) * keep;
    const F leaves = lives * (recruit * d.leaving[static_cast<std::size_t>(age)]);
    now.put(at, lives - leaves);
    leaving = leaving + leaves;
    staying = staying + (lives - leaves);
  }
  const F old_lives = now.get(row::old_hive) * old_keep;
  const F old_leaves = old_lives * recruit;
  now.put(row::old_hive, old_lives - old_leaves);
  leaving = leaving + old_leaves;
  staying = staying + (old_lives - old_leaves);

  const F forager_keep =
      exp_minus(burden + r.forager_rest_loss_per_day + now.trait(Trait::forager_loss) * d.flight_hours);
  const F foragers = now.foragers * forager_keep + leaving;
  // Winter bees wear out by rearing brood and flying for it.
  const F rearing = clamp01(now.brood / bees) * 0.85F + 0.15F;
  const F winter_loss = now.trait(Trait::winter_loss) +
                        rearing * (r.winter_work_loss_per_flight_hour * d.flight_hours) + burden;
  const F sound = now.get(row::winter) * exp_minus(winter_loss);
  const F harmed = now.get(row::winter_harmed) * exp_minus(winter_loss * r.harmed_winter_loss_times);
  now.put(row::foragers, foragers);
  now.put(row::winter, sound);
  now.put(row::winter_harmed, harmed);
  now.scale(row::drones,
            all<F>((1 - r.drone_loss_per_day) * (1 - r.drone_eviction_per_day * d.evict_drones)));

  const F before = now.bees;
  now.hive = staying;
  now.foragers = foragers;
  now.winter = sound + harmed;
  now.nurses = now.hive + now.winter;
  now.bees = now.nurses + foragers;
  now.died = before - now.bees;
}

// Room: what brood, honey and pollen leave free in the nest; what fits above it.
template <class F>
struct Room {
  F nest_cells, free_cells, super_kg, free_super_kg;
};

template <class F>
BEEGARTH_INLINE Room<F> room_of(const Now<F>& now) {
  const Day& d = now.day;
  Room<F> room;
  const F honey = now.get(row::stores) + now.get(row::nectar);
  const F cap = most(all<F>(d.super_combs) - now.get(row::undrawn_super), F{}) * d.honey_kg_per_comb;
  room.super_kg = least(cap, most(honey - d.rates.nest_stores_kg, F{}));
  room.free_super_kg = cap - room.super_kg;
  room.nest_cells = most(all<F>(d.nest_combs) - now.get(row::undrawn_nest), F{}) * d.cells_per_comb;
  const F honey_cells = (honey - room.super_kg) * (d.cells_per_comb / d.honey_kg_per_comb);
  const F used =
      now.brood + now.drone_brood * 1.4F + honey_cells + now.get(row::pollen) * d.rates.pollen_cells_per_kg;
  room.free_cells = most(room.nest_cells - used, F{});
  return room;
}

template <class F>
BEEGARTH_INLINE void bring_home(Now<F>& now) {
  const Day& d = now.day;
  const F flyers = (now.foragers + now.winter * d.rates.winter_work_share) * 1e-4F;
  const F zeal = flyers * now.trait(Trait::collecting) * most(all<F>(1.0F) + now.get(row::luck_forage), F{});
  const Room<F> room = room_of(now);
  // Nectar fills what is free above and up to half of what is free in the nest.
  const F fits = room.free_super_kg + room.free_cells * (0.5F * d.honey_kg_per_comb / d.cells_per_comb);
  now.income = least(zeal * d.nectar_kg, fits);
  now.add(row::nectar, now.income);
  now.put(row::pollen, least(now.get(row::pollen) + zeal * d.pollen_kg, all<F>(d.rates.pollen_store_max_kg)));
}

// What cannot be fed dies: open brood first, then bees of every kind alike.
template <class F>
void starve(Now<F>& now) {
  const F keep = all<F>(1.0F) - now.starving * now.day.rates.starving_loss_per_day;
  const F brood_keep = all<F>(1.0F) - now.starving * 0.5F;
  for (int i = 0; i < hive_ages; ++i) now.scale(row::hive + i, keep);
  for (const int pool : {+row::old_hive, +row::foragers, +row::winter, +row::winter_harmed, +row::drones}) {
    now.scale(pool, keep);
  }
  for (int age = egg_days; age < worker_capping_age; ++age)
    now.scale(worker_row(now.day.turn, age), brood_keep);
  now.died = now.died + now.bees * (all<F>(1.0F) - keep);
  now.bees = now.bees * keep;
  now.nurses = now.nurses * keep;
}

// Eats from the nectar, then from the stores. What cannot be met starves larvae and bees.
template <class F>
BEEGARTH_INLINE void eat(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = d.rates;
  const F work =
      all<F>(least(d.flight_hours / 6, 1.0F) * r.adult_work_honey_g_per_day + r.adult_honey_g_per_day);
  const F larvae =
      now.larvae + now.drone_brood * 0.45F;  // of drone brood 7 of 24 days are larvae that eat 1.65 times
  const F heat = all<F>(r.colony_heat_honey_g_per_day * d.cold) * now.get(row::alive);
  const F need = (now.bees * work + larvae * r.larva_honey_g_per_day + heat) * 1e-3F;
  const F nectar = now.get(row::nectar);
  const F stores = now.get(row::stores);
  const F from_nectar = least(need, nectar);
  const F from_stores = least(need - from_nectar, stores);
  const F missing = (need - from_nectar - from_stores) / most(need, all<F>(1e-6F));
  const F ripe = (nectar - from_nectar) * r.ripening_per_day;
  now.put(row::nectar, nectar - from_nectar - ripe);
  now.put(row::stores, stores - from_stores + ripe);

  const F pollen = now.get(row::pollen);
  now.put(row::pollen, most(pollen - larvae * (r.larva_pollen_g_per_day * 1e-3F), F{}));
  now.pollen_share = pollen / (pollen + r.pollen_half_kg);

  now.starving = missing;
  if (any_of(missing)) starve(now);
}

template <class F>
BEEGARTH_INLINE void draw_comb(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = d.rates;
  // Nectar in hand, from the field or the feeder, makes wax.
  const F flow = clamp01(now.get(row::nectar) / r.flow_kg_per_day);
  const F built = now.bees * (d.draw_weather * r.draw_combs_per_day / 20000.0F) * flow;
  const F nest = least(built, now.get(row::undrawn_nest));
  const F above = least(built - nest, now.get(row::undrawn_super));
  now.put(row::undrawn_nest, now.get(row::undrawn_nest) - nest);
  now.put(row::undrawn_super, now.get(row::undrawn_super) - above);
  now.put(row::nectar, most(now.get(row::nectar) - (nest + above) * r.comb_honey_kg, F{}));
}

// 1 where a mated queen is free and laying.
template <class F>
BEEGARTH_INLINE F queen_lays(const Now<F>& now) {
  const F ready = below(all<F>(mated_to_laying_days) - 0.5F, now.get(row::queen_clock));
  return now.get(row::queen) * now.get(row::mated) * ready * (all<F>(1.0F) - now.get(row::caged));
}

template <class F>
BEEGARTH_INLINE F queen_lays_drones(const Now<F>& now) {
  const F late = below(all<F>(virgin_too_old_days), now.get(row::queen_clock));
  return now.get(row::queen) * (all<F>(1.0F) - now.get(row::mated)) * late *
         (all<F>(1.0F) - now.get(row::caged));
}

// The queen lays what season, warmth, nurses, pollen, care and room allow.
template <class F>
BEEGARTH_INLINE void lay(Now<F>& now) {
  const Day& d = now.day;
  const Rates& r = d.rates;
  const F one = all<F>(1.0F);
  const F nursed = now.nurses / (now.nurses + r.half_laying_bees);
  const F age = most(now.get(row::queen_age) * (1.0F / 365.0F) - 1.5F, F{});
  const F power = now.trait(Trait::laying_max) * now.get(row::vigour) *
                  most(one + now.get(row::luck_laying) - age * r.laying_falls_per_year, F{});
  const Room<F> room = room_of(now);
  now.free_cells = room.free_cells;
  const F care = most(now.nurses * r.care_cells_per_bee - now.brood, F{});
  const F limit = least(room.free_cells, care) * (1.0F / r.egg_wait_days);
  const F laying = queen_lays(now);
  const F eggs = least(power * nursed * now.pollen_share * d.laying, limit) * laying;
  const F males =
      now.bees / (now.bees + r.drone_half_bees) * (d.drones * r.drone_share) * eggs +
      least(all<F>(r.drone_layer_eggs_per_day * least(d.laying * 4, 1.0F)), limit) * queen_lays_drones(now);
  now.put(worker_row(d.turn, 0), eggs);
  now.put(drone_row(d.turn, 0), males);
  now.put(row::eggs_today, eggs);
  now.brood = now.brood + eggs;
  now.young_brood = now.young_brood + eggs;
}

}  // namespace beegarth::colony
