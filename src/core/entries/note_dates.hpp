// Days and hours as people say them. Private to the room.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "entries/note_words.hpp"

namespace beegarth::entries {

struct SaidDay {
  std::size_t words = 0;  // how many it took; 0 where no date stands there
  Date date;
};
struct SaidHour {
  std::size_t words = 0;
  double hour = 0;
};

// The date that begins with the first word. Without a year it is the last such day, for a forecast the next.
// A problem where there is no such day, or where it could be read in two ways.
Expected<SaidDay> said_day(std::span<const NoteWord> words, Date today, bool forecast);
SaidHour said_hour(std::span<const NoteWord> words);

}  // namespace beegarth::entries
