// The words of the typed line, all in one place: what stands for what, and what makes a statement doubtful.
// Phrases are in note_items_*.cpp. Private to the room.
#pragma once

#include <optional>
#include <string_view>

namespace beegarth::entries {

// The word of the trade that a word in lower case stands for: "frames" is "comb". What is not known is its
// own.
std::string_view lemma_of(std::string_view raw);

enum class WordClass {
  doubt,       // a wish, a doubt or a plan: nothing that was seen or done
  negation,    // turns a statement round
  act,         // may have been done rather than seen
  measure,     // a number wants to stand by it
  filler,      // says nothing
  each,        // said of several names: of every one of them
  weather,     // begins or goes on about the weather
  day_part,    // follows a day
  lead_in,     // may stand before a name: "checked Alder"
  deed_to,     // a deed that may stand before the name of whom it was done to: "fed Alder"
  heading,     // may stand before a colon and is nobody's name
  motion,      // behind what was moved rather than seen
  correction,  // takes back the number before: "9 seams, no, 8"
  joining,     // never part of a plant's or a thing's name
};
bool is_word_of(WordClass what, std::string_view lemma);

// "seven" is 7, "twenty" 20; no numbers beyond ninety.
std::optional<int> spoken_number(std::string_view raw);
// "third" is 3, "twenty-first" 21.
std::optional<int> spoken_day(std::string_view raw);

}  // namespace beegarth::entries
