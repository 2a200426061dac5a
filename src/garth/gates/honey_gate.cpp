// Honey from a comb that was on during feeding or treatment is never offered.
#include <algorithm>
#include <cstdlib>
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
  return honey_on(all, known.day, known.rules.honey, first_said(known.said));
}

// What is known of every day, with what happened after the draft's own.
HoneyLedger of_all_days(const Known& known) {
  std::vector<entries::Entry> all(known.standing.begin(), known.standing.end());
  all.insert(all.end(), known.later.begin(), known.later.end());
  return honey_on(all, all.empty() ? known.day : std::max(known.day, all.back().happened), known.rules.honey,
                  first_said(known.said));
}

// By the bucket, not in jars: a sale of jars may say its weight too.
double sold_loose_kg(const Known& known, const LotId& lot) {
  double kg = 0;
  for (const auto& entry : known.standing) {
    const auto* sale = std::get_if<entries::Sale>(&entry.payload);
    if (sale && sale->lot == lot && !sale->jars) kg += sale->kg.value_or(0);
  }
  return kg;
}

// Every jar goes back to a harvest; what is over has come from nowhere.
Outcome judge_jars(const Known& known, const entries::Jars& jars) {
  const double filled_kg = jars.jars * jars.net_g / 1000;
  const HoneyLedger that_day = honey_on(known.standing, known.day, known.rules.honey, first_said(known.said));
  for (const HoneyLedger& ledger : {that_day, of_all_days(known)}) {
    const double held = ledger.held_kg(jars.lot), jarred = ledger.jarred_kg(jars.lot) + filled_kg;
    if (!holds_too_much(jarred + sold_loose_kg(known, jars.lot), held)) continue;
    return bad_input("lot '" + jars.lot.text() + "' holds " + kg_in_words(held) +
                         " by its harvests, and its jars would hold " + kg_in_words(jarred),
                     "jars", "enter the harvest that is missing, or correct its kg or the jars");
  }
  return Done{};
}

// Nor does more come out of the extractor than went into the lot.
Outcome judge_extraction(const Known& known, const entries::Extraction& extraction) {
  if (!extraction.kg) return Done{};
  double extracted = *extraction.kg;
  for (const auto& entry : known.standing) {
    const auto* before = std::get_if<entries::Extraction>(&entry.payload);
    if (before && before->lot == extraction.lot) extracted += before->kg.value_or(0);
  }
  const double held = of_all_days(known).held_kg(extraction.lot);
  if (!holds_too_much(extracted, held)) return Done{};
  return bad_input("lot '" + extraction.lot.text() + "' holds " + kg_in_words(held) +
                       " by its harvests, and " + kg_in_words(extracted) + " would have been extracted",
                   "kg", "enter the harvest that is missing, or correct one of the two");
}

// Part of a batch becomes a batch of its own.
Outcome judge_parting(const Known& known, const entries::Combs& combs) {
  if (!combs.parted_from) return Done{};
  const HoneyLedger ledger = honey_on(known.standing, known.day, known.rules.honey, first_said(known.said));
  const auto whole = ledger.batches.find(*combs.parted_from);
  if (whole == ledger.batches.end() || *combs.parted_from == combs.combs)
    return bad_input("there is no batch '" + combs.parted_from->text() + "' on that day to part it from",
                     "parted_from", "name the batch that these combs were part of");
  if (whole->second.gone)
    return bad_input("'" + whole->second.combs.name + "' was melted or burnt", "parted_from",
                     "name another batch");
  if (combs.count > whole->second.combs.count)
    return bad_input(
        "'" + whole->second.combs.name + "' has " + std::to_string(whole->second.combs.count) + " combs",
        "count", "part off no more than there are");
  return Done{};
}

