// A transfer was made in a way that the two hives allow, as far as they say how their combs hang.
#include <string>

#include "entries/fields.hpp"
#include "garth/gates/gates.hpp"
#include "garth/plan/transfer_ways.hpp"

namespace beegarth::garth {

Outcome transfer_gate(const Known& known, const book::Draft& draft) {
  const auto* moved = std::get_if<entries::Transfer>(&draft.payload);
  if (moved == nullptr) return Done{};
  const auto colony = known.state.colonies.find(moved->colony);
  if (colony == known.state.colonies.end()) return Done{};
  const auto from = known.state.hives.find(colony->second.hive), to = known.state.hives.find(moved->hive);
  if (from == known.state.hives.end() || to == known.state.hives.end()) return Done{};
  const auto old_home = comb_home_of(from->second), new_home = comb_home_of(to->second);
  if (!old_home || !new_home) return Done{};
  const auto why = work::misfits_of_transfer(entries::word_for(moved->how), *old_home, *new_home);
  if (why.empty()) return Done{};
  return bad_input(
      "from '" + from->second.name + "' into '" + to->second.name + "' nothing goes that way: " + why.front(),
      "how", "beegarth transfer-ways BOOK COLONY --into HIVE shows the ways there are");
}

}  // namespace beegarth::garth
