// The mixed-integer minimiser behind the plan: COIN-OR CBC on one thread, stopped by a count of nodes, never
// by a clock, so that the same plan comes out on every machine.
#pragma once

#include "work/plan.hpp"

namespace beegarth::garth {

work::MipSolver cbc_solver(int most_nodes = 400);

}  // namespace beegarth::garth
