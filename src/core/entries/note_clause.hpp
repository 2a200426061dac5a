// Pieces of a typed line: clauses, their segments, the words that make one doubtful, and what of the known
// patterns stands in them. Private to the room.
#pragma once

#include <algorithm>
#include <cstddef>
#include <span>
#include <vector>

#include "entries/note_items.hpp"
#include "entries/note_words.hpp"

namespace beegarth::entries {

enum class State {
  open,
  head,       // said whom and when
  read,       // went into a field
  correction  // takes back a number; read where that number is
};

struct Clause {
  std::vector<NoteWord> words;
  std::vector<State> state;  // one a word

  std::size_t size() const { return words.size(); }
  std::span<const NoteWord> from(std::size_t begin, std::size_t end) const {
    return std::span(words).subspan(begin, end - begin);
  }
  void take(std::size_t at, std::size_t count, State as) {
    std::fill_n(state.begin() + static_cast<std::ptrdiff_t>(at), count, as);
  }
};

struct Segment {
  std::size_t begin = 0;
  std::size_t end = 0;
  bool text = false;  // as a whole
};

std::vector<Segment> segments_of(const Clause& clause);

// A wish, a doubt or a plan is not something seen: the whole segment stays text.
bool is_doubt(const NoteWord& word);
// What turns a statement round, where no pattern took it.
bool is_negation(const NoteWord& word);
// An act that no pattern took: what else is said may be what was done and not what was seen.
bool is_act(const NoteWord& word);
bool is_filler(const NoteWord& word);
bool is_weather_mark(const NoteWord& word);

struct Matched {
  std::size_t at = 0;
  PatternMatch match;
  const Item* item = nullptr;
};

// The longest pattern at each word, from the left.
std::vector<Matched> match_all(std::span<const NoteWord> words, const ItemList& items);
// Takes back what stands next to a number or a measure that nothing took: "brood 6 seams" can be read in two
// ways.
void drop_ambiguous(std::span<const NoteWord> words, std::vector<Matched>& found);
// A negation or an act that nothing took: all of it may be meant otherwise.
bool turned_round(std::span<const NoteWord> words, std::span<const Matched> found);
// A known name that nothing took.
bool names_another(std::span<const NoteWord> words, std::span<const Matched> found);
// For each word: whether one of the matches took it.
std::vector<bool> taken_by(std::span<const Matched> found, std::size_t words);

}  // namespace beegarth::entries
