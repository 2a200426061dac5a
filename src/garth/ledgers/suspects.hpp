// Which colonies, hives and sites are suspect of a notifiable disease or pest, and since what was seen.
// Gates, plan and page all ask here.
#pragma once

#include <map>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "entries/entry.hpp"
#include "garth/ledgers/notifiable.hpp"

namespace beegarth::garth {

struct SuspectSign {
  std::string words;  // "sunken cappings"
  Date seen;
  EntryId entry;
  std::string seen_in;  // the name of the colony it came from; empty: this one

  std::string text() const { return seen_in.empty() ? words : words + " in " + seen_in; }
};

// Suspicion begins with a sign, a laboratory's finding or a report, goes along with splits and unions, stays
// with every hive and site in which the colony has stood since, and ends only when the keeper enters that the
// inspector has cleared the colony.
struct SuspectColony {
  ColonyId colony;
  Date since;
  std::vector<SuspectSign> signs;  // never empty
  std::set<HiveId> hives;
  std::set<SiteId> sites;
};

struct Suspects {
  std::map<ColonyId, SuspectColony> colonies;

  const SuspectColony* at(const ColonyId& colony) const;
  const SuspectColony* at(const HiveId& hive) const;
  const SuspectColony* at(const SiteId& site) const;
};

// `standing`: entries that count, oldest first (book::standing_entries). Looks at nothing after `day`.
// What is a sign hangs on the country: that of the site (`country`), else of the setting "country".
Suspects suspects_on(std::span<const entries::Entry> standing, Date day, const Notifiable& notifiable);

}  // namespace beegarth::garth
