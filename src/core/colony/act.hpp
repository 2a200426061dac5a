// Private. What an action does to the members, before the day begins.
#pragma once

#include "colony/colony.hpp"

namespace beegarth::colony {

void act(Ensemble& ensemble, const Model& model, const Action& action, Date date, const NoiseKey& noise);

}  // namespace beegarth::colony
