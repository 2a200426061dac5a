// Which entries moved the odds, and which tables stand behind them.
#pragma once

#include <vector>

#include "belief/colony_fit.hpp"
#include "belief/entry_words.hpp"
#include "belief/project.hpp"

namespace beegarth::belief {

// Reasons for each event, the entry that moved its odds most first. Odds without an entry come from the same
// members with their weights divided by what that entry multiplied them with, Pareto-smoothed; for the newest
// morning from a crowd fitted again without it. The sentence says "about" where they are rough.
std::vector<std::vector<facts::Reason>> why_of_events(const ColonyFit& fit, const Projected& projected,
                                                      const Forcing& forcing, Date horizon,
                                                      const Tables& tables);

}  // namespace beegarth::belief
