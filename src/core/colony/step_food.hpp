// Private. The stages of a day that concern room, food and comb.
#pragma once

#include "colony/now.hpp"

namespace beegarth::colony {

// What brood, honey and pollen leave free in the nest; what fits above it.
template <class F>
struct Room {
  F free_cells, free_super_kg, nest_kg;
  F homeless_kg;  // honey beyond the share of food in a nest that is still being drawn: it goes into comb
};

template <class F>
BEEGARTH_INLINE F drawn_nest_combs(const Now<F>& now) {
  return all<F>(now.day.nest_combs) - now.get(row::undrawn_nest);
}

template <class F>
BEEGARTH_INLINE Room<F> room_of(const Now<F>& now) {
  const Day& d = now.day;
  const F honey = now.stores + now.nectar;
  const F cap = most(all<F>(d.super_combs) - now.get(row::undrawn_super), F{}) * d.honey_kg_per_comb;
  const F super_kg = least(cap, most(honey - now.rates.nest_stores_kg, F{}));
  const F nest_cells = most(drawn_nest_combs(now), F{}) * d.cells_per_comb;
  const F nest_kg = honey - super_kg;
  const F all_food = nest_kg * d.cells_per_honey_kg + now.pollen * now.rates.pollen_cells_per_kg;
  const Mask<F> drawing = above_zero(now.get(row::undrawn_nest));
  const F food = pick(drawing, least(all_food, nest_cells * now.rates.new_nest_food_share), all_food);
  const F used = (now.brood + now.drone_brood * now.rates.drone_cell_room) + food;
  return {most(nest_cells - used, F{}), cap - super_kg, nest_kg,
          least((all_food - food) * d.honey_kg_per_cell, nest_kg)};
}

template <class F>
BEEGARTH_INLINE void bring_home(Now<F>& now) {
  const Day& d = now.day;
  if (d.nectar_kg == 0 && d.pollen_kg == 0) return;
  const F flyers = (now.foragers + now.winter * now.rates.winter_work_share) * 1e-4F;
  const F zeal = flyers * now.trait(Trait::collecting);
  const F nectar = zeal * most(now.get(row::luck_forage) + 1.0F, F{}) * d.nectar_kg;
  // Nectar fills what is free above and a part of what is free in the nest.
  const Room<F> room = room_of(now);
  const F below = most(all<F>(d.nest_honey_kg) - room.nest_kg, F{});
  const F fits = room.free_super_kg + least(room.free_cells * d.honey_kg_per_free_cell, below);
  now.nectar = now.nectar + least(nectar, fits);
  // Pollen is fetched by need, whatever the flow (from memory: Fewell & Winston 1992): it has no luck of its
  // own.
  now.pollen = least(now.pollen + zeal * d.pollen_kg, all<F>(now.rates.pollen_store_max_kg));
}

// What cannot be fed dies: open brood first, then bees of every kind alike. starving: share of the need not
// met.
template <class F>
BEEGARTH_INLINE void starve(Now<F>& now, F starving) {
  const F one = all<F>(1.0F);
  const F keep = one - starving * now.rates.starving_loss_per_day;
  const F brood_keep = one - starving * 0.5F;
  for (int i = 0; i < hive_ages; ++i) now.scale(row::hive + i, keep);
  for (const int pool : {+row::old_hive, +row::foragers, +row::winter, +row::winter_harmed, +row::drones}) {
    now.scale(pool, keep);
  }
  now.evening = hive_at_evening<F>(now.at, now.day, 0);
  for (int age = egg_days; age < worker_capping_age; ++age) {
    now.scale(now.day.hands.worker[static_cast<std::size_t>(age)], brood_keep);
  }
  now.died = now.died + now.bees * (one - keep);
  now.bees = now.bees * keep;
  now.nurses = now.nurses * keep;
  note_event(now, Event::starvation, above(starving, 0.5F) & now.is(row::alive));
}

// Eats from the nectar, then from the stores. What cannot be met starves larvae and bees.
template <class F>
BEEGARTH_INLINE void eat(Now<F>& now) {
  const Day& d = now.day;
  const F larvae = now.larvae + now.drone_brood * now.rates.drone_larva_share;
  const F heat = only(now.is(row::alive), now.trait(Trait::heat_use) * d.heat_honey_kg);
  const F need = now.bees * d.bee_honey_kg + larvae * d.larva_honey_kg + heat;
  const F from_nectar = least(need, now.nectar);
  const F from_stores = least(need - from_nectar, now.stores);
  const F missing = need - from_nectar - from_stores;
  const F ripe = (now.nectar - from_nectar) * now.rates.ripening_per_day;
  now.nectar = now.nectar - from_nectar - ripe;
  now.stores = now.stores - from_stores + ripe;
  now.pollen_for_brood = now.pollen;
  now.pollen = most(now.pollen - larvae * d.larva_pollen_kg, F{});
  if (any_of(above_zero(missing))) starve(now, missing / most(need, all<F>(1e-6F)));
}

// Stronger neighbours carry off the stores of a weak colony in a dearth.
template <class F>
BEEGARTH_INLINE void be_robbed(Now<F>& now) {
  if (!now.day.robbers) return;
  const Mask<F> weak = below(now.bees, now.rates.rob_below_bees) & above_zero(now.stores);
  if (!any_of(weak)) return;
  const F weakness = all<F>(1.0F) - now.bees * (1.0F / now.rates.rob_below_bees);
  const F taken = only(weak, least(weakness * now.day.rob_kg, now.stores));
  now.stores = now.stores - taken;
  note_event(now, Event::robbing, above(taken, 0.05F));
}

template <class F>
BEEGARTH_INLINE void draw_comb(Now<F>& now) {
  if (now.day.draw_combs_per_bee == 0) return;
  const F undrawn_nest = now.get(row::undrawn_nest);
  const F undrawn_super = now.get(row::undrawn_super);
  if (!any_of(above_zero(undrawn_nest + undrawn_super))) return;
  // Nectar in hand, from the field or the feeder, makes wax, and honey for which there is no comb yet.
  const F homeless = least(room_of(now).homeless_kg, now.stores);
  const F flow = least(most(now.nectar, homeless) / now.rates.flow_kg_per_day, all<F>(1.0F));
  const F built = now.bees * now.day.draw_combs_per_bee * flow;
  const F nest = least(built, undrawn_nest);
  const F above = least(built - nest, undrawn_super);
  now.put(row::undrawn_nest, undrawn_nest - nest);
  now.put(row::undrawn_super, undrawn_super - above);
  const F wax = (nest + above) * now.rates.comb_honey_kg;
  const F from_nectar = least(wax, now.nectar);
  now.nectar = now.nectar - from_nectar;
  now.stores = now.stores - least(wax - from_nectar, homeless);
}

template <class F>
BEEGARTH_INLINE void put_away(Now<F>& now) {
  now.put(row::stores, now.stores);
  now.put(row::nectar, now.nectar);
  now.put(row::pollen, now.pollen);
}

}  // namespace beegarth::colony
