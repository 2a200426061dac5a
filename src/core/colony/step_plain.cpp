#include "colony/step.hpp"

namespace beegarth::colony {

void step_plain(const Stretch& stretch) {
  step_stretch<float>(stretch);
}

}  // namespace beegarth::colony
