// Honey from a comb that was on during feeding or treatment is never offered.
#include <string>

#include "garth/gates/gates.hpp"

namespace beegarth::garth {
namespace {

// The ledger as it would be with this draft.
HoneyLedger with_draft(const Known& known, const book::Draft& draft) {
  std::vector<entries::Entry> all(known.standing.begin(), known.standing.end());
  entries::Entry entry;
  entry.happened = draft.happened;
  entry.payload = draft.payload;
  all.push_back(std::move(entry));
  return honey_on(all, known.day, known.honey);
}

Outcome judge_harvest(const Known& known, const book::Draft& draft, const entries::Harvest& harvest) {
  const HoneyLedger ledger = with_draft(known, draft);
  for (const CombsId& id : harvest.from) {
    const auto at = ledger.batches.find(id);
    if (at != ledger.batches.end() && at->second.gone)
      return bad_input("'" + at->second.combs.name + "' was melted or burnt", "from",
                       "name the combs that were taken");
  }
  const CropFrom& crop = ledger.crops.back();
  if (!crop.fault || !harvest.for_people.value_or(true)) return Done{};
  return bad_input(
      "this honey is not for people: " + *crop.fault,
      crop.because.empty() ? "from" : "entry " + crop.because.front().text(),
      "enter it with for_people = false, or name in 'from' the batch of combs that was put on afterwards");
}

Outcome judge_lot(const Known& known, const LotId& lot, const char* deed) {
  const HoneyLedger ledger = honey_on(known.standing, known.day, known.honey);
  const auto faults = ledger.faults_of(lot);
  if (faults.empty()) return Done{};
  return bad_input("lot '" + lot.text() + "' cannot be " + deed + ": " + faults.front(), "lot",
                   "enter the harvests it came from, or keep it for the bees that made it");
}

}  // namespace

Outcome honey_gate(const Known& known, const book::Draft& draft) {
  if (const auto* harvest = std::get_if<entries::Harvest>(&draft.payload))
    return judge_harvest(known, draft, *harvest);
  if (const auto* jars = std::get_if<entries::Jars>(&draft.payload))
    return judge_lot(known, jars->lot, "jarred");
  if (const auto* sale = std::get_if<entries::Sale>(&draft.payload); sale && sale->lot)
    return judge_lot(known, *sale->lot, "sold");
  return Done{};
}

}  // namespace beegarth::garth
