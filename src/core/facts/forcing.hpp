// What the outside world does to a colony on one day.
#pragma once

#include <vector>

#include "base/date.hpp"

namespace beegarth::facts {

struct DayForcing {
  Date date;
  double flight_hours = 0;  // 0..24, hours fit for flight, as a sum of fractions
  double temperature_min_C = 5;
  double temperature_max_C = 15;
  double rain_mm = 0;
  double daylength_h = 12;
  double nectar_kg_per_day = 0;  // honey equivalent that 10,000 foragers would bring home in 8 flight hours
  double pollen_index = 0;       // 0 none .. 1 plenty
  double mites_in_per_day = 0;   // mites carried in by drifting and robbing bees
  double robbing = 0;            // 0 nobody near that robs .. 1 as usual where colonies stand together
};

// One possible course of the weather at one site, day by day without gaps.
using ForcingPath = std::vector<DayForcing>;

}  // namespace beegarth::facts
