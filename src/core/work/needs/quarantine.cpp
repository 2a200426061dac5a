// A stock of unknown origin is kept apart until its own brood has been looked through.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

Needs end_of_quarantine(const Asking& asking) {
  const auto& until = asking.colony->quarantine_until;
  if (!until || until->date > asking.last_day()) return {};
  facts::Need need = asking.need("quarantine",
                                 "look through all its brood for disease, shaking the bees off each comb; "
                                 "where all is well, enter the quarantine as lifted");
  need.minutes = asking.minutes("look_minutes");
  need.temperature_min_C = 15;
  need.clock = facts::Clock::opening;
  need.earliest = std::max(asking.input.today, until->date);
  need.best = std::min(need.earliest, asking.last_day());
  need.loss = loss_when_late(asking, until->date, 28, asking.fact("quarantine_kept_kg"));
  need.why.push_back(
      because("kept apart until " + day_text(until->date) + ", because its origin is not known",
              {until->entry}, {asking.source("quarantine_kept_kg")}));
  need.take = {"matchsticks for the thread test",
               "washing soda, so that hands and tools are clean afterwards"};
  need.cautions.push_back(
      "Sunken, greasy or perforated cappings, or a larva that draws a thread: close it, tell the bee "
      "inspector, "
      "move nothing.");
  return {need};
}

void keep_apart(const Asking& asking, Needs& needs) {
  const auto& until = asking.colony->quarantine_until;
  if (!until) return;
  for (facts::Need& need : needs) {
    if (need.minutes <= 0 || need.clock != facts::Clock::opening) continue;
    need.last_in_round = true;
    need.cautions.push_back(
        "In quarantine until " + day_text(until->date) +
        " and its look: after every other colony, with clean tools and gloves afterwards; it "
        "gives and takes no combs.");
    if (need.key.rfind("split/", 0) == 0 || need.key.rfind("comb-of-eggs/", 0) == 0)
      need.held = "in quarantine until " + day_text(until->date) + ": it gives and takes no combs";
  }
}

}  // namespace beegarth::work
