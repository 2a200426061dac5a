// What is cut: grass round the hives, and flowers once they are over. Where a nest was found nothing is cut.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

const char* const look_first =
    "Walk the ground before the blade: nests of birds, bumblebees and hedgehogs, stones and wire.";

void hold_for_a_nest(facts::Need& need, const Asking& asking, const NestFound& nest) {
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
  for (const NestFound& nest : asking.site.nests) hold_for_a_nest(need, asking, nest);
  return {need};
}

Needs flowers_over(const Asking& asking) {
  Needs needs;
  for (const FlowersOver& flowers : asking.site.flowers_over) {
    const Date from = flowers.over.date + asking.minutes("cut_after_days");
    const Date until = flowers.over.date + asking.minutes("cut_until_days");
    if (until < asking.input.today || from > asking.last_day()) continue;
    facts::Need need =
        asking.need("cut-flowers", "cut after flowering, and take the cuttings off: " + flowers.plant +
                                       (flowers.where.empty() ? "" : " (" + flowers.where + ")"));
    need.key = "cut-flowers/" + asking.site.site.text() + "/" + std::to_string(flowers.over.date.year());
    need.earliest = std::max(asking.input.today, from);
    need.best = need.earliest;
    need.latest = until;
    need.minutes = asking.minutes("cut_minutes");
    need.clock = facts::Clock::dry_day;
    need.temperature_min_C = 5;
    need.loss = loss_when_late(asking, from, 28, asking.fact("cut_kg"));
    need.why.push_back(because("over on " + day_text(flowers.over.date), {flowers.over.entry},
                               {asking.source("cut_after_days"), asking.source("cut_until_days")}));
    need.take = {"scythe or mower", "rake"};
    need.cautions = {look_first, "Leave a part uncut each year: stems and seed heads are somebody's winter."};
    if (flowers.nest) {
      hold_for_a_nest(need, asking, *flowers.nest);
      need.held = need.why.back().text;
    }
    // One need a site and year: what is cut is cut together.
    if (needs.empty())
      needs.push_back(std::move(need));
    else
      needs.front().what += "; " + flowers.plant;
  }
  return needs;
}

}  // namespace beegarth::work
