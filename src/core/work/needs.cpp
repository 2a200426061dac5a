#include "work/needs.hpp"

#include <algorithm>
#include <map>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

using Kind = Needs (*)(const Asking&);

constexpr Kind kinds_of_a_colony[] = {
    look_for_cells, first_look,  split_on_cells, thin_cells, queen_check,
    comb_of_eggs,   room,        feed,           mite_count, count_after_treatment,
    treat,          watch_mites, winter_work,    strips_out, end_of_quarantine,
    old_combs,      ripe_boxes,  stores_aside};
constexpr Kind kinds_of_a_site[] = {
    dearth_coming, bait_boxes,      before_a_gale, before_a_flood,    after_planting,   reports_owed,
    stocks_wanted, stored_combs,    empty_hives,   land_terms,        after_happenings, combs_to_extract,
    wet_combs,     lots_to_measure, builds_begun,  grass_round_hives, flowers_over};

// A suspect colony is told and left alone; a dead one is closed; the others want what they want.
Needs needs_of_a_colony(const Asking& asking) {
  Needs needs = suspect(asking);
  if (!needs.empty()) return needs;
  needs = dead_out(asking);
  if (!needs.empty()) return needs;
  for (const Kind kind : kinds_of_a_colony)
    for (facts::Need& need : kind(asking)) needs.push_back(std::move(need));
  keep_apart(asking, needs);
  return needs;
}

// A colony to be left shut clashes with whatever would open it.
void shut_out_openings(Needs& needs) {
  for (facts::Need& shut : needs) {
    if (shut.minutes > 0 || shut.key.rfind("leave-shut/", 0) != 0) continue;
    for (const facts::Need& other : needs)
      if (other.minutes > 0 && other.clock == facts::Clock::opening && other.colony == shut.colony &&
          other.key.rfind("thin-cells/", 0) != 0)
        shut.clashes.push_back(other.key);
    if (shut.clashes.empty()) shut.clashes.push_back("opening " + shut.colony->text());
  }
}

// Beside a suspect colony nothing is opened, so that nothing is carried, until the inspector has spoken.
void hold_openings(Needs& needs) {
  for (facts::Need& need : needs)
    if (need.clock == facts::Clock::opening && need.minutes > 0)
      need.held = "a colony at this site is suspect: no hive here is opened until the inspector has answered";
}

}  // namespace

std::vector<facts::Need> needs_from(const NeedsInput& input, const FactTable& table) {
  std::map<ColonyId, const facts::Outlook*> outlooks;
  for (const auto& outlook : input.outlooks) outlooks[outlook.colony] = &outlook;
  Needs needs;
  for (const SiteStatus& site : input.sites) {
    const bool suspect_site =
        std::any_of(input.colonies.begin(), input.colonies.end(),
                    [&](const auto& colony) { return colony.site == site.site && colony.suspect; });
    const Asking of_site{input, table, site, nullptr, nullptr, suspect_site};
    Needs here;
    for (const ColonyStatus& colony : input.colonies) {
      if (colony.site != site.site) continue;
      const auto outlook = outlooks.find(colony.colony);
      const Asking asking{
          input, table, site, &colony, outlook == outlooks.end() ? nullptr : outlook->second, suspect_site};
      for (facts::Need& need : needs_of_a_colony(asking)) here.push_back(std::move(need));
    }
    for (const Kind kind : kinds_of_a_site)
      for (facts::Need& need : kind(of_site)) here.push_back(std::move(need));
    here.erase(std::remove_if(here.begin(), here.end(),
                              [&](const auto& need) { return input.answered.count(need.key) > 0; }),
               here.end());
    hold_after_happenings(of_site, here);
    shut_out_openings(here);
    if (suspect_site) hold_openings(here);
    for (facts::Need& need : here) needs.push_back(std::move(need));
  }
  std::stable_sort(needs.begin(), needs.end(), [](const auto& a, const auto& b) { return a.key < b.key; });
  return needs;
}

}  // namespace beegarth::work
