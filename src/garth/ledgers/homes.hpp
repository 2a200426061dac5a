// What a colony has lived in, day by day: its hive, or half of it while another colony lived there too.
#pragma once

#include <span>
#include <vector>

#include "belief/belief.hpp"
#include "entries/entry.hpp"

namespace beegarth::garth {

struct Homes {
  facts::Dwelling first;                // on the morning of `began`, with all room given before that day
  std::vector<belief::Rehoused> later;  // oldest first
};

// `standing`: entries that count, oldest first. A dwelling changes where the colony moves or is transferred
// to another hive, where another colony moves into its hive or out of it, and where the hive is told anew
// with other combs. Room given from `began` on is not in it but in the colony's own entries; at a change it
// is counted as far as it was given before that day. A hive told of only later is taken to have been so
// before, and what was told last of it but for its combs (what they hold, how warm it is) to have been so
// always; the usual dwelling where no hive was ever told of.
Homes homes_of(std::span<const entries::Entry> standing, const ColonyId& colony, Date began);

}  // namespace beegarth::garth
