// Which colonies, hives and sites are suspect of a notifiable disease or pest, and since what was seen.
#pragma once

#include <map>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "entries/entry.hpp"

namespace beegarth::garth {

// Suspicion begins with a sign, goes along with splits and unions, stays with every hive and site in which
// the colony has stood since, and ends only when the keeper enters that the inspector has cleared the colony.
struct SuspectColony {
  Date since;
  std::vector<EntryId> seen;       // the entries that it rests on
  std::vector<std::string> signs;  // "sunken cappings", "sunken cappings in Alder"
  std::set<HiveId> hives;
  std::set<SiteId> sites;
};

struct Suspects {
  std::map<ColonyId, SuspectColony> colonies;

  const SuspectColony* at(const ColonyId& colony) const;
  const SuspectColony* at(const HiveId& hive) const;
  const SuspectColony* at(const SiteId& site) const;
};

// The signs in an entry that may be a notifiable disease or pest, as words; empty where there is none.
std::vector<std::string> suspicious_signs(const entries::Payload& payload);

// `standing`: entries that count, oldest first (book::standing_entries). Looks at nothing after `day`.
Suspects suspects_on(std::span<const entries::Entry> standing, Date day);

}  // namespace beegarth::garth
