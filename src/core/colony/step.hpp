// Private. One day of sixteen members: the stages in the order of the day.
#pragma once

#include "colony/step_bees.hpp"
#include "colony/step_mites.hpp"
#include "colony/step_queen.hpp"

namespace beegarth::colony {

// A colony that is too small ends: it stays as it is, without bees, brood or mites, and never comes back.
template <class F>
BEEGARTH_INLINE F close_day(Now<F>& now) {
  const F alive = now.get(row::alive);
  const F lives = alive * below(all<F>(now.day.rates.too_few_bees), now.bees);
  now.put(row::died_today, now.died);
  now.put(row::left_today, now.left);
  note_event(now, Event::starvation, alive * below(all<F>(0.5F), now.starving));
  note_event(now, Event::death, alive - lives);
  return alive - lives;  // 1 where it ended today
}

template <class F>
void bury(Now<F>& now, F ended) {
  F bees = now.bees * ended;
  now.add(row::died_today, bees);
  const F stays = all<F>(1.0F) - ended;
  for (int r = 0; r < row::eggs_today; ++r) {
    const bool leftovers = r == row::stores || r == row::nectar || r == row::pollen ||
                           r == row::undrawn_nest || r == row::undrawn_super;
    if (!leftovers) now.scale(r, stays);
  }
  now.put(row::alive, now.get(row::alive) * stays);
}

template <class F>
BEEGARTH_INLINE void step_members(float* at, const Day& day, const Luck<F>& luck) {
  Now<F> now{.at = at, .day = day, .luck = luck};
  turn_luck(now);
  emerge(now);
  count_bees(now);
  count_brood(now);
  age_bees(now);
  bring_home(now);
  eat(now);
  draw_comb(now);
  lay(now);
  mites_enter(now);
  treat(now);
  prepare_swarm(now);
  swarm(now);
  change_queen(now);
  const F ended = close_day(now);
  if (any_of(ended)) bury(now, ended);
}

template <class F>
void step_block(Block& block, const Day& day, const std::uint32_t* ids) {
  constexpr auto purpose = static_cast<std::uint32_t>(Purpose::daily_noise);
  const auto number = static_cast<std::uint32_t>(static_cast<std::int32_t>(day.number));
  const LuckWords words = luck_words<F>(ids, number, purpose, day.luck_key[0], day.luck_key[1]);
  for (int lane = 0; lane < lanes; lane += Lane<F>::width) {
    step_members<F>(&block.rows[0][lane], day, luck_of<F>(words, lane));
  }
}

// The same step for each instruction set, and one lane at a time. All give the same bits.
using StepBlock = void (*)(Block&, const Day&, const std::uint32_t*);
void step_block_plain(Block& block, const Day& day, const std::uint32_t* ids);
void step_block_four(Block& block, const Day& day, const std::uint32_t* ids);
void step_block_eight(Block& block, const Day& day, const std::uint32_t* ids);  // only where has_eight()
bool has_eight();
StepBlock best_step();

}  // namespace beegarth::colony
