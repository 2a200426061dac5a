#include "colony/step.hpp"

namespace beegarth::colony {

void step_block_plain(Block& block, const Day& day, const std::uint32_t* ids) {
  step_block<float>(block, day, ids);
}

}  // namespace beegarth::colony
