#include "work/look_interval.hpp"

#include <algorithm>

namespace beegarth::work {

double days_to_next_look(const LookFound& found, const LookRule& rule) {
  double days = found.queen_clipped ? rule.clipped_days : rule.unclipped_days;
  if (found.main_flow_over) days = std::max(days, rule.after_flow_days);
  if (!found.oldest_larva_days) return days;
  const double to_sealing = rule.sealed_days - (rule.egg_days + *found.oldest_larva_days);
  return std::clamp(to_sealing, 0.0, days);
}

}  // namespace beegarth::work
