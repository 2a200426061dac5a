// Private. What one day means for every member alike: worked out once, before the members are stepped.
#pragma once

#include <array>
#include <cstdint>

#include "colony/model.hpp"
#include "facts/dwelling.hpp"
#include "facts/forcing.hpp"

namespace beegarth::colony {

struct Day {
  Rates rates{};
  std::int32_t turn = 0;
  float number = 0;  // day number of the date

  // weather and offer
  float flight_hours = 0, mean_C = 0, max_C = 0;
  float nectar_kg = 0;  // by 10,000 foragers with today's flight hours
  float pollen_kg = 0;  // likewise
  float mites_in = 0;
  // the year
  float laying = 0;        // share of the queen's best that season and warmth allow
  float drones = 0;        // share of the best drone laying
  float winter_share = 0;  // of emerging bees
  float lengthening = 0;   // 0, 1
  float evict_drones = 0;  // 0, 1
  float swarm_season = 0;  // 0..1
  float swarm_weather = 0, mating_weather = 0, draw_weather = 0;  // 0, 1
  float cold = 0;  // heat to make up, times that at 5 C in the usual hive
  // the dwelling
  float cells_per_comb = 0, honey_kg_per_comb = 0, nest_combs = 0, super_combs = 0, bees_at_home = 0;
  // treatments: kill rates per day
  float kill_on_bees = 0, kill_under_cappings = 0;
  // the field
  std::array<float, 24> leaving{};  // by age of hive bees, times the rate of recruitment
  float recruiting = 0;             // 0..1 with the flight hours
  // luck
  float laying_step = 0, forage_step = 0, mite_step = 0;
  std::array<std::uint32_t, 2> luck_key{};
};

Day make_day(const Model& model, const facts::Dwelling& dwelling, const facts::DayForcing& forcing,
             float daylength_yesterday_h);

// Where the year stands, wherever on earth: whether days lengthen, and how long a day would be at 55 degrees
// on the same side of the equator. The queen's year was fitted there; elsewhere it keeps the sun's calendar,
// while warmth, pollen and nurses, not the clock, make the difference.
struct Season {
  bool lengthening = true;
  float light_h = 12;
};
Season season_on(Date date, double daylength_h, double daylength_yesterday_h);  // yesterday 0: not known

}  // namespace beegarth::colony
