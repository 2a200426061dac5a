// The boxes to write in by hand, in the order in which a filled sheet is keyed in: that of the entry's own
// fields.
#pragma once

#include <vector>

#include "facts/dwelling.hpp"
#include "facts/need.hpp"
#include "scene/layout.hpp"

namespace beegarth::garth {

// Rows of boxes for one job; none where there is nothing to note but that it was done.
std::vector<std::vector<scene::WriteIn>> boxes_of(const facts::Need& need, const facts::Dwelling* dwelling);

}  // namespace beegarth::garth
