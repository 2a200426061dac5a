// A first mapping file for a keeper's own CSV, from its header and first rows: to be read and mended by hand,
// then tried with import --dry-run.
#pragma once

#include <string>
#include <string_view>

#include "base/expected.hpp"

namespace beegarth::garth {

// TOML as docs/import.md tells it. Guessed: separator, decimal comma, marks for "not known", the column of
// the date and how it is written, and which columns are fields of the kind, by their names. What was not used
// or is still missing stands there as a comment. A Problem where the kind is unknown or the file is no CSV.
Expected<std::string> draft_map(std::string_view csv, const std::string& file, std::string_view kind);

}  // namespace beegarth::garth
