// A guard in front of the TOML parser. toml++ 3.3 runs into undefined behaviour where a letter beyond ASCII
// stands outside quotes and comments, which TOML 1.0 does not allow anyway.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace beegarth::garth {

// The line (1 for the first) on which a byte beyond ASCII stands outside strings and comments; nullopt where
// there is none.
std::optional<std::size_t> bare_letter_line(std::string_view toml);

}  // namespace beegarth::garth
