// Needs that follow from what was done, and what a keeper will not do.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "quiet_colony.hpp"
#include "work/refused.hpp"

namespace beegarth::work {
namespace {

using ::testing::HasSubstr;
const Date june = day(2026, 6, 5);

// ---- strips ----
NeedsInput with_strips(int days_ago, double days) {
  NeedsInput input = invented(june);
  input.colonies.front().treatment_in_hive = seen(june - days_ago, days, "strips");
  input.colonies.front().last_treatment = seen(june - days_ago, days, "strips");
  input.colonies.front().last_treatment_kind = "amitraz";
  return input;
}

TEST(StripsOut, are_asked_for_on_the_day_the_label_says) {
  const auto needs = needs_of(with_strips(40, 42));
  const auto* need = find(needs, "strips-out/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_EQ(need->earliest, june + 2);
  EXPECT_EQ(need->best, june + 2);
  EXPECT_THAT(need->what, HasSubstr("amitraz"));
  EXPECT_THAT(need->why.front().entries, ::testing::ElementsAre(EntryId("strips")));
}
TEST(StripsOut, are_not_asked_for_long_before_or_long_after) {
  EXPECT_EQ(find(needs_of(with_strips(10, 42)), "strips-out/alder-5"), nullptr);
  EXPECT_EQ(find(needs_of(with_strips(42 + 31, 42)), "strips-out/alder-5"), nullptr);
}
TEST(StripsOut, cost_the_more_the_later) {
  const auto needs = needs_of(with_strips(45, 42));
  const auto& loss = find(needs, "strips-out/alder-5")->loss;
  EXPECT_LT(loss.by_day.front(), loss.by_day.back());
  EXPECT_GE(loss.never, loss.by_day.back());
}

// ---- quarantine ----
TEST(Quarantine, ends_with_a_look_through_the_brood) {
  NeedsInput input = invented(june);
  input.colonies.front().quarantine_until = seen(june + 5, 0, "swarm");
  const auto needs = needs_of(input);
  const auto* need = find(needs, "quarantine/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_EQ(need->earliest, june + 5);
  EXPECT_EQ(need->clock, facts::Clock::opening);
}

// ---- the keeper's own rules ----
facts::Need some_need(const char* key, double never) {
  facts::Need need;
  need.key = key;
  need.what = "feed it";
  need.colony = ColonyId("alder-5");
  need.loss = {june, {1.5, 2}, never, "kg"};
  return need;
}

TEST(OwnRules, leave_out_what_the_keeper_will_not_do_and_say_what_it_costs) {
  const auto kept = keep_rules({some_need("feed/alder-5", 9), some_need("room/alder-5", 3)}, {"no_sugar"});
  ASSERT_EQ(kept.needs.size(), 1U);
  EXPECT_EQ(kept.needs.front().key, "room/alder-5");
  ASSERT_EQ(kept.remarks.size(), 1U);
  EXPECT_THAT(kept.remarks.front(), HasSubstr("your own rule no sugar"));
  EXPECT_THAT(kept.remarks.front(), HasSubstr("7.5 kg"));
}
TEST(OwnRules, do_not_touch_a_need_whose_name_only_begins_alike) {
  EXPECT_EQ(keep_rules({some_need("feeding-place/alder-5", 9)}, {"no_sugar"}).needs.size(), 1U);
}
TEST(OwnRules, narrow_a_treatment_and_do_not_leave_it_out) {
  const auto kept = keep_rules({some_need("treat/alder-5", 9)}, {"no_synthetic_strips"});
  ASSERT_EQ(kept.needs.size(), 1U);
  EXPECT_THAT(kept.needs.front().cautions.back(), HasSubstr("no synthetic strips"));
}

}  // namespace
}  // namespace beegarth::work
