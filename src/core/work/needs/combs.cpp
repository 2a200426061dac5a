// Brood combs have an age: a share of them is renewed each year, and stored ones are looked over for moth and
// mice.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

Needs old_combs(const Asking& asking) {
  const int month = asking.month(asking.input.today);
  if (month < 3 || month > 5) return {};  // worked to the edge before the nest fills the box
  const int years = asking.minutes("comb_renew_years");
  int old = 0, all = 0;
  std::vector<EntryId> entries;
  std::string batches;
  for (const auto& batch : asking.colony->brood_combs) {
    all += batch.count;
    if (asking.input.today.year() - batch.drawn_year < years) continue;
    old += batch.count;
    entries.push_back(batch.entry);
    batches += (batches.empty() ? "" : ", ") + batch.name + " of " + std::to_string(batch.drawn_year);
  }
  if (old == 0) return {};
  // The whole nest is not taken at once: the year's share of all of it.
  const int quota = std::min(old, std::max(1, (all + years - 1) / years));
  facts::Need need =
      asking.need("renew-combs", "work " + counted(quota, "old brood comb") +
                                     " to the edge of the nest, and take out what is empty of brood");
  need.minutes = asking.minutes("renew_comb_minutes") * quota;
  need.temperature_min_C = 13;
  need.best = asking.last_day();
  need.loss = loss_when_late(asking, asking.input.today, 60, asking.fact("old_comb_kg") * quota);
  need.why.push_back(because(counted(old, "brood comb") + " of " + std::to_string(all) + " stand since " +
                                 std::to_string(years) + " years or more: " + batches,
                             entries, {asking.source("comb_renew_years"), asking.source("old_comb_kg")}));
  need.take = {counted(quota, "frame or bar") + " with foundation or a starter"};
  need.cautions.push_back(
      "Combs of a stock with a sign of disease are not melted with the rest and go nowhere before the "
      "inspector has spoken.");
  return {need};
}

Needs stored_combs(const Asking& asking) {
  if (asking.input.stored_combs.empty() || asking.site.site != asking.input.sites.front().site) return {};
  double count = 0;
  std::vector<EntryId> entries;
  for (const Sighting& batch : asking.input.stored_combs) {
    count += batch.value;
    entries.push_back(batch.entry);
  }
  const int month = asking.month(asking.input.today);
  const bool moth = month >= 4 && month <= 10;
  facts::Need need = asking.need(
      "stored-combs",
      std::string("look over the ") + counted(count, "stored comb") +
          (moth ? " for wax moth: webs, tunnels, droppings" : " for mice, and see that the stack is closed"));
  need.at_home = true;
  need.minutes = asking.minutes("stored_combs_minutes");
  need.clock = facts::Clock::any;
  need.loss = loss_when_late(asking, asking.input.today, 60, asking.fact("stored_comb_kg") * count);
  need.why.push_back(
      because(moth ? "moths lay in stored comb as long as it is warm" : "mice look for a dry place", entries,
              {asking.source("stored_comb_kg")}));
  need.cautions.push_back(
      "Only what is authorised against moth goes near comb that may hold honey; read the label.");
  return {need};
}

}  // namespace beegarth::work
