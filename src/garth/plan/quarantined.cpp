#include "garth/plan/quarantined.hpp"

#include <algorithm>

#include "garth/ledgers/quarantines.hpp"

namespace beegarth::garth {

Outcome take_quarantines(std::span<const entries::Entry> standing, const FactTable& work,
                         work::NeedsInput& input) {
  const auto rules = QuarantineRules::from(work);
  if (!rules) return rules.problem();
  const auto apart = quarantines_on(standing, input.today, *rules);
  for (work::ColonyStatus& colony : input.colonies) {
    colony.quarantine_until.reset();
    const auto one = apart.find(colony.colony);
    if (one == apart.end()) continue;
    // Its days may be over: the look that ends it is due, and it is kept apart until then.
    const Date until = one->second.until_look ? std::max(one->second.until, input.today) : one->second.until;
    colony.quarantine_until = work::Sighting{until, one->second.said, 0};
  }
  return Done{};
}

}  // namespace beegarth::garth
