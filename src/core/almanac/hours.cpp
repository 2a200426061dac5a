#include "almanac/hours.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "almanac/quick_sun.hpp"
#include "base/random.hpp"

namespace beegarth::almanac {
namespace {

// 1 at `full`, 0 at `none`, a straight line between; works both ways round.
double ramp(double x, double none, double full) {
  return std::clamp((x - none) / (full - none), 0.0, 1.0);
}

struct Factor {
  double value;
  Limit limit;
};

Factor weakest(std::initializer_list<Factor> factors) {
  return *std::min_element(factors.begin(), factors.end(),
                           [](const Factor& a, const Factor& b) { return a.value < b.value; });
}

void judge_flight(const HourWeather& hour, bool light, const HourRules& r, HourFitness& fit) {
  const Factor dark{light ? 1.0 : 0.0, Limit::dark};
  const Factor rain{hour.rain_mm >= r.rain_stops_mm ? 0.0 : 1.0, Limit::rain};
  const Factor cold{ramp(hour.temperature_C, r.flight_none_C, r.flight_full_C), Limit::cold};
  const Factor hot{ramp(hour.temperature_C, r.flight_stop_hot_C, r.flight_slow_hot_C), Limit::hot};
  const Factor wind{ramp(hour.wind_m_s, r.flight_wind_stop_m_s, r.flight_wind_slow_m_s), Limit::wind};
  const Factor dull{hour.radiation_W_m2 ? ramp(*hour.radiation_W_m2, 0, r.flight_light_full_W_m2) : 1.0,
                    Limit::dull};
  fit.flight = dark.value * rain.value * cold.value * hot.value * wind.value * dull.value;
  const Factor least = weakest({dark, rain, cold, hot, wind, dull});
  fit.flight_limit = least.value < 1 ? least.limit : Limit::none;
}

Limit opening_limit(const HourWeather& hour, bool light, const HourRules& r) {
  if (!light) return Limit::dark;
  if (hour.rain_mm >= r.rain_stops_mm) return Limit::rain;
  if (hour.temperature_C < r.opening_min_C) return Limit::cold;
  if (hour.temperature_C > r.opening_max_C) return Limit::hot;
  if (hour.wind_m_s > r.opening_wind_max_m_s) return Limit::wind;
  return Limit::none;
}

Instant middle_of(const HourWeather& hour) {
  return {hour.start.utc_ms + 1'800'000, hour.start.offset_minutes};
}

// How many hours of a day are wet for an amount of rain, and in which block they fall. Rain seldom falls in
// one hour, nor in all: about one hour for each millimetre and a half, at least one. The block's place is
// drawn from the day's own values.
struct WetHours {
  int first = 0;
  int count = 0;
};
WetHours wet_hours_of(const facts::FullWeatherDay& day, double rain_stops_mm) {
  if (day.rain_mm < rain_stops_mm) return {};
  const int count = std::clamp(static_cast<int>(std::lround(1 + day.rain_mm / 1.5)), 1, 18);
  Stream stream({.seed = static_cast<std::uint64_t>(std::llround(day.rain_mm * 1000)),
                 .colony = static_cast<std::uint64_t>(std::llround((day.temperature_max_C + 100) * 1000)),
                 .day = day.date.day_number(),
                 .purpose = Purpose::weather_shared});
  return {static_cast<int>(stream.word() % 24), count};
}

}  // namespace

Expected<HourRules> HourRules::from(const FactTable& table) {
  HourRules r{};
  struct Want {
    const char* key;
    double* place;
  };
  for (const Want& want :
       {Want{"flight_none_C", &r.flight_none_C}, Want{"flight_full_C", &r.flight_full_C},
        Want{"flight_slow_hot_C", &r.flight_slow_hot_C}, Want{"flight_stop_hot_C", &r.flight_stop_hot_C},
        Want{"flight_wind_slow_m_s", &r.flight_wind_slow_m_s},
        Want{"flight_wind_stop_m_s", &r.flight_wind_stop_m_s},
        Want{"flight_light_full_W_m2", &r.flight_light_full_W_m2}, Want{"wind_2m_of_10m", &r.wind_2m_of_10m},
        Want{"rain_stops_mm", &r.rain_stops_mm}, Want{"opening_min_C", &r.opening_min_C},
        Want{"opening_max_C", &r.opening_max_C}, Want{"opening_wind_max_m_s", &r.opening_wind_max_m_s},
        Want{"horizon_deg", &r.horizon_deg}}) {
    const auto value = table.value(want.key);
    if (!value) return value.problem();
    *want.place = *value;
  }
  if (!(r.flight_none_C < r.flight_full_C && r.flight_full_C <= r.flight_slow_hot_C &&
        r.flight_slow_hot_C < r.flight_stop_hot_C && r.flight_wind_slow_m_s < r.flight_wind_stop_m_s &&
        r.flight_light_full_W_m2 > 0 && r.opening_min_C < r.opening_max_C)) {
    return bad_input("the limits are out of order", table.name(),
                     "keep none < full <= slow < stop, and minimum < maximum");
  }
  return r;
}

HourFitness hour_fitness(const HourWeather& hour, const Place& place, const HourRules& rules) {
  const bool light = quick_sun_elevation_deg(place, middle_of(hour)) > -rules.horizon_deg;
  HourFitness fit;
  judge_flight(hour, light, rules, fit);
  fit.opening_limit = opening_limit(hour, light, rules);
  fit.opening = fit.opening_limit == Limit::none;
  return fit;
}

std::array<HourWeather, 24> hours_from_day(const facts::FullWeatherDay& day, const Place& place,
                                           double utc_offset_h, const HourRules& rules) {
  // Coldest an hour before 06:00 solar, warmest at 15:00 solar (common practice in hourly disaggregation): a
  // cosine each way.
  constexpr double coldest_h = 5.0;
  constexpr double warmest_h = 15.0;
  const double solar_shift = place.longitude_deg / 15 - utc_offset_h;
  const WetHours wet = wet_hours_of(day, rules.rain_stops_mm);
  const std::int64_t midnight_ms =
      day.date.day_number() * std::int64_t{86'400'000} - std::llround(utc_offset_h * 3'600'000);
  std::array<HourWeather, 24> hours;
  for (int h = 0; h < 24; ++h) {
    HourWeather& hour = hours[static_cast<std::size_t>(h)];
    hour.start = {midnight_ms + h * std::int64_t{3'600'000},
                  static_cast<int>(std::lround(utc_offset_h * 60))};
    const double solar = std::fmod(h + 0.5 + solar_shift + 48, 24);
    const bool rising = solar >= coldest_h && solar < warmest_h;
    const double since = rising ? (solar - coldest_h) / (warmest_h - coldest_h)
                                : std::fmod(solar - warmest_h + 24, 24) / (24 - warmest_h + coldest_h);
    const double up = 0.5 - 0.5 * std::cos(std::numbers::pi * since);
    const double share = rising ? up : 1 - up;
    hour.temperature_C = day.temperature_min_C + (day.temperature_max_C - day.temperature_min_C) * share;
    // By day the wind is about a quarter above its mean, by night as much below (from memory: usual inland
    // course).
    hour.wind_m_s = day.wind_m_s * rules.wind_2m_of_10m * (0.75 + 0.5 * share);
    const int into = (h - wet.first + 24) % 24;
    if (into < wet.count) hour.rain_mm = day.rain_mm / wet.count;
  }
  return hours;
}

DayFitness day_fitness(const facts::FullWeatherDay& day, const Place& place, double utc_offset_h,
                       const HourRules& rules, const std::array<bool, 24>* light) {
  DayFitness sum;
  const auto hours = hours_from_day(day, place, utc_offset_h, rules);
  for (std::size_t h = 0; h < 24; ++h) {
    sum.light[h] = light != nullptr
                       ? (*light)[h]
                       : quick_sun_elevation_deg(place, middle_of(hours[h])) > -rules.horizon_deg;
    HourFitness fit;
    judge_flight(hours[h], sum.light[h], rules, fit);
    sum.opening_limit[h] = opening_limit(hours[h], sum.light[h], rules);
    sum.opening[h] = sum.opening_limit[h] == Limit::none;
    sum.flight_hours += fit.flight;
    sum.wet_hours += hours[h].rain_mm >= rules.rain_stops_mm ? 1 : 0;
  }
  return sum;
}

}  // namespace beegarth::almanac
