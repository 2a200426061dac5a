// What is left shut, and what follows, after something that could not wait. Everything invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "quiet_colony.hpp"

namespace beegarth::work {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

const Date june = day(2026, 6, 5);

// A look through every comb is due, so that there is something to hold.
NeedsInput after(const char* what, Date when, bool at_the_colony) {
  NeedsInput input = invented(june);
  input.colonies.front().last_full_look = seen(june - 7, 0, "look");
  give_odds(input, facts::EventKind::stores_short, 0.5, 0.9);
  Happening happening{what, seen(when, 0, "urgent"), std::nullopt};
  if (at_the_colony) happening.colony = input.colonies.front().colony;
  input.sites.front().happenings = {happening};
  return input;
}

TEST(BlownOver, isLeftShutForSomeDaysAndThenLookedThrough) {
  EXPECT_EQ(find(needs_of(after("blown_over", june - 60, true)), "look-cells/alder-5")->earliest, june);
  const auto needs = needs_of(after("blown_over", june, true));
  const auto* look = find(needs, "look-cells/alder-5");
  ASSERT_NE(look, nullptr);
  EXPECT_EQ(look->earliest, june + 4) << "four days of the table, today the first of them";
  EXPECT_THAT(look->why.back().text,
              HasSubstr("a hive was blown over on Fri 5 June: left shut until Mon 8 June"));
  EXPECT_THAT(look->why.back().entries, ElementsAre(EntryId("urgent")));
  const auto* shut = find(needs, "leave-shut/alder-5");
  ASSERT_NE(shut, nullptr);
  EXPECT_EQ(shut->latest, june + 3);
  EXPECT_THAT(shut->clashes, ::testing::Contains("look-cells/alder-5"));
  const auto* then = find(needs, "after/alder-5/2026-06-05");
  ASSERT_NE(then, nullptr);
  EXPECT_EQ(then->earliest, june + 4);
  EXPECT_THAT(then->what, HasSubstr("look for eggs"));
  EXPECT_THAT(then->why.front().sources, ::testing::Contains(HasSubstr("blown_over_shut_days")));
  EXPECT_EQ(find(needs, "feed/alder-5")->earliest, june) << "a feeder on is no opening";
}
TEST(BlownOver, isSeenToWhenItHasBeenLookedThroughSince) {
  NeedsInput input = after("blown_over", june - 8, true);
  input.colonies.front().last_full_look = seen(june - 20, 0, "look");
  EXPECT_NE(find(needs_of(input), "after/alder-5/2026-05-28"), nullptr);
  input.colonies.front().last_full_look = seen(june - 2, 0, "look");
  EXPECT_EQ(find(needs_of(input), "after/alder-5/2026-05-28"), nullptr);
}

TEST(Robbing, shutsTheWholeSiteAndNarrowsItsEntrancesAtOnce) {
  const auto needs = needs_of(after("robbing", june, false));
  EXPECT_EQ(find(needs, "look-cells/alder-5")->earliest, june + 3);
  const auto* then = find(needs, "after/withy/2026-06-05");
  ASSERT_NE(then, nullptr);
  EXPECT_EQ(then->earliest, june);
  EXPECT_EQ(then->clock, facts::Clock::daylight) << "no opening";
  EXPECT_THAT(then->what, HasSubstr("entrances to one bee space"));
  EXPECT_THAT(then->what, HasSubstr("no hive there is opened before Mon 8 June"));
}

TEST(Flood, keepsEveryVisitAwayFromTheSite) {
  const auto needs = needs_of(after("flood", june, false));
  for (const auto& need : needs)
    if (!need.at_home && need.minutes > 0) {
      EXPECT_GE(need.earliest, june + 3) << need.key;
    }
}

TEST(Theft, isReportedFromHome) {
  const auto needs = needs_of(after("theft", june, false));
  const auto* then = find(needs, "after/withy/2026-06-05");
  ASSERT_NE(then, nullptr);
  EXPECT_TRUE(then->at_home);
}

TEST(Happenings, ofEverySortHaveTheirRowsAndHoldWhatTheySay) {
  for (const char* what : {"blown_over", "robbing", "spraying", "flood", "theft", "stings", "fire"}) {
    const auto needs = needs_of(after(what, june, false));
    EXPECT_NE(find(needs, "after/withy/2026-06-05"), nullptr) << what;
    EXPECT_GT(find(needs, "look-cells/alder-5")->earliest, june) << what;
    EXPECT_EQ(find(needs_of(after(what, june - 40, false)), "after/withy/2026-04-26"), nullptr) << what;
  }
  for (const char* what : {"swarm_call", "other"})
    EXPECT_EQ(find(needs_of(after(what, june, false)), "look-cells/alder-5")->earliest, june) << what;
}

}  // namespace
}  // namespace beegarth::work
