// What this keeper will not do is left out of the plan, and what each rule costs is said.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "facts/need.hpp"

namespace beegarth::work {

struct KeptRules {
  std::vector<facts::Need> needs;    // those that break no rule
  std::vector<std::string> remarks;  // a sentence for each that does, with its price
};

// `rules`: "no_sugar", "no_artificial_swarms", ... as in the book.
KeptRules keep_rules(std::vector<facts::Need> needs, const std::set<std::string>& rules);

}  // namespace beegarth::work
