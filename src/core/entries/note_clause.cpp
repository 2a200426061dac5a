#include "entries/note_clause.hpp"

#include <array>
#include <string_view>
#include <utility>

namespace beegarth::entries {
namespace {

template <std::size_t N>
bool is_one_of(const NoteWord& word, const std::array<std::string_view, N>& list) {
  return word.mark == Mark::word && std::find(list.begin(), list.end(), word.lemma) != list.end();
}

constexpr auto doubts = std::to_array<std::string_view>(
    {"maybe",    "perhaps", "possibly", "probably", "might", "may",    "if",       "unless", "should",
     "must",     "need",    "needs",    "needed",   "want",  "wants",  "will",     "would",  "could",
     "next",     "since",   "until",    "till",     "plan",  "todo",   "remember", "order",  "later",
     "tomorrow", "before",  "last",     "expect",   "soon",  "almost", "unsure",   "think",  "guess"});
constexpr auto negations = std::to_array<std::string_view>(
    {"no",     "not",     "without", "never",   "none",   "nothing", "nor",     "neither",
     "hardly", "barely",  "gone",    "missing", "absent", "lost",    "lacking", "nil",
     "few",    "stopped", "less",    "more",    "than",   "except"});
constexpr auto acts = std::to_array<std::string_view>({"taken", "removed", "added", "given", "fed", "moved",
                                                       "swapped", "shaken", "shook", "united", "split",
                                                       "transferred", "killed", "bought", "sold", "treated"});
// Words that a number wants to stand by. Left over next to something understood, they make it doubtful.
constexpr auto measures = std::to_array<std::string_view>(
    {"seam",  "comb",   "brood", "cell", "cup",        "bee",      "mite",     "kg",      "g",    "lb",
     "oz",    "%",      "day",   "week", "super",      "store",    "cm",       "m",       "ft",   "l",
     "litre", "litres", "ml",    "f",    "k",          "bft",      "beaufort", "c",       "mm",   "inch",
     "mph",   "kn",     "h",     "min",  "box",        "boxes",    "side",     "sides",   "half", "quarter",
     "third", "/",      "x",     "-",    "and-a-half", "\xC2\xBD", "\xC2\xBC", "\xC2\xBE"});
constexpr auto fillers = std::to_array<std::string_view>(
    {"and", "the", "a", "an", "also", "plus", "&", "about", "approx", "approximately", "roughly", "around"});
constexpr auto weather_marks = std::to_array<std::string_view>({"forecast", "weather"});

bool is_measure(const NoteWord& word) {
  return word.mark == Mark::number || is_one_of(word, measures);
}

}  // namespace

bool is_doubt(const NoteWord& word) {
  return is_one_of(word, doubts);
}
bool is_negation(const NoteWord& word) {
  return is_one_of(word, negations);
}
bool is_act(const NoteWord& word) {
  return is_one_of(word, acts);
}
bool is_filler(const NoteWord& word) {
  return is_one_of(word, fillers);
}
bool is_weather_mark(const NoteWord& word) {
  return is_one_of(word, weather_marks);
}

std::vector<Segment> segments_of(const Clause& clause) {
  std::vector<Segment> segments;
  for (std::size_t begin = 0; begin < clause.size();) {
    std::size_t end = begin;
    while (end < clause.size() && clause.words[end].mark != Mark::segment_end) ++end;
    if (end > begin) segments.push_back({begin, end});
    begin = end + 1;
  }
  return segments;
}

std::vector<Matched> match_all(std::span<const NoteWord> words, std::span<const Item> items) {
  std::vector<Matched> found;
  for (std::size_t at = 0; at < words.size();) {
    Matched best{.at = at};
    for (const Item& item : items) {
      PatternMatch match = item.pattern.match(words, at);
      if (match.words > best.match.words) best = {at, std::move(match), &item};
    }
    at += std::max<std::size_t>(1, best.match.words);
    if (best.item) found.push_back(std::move(best));
  }
  return found;
}

void drop_ambiguous(std::span<const NoteWord> words, std::vector<Matched>& found) {
  for (bool changed = true; changed;) {
    const std::vector<bool> taken = taken_by(found, words.size());
    const auto doubtful = [&](const Matched& each) {
      const std::size_t after = each.at + each.match.words;
      return (each.at > 0 && !taken[each.at - 1] && is_measure(words[each.at - 1])) ||
             (after < words.size() && !taken[after] && is_measure(words[after]));
    };
    changed = std::erase_if(found, doubtful) > 0;
  }
}

std::vector<bool> taken_by(std::span<const Matched> found, std::size_t words) {
  std::vector<bool> taken(words, false);
  for (const Matched& each : found)
    std::fill_n(taken.begin() + static_cast<std::ptrdiff_t>(each.at), each.match.words, true);
  return taken;
}

}  // namespace beegarth::entries
