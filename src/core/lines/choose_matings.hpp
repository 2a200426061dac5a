// The choice itself, free of bees: pick `keep` crosses, at most one for each virgin and at least one for each
// line, so that mean coancestry less weight times mean score is least.
#pragma once

#include <optional>
#include <vector>

#include "lines/matings.hpp"

namespace beegarth::lines {

struct Option {
  std::size_t virgin = 0;
  std::size_t line = 0;  // counted from 0 without a gap; every line must be kept
  double score = 0;      // already times the weight
};

struct ChoiceProblem {
  std::vector<Option> options;  // virgin by virgin
  Square coancestry;  // of daughters of two options, 0 or more; on the diagonal two daughters of one
  std::size_t lines = 0;
  std::size_t keep = 1;
};

constexpr std::int64_t most_looked_at = 2'000'000;

// Nothing where no choice keeps every line. Depth first with a bound; stops on a count of steps, never on a
// clock. Crosses are the places of options; mean_score is that of the weighted scores.
std::optional<Choice> choose(const ChoiceProblem& problem, std::int64_t most_steps = most_looked_at);

}  // namespace beegarth::lines
