#include "almanac/generator.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <map>
#include <optional>

#include "unit/almanac/station_series.hpp"

namespace beegarth::almanac {
namespace {

using facts::FullWeatherDay;
using facts::WeatherDay;
using facts::WeatherPath;

Date day(int year, int month, int of_month) {
  return *Date::from_ymd(year, month, of_month);
}

bool same(const FullWeatherDay& a, const FullWeatherDay& b) {
  return a.date == b.date && a.temperature_min_C == b.temperature_min_C &&
         a.temperature_max_C == b.temperature_max_C && a.rain_mm == b.rain_mm && a.wind_m_s == b.wind_m_s &&
         a.sun_share == b.sun_share;
}

WeatherDay seen(Date date, double low, double high, double rain, double wind) {
  WeatherDay day{.date = date};
  day.temperature_min_C = low;
  day.temperature_max_C = high;
  day.rain_mm = rain;
  day.wind_m_s = wind;
  return day;
}

TEST(Generator, gives_the_same_paths_for_the_same_seed_and_others_for_another) {
  const WeatherModel model;
  const auto run = [&](std::uint64_t seed) {
    return continue_weather(model, {}, day(2026, 5, 1), day(2026, 7, 1), day(2026, 5, 1), 5, seed);
  };
  const auto first = run(7);
  const auto again = run(7);
  const auto other = run(8);
  ASSERT_EQ(first.size(), 5U);
  int differing = 0;
  for (std::size_t m = 0; m < first.size(); ++m) {
    ASSERT_EQ(first[m].size(), 62U);
    for (std::size_t i = 0; i < first[m].size(); ++i) {
      EXPECT_TRUE(same(first[m][i], again[m][i]));
      differing += same(first[m][i], other[m][i]) ? 0 : 1;
    }
  }
  EXPECT_EQ(differing, 5 * 62);
  EXPECT_FALSE(same(first[0][10], first[1][10])) << "members differ";
}

TEST(Generator, only_adds_days_for_a_longer_period_and_members_for_a_larger_crowd) {
  const WeatherModel model;
  std::vector<WeatherDay> known{seen(day(2026, 5, 2), 4, 14, 0, 2)};
  known.push_back(seen(day(2026, 5, 4), 6, 15, 3, 4));
  known.back().forecast = true;
  const auto all = continue_weather(model, known, day(2026, 5, 1), day(2026, 12, 31), day(2026, 5, 3), 4, 3);
  for (int length = 1; length < 240; length += 7) {
    const auto part = continue_weather(model, known, day(2026, 5, 1), day(2026, 5, 1) + (length - 1),
                                       day(2026, 5, 3), 3, 3);
    ASSERT_EQ(part.size(), 3U);
    for (std::size_t m = 0; m < part.size(); ++m) {
      ASSERT_EQ(part[m].size(), static_cast<std::size_t>(length));
      EXPECT_TRUE(std::equal(part[m].begin(), part[m].end(), all[m].begin(), same)) << length;
    }
  }
}

TEST(Generator, takes_complete_seen_days_as_they_are_and_draws_only_what_is_missing) {
  WeatherDay half{.date = day(2026, 5, 3)};
  half.temperature_max_C = 19;
  const std::vector<WeatherDay> known{seen(day(2026, 5, 2), 4, 14, 6.5, 2), half};
  const auto paths = continue_weather({}, known, day(2026, 5, 1), day(2026, 5, 4), day(2026, 5, 4), 20, 1);
  bool minimum_varies = false;
  for (const WeatherPath& path : paths) {
    EXPECT_EQ(path[1].temperature_min_C, 4);
    EXPECT_EQ(path[1].temperature_max_C, 14);
    EXPECT_EQ(path[1].rain_mm, 6.5);
    EXPECT_EQ(path[1].wind_m_s, 2);
    EXPECT_EQ(path[2].temperature_max_C, 19);
    EXPECT_LE(path[2].temperature_min_C, 19);
    minimum_varies = minimum_varies || path[2].temperature_min_C != paths[0][2].temperature_min_C;
  }
  EXPECT_TRUE(minimum_varies);
}

// Spread of the maximum of one day over many members.
double spread_of_maximum(const std::vector<WeatherPath>& paths, std::size_t index) {
  double sum = 0;
  double squares = 0;
  for (const WeatherPath& path : paths) {
    sum += path[index].temperature_max_C;
    squares += path[index].temperature_max_C * path[index].temperature_max_C;
  }
  const double n = static_cast<double>(paths.size());
  return std::sqrt(squares / n - sum * sum / (n * n));
}

TEST(Generator, trusts_a_forecast_less_the_further_ahead_it_reaches) {
  std::vector<WeatherDay> known;
  for (int i = 0; i < 7; ++i) {
    known.push_back(seen(day(2026, 5, 1) + i, 6, 16, 0, 3));
    known.back().forecast = true;
  }
  const auto paths = continue_weather({}, known, day(2026, 5, 1), day(2026, 5, 7), day(2026, 5, 1), 2000, 1);
  // A standard deviation from 2000 draws is known to 1/sqrt(4000), 1.6 %; the steps asked for are far larger.
  EXPECT_GT(spread_of_maximum(paths, 0), 0.5);
  EXPECT_GT(spread_of_maximum(paths, 3), 1.2 * spread_of_maximum(paths, 0));
  EXPECT_GT(spread_of_maximum(paths, 6), 1.2 * spread_of_maximum(paths, 3));
}

TEST(Generator, goes_on_from_the_weather_of_yesterday) {
  // After a heat wave the first day past the data is warmer than after a cold spell, although both are drawn.
  const auto mean_after = [](double offset_C) {
    std::vector<WeatherDay> known;
    for (int i = 1; i <= 5; ++i)
      known.push_back(seen(day(2026, 5, 1) - i, 6 + offset_C, 15 + offset_C, 0, 3));
    double sum = 0;
    for (const auto& path :
         continue_weather({}, known, day(2026, 5, 1), day(2026, 5, 2), day(2026, 5, 1), 500, 1)) {
      sum += path[0].temperature_max_C;
    }
    return sum / 500;
  };
  EXPECT_GT(mean_after(8), mean_after(-8) + 5);
}

TEST(Generator, starts_as_unsure_as_it_goes_on_where_nothing_is_known) {
  const auto paths = continue_weather({}, {}, day(2026, 5, 1), day(2026, 5, 30), day(2026, 5, 1), 2000, 1);
  // Each spread is known to 1.6 %: three standard errors of the difference are 7 %.
  EXPECT_NEAR(spread_of_maximum(paths, 0) / spread_of_maximum(paths, 29), 1, 0.07);
}

TEST(Generator, makes_only_weather_that_can_be) {
  WeatherModel wild;
  for (MonthModel& month : wild.months) {
    month.max_sd_C = 12;
    month.min_sd_C = 12;
    month.rain_mean_mm = 200;
    month.rain_shape = 0.3;
    month.wind_sd_m_s = 10;
  }
  for (const auto& path :
       continue_weather(wild, {}, day(2026, 1, 1), day(2027, 12, 31), day(2026, 1, 1), 5, 1)) {
    for (const FullWeatherDay& d : path) {
      EXPECT_LE(d.temperature_min_C, d.temperature_max_C);
      EXPECT_TRUE(std::isfinite(d.temperature_min_C) && std::isfinite(d.temperature_max_C));
      EXPECT_TRUE(d.rain_mm >= 0 && d.rain_mm <= 300);
      EXPECT_TRUE(d.wind_m_s >= 0 && d.wind_m_s <= 40);
      EXPECT_TRUE(d.sun_share >= 0 && d.sun_share <= 1);
    }
  }
}

TEST(Generator, needs_a_year_of_temperatures_to_fit) {
  std::vector<WeatherDay> days;
  for (int i = 0; i < 364; ++i) days.push_back(seen(day(2025, 1, 1) + i, 2, 9, 0, 3));
  const auto short_fit = fit_weather(days, {});
  ASSERT_FALSE(short_fit);
  EXPECT_EQ(short_fit.problem().kind, ProblemKind::bad_input);
  days.push_back(seen(day(2025, 12, 31), 2, 9, 0, 3));
  EXPECT_TRUE(fit_weather(days, {}));
}

TEST(Generator, keeps_the_normals_where_a_series_has_no_rain_and_no_wind) {
  std::vector<WeatherDay> days;
  for (int i = 0; i < 800; ++i) {
    WeatherDay d{.date = day(2023, 1, 1) + i};
    d.temperature_min_C = 3 + i % 5;
    d.temperature_max_C = 12 + i % 7;
    days.push_back(d);
  }
  WeatherModel fallback;
  fallback.months[4].wet_after_wet = 0.71;
  fallback.months[4].rain_mean_mm = 9;
  fallback.months[4].wind_mean_m_s = 5.5;
  const auto model = fit_weather(days, fallback);
  ASSERT_TRUE(model);
  EXPECT_EQ(model->months[4].wet_after_wet, 0.71);
  EXPECT_EQ(model->months[4].rain_mean_mm, 9);
  EXPECT_EQ(model->months[4].wind_mean_m_s, 5.5);
}

// One figure per year, with its mean and the standard error of that mean.
struct Yearly {
  double mean = 0;
  double error = 0;
};
Yearly summary(const std::vector<double>& of_year) {
  const double n = static_cast<double>(of_year.size());
  double sum = 0;
  for (const double x : of_year) sum += x;
  double squares = 0;
  for (const double x : of_year) squares += (x - sum / n) * (x - sum / n);
  return {sum / n, std::sqrt(squares / (n - 1) / n)};
}

using Figure = std::function<std::optional<double>(const std::vector<WeatherDay>& days_of_month)>;

// The figure for a calendar month (1..12) of every year that has all of it.
Yearly in_month(const std::vector<WeatherDay>& days, int month, const Figure& figure) {
  std::map<int, std::vector<WeatherDay>> by_year;
  for (const WeatherDay& d : days) {
    if (d.date.month() == month) by_year[d.date.year()].push_back(d);
  }
  std::vector<double> figures;
  for (const auto& [year, of_month] : by_year) {
    if (const auto one = figure(of_month)) figures.push_back(*one);
  }
  return summary(figures);
}

// Mean over a month of something each day has; nothing where more than three days lack it.
Figure mean_of(std::function<std::optional<double>(const WeatherDay&)> of_day) {
  return [of_day](const std::vector<WeatherDay>& days) -> std::optional<double> {
    double sum = 0;
    double n = 0;
    for (const WeatherDay& d : days) {
      const auto value = of_day(d);
      if (!value) continue;
      sum += *value;
      n += 1;
    }
    if (n < 25) return std::nullopt;
    return sum / n;
  };
}

struct Runs {
  std::vector<WeatherDay> station;
  std::vector<WeatherDay> generated;  // two hundred years
};

std::optional<Runs> fitted_runs() {
  Runs runs;
  runs.station = station_series();
  if (runs.station.empty()) return std::nullopt;
  const auto model = fit_weather(runs.station, {});
  if (!model) return std::nullopt;
  const auto paths = continue_weather(*model, {}, day(2001, 1, 1), day(2200, 12, 31), day(2001, 1, 1), 1, 11);
  for (const FullWeatherDay& d : paths[0]) {
    runs.generated.push_back(seen(d.date, d.temperature_min_C, d.temperature_max_C, d.rain_mm, d.wind_m_s));
  }
  return runs;
}

// Two means from different years differ by less than this many standard errors of their difference. Of twelve
// months times six figures one is expected beyond 2.5 by chance alone, and one in five such tests would go
// beyond 3; 3.5 is passed by chance once in thirty.
constexpr double errors_allowed = 3.5;

void expect_alike(const Yearly& station, const Yearly& generated, const std::string& what) {
  const double error = std::hypot(station.error, generated.error);
  EXPECT_LT(std::abs(station.mean - generated.mean), errors_allowed * error)
      << what << ": station " << station.mean << ", generated " << generated.mean << ", standard error "
      << error;
}

TEST(GeneratorAgainstAStation, keeps_monthly_means_wet_days_rain_and_wind_of_thirty_years) {
  const auto runs = fitted_runs();
  if (!runs) GTEST_SKIP() << "the shared folder with the station's days is not here";
  const std::map<std::string, Figure> figures{
      {"maximum, C", mean_of([](const WeatherDay& d) { return d.temperature_max_C; })},
      {"minimum, C", mean_of([](const WeatherDay& d) { return d.temperature_min_C; })},
      {"share of wet days", mean_of([](const WeatherDay& d) -> std::optional<double> {
         if (!d.rain_mm) return std::nullopt;
         return *d.rain_mm >= wet_day_mm ? 1 : 0;
       })},
      {"rain, mm a day", mean_of([](const WeatherDay& d) { return d.rain_mm; })},
      {"wind, m/s", mean_of([](const WeatherDay& d) { return d.wind_m_s; })}};
  for (const auto& [name, figure] : figures) {
    for (int month = 1; month <= 12; ++month) {
      expect_alike(in_month(runs->station, month, figure), in_month(runs->generated, month, figure),
                   name + ", month " + std::to_string(month));
    }
  }
}

// How a day's departure from its month's long mean goes with the next day's, one figure a year.
Yearly lag_of_maximum(const std::vector<WeatherDay>& days) {
  std::array<double, 12> sum{};
  std::array<double, 12> count{};
  for (const WeatherDay& d : days) {
    sum[static_cast<std::size_t>(d.date.month() - 1)] += *d.temperature_max_C;
    count[static_cast<std::size_t>(d.date.month() - 1)] += 1;
  }
  std::map<int, std::array<double, 2>> of_year;
  for (std::size_t i = 1; i < days.size(); ++i) {
    const auto off = [&](const WeatherDay& d) {
      const auto m = static_cast<std::size_t>(d.date.month() - 1);
      return *d.temperature_max_C - sum[m] / count[m];
    };
    auto& [product, square] = of_year[days[i].date.year()];
    product += off(days[i]) * off(days[i - 1]);
    square += off(days[i]) * off(days[i]);
  }
  std::vector<double> lags;
  for (const auto& [year, sums] : of_year) lags.push_back(sums[0] / sums[1]);
  return summary(lags);
}

TEST(GeneratorAgainstAStation, remembers_from_day_to_day_as_the_station_does) {
  const auto runs = fitted_runs();
  if (!runs) GTEST_SKIP() << "the shared folder with the station's days is not here";
  expect_alike(lag_of_maximum(runs->station), lag_of_maximum(runs->generated),
               "lag-1 correlation of the maximum");
}

}  // namespace
}  // namespace beegarth::almanac
