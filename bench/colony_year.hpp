// The year that every side of the comparison lives through: that of the tests at 55 degrees north, from the
// first of October on, a hive with room to swarm from and a few mites carried in.
#pragma once

#include <vector>

#include "colony/colony.hpp"
#include "temperate_year.hpp"

namespace beegarth::bench {

inline constexpr int members = 1024;
inline constexpr int days = 365;

inline Date eve() {
  return *Date::from_ymd(2025, 9, 30);
}

inline facts::Dwelling hive() {
  facts::Dwelling d;
  d.super_combs = 20;
  d.undrawn_combs = 6;
  return d;
}

inline colony::Start start() {
  return {
      .bees = 13000, .brood_cells = 500, .stores_kg = 18, .pollen_kg = 0.75, .mites = 100, .winter_share = 1};
}

inline std::vector<facts::DayForcing> year() {
  std::vector<facts::DayForcing> forcing;
  for (int i = 0; i < days; ++i) {
    forcing.push_back(testing::temperate_day(eve() + 1 + i));
    forcing.back().mites_in_per_day = 0.5;
  }
  return forcing;
}

// A day in the middle of the season, every day: nothing can be passed over.
inline std::vector<facts::DayForcing> long_summer() {
  std::vector<facts::DayForcing> forcing(days, testing::temperate_day(*Date::from_ymd(2026, 6, 1)));
  for (int i = 0; i < days; ++i) {
    const Date date = *Date::from_ymd(2026, 5, 1) + i % 60;
    forcing[static_cast<std::size_t>(i)] = testing::temperate_day(date);
    forcing[static_cast<std::size_t>(i)].mites_in_per_day = 0.5;
  }
  return forcing;
}

}  // namespace beegarth::bench
