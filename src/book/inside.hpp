// What a Book holds.
#pragma once

#include <string>

#include "book/book.hpp"
#include "book/sqlite.hpp"

namespace beegarth::book {

struct Book::Inside {
  Database database;
  OpenOptions options;
  Surroundings surroundings;
  std::string identity;  // of the file that was opened
};

// The entry that this one corrects or takes back.
std::vector<EntryId> targets_of(const entries::Entry& entry);

}  // namespace beegarth::book
