#include "almanac/hours.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace beegarth::almanac {
namespace {

constexpr Place chalk{51.3, -1.5, 120};

// Plain numbers, so that these tests hold whatever the shipped table says.
HourRules rules() {
  HourRules r{};
  r.flight_none_C = 12;
  r.flight_full_C = 20;
  r.flight_slow_hot_C = 35;
  r.flight_stop_hot_C = 42;
  r.flight_wind_slow_m_s = 2;
  r.flight_wind_stop_m_s = 6;
  r.flight_light_full_W_m2 = 400;
  r.wind_2m_of_10m = 0.5;
  r.rain_stops_mm = 0.1;
  r.opening_min_C = 13;
  r.opening_max_C = 35;
  r.opening_wind_max_m_s = 5;
  r.horizon_deg = 0.8333;
  return r;
}

HourWeather june(const char* time, double temperature_C, double rain_mm = 0, double wind_m_s = 1) {
  return {*Instant::parse_rfc3339(time), temperature_C, rain_mm, wind_m_s, std::nullopt};
}
HourFitness noon(double temperature_C, double rain_mm = 0, double wind_m_s = 1) {
  return hour_fitness(june("2026-06-05T12:00:00+01:00", temperature_C, rain_mm, wind_m_s), chalk, rules());
}

TEST(Hours, a_mild_still_dry_noon_limits_nothing) {
  const HourFitness fit = noon(22);
  EXPECT_EQ(fit.flight, 1);
  EXPECT_EQ(fit.flight_limit, Limit::none);
  EXPECT_TRUE(fit.opening);
  EXPECT_EQ(fit.opening_limit, Limit::none);
}

TEST(Hours, flight_rises_in_a_straight_line_from_the_cold_limit_to_the_full_one) {
  EXPECT_EQ(noon(12).flight, 0);
  EXPECT_DOUBLE_EQ(noon(14).flight, 0.25);
  EXPECT_DOUBLE_EQ(noon(18).flight, 0.75);
  EXPECT_EQ(noon(14).flight_limit, Limit::cold);
}

TEST(Hours, flight_ends_in_great_heat_in_wind_and_in_rain) {
  EXPECT_DOUBLE_EQ(noon(38.5).flight, 0.5);
  EXPECT_EQ(noon(38.5).flight_limit, Limit::hot);
  EXPECT_DOUBLE_EQ(noon(22, 0, 5).flight, 0.25);
  EXPECT_EQ(noon(22, 0, 5).flight_limit, Limit::wind);
  EXPECT_EQ(noon(22, 0.1).flight, 0);
  EXPECT_EQ(noon(22, 0.1).flight_limit, Limit::rain);
  EXPECT_EQ(noon(22, 0.09).flight, 1) << "a trace is not rain";
}

TEST(Hours, shares_multiply_and_the_least_of_them_is_named) {
  const HourFitness fit = noon(18, 0, 4);
  EXPECT_DOUBLE_EQ(fit.flight, 0.75 * 0.5);
  EXPECT_EQ(fit.flight_limit, Limit::wind);
}

TEST(Hours, dull_light_slows_flight_only_where_light_was_measured) {
  HourWeather hour = june("2026-06-05T12:00:00+01:00", 22);
  hour.radiation_W_m2 = 100;
  EXPECT_DOUBLE_EQ(hour_fitness(hour, chalk, rules()).flight, 0.25);
  EXPECT_EQ(hour_fitness(hour, chalk, rules()).flight_limit, Limit::dull);
  EXPECT_TRUE(hour_fitness(hour, chalk, rules()).opening) << "a hive may be opened under cloud";
}

TEST(Hours, nothing_flies_and_nothing_is_opened_in_the_dark) {
  const HourFitness fit = hour_fitness(june("2026-06-05T23:00:00+01:00", 22), chalk, rules());
  EXPECT_EQ(fit.flight, 0);
  EXPECT_EQ(fit.flight_limit, Limit::dark);
  EXPECT_FALSE(fit.opening);
  EXPECT_EQ(fit.opening_limit, Limit::dark);
}

TEST(Hours, opening_names_what_stands_in_the_way) {
  EXPECT_EQ(noon(12.9).opening_limit, Limit::cold);
  EXPECT_TRUE(noon(13).opening);
  EXPECT_EQ(noon(35.1).opening_limit, Limit::hot);
  EXPECT_EQ(noon(20, 2).opening_limit, Limit::rain);
  EXPECT_EQ(noon(20, 0, 5.1).opening_limit, Limit::wind);
  EXPECT_TRUE(noon(20, 0, 5).opening);
}

facts::FullWeatherDay day(double min_C, double max_C, double rain_mm, double wind_m_s) {
  return {*Date::from_ymd(2026, 6, 5), min_C, max_C, rain_mm, wind_m_s, 0.5};
}

TEST(HoursOfADay, keep_the_days_extremes_rain_and_mean_wind) {
  const auto hours = hours_from_day(day(8, 21, 6, 4), chalk, 1, rules());
  double low = 99, high = -99, rain = 0, wind = 0;
  for (const HourWeather& hour : hours) {
    low = std::min(low, hour.temperature_C);
    high = std::max(high, hour.temperature_C);
    rain += hour.rain_mm;
    wind += hour.wind_m_s;
  }
  EXPECT_GE(low, 8);
  EXPECT_LT(low, 8.5);
  EXPECT_LE(high, 21);
  EXPECT_GT(high, 20.5);
  EXPECT_NEAR(rain, 6, 1e-9);
  EXPECT_NEAR(wind / 24, 4 * 0.5, 0.1) << "at 2 m, half of what blows at 10 m";
}

TEST(HoursOfADay, are_warmest_in_mid_afternoon_by_the_sun_wherever_the_clock_stands) {
  const auto warmest = [](const Place& place, double offset_h) {
    const auto hours = hours_from_day(day(5, 20, 0, 2), place, offset_h, rules());
    return std::max_element(hours.begin(), hours.end(),
                            [](const auto& a, const auto& b) { return a.temperature_C < b.temperature_C; }) -
           hours.begin();
  };
  EXPECT_EQ(warmest({50, 0, 0}, 0), 15)
      << "the hour after 15:00 by the sun: it cools more slowly than it warmed";
  EXPECT_EQ(warmest({50, 15, 0}, 1), 15);
  EXPECT_EQ(warmest({50, 0, 0}, 2), 17);
}

TEST(HoursOfADay, are_the_same_each_time_they_are_asked_for) {
  const auto once = hours_from_day(day(8, 21, 6, 4), chalk, 1, rules());
  const auto again = hours_from_day(day(8, 21, 6, 4), chalk, 1, rules());
  for (std::size_t h = 0; h < 24; ++h) {
    EXPECT_EQ(once[h].rain_mm, again[h].rain_mm);
    EXPECT_EQ(once[h].temperature_C, again[h].temperature_C);
  }
}

TEST(FitnessOfADay, a_fine_june_day_flies_all_day_and_a_wet_one_not_at_all) {
  const DayFitness fine = day_fitness(day(14, 26, 0, 2), chalk, 1, rules());
  EXPECT_GT(fine.flight_hours, 10);
  EXPECT_LT(fine.flight_hours, 17);
  EXPECT_EQ(fine.wet_hours, 0);
  EXPECT_TRUE(fine.opening[13]);
  EXPECT_FALSE(fine.light[1]);
  const DayFitness wet = day_fitness(day(14, 26, 60, 2), chalk, 1, rules());
  EXPECT_EQ(wet.wet_hours, 18) << "the most that a day's rain is spread over";
  EXPECT_LT(wet.flight_hours, 6);
  const DayFitness cold = day_fitness(day(-4, 6, 0, 2), chalk, 1, rules());
  EXPECT_EQ(cold.flight_hours, 0);
  EXPECT_EQ(std::count(cold.opening.begin(), cold.opening.end(), true), 0);
  EXPECT_EQ(cold.opening_limit[13], Limit::cold);
}

FactTable table_with(double none_C, double full_C) {
  const HourRules r = rules();
  std::vector<FactRow> rows;
  const auto add = [&](const char* key, double value) {
    FactRow row;
    row.key = key;
    row.value = value;
    row.unit = "1";
    row.source = "common practice";
    rows.push_back(row);
  };
  add("flight_none_C", none_C);
  add("flight_full_C", full_C);
  add("flight_slow_hot_C", r.flight_slow_hot_C);
  add("flight_stop_hot_C", r.flight_stop_hot_C);
  add("flight_wind_slow_m_s", r.flight_wind_slow_m_s);
  add("flight_wind_stop_m_s", r.flight_wind_stop_m_s);
  add("flight_light_full_W_m2", r.flight_light_full_W_m2);
  add("wind_2m_of_10m", r.wind_2m_of_10m);
  add("rain_stops_mm", r.rain_stops_mm);
  add("opening_min_C", r.opening_min_C);
  add("opening_max_C", r.opening_max_C);
  add("opening_wind_max_m_s", r.opening_wind_max_m_s);
  add("horizon_deg", r.horizon_deg);
  return *FactTable::check("hours", std::move(rows));
}

TEST(HourRules, are_refused_out_of_order) {
  EXPECT_TRUE(HourRules::from(table_with(12, 20)));
  const auto refused = HourRules::from(table_with(20, 12));
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.problem().kind, ProblemKind::bad_input);
  EXPECT_EQ(refused.problem().where, "hours");
}

}  // namespace
}  // namespace beegarth::almanac