// A batch that is named for combs that come off has as many, and hangs on no other hive: else its mark, or
// that it has none, would be said of combs that are not of it.
Outcome judge_named_batch(const Known& known, const entries::Room& room) {
  const int moved = std::abs(room.super_combs.value_or(0)) + std::abs(room.brood_combs.value_or(0));
  if (!room.combs || moved == 0) return Done{};
  const HoneyLedger ledger = honey_on(known.standing, known.day, known.rules.honey, first_said(known.said));
  const auto batch = ledger.batches.find(*room.combs);
  if (batch == ledger.batches.end()) return Done{};
  if (moved > batch->second.combs.count)
    return bad_input("'" + batch->second.combs.name + "' has " + std::to_string(batch->second.combs.count) +
                         " combs, and " + std::to_string(moved) + " are said to be of it",
                     "combs", "enter those of the batch and the others apart");
  const bool comes_off = room.super_combs.value_or(0) < 0 || room.brood_combs.value_or(0) < 0;
  if (comes_off && batch->second.on && batch->second.on != room.colony)
    return bad_input("'" + batch->second.combs.name + "' hangs on '" + batch->second.on->text() + "'",
                     "combs", "name the batch that came off, or none");
  return Done{};
}

// No more is sold of a lot than was harvested into it and is not in jars, nor more jars of it than were
// filled.
Outcome judge_amount_sold(const Known& known, const entries::Sale& sale) {
  int sold = sale.jars.value_or(0), filled = 0;
  for (const auto& entry : known.standing) {
    const auto* before = std::get_if<entries::Sale>(&entry.payload);
    if (before && before->lot == sale.lot) sold += before->jars.value_or(0);
    const auto* jars = std::get_if<entries::Jars>(&entry.payload);
    if (jars && jars->lot == *sale.lot) filled += jars->jars;
  }
  if (sale.jars && sold > filled)
    return bad_input(std::to_string(filled) + " jars of lot '" + sale.lot->text() + "' were filled, and " +
                         std::to_string(sold) + " would be sold",
                     "jars", "enter the jars that were filled first, or correct the number");
  if (sale.jars || !sale.kg) return Done{};
  const HoneyLedger ledger = honey_on(known.standing, known.day, known.rules.honey, first_said(known.said));
  const double held = ledger.held_kg(*sale.lot), jarred = ledger.jarred_kg(*sale.lot),
               loose = sold_loose_kg(known, *sale.lot) + *sale.kg;
  if (!holds_too_much(loose + jarred, held)) return Done{};
  return bad_input("lot '" + sale.lot->text() + "' holds " + kg_in_words(held) + " by its harvests" +
                       (jarred > 0 ? ", of which " + kg_in_words(jarred) + " are in jars" : std::string()) +
                       ", and " + kg_in_words(loose) + " of it would be sold loose",
                   "kg", "enter the harvest that is missing, or correct the kg");
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
      "enter it with for_people = false, or name in 'from' the batch of combs that was put on afterwards; "
      "where the boxes were others, correct the 'room' that put them on: undrawn for new foundation, or "
      "combs "
      "for the batch that they are of");
}

Outcome judge_lot(const Known& known, const LotId& lot, const char* deed) {
  const HoneyLedger ledger = honey_on(known.standing, known.day, known.rules.honey, first_said(known.said));
  const auto faults = ledger.faults_of(lot);
  if (faults.empty()) return Done{};
  return bad_input("lot '" + lot.text() + "' cannot be " + deed + ": " + faults.front(), "lot",
                   "enter the harvests it came from, or keep it for the bees that made it");
}

// Whoever buys it must be able to ask where it comes from, as soon as the book can tell.
Outcome judge_sale_of_no_lot(const Known& known, const entries::Sale& sale) {
  const bool as_feed =
      sale.what == entries::Goods::feed && sale.description.find("honey") != std::string::npos;
  const bool honey = sale.what == entries::Goods::honey || sale.jars || as_feed;
  const auto tells = std::find_if(known.standing.begin(), known.standing.end(), [](const auto& entry) {
    return std::holds_alternative<entries::Lot>(entry.payload) ||
           std::holds_alternative<entries::Harvest>(entry.payload);
  });
  if (!honey || tells == known.standing.end()) return Done{};
  return bad_input("this honey is of no lot, and the book knows of a " +
                       std::string(entries::kind_name(tells->payload)) + " since " + tells->happened.iso(),
                   "lot",
                   "name the lot that it is of; enter 'lot' and its 'harvest' first where there is none");
}

}  // namespace

