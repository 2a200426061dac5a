#include "almanac/sun.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace beegarth::almanac {
namespace {

Date day(int year, int month, int of_month) {
  return *Date::from_ymd(year, month, of_month);
}

TEST(SunTimes, names_polar_day_and_polar_night) {
  const SunTimes summer = sun_times({70, 25, 0}, day(2026, 6, 21), 2);
  EXPECT_FALSE(summer.sunrise || summer.sunset);
  EXPECT_EQ(summer.polar, Polar::day);
  EXPECT_EQ(summer.daylength_h, 24);
  const SunTimes winter = sun_times({70, 25, 0}, day(2026, 12, 21), 1);
  EXPECT_FALSE(winter.sunrise || winter.sunset);
  EXPECT_EQ(winter.polar, Polar::night);
  EXPECT_EQ(winter.daylength_h, 0);
}

TEST(SunTimes, stays_on_the_civil_date_even_where_the_offset_does_not_fit_the_longitude) {
  for (const double offset : {-12.0, -5.5, 0.0, 5.75, 14.0}) {
    const Date date = day(2026, 9, 23);
    const SunTimes times = sun_times({45, 0, 0}, date, offset);
    ASSERT_TRUE(times.sunrise && times.sunset) << offset;
    EXPECT_EQ(times.sunrise->local_date(), date);
    EXPECT_EQ(times.sunset->local_date(), date);
    EXPECT_EQ(times.sunrise->offset_minutes, static_cast<int>(offset * 60));
    EXPECT_NEAR(times.daylength_h, 12.1, 0.1);
  }
}

TEST(SunTimes, finds_the_short_nights_and_days_at_the_edge_of_the_polar_seasons) {
  // Somewhere between the year's normal days and polar day the night shrinks to minutes: none may be missed,
  // so the light of one day never differs from that of its neighbours by more than the hour and a half seen
  // at such places.
  const Place place{69.5, 20, 0};
  double before = sun_times(place, day(2026, 1, 1), 1).daylength_h;
  for (Date date = day(2026, 1, 2); date < day(2027, 1, 1); ++date) {
    const SunTimes times = sun_times(place, date, 1);
    EXPECT_LT(std::abs(times.daylength_h - before), 1.5) << date.iso();
    EXPECT_EQ(times.polar != Polar::none, !times.sunrise && !times.sunset) << date.iso();
    before = times.daylength_h;
  }
}

TEST(SunTimes, has_the_sun_at_the_horizon_at_both_events) {
  const Place place{52.5, -1.9, 0};
  const SunTimes times = sun_times(place, day(2026, 5, 1), 1);
  EXPECT_NEAR(sun_position(place, *times.sunrise).elevation_airless_deg, -0.8333, 1e-5);
  EXPECT_NEAR(sun_position(place, *times.sunset).elevation_airless_deg, -0.8333, 1e-5);
}

TEST(SunPosition, is_finite_at_the_poles_and_overhead) {
  for (const double latitude : {-90.0, 0.0, 90.0}) {
    for (int hour = 0; hour < 24; ++hour) {
      const Instant when{day(2026, 3, 20).day_number() * std::int64_t{86'400'000} + hour * 3'600'000, 0};
      const SunPosition sun = sun_position({latitude, 180, 0}, when);
      EXPECT_TRUE(std::isfinite(sun.azimuth_deg) && std::isfinite(sun.elevation_deg));
      EXPECT_GE(sun.azimuth_deg, 0);
      EXPECT_LT(sun.azimuth_deg, 360);
    }
  }
}

TEST(Daylength, is_finite_and_within_a_day_everywhere) {
  for (int latitude = -90; latitude <= 90; ++latitude) {
    for (int of_year = 1; of_year <= 366; of_year += 5) {
      const double hours = daylength_h(latitude, of_year);
      EXPECT_TRUE(hours >= 0 && hours <= 24) << latitude << " " << of_year;
    }
  }
}

}  // namespace
}  // namespace beegarth::almanac
