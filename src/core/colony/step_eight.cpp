#include "colony/step.hpp"

namespace beegarth::colony {

void step_block_eight(Block& block, const Day& day, const std::uint32_t* ids) {
  step_block<Float8>(block, day, ids);
}

}  // namespace beegarth::colony
