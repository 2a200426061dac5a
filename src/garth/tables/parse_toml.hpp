// Reads TOML, whatever it holds, with a guard in front of the parser: toml++ 3.3 runs into undefined
// behaviour where a table's header does not begin with a key, and where a letter beyond ASCII stands outside
// quotes and comments. TOML 1.0 allows neither.
#pragma once

#include <toml++/toml.h>

#include <optional>
#include <string>
#include <string_view>

#include "base/expected.hpp"

namespace beegarth::garth {

struct TomlFault {
  std::size_t line = 0;  // 1 for the first
  const char* what = "";
};

// What the parser must not be shown; nullopt where the text is fit to be parsed, well or not.
std::optional<TomlFault> unfit_for_parser(std::string_view toml);

// `name` is the file's, for problems: bad input at "name:line".
Expected<toml::table> parse_toml(std::string_view text, const std::string& name);

}  // namespace beegarth::garth
