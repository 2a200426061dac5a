// The figures behind the daily step, read once from tables/colony.toml.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "colony/traits.hpp"

namespace beegarth::colony {

// What a kind of treatment does over its usual time, from the rows treat_<kind>_*.
struct TreatmentKind {
  std::string name;
  float kill_per_day = 0;             // of mites on adults, as a rate: a day leaves exp(-rate) of them
  float efficacy_under_cappings = 0;  // share of mites under cappings killed over the whole time
  float days = 1;
  float temperature_min_C = -50;  // a day whose warmest hour stays below this does nothing
};

// Rates shared by all colonies. Every name is a key of the table; the source stands there.
struct Rates {
  // the year of the queen
  float light_per_warm_C, light_from_C;             // hours of light that a degree stands for, above so much
  float season_start_light_h, season_full_light_h;  // lengthening days: no laying .. full laying
  float season_turn_light_h;                        // shortening days: full laying above; none: a trait
  float winter_first_light_h;          // shortening days: no winter bees above, of the calendar alone
  float laying_none_C, laying_full_C;  // mean temperature of the day
  float half_laying_bees;              // nurses with which the queen lays half of what she could
  float care_cells_per_bee;            // brood cells that one bee can keep warm and fed
  float egg_wait_days;                 // days over which free room or care is filled
  float drone_share;                   // of eggs, at the height of the season
  float drone_start_light_h, drone_full_light_h;  // lengthening days: no drone eggs .. their full share
  float drone_turn_light_h, drone_end_light_h;    // shortening days: full share .. none
  float drone_half_bees;                          // bees at which half of that is laid
  float laying_falls_per_year, laying_falls_from_years;  // a queen lays less every year after so many
  float drone_layer_eggs_per_day;                        // of a queen that never mated
  // the workers
  float hive_loss_per_day;
  float old_hive_loss_per_day;     // of bees past the usual age of leaving for the field
  float mite_burden_loss_per_day;  // more die, per mite and bee
  float forager_rest_loss_per_day;
  float onset_first_age_days, onset_ramp_days;  // hive bees begin to leave for the field
  float recruit_flight_hours;                   // with so many a day recruitment is in full swing
  float recruit_max_per_day, social_inhibition_per_day;
  float winter_turn_light_h, winter_all_light_h;  // shortening days: none .. all emerge as winter bees
  float winter_work_loss_per_flight_hour;
  float winter_work_share;         // of winter bees that fly out to collect on a fit day
  float harmed_winter_loss_times;  // winter bees from infested cells die so many times faster
  float infested_brood_dies;       // share of infested worker brood that never emerges
  float winter_idle_work;          // share of the wear of full rearing that a winter bee without brood bears
  float winter_rest_flight_hours,
      winter_no_rest_flight_hours;  // as days lengthen: on a day with so many all idle .. none do
  float drone_loss_per_day, drone_eviction_per_day;
  // food
  float full_flight_hours;  // with so many a day adults eat as on a full working day
  float adult_honey_g_per_day, adult_work_honey_g_per_day, colony_heat_honey_g_per_day;
  float larva_honey_g_per_day, larva_pollen_g_per_day,
      drone_larva_share;                        // drones: of their brood, counted as workers' larvae
  float new_nest_food_share;                    // of a nest still being drawn, that honey and pollen may take
  float nest_honey_most, nest_honey_most_late;  // share of the nest that honey may fill, so that the queen
                                                // keeps a place; and when she has given up laying
  float drone_cell_room,
      nest_nectar_share;  // worker cells a drone cell takes; of free cells that nectar may fill
  float pollen_kg_per_10000_foragers, pollen_store_max_kg, pollen_half_kg, laying_stores_kg;
  float pollen_cells_per_kg;
  float ripening_per_day;
  float nest_stores_kg;             // stores kept beside the brood before any goes above
  float heat_none_C, heat_usual_C;  // mean temperature: no heat to make up .. the usual
  float usual_conductance_W_K;      // of the hive in which that is burnt
  float two_colonies_heat, mesh_floor_heat, sheltered_heat;  // times the loss
  float draw_combs_per_day;                                  // by 20,000 bees in a good flow
  float draw_max_C;                                          // wax is made on days as warm as this
  float comb_honey_kg;                                       // honey that a drawn comb costs
  float flow_kg_per_day;        // income of 20,000 bees at which comb is drawn at full pace
  float starving_loss_per_day;  // of bees, on a day without any food
  // mites
  float capped_hours, mite_young_per_capped_hour;  // of workers; more young for each hour above 288
  float mite_reproduction_drone;                   // mites emerging per mite that entered a drone cell
  float drone_cell_preference;                     // mites per drone cell over mites per worker cell
  float mite_crowding;                             // fewer young per mother, per mite entered per cell
  float usual_cells_per_bee;  // cells capped a day per bee at which mites enter at the trait's rate
  float cells_per_bee_most;   // times the usual ratio beyond which more cells do not hasten it
  float mite_loss_per_day, mite_winter_loss_per_day, mites_per_bee_most;
  float mite_brood_half_cells;  // brood with which half of the mites' losses are those of the season
  float fall_per_emerging;      // mites found on a full board per mite emerging
  // swarms and queens
  float swarm_rate_per_day, swarm_min_bees, swarm_start_light_h, swarm_full_light_h;
  float swarm_late;          // times the rate once days shorten
  float crowded_free_share;  // free share of the worker cells below which the nest is crowded
  float crowded_weight, full_hive_from_share,
      swarm_age_weight;                                 // of a crowded nest; bees per room; the queen's years
  float give_up_per_day;                                // of started swarm preparations
  float swarm_cells, supersede_cells, emergency_cells;  // queen cells raised
  float swarm_share, swarm_honey_g_per_bee;
  float cast_odds, cast_share, cast_min_bees;       // a second swarm with a virgin, once the first has left
  float horizontal_crowding;                        // times the crowding of an upright hive
  float abscond_per_day, abscond_stores_kg;         // on a fit day, of a colony that is left without food
  float rob_kg_per_day, rob_below_bees, rob_max_C;  // weak colonies are robbed in a dearth
  float rob_dearth_kg_per_day;                      // nectar on offer below which robbers come
  float swarm_flight_hours, swarm_max_C;
  float queen_fails_per_day, queen_fails_as_drone_layer, drone_layer_lost_per_day, supersede_per_day,
      queen_age_from_years;
  float mating_flight_hours, mating_max_C, mating_odds_per_day, mating_return_odds;
  float too_few_bees;  // below this a colony is dead
  // luck
  float vigour_keeps, vigour_sd, forage_keeps, forage_sd, mite_keeps, mite_sd;
};

struct Model {
  Rates rates{};
  TraitPrior prior;
  std::vector<TreatmentKind> treatments;

  static Expected<Model> from(const FactTable& colony_table);
  // Light at which the queen stops laying when days shorten, h, for a standard score: within six standard
  // deviations and at least half an hour below the turn of the season, so that a bound is known for all.
  float season_end(double score) const;
  float latest_season_end() const { return season_end(-6); }
  const TreatmentKind* treatment(std::string_view kind) const;
};

}  // namespace beegarth::colony
