// At which sites a colony has stood, told from what was entered of it and of its hives.
#pragma once

#include <map>
#include <span>
#include <vector>

#include "entries/entry.hpp"

namespace beegarth::garth {

struct Stay {
  Date from;
  SiteId site;
  double km = 0;  // as the crow flies from the site before; 0 for the first
};

// `standing`: entries that count, oldest first. By colony, oldest first; a hive told anew at another site
// moves all that live in it.
std::map<ColonyId, std::vector<Stay>> stays_in(std::span<const entries::Entry> standing);

// As the crow flies.
double km_between(const entries::Site& one, const entries::Site& other);

}  // namespace beegarth::garth
