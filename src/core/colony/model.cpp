#include "colony/model.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "colony/treatment.hpp"

namespace beegarth::colony {
namespace {

struct RateKey {
  std::string_view key;
  float Rates::*member;
};

constexpr auto rate_keys = std::to_array<RateKey>({
    {"light_per_warm_C", &Rates::light_per_warm_C},
    {"light_from_C", &Rates::light_from_C},
    {"season_start_light_h", &Rates::season_start_light_h},
    {"season_full_light_h", &Rates::season_full_light_h},
    {"season_turn_light_h", &Rates::season_turn_light_h},
    {"winter_first_light_h", &Rates::winter_first_light_h},
    {"laying_none_C", &Rates::laying_none_C},
    {"laying_full_C", &Rates::laying_full_C},
    {"half_laying_bees", &Rates::half_laying_bees},
    {"care_cells_per_bee", &Rates::care_cells_per_bee},
    {"egg_wait_days", &Rates::egg_wait_days},
    {"drone_share", &Rates::drone_share},
    {"drone_start_light_h", &Rates::drone_start_light_h},
    {"drone_full_light_h", &Rates::drone_full_light_h},
    {"drone_turn_light_h", &Rates::drone_turn_light_h},
    {"drone_end_light_h", &Rates::drone_end_light_h},
    {"drone_half_bees", &Rates::drone_half_bees},
    {"laying_falls_per_year", &Rates::laying_falls_per_year},
    {"laying_falls_from_years", &Rates::laying_falls_from_years},
    {"drone_layer_eggs_per_day", &Rates::drone_layer_eggs_per_day},
    {"hive_loss_per_day", &Rates::hive_loss_per_day},
    {"old_hive_loss_per_day", &Rates::old_hive_loss_per_day},
    {"mite_burden_loss_per_day", &Rates::mite_burden_loss_per_day},
    {"forager_rest_loss_per_day", &Rates::forager_rest_loss_per_day},
    {"onset_first_age_days", &Rates::onset_first_age_days},
    {"onset_ramp_days", &Rates::onset_ramp_days},
    {"recruit_flight_hours", &Rates::recruit_flight_hours},
    {"recruit_max_per_day", &Rates::recruit_max_per_day},
    {"social_inhibition_per_day", &Rates::social_inhibition_per_day},
    {"winter_turn_light_h", &Rates::winter_turn_light_h},
    {"winter_all_light_h", &Rates::winter_all_light_h},
    {"winter_work_loss_per_flight_hour", &Rates::winter_work_loss_per_flight_hour},
    {"winter_work_share", &Rates::winter_work_share},
    {"harmed_winter_loss_times", &Rates::harmed_winter_loss_times},
    {"infested_brood_dies", &Rates::infested_brood_dies},
    {"winter_idle_work", &Rates::winter_idle_work},
    {"winter_rest_flight_hours", &Rates::winter_rest_flight_hours},
    {"winter_no_rest_flight_hours", &Rates::winter_no_rest_flight_hours},
    {"new_nest_food_share", &Rates::new_nest_food_share},
    {"drone_loss_per_day", &Rates::drone_loss_per_day},
    {"drone_eviction_per_day", &Rates::drone_eviction_per_day},
    {"full_flight_hours", &Rates::full_flight_hours},
    {"adult_honey_g_per_day", &Rates::adult_honey_g_per_day},
    {"adult_work_honey_g_per_day", &Rates::adult_work_honey_g_per_day},
    {"colony_heat_honey_g_per_day", &Rates::colony_heat_honey_g_per_day},
    {"larva_honey_g_per_day", &Rates::larva_honey_g_per_day},
    {"larva_pollen_g_per_day", &Rates::larva_pollen_g_per_day},
    {"drone_larva_share", &Rates::drone_larva_share},
    {"nest_honey_most", &Rates::nest_honey_most},
    {"nest_honey_most_late", &Rates::nest_honey_most_late},
    {"drone_cell_room", &Rates::drone_cell_room},
    {"nest_nectar_share", &Rates::nest_nectar_share},
    {"pollen_kg_per_10000_foragers", &Rates::pollen_kg_per_10000_foragers},
    {"pollen_store_max_kg", &Rates::pollen_store_max_kg},
    {"pollen_half_kg", &Rates::pollen_half_kg},
    {"laying_stores_kg", &Rates::laying_stores_kg},
    {"pollen_cells_per_kg", &Rates::pollen_cells_per_kg},
    {"ripening_per_day", &Rates::ripening_per_day},
    {"nest_stores_kg", &Rates::nest_stores_kg},
    {"heat_none_C", &Rates::heat_none_C},
    {"heat_usual_C", &Rates::heat_usual_C},
    {"usual_conductance_W_K", &Rates::usual_conductance_W_K},
    {"two_colonies_heat", &Rates::two_colonies_heat},
    {"mesh_floor_heat", &Rates::mesh_floor_heat},
    {"sheltered_heat", &Rates::sheltered_heat},
    {"draw_combs_per_day", &Rates::draw_combs_per_day},
    {"draw_max_C", &Rates::draw_max_C},
    {"comb_honey_kg", &Rates::comb_honey_kg},
    {"flow_kg_per_day", &Rates::flow_kg_per_day},
    {"starving_loss_per_day", &Rates::starving_loss_per_day},
    {"capped_hours", &Rates::capped_hours},
    {"mite_young_per_capped_hour", &Rates::mite_young_per_capped_hour},
    {"mite_reproduction_drone", &Rates::mite_reproduction_drone},
    {"drone_cell_preference", &Rates::drone_cell_preference},
    {"mite_crowding", &Rates::mite_crowding},
    {"usual_cells_per_bee", &Rates::usual_cells_per_bee},
    {"cells_per_bee_most", &Rates::cells_per_bee_most},
    {"mite_loss_per_day", &Rates::mite_loss_per_day},
    {"mite_winter_loss_per_day", &Rates::mite_winter_loss_per_day},
    {"mites_per_bee_most", &Rates::mites_per_bee_most},
    {"mite_brood_half_cells", &Rates::mite_brood_half_cells},
    {"fall_per_emerging", &Rates::fall_per_emerging},
    {"swarm_rate_per_day", &Rates::swarm_rate_per_day},
    {"swarm_min_bees", &Rates::swarm_min_bees},
    {"swarm_start_light_h", &Rates::swarm_start_light_h},
    {"swarm_full_light_h", &Rates::swarm_full_light_h},
    {"swarm_late", &Rates::swarm_late},
    {"crowded_free_share", &Rates::crowded_free_share},
    {"crowded_weight", &Rates::crowded_weight},
    {"full_hive_from_share", &Rates::full_hive_from_share},
    {"swarm_age_weight", &Rates::swarm_age_weight},
    {"give_up_per_day", &Rates::give_up_per_day},
    {"swarm_cells", &Rates::swarm_cells},
    {"supersede_cells", &Rates::supersede_cells},
    {"emergency_cells", &Rates::emergency_cells},
    {"swarm_share", &Rates::swarm_share},
    {"swarm_honey_g_per_bee", &Rates::swarm_honey_g_per_bee},
    {"cast_odds", &Rates::cast_odds},
    {"cast_share", &Rates::cast_share},
    {"cast_min_bees", &Rates::cast_min_bees},
    {"horizontal_crowding", &Rates::horizontal_crowding},
    {"abscond_per_day", &Rates::abscond_per_day},
    {"abscond_stores_kg", &Rates::abscond_stores_kg},
    {"rob_kg_per_day", &Rates::rob_kg_per_day},
    {"rob_below_bees", &Rates::rob_below_bees},
    {"rob_max_C", &Rates::rob_max_C},
    {"rob_dearth_kg_per_day", &Rates::rob_dearth_kg_per_day},
    {"swarm_flight_hours", &Rates::swarm_flight_hours},
    {"swarm_max_C", &Rates::swarm_max_C},
    {"queen_fails_per_day", &Rates::queen_fails_per_day},
    {"queen_fails_as_drone_layer", &Rates::queen_fails_as_drone_layer},
    {"drone_layer_lost_per_day", &Rates::drone_layer_lost_per_day},
    {"supersede_per_day", &Rates::supersede_per_day},
    {"queen_age_from_years", &Rates::queen_age_from_years},
    {"mating_flight_hours", &Rates::mating_flight_hours},
    {"mating_max_C", &Rates::mating_max_C},
    {"mating_odds_per_day", &Rates::mating_odds_per_day},
    {"mating_return_odds", &Rates::mating_return_odds},
    {"too_few_bees", &Rates::too_few_bees},
    {"vigour_keeps", &Rates::vigour_keeps},
    {"vigour_sd", &Rates::vigour_sd},
    {"forage_keeps", &Rates::forage_keeps},
    {"forage_sd", &Rates::forage_sd},
    {"mite_keeps", &Rates::mite_keeps},
    {"mite_sd", &Rates::mite_sd},
});
static_assert(sizeof(Rates) == rate_keys.size() * sizeof(float), "every rate is read from the table");

// Reads the kinds from the rows treat_<kind>_on_adults and those beside them.
Expected<std::vector<TreatmentKind>> read_treatments(const FactTable& table) {
  constexpr std::string_view head = "treat_";
  constexpr std::string_view tail = "_on_adults", of_all_tail = "_of_all";
  std::vector<TreatmentKind> kinds;
  for (const FactRow& row : table.rows()) {
    const std::string_view key = row.key;
    if (!key.starts_with(head) || !(key.ends_with(tail) || key.ends_with(of_all_tail))) continue;
    TreatmentKind kind;
    kind.name =
        key.substr(head.size(), key.size() - head.size() - (key.ends_with(tail) ? tail : of_all_tail).size());
    const auto put = [&](const std::string& what, float& to) -> std::optional<Problem> {
      auto value = table.value(std::string(head) + kind.name + "_" + what);
      if (!value) return value.problem();
      to = static_cast<float>(*value);
      return std::nullopt;
    };
    // A trial of a treatment of weeks tells what died of all the mites, and those under cappings came out
    // meanwhile; one of days on a colony without brood tells what died of those on bees.
    const bool of_all = key.ends_with(of_all_tail);
    float efficacy = 0;
    if (auto p = put(of_all ? "of_all" : "on_adults", efficacy)) return *std::move(p);
    if (auto p = put("under_cappings", kind.efficacy_under_cappings)) return *std::move(p);
    if (auto p = put("days", kind.days)) return *std::move(p);
    if (auto p = put("temperature_min_C", kind.temperature_min_C)) return *std::move(p);
    const auto is_share = [](float x) { return x >= 0 && x < 1; };
    if (!is_share(efficacy) || !is_share(kind.efficacy_under_cappings) || kind.days < 1) {
      return bad_input("an efficacy lies outside 0..1 or the days are below 1",
                       table.name() + ": treat_" + kind.name,
                       "give shares from 0 to below 1 and at least one day");
    }
    if (of_all) {
      const auto invasion = table.value("mite_invasion"), reproduction = table.value("mite_reproduction");
      if (!invasion) return invasion.problem();
      if (!reproduction) return reproduction.problem();
      const double rate =
          kill_rate_for({.share_of_all = static_cast<double>(efficacy),
                         .share_under_cappings = static_cast<double>(kind.efficacy_under_cappings),
                         .days = static_cast<int>(std::lround(kind.days))},
                        *invasion, *reproduction);
      kind.kill_per_day = static_cast<float>(rate);
    } else {
      kind.kill_per_day = -std::log(1 - efficacy) / kind.days;
    }
    kinds.push_back(std::move(kind));
  }
  return kinds;
}

// Between these a ramp rises: turned over or of no width it would be senseless, and may divide by nothing.
std::optional<Problem> ramps_that_do_not_rise(const FactTable& table) {
  using Ramp = std::pair<const char*, const char*>;
  for (const auto& [low, high] : {Ramp{"heat_usual_C", "heat_none_C"},
                                  {"season_start_light_h", "season_full_light_h"},
                                  {"laying_none_C", "laying_full_C"},
                                  {"drone_start_light_h", "drone_full_light_h"},
                                  {"drone_end_light_h", "drone_turn_light_h"},
                                  {"winter_all_light_h", "winter_turn_light_h"},
                                  {"swarm_start_light_h", "swarm_full_light_h"}}) {
    const auto below = table.value(low), above = table.value(high);
    if (!below) return below.problem();
    if (!above) return above.problem();
    if (*below >= *above)
      return bad_input(std::string(low) + " must be below " + high, table.name(), "correct the rows");
  }
  return std::nullopt;
}

}  // namespace

Expected<Model> Model::from(const FactTable& colony_table) {
  if (auto problem = ramps_that_do_not_rise(colony_table)) return *std::move(problem);
  Model model;
  for (const RateKey& rate : rate_keys) {
    auto value = colony_table.value(rate.key);
    if (!value) return value.problem();
    if (*value < 0 && !rate.key.ends_with("_C")) {
      return bad_input("the value is below zero",
                       colony_table.name() + ": row '" + std::string(rate.key) + "'", "give zero or more");
    }
    model.rates.*rate.member = static_cast<float>(*value);
  }
  auto prior = TraitPrior::from(colony_table);
  if (!prior) return prior.problem();
  model.prior = *prior;
  auto treatments = read_treatments(colony_table);
  if (!treatments) return treatments.problem();
  model.treatments = std::move(*treatments);
  return model;
}

float Model::season_end(double score) const {
  const auto at = static_cast<float>(prior.value(Trait::season_end, std::clamp(score, -6.0, 6.0)));
  return std::min(at, rates.season_turn_light_h - 0.5F);
}

const TreatmentKind* Model::treatment(std::string_view kind) const {
  for (const TreatmentKind& known : treatments) {
    if (known.name == kind) return &known;
  }
  return nullptr;
}

}  // namespace beegarth::colony
