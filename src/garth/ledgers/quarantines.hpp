// Which stocks are kept apart, and until when: those of which the keeper says so, and by themselves swarms
// and stocks of unknown origin.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <vector>

#include "base/fact_table.hpp"
#include "entries/entry.hpp"

namespace beegarth::garth {

struct QuarantineRules {
  int days = 0;  // of a swarm or a stock of unknown origin, at least
  static Expected<QuarantineRules> from(const FactTable& work);
};

struct KeptApart {
  Date until;               // its last day, or the day from which on a look ends it
  bool until_look = false;  // only a full look through sealed brood without a sign ends it, from that day on
  EntryId said;
};

// Whether a stock that begins so is kept apart without being asked for.
bool comes_from_outside(const entries::ColonyBegan& began);
// A full look through sealed brood that shows no sign of ill health.
bool finds_sealed_brood_well(const entries::Inspection& look);

// `standing`: entries that count, oldest first. Those in force on `day`; looks at nothing after it.
std::map<ColonyId, KeptApart> quarantines_on(std::span<const entries::Entry> standing, Date day,
                                             const QuarantineRules& rules);

}  // namespace beegarth::garth
