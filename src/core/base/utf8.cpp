#include "base/utf8.hpp"

#include <cstddef>

namespace beegarth {
namespace {

// How many bytes the sequence that `lead` opens has; 0 where it opens none.
std::size_t sequence_length(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return 2;
  if (lead >= 0xE0 && lead <= 0xEF) return 3;
  if (lead >= 0xF0 && lead <= 0xF4) return 4;
  return 0;
}

// Overlong forms, surrogates and what lies above U+10FFFF show in the second byte (Unicode standard, table
// 3-7).
bool second_byte_fits(unsigned char lead, unsigned char second) {
  if (lead == 0xE0) return second >= 0xA0 && second <= 0xBF;
  if (lead == 0xED) return second >= 0x80 && second <= 0x9F;
  if (lead == 0xF0) return second >= 0x90 && second <= 0xBF;
  if (lead == 0xF4) return second >= 0x80 && second <= 0x8F;
  return second >= 0x80 && second <= 0xBF;
}

}  // namespace

bool is_utf8(std::string_view bytes) {
  for (std::size_t i = 0; i < bytes.size();) {
    const auto lead = static_cast<unsigned char>(bytes[i]);
    const std::size_t length = sequence_length(lead);
    if (length == 0 || i + length > bytes.size()) return false;
    if (length > 1 && !second_byte_fits(lead, static_cast<unsigned char>(bytes[i + 1]))) return false;
    for (std::size_t k = 2; k < length; ++k) {
      if ((static_cast<unsigned char>(bytes[i + k]) & 0xC0U) != 0x80U) return false;
    }
    i += length;
  }
  return true;
}

}  // namespace beegarth
