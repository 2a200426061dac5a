// The typed line: whatever is typed, it is read or refused, every proposed entry is valid, and no word is
// lost.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "entries/note_line.hpp"
#include "entries/read_back.hpp"

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

void must(bool holds) {
  if (!holds) std::abort();
}

// The entries that are no text, as they are read back.
std::string understood(const NoteReading& reading) {
  std::string lines;
  for (const ProposedEntry& entry : reading.entries) {
    if (!std::holds_alternative<Note>(entry.payload))
      lines += entry.happened.iso() + " " + read_back(entry.payload) + "\n";
  }
  return lines;
}

// Names that lie inside each other, that are shared, and that are words of the grammar.
const NameBook& names() {
  static const NameBook book{{{"withy", "Withy Meadow", NamedThing::site, {}},
                              {"bank", "Bank", NamedThing::site, {}},
                              {"alder-5", "Alder 5", NamedThing::colony, 10},
                              {"alder", "Alder", NamedThing::colony, 11},
                              {"cobble", "Cobble", NamedThing::colony, 10, {TreatmentKind::amitraz}},
                              {"super", "Super", NamedThing::colony, 10},
                              {"bank-c", "Bank", NamedThing::colony, {}},
                              {"town-2", "Town 2", NamedThing::colony, {}},
                              {"alder-hive", "Alder", NamedThing::hive, {}},
                              {"cellar", "Cellar Hive", NamedThing::hive, {}}}};
  return book;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const Date today = *Date::from_ymd(2026, 6, 10);
  const std::string line(reinterpret_cast<const char*>(data), size);
  const auto reading = read_note(line, names(), today);
  if (!reading) {
    must(!reading.problem().what.empty());
    return 0;
  }
  for (const ProposedEntry& entry : reading->entries) {
    must(validate(entry.payload).has_value());
    const auto* weather = std::get_if<Weather>(&entry.payload);
    must(entry.happened <= today || (weather != nullptr && weather->forecast) ||
         std::holds_alternative<Note>(entry.payload));
    must(entry.line >= 1 && entry.line <= 1 + std::count(line.begin(), line.end(), '\n'));
  }
  for (const std::string& told : reading->read_back) {
    must(std::none_of(told.begin(), told.end(), [](unsigned char c) { return c < 0x20 && c != 0x09; }));
  }
  must(keeps_every_word(line, *reading));
  // An unknown word on a line of its own changes nothing that was understood.
  if (line.size() < 15000) {
    const auto more = read_note(line + "\nzzxq", names(), today);
    must(more.has_value() && understood(*more) == understood(*reading));
    must(more->left_as_text.find("zzxq") != std::string::npos);
  }
  return 0;
}
