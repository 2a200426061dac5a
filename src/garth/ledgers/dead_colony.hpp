// What a dead colony most likely died of, from what lay in the hive.
#pragma once

#include <string>
#include <vector>

#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "entries/kinds/looks.hpp"

namespace beegarth::garth {

struct CauseOfDeath {
  std::string key;                      // "starved"
  std::string words;                    // "starvation"
  double share = 0;                     // 0..1; the causes add up to 1
  std::vector<std::string> speaks_for;  // findings that are commoner with this cause than with the others
};

// Bayes' rule over the causes of tables/dead_colony.toml, the findings taken as independent within a cause,
// which they are not quite: read the shares as an order. The likeliest comes first. What was not looked at
// says nothing.
Expected<std::vector<CauseOfDeath>> causes_of_death(const entries::DeadColony& found, const FactTable& table);

// What to do at a dead hive, in this order.
std::vector<std::string> steps_at_a_dead_hive();

}  // namespace beegarth::garth
