// Where the sun is, when it rises and sets, how long the day is. ERFA does the astronomy (Earth ephemeris,
// precession-nutation, sidereal time); refraction by the formula of Reda & Andreas (NREL/TP-560-34302, eq.
// 42).
#pragma once

#include <optional>

#include "base/date.hpp"
#include "base/units.hpp"

namespace beegarth::almanac {

struct Place {
  double latitude_deg = 0;   // north positive, -90..90
  double longitude_deg = 0;  // east positive, -180..180
  double elevation_m = 0;
};

struct Atmosphere {
  double pressure_hPa = 1010;
  double temperature_C = 10;
};

struct SunPosition {
  double azimuth_deg = 0;    // 0..360, clockwise from true north
  double elevation_deg = 0;  // refracted
  double zenith_deg = 0;     // refracted
  double elevation_airless_deg = 0;
};

// UT1 is taken as UTC. Agrees with the published example to 0.0005 degrees.
SunPosition sun_position(const Place& place, Instant when, const Atmosphere& air = {}, double delta_t_s = 69);

enum class Polar { none, day, night };

struct SunTimes {
  std::optional<Instant>
      sunrise;  // upper limb on a level horizon (centre at -0.8333 degrees), with the offset asked for
  std::optional<Instant> sunset;
  double daylength_h = 0;
  Polar polar = Polar::none;
};

// Both on the civil date `date` at that offset.
SunTimes sun_times(const Place& place, Date date, double utc_offset_h);

// CBM model, Forsythe et al. 1995. horizon_deg: how far the centre stands below the horizon at rise; 0.8333
// the usual.
double daylength_h(double latitude_deg, int day_of_year, double horizon_deg = 0.8333);

}  // namespace beegarth::almanac
