// Invented weather and forage for tests: a temperate year with luck of its own.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "base/random.hpp"
#include "facts/forcing.hpp"

namespace beegarth::synthetic {

inline double wave(Date date, int peak_day_of_year) {
  return std::cos(2 * std::numbers::pi * (date.day_of_year() - peak_day_of_year) / 365.25);
}

inline facts::DayForcing ordinary_day(Date date, double warmer, double sunny) {
  facts::DayForcing day;
  day.date = date;
  const double mean = 10 + 8 * wave(date, 200) + warmer;  // about 2 to 18 C
  day.temperature_min_C = mean - 4 - 2 * sunny;
  day.temperature_max_C = mean + 4 + 3 * sunny;
  day.rain_mm = sunny < -0.5 ? 6 : 0;
  day.daylength_h = 12.2 + 4.4 * wave(date, 172);
  const double warm_enough = std::clamp((day.temperature_max_C - 11) / 8, 0.0, 1.0);
  day.flight_hours = warm_enough * std::clamp(0.6 + 0.5 * sunny, 0.05, 1.0) * (day.daylength_h - 4);
  const auto bump = [&](int peak, double width) {
    const double z = (date.day_of_year() - peak) / width;
    return std::exp(-0.5 * z * z);
  };
  day.nectar_kg_per_day =
      1.2 * bump(125, 14) + 1.8 * bump(185, 16) + 0.25 * bump(160, 60) + 0.4 * bump(255, 12);
  day.pollen_index = std::clamp(0.7 * bump(120, 35) + 0.8 * bump(190, 50) + 0.3 * bump(255, 20), 0.0, 1.0);
  day.mites_in_per_day = 0.1 + 0.8 * bump(245, 25);
  return day;
}

// One course: temperature and sun are autoregressive. From `forks` on the luck is that of `other`: with many
// others the courses part as those of the same weather would.
inline facts::ForcingPath forked_season(std::uint64_t seed, Date from, Date to, Date forks,
                                        std::uint64_t other) {
  facts::ForcingPath path;
  double warmer = 0;
  double sunny = 0;
  for (Date date = from; date <= to; ++date) {
    Stream s({.seed = date < forks ? seed : other, .day = date.day_number(), .purpose = Purpose::weather});
    warmer = 0.75 * warmer + 2.0 * s.normal();
    sunny = 0.5 * sunny + 0.6 * s.normal();
    path.push_back(ordinary_day(date, warmer, std::clamp(sunny, -1.2, 1.0)));
  }
  return path;
}

inline facts::ForcingPath season(std::uint64_t seed, Date from, Date to) {
  return forked_season(seed, from, to, to + 1, seed);
}

}  // namespace beegarth::synthetic
