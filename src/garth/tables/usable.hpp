// Whether every room can reckon with tables that a keeper has changed.
#pragma once

#include "base/problem.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {

// The first problem that a room would have with them. An override that no room can use must not come into the
// book: nothing could be planned from it any more.
Outcome usable(const Tables& tables);

}  // namespace beegarth::garth
