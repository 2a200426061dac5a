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

constexpr float solstice_light_h = 17.4F;  // season_on() on the longest day
constexpr float equinox_light_h = 12.0F;
constexpr float usual_capped_hours = 24.0F * worker_capped_days;

void set_weather(Day& day, const facts::DayForcing& f) {
  const Rates& r = *day.rates;
  day.flight_hours = std::clamp(static_cast<float>(f.flight_hours), 0.0F, 24.0F);
  day.max_C = static_cast<float>(f.temperature_max_C);
  day.mean_C = static_cast<float>((f.temperature_min_C + f.temperature_max_C) / 2);
  day.nectar_kg = static_cast<float>(f.nectar_kg_per_day) * day.flight_hours / 8;
  day.pollen_kg = static_cast<float>(f.pollen_index) * r.pollen_kg_per_10000_foragers * day.flight_hours / 8;
  day.mite_young_more = (r.capped_hours - usual_capped_hours) * r.mite_young_per_capped_hour;
  day.mites_in = static_cast<float>(f.mites_in_per_day);
  day.swarm_weather = day.flight_hours >= r.swarm_flight_hours && day.max_C >= r.swarm_max_C;
  day.mating_weather = day.flight_hours >= r.mating_flight_hours && day.max_C >= r.mating_max_C;
  day.draw_combs_per_bee = day.max_C >= r.draw_max_C ? r.draw_combs_per_day / 20000 : 0;
  const float recruiting = ramp(day.flight_hours, 0, r.recruit_flight_hours);
  day.recruit_most = r.recruit_max_per_day * recruiting;
  day.recruit_checked = r.social_inhibition_per_day * recruiting;
  day.winter_work_loss = r.winter_work_loss_per_flight_hour * day.flight_hours;
  day.bee_honey_kg = (std::min(day.flight_hours / r.full_flight_hours, 1.0F) * r.adult_work_honey_g_per_day +
                      r.adult_honey_g_per_day) /
                     1000;
  day.larva_honey_kg = r.larva_honey_g_per_day / 1000;
  day.larva_pollen_kg = r.larva_pollen_g_per_day / 1000;
}

// Light as the colony takes it: what the calendar says, in the dark half of the year at least the place's own
// day, and more where the day is warm, so that brood begins earlier and ends later at a southern or warm
// place. The figure for warmth is a guess; see docs/colony.md.
float no_darker_than_here(float calendar_h, float own_daylength_h) {
  return std::max(calendar_h, std::min(own_daylength_h, equinox_light_h));
}
float season_light(const Rates& r, float light_h, float mean_C) {
  return light_h + r.light_per_warm_C * std::max(0.0F, mean_C - r.light_from_C);
}

void set_year(Day& day, const Model& model, float calendar_h, float own_daylength_h, bool lengthening) {
  const Rates& r = *day.rates;
  const float light = season_light(r, no_darker_than_here(calendar_h, own_daylength_h), day.mean_C);
  day.light = light;
  day.lengthening = lengthening;
  day.warm = ramp(day.mean_C, r.laying_none_C, r.laying_full_C);
  // From the longest day on laying falls from what the rising year had come to on a day as warm, so that it
  // does not leap where one ramp takes over from the other.
  const float longest = season_light(r, solstice_light_h, day.mean_C);
  const float rising = ramp(lengthening ? light : longest, r.season_start_light_h, r.season_full_light_h);
  day.season_turn = std::min(longest, r.season_turn_light_h);
  day.season_peak = rising;
  const auto left_until = [&](float end) {
    return lengthening ? 1.0F : ramp(light, end, std::max(day.season_turn, end + 0.5F));
  };
  day.laying = day.warm * rising * left_until(model.latest_season_end());
  const float usual_left = left_until(model.season_end(0));
  day.season_over = 1 - usual_left;
  const float usual = day.warm * rising * usual_left;
  day.drone_share = r.drone_share * (lengthening ? ramp(light, r.drone_start_light_h, r.drone_full_light_h)
                                                 : ramp(light, r.drone_end_light_h, r.drone_turn_light_h));
  day.drone_layer_eggs = r.drone_layer_eggs_per_day * std::min(usual * 4, 1.0F);
  // Winter bees rest while they can: from the new year on, the more they fly the less, whether there is brood
  // or not.
  const bool wakes = lengthening || calendar_h > r.winter_first_light_h;
  const float awake =
      wakes ? ramp(day.flight_hours, r.winter_rest_flight_hours, r.winter_no_rest_flight_hours) : 0.0F;
  day.winter_idle_work = r.winter_idle_work + (1 - r.winter_idle_work) * awake;
  // A cold day in July makes no winter bees: they are reared from late summer on.
  const float late = ramp(calendar_h, r.winter_first_light_h, r.winter_first_light_h - 0.7F);
  day.winter_share =
      lengthening ? 0.0F : late * (1.0F - ramp(light, r.winter_all_light_h, r.winter_turn_light_h));
  const bool evicts = !lengthening && light < r.winter_turn_light_h;
  day.drones_keep = (1 - r.drone_loss_per_day) * (evicts ? 1 - r.drone_eviction_per_day : 1.0F);
  // Warm days bring swarms forward in spring; in August they keep none going.
  day.swarm_rate = r.swarm_rate_per_day *
                   ramp(lengthening ? light : calendar_h, r.swarm_start_light_h, r.swarm_full_light_h) *
                   (lengthening ? 1.0F : r.swarm_late);
  day.supersedes = r.supersede_per_day * usual;
  day.mates_below = r.mating_odds_per_day * r.mating_return_odds;
}

