// A stock of unknown origin is united with nothing, and gives and takes no combs, until its quarantine is
// lifted.
#include "garth/gates/gates.hpp"

namespace beegarth::garth {
namespace {

Outcome kept_apart(const Known& known, const ColonyId& id) {
  const entries::Entry* quarantine = nullptr;
  for (const auto& entry : known.standing) {
    const auto* said = std::get_if<entries::Quarantine>(&entry.payload);
    if (said && said->colony == id) quarantine = said->until ? &entry : nullptr;
  }
  if (quarantine == nullptr) return Done{};
  return bad_input(
      "'" + id.text() + "' is in quarantine: it is united with nothing and shares no combs",
      "entry " + quarantine->id.text(),
      "look through all its brood first; where all is well, enter quarantine with lifted = true");
}

}  // namespace

Outcome quarantine_gate(const Known& known, const book::Draft& draft) {
  if (const auto* unite = std::get_if<entries::Unite>(&draft.payload)) {
    if (const Outcome apart = kept_apart(known, unite->colony); !apart) return apart;
    return kept_apart(known, unite->from);
  }
  if (const auto* moved = std::get_if<entries::CombsMoved>(&draft.payload); moved && moved->colony)
    return kept_apart(known, *moved->colony);
  return Done{};
}

}  // namespace beegarth::garth
