// The invented names that the lines of note_corpus.txt are read with, and what a reading looks like there.
#pragma once

#include <string>
#include <vector>

#include "entries/note_line.hpp"
#include "entries/read_back.hpp"

namespace beegarth::entries {

inline NameBook invented_names() {
  return {{
      {"withy", "Withy Meadow", NamedThing::site, std::nullopt},
      {"bank", "Bank", NamedThing::site, std::nullopt},
      {"alder-5", "Alder 5", NamedThing::colony, 10},
      {"alder-5-hive", "Alder 5", NamedThing::hive, std::nullopt},
      {"town-2", "Town 2", NamedThing::colony, 9},
      {"long", "Long Box", NamedThing::colony, std::nullopt},
      {"cellar", "Cellar Hive", NamedThing::hive, std::nullopt},
  }};
}

inline Date invented_today() {
  return *Date::from_ymd(2026, 6, 10);
}  // a Wednesday

// One line for each entry, the text left, and what was flagged; or the problem.
inline std::vector<std::string> told(std::string_view line) {
  const auto reading = read_note(line, invented_names(), invented_today());
  if (!reading) return {"problem " + one_line(reading.problem())};
  std::vector<std::string> lines;
  for (const ProposedEntry& entry : reading->entries) {
    lines.push_back(entry.happened.iso() + (entry.hour ? " " + plain_number(*entry.hour) + " h" : "") + " " +
                    read_back(entry.payload));
  }
  if (!reading->left_as_text.empty()) lines.push_back("left " + reading->left_as_text);
  if (reading->about_nobody) lines.push_back("about nobody");
  return lines;
}

}  // namespace beegarth::entries
