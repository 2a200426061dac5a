// Needs that follow from what was done, and what a keeper will not do.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "quiet_colony.hpp"

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
TEST(Quarantine, makes_every_opening_of_the_stock_the_last_of_the_round) {
  NeedsInput input = invented(june);
  input.colonies.front().last_charged_cells = seen(june - 3, 2, "look");
  give_odds(input, facts::EventKind::out_of_room, 0.4, 0.9);
  EXPECT_FALSE(find(needs_of(input), "room/alder-5")->last_in_round);
  input.colonies.front().quarantine_until = seen(june + 9, 0, "swarm");
  const auto needs = needs_of(input);
  EXPECT_TRUE(find(needs, "room/alder-5")->last_in_round);
  EXPECT_THAT(find(needs, "room/alder-5")->cautions, ::testing::Contains(HasSubstr("In quarantine until")));
  EXPECT_THAT(find(needs, "split/alder-5")->held, HasSubstr("gives and takes no combs"));
}
TEST(Quarantine, ends_with_a_look_through_the_brood) {
  NeedsInput input = invented(june);
  input.colonies.front().quarantine_until = seen(june + 5, 0, "swarm");
  const auto needs = needs_of(input);
  const auto* need = find(needs, "quarantine/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_EQ(need->earliest, june + 5);
  EXPECT_EQ(need->clock, facts::Clock::opening);
}

}  // namespace
}  // namespace beegarth::work
