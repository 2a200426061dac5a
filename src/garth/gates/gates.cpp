#include "garth/gates/gates.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <set>

#include "garth/ledgers/suspects.hpp"

namespace beegarth::garth {
namespace {

const Date end_of_time = *Date::from_ymd(2999, 12, 31);  // no entry is dated later

constexpr auto gates = std::to_array<Outcome (*)(const Known&, const book::Draft&)>(
    {presence_gate, suspect_gate, quarantine_gate, unite_gate, kit_gate, hive_gate, figures_gate,
     transfer_gate, honey_gate, feed_gate, nest_gate, rules_gate});

// A draft as the entry it would become, so that the drafts after it are judged with it.
entries::Entry as_entry(const book::Draft& draft, std::size_t number) {
  entries::Entry entry;
  entry.id = draft_id(number);
  entry.happened = draft.happened;
  entry.happened_hour = draft.happened_hour;
  entry.written = {.utc_ms = std::int64_t{1} << 52, .counter = static_cast<std::uint32_t>(number)};
  entry.supersedes = draft.supersedes;
  entry.payload = draft.payload;
  return entry;
}

template <class... Kinds>
bool is_one_of(const entries::Payload& payload) {
  return (std::holds_alternative<Kinds>(payload) || ...);
}

// Kinds that no gate asks after and on which none depends: what imports bring by the thousand.
bool is_harmless(const entries::Payload& payload) {
  const auto* setting = std::get_if<entries::Setting>(&payload);
  if (setting != nullptr && setting->name == "country") return false;  // it says what is notifiable
  const auto* own = std::get_if<entries::TableOverride>(&payload);
  if (own != nullptr && says_what_is_suspect(*own)) return false;
  return is_one_of<entries::Weather, entries::Normals, entries::Forage, entries::Note, entries::Setting,
                   entries::WorkingHours, entries::Travel, entries::NeedAnswered, entries::TableOverride>(
      payload);
}

// Looks and counts are judged, but what others may do depends on them only where they raise a suspicion.
bool matters_to_others(const entries::Payload& payload, const Notifiable& notifiable) {
  const bool look =
      is_one_of<entries::Inspection, entries::MiteCount, entries::Weight, entries::Sign>(payload);
  return !is_harmless(payload) && (!look || !notifiable.signs_in(payload).empty());
}

// Whose looks others ask after: stocks kept apart until a look, and those that are to be united.
std::set<ColonyId> whose_looks_count(std::span<const entries::Entry> book,
                                     std::span<const book::Draft> drafts) {
  std::set<ColonyId> colonies;
  const auto take = [&](const entries::Payload& payload) {
    if (const auto* began = std::get_if<entries::ColonyBegan>(&payload); began && comes_from_outside(*began))
      colonies.insert(began->colony);
    if (const auto* split = std::get_if<entries::Split>(&payload); split && colonies.contains(split->colony))
      colonies.insert(split->into);
  };
  for (const auto& entry : book) {
    take(entry.payload);
    if (const auto* unite = std::get_if<entries::Unite>(&entry.payload);
        unite && colonies.contains(unite->from))
      colonies.insert(unite->colony);
  }
  for (const auto& draft : drafts) {
    take(draft.payload);
    if (const auto* unite = std::get_if<entries::Unite>(&draft.payload))
      colonies.insert({unite->colony, unite->from});
  }
  return colonies;
}

// One draft, judged beside everything that was said before it.
Outcome passes(std::span<const entries::Entry> all, std::span<const book::Draft> drafts, std::size_t number,
               const GateRules& rules) {
  const book::Draft& draft = drafts[number];
  // A correction is judged without what it corrects.
  std::vector<entries::Entry> others(all.begin(), all.end());
  std::erase_if(others, [&](const auto& one) { return draft.supersedes == one.id; });
  const auto counting = book::standing_entries(others, end_of_time);
  const auto split = std::find_if(counting.begin(), counting.end(),
                                  [&](const auto& one) { return one.happened > draft.happened; });
  const auto until = static_cast<std::size_t>(split - counting.begin());
  const std::span whole(counting);
  const book::State state = book::state_of(whole.first(until), draft.happened);
  const Known known{whole.first(until),        whole.subspan(until), state, draft.happened, rules, all,
                    drafts.subspan(number + 1)};
  for (const auto& gate : gates) {
    if (Outcome passed = gate(known, draft); !passed) return passed;
  }
  std::vector<entries::Entry> with(all.begin(), all.end());
  with.push_back(as_entry(draft, number));
  const auto before = book::standing_entries(all, end_of_time),
             after = book::standing_entries(with, end_of_time);
  if (Outcome kept = keeps_suspicion(before, after, draft, rules.notifiable); !kept) return kept;
  if (Outcome kept = keeps_marks(before, after, draft, rules.honey); !kept) return kept;
  if (Outcome kept = keeps_quarantine(before, after, draft, rules.quarantine); !kept) return kept;
  if (Outcome kept = keeps_room(before, after); !kept) return kept;
  if (Outcome kept = keeps_beginnings(before, after, draft); !kept) return kept;
  if (is_one_of<entries::QueenBegan, entries::QueenMated, entries::Removed>(draft.payload))
    return keeps_descent(before, after);
  return Done{};
}

}  // namespace

std::optional<Objection> pass_the_gates(std::span<const entries::Entry> book,
                                        std::span<const book::Draft> drafts, const GateRules& rules) {
  if (std::all_of(drafts.begin(), drafts.end(),
                  [](const auto& one) { return is_harmless(one.payload) && !one.supersedes; }))
    return std::nullopt;
  const auto looked_at = whose_looks_count(book, drafts);
  const auto matters = [&](const entries::Payload& payload) {
    const bool seen = is_one_of<entries::Inspection, entries::Sign>(payload);
    return matters_to_others(payload, rules.notifiable) ||
           (seen && looked_at.contains(entries::colony_of(payload)));
  };
  std::vector<entries::Entry> all;
  std::copy_if(book.begin(), book.end(), std::back_inserter(all),
               [&](const auto& entry) { return matters(entry.payload) || entry.supersedes; });
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    const book::Draft& draft = drafts[i];
    if (!is_harmless(draft.payload) || draft.supersedes) {
      if (Outcome passed = passes(all, drafts, i, rules); !passed) return Objection{i, passed.problem()};
    }
    if (matters(draft.payload) || draft.supersedes) all.push_back(as_entry(draft, i));
  }
  return std::nullopt;
}

}  // namespace beegarth::garth
