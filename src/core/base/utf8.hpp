// Whether bytes are text in UTF-8.
#pragma once

#include <string_view>

namespace beegarth {

// Strict: no overlong forms, no surrogates, nothing above U+10FFFF (Unicode standard, table 3-7).
bool is_utf8(std::string_view bytes);

}  // namespace beegarth
