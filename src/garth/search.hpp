// Finding entries of the book: newest first, page by page. Nothing is hidden: what was corrected or taken
// back is found too, and says by which entry.
#pragma once

#include <cstddef>
#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/expected.hpp"
#include "book/state.hpp"
#include "entries/entry.hpp"

namespace beegarth::garth {

struct EntrySearch {
  std::string text;   // words, each of which must stand in the entry read back, without regard to case
  std::string kind;   // a kind or a group of kinds; see kind_groups.hpp
  std::string about;  // a colony, site or hive, by key or name; a site takes in what stands at it today
  std::optional<Date> from;
  std::optional<Date> to;
  std::string after;  // the id of the last entry of the page before
  std::size_t limit = 50;
};

struct FoundEntry {
  const entries::Entry* entry = nullptr;  // in the span that was searched
  book::Fate fate;
};

struct FoundEntries {
  std::vector<FoundEntry> entries;  // newest first: by day, then by when they were written
  std::size_t count = 0;            // of all that fit, this page or not
  bool more = false;
};

// `all` is every entry of the book in its own order; `state` is what names are taken from.
Expected<FoundEntries> search_entries(std::span<const entries::Entry> all, const book::State& state,
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
Expected<EntryLine> line_of_entry(std::span<const entries::Entry> all, const EntryId& id);

}  // namespace beegarth::garth
