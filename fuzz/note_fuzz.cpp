// The typed line: whatever is typed, it is read or refused, every proposed entry is valid, and no word is
// lost.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "entries/note_line.hpp"

namespace {

using beegarth::Date;
using namespace beegarth::entries;

bool is_mark(char c) {
  return static_cast<unsigned char>(c) <= ' ' || c == '\x7f' ||
         std::string_view(",;:?!()\"/.%&-").find(c) != std::string_view::npos;
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Every run of other characters of the line stands in the read-back; a number and the word glued to it
// ("2kg") are two runs, because they are read as two.
bool keeps_every_word(std::string_view line, const NoteReading& reading) {
  std::string told;
  for (const std::string& each : reading.read_back) told += each + "\n";
  for (std::size_t at = 0; at < line.size();) {
    std::size_t end = at;
    while (end < line.size() && !is_mark(line[end]) && is_digit(line[end]) == is_digit(line[at])) ++end;
    if (end > at && told.find(line.substr(at, end - at)) == std::string::npos) return false;
    at = std::max(end, at + 1);
  }
  return true;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const NameBook names{{{"withy", "Withy Meadow", NamedThing::site, {}},
                               {"alder-5", "Alder 5", NamedThing::colony, 10},
                               {"town-2", "Town 2", NamedThing::colony, {}},
                               {"cellar", "Cellar Hive", NamedThing::hive, {}}}};
  const std::string_view line(reinterpret_cast<const char*>(data), size);
  const auto reading = read_note(line, names, *Date::from_ymd(2026, 6, 10));
  if (!reading) {
    if (reading.problem().what.empty()) std::abort();
    return 0;
  }
  for (const ProposedEntry& entry : reading->entries) {
    if (!validate(entry.payload)) std::abort();
  }
  if (!keeps_every_word(line, *reading)) std::abort();
  return 0;
}
