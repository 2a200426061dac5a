#include "colony/step.hpp"

namespace beegarth::colony {

void step_block_four(Block& block, const Day& day, const std::uint32_t* ids) {
  step_block<Float4>(block, day, ids);
}

}  // namespace beegarth::colony
