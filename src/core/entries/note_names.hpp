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

  // Marks each word that a known name begins at.
  void mark(std::vector<NoteWord>& words) const;
  // The longest known name that the words begin with, "colony", "hive" or "site" before it. A colony goes
  // before the hive it lives in. A problem where two of one kind, or a colony and a site, share it, or where
  // a shorter name and a number could be meant.
  Expected<FoundName> at(std::span<const NoteWord> words) const;
  std::vector<std::string> near(const std::string& said) const;  // known names spelled much like it
  Problem nobody(const std::string& said) const;                 // with the nearest names

 private:
  Expected<FoundName> longest(std::span<const NoteWord> words, std::optional<NamedThing> kind) const;
  struct Spelled {
    std::vector<NoteWord> words;
    const KnownName* name;
  };
  std::vector<Spelled> names_;
  KnownName everywhere_;
};

}  // namespace beegarth::entries
