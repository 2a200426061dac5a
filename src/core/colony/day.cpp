#include "colony/day.hpp"

#include <algorithm>
#include <cmath>

namespace beegarth::colony {
namespace {

float ramp(float x, float none, float full) { return std::clamp((x - none) / (full - none), 0.0F, 1.0F); }

float flag(bool yes) { return yes ? 1.0F : 0.0F; }

void set_year(Day& day, float daylength, bool lengthening) {
  const Rates& r = day.rates;
  const float light = lengthening ? ramp(daylength, r.season_start_daylength_h, r.season_full_daylength_h)
                                  : ramp(daylength, r.season_end_daylength_h, r.season_turn_daylength_h);
  day.laying = light * ramp(day.mean_C, r.laying_none_C, r.laying_full_C);
  day.lengthening = flag(lengthening);
  day.drones = lengthening ? ramp(daylength, 12.5F, 14.5F) : ramp(daylength, 14.5F, 15.5F);
  day.winter_share = lengthening ? 0.0F : 1.0F - ramp(daylength, r.winter_all_daylength_h, r.winter_turn_daylength_h);
  day.evict_drones = flag(!lengthening && daylength < r.winter_turn_daylength_h);
  day.swarm_season = ramp(daylength, r.swarm_daylength_h, r.swarm_daylength_h + 2) * (lengthening ? 1.0F : 0.4F);
}

void set_weather(Day& day, const facts::DayForcing& f) {
  const Rates& r = day.rates;
  day.flight_hours = std::clamp(static_cast<float>(f.flight_hours), 0.0F, 24.0F);
  day.max_C = static_cast<float>(f.temperature_max_C);
  day.mean_C = static_cast<float>((f.temperature_min_C + f.temperature_max_C) / 2);
  day.nectar_kg = static_cast<float>(f.nectar_kg_per_day) * day.flight_hours / 8;
  day.pollen_kg = static_cast<float>(f.pollen_index) * r.pollen_kg_per_10000_foragers * day.flight_hours / 8;
  day.mites_in = static_cast<float>(f.mites_in_per_day);
  day.swarm_weather = flag(day.flight_hours >= r.swarm_flight_hours && day.max_C >= r.swarm_max_C);
  day.mating_weather = flag(day.flight_hours >= r.mating_flight_hours && day.max_C >= r.mating_max_C);
  day.draw_weather = flag(day.max_C >= 14);
  day.recruiting = ramp(day.flight_hours, 0, r.recruit_flight_hours);
}

void set_dwelling(Day& day, const facts::Dwelling& d) {
  day.cells_per_comb = static_cast<float>(d.worker_cells_per_comb);
  day.honey_kg_per_comb = static_cast<float>(d.honey_kg_per_comb);
  day.nest_combs = static_cast<float>(d.brood_combs);
  day.super_combs = static_cast<float>(d.super_combs);
  day.bees_at_home = static_cast<float>(d.bees_per_seam) * (day.nest_combs + 0.5F * day.super_combs);
  // Heat to make up grows with the loss of the hive and the difference to a brood nest's shell of 18 C; two colonies
  // under one roof share a wall.
  const float loss = static_cast<float>(d.conductance_W_K) / 1.2F * (d.two_colonies ? 0.8F : 1.0F);
  day.cold = loss * ramp(day.mean_C, 18, 5 - 13);  // 0 at 18 C, 1 at -8 C
  day.cold *= 2;                                   // so 1 at 5 C
}

}  // namespace

bool days_lengthen(Date date, double daylength_h) {
  const int day = date.day_of_year();
  const bool between_solstices = day < 172 || day >= 355;  // northern: the sun climbs
  const bool summer_half = day >= 80 && day < 266;         // northern: days longer than nights
  const bool north = (daylength_h >= 12) == summer_half;
  return north == between_solstices;
}

Day make_day(const Model& model, const facts::Dwelling& dwelling, const facts::DayForcing& forcing,
             float daylength_yesterday_h) {
  Day day;
  day.rates = model.rates;
  const Rates& r = day.rates;
  const auto daylength = static_cast<float>(forcing.daylength_h);
  const bool lengthening = daylength_yesterday_h > 0 && daylength != daylength_yesterday_h
                               ? daylength > daylength_yesterday_h
                               : days_lengthen(forcing.date, forcing.daylength_h);
  day.number = static_cast<float>(forcing.date.day_number());
  set_weather(day, forcing);
  set_year(day, daylength, lengthening);
  set_dwelling(day, dwelling);
  for (std::size_t age = 0; age < day.leaving.size(); ++age) {
    const auto days = static_cast<float>(age);
    day.leaving[age] = ramp(days, r.onset_first_age_days, r.onset_first_age_days + r.onset_ramp_days);
  }
  // A first-order autoregression with the standard deviation of the table in the long run.
  const auto step = [](float sd, float keeps) { return sd * std::sqrt(1 - keeps * keeps); };
  day.laying_step = step(r.vigour_sd, r.vigour_keeps);
  day.forage_step = step(r.forage_sd, r.forage_keeps);
  day.mite_step = step(r.mite_sd, r.mite_keeps);
  return day;
}

}  // namespace beegarth::colony
