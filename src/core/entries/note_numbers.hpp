// Numbers said in several words become one: "two and a half", "three hundred and twelve", "half a" frame.
// Private to the room.
#pragma once

#include <string_view>
#include <vector>

#include "entries/note_words.hpp"

namespace beegarth::entries {

// "five nine" stays two numbers, and so does what a digit follows: "alder five 9 seams".
std::vector<NoteWord> join_numbers(std::string_view line, std::vector<NoteWord> words);

}  // namespace beegarth::entries
