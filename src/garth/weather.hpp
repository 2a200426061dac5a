// The weather of one site: what was seen, what was typed ahead, and many ways it may go on.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "almanac/generator.hpp"
#include "almanac/hours.hpp"
#include "almanac/series.hpp"
#include "facts/forcing.hpp"
#include "facts/weather.hpp"
#include "garth/session.hpp"
#include "work/plan.hpp"

namespace beegarth::garth {

struct SiteWeather {
  almanac::Place place;
  double utc_offset_h = 0;
  almanac::SeriesReport seen;
  almanac::WeatherModel model;
  std::vector<facts::WeatherPath> members;            // from `first` to `last`
  std::vector<std::vector<almanac::DayFitness>> fit;  // [member][day]
  Date first;
  Date last;
  std::vector<std::string> remarks;  // where the weather comes from, said plainly
};

Expected<SiteWeather> weather_at(const Session& session, const SiteId& site, Date first, Date last);

// What the weather and the keeper's own reckoning of the forage bring to the colonies of the site, one path a
// member.
std::vector<facts::ForcingPath> forcing_at(const Session& session, const SiteId& site,
                                           const SiteWeather& weather);

// The days of the plan, summed up over the members.
std::vector<work::SiteDay> site_days(const SiteWeather& weather, Date from, int days);

}  // namespace beegarth::garth
