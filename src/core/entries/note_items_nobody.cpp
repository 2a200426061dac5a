// What can be said without a colony or a site: a call to a swarm, kit counted, honey put in jars.
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

bool swarm_call(Said& said, const PatternMatch& m) {
  return add(said,
             Urgent{.what = Urgency::swarm_call, .place = m.chosen.empty() ? Text() : Text(m.chosen[0])});
}
bool kit(Said& said, const PatternMatch& m) {
  const auto count = whole(m.numbers[0]);
  return count && add(said, Kit{.what = m.chosen[0], .count = *count});
}
bool extracted(Said& said, const PatternMatch& m) {
  return add(said, Extraction{.lot = LotId(m.chosen[0]), .kg = m.numbers[0]});
}
bool jars(Said& said, const PatternMatch& m) {
  const auto count = whole(m.numbers[0]);
  return count && add(said, Jars{.lot = LotId(m.chosen[0]), .jars = *count, .net_g = m.numbers[1] * 1000});
}

}  // namespace

std::vector<Item> items_of_nobody() {
  return {
      {"^ swarm call $", swarm_call},
      {"^ swarm call from|at|to|in? ~", swarm_call},
      {"^ kit # + $", kit},
      {"^ kit # + ready $", kit},
      {"^ # + ready $", kit},
      unclear("^ # + made $", "how many are ready now in all? say: kit 12 brood frames"),
      {"^ extracted #kg from|of? lot *", extracted},
      {"^ extracted lot * #kg", extracted},
      {"^ # jar of #kg from|of? lot *", jars},
  };
}

}  // namespace beegarth::entries