namespace {

// Batches whose mark would be gone though what made it still counts.
std::optional<Problem> frees_a_batch(const HoneyLedger& was, const HoneyLedger& now,
                                     std::span<const entries::Entry> after) {
  for (const auto& [id, batch] : was.batches) {
    if (!batch.mark) continue;
    const EntryId& maker = batch.mark->entry;  // clang 14 captures no structured binding
    const bool made_still =
        std::any_of(after.begin(), after.end(), [&](const auto& entry) { return entry.id == maker; });
    const auto then = now.batches.find(id);
    if (!made_still || (then != now.batches.end() && then->second.mark)) continue;
    return bad_input(
        "this would clear the mark of '" + batch.combs.name + "', which was on a hive that was " +
            batch.mark->words,
        "combs " + id.text(),
        "give a correction the day and the colony of the entry that it corrects; combs that were never on "
        "that hive are a batch of their own; a feeding or treatment that was entered wrongly is taken back "
        "first");
  }
  return std::nullopt;
}

// The same for boxes that nobody named: marked on a hive, and now neither there nor in the store.
std::optional<Problem> frees_boxes(const HoneyLedger& was, const HoneyLedger& now) {
  for (const auto& [colony, boxes] : was.boxes) {
    if (!boxes.mark) continue;
    const auto then = now.boxes.find(colony);
    const bool on_still = then != now.boxes.end() && then->second.mark;
    if (on_still || now.store.mark_in(CombStore::Pile::boxes, boxes.type)) continue;
    return bad_input(
        "this would clear the mark of the boxes on '" + colony.text() + "', which were on while it was " +
            boxes.mark->words,
        "entry " + boxes.mark->entry.text(),
        "where they were off by then, take that entry back first, enter when they came off, and enter "
        "it again");
  }
  return std::nullopt;
}

}  // namespace

Outcome keeps_marks(std::span<const entries::Entry> before, std::span<const entries::Entry> after,
                    const book::Draft& draft, const HoneyRules& rules) {
  const bool takes_back = draft.supersedes || std::holds_alternative<entries::Removed>(draft.payload);
  const bool late = !before.empty() && draft.happened < before.back().happened;
  if (!takes_back && !late) return Done{};
  const Date last = *Date::from_ymd(2999, 12, 31);
  const HoneyLedger was = honey_on(before, last, rules), now = honey_on(after, last, rules);
  if (auto fault = frees_a_batch(was, now, after)) return *std::move(fault);
  const bool moves_boxes = std::holds_alternative<entries::Room>(draft.payload) ||
                           std::holds_alternative<entries::Hive>(draft.payload);
  if (takes_back || !moves_boxes) return Done{};
  if (auto fault = frees_boxes(was, now)) return *std::move(fault);
  return Done{};
}

Outcome honey_gate(const Known& known, const book::Draft& draft) {
  if (const auto* harvest = std::get_if<entries::Harvest>(&draft.payload))
    return judge_harvest(known, draft, *harvest);
  if (const auto* jars = std::get_if<entries::Jars>(&draft.payload)) {
    if (Outcome sound = judge_lot(known, jars->lot, "jarred"); !sound) return sound;
    return judge_jars(known, *jars);
  }
  if (const auto* sale = std::get_if<entries::Sale>(&draft.payload); sale && sale->lot) {
    if (Outcome offered = judge_lot(known, *sale->lot, "sold"); !offered) return offered;
    return judge_amount_sold(known, *sale);
  }
  if (const auto* sale = std::get_if<entries::Sale>(&draft.payload))
    return judge_sale_of_no_lot(known, *sale);
  if (const auto* extraction = std::get_if<entries::Extraction>(&draft.payload))
    return judge_extraction(known, *extraction);
  if (const auto* combs = std::get_if<entries::Combs>(&draft.payload)) return judge_parting(known, *combs);
  if (const auto* room = std::get_if<entries::Room>(&draft.payload)) return judge_named_batch(known, *room);
  return Done{};
}

}  // namespace beegarth::garth
