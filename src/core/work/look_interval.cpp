#include "work/look_interval.hpp"

#include <algorithm>
#include <utility>

namespace beegarth::work {

Expected<LookRule> look_rule(const FactTable& work) {
  LookRule rule;
  const std::pair<const char*, double*> rows[] = {{"interval_unclipped_days", &rule.unclipped_days},
                                                  {"interval_clipped_days", &rule.clipped_days},
                                                  {"interval_after_flow_days", &rule.after_flow_days},
                                                  {"cell_sealed_days", &rule.sealed_days},
                                                  {"egg_days", &rule.egg_days}};
  for (const auto& [key, value] : rows) {
    const auto found = work.value(key);
    if (!found) return found.problem();
    *value = *found;
  }
  return rule;
}

double days_to_next_look(const LookFound& found, const LookRule& rule) {
  double days = found.queen_clipped ? rule.clipped_days : rule.unclipped_days;
  if (found.main_flow_over) days = std::max(days, rule.after_flow_days);
  if (!found.oldest_larva_days) return days;
  const double to_sealing = rule.sealed_days - (rule.egg_days + *found.oldest_larva_days);
  return std::clamp(to_sealing, 0.0, days);
}

}  // namespace beegarth::work
