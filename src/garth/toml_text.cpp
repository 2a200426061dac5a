#include "garth/toml_text.hpp"

#include <algorithm>

namespace beegarth::garth {
namespace {

// Past the string that opens at `at`, by TOML's four kinds of quotes; the end of the text where it never
// closes.
std::size_t past_string(std::string_view toml, std::size_t at) {
  const char quote = toml[at];
  const bool is_long = toml.substr(at, 3) == std::string_view(quote == '"' ? "\"\"\"" : "'''");
  const std::size_t width = is_long ? 3 : 1;
  for (std::size_t i = at + width; i < toml.size(); ++i) {
    if (toml[i] == '\\' && quote == '"') {
      ++i;
    } else if (!is_long && toml[i] == '\n') {
      return i;
    } else if (toml[i] == quote && (!is_long || toml.substr(i, 3) == toml.substr(at, 3))) {
      return i + width;
    }
  }
  return toml.size();
}

}  // namespace

std::optional<std::size_t> bare_letter_line(std::string_view toml) {
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  std::size_t at = toml.substr(0, 3) == byte_order_mark ? 3 : 0;
  while (at < toml.size()) {
    const char c = toml[at];
    if (c == '#') {
      at = std::min(toml.find('\n', at), toml.size());
    } else if (c == '"' || c == '\'') {
      at = past_string(toml, at);
    } else if (static_cast<unsigned char>(c) >= 0x80) {
      const auto end = toml.begin() + static_cast<std::ptrdiff_t>(at);
      return 1 + static_cast<std::size_t>(std::count(toml.begin(), end, '\n'));
    } else {
      ++at;
    }
  }
  return std::nullopt;
}

}  // namespace beegarth::garth
