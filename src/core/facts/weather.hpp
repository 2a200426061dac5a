// Daily weather at a site, seen or typed or generated.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "base/date.hpp"
#include "base/units.hpp"

namespace beegarth::facts {

struct WeatherDay {
  Date date;
  std::optional<double> temperature_min_C;
  std::optional<double> temperature_max_C;
  std::optional<double> rain_mm;
  std::optional<double> wind_m_s;  // mean at 10 m
  std::optional<double> gust_m_s;
  std::optional<double> sun_hours;
  bool forecast = false;  // typed ahead, not seen
};

struct MonthlyNormals {  // index 0 = January
  struct Month {
    double temperature_min_C = 0;
    double temperature_max_C = 0;
    double rain_mm = 0;    // the month's total
    double rain_days = 0;  // days with at least 1 mm
    double wind_m_s = 3;
  };
  std::array<Month, 12> months;
};

// A day of one continuation: every value is there.
struct FullWeatherDay {
  Date date;
  double temperature_min_C = 0;
  double temperature_max_C = 0;
  double rain_mm = 0;
  double wind_m_s = 0;
  double sun_share = 0.5;  // of the possible sunshine, 0..1

  bool operator==(const FullWeatherDay&) const = default;
};

using WeatherPath = std::vector<FullWeatherDay>;  // without gaps

}  // namespace beegarth::facts
