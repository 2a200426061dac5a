// After something that could not wait: what is left shut for how long, and what follows.
#include <algorithm>
#include <array>
#include <string_view>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

enum class Holds { openings, every_visit };

struct Sort {
  std::string_view what;  // as in the book
  const char* told;       // "the hive was blown over"
  Holds holds;
  const char* shut_days;  // row
  const char* then;       // what follows
  facts::Clock clock;
  bool at_home;
  bool at_once;       // does not wait until it may be opened again
  const char* price;  // row, for each colony concerned
  const char* take;   // parted by ";"
  const char* care;
};

constexpr auto sorts = std::to_array<Sort>({
    {"blown_over", "a hive was blown over", Holds::openings, "blown_over_shut_days",
     "look for eggs and for broken comb, straighten the frames, see to strap and stand",
     facts::Clock::opening, false, false, "blown_over_queen_kg", "smoker and fuel;hive tool;strap",
     "These bees are on the alert: full suit, and tell someone."},
    {"robbing", "robbing", Holds::openings, "robbing_shut_days",
     "entrances to one bee space here and at the neighbours, nothing sweet in the air; look from outside "
     "which stock is "
     "robbed, and why: weak, queenless or ill",
     facts::Clock::daylight, false, true, "robbing_kg_per_colony", "entrance blocks;sheet",
     "Open no hive; feed at dusk only, and inside."},
    {"spraying", "spraying was announced or seen", Holds::openings, "spraying_shut_days",
     "look for bees dying in heaps before the entrances; if there are: photographs, day and weather, a "
     "sample of 200 "
     "fresh dead bees into the freezer, and tell the authority that looks into poisonings",
     facts::Clock::daylight, false, true, "poisoned_kg", "bags for a sample;camera",
     "Do not walk through what has just been sprayed."},
    {"flood", "a flood", Holds::every_visit, "flood_shut_days",
     "when the water is down and known to be clean: open what stood in it for air, look, make good what "
     "stores are lost; "
     "flooded comb and stores are not for people",
     facts::Clock::opening, false, false, "flooded_kg", "smoker and fuel;hive tool;clean floor",
     "Never wade into moving or deep water, nor at night, nor alone."},
    {"theft", "a theft", Holds::openings, "theft_shut_days",
     "report it with the marks and numbers of the hives and ask for the reference; tell the bee inspector "
     "and the "
     "keepers near; enter what is gone",
     facts::Clock::any, true, true, "stolen_kg", "",
     "Touch nothing that may carry marks before it has been looked at."},
    {"stings", "a stinging accident", Holds::openings, "stings_shut_days",
     "look from outside why they stung (robbed, queenless, knocked, a path too near), and settle what is "
     "changed before "
     "it is opened again",
     facts::Clock::daylight, false, true, "stung_again_kg", "full suit",
     "Not alone, with a telephone, and with nobody about."},
    {"fire", "a fire", Holds::every_visit, "fire_shut_days",
     "once the fire service lets you: look from outside which hives live, close what is dead, water near",
     facts::Clock::daylight, false, false, "burnt_kg", "tape or foam to close entrances;water",
     "Fire and rescue decide when anyone goes in."},
});

const Sort* sort_of(const Happening& happening) {
  const auto* const found =
      std::find_if(sorts.begin(), sorts.end(), [&](const Sort& one) { return one.what == happening.what; });
  return found == sorts.end() ? nullptr : &*found;
}

// The last day on which it stays shut.
Date shut_until(const Asking& asking, const Happening& happening, const Sort& sort) {
  return happening.seen.date + asking.minutes(sort.shut_days) - 1;
}

const ColonyStatus* colony_of(const Asking& asking, const Happening& happening) {
  for (const ColonyStatus& colony : asking.input.colonies)
    if (happening.colony && colony.colony == *happening.colony) return &colony;
  return nullptr;
}

// A colony that was opened and looked through since has been seen to.
bool seen_since(const Asking& asking, const Happening& happening) {
  const ColonyStatus* colony = colony_of(asking, happening);
  return colony != nullptr && colony->last_full_look && colony->last_full_look->date > happening.seen.date;
}

std::vector<std::string> items_in(std::string_view list) {
  std::vector<std::string> parts;
  for (std::size_t from = 0; from < list.size();) {
    const std::size_t end = std::min(list.find(';', from), list.size());
    parts.emplace_back(list.substr(from, end - from));
    from = end + 1;
  }
  return parts;
}

facts::Reason told(const Asking& asking, const Happening& happening, const Sort& sort) {
  return because(std::string(sort.told) + " on " + day_text(happening.seen.date), {happening.seen.entry},
                 {asking.source(sort.shut_days), asking.source(sort.price)});
}

