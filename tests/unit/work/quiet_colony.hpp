// An invented keeper on a day in the swarm season: one site, one colony in an upright hive, nothing amiss.
#pragma once

#include <algorithm>

#include "table.hpp"
#include "work/need_keys.hpp"
#include "work/needs.hpp"

namespace beegarth::work {

inline Date day(int year, int month, int day_of_month) {
  return *Date::from_ymd(year, month, day_of_month);
}

inline Sighting seen(Date date, double value = 0, const char* entry = "entry-1") {
  return {date, EntryId(entry), value};
}

inline NeedsInput invented(Date today) {
  NeedsInput input;
  input.today = today;
  SiteStatus site{.site = SiteId("withy"), .name = "Withy Meadow"};
  site.swarm_season = today.month() >= 4 && today.month() <= 7;
  input.sites.push_back(site);
  ColonyStatus colony;
  colony.colony = ColonyId("alder-5");
  colony.name = "Alder 5";
  colony.site = site.site;
  colony.last_full_look = seen(today - 3, 0, "look");
  colony.last_any_look = colony.last_full_look;
  colony.last_mite_count = seen(today - 3, 1, "count");
  input.colonies.push_back(colony);
  facts::Outlook outlook;
  outlook.colony = colony.colony;
  outlook.today = today;
  input.outlooks.push_back(outlook);
  return input;
}

// Odds that rise evenly from `now` to `end` over the plan and three weeks beyond.
inline void give_odds(NeedsInput& input, facts::EventKind kind, double now, double end) {
  facts::EventOutlook event;
  event.kind = kind;
  const int days = input.days + 21;
  for (int i = 0; i <= days; ++i) {
    const double value = now + (end - now) * i / days;
    event.course.push_back({input.today + i, {value, 0.8 * value, std::min(1.0, 1.2 * value)}});
  }
  event.why.push_back({"9 seams on the last look", {EntryId("look")}, {}});
  input.outlooks.front().events.push_back(event);
}

inline std::vector<facts::Need> needs_of(const NeedsInput& input) {
  auto needs = needs_from(input, work_table());
  for (const auto& need : needs)
    EXPECT_TRUE(sound_need_key(need.key)) << need.key << " could not be answered";
  return needs;
}

inline const facts::Need* find(const std::vector<facts::Need>& needs, const std::string& key) {
  const auto found =
      std::find_if(needs.begin(), needs.end(), [&](const auto& need) { return need.key == key; });
  return found == needs.end() ? nullptr : &*found;
}

inline std::string all_words(const facts::Need& need) {
  std::string words = need.what;
  for (const auto& caution : need.cautions) words += "\n" + caution;
  for (const auto& item : need.take) words += "\n" + item;
  for (const auto& reason : need.why) words += "\n" + reason.text;
  return words;
}

}  // namespace beegarth::work
