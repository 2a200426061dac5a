// What the keeper calls the things that a plan names by their keys.
#pragma once

#include <map>
#include <string>

#include "base/units.hpp"

namespace beegarth::garth {

struct PlanNames {
  std::map<SiteId, std::string> sites;
  std::map<ColonyId, std::string> colonies;

  // The key itself where no name was given.
  std::string of(const SiteId& site) const {
    const auto found = sites.find(site);
    return found == sites.end() || found->second.empty() ? site.text() : found->second;
  }
  std::string of(const ColonyId& colony) const {
    const auto found = colonies.find(colony);
    return found == colonies.end() || found->second.empty() ? colony.text() : found->second;
  }
};

}  // namespace beegarth::garth
