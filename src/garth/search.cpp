#include "garth/search.hpp"

#include <algorithm>
#include <set>
#include <sstream>
#include <tuple>

#include "base/utf8.hpp"
#include "book/find.hpp"
#include "garth/entry_json.hpp"
#include "garth/kind_groups.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

const Date last_day_of_all = *Date::from_ymd(2999, 12, 31);  // no entry is dated later

using Ids = book::Wanted;  // of which only the sites, hives and colonies are filled in

bool finds_any(const book::Book& book, const Ids& wanted) {
  book::Wanted one = wanted;
  one.limit = 1;
  const auto hits = book.find(one);
  return hits && !hits->entries.empty();
}

// What an entry must name, one of, to be about `about`.
Expected<Ids> wanted_ids(std::string_view about, const book::Book& book, const book::State& state) {
  const std::string small = folded(about);
  const auto is_meant = [&](const std::string& key, const std::string& name) {
    return key == about || folded(key) == small || folded(name) == small;
  };
  std::set<SiteId> sites;
  std::set<HiveId> hives;
  std::set<ColonyId> colonies;
  for (const auto& [id, hive] : state.hives)
    if (is_meant(id.text(), hive.name)) hives.insert(id);
  for (const auto& [id, colony] : state.colonies)
    if (is_meant(id.text(), colony.began.name)) colonies.insert(id);
  for (const auto& [site_id, site] : state.sites) {
    if (!is_meant(site_id.text(), site.name)) continue;
    sites.insert(site_id);
    std::set<HiveId> at_it;
    for (const auto& [id, hive] : state.hives)
      if (hive.site == site_id) at_it.insert(id);
    for (const auto& [id, colony] : state.colonies)
      if (at_it.contains(colony.hive)) colonies.insert(id);
    hives.merge(at_it);
  }
  Ids wanted;
  wanted.sites.emplace(sites.begin(), sites.end());
  wanted.hives.emplace(hives.begin(), hives.end());
  wanted.colonies.emplace(colonies.begin(), colonies.end());
  if (!colonies.empty() || !sites.empty() || !hives.empty()) return wanted;
  // A closed site, or a key that only a corrected entry has.
  const std::string key(about);
  wanted.sites = {SiteId(key)};
  wanted.hives = {HiveId(key)};
  wanted.colonies = {ColonyId(key)};
  if (finds_any(book, wanted)) return wanted;
  return bad_input("there is no colony, site or hive '" + key.substr(0, 100) + "' in the book", "about",
                   "beegarth see BOOK shows their names");
}

std::vector<std::string> words_of(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> words;
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

std::optional<std::vector<std::string_view>> kinds_of(const std::string& wanted) {
  if (wanted.empty()) return std::nullopt;
  std::vector<std::string_view> list;
  for (std::size_t i = 0; i < entries::kind_count; ++i)
    if (kind_is_of(entries::kind_name_at(i), wanted)) list.push_back(entries::kind_name_at(i));
  return list;
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

Expected<FoundEntries> search_entries(const book::Book& book, const book::State& state,
                                      const EntrySearch& search) {
  if (const Outcome sound = check_search(search); !sound) return sound.problem();
  book::Wanted wanted;
  if (!search.about.empty()) {
    auto ids = wanted_ids(search.about, book, state);
    if (!ids) return ids.problem();
    wanted = *std::move(ids);
  }
  wanted.words = words_of(search.text);
  wanted.kinds = kinds_of(search.kind);
  wanted.from = search.from;
  wanted.to = search.to;
  if (!search.after.empty()) wanted.after = EntryId(search.after);
  wanted.limit = search.limit;
  auto hits = book.find(wanted);
  if (!hits) return hits.problem();
  FoundEntries found{.count = hits->count, .more = hits->more};
  found.entries.reserve(hits->entries.size());
  for (book::Hit& hit : hits->entries) found.entries.push_back({std::move(hit.entry), std::move(hit.fate)});
  return found;
}

json found_json(const FoundEntry& found, const book::State& state) {
  json shown = shown_entry(found.entry, state);
  shown["counts"] = found.fate.counts;
  if (!found.fate.corrected_by.empty()) shown["superseded_by"] = found.fate.corrected_by.back().text();
  if (found.fate.removed_by) shown["removed_by"] = found.fate.removed_by->text();
  return shown;
}

Expected<EntryLine> line_of_entry(const book::Book& book, const EntryId& id) {
  const auto all = book.whole_line(id);
  if (!all) return all.problem();
  const auto at = std::find_if(all->begin(), all->end(), [&](const auto& entry) { return entry.id == id; });
  EntryLine told;
  const std::vector<book::Fate> fates = book::fates_of(*all);
  told.entries.reserve(all->size());
  for (std::size_t i = 0; i < all->size(); ++i) told.entries.push_back({(*all)[i], fates[i]});
  std::sort(told.entries.begin(), told.entries.end(), [](const auto& a, const auto& b) {
    return std::tie(a.entry.written, a.entry.id) < std::tie(b.entry.written, b.entry.id);
  });
  const auto counting = [&](std::optional<entries::Written> known_at) {
    std::vector<EntryId> ids;
    for (const auto& entry : book::standing_entries(*all, last_day_of_all, known_at)) ids.push_back(entry.id);
    return ids;
  };
  told.known_then = counting(at->written);
  told.known_now = counting(std::nullopt);
  return told;
}

}  // namespace beegarth::garth
