#include "almanac/sun.hpp"

#include <erfa.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace beegarth::almanac {
namespace {

constexpr double rad = std::numbers::pi / 180;
constexpr double ms_per_day = 86'400'000;
constexpr double jd_1970 = 2440587.5;  // of 1970-01-01T00:00:00
constexpr double day_s = 86400;
constexpr double metres_per_au = 149597870700.0;    // IAU 2012 resolution B2
constexpr double light_au_per_day = 173.144632674;  // c in au a day
constexpr double earth_spin_rad_s = 7.292115e-5;    // IERS conventions
constexpr double light_m_s = 299792458;
constexpr int wgs84 = 1;  // ERFA's number for that ellipsoid

using Vector = std::array<double, 3>;

double norm(const Vector& v) {
  return std::sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
}

// Direction and distance (au) of the sun from the middle of the earth as it is seen: moved back by the light
// time, and aberrated by the earth's speed. Axes of the celestial frame (ICRS).
Vector apparent_sun_celestial(double tt_low) {
  std::array<double[3], 2> from_sun{};     // position (au) and velocity (au/day) of the earth
  std::array<double[3], 2> from_middle{};  // the same from the barycentre of the solar system
  eraEpv00(jd_1970, tt_low, from_sun.data(), from_middle.data());
  Vector sun{};
  for (std::size_t i = 0; i < 3; ++i) sun[i] = -from_sun[0][i];
  const double light_days = norm(sun) / light_au_per_day;
  for (std::size_t i = 0; i < 3; ++i) sun[i] -= (from_middle[1][i] - from_sun[1][i]) * light_days;

  const double distance_au = norm(sun);
  double direction[3];
  double speed[3];  // of the earth, in units of the speed of light
  double square = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    direction[i] = sun[i] / distance_au;
    speed[i] = from_middle[1][i] / light_au_per_day;
    square += speed[i] * speed[i];
  }
  double seen[3];
  eraAb(direction, speed, distance_au, std::sqrt(1 - square), seen);
  return {seen[0] * distance_au, seen[1] * distance_au, seen[2] * distance_au};
}

// The same in axes that turn with the earth: x through Greenwich, z through the pole. IAU 2000B nutation (1
// mas); polar motion (under 0.0002 degrees) is left out.
Vector to_earth_axes(const Vector& celestial, double ut_low, double tt_low) {
  double dpsi = 0;
  double deps = 0;
  double obliquity = 0;
  double bias[3][3];
  double precession[3][3];
  double bias_precession[3][3];
  double nutation[3][3];
  double whole[3][3];
  eraNut00b(jd_1970, tt_low, &dpsi, &deps);
  eraPn00(jd_1970, tt_low, dpsi, deps, &obliquity, bias, precession, bias_precession, nutation, whole);
  const double sidereal =
      eraGmst00(jd_1970, ut_low, jd_1970, tt_low) + eraEe00(jd_1970, tt_low, obliquity, dpsi);
  eraRz(sidereal, whole);
  double in[3] = {celestial[0], celestial[1], celestial[2]};
  double out[3];
  eraRxp(whole, in, out);
  return {out[0], out[1], out[2]};
}

// From the place itself instead of the middle of the earth: parallax, and the aberration of the daily turn.
Vector seen_from(const Place& place, const Vector& sun_au) {
  double here_m[3];
  eraGd2gc(wgs84, place.longitude_deg * rad, place.latitude_deg * rad, place.elevation_m, here_m);
  Vector sight{};
  for (std::size_t i = 0; i < 3; ++i) sight[i] = sun_au[i] - here_m[i] / metres_per_au;
  const double distance = norm(sight);
  const double spin = earth_spin_rad_s / light_m_s;
  return {sight[0] / distance - here_m[1] * spin, sight[1] / distance + here_m[0] * spin,
          sight[2] / distance};
}

struct Horizontal {
  double azimuth_deg;
  double elevation_deg;
};

Horizontal to_horizon(const Place& place, const Vector& v) {
  const double lat = place.latitude_deg * rad;
  const double lon = place.longitude_deg * rad;
  const double outward = v[0] * std::cos(lon) + v[1] * std::sin(lon);
  const double east = v[1] * std::cos(lon) - v[0] * std::sin(lon);
  const double north = v[2] * std::cos(lat) - outward * std::sin(lat);
  const double up = v[2] * std::sin(lat) + outward * std::cos(lat);
  double azimuth = std::atan2(east, north) / rad;
  if (azimuth < 0) azimuth += 360;
  if (azimuth >= 360) azimuth = 0;
  return {azimuth, std::atan2(up, std::hypot(east, north)) / rad};
}

Horizontal airless(const Place& place, std::int64_t utc_ms, double delta_t_s) {
  const double ut_low = static_cast<double>(utc_ms) / ms_per_day;
  const double tt_low = ut_low + delta_t_s / day_s;
  return to_horizon(place, seen_from(place, to_earth_axes(apparent_sun_celestial(tt_low), ut_low, tt_low)));
}

// NREL/TP-560-34302 eq. 42, degrees; nothing where the whole disc is below the horizon.
double refraction_deg(double elevation_deg, const Atmosphere& air) {
  constexpr double sun_radius_deg = 0.26667;
  constexpr double refraction_at_horizon_deg = 0.5667;
  if (elevation_deg < -(sun_radius_deg + refraction_at_horizon_deg)) return 0;
  return air.pressure_hPa / 1010 * (283 / (273 + air.temperature_C)) * 1.02 /
         (60 * std::tan((elevation_deg + 10.3 / (elevation_deg + 5.11)) * rad));
}

