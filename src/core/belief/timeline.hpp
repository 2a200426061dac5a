// One colony's entries laid out in time: what was done and what was seen, with everything odd said.
#pragma once

#include <optional>
#include <vector>

#include "base/expected.hpp"
#include "belief/belief.hpp"
#include "belief/observation.hpp"
#include "facts/odds.hpp"

namespace beegarth::belief {

// Something done to the colony: entry `entry` of the timeline, on a day counted from the day it began.
struct Deed {
  int day = 0;
  std::size_t entry = 0;
};

struct Timeline {
  Date began;
  std::vector<entries::Entry> entries;    // by date, then by when written, from `began` to `today`
  std::vector<Observation> observations;  // ascending; seen in the morning, before the deeds of that day
  std::vector<Deed> deeds;                // ascending
  std::vector<Move> moves;                // to another site
  std::vector<Rehoused> rehoused;         // in another dwelling
  std::optional<entries::ColonyBegan> beginning;
  std::optional<Date> ended;  // died, sold, united into another
  std::optional<entries::Ending> how_ended;
  std::vector<facts::Reason> remarks;
};

// Entries later than today are as if they were not there. Those before the colony began, and sights of a
// colony after it ended, are left out with a remark.
Timeline lay_out(const History& history, Date today);

// The problem with what was asked, if there is one.
Outcome check_request(const History& history, const Forcing& forcing, const Options& options);

}  // namespace beegarth::belief
