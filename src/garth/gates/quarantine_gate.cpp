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

// The colony on which a batch was last, wherever it lies now: combs carry disease through the store.
std::optional<ColonyId> last_colony_of(const Known& known, const CombsId& combs) {
  std::optional<ColonyId> last;
  for (const auto& entry : known.standing) {
    const auto* batch = std::get_if<entries::Combs>(&entry.payload);
    if (batch && batch->combs == combs && batch->colony) last = batch->colony;
    const auto* moved = std::get_if<entries::CombsMoved>(&entry.payload);
    if (moved && moved->combs == combs && moved->colony) last = moved->colony;
  }
  return last;
}

// Only a look through the brood ends it sooner.
Outcome not_shortened(const Known& known, const entries::Quarantine& said) {
  if (said.lifted.value_or(false)) return Done{};
  if (said.until && *said.until < known.day)
    return bad_input(
        "the quarantine would end on " + said.until->iso() + ", before its own day " + known.day.iso(),
        "until", "give a later day, or lifted = true once its brood was looked through");
  Outcome apart = kept_apart(known, said.colony);
  if (apart) return Done{};
  for (auto entry = known.standing.rbegin(); entry != known.standing.rend(); ++entry) {
    const auto* before = std::get_if<entries::Quarantine>(&entry->payload);
    if (before == nullptr || before->colony != said.colony) continue;
    if (said.until && before->until && *said.until >= *before->until) return Done{};
    break;
  }
  return apart;
}

}  // namespace

Outcome quarantine_gate(const Known& known, const book::Draft& draft) {
  if (const auto* unite = std::get_if<entries::Unite>(&draft.payload)) {
    if (Outcome apart = kept_apart(known, unite->colony); !apart) return apart;
    return kept_apart(known, unite->from);
  }
  if (const auto* split = std::get_if<entries::Split>(&draft.payload))
    return kept_apart(known, split->colony);
  if (const auto* said = std::get_if<entries::Quarantine>(&draft.payload)) return not_shortened(known, *said);
  const auto* moved = std::get_if<entries::CombsMoved>(&draft.payload);
  if (moved == nullptr || !moved->colony) return Done{};
  const auto from = last_colony_of(known, moved->combs);
  if (from == moved->colony) return Done{};  // back where they were
  if (Outcome apart = kept_apart(known, *moved->colony); !apart) return apart;
  return from ? kept_apart(known, *from) : Outcome(Done{});
}

}  // namespace beegarth::garth
