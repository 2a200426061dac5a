// Segments that tell of something else than what was seen or done here and now, though each word of them is
// understood. Private to the room.
#pragma once

#include <span>

#include "entries/note_words.hpp"

namespace beegarth::entries {

// "used to be 9 seams", "super off then on again": was so once, or was undone.
bool tells_of_before(std::span<const NoteWord> segment);
// "neighbour fed 3 kg": somebody else did it, to bees of their own.
bool tells_of_another_keeper(std::span<const NoteWord> segment);
// "not by me", or "put back on" after something that came off: the segment before it does not stand.
bool takes_back(std::span<const NoteWord> segment, std::span<const NoteWord> before);

}  // namespace beegarth::entries
