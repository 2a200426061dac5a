// How needs are named: "feed/alder", "mouse-guard/alder/2026", "stocks/all/2027-4". A key that no rule of
// ours ever makes answers nothing.
#pragma once

#include <string_view>

#include "base/expected.hpp"

namespace beegarth::work {

// Whether the kind is one of ours and the rest has that kind's shape; not whether its place is known.
Outcome sound_need_key(std::string_view key);

}  // namespace beegarth::work
