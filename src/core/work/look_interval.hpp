// When the next look for queen cells is due, from what the last one found.
#pragma once

#include <optional>

#include "base/expected.hpp"
#include "base/fact_table.hpp"

namespace beegarth::work {

struct LookFound {
  bool queen_clipped = false;
  bool main_flow_over = false;
  // Days since the egg hatched of the oldest open queen cell's larva; 0 where there are eggs in cells only.
  std::optional<double> oldest_larva_days;
};

struct LookRule {
  double unclipped_days = 7;
  double clipped_days = 10;
  double after_flow_days = 14;
  double sealed_days = 8;  // from egg to sealed cell
  double egg_days = 3;
};

// tables/work.toml.
Expected<LookRule> look_rule(const FactTable& work);

// Days from the last look to the next, at least 0. With a larva of age a in a cell it is 8 - (3 + a) days to
// sealing.
double days_to_next_look(const LookFound& found, const LookRule& rule);

}  // namespace beegarth::work
