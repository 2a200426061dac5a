// Invented inputs for the plan, drawn from a counted stream: the same number gives the same instance.
#pragma once

#include <algorithm>
#include <string>

#include "base/random.hpp"
#include "work/plan.hpp"

namespace beegarth::reference {

struct InstanceSize {
  int sites = 2;
  int days = 3;
  int needs = 4;
};

inline facts::Need some_need(Stream& draw, const work::PlanInput& input, int i) {
  facts::Need need;
  const auto& colony = input.colonies[draw.word() % input.colonies.size()];
  need.key = "job/" + std::to_string(i);
  need.what = "do job " + std::to_string(i);
  need.site = colony.site;
  need.colony = colony.colony;
  const int first = static_cast<int>(draw.word() % static_cast<unsigned>(input.days));
  need.earliest = input.from + first;
  need.best = need.earliest + static_cast<int>(draw.word() % 3U);
  need.latest = need.best + static_cast<int>(draw.word() % 4U);
  need.minutes = 5 + static_cast<int>(draw.word() % 60U);
  need.clock = static_cast<facts::Clock>(draw.word() % 5U);
  need.temperature_min_C = need.clock == facts::Clock::opening ? 13 : 5;
  need.last_in_round = draw.uniform() < 0.15;
  need.loss.from = input.from;
  need.loss.unit = "kg honey equivalent";
  double loss = 0;
  for (int day = 0; day < input.days; ++day) {
    loss += 6 * draw.uniform() * draw.uniform();
    need.loss.by_day.push_back(loss);
  }
  need.loss.never = loss + 40 * draw.uniform();
  for (int other = 0; other < i; ++other) {
    if (draw.uniform() < 0.12)
      need.after.push_back("job/" + std::to_string(other));
    else if (draw.uniform() < 0.12)
      need.clashes.push_back("job/" + std::to_string(other));
  }
  return need;
}

inline work::SiteDay some_day(Stream& draw) {
  work::SiteDay day;
  const double fit = draw.uniform();
  for (std::size_t hour = 0; hour < 24; ++hour) {
    day.daylight[hour] = hour >= 6 && hour < 20 ? 1 : 0;
    day.opening[hour] = hour >= 9 && hour < 18 ? fit * draw.uniform() : 0;
  }
  day.dry = draw.uniform();
  day.rain_odds = 1 - day.dry;
  day.temperature_max_C = 8 + 14 * draw.uniform();
  return day;
}

inline work::PlanInput some_plan_input(std::uint64_t number, const InstanceSize& size) {
  Stream draw(StreamKey{.seed = number, .purpose = Purpose::demo});
  work::PlanInput input;
  input.from = *Date::from_ymd(2026, 5, 1);
  input.days = size.days;
  for (int s = 0; s < size.sites; ++s) {
    const SiteId site("site-" + std::to_string(s));
    input.sites.push_back({site, "Site " + std::to_string(s), "", "", false});
    for (int c = 0; c < 2; ++c)
      input.colonies.push_back({ColonyId(site.text() + "-" + std::to_string(c)), "Colony", site, c + 1});
    input.weather.emplace_back();
    for (int day = 0; day < size.days; ++day) input.weather.back().push_back(some_day(draw));
  }
  for (int day = 0; day < size.days; ++day) {
    const double start = 9 + static_cast<int>(draw.word() % 4U);
    input.hours.push_back({start, start + static_cast<int>(draw.word() % 6U)});
  }
  const auto places = static_cast<std::size_t>(size.sites) + 1;
  input.travel.minutes.assign(places, std::vector<std::optional<double>>(places, 0.0));
  for (std::size_t a = 0; a < places; ++a)
    for (std::size_t b = 0; b < places; ++b)
      if (a != b) input.travel.minutes[a][b] = 3 + 25 * draw.uniform();
  input.price_of_opening = 2 * draw.uniform();
  for (int i = 0; i < size.needs; ++i) input.needs.push_back(some_need(draw, input, i));
  return input;
}

}  // namespace beegarth::reference
