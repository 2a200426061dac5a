// The sun's height, good to 0.02 degrees and cheap enough to ask for every hour of a thousand days.
#pragma once

#include "almanac/sun.hpp"
#include "base/date.hpp"

namespace beegarth::almanac {

// Without refraction, centre of the disc; low-precision form of the Astronomical Almanac (coefficients as in
// Michalsky 1988, Solar Energy 40:227).
double quick_sun_elevation_deg(const Place& place, Instant when);

}  // namespace beegarth::almanac
