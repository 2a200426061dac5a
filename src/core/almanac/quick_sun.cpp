#include "almanac/quick_sun.hpp"

#include <cmath>
#include <numbers>

namespace beegarth::almanac {
namespace {

constexpr double per_degree = std::numbers::pi / 180;

}  // namespace

double quick_sun_elevation_deg(const Place& place, Instant when) {
  const double n =
      static_cast<double>(when.utc_ms) / 86'400'000.0 - 10957.5;  // days from 2000-01-01 12:00 UT
  const double g = (357.528 + 0.9856003 * n) * per_degree;
  const double lambda =
      (280.460 + 0.9856474 * n + 1.915 * std::sin(g) + 0.020 * std::sin(2 * g)) * per_degree;
  const double obliquity = (23.439 - 4e-7 * n) * per_degree;
  const double right_ascension = std::atan2(std::cos(obliquity) * std::sin(lambda), std::cos(lambda));
  const double sin_declination = std::sin(obliquity) * std::sin(lambda);
  const double sidereal = (280.46061837 + 360.98564736629 * n + place.longitude_deg) * per_degree;
  const double hour_angle = sidereal - right_ascension;
  const double latitude = place.latitude_deg * per_degree;
  const double cos_declination = std::sqrt(1 - sin_declination * sin_declination);
  return std::asin(std::sin(latitude) * sin_declination +
                   std::cos(latitude) * cos_declination * std::cos(hour_angle)) /
         per_degree;
}

}  // namespace beegarth::almanac
