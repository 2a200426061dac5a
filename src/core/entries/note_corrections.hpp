// A number taken back in the same breath: "9 seams, no, 8", "9 seams sorry 8 seams". Private to the room.
#pragma once

#include <cstddef>
#include <vector>

#include "entries/note_clause.hpp"

namespace beegarth::entries {

struct Correction {
  std::size_t number_at = 0;       // the word that now has the later number
  std::vector<std::size_t> words;  // what said so
};

// Puts the later number in the place of the earlier one, where there is just one that can be meant; otherwise
// both segments stay text as a whole.
std::vector<Correction> take_corrections(Clause& clause, std::vector<Segment>& segments);

}  // namespace beegarth::entries
