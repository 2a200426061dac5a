#include "colony/step.hpp"

namespace beegarth::colony {

void step_eight(const Stretch& stretch) {
  step_stretch<Float8>(stretch);
}

}  // namespace beegarth::colony
