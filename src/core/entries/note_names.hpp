// Whom a typed line is about. Private to the room.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/expected.hpp"
#include "entries/note_line.hpp"
#include "entries/note_words.hpp"

namespace beegarth::entries {

struct FoundName {
  std::size_t words = 0;  // how many it took; 0 where no known name stands there
  const KnownName* name = nullptr;
};

class NameFinder {
 public:
  explicit NameFinder(const NameBook& book);
  NameFinder(const NameFinder&) = delete;  // it points into itself
  NameFinder& operator=(const NameFinder&) = delete;

  // The longest known name that the words begin with. Where a colony and a hive share a name, the colony is
  // meant. A problem where two colonies or two sites share it, or where a shorter name and a number could be
  // meant.
  Expected<FoundName> at(std::span<const NoteWord> words) const;
  bool begins(std::span<const NoteWord> words) const;  // some known name does, whichever
  Problem nobody(const std::string& said) const;       // with the nearest names

 private:
  struct Spelled {
    std::vector<NoteWord> words;
    const KnownName* name;
  };
  std::vector<Spelled> names_;
  KnownName everywhere_;
};

}  // namespace beegarth::entries
