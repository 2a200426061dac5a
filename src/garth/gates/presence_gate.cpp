// A colony is where the book says: nothing is done to one that has ended, and a hive holds one colony, or two
// where it is made for two.
#include <map>
#include <set>
#include <string>

#include "garth/gates/gates.hpp"

namespace beegarth::garth {
namespace {

// What needs a living colony.
bool is_a_deed(const entries::Payload& payload) {
  return std::holds_alternative<entries::Feed>(payload) ||
         std::holds_alternative<entries::Treatment>(payload) ||
         std::holds_alternative<entries::Room>(payload) ||
         std::holds_alternative<entries::Swarmed>(payload) ||
         std::holds_alternative<entries::Split>(payload) || std::holds_alternative<entries::Unite>(payload) ||
         std::holds_alternative<entries::ColonyMoved>(payload) ||
         std::holds_alternative<entries::Transfer>(payload);
}

Outcome living(const Known& known, const ColonyId& id) {
  const auto at = known.state.colonies.find(id);
  if (at == known.state.colonies.end())
    return bad_input("there is no colony '" + id.text() + "' on that day", "colony",
                     "check the date, or enter first how the colony began");
  if (!at->second.ended) return Done{};
  return bad_input("'" + at->second.began.name + "' ended on " + at->second.ended_on->iso(), "colony",
                   "check the date and the colony, or correct that entry");
}

Outcome room_in(const Known& known, const HiveId& hive, const ColonyId& newcomer) {
  const auto at = known.state.hives.find(hive);
  const bool two = at != known.state.hives.end() && at->second.two_colonies.value_or(false);
  int there = 0;
  std::string name;
  for (const auto& [id, colony] : known.state.colonies) {
    if (id == newcomer || colony.ended || colony.hive != hive) continue;
    ++there;
    name = colony.began.name;
  }
  if (there < (two ? 2 : 1)) return Done{};
  return bad_input("'" + name + "' lives in the hive '" + hive.text() + "' already", "hive",
                   two ? "end or move one of the two first"
                       : "end, move or unite that colony first, or enter the hive with two_colonies = true");
}

// What is entered as done after a colony's end would contradict the end.
Outcome nothing_later(const Known& known, const ColonyId& id) {
  for (const auto& entry : known.later) {
    if (!is_a_deed(entry.payload) || entries::colony_of(entry.payload) != id) continue;
    return bad_input("'" + id.text() + "' has a later entry: " +
                         std::string(entries::kind_name(entry.payload)) + " on " + entry.happened.iso(),
                     "entry " + entry.id.text(), "check the date, or correct that entry first");
  }
  return Done{};
}

Outcome is_there(const Known& known, const entries::ColonyBegan& began) {
  if (began.swarm_of && *began.swarm_of != began.colony)  // a stock that is gone sends no swarm
    if (Outcome alive = living(known, *began.swarm_of); !alive) return alive;
  return room_in(known, began.hive, began.colony);
}
Outcome is_there(const Known& known, const entries::ColonyMoved& moved) {
  if (Outcome alive = living(known, moved.colony); !alive) return alive;
  return room_in(known, moved.hive, moved.colony);
}
Outcome is_there(const Known& known, const entries::Transfer& moved) {
  if (Outcome alive = living(known, moved.colony); !alive) return alive;
  return room_in(known, moved.hive, moved.colony);
}
Outcome is_there(const Known& known, const entries::Split& split) {
  if (Outcome alive = living(known, split.colony); !alive) return alive;
  return room_in(known, split.hive, split.into);
}
Outcome is_there(const Known& known, const entries::Unite& unite) {
  if (Outcome alive = living(known, unite.colony); !alive) return alive;
  if (Outcome alive = living(known, unite.from); !alive) return alive;
  return nothing_later(known, unite.from);
}
Outcome is_there(const Known& known, const entries::ColonyEnded& ended) {
  if (Outcome alive = living(known, ended.colony); !alive) return alive;
  return nothing_later(known, ended.colony);
}
Outcome is_there(const Known& known, const entries::Feed& feed) {
  return living(known, feed.colony);
}
// What a dead stock left is still taken; what was sold, united or given away left nothing.
Outcome is_there(const Known& known, const entries::Harvest& harvest) {
  const auto at = known.state.colonies.find(harvest.colony);
  using entries::Ending;
  const bool left_its_combs =
      at != known.state.colonies.end() && at->second.ended &&
      (at->second.ended->how == Ending::died || at->second.ended->how == Ending::absconded);
  return left_its_combs ? Outcome(Done{}) : living(known, harvest.colony);
}
Outcome is_there(const Known& known, const entries::Treatment& treatment) {
  return living(known, treatment.colony);
}
Outcome is_there(const Known& known, const entries::Room& room) {
  return living(known, room.colony);
}
Outcome is_there(const Known& known, const entries::Swarmed& swarmed) {
  return living(known, swarmed.colony);
}
template <class Other>
Outcome is_there(const Known&, const Other&) {
  return Done{};
}

}  // namespace

Outcome presence_gate(const Known& known, const book::Draft& draft) {
  return std::visit([&](const auto& said) { return is_there(known, said); }, draft.payload);
}

Outcome keeps_room(std::span<const entries::Entry> before, std::span<const entries::Entry> after) {
  const Date last = *Date::from_ymd(2999, 12, 31);
  const auto crowded = [&](std::span<const entries::Entry> standing) {
    const book::State state = book::state_of(standing, last);
    std::map<HiveId, int> there;
    for (const auto& [id, colony] : state.colonies)
      if (!colony.ended) ++there[colony.hive];
    std::erase_if(there, [&](const auto& one) {
      const auto hive = state.hives.find(one.first);
      const bool two = hive != state.hives.end() && hive->second.two_colonies.value_or(false);
      return one.second <= (two ? 2 : 1);
    });
    return there;
  };
  const auto was = crowded(before);
  for (const auto& [hive, colonies] : crowded(after)) {
    const auto then = was.find(hive);
    if (then != was.end() && then->second >= colonies) continue;
    return bad_input("the hive '" + hive.text() + "' would hold " + std::to_string(colonies) + " colonies",
                     "hive",
                     "end, move or unite one of them first, or enter the hive with two_colonies = true");
  }
  return Done{};
}

namespace {

std::set<ColonyId> begun_in(std::span<const entries::Entry> standing) {
  std::set<ColonyId> begun;
  for (const auto& entry : standing) {
    if (const auto* began = std::get_if<entries::ColonyBegan>(&entry.payload)) begun.insert(began->colony);
    if (const auto* split = std::get_if<entries::Split>(&entry.payload)) begun.insert(split->into);
  }
  return begun;
}

}  // namespace

Outcome keeps_beginnings(std::span<const entries::Entry> before, std::span<const entries::Entry> after,
                         const book::Draft& draft) {
  if (!draft.supersedes && !std::holds_alternative<entries::Removed>(draft.payload)) return Done{};
  const std::set<ColonyId> now = begun_in(after);
  for (const ColonyId& colony : begun_in(before)) {
    if (now.contains(colony)) continue;
    for (const auto& entry : after) {
      if (entries::colony_of(entry.payload) != colony) continue;
      return bad_input(
          "'" + colony.text() + "' would never have begun, and there is a " +
              std::string(entries::kind_name(entry.payload)) + " of it on " + entry.happened.iso(),
          "entry " + entry.id.text(),
          "take back what is said of the colony first, the last first; or correct its beginning");
    }
  }
  return Done{};
}

}  // namespace beegarth::garth
