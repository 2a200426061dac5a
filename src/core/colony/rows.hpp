// Private. How a member is laid out: every row is one number per member, sixteen members side by side in a
// block. Brood, hive bees and mites under cappings lie in rings: a cohort keeps its row from its first day to
// its last, and the day only turns the hand that points at the youngest.
#pragma once

#include "base/random.hpp"
#include "colony/colony.hpp"
#include "colony/stages.hpp"

namespace beegarth::colony {

inline constexpr int lanes = 16;

namespace row {
inline constexpr int worker_brood = 0;
inline constexpr int drone_brood = worker_brood + worker_days;
inline constexpr int worker_mites = drone_brood + drone_days;  // mothers that entered, by day of capping
inline constexpr int drone_mites = worker_mites + worker_capped_days;
inline constexpr int hive = drone_mites + drone_capped_days;
inline constexpr int first_single = hive + hive_ages;
enum : int {
  old_hive = first_single,
  foragers,
  winter,         // winter bees from sound cells
  winter_harmed,  // winter bees from infested cells
  drones,
  stores,        // ripe honey, kg
  nectar,        // being ripened, kg of honey
  pollen,        // kg
  undrawn_nest,  // combs
  undrawn_super,
  mites,  // on adults
  queen,  // 0, 1
  mated,
  queen_clock,  // days since emergence until mated, then since mating
  queen_age,    // days
  vigour,       // of the queen, times the usual
  caged,
  cells,            // queen cells
  cell_age,         // days since the egg
  cells_are_swarm,  // 1: raised to swarm
  ripe_cells,       // 1: the virgin will replace a queen that left or died
  luck_laying,
  luck_forage,
  luck_mites,
  eggs_today,
  emerged_today,  // the day's ledger of workers
  died_today,
  left_today,  // swarmed or taken away
  joined_today,
  winter_reared,  // since the last spring
  winter_reared_infested,
  mites_emerged_today,
  first_event,  // day number, one row per Event
  alive = first_event + event_count,
  first_trait,
  first_score = first_trait + trait_count,  // the traits again, as standard scores
  count = first_score + trait_count,
};
}  // namespace row

inline constexpr float never = 1.0e9F;

struct alignas(64) Block {
  float rows[row::count][lanes];
};

// The only way into an Ensemble for the files of this room.
struct Access {
  static std::vector<Block>& blocks(Ensemble& e) { return e.blocks_; }
  static const std::vector<Block>& blocks(const Ensemble& e) { return e.blocks_; }
  static std::int32_t& turn(Ensemble& e) { return e.turn_; }
  static std::int32_t turn(const Ensemble& e) { return e.turn_; }
  static Date& date(Ensemble& e) { return e.date_; }
  static float& daylength_yesterday(Ensemble& e) { return e.daylength_yesterday_h_; }
  static facts::Dwelling& dwelling(Ensemble& e) { return e.dwelling_; }
  static Rates& rates(Ensemble& e) { return e.rates_; }
  static auto& treatments(Ensemble& e) { return e.treatments_; }
  static int& members(Ensemble& e) { return e.members_; }
  static void start_treatment(Ensemble& e, const TreatmentKind& kind, float days) {
    e.treatments_.push_back({kind, days});
  }
  static float& at(Ensemble& e, int r, int member) {
    return e.blocks_[static_cast<std::size_t>(member / lanes)].rows[r][member % lanes];
  }
  static float at(const Ensemble& e, int r, int member) {
    return e.blocks_[static_cast<std::size_t>(member / lanes)].rows[r][member % lanes];
  }
};

// Rows in rings: where the cohort of a given age lies when the hand has turned `turn` times.
constexpr int ring_row(int first, int length, std::int32_t turn, int age) {
  return first + ((turn - age) % length + length) % length;
}
constexpr int worker_row(std::int32_t turn, int age) {
  return ring_row(row::worker_brood, worker_days, turn, age);
}
constexpr int drone_row(std::int32_t turn, int age) {
  return ring_row(row::drone_brood, drone_days, turn, age);
}
constexpr int worker_mites_row(std::int32_t turn, int days_capped) {
  return ring_row(row::worker_mites, worker_capped_days, turn, days_capped);
}
constexpr int drone_mites_row(std::int32_t turn, int days_capped) {
  return ring_row(row::drone_mites, drone_capped_days, turn, days_capped);
}
constexpr int hive_row(std::int32_t turn, int age) {
  return ring_row(row::hive, hive_ages, turn, age);
}

}  // namespace beegarth::colony
