// The demo book: an invented keeper and invented sites, always the same to the last bit.
#pragma once

#include <cstdint>
#include <string>

#include "base/expected.hpp"

namespace beegarth::garth {

// Writes a new book at `path`; fails where there is a file already. The weather is drawn by the small
// generator. Returns the number of entries.
Expected<int> write_demo(const std::string& path, std::uint64_t seed);

}  // namespace beegarth::garth
