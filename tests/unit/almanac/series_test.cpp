#include "almanac/series.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace beegarth::almanac {
namespace {

using facts::WeatherDay;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

WeatherDay seen(int day_of_march, double min_C = 4, double max_C = 11) {
  WeatherDay day;
  day.date = *Date::from_ymd(2026, 3, day_of_march);
  day.temperature_min_C = min_C;
  day.temperature_max_C = max_C;
  day.rain_mm = 0.4;
  day.wind_m_s = 3;
  return day;
}

std::string told(const Gap& gap) {
  return gap.from.iso() + ".." + gap.to.iso() + " " + gap.quantity;
}
std::vector<std::string> told(const std::vector<Gap>& gaps) {
  std::vector<std::string> list;
  for (const Gap& gap : gaps) list.push_back(told(gap));
  return list;
}

TEST(Series, is_put_in_the_order_of_dates) {
  const std::vector<WeatherDay> days{seen(3), seen(1), seen(2)};
  const SeriesReport report = put_in_order(days);
  ASSERT_EQ(report.days.size(), 3U);
  EXPECT_EQ(report.days[0].date.day(), 1);
  EXPECT_EQ(report.days[2].date.day(), 3);
  EXPECT_THAT(report.gaps, IsEmpty());
  EXPECT_THAT(report.oddities, IsEmpty());
}

TEST(Series, of_two_rows_for_one_date_keeps_the_later_given) {
  const std::vector<WeatherDay> days{seen(1, 4, 11), seen(2), seen(1, 5, 12)};
  const SeriesReport report = put_in_order(days);
  ASSERT_EQ(report.days.size(), 2U);
  EXPECT_EQ(report.days[0].temperature_max_C, 12);
}

TEST(Series, reports_dates_that_are_missing_as_one_gap) {
  const std::vector<WeatherDay> days{seen(1), seen(5), seen(6), seen(8)};
  EXPECT_THAT(told(put_in_order(days).gaps),
              ElementsAre("2026-03-02..2026-03-04 every value", "2026-03-07..2026-03-07 every value"));
}

TEST(Series, reports_a_run_of_one_missing_quantity_and_fills_nothing) {
  std::vector<WeatherDay> days{seen(1), seen(2), seen(3), seen(4)};
  days[1].rain_mm.reset();
  days[2].rain_mm.reset();
  days[3].wind_m_s.reset();
  days[3].temperature_min_C.reset();
  const SeriesReport report = put_in_order(days);
  EXPECT_THAT(told(report.gaps),
              ElementsAre("2026-03-02..2026-03-03 rain", "2026-03-04..2026-03-04 temperature",
                          "2026-03-04..2026-03-04 wind"));
  EXPECT_FALSE(report.days[1].rain_mm);
}

TEST(Series, a_missing_date_parts_two_runs_of_one_missing_quantity) {
  std::vector<WeatherDay> days{seen(1), seen(2), seen(4)};
  for (WeatherDay& day : days) day.rain_mm.reset();
  EXPECT_THAT(told(put_in_order(days).gaps),
              ElementsAre("2026-03-01..2026-03-02 rain", "2026-03-03..2026-03-03 every value",
                          "2026-03-04..2026-03-04 rain"));
}

TEST(Series, names_what_looks_wrong_and_keeps_it) {
  std::vector<WeatherDay> days{seen(1, 12, 4), seen(2), seen(3)};
  days[1].gust_m_s = 1;
  days[2].rain_mm = 230;
  const SeriesReport report = put_in_order(days);
  EXPECT_THAT(report.oddities,
              ElementsAre("2026-03-01: the minimum is above the maximum",
                          "2026-03-02: the gust is below the mean wind", HasSubstr("more than 200 mm")));
  EXPECT_EQ(report.days[0].temperature_min_C, 12);
}

TEST(Series, asks_whether_a_hot_series_is_in_fahrenheit) {
  const std::vector<WeatherDay> days{seen(1, 40, 58), seen(2, 41, 60), seen(3, 38, 44)};
  EXPECT_THAT(put_in_order(days).oddities, ElementsAre(HasSubstr("Fahrenheit")));
}

TEST(Series, of_nothing_is_nothing) {
  const SeriesReport report = put_in_order({});
  EXPECT_THAT(report.days, IsEmpty());
  EXPECT_THAT(report.gaps, IsEmpty());
  EXPECT_THAT(report.oddities, IsEmpty());
}

}  // namespace
}  // namespace beegarth::almanac
