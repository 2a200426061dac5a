// Entries as JSON, with and without the chain. The public half stands in book.hpp.
#pragma once

#include <cstdint>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "base/expected.hpp"
#include "entries/entry.hpp"

namespace beegarth::book {

// An entry and its link in the chain of its device.
struct Link {
  entries::Entry entry;
  std::int64_t sequence = 0;  // 1 for the first entry of a device
  std::string previous;       // hash of the entry before it on that device, or 64 zeros
  std::string hash;
};

// The hash of a link: SHA-256, in hex, over the canonical JSON of everything in it but the hash itself.
std::string hash_of(const Link& link);
// One line of JSON Lines, canonical, without the line break.
std::string line_of(const Link& link);
// Strict: every name known, every value in its range. Does not compare the hash with the content.
Expected<Link> link_from_line(std::string_view line, const std::string& where);

nlohmann::json json_of(const entries::Payload& payload);
Expected<entries::Payload> payload_from(std::string_view kind, const nlohmann::json& object,
                                        const std::string& where);

// The parts of an entry that are not its payload: ids, clock, names.
Outcome check_frame(const entries::Entry& entry, const std::string& where);
// Every text of the payload is UTF-8.
Outcome check_utf8(const entries::Payload& payload);

// No entry is written later than this instant (2200-01-01); a clock that says so is wrong.
inline constexpr std::int64_t latest_written_ms = 7'258'118'400'000;
inline constexpr std::uint32_t most_in_a_ms = 4096;

}  // namespace beegarth::book
