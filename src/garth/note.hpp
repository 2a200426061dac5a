// A typed line becomes entries: shown back first, written only when the keeper says so.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "entries/entry.hpp"
#include "entries/note_line.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

struct NoteAnswer {
  std::vector<entries::Entry> understood;  // as kept; without ids where nothing was written
  std::vector<EntryId> kept;               // empty where nothing was written
  std::vector<std::string> read_back;
  std::string left_as_text;
  std::vector<std::string> questions;  // what could be read in two ways, and what the keeper is asked
};

// The names that a line may speak of.
entries::NameBook names_for_notes(const book::State& state);

Expected<NoteAnswer> take_note(Session& session, std::string_view line, bool keep);
nlohmann::json note_json(const NoteAnswer& answer, const book::State& state);

}  // namespace beegarth::garth
