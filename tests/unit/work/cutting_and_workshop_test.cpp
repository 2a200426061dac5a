// Grass and flowers that are cut, builds that were begun, honey to be measured. Everything invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "quiet_colony.hpp"

namespace beegarth::work {
namespace {

using ::testing::HasSubstr;

const Date july = day(2026, 7, 10);

TEST(CutGrass, is_due_four_weeks_after_the_last_time_and_only_where_one_was_written) {
  NeedsInput input = invented(july);
  EXPECT_EQ(find(needs_of(input), "cut-grass/withy"), nullptr);
  input.sites.front().grass_cut = seen(july - 20, 0, "cut");
  const auto needs = needs_of(input);
  const auto* need = find(needs, "cut-grass/withy");
  ASSERT_NE(need, nullptr);
  EXPECT_EQ(need->best, july + 8);
  EXPECT_EQ(need->clock, facts::Clock::dry_day);
  EXPECT_EQ(need->loss.by_day.at(8), 0);
  EXPECT_GT(need->loss.by_day.back(), 0);
  input.sites.front().grass_cut = seen(july - 2, 0, "cut");
  EXPECT_EQ(find(needs_of(input), "cut-grass/withy"), nullptr) << "not within this plan";
}
TEST(CutGrass, is_not_asked_for_in_winter_and_tells_of_a_nest) {
  NeedsInput winter = invented(day(2026, 12, 1));
  winter.sites.front().grass_cut = seen(day(2026, 9, 1), 0, "cut");
  EXPECT_EQ(find(needs_of(winter), "cut-grass/withy"), nullptr);
  NeedsInput input = invented(july);
  input.sites.front().grass_cut = seen(july - 40, 0, "cut");
  input.sites.front().nests = {{seen(july - 9, 0, "nest"), "bumblebee", "under the third stand"}};
  const auto needs = needs_of(input);
  EXPECT_THAT(find(needs, "cut-grass/withy")->why.back().text, HasSubstr("under the third stand"));
}

TEST(CutFlowers, are_cut_when_seed_has_set_and_not_over_a_nest) {
  NeedsInput input = invented(july);
  input.sites.front().flowers_over = {{"knapweed", "lower bank", seen(july - 4, 0, "bloom"), {}}};
  auto needs = needs_of(input);
  const auto* need = find(needs, "cut-flowers/withy/2026");
  ASSERT_NE(need, nullptr);
  EXPECT_EQ(need->earliest, july + 10);
  EXPECT_EQ(need->held, "");
  EXPECT_THAT(need->what, HasSubstr("knapweed (lower bank)"));
  input.sites.front().flowers_over.front().nest =
      NestFound{seen(july - 1, 0, "nest"), "bird", "in the bramble"};
  needs = needs_of(input);
  EXPECT_THAT(find(needs, "cut-flowers/withy/2026")->held, HasSubstr("in the bramble"));
  input.sites.front().flowers_over.insert(input.sites.front().flowers_over.begin(),
                                          {"oxeye", "upper bank", seen(july - 4, 0, "bloom-2"), {}});
  needs = needs_of(input);
  EXPECT_EQ(find(needs, "cut-flowers/withy/2026")->held, "") << "the upper bank is free";
  EXPECT_THAT(find(needs, "cut-flowers/withy/2026")->what,
              ::testing::AllOf(HasSubstr("oxeye"), ::testing::Not(HasSubstr("knapweed"))));
  EXPECT_THAT(find(needs, "cut-flowers/withy/2026")->why.back().text, HasSubstr("in the bramble"));
  input.sites.front().flowers_over.erase(input.sites.front().flowers_over.begin());
  input.sites.front().flowers_over.front().over = seen(july - 100, 0, "bloom");
  EXPECT_EQ(find(needs_of(input), "cut-flowers/withy/2026"), nullptr) << "too late in the year";
}

TEST(Builds, that_were_begun_are_gone_on_with_at_home) {
  NeedsInput input = invented(july);
  input.builds = {{"long hive", "walls glued", seen(july - 10, 0, "step"), 3.5}};
  const auto needs = needs_of(input);
  const auto* need = find(needs, "build/long hive");
  ASSERT_NE(need, nullptr);
  EXPECT_TRUE(need->at_home);
  EXPECT_THAT(need->what, HasSubstr("walls glued"));
  EXPECT_THAT(need->why.front().text, HasSubstr("3.5 hours"));
  input.builds.front().last = seen(july - 500, 0, "step");
  EXPECT_EQ(find(needs_of(input), "build/long hive"), nullptr);
}

TEST(MeasureLot, is_asked_for_until_its_water_is_known_or_it_was_long_ago) {
  NeedsInput input = invented(july);
  input.to_measure = {{LotId("one"), "Spring 1", seen(july - 1, 0, "out"), {}}};
  const auto needs = needs_of(input);
  ASSERT_NE(find(needs, "measure-lot/one"), nullptr);
  EXPECT_TRUE(find(needs, "measure-lot/one")->at_home);
  input.to_measure.front().since = seen(july - 60, 0, "out");
  EXPECT_EQ(find(needs_of(input), "measure-lot/one"), nullptr);
}

}  // namespace
}  // namespace beegarth::work
