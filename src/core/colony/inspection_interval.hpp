// How long a colony in the swarm season may be left, and when the halves of a split are moved.
// Days after the egg: hatches 3, sealed 8, virgin out 16 (handbook page on swarm arithmetic).
#pragma once

#include <optional>

#include "base/date.hpp"

namespace beegarth::colony {

// Days until the next look must be over. An unclipped queen leaves when the first cell is sealed, so one
// missed egg gives seven days; a larva of known age gives what is left until it is sealed. A clipped queen is
// lost at that point, but the bees stay until a virgin emerges: ten days by custom.
constexpr int days_to_next_look(bool clipped, std::optional<int> oldest_larva_age_days) {
  constexpr int sealed_day = 8;
  constexpr int hatch_day = 3;
  if (!oldest_larva_age_days) return clipped ? 10 : sealed_day - 1;
  const int left = sealed_day - (hatch_day + *oldest_larva_age_days);
  const int until = clipped ? left + 2 : left;
  return until > 0 ? until : 0;
}

struct SplitDates {
  Date second_move;  // the moved brood goes to the other side of the old stand, before the virgin flies
  Date virgin_emerges;
};
// The classic split with a cell just sealed: moved on again after seven days, one before the virgin.
inline SplitDates split_dates(Date split_with_cells_just_sealed) {
  return {split_with_cells_just_sealed + 7, split_with_cells_just_sealed + 8};
}

}  // namespace beegarth::colony
