// Which entries count: corrections and removals resolved.
//
// 1. An entry that another one supersedes does not count, even where that correction is itself taken back
// later.
//    Two corrections of one entry both count: they are shown side by side until the keeper decides.
// 2. A removal takes away the entry that it names and every correction of it written before the removal.
// 3. A removal can be superseded or removed like any other entry; then it does nothing.
// 4. A link to an entry written later does nothing: it could only come from a damaged book, and it could go
// in circles.
//
// What is known decides first (`written`), what was the case afterwards (`happened`): a wrong date that was
// corrected is wrong for every day.
#include <algorithm>
#include <cstddef>
#include <numeric>
#include <string_view>
#include <tuple>
#include <unordered_map>

#include "book/state.hpp"

namespace beegarth::book {
namespace {

constexpr std::size_t nothing = static_cast<std::size_t>(-1);

struct Links {
  std::vector<const entries::Entry*> entries;  // oldest written first
  std::vector<std::size_t> corrects;           // the entry that each one supersedes, or nothing
  std::vector<std::size_t> removes;            // the entry that each one takes back, or nothing
};

Links links_of(std::span<const entries::Entry> all, std::optional<entries::Written> known_at) {
  Links links;
  for (const entries::Entry& entry : all) {
    if (!known_at || entry.written <= *known_at) links.entries.push_back(&entry);
  }
  std::sort(links.entries.begin(), links.entries.end(), [](const auto* a, const auto* b) {
    return std::tie(a->written, a->id) < std::tie(b->written, b->id);
  });
  std::unordered_map<std::string_view, std::size_t> place;
  place.reserve(links.entries.size());
  const auto earlier = [&](const EntryId& id) {
    const auto found = place.find(id.text());
    return found == place.end() ? nothing : found->second;
  };
  for (std::size_t i = 0; i < links.entries.size(); ++i) {
    const entries::Entry& entry = *links.entries[i];
    const auto* removed = std::get_if<entries::Removed>(&entry.payload);
    links.corrects.push_back(entry.supersedes ? earlier(*entry.supersedes) : nothing);
    links.removes.push_back(removed ? earlier(removed->entry) : nothing);
    place.emplace(entry.id.text(), i);
  }
  return links;
}

// Whether each entry counts, and the first of its line of corrections.
struct Standing {
  std::vector<bool> counts;
  std::vector<std::size_t> root;
  std::vector<std::size_t> removed_by;  // or nothing
};

Standing resolve(const Links& links) {
  const std::size_t count = links.entries.size();
  std::vector<bool> superseded(count, false);
  for (const std::size_t target : links.corrects) {
    if (target != nothing) superseded[target] = true;
  }
  // Newest first: whatever could undo a removal has been seen when its turn comes.
  std::vector<std::size_t> last_removal(count, nothing);
  const auto taken_back = [&](std::size_t entry) {
    for (std::size_t at = entry; at != nothing; at = links.corrects[at]) {
      if (last_removal[at] != nothing && last_removal[at] > entry) return true;
    }
    return false;
  };
  for (std::size_t i = count; i-- > 0;) {
    const std::size_t target = links.removes[i];
    if (target == nothing || superseded[i] || taken_back(i)) continue;
    if (last_removal[target] == nothing) last_removal[target] = i;
  }
  Standing standing;
  for (std::size_t i = 0; i < count; ++i) {  // oldest first: what an entry corrects is ready before it
    const std::size_t before = links.corrects[i];
    standing.root.push_back(before == nothing ? i : standing.root[before]);
    if (before != nothing && last_removal[before] != nothing &&
        (last_removal[i] == nothing || last_removal[before] > last_removal[i])) {
      last_removal[i] = last_removal[before];
    }
    const bool removed = last_removal[i] != nothing && last_removal[i] > i;
    standing.counts.push_back(!superseded[i] && !removed);
    standing.removed_by.push_back(removed ? last_removal[i] : nothing);
  }
  return standing;
}

}  // namespace

std::vector<entries::Entry> standing_entries(std::span<const entries::Entry> all, Date as_of,
                                             std::optional<entries::Written> known_at) {
  const Links links = links_of(all, known_at);
  const Standing standing = resolve(links);
  std::vector<std::size_t> chosen;
  for (std::size_t i = 0; i < links.entries.size(); ++i) {
    const entries::Entry& entry = *links.entries[i];
    const bool removal = std::holds_alternative<entries::Removed>(entry.payload);
    if (standing.counts[i] && !removal && entry.happened <= as_of) chosen.push_back(i);
  }
  // Within a day a correction stands where the first entry of its line stood.
  std::sort(chosen.begin(), chosen.end(), [&](std::size_t a, std::size_t b) {
    return std::tie(links.entries[a]->happened, standing.root[a], a) <
           std::tie(links.entries[b]->happened, standing.root[b], b);
  });
  std::vector<entries::Entry> kept;
  kept.reserve(chosen.size());
  for (const std::size_t i : chosen) kept.push_back(*links.entries[i]);
  return kept;
}

std::vector<Fate> fates_of(std::span<const entries::Entry> all) {
  const Links links = links_of(all, std::nullopt);
  const Standing standing = resolve(links);
  std::vector<Fate> fates(all.size());
  const auto fate_of = [&](std::size_t i) -> Fate& {
    return fates[static_cast<std::size_t>(links.entries[i] - all.data())];
  };
  for (std::size_t i = 0; i < links.entries.size(); ++i) {
    Fate& fate = fate_of(i);
    fate.counts = standing.counts[i];
    if (standing.removed_by[i] != nothing) fate.removed_by = links.entries[standing.removed_by[i]]->id;
    if (links.corrects[i] != nothing) fate_of(links.corrects[i]).corrected_by.push_back(links.entries[i]->id);
  }
  return fates;
}

}  // namespace beegarth::book
