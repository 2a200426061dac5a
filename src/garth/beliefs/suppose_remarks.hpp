// Private. What is to be said beside suppositions: a colony that may starve before a way begins, and what a
// gate speaks against though it refuses nothing.
#pragma once

#include <string>
#include <vector>

#include "garth/beliefs/suppose.hpp"

namespace beegarth::garth {

Expected<std::vector<std::string>> remarks_on_ways(const Session& session, const SupposeAnswer& answer);

}  // namespace beegarth::garth
