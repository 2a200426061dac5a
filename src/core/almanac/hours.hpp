// Which hours are fit for flight and for opening a hive, and what stands in the way in the others.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

#include "almanac/sun.hpp"
#include "base/date.hpp"
#include "base/fact_table.hpp"
#include "facts/forcing.hpp"
#include "facts/weather.hpp"

namespace beegarth::almanac {

enum class Limit { none, dark, cold, hot, rain, wind, dull };

struct HourWeather {
  Instant start;  // of the hour
  double temperature_C = 0;
  double rain_mm = 0;
  double wind_m_s = 0;                   // at the height of flight, about 2 m
  std::optional<double> radiation_W_m2;  // where absent, light limits nothing but the night
};

struct HourFitness {
  double flight = 0;                 // 0..1
  Limit flight_limit = Limit::none;  // the factor that takes most; none where flight is 1
  bool opening = false;
  Limit opening_limit = Limit::none;
};

// The limits of flight and opening, from tables/hours.toml.
struct HourRules {
  static Expected<HourRules> from(const FactTable& table);
  double flight_none_C, flight_full_C, flight_slow_hot_C, flight_stop_hot_C;
  double flight_wind_slow_m_s, flight_wind_stop_m_s;
  double flight_light_full_W_m2;  // below this, light takes its share of flight
  double wind_2m_of_10m;          // share of the wind at 10 m that is felt at 2 m
  double rain_stops_mm;           // in one hour
  double opening_min_C, opening_max_C, opening_wind_max_m_s;
  double horizon_deg;  // how far the sun's centre stands below the horizon at first light
};

HourFitness hour_fitness(const HourWeather& hour, const Place& place, const HourRules& rules);

// The twenty-four hours of a day made from its daily values: temperature by a sine from minimum near sunrise
// to maximum in mid-afternoon, rain spread over a share of the hours, wind stronger by day and brought down
// from 10 m to 2 m. An estimate, and so are its odds. Which hours are wet is a pure function of the day's
// values.
std::array<HourWeather, 24> hours_from_day(const facts::FullWeatherDay& day, const Place& place,
                                           double utc_offset_h, const HourRules& rules);

// What one day offers: hours of flight, and for each local hour whether a hive can be opened.
struct DayFitness {
  double flight_hours = 0;
  std::array<bool, 24> opening{};  // by local hour
  std::array<bool, 24> light{};    // sun above the horizon
  double wet_hours = 0;
  std::array<Limit, 24> opening_limit{};
};
// `light` where it is known already for that date and place.
DayFitness day_fitness(const facts::FullWeatherDay& day, const Place& place, double utc_offset_h,
                       const HourRules& rules, const std::array<bool, 24>* light = nullptr);

}  // namespace beegarth::almanac
