#include <gtest/gtest.h>

#include "duty/honey_limits.hpp"
#include "duty/honey_water.hpp"
#include "overridden.hpp"

namespace beegarth::duty {
namespace {

TEST(HoneyWater, falls_as_the_index_rises_and_is_put_right_for_warmth) {
  const FactTable honey = testing::rows_of("honey");
  double before = 100;
  for (int step = 0; step <= 304; ++step) {
    const auto moisture = honey_moisture_pct(1.4740 + step * 0.0001, 20, honey);
    ASSERT_TRUE(moisture) << step;
    ASSERT_LT(*moisture, before);
    before = *moisture;
  }
  EXPECT_LT(*honey_moisture_pct(1.49, 25, honey), *honey_moisture_pct(1.49, 20, honey));
}

TEST(HoneyWater, a_table_that_would_divide_by_nothing_is_refused) {
  EXPECT_FALSE(honey_moisture_pct(1.49, 20, overridden("honey", "moisture_slope", 0)));
}

TEST(HoneyWater, density_lies_between_its_rows_and_is_silent_outside) {
  const FactTable honey = testing::rows_of("honey");
  const auto between = honey_density(16.5, honey);
  ASSERT_TRUE(between && *between);
  EXPECT_NEAR((*between)->mid, (1.4295 + 1.4237) / 2, 1e-12);
  EXPECT_LT((*between)->low, (*between)->mid);
  for (const double outside : {14.9, 20.1}) EXPECT_FALSE(honey_density(outside, honey)->has_value());
  EXPECT_TRUE(honey_density(20, honey)->has_value());
}

TEST(HoneyWater, moist_honey_is_kept_for_a_shorter_time) {
  const FactTable honey = testing::rows_of("honey");
  EXPECT_EQ(honey_keeping(17, honey)->fermentation, Fermentation::unlikely);
  EXPECT_EQ(honey_keeping(17.1, honey)->fermentation, Fermentation::possible);
  EXPECT_EQ(honey_keeping(19, honey)->years, 2);
  EXPECT_EQ(honey_keeping(19.1, honey)->fermentation, Fermentation::likely);
  EXPECT_EQ(honey_keeping(19.1, honey)->years, 1);
}

CompositionAnswer judged(const HoneyKind& kind, const Measured& measured) {
  const auto answer = judge_composition(kind, measured, testing::rows_of("duty_england"));
  if (answer) return *answer;
  ADD_FAILURE() << one_line(answer.problem());
  return {};
}

TEST(HoneyLimits, what_fails_at_table_may_pass_in_the_kitchen) {
  const CompositionAnswer wet = judged({}, {.moisture_pct = 22});
  EXPECT_FALSE(wet.passes);
  EXPECT_TRUE(wet.passes_as_bakers);
  const CompositionAnswer sweet = judged({}, {.sucrose_pct = 8});
  EXPECT_FALSE(sweet.passes_as_bakers);
  EXPECT_FALSE(judged({}, {.fermenting = true}).passes);
  EXPECT_TRUE(judged({}, {.fermenting = true}).passes_as_bakers);
}

TEST(HoneyLimits, says_what_was_not_measured) {
  const CompositionAnswer answer = judged({}, {.moisture_pct = 18});
  EXPECT_EQ(answer.checks.size(), 1U);
  EXPECT_EQ(answer.not_measured.size(), 9U);
}

TEST(HoneyLimits, lime_honey_and_blends_have_no_limit_of_conductivity) {
  for (const HoneyKind& kind :
       {HoneyKind{.plant = HoneyPlant::lime_or_like}, HoneyKind{.plant = HoneyPlant::calluna},
        HoneyKind{.source = HoneySource::blend}})
    EXPECT_TRUE(judged(kind, {.conductivity_mS_cm = 2}).passes);
}

TEST(HoneyLimits, every_country_has_every_row) {
  const Measured all{.moisture_pct = 17,
                     .fructose_and_glucose_pct = 70,
                     .sucrose_pct = 1,
                     .insoluble_pct = 0.05,
                     .conductivity_mS_cm = 0.8,
                     .hmf_mg_kg = 5,
                     .diastase_schade = 12,
                     .free_acid_meq_kg = 20,
                     .fermenting = false,
                     .overheated = false};
  for (const char* country : country_tables) {
    for (int source = 0; source < 3; ++source) {
      for (int plant = 0; plant < 6; ++plant) {
        for (int flags = 0; flags < 8; ++flags) {
          const HoneyKind kind{static_cast<HoneySource>(source), static_cast<HoneyPlant>(plant),
                               (flags & 1) != 0, (flags & 2) != 0, (flags & 4) != 0};
          const auto answer = judge_composition(kind, all, testing::rows_of(country));
          ASSERT_TRUE(answer) << one_line(answer.problem());
          ASSERT_TRUE(answer->passes);
        }
      }
    }
  }
}

}  // namespace
}  // namespace beegarth::duty
