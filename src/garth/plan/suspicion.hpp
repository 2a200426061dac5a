// Suspect colonies that have ended and still need an answer.
#pragma once

#include "garth/session.hpp"
#include "work/needs.hpp"

namespace beegarth::garth {

// A suspect colony that has ended leaves its hive and its site suspect: it is added to the colonies of the
// input.
void add_suspects_left_behind(const Session& session, work::NeedsInput& input);

}  // namespace beegarth::garth
