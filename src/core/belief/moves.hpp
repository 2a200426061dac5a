// Moves of a crowd: every member is offered other coordinates, other luck for a stretch of time, or both,
// lives through it from the first day, and takes it by the odds of what was seen (Metropolis & Hastings). The
// crowd's distribution stays what it is; copies of one ancestor part ways.
#pragma once

#include <functional>
#include <span>
#include <vector>

#include "belief/members.hpp"

namespace beegarth::belief {

// The log of what the moves must leave as it is, by member, without the prior of the coordinates.
using LogTarget = std::function<std::vector<double>(const Members&)>;

struct MoveTally {
  int sweeps = 0;  // so many have been made: the streams of the next ones follow from it
  long proposed = 0;
  long accepted = 0;
};

// Resampling: member i becomes a copy of ancestors[i]. Luck of pieces not yet lived stays each place's own,
// so that copies part ways.
void become(Members& members, const Setting& setting, std::span<const int> ancestors);

// Makes `sweeps` sweeps over members that have lived to some day. `next_luck`: the first noise id that nobody
// has had; it is moved on.
void move_all(Members& members, const Setting& setting, int sweeps, const LogTarget& target,
              std::uint32_t& next_luck, MoveTally& tally);

}  // namespace beegarth::belief
