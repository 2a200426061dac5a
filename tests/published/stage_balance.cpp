// A queen that lays steadily fills the stages in the ratio of their days: 3 egg, 6 larva, 12 capped (stage
// table, "Honey Bee Biology"). The numbers are arithmetic on those days.
#include "colony_years.hpp"

namespace beegarth {
namespace {

using colony::Quantity;

TEST(StageBalance, fifteen_hundred_eggs_a_day_make_4500_eggs_9000_larvae_and_18000_capped_cells) {
  // Season, warmth, nurses, pollen, care, room and luck all taken away as limits.
  const auto model = testing::model_with({{"laying_max", 1500},
                                          {"season_start_light_h", 0},
                                          {"season_full_light_h", 1},
                                          {"season_end", 0.01},
                                          {"season_turn_light_h", 1},
                                          {"laying_none_C", -60},
                                          {"laying_full_C", -50},
                                          {"half_laying_bees", 0},
                                          {"care_cells_per_bee", 100},
                                          {"egg_wait_days", 1},
                                          {"pollen_half_kg", 0},
                                          {"larva_pollen_g_per_day", 0},
                                          {"vigour_sd", 0},
                                          {"drone_share", 0},
                                          {"queen_fails_per_day", 0},
                                          {"supersede_per_day", 0}});
  const colony::Start start{.bees = 20000, .stores_kg = 60, .pollen_kg = 2, .mites = 0};
  const auto traits = testing::homely();
  facts::Dwelling hive = testing::roomy_hive();
  hive.super_combs = 60;
  auto e = colony::make_ensemble(model, hive, *Date::from_ymd(2026, 5, 1), 16, std::span(&start, 1),
                                 std::span(&traits, 1));
  testing::follow_to(e, model, *Date::from_ymd(2026, 5, 31));
  EXPECT_NEAR(testing::median(e, Quantity::eggs), 4500, 1);
  EXPECT_NEAR(testing::median(e, Quantity::open_brood), 9000, 1);
  EXPECT_NEAR(testing::median(e, Quantity::capped_cells), 18000, 1);
}

}  // namespace
}  // namespace beegarth