int stocks_beside(const Asking& asking) {
  return static_cast<int>(std::count_if(asking.input.colonies.begin(), asking.input.colonies.end(),
                                        [&](const auto& colony) { return colony.site == asking.site.site; }));
}

facts::Need what_follows(const Asking& of_site, const Happening& happening, const Sort& sort) {
  const ColonyStatus* colony = colony_of(of_site, happening);
  Asking asking = of_site;
  asking.colony = colony;
  const Date today = asking.input.today;
  const Date from = sort.at_once ? today : std::max(today, shut_until(asking, happening, sort) + 1);
  facts::Need need = asking.need("after", sort.then);
  need.key += "/" + happening.seen.date.iso();
  const Date until = shut_until(asking, happening, sort);
  if (until >= today)
    need.what += std::string(sort.holds == Holds::every_visit ? "; nobody goes there before "
                             : colony != nullptr              ? "; it is not opened before "
                                                              : "; no hive there is opened before ") +
                 day_text(until + 1);
  need.earliest = need.best = from;
  need.latest = std::max(asking.last_day(), from);
  need.clock = sort.clock;
  need.at_home = sort.at_home;
  if (sort.clock != facts::Clock::opening) need.temperature_min_C = -5;
  const int concerned = colony != nullptr ? 1 : std::max(1, stocks_beside(asking));
  need.minutes = asking.minutes("check_minutes") * (sort.clock == facts::Clock::opening ? concerned : 1);
  need.loss = loss_when_late(asking, from - 1, 14, asking.fact(sort.price) * concerned);
  need.why.push_back(told(asking, happening, sort));
  need.take = items_in(sort.take);
  need.cautions.emplace_back(sort.care);
  if (sort.clock == facts::Clock::opening && colony != nullptr) need.write_down = "full look, ";
  return need;
}

facts::Need leave_shut(const Asking& of_site, const Happening& happening, const Sort& sort, Date until) {
  Asking asking = of_site;
  asking.colony = colony_of(of_site, happening);
  facts::Need need =
      asking.need("leave-shut", "do not open " + asking.colony->name + " before " + day_text(until + 1) +
                                    ": " + sort.told + " on " + day_text(happening.seen.date));
  need.latest = until;
  need.minutes = 0;
  need.clock = facts::Clock::any;
  need.temperature_min_C = -50;
  need.why.push_back(told(asking, happening, sort));
  return need;
}

bool concerns(const Happening& happening, const facts::Need& need) {
  return !happening.colony || need.colony == happening.colony;
}

// Later, but not given up: its time begins when the hive may be opened again.
void put_after(facts::Need& need, Date until, const facts::Reason& why) {
  if (need.earliest > until) return;
  need.earliest = until + 1;
  need.best = std::max(need.best, need.earliest);
  need.latest = std::max(need.latest, need.earliest);
  need.why.push_back(why);
}

}  // namespace

Needs after_happenings(const Asking& asking) {
  Needs needs;
  for (const Happening& happening : asking.site.happenings) {
    const Sort* sort = sort_of(happening);
    const int days = asking.input.today - happening.seen.date;
    if (sort == nullptr || days < 0 || days > asking.minutes("after_happening_days")) continue;
    if (!seen_since(asking, happening)) needs.push_back(what_follows(asking, happening, *sort));
  }
  return needs;
}

void hold_after_happenings(const Asking& asking, Needs& needs) {
  const Date today = asking.input.today;
  for (const Happening& happening : asking.site.happenings) {
    const Sort* sort = sort_of(happening);
    if (sort == nullptr || happening.seen.date > today) continue;
    const Date until = shut_until(asking, happening, *sort);
    if (until < today) continue;
    facts::Reason why = told(asking, happening, *sort);
    why.text += sort->holds == Holds::every_visit ? ": nobody goes there before " : ": left shut until ";
    why.text += day_text(sort->holds == Holds::every_visit ? until + 1 : until);
    bool said = false;
    for (facts::Need& need : needs) {
      said = said || need.key == "leave-shut/" + (happening.colony ? happening.colony->text() : "");
      if (!concerns(happening, need) || need.at_home || need.minutes <= 0) continue;
      if (sort->holds == Holds::every_visit || need.clock == facts::Clock::opening)
        put_after(need, until, why);
    }
    if (!said && colony_of(asking, happening) != nullptr)
      needs.push_back(leave_shut(asking, happening, *sort, until));
  }
}

}  // namespace beegarth::work
