// A line typed or dictated at the hive becomes entries, shown back before they are kept. Grammar and words:
// docs/note.md. Nothing is dropped: what is not understood is kept as text. Nothing is guessed: what could be
// read in two ways is text.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "entries/entry.hpp"

namespace beegarth::entries {

enum class NamedThing { site, colony, hive };

struct KnownName {
  std::string key;
  std::string shown;  // as the keeper says it: "Alder 5"
  NamedThing what = NamedThing::colony;
  std::optional<int>
      super_combs;  // of a colony: combs in one super of its hive, so that "super on" is a number
  std::vector<TreatmentKind> treatments_on = {};  // of a colony: begun and not ended, for "strips out"
};

struct NameBook {
  std::vector<KnownName> names;
};

struct ProposedEntry {
  Date happened;
  std::optional<double> hour;  // local, 0..24
  Payload payload;
  int line = 1;  // of the note, where it is said
};

struct NoteReading {
  std::vector<ProposedEntry> entries;
  std::string left_as_text;  // every word that no field took; it is also kept, in entries of kind note
  std::vector<std::string> read_back;  // what was understood, each line with the words it was read from
  std::vector<std::string> questions;  // what could be read in two ways, and what the keeper is asked
  bool about_nobody = false;           // some of the text names no site or colony of the book
};

// `today` is the civil date at the keeper's. A problem where a name or a date cannot be meant.
Expected<NoteReading> read_note(std::string_view line, const NameBook& names, Date today);

}  // namespace beegarth::entries
