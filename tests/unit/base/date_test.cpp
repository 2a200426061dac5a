#include "base/date.hpp"

#include <gtest/gtest.h>

namespace beegarth {
namespace {

TEST(Date, reads_and_writes_iso_dates) {
  const auto date = Date::parse("2026-06-05");
  ASSERT_TRUE(date);
  EXPECT_EQ(date->iso(), "2026-06-05");
  EXPECT_EQ(date->weekday(), 5);
  EXPECT_EQ(date->day_of_year(), 156);
}

TEST(Date, refuses_what_is_no_day) {
  for (const char* text :
       {"2026-02-29", "2026-13-01", "2026-00-10", "26-06-05", "2026-6-5", "", "2026-06-05T00:00"}) {
    EXPECT_FALSE(Date::parse(text)) << text;
  }
}

TEST(Date, knows_leap_years) {
  EXPECT_TRUE(Date::parse("2024-02-29"));
  EXPECT_FALSE(Date::parse("1900-02-29"));
  EXPECT_EQ(*Date::parse("2024-03-01") - *Date::parse("2024-02-28"), 2);
}

TEST(Instant, round_trips_with_its_offset) {
  for (const char* text :
       {"2003-10-17T12:30:30-07:00", "2026-06-05T00:00:00Z", "1969-12-31T23:59:59.250+05:30"}) {
    const auto instant = Instant::parse_rfc3339(text);
    ASSERT_TRUE(instant) << text;
    EXPECT_EQ(instant->rfc3339(), text);
  }
}

TEST(Instant, gives_the_local_date_and_hour) {
  const auto instant = Instant::parse_rfc3339("2026-01-01T00:30:00+13:00");
  ASSERT_TRUE(instant);
  EXPECT_EQ(instant->local_date().iso(), "2026-01-01");
  EXPECT_DOUBLE_EQ(instant->local_hour(), 0.5);
}

TEST(Instant, refuses_what_is_no_instant) {
  for (const char* text : {"2026-06-05", "2026-06-05T25:00:00Z", "2026-06-05T10:00:00",
                           "2026-06-05T10:00:00+25:00", "2026-06-05T10:00:00.Z", "2026-06-05T10:00"}) {
    EXPECT_FALSE(Instant::parse_rfc3339(text)) << text;
  }
}

}  // namespace
}  // namespace beegarth
