// From the ripe box to the wet comb put back. Everything invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "quiet_colony.hpp"

namespace beegarth::work {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

const Date july = day(2026, 7, 10);

NeedsInput with_boxes(double share) {
  NeedsInput input = invented(july);
  ColonyStatus& colony = input.colonies.front();
  colony.supers_on = seen(july - 40, 20, "boxes");
  colony.super_share = seen(july - 2, share, "look");
  return input;
}

TEST(RipeBoxes, are_cleared_and_taken_when_three_quarters_are_capped) {
  const auto needs = needs_of(with_boxes(0.8));
  const auto* need = find(needs, "take-crop/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_THAT(need->what, HasSubstr("clearer board"));
  EXPECT_THAT(need->why.front().text, HasSubstr("80 % full"));
  EXPECT_THAT(need->why.front().entries, ElementsAre(EntryId("look")));
  EXPECT_LT(need->loss.by_day.front(), need->loss.never);
  EXPECT_EQ(find(needs_of(with_boxes(0.5)), "take-crop/alder-5"), nullptr) << "not ripe";
}
TEST(RipeBoxes, are_left_on_while_a_treatment_or_its_withdrawal_runs) {
  NeedsInput input = with_boxes(0.9);
  input.colonies.front().last_treatment = seen(july - 50, 42);
  EXPECT_NE(find(needs_of(input), "take-crop/alder-5"), nullptr);
  input.colonies.front().treatment_withdrawal_days = 14;
  EXPECT_EQ(find(needs_of(input), "take-crop/alder-5"), nullptr);
  input.colonies.front().treatment_withdrawal_days = 0;
  input.colonies.front().treatment_in_hive = seen(july - 50, 42);
  EXPECT_EQ(find(needs_of(input), "take-crop/alder-5"), nullptr) << "not said to be out";
}
TEST(RipeBoxes, seen_long_ago_say_nothing_of_now) {
  NeedsInput input = with_boxes(0.9);
  input.colonies.front().super_share = seen(july - 31, 0.9);
  EXPECT_EQ(find(needs_of(input), "take-crop/alder-5"), nullptr);
}
TEST(RipeBoxes, of_a_long_hive_are_combs_taken_one_by_one) {
  NeedsInput input = with_boxes(0.9);
  input.colonies.front().dwelling.form = facts::HiveForm::horizontal;
  EXPECT_THAT(find(needs_of(input), "take-crop/alder-5")->what, HasSubstr("one by one"));
}

TEST(RipeBoxes, that_were_on_during_feeding_are_not_taken) {
  NeedsInput input = with_boxes(0.9);
  input.colonies.front().last_feed = seen(july - 20, 2);
  EXPECT_EQ(find(needs_of(input), "take-crop/alder-5"), nullptr);
  input.colonies.front().last_feed = seen(july - 60, 2);
  EXPECT_NE(find(needs_of(input), "take-crop/alder-5"), nullptr) << "before they went on";
}

TEST(CombsTaken, are_extracted_from_home_while_they_are_warm_each_lot_by_itself) {
  NeedsInput input = invented(july);
  input.to_extract = {{LotId("one"), "Spring 1", seen(july - 1, 0, "taken"), {}},
                      {LotId("two"), "Spring 2", seen(july - 4, 0, "first"), {}}};
  auto needs = needs_of(input);
  const auto* need = find(needs, "extract/two");
  ASSERT_NE(need, nullptr);
  EXPECT_TRUE(need->at_home);
  EXPECT_THAT(need->what, HasSubstr("(Spring 2)"));
  EXPECT_THAT(need->why.front().text, HasSubstr("6 July"));
  EXPECT_GT(need->loss.by_day.front(), 0) << "two days have passed";
  input.to_extract.push_back({LotId("old"), "Last year's", seen(july - 30, 0, "old"), {}});
  EXPECT_EQ(find(needs_of(input), "extract/old"), nullptr) << "long done and not entered";
  input.answered = {"extract/two"};
  needs = needs_of(input);
  EXPECT_EQ(find(needs, "extract/two"), nullptr);
  EXPECT_NE(find(needs, "extract/one"), nullptr) << "another lot";
}
TEST(WetCombs, go_back_at_dusk_to_where_they_came_from) {
  NeedsInput input = invented(july);
  input.wet_combs = {{LotId("one"), "Spring 1", seen(july - 1, 0, "out"), {SiteId("withy")}}};
  const auto needs = needs_of(input);
  const auto* need = find(needs, "wet-combs/one");
  ASSERT_NE(need, nullptr);
  EXPECT_EQ(need->clock, facts::Clock::dusk);
  EXPECT_FALSE(need->at_home);
  EXPECT_EQ(need->held, "");
  input.wet_combs.front().since = seen(july - 30, 0, "out");
  EXPECT_EQ(find(needs_of(input), "wet-combs/one"), nullptr) << "long done and not entered";
  input.wet_combs.front().since = seen(july - 1, 0, "out");
  input.wet_combs.front().sites = {SiteId("elsewhere")};
  EXPECT_EQ(find(needs_of(input), "wet-combs/one"), nullptr);
}
TEST(WetCombs, of_a_suspect_site_wait) {
  NeedsInput input = invented(july);
  input.wet_combs = {{LotId("one"), "Spring 1", seen(july - 1, 0, "out"), {SiteId("withy")}}};
  input.colonies.front().suspect = true;
  const auto needs = needs_of(input);
  EXPECT_THAT(find(needs, "wet-combs/one")->held, HasSubstr("suspect"));
}

}  // namespace
}  // namespace beegarth::work
