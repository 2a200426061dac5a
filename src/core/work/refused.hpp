// What this keeper will not do is left out of the plan, and what each rule costs is said.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "facts/need.hpp"

namespace beegarth::work {

// `rules`: "no_sugar", "no_artificial_swarms", ... as in the book.
std::set<facts::Deed> refused_by(const std::set<std::string>& rules);

struct KeptRules {
  std::vector<facts::Need> needs;  // those that can be met without what is refused
  std::vector<std::string>
      remarks;  // the price of each rule, and a sentence for each need that it leaves out
};

// `needs` are worded for the same refusals already (NeedsInput::refused).
KeptRules keep_rules(std::vector<facts::Need> needs, const std::set<facts::Deed>& refused);

}  // namespace beegarth::work
