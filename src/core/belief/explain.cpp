#include "belief/explain.hpp"

#include <algorithm>
#include <cmath>

#include "belief/entry_words.hpp"
#include "belief/events.hpp"
#include "belief/kin.hpp"
#include "belief/settle.hpp"
#include "belief/without.hpp"

namespace beegarth::belief {
namespace {

// What an event rests on apart from entries.
struct Ground {
  const char* text;
  std::vector<const char*> colony_rows;
  std::vector<const char*> observation_rows;
};
Ground ground_of(facts::EventKind kind) {
  using facts::EventKind;
  switch (kind) {
    case EventKind::out_of_room:
      return {"how fast a queen fills the comb", {"laying_max"}, {"room_short_share"}};
    case EventKind::swarm_preparation:
      return {"how readily colonies of this size and crowding raise queens",
              {"swarming", "swarm_rate_per_day"},
              {}};
    case EventKind::stores_short:
      return {
          "what comes in and what is eaten", {"collecting", "adult_honey_g_per_day"}, {"stores_short_kg"}};
    case EventKind::queen_trouble:
      return {"how often queens fail and how often mating succeeds",
              {"queen_fails_per_day", "mating_return_odds"},
              {"queenless_days"}};
    case EventKind::supers_full:
      return {"what comes in, and how it is stored above the nest",
              {"collecting", "nest_stores_kg", "ripening_per_day"},
              {"supers_full_free_kg"}};
    case EventKind::surplus:
      return {
          "what comes in, and what is kept by the brood", {"collecting", "nest_stores_kg"}, {"surplus_kg"}};
    case EventKind::death:
      return {"how long winter bees live, how fast mites multiply, and what is eaten",
              {"winter_loss", "mite_reproduction", "collecting", "too_few_bees"},
              {}};
    case EventKind::small_for_winter:
      return {"how many winter bees are reared, and how long they live",
              {"season_end", "winter_turn_light_h", "winter_loss"},
              {"winter_bees_least"}};
    case EventKind::winter_mites:
      break;
  }
  return {"how fast mites multiply", {"mite_reproduction", "mite_invasion"}, {"winter_brood_infested"}};
}

// 1 for the members in which an event comes by the day that is asked about, else 0. That day is a week ahead,
// when the next look is due; later most odds rise whatever was seen. What is decided in autumn: then.
Happened happened_in(const Setting& setting, const Projected& projected) {
  constexpr int week = 7;
  const int soon = std::min(setting.today + week, projected.horizon);
  Happened happened(event_count);
  for (std::size_t event = 0; event < event_count; ++event) {
    const int day = decided_in_autumn(event) ? autumn_day(setting, projected.last) : soon;
    for (const int first : projected.trace.first_day[event])
      happened[event].push_back(first <= day ? 1.0 : 0.0);
  }
  return happened;
}

// Members that were fitted to a decisive look all agree with it, so that no weights bring back what it ruled
// out. For the newest morning, which matters most to what comes next, the crowd is therefore taken as it
// stood before it and fitted to the rest of that morning alone.
void refit_newest(std::vector<Without>& all, const ColonyFit& fit, const Forcing& forcing, Date horizon,
                  const With& with) {
  const Setting& setting = *fit.setting;
  constexpr std::size_t most_refits = 2;  // a morning holds one look, and often a count of mites beside it
  if (setting.groups.empty()) return;
  const Group& newest = setting.groups.back();
  for (std::size_t k = 0; k < std::min(newest.last - newest.first, most_refits); ++k) {
    Without& one = all[all.size() - 1 - k];
    Setting other = setting;
    other.without = one.observation;
    Fitted again = fit_without_newest(other, fit.fitted.before_newest);
    if (!fit.neighbours.silent())
      settle(again, other, fit.neighbours);  // they say the same, whatever this colony shows
    const Projected projected = project(other, again, forcing, horizon, Keep::first_days);
    const With rest = with_all(happened_in(other, projected), again);
    one.odds = rest.odds;
    one.beyond_chance = errors_beyond_chance(with.families + rest.families - 1);
    for (std::size_t event = 0; event < event_count; ++event)
      one.error[event] = std::hypot(rest.error[event], with.error[event]);
    one.refitted = true;
  }
}

}  // namespace

std::vector<std::vector<facts::Reason>> why_of_events(const ColonyFit& fit, const Projected& projected,
                                                      const Forcing& forcing, Date horizon,
                                                      const Tables& tables) {
  constexpr std::size_t most_reasons = 4;
  const Setting& setting = *fit.setting;
  const With with = with_all(happened_in(setting, projected), fit.fitted);
  std::vector<Without> all = without_each(setting, fit.fitted, with);
  refit_newest(all, fit, forcing, horizon, with);
  std::vector<std::vector<facts::Reason>> reasons;
  for (std::size_t event = 0; event < event_count; ++event) {
    reasons.push_back(movers(setting, all, with, event,
                             decided_in_autumn(event) ? "odds by autumn" : "odds within a week", most_reasons,
                             tables.observation));
    const Ground ground = ground_of(event_kinds[event]);
    facts::Reason assumed{std::string("taken from tables, not from entries: ") + ground.text, {}, {}};
    assumed.assumed = true;
    cite(assumed.sources, tables.colony, ground.colony_rows);
    cite(assumed.sources, tables.observation, ground.observation_rows);
    reasons.back().push_back(std::move(assumed));
  }
  return reasons;
}

}  // namespace beegarth::belief
