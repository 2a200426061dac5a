#include "book/clock.hpp"

#include <algorithm>
#include <array>

#include "book/json_entry.hpp"

namespace beegarth::book {
namespace {

// A wall clock beyond 2100-01-01 is wrong; following it would leave no room for the entries after it.
constexpr std::int64_t latest_wall_ms = 4'102'444'800'000;

std::string hex_of(const unsigned char* bytes, std::size_t count) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string hex;
  for (std::size_t i = 0; i < count; ++i) {
    hex += digits[bytes[i] >> 4U];
    hex += digits[bytes[i] & 15U];
  }
  return hex;
}

}  // namespace

entries::Written tick(const entries::Written& latest, std::int64_t wall_utc_ms) {
  const std::int64_t now = std::clamp<std::int64_t>(wall_utc_ms, 0, latest_wall_ms);
  if (now > latest.utc_ms) return {now, 0};
  if (latest.counter + 1 < most_in_a_ms) return {latest.utc_ms, latest.counter + 1};
  return {latest.utc_ms + 1, 0};  // RFC 9562 section 6.2 lets the time run ahead when the counter is full
}

EntryId new_entry_id(const entries::Written& written, const Surroundings& surroundings) {
  std::array<unsigned char, 16> bytes{};
  surroundings.random_bytes(bytes.data(), bytes.size());
  const auto ms = static_cast<std::uint64_t>(written.utc_ms);
  for (unsigned i = 0; i < 6; ++i) bytes[i] = static_cast<unsigned char>(ms >> (8 * (5 - i)));
  bytes[6] = static_cast<unsigned char>(0x70U | (written.counter >> 8U));
  bytes[7] = static_cast<unsigned char>(written.counter);
  bytes[8] = static_cast<unsigned char>(0x80U | (bytes[8] & 0x3fU));
  std::string text = hex_of(bytes.data(), bytes.size());
  for (const std::size_t at : {20U, 16U, 12U, 8U}) text.insert(at, "-");
  return EntryId(std::move(text));
}

std::string new_device_name(const Surroundings& surroundings) {
  std::array<unsigned char, 8> bytes{};
  surroundings.random_bytes(bytes.data(), bytes.size());
  return "d-" + hex_of(bytes.data(), bytes.size());
}

}  // namespace beegarth::book
