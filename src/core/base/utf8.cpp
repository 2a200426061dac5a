#include "base/utf8.hpp"

#include <array>
#include <cstdint>

namespace beegarth {
namespace {

struct Step {
  std::uint32_t code_point = 0;
  std::size_t bytes = 0;  // 0: not well formed
};

Step next_code_point(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(at);
  if (lead < 0x80) return {lead, 1};
  const std::size_t bytes = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
  if (lead < 0xc2 || lead > 0xf4 || at + bytes > text.size()) return {};
  std::uint32_t code_point = lead & (0xffU >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(at + i) & 0xc0U) != 0x80U) return {};
    code_point = (code_point << 6U) | (byte(at + i) & 0x3fU);
  }
  constexpr std::array<std::uint32_t, 5> smallest = {0, 0, 0x80, 0x800, 0x10000};
  const bool surrogate = code_point >= 0xd800 && code_point <= 0xdfff;
  if (code_point < smallest[bytes] || code_point > 0x10ffff || surrogate) return {};
  return {code_point, bytes};
}

}  // namespace

std::optional<std::size_t> first_bad_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const Step step = next_code_point(text, at);
    if (step.bytes == 0) return at;
    at += step.bytes;
  }
  return std::nullopt;
}

bool is_utf8(std::string_view bytes) {
  return !first_bad_utf8(bytes);
}

std::u16string utf16_of(std::string_view utf8) {
  std::u16string units;
  for (std::size_t at = 0; at < utf8.size();) {
    const Step step = next_code_point(utf8, at);
    if (step.bytes == 0) break;
    if (step.code_point < 0x10000) {
      units += static_cast<char16_t>(step.code_point);
    } else {
      const std::uint32_t above = step.code_point - 0x10000;
      units += static_cast<char16_t>(0xd800 + (above >> 10U));
      units += static_cast<char16_t>(0xdc00 + (above & 0x3ffU));
    }
    at += step.bytes;
  }
  return units;
}

std::string folded(std::string_view utf8) {
  std::string small(utf8);
  for (std::size_t i = 0; i < small.size(); ++i) {
    if (small[i] >= 'A' && small[i] <= 'Z') {
      small[i] = static_cast<char>(small[i] - 'A' + 'a');
    } else if (small[i] == '\xc3' && i + 1 < small.size()) {
      const auto second = static_cast<unsigned char>(small[++i]);
      const bool letter =
          second >= 0x80 && second <= 0x9e && second != 0x97;  // 0x97 is the multiplication sign
      if (letter) small[i] = static_cast<char>(second + 0x20);
    }
  }
  return small;
}

}  // namespace beegarth
