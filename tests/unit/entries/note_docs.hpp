// The names and the day of the tables in docs/note.md, and how a reading stands in their second column.
#pragma once

#include <string>
#include <vector>

#include "note_corpus.hpp"

namespace beegarth::entries {

inline NameBook docs_names() {
  return {{
      {"withy-meadow", "Withy Meadow", NamedThing::site, std::nullopt},
      {"bank-site", "Bank", NamedThing::site, std::nullopt},
      {"alder", "Alder", NamedThing::colony, 11},
      {"cobble", "Cobble", NamedThing::colony, 10, {TreatmentKind::amitraz}},
      {"bank", "Bank", NamedThing::colony, 10},
      {"long-box", "Long Box", NamedThing::colony, std::nullopt},
      {"green-nuc", "Green Nuc", NamedThing::hive, std::nullopt},
      {"cedar", "Cedar", NamedThing::hive, std::nullopt},
  }};
}

// What was understood, what is kept as text and what is asked; the heading only where it says another day or
// more than one name. A refusal is its sentence.
inline std::vector<std::string> docs_reading(const std::string& line) {
  const Date today = *Date::from_ymd(2026, 6, 10);
  const auto reading = read_note(line, docs_names(), today);
  if (!reading) return {"refused: " + reading.problem().what};
  int headings = 0;
  for (const std::string& each : reading->read_back) headings += each.rfind("  ", 0) == 0 ? 0 : 1;
  std::vector<std::string> told;
  for (const std::string& each : reading->read_back) {
    const std::string said = trimmed(each.substr(0, each.find("  <- ")));
    const bool heading = each.rfind("  ", 0) != 0;
    const bool tells_nothing =
        headings == 1 && said.size() > 12 && said.substr(said.size() - 10) == today.iso();
    if (!heading || !tells_nothing) told.push_back(said);
  }
  return told;
}

}  // namespace beegarth::entries