constexpr double delta_t_of_our_years_s = 69;  // 5 s more or less move no rise by a tenth of a second
constexpr double rise_elevation_deg = -0.8333;

// How far the centre stands above where the disc's upper rim touches a level horizon.
double above_rise(const Place& level, std::int64_t utc_ms) {
  return airless(level, utc_ms, delta_t_of_our_years_s).elevation_deg - rise_elevation_deg;
}

// The instant in (low, high] at which `above_rise` changes its sign, to the millisecond.
std::int64_t crossing(const Place& level, std::int64_t low, std::int64_t high, bool rising) {
  while (high - low > 1) {
    const std::int64_t middle = low + (high - low) / 2;
    ((above_rise(level, middle) >= 0) == rising ? high : low) = middle;
  }
  return high;
}

// The instant between low and high at which the sun stands highest (sign 1) or lowest (sign -1), to ten
// seconds.
std::int64_t turning_point(const Place& level, std::int64_t low, std::int64_t high, int sign) {
  while (high - low > 10'000) {
    const std::int64_t third = (high - low) / 3;
    if (sign * above_rise(level, low + third) < sign * above_rise(level, high - third)) {
      low += third;
    } else {
      high -= third;
    }
  }
  return low + (high - low) / 2;
}

struct Sample {
  std::int64_t utc_ms;
  double above_deg;
};

// Half-hourly heights of a civil day with its turning points put in, so that no short night or day falls
// between two.
std::vector<Sample> heights_of_day(const Place& level, std::int64_t midnight_ms) {
  constexpr std::int64_t step_ms = 1'800'000;
  std::vector<Sample> coarse;
  for (int i = -1; i <= 49; ++i) {
    const std::int64_t at = midnight_ms + i * step_ms;
    coarse.push_back({at, above_rise(level, at)});
  }
  std::vector<Sample> samples;
  const std::int64_t end_ms = midnight_ms + 48 * step_ms;
  for (std::size_t i = 1; i + 1 < coarse.size(); ++i) {
    samples.push_back(coarse[i]);
    const double before = coarse[i].above_deg - coarse[i - 1].above_deg;
    const double after = coarse[i + 1].above_deg - coarse[i].above_deg;
    if ((before > 0) == (after > 0)) continue;
    const std::int64_t turn =
        turning_point(level, coarse[i - 1].utc_ms, coarse[i + 1].utc_ms, before > 0 ? 1 : -1);
    if (turn >= midnight_ms && turn <= end_ms) samples.push_back({turn, above_rise(level, turn)});
  }
  std::sort(samples.begin(), samples.end(),
            [](const Sample& a, const Sample& b) { return a.utc_ms < b.utc_ms; });
  return samples;
}

}  // namespace

SunPosition sun_position(const Place& place, Instant when, const Atmosphere& air, double delta_t_s) {
  const Horizontal sun = airless(place, when.utc_ms, delta_t_s);
  const double seen = sun.elevation_deg + refraction_deg(sun.elevation_deg, air);
  return {.azimuth_deg = sun.azimuth_deg,
          .elevation_deg = seen,
          .zenith_deg = 90 - seen,
          .elevation_airless_deg = sun.elevation_deg};
}

SunTimes sun_times(const Place& place, Date date, double utc_offset_h) {
  const Place level{
      .latitude_deg = place.latitude_deg, .longitude_deg = place.longitude_deg, .elevation_m = 0};
  const std::int64_t offset_ms = std::llround(utc_offset_h * 60) * 60'000;
  const std::int64_t midnight_ms = date.day_number() * std::int64_t{86'400'000} - offset_ms;
  const int offset_minutes = static_cast<int>(offset_ms / 60'000);

  SunTimes times;
  std::int64_t light_ms = 0;
  const auto samples = heights_of_day(level, midnight_ms);
  for (std::size_t i = 1; i < samples.size(); ++i) {
    const Sample& from = samples[i - 1];
    const Sample& to = samples[i];
    const bool up_before = from.above_deg >= 0;
    const bool up_after = to.above_deg >= 0;
    if (up_before && up_after) light_ms += to.utc_ms - from.utc_ms;
    if (up_before == up_after) continue;
    const std::int64_t at = crossing(level, from.utc_ms, to.utc_ms, up_after);
    light_ms += up_after ? to.utc_ms - at : at - from.utc_ms;
    if (at >= midnight_ms + std::int64_t{86'400'000}) continue;
    auto& event = up_after ? times.sunrise : times.sunset;
    if (!event) event = Instant{at, offset_minutes};
  }
  times.daylength_h = static_cast<double>(light_ms) / 3'600'000;
  if (!times.sunrise && !times.sunset) times.polar = light_ms > 0 ? Polar::day : Polar::night;
  return times;
}

double daylength_h(double latitude_deg, int day_of_year, double horizon_deg) {
  // Forsythe et al. 1995, Ecological Modelling 80:87, the CBM model.
  const double latitude = latitude_deg * rad;
  const double turn = 0.2163108 + 2 * std::atan(0.9671396 * std::tan(0.00860 * (day_of_year - 186)));
  const double declination = std::asin(0.39795 * std::cos(turn));
  const double part = (std::sin(horizon_deg * rad) + std::sin(latitude) * std::sin(declination)) /
                      (std::cos(latitude) * std::cos(declination));
  return 24 - 24 / std::numbers::pi * std::acos(std::clamp(part, -1.0, 1.0));
}

}  // namespace beegarth::almanac
