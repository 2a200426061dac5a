// What the days to come, brood and boxes say for and against each class of treatment that a plan asks for.
#pragma once

#include <vector>

#include "base/expected.hpp"
#include "facts/need.hpp"
#include "garth/tables/tables.hpp"
#include "work/needs.hpp"

namespace beegarth::garth {

// Every need to treat says what duty/treatment_gate answers for the classes that the keeper's rules leave; it
// is held where the gate speaks against all of them.
Outcome judge_treatments(std::vector<facts::Need>& needs, const work::NeedsInput& input,
                         const Tables& tables);

}  // namespace beegarth::garth
