#include "colony/step.hpp"

namespace beegarth::colony {

void step_four(const Stretch& stretch) {
  step_stretch<Float4>(stretch);
}

}  // namespace beegarth::colony
