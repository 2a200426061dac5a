// Private. What one day means for every member alike: worked out once, before the members are stepped. A
// figure that is 0 where a stage has nothing to do (no laying, no nectar, no swarm season) lets the stage be
// passed over: with a figure that differs between members, keep here the largest that any of them can have.
#pragma once

#include <array>
#include <cstdint>

#include "colony/model.hpp"
#include "colony/stages.hpp"
#include "facts/dwelling.hpp"
#include "facts/forcing.hpp"

namespace beegarth::colony {

// Where the cohorts lie that the day looks at one by one: rows by age. The hive bees' are followed by the row
// of age 0 again, where those lie that were the oldest yesterday evening.
struct RingHands {
  std::array<int, worker_capping_age + 1> worker{};  // up to the cohort that is capped today
  std::array<int, hive_ages + 1> hive{};
  int drone_youngest = 0, drone_capped = 0;
  int worker_mites = 0,
      drone_mites = 0;  // mothers that come out this morning; those that enter take their place
};

// When hive bees leave for the field: share of the rate of recruitment by age, nothing before the age
// `first`. The bees past the last age, kept together, are reckoned apart.
struct Leaving {
  std::size_t first = 0;
  std::array<float, hive_ages + 1> share{};
};

struct Day {
  const Rates* rates = nullptr;  // of the model, which outlives the day
  float number = 0;              // day number of the date
  RingHands hands;
  Leaving leaving;

  // weather
  float flight_hours = 0, mean_C = 0, max_C = 0;
  bool swarm_weather = false, mating_weather = false;
  // emerging and ageing
  bool lengthening = false;
  float light = 0;                              // hours, warmth counted in (season_light)
  float warm = 0;                               // share of laying that the warmth of the day allows
  float winter_share = 0;                       // of emerging bees
  float recruit_most = 0, recruit_checked = 0;  // a day; and per share of foragers (social inhibition)
  float winter_work_loss = 0;                   // of winter bees, a day, while they rear brood
  float winter_idle_work = 0;                   // share of it that those without brood bear
  float drones_keep = 1;
  // room and food
  float cells_per_comb = 0, honey_kg_per_comb = 0, nest_combs = 0, super_combs = 0, bees_at_home = 0;
  float honey_kg_per_cell = 0;
  float cells_per_honey_kg = 0, honey_kg_per_free_cell = 0,  // a day's nectar fills a part of the free cells
      nest_honey_kg = 0;                                     // honey in the nest, at most
  float nectar_kg = 0;                                       // by 10,000 foragers with today's flight hours
  float pollen_kg = 0;                                       // likewise
  float bee_honey_kg = 0, larva_honey_kg = 0, heat_honey_kg = 0, larva_pollen_kg = 0;  // eaten
  float draw_combs_per_bee = 0;                                                        // in a full flow
  // the queen
  float laying = 0;       // share of the queen's best that season and warmth allow, the most of any member
  float season_turn = 0;  // light at which laying begins to fall, when days shorten
  float season_peak = 1;  // share of full laying that the rising year had come to
  float season_over = 0;  // how much of the falling year's laying the usual colony has given up
  float drone_share = 0, drone_layer_eggs = 0;
  float supersedes = 0;  // a day, per year of the queen's age
  float mates_below = 0;
  float swarm_rate = 0;  // a day, of a colony inclined as usual
  bool robbers = false;  // a dearth on a warm day
  float rob_kg = 0;      // that they carry off from a colony of no bees
  // mites
  float mite_young_more = 0;  // for the hours that cells stay capped beyond the usual
  float mites_in = 0;
  float kill_on_bees = 0, kill_under_cappings = 0;  // by treatments, rates a day
  // luck
  float laying_step = 0, forage_step = 0, mite_step = 0;
};

// turn: days since the ensemble began, which turn the rings.
Day make_day(const Model& model, const facts::Dwelling& dwelling, const facts::DayForcing& forcing,
             float daylength_yesterday_h, std::int32_t turn);

// Where the year stands, wherever on earth: whether days lengthen, and how long a day would be at 55 degrees
// on the same side of the equator. The queen's year was fitted there; elsewhere it keeps the sun's calendar,
// while warmth, pollen and nurses, not the clock, make the difference.
struct Season {
  bool lengthening = true;
  float light_h = 12;
};
Season season_on(Date date, double daylength_h, double daylength_yesterday_h);  // yesterday 0: not known

}  // namespace beegarth::colony
