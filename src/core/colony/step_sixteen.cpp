#include "colony/step.hpp"

namespace beegarth::colony {

void step_sixteen(const Stretch& stretch) {
  step_stretch<Float16>(stretch);
}

}  // namespace beegarth::colony
