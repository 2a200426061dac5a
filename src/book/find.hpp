// What Book::find is asked and answers. The words of a large book stand in a file beside it (its name and
// "-words"), made from the journal and brought up to date whenever something is asked; it can be deleted at
// any time. For a small book, and where the folder cannot be written, the same is made in memory.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.hpp"
#include "book/state.hpp"

namespace beegarth::book {

struct Wanted {
  // Each is the beginning of a word in the entry read back, in the names of what it is about, or in who wrote
  // it; all must be there. Capitals and accents do not count.
  std::vector<std::string> words;
  std::optional<std::vector<std::string_view>> kinds;  // any of them; absent: every kind
  std::optional<std::vector<SiteId>> sites;            // about any of these sites, hives or colonies;
  std::optional<std::vector<HiveId>> hives;            // all three absent: about anything
  std::optional<std::vector<ColonyId>> colonies;
  std::optional<Date> from;
  std::optional<Date> to;
  std::optional<EntryId> after;  // goes on below this entry; bad_input where it is not in the book
  std::size_t limit = 50;
};

struct Hit {
  entries::Entry entry;
  Fate fate;
};

struct Hits {
  std::vector<Hit> entries;  // newest first: by day, then by when they came into this book
  std::size_t count = 0;     // of all that fit, this page or not
  bool more = false;
};

}  // namespace beegarth::book
