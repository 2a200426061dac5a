// Feed and weight: strength of syrup, sugar for missing stores, and hives weighed by halves.
#include <gtest/gtest.h>

#include "calc_answers.hpp"

namespace beegarth {
namespace {

using garth::Json;

double strength(const Json& input) {
  return testing::answer("syrup", input)["sugar_pct"];
}

// Recipes of a bee-farm page on winter feeding, official starvation alert 2017, a club tip on hefting and a
// page on making syrup; the strengths are arithmetic, checked to 0.1 %. "Two pounds in a pint" is no 2 to 1.
TEST(Syrup, a_recipe_is_as_strong_as_its_measures_make_it) {
  struct Case {
    Json recipe;
    double sugar_pct;
  };
  const std::vector<Case> cases{
      {{{"sugar_lb", 2}, {"water_uk_pints", 1}}, 61.5}, {{{"sugar_lb", 1}, {"water_uk_pints", 1}}, 44.4},
      {{{"sugar_kg", 1}, {"water_L", 0.63}}, 61.35},    {{{"sugar_kg", 2}, {"water_L", 1.25}}, 61.5},
      {{{"sugar_kg", 1}, {"water_L", 1.25}}, 44.4},     {{{"sugar_kg", 1}, {"water_L", 0.55}}, 64.5},
      {{{"sugar_kg", 50}, {"water_L", 30}}, 62.5},      {{{"sugar_lb", 2}, {"water_us_pints", 1}}, 65.7},
      {{{"sugar_kg", 1}, {"water_kg", 1}}, 50.0},       {{{"sugar_kg", 2}, {"water_kg", 1}}, 66.7},
  };
  for (const Case& c : cases) EXPECT_NEAR(strength(c.recipe), c.sugar_pct, 0.1) << c.recipe.dump();
}

// From memory: sucrose tables at 20 C; the volumes of 1 kg of sugar printed to two places are arithmetic on
// them.
TEST(Syrup, a_kilogram_of_sugar_fills_so_many_litres) {
  const auto litres = [](double water_L) {
    return testing::answer("syrup", {{"sugar_kg", 1}, {"water_L", water_L}})["volume_L"].get<double>();
  };
  EXPECT_NEAR(litres(1), 1.63, 0.01);
  EXPECT_NEAR(litres(0.63), 1.25, 0.01);
  EXPECT_NEAR(litres(0.5), 1.13, 0.01);
}

// Arithmetic: 8 kg of stores with 20 % water hold 6.4 kg of sugar; with 15 % lost on the way 7.5.
TEST(StoresSugar, what_is_missing_is_mostly_sugar) {
  const Json out =
      testing::answer("stores-sugar", {{"stores_kg", 8}, {"moisture_pct", 20}, {"loss_pct", 15}});
  EXPECT_NEAR(out["sugar_before_losses_kg"], 6.4, 0.1);
  EXPECT_NEAR(out["sugar_kg"], 7.5, 0.1);
  EXPECT_NEAR(testing::answer("stores-sugar",
                              {{"stores_kg", 1.22}, {"moisture_pct", 18}, {"loss_pct", 0}})["sugar_kg"],
              1.0, 0.005);
}

Json rails(double first, double second, double pivots, double hooks, double outside) {
  return {{"method", "rails"},         {"first", first},          {"second", second},
          {"pivots_apart_mm", pivots}, {"hooks_apart_mm", hooks}, {"hook_to_pivot_mm", outside}};
}

// Club page on hive weighing: hooks three times as far apart as the pivots, W = 2 (F1 + F2), worked: 15 and
// 20 kg are 70 kg; hooks twice as far apart, W = 1.5 (F1 + F2).
TEST(HiveWeight, by_two_lifts_on_rails) {
  EXPECT_NEAR(testing::answer("hive-weight", rails(15, 20, 300, 900, 300))["weight_kg"], 70, 1e-9);
  EXPECT_NEAR(testing::answer("hive-weight", rails(15, 20, 400, 800, 200))["weight_kg"], 52.5, 1e-9);
}

// Arithmetic: a hive whose weight is known, standing anywhere between the pivots, comes back from its two
// lifts.
TEST(HiveWeight, on_rails_does_not_ask_where_the_weight_lies) {
  const double whole = 42, apart = 350, hooks = 800, outside = 250;
  for (const double from_first : {50.0, 175.0, 300.0}) {
    const double first = whole * (apart - from_first) / (apart + outside);
    const double second = whole * from_first / (hooks - outside);
    EXPECT_NEAR(testing::answer("hive-weight", rails(first, second, apart, hooks, outside))["weight_kg"],
                whole, 1e-9);
  }
}

// A keeper's page on hive weight: 59 lb at the front of a hive of 130 lb.
TEST(HiveWeight, one_side_doubled_reads_low) {
  const Json out =
      testing::answer("hive-weight", {{"method", "one_side"}, {"first", 59}, {"whole", 130}, {"unit", "lb"}});
  EXPECT_NEAR(out["share_of_whole_pct"], 45.4, 0.1);
  EXPECT_NEAR(out["doubled_is_off_pct"], -9, 0.5);
  EXPECT_NEAR(out["whole_kg"], 58.97, 0.01);
  EXPECT_LT(out["low_kg"], 58.97);
  EXPECT_GT(out["high_kg"], 58.97);
}

// Club tip on hefting: the two sides together, where each lift turns about the other edge.
TEST(HiveWeight, two_sides_add_up) {
  EXPECT_NEAR(
      testing::answer("hive-weight", {{"method", "two_sides"}, {"first", 14}, {"second", 15.5}})["weight_kg"],
      29.5, 1e-9);
}

}  // namespace
}  // namespace beegarth
