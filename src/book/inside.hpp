// What a Book holds.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "book/book.hpp"
#include "book/journal.hpp"
#include "book/sqlite.hpp"
#include "book/word_index.hpp"

namespace beegarth::book {

struct Book::Inside {
  Database database;
  OpenOptions options;
  Surroundings surroundings;
  std::string identity;          // of the file that was opened
  std::string device;            // of this copy; empty until something was written
  std::unique_ptr<Adder> adder;  // none while in use and after a failure
  // What was read so far: entries never change, so only what came since is read again.
  std::vector<entries::Entry> known;
  std::int64_t known_place = 0;
  std::unique_ptr<WordIndex> words;  // none before the first search
};

// The order of Book::entries().
bool happened_earlier(const entries::Entry& a, const entries::Entry& b);

// The entry that this one corrects or takes back.
std::vector<EntryId> targets_of(const entries::Entry& entry);

}  // namespace beegarth::book
