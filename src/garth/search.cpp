#include "garth/search.hpp"

#include <algorithm>
#include <set>
#include <sstream>
#include <tuple>

#include "base/utf8.hpp"
#include "entries/fields.hpp"
#include "garth/entry_json.hpp"
#include "garth/kind_groups.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

const Date last_day_of_all = *Date::from_ymd(2999, 12, 31);  // no entry is dated later

// Visits the fields of a payload and gathers the colonies, hives and sites that are named in it.
struct KeysNamed : entries::FieldsPassedBy {
  using FieldsPassedBy::id;
  using FieldsPassedBy::ids;
  std::set<ColonyId> colonies;
  std::set<HiveId> hives;
  std::set<SiteId> sites;

  void id(const char*, const ColonyId& value, bool) { colonies.insert(value); }
  void id(const char*, const HiveId& value, bool) { hives.insert(value); }
  void id(const char*, const SiteId& value, bool) { sites.insert(value); }
  template <class T>
  void id(const char* name, const std::optional<Id<T>>& value) {
    if (value) id(name, *value, false);
  }
  template <class T>
  void ids(const char* name, const std::vector<Id<T>>& values) {
    for (const Id<T>& value : values) id(name, value, false);
  }
};

KeysNamed keys_of(const entries::Payload& payload) {
  KeysNamed keys;
  entries::visit_fields_of(keys, payload);
  return keys;
}

template <class Key>
bool share_one(const std::set<Key>& some, const std::set<Key>& others) {
  return std::any_of(some.begin(), some.end(), [&](const Key& key) { return others.contains(key); });
}

bool names_one_of(const entries::Entry& entry, const KeysNamed& wanted) {
  const KeysNamed keys = keys_of(entry.payload);
  return share_one(keys.colonies, wanted.colonies) || share_one(keys.hives, wanted.hives) ||
         share_one(keys.sites, wanted.sites);
}

// What an entry must name, one of, to be about `about`.
Expected<KeysNamed> wanted_keys(std::string_view about, std::span<const entries::Entry> all,
                                const book::State& state) {
  const std::string small = folded(about);
  const auto is_meant = [&](const std::string& key, const std::string& name) {
    return key == about || folded(key) == small || folded(name) == small;
  };
  KeysNamed wanted;
  for (const auto& [id, hive] : state.hives)
    if (is_meant(id.text(), hive.name)) wanted.hives.insert(id);
  for (const auto& [id, colony] : state.colonies)
    if (is_meant(id.text(), colony.began.name)) wanted.colonies.insert(id);
  for (const auto& [site_id, site] : state.sites) {
    if (!is_meant(site_id.text(), site.name)) continue;
    wanted.sites.insert(site_id);
    std::set<HiveId> at_it;
    for (const auto& [id, hive] : state.hives)
      if (hive.site == site_id) at_it.insert(id);
    for (const auto& [id, colony] : state.colonies)
      if (at_it.contains(colony.hive)) wanted.colonies.insert(id);
    wanted.hives.merge(at_it);
  }
  if (!wanted.colonies.empty() || !wanted.sites.empty() || !wanted.hives.empty()) return wanted;
  // A closed site, or a key that only a corrected entry has.
  const std::string key(about);
  const KeysNamed exact{{}, {ColonyId(key)}, {HiveId(key)}, {SiteId(key)}};
  if (std::any_of(all.begin(), all.end(), [&](const auto& entry) { return names_one_of(entry, exact); }))
    return exact;
  return bad_input("there is no colony, site or hive '" + key.substr(0, 100) + "' in the book", "about",
                   "beegarth see BOOK shows their names");
}

// All that a keeper could have in mind: the entry read back, and the names behind the keys in it.
std::string haystack(const entries::Entry& entry, const book::State& state) {
  std::string text = read_back(entry.payload, state) + " " + entry.who;
  const KeysNamed keys = keys_of(entry.payload);
  for (const ColonyId& id : keys.colonies) text += " " + id.text();
  for (const SiteId& id : keys.sites) text += " " + id.text();
  for (const HiveId& id : keys.hives) {
    text += " " + id.text();
    if (const auto hive = state.hives.find(id); hive != state.hives.end()) text += " " + hive->second.name;
  }
  return folded(text);
}

