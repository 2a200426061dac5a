// What lies in the hive by its label comes out again: strips, pads and trays left in too long breed
// resistance and may end up in wax and honey.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

Needs strips_out(const Asking& asking) {
  const auto& lying = asking.colony->treatment_in_hive;
  if (!lying) return {};
  const Date ends = lying->date + static_cast<int>(lying->value);
  const Date today = asking.input.today;
  constexpr int asked_for_days = 30;  // after that it is long out and was not entered
  if (ends > asking.last_day() || today - ends > asked_for_days) return {};
  facts::Need need = asking.need("strips-out", "take out what was put in against varroa (" +
                                                   asking.colony->last_treatment_kind +
                                                   "), and enter treatment_ended; count mites afterwards");
  need.minutes = asking.minutes("strips_minutes");
  need.temperature_min_C = 8;
  need.earliest = std::max(today, ends);
  need.best = std::min(std::max(today, ends), asking.last_day());
  need.loss = loss_when_late(asking, ends, 28, asking.fact("strips_left_kg"));
  need.why.push_back(because("put in on " + day_text(lying->date) + " for " + number_text(lying->value, 0) +
                                 " days by its label: over on " + day_text(ends),
                             {lying->entry}, {asking.source("strips_left_kg")}));
  need.take = {"gloves, and a bag for what comes out"};
  need.cautions.push_back(
      "What comes out is waste as its label says; not to the fire, the compost or the stream.");
  return {need};
}

}  // namespace beegarth::work
