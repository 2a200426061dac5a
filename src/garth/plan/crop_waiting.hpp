// Which lots of honey wait for their next step: taken and not extracted, extracted and the wet combs not
// told.
#pragma once

#include <span>

#include "entries/entry.hpp"
#include "work/needs.hpp"

namespace beegarth::garth {

// Fills in to_extract and wet_combs as of input.today.
void take_crop_waiting(std::span<const entries::Entry> standing, work::NeedsInput& input);

}  // namespace beegarth::garth
