// Where combs have been, and how many each hive holds: disease follows combs, not hives.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <vector>

#include "entries/entry.hpp"

namespace beegarth::garth {

struct CombStay {
  ColonyId colony;
  std::optional<Date> until;  // absent: it is there still
};

struct TakenOff {  // combs that nobody entered as a batch
  ColonyId colony;
  Date day;
  int combs = 0;
};

struct HiveCombs {
  int nest = 0;
  int boxes = 0;
};

struct CombStays {
  std::map<CombsId, std::vector<CombStay>> batches;  // in the order in which they were told
  std::vector<TakenOff> unnamed;
  std::map<HiveId, HiveCombs> hives;  // as last said, with what was put on and taken off since
  std::map<ColonyId, HiveId> homes;
};

// `standing`: entries that count, oldest first. Looks at nothing after `day`.
CombStays comb_stays_on(std::span<const entries::Entry> standing, Date day);

}  // namespace beegarth::garth