// Robbers come on warm days when the flowers give nothing.
void set_robbers(Day& day, const facts::DayForcing& f) {
  const Rates& r = *day.rates;
  day.robbers = f.robbing > 0 && day.max_C >= r.rob_max_C && day.flight_hours > 0 &&
                f.nectar_kg_per_day < static_cast<double>(r.rob_dearth_kg_per_day);
  day.rob_kg = day.robbers ? static_cast<float>(f.robbing) * r.rob_kg_per_day : 0;
}

// Heat to make up grows with the loss of the hive and the difference to a brood nest's shell, and is at most
// twice the usual: a tighter cluster loses no more.
float heat_honey_kg(const Rates& r, const facts::Dwelling& d, float mean_C) {
  float loss = static_cast<float>(d.conductance_W_K) / r.usual_conductance_W_K;
  if (d.two_colonies) loss *= r.two_colonies_heat;
  if (d.mesh_floor) loss *= r.mesh_floor_heat;
  if (d.sheltered) loss *= r.sheltered_heat;
  const float cold = std::clamp((r.heat_none_C - mean_C) / (r.heat_none_C - r.heat_usual_C), 0.0F, 2.0F);
  return r.colony_heat_honey_g_per_day * loss * cold / 1000;
}

void set_dwelling(Day& day, const facts::Dwelling& d) {
  const Rates& r = *day.rates;
  day.cells_per_comb = static_cast<float>(d.worker_cells_per_comb);
  day.honey_kg_per_comb = static_cast<float>(d.honey_kg_per_comb);
  day.honey_kg_per_cell = day.honey_kg_per_comb / day.cells_per_comb;
  day.cells_per_honey_kg = day.cells_per_comb / day.honey_kg_per_comb;
  day.honey_kg_per_free_cell = r.nest_nectar_share * day.honey_kg_per_comb / day.cells_per_comb;
  day.nest_combs = static_cast<float>(d.brood_combs);
  const float most = r.nest_honey_most + (r.nest_honey_most_late - r.nest_honey_most) * day.season_over;
  day.nest_honey_kg = most * day.nest_combs * day.honey_kg_per_comb;
  day.super_combs = static_cast<float>(d.super_combs);
  day.bees_at_home = static_cast<float>(d.bees_per_seam) * (day.nest_combs + 0.5F * day.super_combs);
  if (d.form == facts::HiveForm::horizontal) day.swarm_rate *= r.horizontal_crowding;
  day.heat_honey_kg = heat_honey_kg(r, d, day.mean_C);
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
  set_year(day, model, season.light_h, static_cast<float>(forcing.daylength_h), season.lengthening);
  set_robbers(day, forcing);
  set_dwelling(day, dwelling);
  // A first-order autoregression with the standard deviation of the table in the long run.
  const auto step = [](float sd, float keeps) { return sd * std::sqrt(1 - keeps * keeps); };
  day.laying_step = step(r.vigour_sd, r.vigour_keeps);
  day.forage_step = step(r.forage_sd, r.forage_keeps);
  day.mite_step = step(r.mite_sd, r.mite_keeps);
  return day;
}

}  // namespace beegarth::colony
