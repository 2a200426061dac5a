// Finding entries of the book: newest first, page by page. Nothing is hidden: what was corrected or taken
// back is found too, and says by which entry.
#pragma once

#include <cstddef>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "base/expected.hpp"
#include "book/book.hpp"
#include "book/state.hpp"
#include "entries/entry.hpp"

namespace beegarth::garth {

struct EntrySearch {
  // Words, each the beginning of one in the entry read back, in a name in it or in who wrote it; capitals and
  // accents do not count.
  std::string text;
  std::string kind;   // a kind or a group of kinds; see kind_groups.hpp
  std::string about;  // a colony, site or hive, by key or name; a site takes in what stands at it today
  std::optional<Date> from;
  std::optional<Date> to;
  std::string after;  // the id of the last entry of the page before
  std::size_t limit = 50;
};

struct FoundEntry {
  entries::Entry entry;
  book::Fate fate;
};

struct FoundEntries {
  std::vector<FoundEntry> entries;  // newest first: by day, then by when they came into the book
  std::size_t count = 0;            // of all that fit, this page or not
  bool more = false;
};

// `state` is what the name in `about` is looked up in; its outline is enough.
Expected<FoundEntries> search_entries(const book::Book& book, const book::State& state,
                                      const EntrySearch& search);

// The shape of `Entry` in src/http/openapi.json, with counts, superseded_by and removed_by.
nlohmann::json found_json(const FoundEntry& found, const book::State& state);

// ---- one entry and its line of corrections ----
struct EntryLine {
  std::vector<FoundEntry> entries;  // as written, oldest first: the first entry, its corrections, removals
  std::vector<EntryId> known_then;  // what counted of the line when the entry was written
  std::vector<EntryId> known_now;   // what counts of it now; none where all was taken back
};
// A Problem where there is no such entry.
Expected<EntryLine> line_of_entry(const book::Book& book, const EntryId& id);

}  // namespace beegarth::garth
