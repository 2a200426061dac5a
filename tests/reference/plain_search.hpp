// Finding entries the obvious way: every entry looked at, every word of it compared. Slow.
#pragma once

#include <algorithm>
#include <cctype>
#include <map>
#include <span>
#include <string>
#include <vector>

#include "book/find.hpp"
#include "entries/read_back.hpp"

namespace beegarth::reference {

// Words of letters and digits, small; ASCII is enough for what the tests say.
inline std::vector<std::string> plain_words(const std::string& text) {
  std::vector<std::string> words(1);
  for (const char c : text) {
    if (std::isalnum(static_cast<unsigned char>(c)))
      words.back() += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    else if (!words.back().empty())
      words.emplace_back();
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

inline bool has_word(const std::string& text, const std::string& beginning) {
  const auto words = plain_words(text);
  return std::any_of(words.begin(), words.end(),
                     [&](const std::string& word) { return word.rfind(beginning, 0) == 0; });
}

// The ids of all that fit, newest first. `arrived` is in the order in which the entries came into the book;
// words without anything but letters and digits; names: of every colony, as last said.
inline std::vector<EntryId> plain_search(std::span<const entries::Entry> arrived,
                                         const book::Wanted& wanted) {
  std::map<std::string, std::string> names;
  for (const auto& entry : arrived)
    if (const auto* began = std::get_if<entries::ColonyBegan>(&entry.payload))
      names[began->colony.text()] = began->name;
  std::vector<const entries::Entry*> fits;
  for (const auto& entry : arrived) {
    const std::string colony = entries::colony_of(entry.payload).text();
    const std::string text = entries::read_back(entry.payload) + " " + entry.who + " " + names[colony];
    const auto& kinds = wanted.kinds;
    const bool kind_fits =
        !kinds || std::find(kinds->begin(), kinds->end(), entries::kind_name(entry.payload)) != kinds->end();
    const bool about_fits = !wanted.colonies || std::find(wanted.colonies->begin(), wanted.colonies->end(),
                                                          ColonyId(colony)) != wanted.colonies->end();
    const bool words_fit = std::all_of(wanted.words.begin(), wanted.words.end(),
                                       [&](const std::string& word) { return has_word(text, word); });
    if (kind_fits && about_fits && words_fit && (!wanted.from || entry.happened >= *wanted.from) &&
        (!wanted.to || entry.happened <= *wanted.to))
      fits.push_back(&entry);
  }
  std::stable_sort(fits.begin(), fits.end(),
                   [](const auto* a, const auto* b) { return a->happened < b->happened; });
  std::vector<EntryId> ids;
  for (auto one = fits.rbegin(); one != fits.rend(); ++one) ids.push_back((*one)->id);
  return ids;
}

}  // namespace beegarth::reference
