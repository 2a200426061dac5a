// Text is UTF-8 and nothing else (RFC 3629).
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace beegarth {

// Where the first byte stands that is not part of well-formed UTF-8; nullopt where all is well.
// Strict: no overlong forms, no surrogates, nothing above U+10FFFF (Unicode standard, table 3-7).
std::optional<std::size_t> first_bad_utf8(std::string_view text);
bool is_utf8(std::string_view bytes);

// UTF-16 code units of well-formed UTF-8, because RFC 8785 sorts names by them.
std::u16string utf16_of(std::string_view utf8);

// Small letters for A to Z and for the letters of Latin-1 (À to Þ); everything else as it is.
std::string folded(std::string_view utf8);

}  // namespace beegarth
