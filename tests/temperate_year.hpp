// A year at 55 degrees north without weather's accidents: the same smooth course of light, warmth, flight and
// forage for every test that needs a season. Invented; its temperatures and flight hours are those of a mild
// oceanic site.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>

#include "facts/forcing.hpp"

namespace beegarth::testing {

inline double daylength_at(double latitude_deg, int day_of_year) {  // CBM model, Forsythe et al. 1995
  const double pi = std::numbers::pi;
  const double theta = 0.2163108 + 2 * std::atan(0.9671396 * std::tan(0.00860 * (day_of_year - 186)));
  const double phi = std::asin(0.39795 * std::cos(theta));
  const double lat = latitude_deg * pi / 180;
  const double x =
      (std::sin(0.8333 * pi / 180) + std::sin(lat) * std::sin(phi)) / (std::cos(lat) * std::cos(phi));
  return 24 - 24 / pi * std::acos(std::clamp(x, -1.0, 1.0));
}

// A bump of height 1 at `peak`, 0 at `from` and `to` (days of the year).
inline double bump(double day, double from, double peak, double to) {
  if (day <= from || day >= to) return 0;
  return day < peak ? (day - from) / (peak - from) : (to - day) / (to - peak);
}

inline facts::DayForcing temperate_day(Date date) {
  const int n = date.day_of_year();
  facts::DayForcing f;
  f.date = date;
  f.daylength_h = daylength_at(55, n);
  const double mean = 9 - 6.5 * std::cos(2 * std::numbers::pi * (n - 25) / 365.0);
  f.temperature_min_C = mean - 4;
  f.temperature_max_C = mean + 4.5;
  // Hours above 12 C without rain or wind, on average over fair and foul days.
  f.flight_hours = 6.5 * std::clamp((f.temperature_max_C - 8) / 11, 0.0, 1.0);
  f.pollen_index = std::clamp(1.3 * bump(n, 45, 130, 285), 0.0, 1.0);
  f.nectar_kg_per_day =
      2.0 * bump(n, 95, 130, 160) + 2.5 * bump(n, 140, 190, 225) + 1.0 * bump(n, 215, 235, 265);
  return f;
}

}  // namespace beegarth::testing
