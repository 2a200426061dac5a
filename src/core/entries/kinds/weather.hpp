// Weather, forage by month, and the hours there are.
#pragma once

#include "entries/kinds/values.hpp"

namespace beegarth::entries {

struct Weather {
  SiteId site;  // "all" for every site of the book
  Number temperature_min_C;
  Number temperature_max_C;
  Number rain_mm;
  Number wind_m_s;
  Number gust_m_s;
  Number sun_hours;
  bool forecast = false;
  bool invented = false;
};
struct Normals {  // one month of a site's normals; site "all" for every site
  SiteId site;
  int month = 1;
  double temperature_min_C = 0;
  double temperature_max_C = 0;
  double rain_mm = 0;
  double rain_days = 0;
  Number wind_m_s;
};
struct Forage {  // the keeper's own reckoning, month by month
  SiteId site;
  int month = 1;
  double nectar_kg_per_day =
      0;  // honey equivalent a strong stock (10,000 foragers) brings home on a good day
  Level pollen = Level::some;
};
struct WorkingHours {
  Count weekday;             // 1 Monday .. 7 Sunday, or
  std::optional<Date> date;  // one day
  double start_hour = 10;    // local
  double end_hour = 16;      // equal: no time that day
};

}  // namespace beegarth::entries
