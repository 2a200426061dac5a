// What is asked of one entry on its own at the door, beyond what makes it readable (entries::validate): a
// book that holds such an entry from before can still be read.
#pragma once

#include "base/date.hpp"
#include "base/expected.hpp"
#include "entries/payloads.hpp"

namespace beegarth::garth {

// No text that is needed is blank, and nothing is younger than the day it is told of.
Outcome fit_for_the_door(const entries::Payload& payload, Date happened);

}  // namespace beegarth::garth
