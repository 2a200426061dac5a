#include "entries/note_clause.hpp"

#include <utility>

#include "entries/note_vocabulary.hpp"

namespace beegarth::entries {
namespace {

bool is_one_of(const NoteWord& word, WordClass what) {
  return word.mark == Mark::word && is_word_of(what, word.lemma);
}
bool is_measure(const NoteWord& word) {
  return word.mark == Mark::number || is_one_of(word, WordClass::measure);
}

}  // namespace

bool is_doubt(const NoteWord& word) {
  return is_one_of(word, WordClass::doubt);
}
bool is_negation(const NoteWord& word) {
  return is_one_of(word, WordClass::negation);
}
bool is_act(const NoteWord& word) {
  return is_one_of(word, WordClass::act);
}
bool is_filler(const NoteWord& word) {
  return is_one_of(word, WordClass::filler);
}
bool is_weather_mark(const NoteWord& word) {
  return is_one_of(word, WordClass::weather);
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

std::vector<Matched> match_all(std::span<const NoteWord> words, const ItemList& items) {
  std::vector<Matched> found;
  for (std::size_t at = 0; at < words.size();) {
    Matched best{.at = at};
    for (const Item* item : items.beginning_with(words[at])) {
      PatternMatch match = item->pattern.match(words, at);
      if (match.words > best.match.words) best = {at, std::move(match), item};
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
             (after < words.size() && !taken[after] &&
              (is_measure(words[after]) || is_one_of(words[after], WordClass::motion)));
    };
    changed = std::erase_if(found, doubtful) > 0;
  }
}

bool turned_round(std::span<const NoteWord> words, std::span<const Matched> found) {
  std::vector<Matched> sure;
  for (const Matched& each : found) {
    if (!each.item->never) sure.push_back(each);
  }
  const std::vector<bool> taken = taken_by(sure, words.size());
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (!taken[i] && (is_negation(words[i]) || is_act(words[i]))) return true;
  }
  return false;
}

bool names_another(std::span<const NoteWord> words, std::span<const Matched> found) {
  const std::vector<bool> taken = taken_by(found, words.size());
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (!taken[i] && !words[i].names.empty()) return true;
  }
  return false;
}

std::vector<bool> taken_by(std::span<const Matched> found, std::size_t words) {
  std::vector<bool> taken(words, false);
  for (const Matched& each : found)
    std::fill_n(taken.begin() + static_cast<std::ptrdiff_t>(each.at), each.match.words, true);
  return taken;
}

}  // namespace beegarth::entries
