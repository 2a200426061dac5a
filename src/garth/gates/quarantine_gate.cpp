// A stock of unknown origin is united with nothing, and gives and takes no combs, until the day that its
// quarantine was set for is over, or it is lifted before.
#include "garth/gates/gates.hpp"

namespace beegarth::garth {
namespace {

Outcome kept_apart(const Known& known, const ColonyId& id) {
  const entries::Entry* quarantine = nullptr;
  for (const auto& entry : known.standing) {
    const auto* said = std::get_if<entries::Quarantine>(&entry.payload);
    if (said && said->colony == id) quarantine = said->until && *said->until >= known.day ? &entry : nullptr;
  }
  if (quarantine == nullptr) return Done{};
  return bad_input(
      "'" + id.text() + "' is in quarantine until " +
          std::get<entries::Quarantine>(quarantine->payload).until->iso() +
          ": it is united with nothing and shares no combs",
      "entry " + quarantine->id.text(),
      "look through all its brood first; where all is well, enter quarantine with lifted = true");
}

}  // namespace

Outcome quarantine_gate(const Known& known, const book::Draft& draft) {
  if (const auto* unite = std::get_if<entries::Unite>(&draft.payload)) {
    if (Outcome apart = kept_apart(known, unite->colony); !apart) return apart;
    return kept_apart(known, unite->from);
  }
  if (const auto* split = std::get_if<entries::Split>(&draft.payload))
    return kept_apart(known, split->colony);
  const auto* moved = std::get_if<entries::CombsMoved>(&draft.payload);
  if (moved == nullptr || !moved->colony) return Done{};
  if (Outcome apart = kept_apart(known, *moved->colony); !apart) return apart;
  const HoneyLedger ledger = honey_on(known.standing, known.day, known.honey);
  const auto batch = ledger.batches.find(moved->combs);
  if (batch == ledger.batches.end() || !batch->second.on) return Done{};
  return kept_apart(known, *batch->second.on);
}

}  // namespace beegarth::garth
