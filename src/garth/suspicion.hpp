// How the suspicion of a notifiable disease goes from colony to colony.
#pragma once

#include "garth/session.hpp"
#include "work/needs.hpp"

namespace beegarth::garth {

// Follows splits and unions: what came from a suspect colony, or took one in, is suspect as well until the
// inspector has cleared it. A suspect colony that has ended leaves its hive and its site suspect: it is added
// to the colonies of the input.
void pass_on_suspicion(const Session& session, work::NeedsInput& input);

}  // namespace beegarth::garth
