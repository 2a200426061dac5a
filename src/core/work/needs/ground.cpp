// Needs of a site: dearth, bait boxes, gales and floods.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

int colonies_at(const Asking& asking) {
  return static_cast<int>(std::count_if(asking.input.colonies.begin(), asking.input.colonies.end(),
                                        [&](const auto& colony) { return colony.site == asking.site.site; }));
}

// Boxes owned that the book puts at this site: its name, or its key, stands in the words for where.
struct BaitBoxes {
  int count = 0;
  std::string where;
};

BaitBoxes bait_boxes_here(const Asking& asking) {
  BaitBoxes here;
  for (const auto& [what, count] : asking.input.kit) {
    const auto where = asking.input.kit_where.find(what);
    if (lower(what).find("bait") == std::string::npos || count <= 0 || where == asking.input.kit_where.end())
      continue;
    const std::string words = lower(where->second);
    const bool named = !asking.site.name.empty() && words.find(lower(asking.site.name)) != std::string::npos;
    if (!named && words != lower(asking.site.site.text())) continue;
    here.count += count;
    here.where += (here.where.empty() ? "" : "; ") + where->second;
  }
  return here;
}

}  // namespace

Needs dearth_coming(const Asking& asking) {
  const int colonies = colonies_at(asking);
  if (colonies == 0 || asking.dearth(asking.input.today)) return {};
  Date begins = asking.input.today;
  while (begins <= asking.last_day() && !asking.dearth(begins)) ++begins;
  if (begins > asking.last_day()) return {};
  facts::Need need = asking.need(
      "dearth", "a dearth begins: narrow the entrances, look at stores, leave nothing sweet about");
  need.best = begins;
  need.minutes = 3 * colonies;
  need.clock = facts::Clock::daylight;
  need.temperature_min_C = 5;
  need.loss = loss_when_late(asking, begins, 14, asking.fact("robbing_kg_per_colony") * colonies);
  need.why.push_back(because("by your own reckoning little is to be had here from " + day_text(begins), {},
                             {asking.source("dearth_share")}));
  need.take = {"entrance blocks"};
  need.cautions.push_back(
      "In a dearth keep every opening short; a drop of honey outside can set off robbing.");
  return {need};
}

Needs bait_boxes(const Asking& asking) {
  const BaitBoxes boxes = bait_boxes_here(asking);
  if (boxes.count == 0 || !asking.site.swarm_season) return {};
  facts::Need need =
      asking.need("bait-box", (boxes.count == 1 ? "look at the bait box (" : "look at the bait boxes (") +
                                  boxes.where + ") for scouts or a swarm");
  need.minutes = asking.minutes("bait_minutes") * std::min(boxes.count, 3);
  need.clock = facts::Clock::daylight;
  need.temperature_min_C = 12;
  need.best = asking.input.today + std::min(3, asking.input.days - 1);
  need.loss = loss_when_late(asking, asking.input.today, 14,
                             2 * asking.fact("bait_swarm_odds_per_week") * asking.fact("bait_swarm_kg"));
  need.why.push_back(because("bait boxes are looked at about every week in the swarm season", {},
                             {asking.source("bait_swarm_odds_per_week")}));
  need.cautions.push_back(
      "A swarm of unknown origin stays apart and is looked through for disease before it joins the others.");
  need.cautions.push_back(
      "A box up a tree: a second person at the ladder, no reaching; leave a high swarm alone.");
  return {need};
}

Needs before_a_gale(const Asking& asking) {
  const int colonies = colonies_at(asking);
  if (colonies == 0 || asking.site.gust.value < asking.fact("gale_odds_to_act")) return {};
  facts::Need need = asking.need("strap", "strap or weight every hive before the gale");
  need.minutes = asking.minutes("strap_minutes") * colonies;
  need.clock = facts::Clock::any;
  need.temperature_min_C = -50;
  need.loss = loss_when_late(
      asking, asking.input.today - 1, 5,
      asking.site.gust.value * asking.fact("hive_over_odds") * asking.fact("colony_lost_kg") * colonies);
  need.odds.push_back({"gust above 20 m/s", asking.last_day(), asking.site.gust});
  need.why.push_back(
      because("the odds of a gust above 20 m/s within the plan are " + percent_text(asking.site.gust.value),
              {}, {asking.source("gale_odds_to_act"), asking.source("hive_over_odds")}));
  need.take = {"straps or weights for " + std::to_string(colonies) + (colonies == 1 ? " hive" : " hives")};
  need.cautions.push_back("Be gone before the wind is there: trees and roofs come down.");
  return {need};
}

Needs before_a_flood(const Asking& asking) {
  const int colonies = colonies_at(asking);
  if (colonies == 0 || !asking.site.floods || asking.site.rain_next_days_mm < asking.fact("flood_rain_mm"))
    return {};
  facts::Need need =
      asking.need("flood", "low ground and much rain to come: lift or move the hives above flood level");
  need.minutes = asking.minutes("flood_minutes") * colonies;
  need.people = 2;
  need.clock = facts::Clock::dusk;
  need.temperature_min_C = -50;
  need.loss = loss_when_late(asking, asking.input.today - 1, 7,
                             asking.fact("flood_lost_odds") * asking.fact("colony_lost_kg") * colonies);
  need.why.push_back(because(number_text(asking.site.rain_next_days_mm, 0) +
                                 " mm of rain are to be reckoned with and this site floods",
                             {}, {asking.source("flood_rain_mm"), asking.source("flood_lost_odds")}));
  need.take = {"blocks or pallets", "straps", "foam to close entrances"};
  need.cautions.push_back(
      "Never wade into moving water for a hive. Two people to a hive; entrances closed at dusk and opened "
      "again after.");
  return {need};
}

}  // namespace beegarth::work
