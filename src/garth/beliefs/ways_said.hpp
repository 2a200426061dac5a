// Ways of acting as a keeper writes them, in the words of a note:
//
//   nothing
//   2026-08-10: treated with thymol for 28 days
//   today: fed 4 kg syrup; in 14 days: fed 4 kg syrup
//   2026-08-01 to 2026-09-05 every 7 days: treated with formic            one way for each of the days
//
// The words are read as docs/note.md says, as if written on that day about this colony.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "belief/suppose.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

inline constexpr std::size_t most_ways = 60;  // openapi.json says so too; a test holds it to this

// One way, or several where it gives a range of days. A Problem where a day or a word is not understood.
Expected<std::vector<belief::Way>> ways_said(const Session& session, const ColonyId& colony,
                                             std::string_view text);

}  // namespace beegarth::garth
