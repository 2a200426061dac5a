// Private. Some days of some blocks of members: the stages in the order of the day.
#pragma once

#include "colony/step_bees.hpp"
#include "colony/step_food.hpp"
#include "colony/step_mites.hpp"
#include "colony/step_queen.hpp"

namespace beegarth::colony {

// A colony that is too small ends: it stays as it is, without bees, brood or mites, and never comes back.
template <class F>
BEEGARTH_INLINE void bury(Now<F>& now, Mask<F> ended) {
  now.put(row::died_today, now.died + only(ended, now.bees));
  for (int r = 0; r < row::eggs_today; ++r) {
    const bool leftovers = r == row::stores || r == row::nectar || r == row::pollen ||
                           r == row::undrawn_nest || r == row::undrawn_super;
    if (!leftovers) now.put_where(ended, r, F{});
  }
  now.put_where(ended, row::alive, F{});
  now.evening = {only(!ended, now.evening.hive), only(!ended, now.evening.for_field)};
  note_event(now, Event::death, ended);
}

// Left without food on a day fit to fly, a colony may go all together.
template <class F>
BEEGARTH_INLINE void abscond(Now<F>& now) {
  if (!now.day.swarm_weather) return;
  const Mask<F> empty = below(now.stores + now.nectar, now.rates.abscond_stores_kg) & now.is(row::alive);
  if (!any_of(empty)) return;
  const Mask<F> goes = empty & less(all<F>(1.0F - now.rates.abscond_per_day), now.luck.swarm);
  if (!any_of(goes)) return;
  now.left = now.left + only(goes, now.bees);
  now.bees = only(!goes, now.bees);
  note_event(now, Event::absconding, goes);
}

template <class F>
BEEGARTH_INLINE void close_day(Now<F>& now) {
  abscond(now);
  now.put(row::died_today, now.died);
  now.put(row::left_today, now.left);
  const Mask<F> ended = now.is(row::alive) & !above(now.bees, now.rates.too_few_bees);
  if (any_of(ended)) bury(now, ended);
}

template <class F>
BEEGARTH_INLINE void step_members(float* at, const Day& day, const Luck<F>& luck, Evening<F>& evening,
                                  BroodLeft& brood_for) {
  Now<F> now{
      .at = at, .day = day, .rates = *day.rates, .luck = luck, .evening = evening, .brood_for = brood_for};
  turn_luck(now);
  emerge(now);
  count(now);
  age_bees(now);
  bring_home(now);
  eat(now);
  be_robbed(now);
  draw_comb(now);
  put_away(now);
  look_at_queen(now);
  lay(now);
  mites_enter(now);
  treat(now);
  prepare_swarm(now);
  swarm(now);
  change_queen(now);
  close_day(now);
  evening = now.evening;
}

// Blocks that live through the same days. ids: of the noise, one a member, sixteen to a block.
struct Stretch {
  Block* blocks = nullptr;
  const std::uint32_t* ids = nullptr;
  int block_count = 0;
  const Day* days = nullptr;
  int day_count = 0;
  std::array<std::uint32_t, 2> luck_key{};
};

// So many blocks go through all the days before the next ones do: together they fit the first-level cache,
// and what one has to wait for is filled with work on the other.
inline constexpr int blocks_together = 2;

template <class F>
BEEGARTH_INLINE void step_stretch(const Stretch& s) {
  constexpr int dice_a_block = lanes / Lane<F>::width;
  if (s.day_count == 0) return;
  const LuckKeys keys(s.luck_key, static_cast<std::uint32_t>(Purpose::daily_noise));
  Dice<F> dice[blocks_together * dice_a_block];
  Evening<F> evening[blocks_together * dice_a_block];
  BroodLeft brood_for[blocks_together * dice_a_block];
  for (int first = 0; first < s.block_count; first += blocks_together) {
    const int left = s.block_count - first;
    const int pieces = (left < blocks_together ? left : blocks_together) * dice_a_block;
    auto* const rows = reinterpret_cast<float*>(s.blocks + first);
    const auto place = [&](int piece) {
      return rows + piece / dice_a_block * (row::count * lanes) + piece % dice_a_block * Lane<F>::width;
    };
    for (int p = 0; p < pieces; ++p) {
      dice[p].take_up(keys, s.ids + first * lanes + p * Lane<F>::width);
      evening[p] = hive_at_evening<F>(place(p), s.days[0], 1);
      brood_for[p] = s.day_count > drone_days ? brood_left<F>(place(p)) : BroodLeft{};
    }
    for (int d = 0; d < s.day_count; ++d) {
      const Day& day = s.days[d];
      const LuckDay luck = luck_day(keys, static_cast<std::uint32_t>(static_cast<std::int32_t>(day.number)));
      for (int p = 0; p < pieces; ++p)
        step_members<F>(place(p), day, dice[p].roll(keys, luck), evening[p], brood_for[p]);
    }
  }
}

// The same step for each instruction set, and one lane at a time. All give the same bits.
using Step = void (*)(const Stretch&);
void step_plain(const Stretch& stretch);
void step_four(const Stretch& stretch);
void step_eight(const Stretch& stretch);    // only where has_eight()
void step_sixteen(const Stretch& stretch);  // only where has_sixteen()
bool has_eight();
bool has_sixteen();
Step best_step();

}  // namespace beegarth::colony
