// What is cut: grass round the hives, and flowers once they are over. Where a nest was found nothing is cut.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

const char* const look_first =
    "Walk the ground before the blade: nests of birds, bumblebees and hedgehogs, stones and wire.";

void tell_of_a_nest(facts::Need& need, const Asking& asking, const NestFound& nest) {
  need.why.push_back(because("a nest (" + nest.of + ") was found at " +
                                 (nest.at.empty() ? asking.site.name : nest.at) + " on " +
                                 day_text(nest.seen.date) + ": nobody cuts there until it is gone",
                             {nest.seen.entry}, {"house rule on nests"}));
}

}  // namespace

// Asked for where the keeper has once written that it was cut.
Needs grass_round_hives(const Asking& asking) {
  const auto& cut = asking.site.grass_cut;
  const auto colonies = std::count_if(asking.input.colonies.begin(), asking.input.colonies.end(),
                                      [&](const auto& colony) { return colony.site == asking.site.site; });
  if (!cut || colonies == 0) return {};
  const Date due = cut->date + asking.minutes("grass_every_days");
  const int month = asking.month(std::max(due, asking.input.today));
  if (due > asking.last_day() || month < 4 || month > 9) return {};
  facts::Need need = asking.need("cut-grass", "cut the grass round the entrances");
  need.best = std::max(due, asking.input.today);
  need.minutes = asking.minutes("grass_minutes") * static_cast<int>(colonies);
  need.clock = facts::Clock::dry_day;
  need.temperature_min_C = 5;
  need.loss = loss_when_late(asking, due, 28, asking.fact("grass_kg") * static_cast<double>(colonies));
  need.why.push_back(because("last cut on " + day_text(cut->date), {cut->entry},
                             {asking.source("grass_every_days"), asking.source("grass_kg")}));
  need.take = {"scythe, shears or strimmer", "goggles and gloves"};
  need.cautions = {
      "Veil and suit on, from behind the hives, early or late in the day: noise and cut grass anger bees.",
      look_first};
  for (const NestFound& nest : asking.site.nests) tell_of_a_nest(need, asking, nest);
  return {need};
}

// One need a site and year: what is over is cut together, but for what a nest holds.
Needs flowers_over(const Asking& asking) {
  std::vector<const FlowersOver*> free, nesting;
  for (const FlowersOver& flowers : asking.site.flowers_over) {
    const Date from = flowers.over.date + asking.minutes("cut_after_days");
    const Date until = flowers.over.date + asking.minutes("cut_until_days");
    if (until < asking.input.today || from > asking.last_day()) continue;
    (flowers.nest ? nesting : free).push_back(&flowers);
  }
  const auto& meant = free.empty() ? nesting : free;
  if (meant.empty()) return {};
  Date from = meant.front()->over.date, until = from;
  std::string plants;
  std::vector<EntryId> entries;
  for (const FlowersOver* flowers : meant) {
    from = std::max(from, flowers->over.date);
    until = std::min(until, flowers->over.date);
    plants += (plants.empty() ? "" : "; ") + flowers->plant +
              (flowers->where.empty() ? "" : " (" + flowers->where + ")");
    entries.push_back(flowers->over.entry);
  }
  from = from + asking.minutes("cut_after_days");
  until = std::max(from, until + asking.minutes("cut_until_days"));
  facts::Need need = asking.need("cut-flowers", "cut after flowering, and take the cuttings off: " + plants);
  need.key = "cut-flowers/" + asking.site.site.text() + "/" + std::to_string(from.year());
  need.earliest = need.best = std::max(asking.input.today, from);
  need.latest = std::max(need.earliest, until);
  need.minutes = asking.minutes("cut_minutes") * static_cast<int>(meant.size());
  need.clock = facts::Clock::dry_day;
  need.temperature_min_C = 5;
  need.loss = loss_when_late(asking, from, 28, asking.fact("cut_kg") * static_cast<double>(meant.size()));
  need.why.push_back(
      because("they are over", entries, {asking.source("cut_after_days"), asking.source("cut_until_days")}));
  need.take = {"scythe or mower", "rake"};
  need.cautions = {look_first, "Leave a part uncut each year: stems and seed heads are somebody's winter.",
                   "Hedges and bramble are not cut while birds nest: local law may forbid it."};
  for (const FlowersOver* flowers : nesting) tell_of_a_nest(need, asking, *flowers->nest);
  if (free.empty()) need.held = need.why.back().text;
  return {need};
}

}  // namespace beegarth::work
