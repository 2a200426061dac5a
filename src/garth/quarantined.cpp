#include "garth/quarantined.hpp"

#include <algorithm>

#include "garth/ledgers/quarantines.hpp"

namespace beegarth::garth {

void take_quarantines(std::span<const entries::Entry> standing, const FactTable& work,
                      work::NeedsInput& input) {
  const auto rules = QuarantineRules::from(work);
  if (!rules) return;  // the gates say so at the next entry
  const auto apart = quarantines_on(standing, input.today, *rules);
  for (work::ColonyStatus& colony : input.colonies) {
    const auto one = apart.find(colony.colony);
    if (one == apart.end() || !one->second.until_look) continue;
    // Its days may be over: the look that ends it is due, and it is kept apart until then.
    colony.quarantine_until = work::Sighting{std::max(one->second.until, input.today), one->second.said, 0};
  }
}

}  // namespace beegarth::garth
