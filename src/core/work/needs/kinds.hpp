// Every kind of need, one function each: nothing, or the needs of one colony or one site.
#pragma once

#include <vector>

#include "work/needs/asking.hpp"

namespace beegarth::work {

using Needs = std::vector<facts::Need>;

// ---- of a colony ----
Needs look_for_cells(const Asking& asking);
Needs first_look(const Asking& asking);
Needs split_on_cells(const Asking& asking);
Needs thin_cells(const Asking& asking);   // after a swarm: leave one cell, before the first virgin is out
Needs queen_check(const Asking& asking);  // with the colony to be left shut until then
Needs comb_of_eggs(const Asking& asking);
Needs room(const Asking& asking);
Needs feed(const Asking& asking);
Needs mite_count(const Asking& asking);
Needs count_after_treatment(const Asking& asking);
Needs treat(const Asking& asking);
Needs watch_mites(const Asking& asking);  // bad odds out of the weeks of treatment: count within a week
Needs winter_work(const Asking& asking);  // heft, mouse guard, the broodless window
Needs strips_out(const Asking& asking);
Needs end_of_quarantine(const Asking& asking);
Needs old_combs(const Asking& asking);
Needs suspect(const Asking& asking);
Needs dead_out(const Asking& asking);
Needs ripe_boxes(const Asking& asking);    // seen full: cleared and taken
Needs stores_aside(const Asking& asking);  // a horizontal hive before winter

// ---- of a site ----
Needs dearth_coming(const Asking& asking);
Needs bait_boxes(const Asking& asking);
Needs before_a_gale(const Asking& asking);
Needs before_a_flood(const Asking& asking);
Needs reports_owed(const Asking& asking);
Needs after_planting(const Asking& asking);  // three years of it: water, guards, weeds, gaps
Needs stocks_wanted(const Asking& asking);   // and, at the first site, those wanted of all together
Needs empty_hives(const Asking& asking);     // without any aim: what may fill them
Needs land_terms(const Asking& asking);      // an agreement or an insurance runs out
Needs after_happenings(const Asking& asking);
Needs stored_combs(const Asking& asking);      // at the first site: moth and mice
Needs combs_to_extract(const Asking& asking);  // at the first site
Needs wet_combs(const Asking& asking);         // where they came from
Needs lots_to_measure(const Asking& asking);   // at the first site
Needs builds_begun(const Asking& asking);      // at the first site
Needs grass_round_hives(const Asking& asking);
Needs flowers_over(const Asking& asking);

// A stock in quarantine is the last of the round and shares no combs.
void keep_apart(const Asking& asking, Needs& needs);
// A virgin is likely to be about: from when to when, and why. Nothing where she is not.
struct KeptShut {
  Date from;
  Date until;
  facts::Reason why;
};
std::optional<KeptShut> kept_shut(const Asking& asking);
// A queen was lost, swarmed or split away and no eggs of a new one have been seen.
bool queen_awaited(const Asking& asking);
// The colony was looked through and had no eggs where there should be some.
bool queen_missed(const Asking& asking);
// A count above an old leaflet's limit for its month, lately and untreated since: told with every count of
// late, and as what the odds have taken the place of.
std::optional<facts::Reason> above_old_limits(const Asking& asking);
struct MiteAlarm {
  double odds = 0;  // that winter bees are harmed or, if that is likelier, that the colony dies
  facts::Reason why;
};
// Counts above old limits where the odds say so too: treat now, whatever the month. They decide, not the
// leaflet.
std::optional<MiteAlarm> mite_alarm(const Asking& asking);
// How stocks may be come by at this time of year, by a keeper with such rules.
std::string ways_to_more(const Asking& asking);
// A hive or a site that is left shut for some days after something happened there.
void hold_after_happenings(const Asking& asking, Needs& needs);
// Cells with young larvae or sealed, seen lately, and nothing done about them since.
bool cells_stand(const Asking& asking);

}  // namespace beegarth::work
