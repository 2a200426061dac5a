// Whole files in and out, with plain problems.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "base/expected.hpp"

namespace beegarth::garth {

// Refuses folders, files that cannot be read and files larger than `most_bytes`.
Expected<std::string> read_file(const std::string& path, std::size_t most_bytes = std::size_t{512} << 20);

// The problem with writing to this path, told before the work for it is done.
Outcome may_be_written(const std::string& path);

// Writes to a new file beside it and renames that, so that the old file stands until the new one is whole.
// Follows links; refuses devices, folders and books.
Outcome write_file(const std::string& path, std::string_view bytes);

}  // namespace beegarth::garth
