// Lines with their readings, from a text file. "@ DAY; sites: A, B; colonies: C [10] +amitraz, D; hives: E"
// says on which day and with which names the lines below it are read: in brackets the combs of a box, behind
// + a treatment that is on. "> LINE", with \n for a line end; below it one line an entry, then what was left
// as text, what was asked, and "about nobody"; or the problem.
#pragma once

#include <algorithm>
#include <fstream>
#include <string>
#include <string_view>
#include <vector>

#include "entries/fields.hpp"
#include "entries/note_line.hpp"
#include "entries/read_back.hpp"

namespace beegarth::entries {

struct CorpusCase {
  int at = 0;  // line of the file
  Date today;
  NameBook names;
  std::string line;
  std::vector<std::string> wanted;
};

inline std::string trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return std::string(text);
}
inline std::vector<std::string> parts_of(std::string_view text, char by) {
  std::vector<std::string> parts;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(by, at), text.size());
    parts.push_back(trimmed(text.substr(at, end - at)));
    at = end + 1;
  }
  return parts;
}

inline KnownName corpus_name(std::string text, NamedThing what) {
  KnownName name{.what = what};
  if (const std::size_t plus = text.find('+'); plus != std::string::npos) {
    for (const std::string& kind : parts_of(std::string_view(text).substr(plus + 1), '+')) {
      const auto& words = Words<TreatmentKind>::list;
      name.treatments_on.push_back(
          static_cast<TreatmentKind>(std::find(words.begin(), words.end(), kind) - words.begin()));
    }
    text.resize(plus);
  }
  if (const std::size_t bracket = text.find('['); bracket != std::string::npos) {
    name.super_combs = std::stoi(text.substr(bracket + 1));
    text.resize(bracket);
  }
  name.shown = trimmed(text);
  for (const char c : name.shown)
    name.key += c == ' ' ? '-' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  if (what == NamedThing::hive) name.key += "-hive";
  return name;
}

inline std::string with_line_ends(std::string_view text) {
  std::string line;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool line_end = text[i] == '\\' && i + 1 < text.size() && text[i + 1] == 'n';
    line.push_back(line_end ? '\n' : text[i]);
    if (line_end) ++i;
  }
  return line;
}

inline std::vector<CorpusCase> corpus_in(const std::string& path) {
  std::ifstream file(path);
  std::vector<CorpusCase> cases;
  CorpusCase now;
  for (std::string text; std::getline(file, text);) {
    ++now.at;
    if (text.rfind("@ ", 0) == 0) {
      now.names.names.clear();
      for (const std::string& part : parts_of(std::string_view(text).substr(2), ';')) {
        const std::size_t colon = part.find(':');
        if (colon == std::string::npos) {
          now.today = *Date::parse(part);
          continue;
        }
        const std::string label = part.substr(0, colon);
        const NamedThing what = label == "sites"      ? NamedThing::site
                                : label == "colonies" ? NamedThing::colony
                                                      : NamedThing::hive;
        for (const std::string& name : parts_of(std::string_view(part).substr(colon + 1), ','))
          now.names.names.push_back(corpus_name(name, what));
      }
    } else if (text.rfind("> ", 0) == 0) {
      now.line = with_line_ends(std::string_view(text).substr(2));
      cases.push_back(now);
    } else if (!text.empty() && text[0] != '#' && !cases.empty()) {
      cases.back().wanted.push_back(text);
    }
  }
  return cases;
}

inline std::vector<std::string> told(std::string_view line, const NameBook& names, Date today) {
  const auto reading = read_note(line, names, today);
  if (!reading) return {"problem " + one_line(reading.problem())};
  std::vector<std::string> lines;
  for (const ProposedEntry& entry : reading->entries) {
    if (std::holds_alternative<Note>(entry.payload)) continue;  // told as what was left
    lines.push_back(entry.happened.iso() + (entry.hour ? " " + plain_number(*entry.hour) + " h" : "") + " " +
                    read_back(entry.payload));
  }
  if (!reading->left_as_text.empty()) lines.push_back("left " + reading->left_as_text);
  for (const std::string& question : reading->questions) lines.push_back("asked " + question);
  if (reading->about_nobody) lines.push_back("about nobody");
  return lines;
}

}  // namespace beegarth::entries
