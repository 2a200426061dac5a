#include "duty/feeding.hpp"

#include <gtest/gtest.h>

#include "duty/hive_weight.hpp"
#include "overridden.hpp"

namespace beegarth::duty {
namespace {

TEST(Syrup, has_a_volume_only_where_its_density_is_known) {
  const FactTable feeding = testing::rows_of("feeding");
  EXPECT_TRUE(mix_syrup(1, 1, feeding)->volume_L);
  EXPECT_TRUE(mix_syrup(2, 1, feeding)->volume_L);
  EXPECT_FALSE(mix_syrup(1, 2, feeding)->volume_L);
  EXPECT_FALSE(mix_syrup(3, 1, feeding)->volume_L);
}

TEST(Syrup, above_two_to_one_crystallises) {
  const FactTable feeding = testing::rows_of("feeding");
  EXPECT_FALSE(mix_syrup(2, 1, feeding)->crystallises);
  EXPECT_TRUE(mix_syrup(2.1, 1, feeding)->crystallises);
}

TEST(SugarForStores, takes_what_was_not_said_from_the_table) {
  const auto sugar = sugar_for_stores(10, {}, {}, testing::rows_of("feeding"));
  ASSERT_TRUE(sugar);
  EXPECT_EQ(sugar->moisture_pct, 20);
  EXPECT_EQ(sugar->loss_pct, 15);
  EXPECT_LT(sugar->low_kg, sugar->sugar_kg);
  EXPECT_GT(sugar->high_kg, sugar->sugar_kg);
  EXPECT_NEAR(sugar->sugar_kg, 10, 1);  // common practice: a kilogram of sugar for a kilogram of stores
  EXPECT_EQ(sugar_for_stores(0, {}, {}, testing::rows_of("feeding"))->sugar_kg, 0);
  EXPECT_FALSE(sugar_for_stores(10, {}, {}, overridden("feeding", "feed_loss_pct", 100)));
}

TEST(HiveWeight, rails_that_cannot_be_are_refused) {
  EXPECT_FALSE(weight_on_rails_kg(10, 10, {0, 800, 200}));
  EXPECT_FALSE(weight_on_rails_kg(10, 10, {400, 500, 200}));
  EXPECT_TRUE(weight_on_rails_kg(10, 10, {400, 600, 200}));
}

TEST(HiveWeight, one_side_by_its_levers_or_by_the_usual_share) {
  const FactTable feeding = testing::rows_of("feeding");
  const auto levers = weight_of_one_side(15, 460.0, 200.0, feeding);
  ASSERT_TRUE(levers);
  EXPECT_DOUBLE_EQ(levers->weight_kg, 34.5);
  EXPECT_DOUBLE_EQ(levers->low_kg, levers->high_kg);
  EXPECT_FALSE(weight_of_one_side(15, 200.0, 460.0, feeding));
  const auto usual = weight_of_one_side(15, {}, {}, feeding);
  ASSERT_TRUE(usual);
  EXPECT_DOUBLE_EQ(usual->weight_kg, 30);
  EXPECT_LT(usual->low_kg, 30);
  EXPECT_GT(usual->high_kg, 30);
}

}  // namespace
}  // namespace beegarth::duty