std::vector<std::string> words_of(const std::string& text) {
  std::istringstream stream(folded(text));
  std::vector<std::string> words;
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

bool has_all(const std::string& text, const std::vector<std::string>& words) {
  return std::all_of(words.begin(), words.end(),
                     [&](const std::string& word) { return text.find(word) != std::string::npos; });
}

Outcome check_search(const EntrySearch& search) {
  if (!is_kind_or_group(search.kind))
    return bad_input("there is no kind '" + search.kind.substr(0, 60) + "'", "kind",
                     "see beegarth enter BOOK --list");
  if (search.from && search.to && *search.from > *search.to)
    return bad_input("the span ends before it begins", "from", "swap the two days");
  return Done{};
}

}  // namespace

Expected<FoundEntries> search_entries(std::span<const entries::Entry> all, const book::State& state,
                                      const EntrySearch& search) {
  if (const Outcome sound = check_search(search); !sound) return sound.problem();
  std::optional<KeysNamed> wanted;
  if (!search.about.empty()) {
    auto keys = wanted_keys(search.about, all, state);
    if (!keys) return keys.problem();
    wanted = *std::move(keys);
  }
  const std::vector<std::string> words = words_of(search.text);
  const std::vector<book::Fate> fates = book::fates_of(all);
  FoundEntries found;
  bool begun = search.after.empty();
  for (std::size_t i = all.size(); i-- > 0;) {
    const entries::Entry& entry = all[i];
    const bool fits = (!search.from || entry.happened >= *search.from) &&
                      (!search.to || entry.happened <= *search.to) &&
                      kind_is_of(entries::kind_name(entry.payload), search.kind) &&
                      (!wanted || names_one_of(entry, *wanted)) &&
                      (words.empty() || has_all(haystack(entry, state), words));
    if (fits) ++found.count;
    if (fits && begun) {
      if (found.entries.size() < search.limit)
        found.entries.push_back({&entry, fates[i]});
      else
        found.more = true;
    }
    begun = begun || entry.id.text() == search.after;
  }
  if (!begun)
    return bad_input("there is no entry '" + search.after.substr(0, 60) + "'", "after",
                     "give the id of the last entry of the page before");
  return found;
}

json found_json(const FoundEntry& found, const book::State& state) {
  json shown = shown_entry(*found.entry, state);
  shown["counts"] = found.fate.counts;
  if (!found.fate.corrected_by.empty()) shown["superseded_by"] = found.fate.corrected_by.back().text();
  if (found.fate.removed_by) shown["removed_by"] = found.fate.removed_by->text();
  return shown;
}

Expected<EntryLine> line_of_entry(std::span<const entries::Entry> all, const EntryId& id) {
  const auto at = std::find_if(all.begin(), all.end(), [&](const auto& entry) { return entry.id == id; });
  if (at == all.end())
    return bad_input("there is no entry '" + id.text().substr(0, 60) + "'", {},
                     "see the entries of the book");
  // Links point both ways, so the line grows until nothing more joins it.
  const auto target_of = [](const entries::Entry& entry) -> std::optional<EntryId> {
    if (const auto* removed = std::get_if<entries::Removed>(&entry.payload)) return removed->entry;
    return entry.supersedes;
  };
  std::set<EntryId> line{id};
  for (std::size_t before = 0; before != line.size();) {
    before = line.size();
    for (const auto& entry : all) {
      const auto target = target_of(entry);
      if (!target) continue;
      if (line.contains(entry.id)) line.insert(*target);
      if (line.contains(*target)) line.insert(entry.id);
    }
  }
  EntryLine told;
  const std::vector<book::Fate> fates = book::fates_of(all);
  for (std::size_t i = 0; i < all.size(); ++i)
    if (line.contains(all[i].id)) told.entries.push_back({&all[i], fates[i]});
  std::sort(told.entries.begin(), told.entries.end(), [](const auto& a, const auto& b) {
    return std::tie(a.entry->written, a.entry->id) < std::tie(b.entry->written, b.entry->id);
  });
  const auto counting = [&](std::optional<entries::Written> known_at) {
    std::vector<entries::Entry> members;
    for (const auto& one : told.entries) members.push_back(*one.entry);
    std::vector<EntryId> ids;
    for (const auto& entry : book::standing_entries(members, last_day_of_all, known_at))
      ids.push_back(entry.id);
    return ids;
  };
  told.known_then = counting(at->written);
  told.known_now = counting(std::nullopt);
  return told;
}

}  // namespace beegarth::garth
