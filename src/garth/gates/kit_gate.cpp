// Hives are put together and lived in of usable parts only, and no comb with an unknown past hangs in them.
#include <algorithm>
#include <set>
#include <string>

#include "entries/fields.hpp"
#include "garth/gates/gates.hpp"
#include "garth/ledgers/parts.hpp"

namespace beegarth::garth {
namespace {

std::string grounds_in_words(const entries::Part& part) {
  std::string words;
  for (const auto& ground : grounds_for_suspicion(part)) words += (words.empty() ? "" : ", ") + ground;
  return words;
}

Outcome assemble(const Known& known, const entries::Assembled& assembled) {
  const auto parts = parts_on(known.standing, known.day);
  for (const PartId& id : assembled.parts) {
    const auto at = parts.find(id);
    if (at == parts.end())
      return bad_input("there is no part '" + id.text() + "' on that day", "parts",
                       "enter the part first, with the day since when it is yours");
    if (at->second.state == entries::PartState::usable) continue;
    const std::string grounds = grounds_in_words(at->second.part);
    return bad_input(
        "'" + at->second.part.name + "' is " + std::string(entries::word_for(at->second.state)) +
            (grounds.empty() ? "" : " (" + grounds + ")") + ": no hive is put together with it",
        "entry " + at->second.said.text(),
        "scorch, dip or send it away, then enter it as clean and as usable; or take another part");
  }
  return Done{};
}

Outcome next_state(const Known& known, const entries::PartNow& now) {
  const auto parts = parts_on(known.standing, known.day);
  const auto at = parts.find(now.part);
  if (at == parts.end()) return Done{};
  const std::string why = why_not_now(at->second, now.state);
  if (why.empty()) return Done{};
  return bad_input("'" + at->second.part.name + "' cannot be " + std::string(entries::word_for(now.state)) +
                       " now: " + why,
                   "entry " + at->second.said.text(), "enter the steps in their order, with their dates");
}

// Worn out is no way round the flame.
bool bees_may_stay(const PartStanding& part) {
  return part.state == entries::PartState::usable ||
         (part.state == entries::PartState::worn_out && part.safe);
}

// Bees that come into a hive come upon the parts that it was last put together of.
Outcome fit_to_live_in(const Known& known, const HiveId& hive) {
  const entries::Assembled* of = nullptr;
  for (const auto& entry : known.standing) {
    const auto* assembled = std::get_if<entries::Assembled>(&entry.payload);
    if (assembled && assembled->hive == hive) of = assembled;
  }
  if (of == nullptr) return Done{};
  const auto parts = parts_on(known.standing, known.day);
  for (const PartId& id : of->parts) {
    const auto at = parts.find(id);
    if (at == parts.end())
      return bad_input("the hive '" + hive.text() + "' is put together of '" + id.text() +
                           "', and what was said of that part was taken back: no bees go into it",
                       "hive", "enter the part again, with its origin");
    if (bees_may_stay(at->second)) continue;
    const std::string grounds = grounds_in_words(at->second.part);
    return bad_input("the hive '" + hive.text() + "' is put together of '" + at->second.part.name +
                         "', which is " + std::string(entries::word_for(at->second.state)) +
                         (grounds.empty() ? "" : " (" + grounds + ")") + ": no bees go into it",
                     "entry " + at->second.said.text(),
                     "take that part out (enter the hive as assembled without it), or scorch, dip or send it "
                     "away, then enter it as clean and as usable");
  }
  return Done{};
}
Outcome fit_to_live_in(const Known& known, const ColonyId& colony) {
  const auto at = known.state.colonies.find(colony);
  return at == known.state.colonies.end() ? Outcome(Done{}) : fit_to_live_in(known, at->second.hive);
}

bool has_unknown_past(entries::CombOrigin origin) {
  using entries::CombOrigin;
  return origin == CombOrigin::bought_used || origin == CombOrigin::inherited ||
         origin == CombOrigin::found || origin == CombOrigin::unknown;
}

// No flame and no bath makes a drawn comb safe (common practice): it is melted or burnt.
Outcome no_bees_on(const std::string& name, entries::CombOrigin origin, const std::string& where) {
  std::string word(entries::word_for(origin));
  if (origin == entries::CombOrigin::bought_used) word = "bought used";
  if (origin == entries::CombOrigin::unknown) word = "of unknown origin";
  return bad_input(
      "'" + name + "' is comb that was " + word +
          ": old comb of others can carry foulbrood for "
          "decades and goes on no hive",
      where,
      "melt it for wax or burn it, and give foundation; comb that came with its own bees has the "
      "origin with_bees and stays on that colony");
}

// Whatever was ever said of a batch counts: told again it has the past that it had.
Outcome may_hang(const Known& known, const CombsId& combs) {
  bool there = false;
  std::set<CombsId> it_and_wholes = {combs};  // part of a batch has the past of the whole
  for (auto entry = known.standing.rbegin(); entry != known.standing.rend(); ++entry) {
    const auto* batch = std::get_if<entries::Combs>(&entry->payload);
    if (batch && batch->parted_from && it_and_wholes.contains(batch->combs))
      it_and_wholes.insert(*batch->parted_from);
  }
  for (const auto& entry : known.standing) {
    const auto* batch = std::get_if<entries::Combs>(&entry.payload);
    if (batch == nullptr || !it_and_wholes.contains(batch->combs)) continue;
    there = there || batch->combs == combs;
    const std::string where = "entry " + entry.id.text();
    if (batch->origin && has_unknown_past(*batch->origin))
      return no_bees_on(batch->name, *batch->origin, where);
    // With bees, and nobody said with which.
    if (batch->origin == entries::CombOrigin::with_bees && !batch->colony)
      return no_bees_on(batch->name, entries::CombOrigin::unknown, where);
  }
  if (there) return Done{};
  return bad_input("there is no batch of combs '" + combs.text() + "' on that day", "combs",
                   "enter the combs first, with where they come from");
}

Outcome judge(const Known& known, const entries::Assembled& assembled) {
  return assemble(known, assembled);
}
Outcome judge(const Known& known, const entries::PartNow& now) {
  return next_state(known, now);
}
Outcome judge(const Known& known, const entries::ColonyBegan& began) {
  // Bees that were in it already may still be written down.
  if (began.how == entries::Beginning::overwintered) return Done{};
  return fit_to_live_in(known, began.hive);
}
Outcome judge(const Known& known, const entries::ColonyMoved& moved) {
  return fit_to_live_in(known, moved.hive);
}
Outcome judge(const Known& known, const entries::Transfer& moved) {
  return fit_to_live_in(known, moved.hive);
}
Outcome judge(const Known& known, const entries::Split& split) {
  return fit_to_live_in(known, split.hive);
}
Outcome judge(const Known& known, const entries::Unite& unite) {
  return fit_to_live_in(known, unite.colony);
}
Outcome judge(const Known& known, const entries::Combs& combs) {
  if (!combs.colony) return Done{};
  if (combs.origin && has_unknown_past(*combs.origin)) return no_bees_on(combs.name, *combs.origin, "origin");
  const bool told_before = std::any_of(known.standing.begin(), known.standing.end(), [&](const auto& entry) {
    const auto* batch = std::get_if<entries::Combs>(&entry.payload);
    return batch && batch->combs == combs.combs;
  });
  if (combs.parted_from && !told_before) return may_hang(known, *combs.parted_from);
  return told_before ? may_hang(known, combs.combs) : Outcome(Done{});
}
Outcome judge(const Known& known, const entries::CombsMoved& moved) {
  return moved.colony ? may_hang(known, moved.combs) : Outcome(Done{});
}
Outcome judge(const Known& known, const entries::Room& room) {
  const bool put_on = room.super_combs.value_or(0) > 0 || room.brood_combs.value_or(0) > 0;
  return room.combs && put_on ? may_hang(known, *room.combs) : Outcome(Done{});
}
// Honey in the comb of others is comb of others.
Outcome judge(const Known&, const entries::Feed& feed) {
  if (feed.form != entries::FeedForm::comb || feed.source != entries::FeedSource::bought_feed) return Done{};
  return no_bees_on("comb that was bought as feed", entries::CombOrigin::bought_used, "source");
}
template <class Other>
Outcome judge(const Known&, const Other&) {
  return Done{};
}

}  // namespace

Outcome kit_gate(const Known& known, const book::Draft& draft) {
  return std::visit([&](const auto& said) { return judge(known, said); }, draft.payload);
}

}  // namespace beegarth::garth
