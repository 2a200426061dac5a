#include "colony/day.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "colony/rows.hpp"

namespace beegarth::colony {
namespace {

float ramp(float x, float none, float full) {
  return std::clamp((x - none) / (full - none), 0.0F, 1.0F);
}

void set_weather(Day& day, const facts::DayForcing& f) {
  const Rates& r = *day.rates;
  day.flight_hours = std::clamp(static_cast<float>(f.flight_hours), 0.0F, 24.0F);
  day.max_C = static_cast<float>(f.temperature_max_C);
  day.mean_C = static_cast<float>((f.temperature_min_C + f.temperature_max_C) / 2);
  day.nectar_kg = static_cast<float>(f.nectar_kg_per_day) * day.flight_hours / 8;
  day.pollen_kg = static_cast<float>(f.pollen_index) * r.pollen_kg_per_10000_foragers * day.flight_hours / 8;
  day.mites_in = static_cast<float>(f.mites_in_per_day);
  day.swarm_weather = day.flight_hours >= r.swarm_flight_hours && day.max_C >= r.swarm_max_C;
  day.mating_weather = day.flight_hours >= r.mating_flight_hours && day.max_C >= r.mating_max_C;
  day.draw_combs_per_bee = day.max_C >= 14 ? r.draw_combs_per_day / 20000 : 0;
  const float recruiting = ramp(day.flight_hours, 0, r.recruit_flight_hours);
  day.recruit_most = r.recruit_max_per_day * recruiting;
  day.recruit_checked = r.social_inhibition_per_day * recruiting;
  day.winter_work_loss = r.winter_work_loss_per_flight_hour * day.flight_hours;
  day.bee_honey_kg =
      (std::min(day.flight_hours / 6, 1.0F) * r.adult_work_honey_g_per_day + r.adult_honey_g_per_day) / 1000;
  day.larva_honey_kg = r.larva_honey_g_per_day / 1000;
  day.larva_pollen_kg = r.larva_pollen_g_per_day / 1000;
}

void set_year(Day& day, float light_h, bool lengthening) {
  const Rates& r = *day.rates;
  const float light = lengthening ? ramp(light_h, r.season_start_daylength_h, r.season_full_daylength_h)
                                  : ramp(light_h, r.season_end_daylength_h, r.season_turn_daylength_h);
  day.laying = light * ramp(day.mean_C, r.laying_none_C, r.laying_full_C);
  day.lengthening = lengthening;
  day.drone_share = r.drone_share * (lengthening ? ramp(light_h, 12.5F, 14.5F) : ramp(light_h, 14.5F, 15.5F));
  day.drone_layer_eggs = r.drone_layer_eggs_per_day * std::min(day.laying * 4, 1.0F);
  day.winter_share =
      lengthening ? 0.0F : 1.0F - ramp(light_h, r.winter_all_daylength_h, r.winter_turn_daylength_h);
  const bool evicts = !lengthening && light_h < r.winter_turn_daylength_h;
  day.drones_keep = (1 - r.drone_loss_per_day) * (evicts ? 1 - r.drone_eviction_per_day : 1.0F);
  day.swarm_rate = r.swarm_rate_per_day * ramp(light_h, r.swarm_daylength_h, r.swarm_daylength_h + 2) *
                   (lengthening ? 1.0F : 0.3F);
  day.supersedes = r.supersede_per_day * day.laying;
  day.mates_below = r.mating_odds_per_day * r.mating_return_odds;
}

void set_dwelling(Day& day, const facts::Dwelling& d) {
  day.cells_per_comb = static_cast<float>(d.worker_cells_per_comb);
  day.honey_kg_per_comb = static_cast<float>(d.honey_kg_per_comb);
  day.cells_per_honey_kg = day.cells_per_comb / day.honey_kg_per_comb;
  day.honey_kg_per_free_cell = 0.5F * day.honey_kg_per_comb / day.cells_per_comb;
  day.nest_combs = static_cast<float>(d.brood_combs);
  day.super_combs = static_cast<float>(d.super_combs);
  day.bees_at_home = static_cast<float>(d.bees_per_seam) * (day.nest_combs + 0.5F * day.super_combs);
  // Heat to make up grows with the loss of the hive and the difference to a brood nest's shell of 18 C; two
  // colonies under one roof share a wall.
  const float loss = static_cast<float>(d.conductance_W_K) / 1.2F * (d.two_colonies ? 0.8F : 1.0F);
  const float cold =
      2 * loss * ramp(day.mean_C, 18, 5 - 13);  // 0 at 18 C, 1 at 5 C in the usual hive, 2 at -8 C
  day.heat_honey_kg = day.rates->colony_heat_honey_g_per_day * cold / 1000;
}

RingHands hands_at(std::int32_t turn) {
  RingHands hands;
  for (int age = 0; age <= worker_capping_age; ++age) {
    hands.worker[static_cast<std::size_t>(age)] = worker_row(turn, age);
  }
  for (int age = 0; age <= hive_ages; ++age) {
    hands.hive[static_cast<std::size_t>(age)] = hive_row(turn, age);
  }
  hands.drone_youngest = drone_row(turn, 0);
  hands.drone_capped = drone_row(turn, drone_capping_age);
  hands.worker_mites = worker_mites_row(turn, 0);
  hands.drone_mites = drone_mites_row(turn, 0);
  return hands;
}

Leaving leaving_by_age(const Rates& r) {
  Leaving leaving;
  leaving.first = hive_ages;
  for (std::size_t age = hive_ages; age-- > 0;) {
    leaving.share[age] =
        ramp(static_cast<float>(age), r.onset_first_age_days, r.onset_first_age_days + r.onset_ramp_days);
    if (leaving.share[age] > 0) leaving.first = age;
  }
  return leaving;
}

}  // namespace

Season season_on(Date date, double daylength_h, double daylength_yesterday_h) {
  const int n = date.day_of_year();
  const bool sun_climbs_north = n < 172 || n >= 355;
  const bool sun_stands_north = n >= 80 && n < 266;
  // Near the equinoxes days are 12 hours long everywhere and only their change tells north from south; near
  // the solstices they hardly change and only their length does.
  const bool near_solstice = std::abs(n - 172) < 45 || n < 40 || n > 310;
  const bool changes = daylength_yesterday_h > 0 && daylength_h != daylength_yesterday_h;
  const bool north = near_solstice || !changes ? (daylength_h >= 12) == sun_stands_north
                                               : (daylength_h > daylength_yesterday_h) == sun_climbs_north;
  // CBM model (Forsythe et al. 1995) at 55 degrees, with the sun's declination turned over in the south.
  const double theta = 0.2163108 + 2 * std::atan(0.9671396 * std::tan(0.00860 * (n - 186)));
  const double declination = std::asin(0.39795 * std::cos(theta)) * (north ? 1 : -1);
  constexpr double degree = std::numbers::pi / 180;
  const double x = (std::sin(0.8333 * degree) + std::sin(55 * degree) * std::sin(declination)) /
                   (std::cos(55 * degree) * std::cos(declination));
  const double light = 24 - 24 / std::numbers::pi * std::acos(x);
  return {north == sun_climbs_north, static_cast<float>(light)};
}

Day make_day(const Model& model, const facts::Dwelling& dwelling, const facts::DayForcing& forcing,
             float daylength_yesterday_h, std::int32_t turn) {
  Day day;
  day.rates = &model.rates;
  const Rates& r = model.rates;
  const Season season =
      season_on(forcing.date, forcing.daylength_h, static_cast<double>(daylength_yesterday_h));
  day.number = static_cast<float>(forcing.date.day_number());
  day.hands = hands_at(turn);
  day.leaving = leaving_by_age(r);
  set_weather(day, forcing);
  set_year(day, season.light_h, season.lengthening);
  set_dwelling(day, dwelling);
  // A first-order autoregression with the standard deviation of the table in the long run.
  const auto step = [](float sd, float keeps) { return sd * std::sqrt(1 - keeps * keeps); };
  day.laying_step = step(r.vigour_sd, r.vigour_keeps);
  day.forage_step = step(r.forage_sd, r.forage_keeps);
  day.mite_step = step(r.mite_sd, r.mite_keeps);
  return day;
}

}  // namespace beegarth::colony
