#include <gtest/gtest.h>

#include "quiet_colony.hpp"
#include "work/look_interval.hpp"

namespace beegarth::work {
namespace {

TEST(LookInterval, WithoutCellsAWeekUnclippedTenDaysClippedAFortnightAfterTheFlow) {
  EXPECT_EQ(days_to_next_look({}, {}), 7);
  EXPECT_EQ(days_to_next_look({.queen_clipped = true}, {}), 10);
  EXPECT_EQ(days_to_next_look({.main_flow_over = true}, {}), 14);
}

TEST(LookInterval, WithALarvaTheDaysToSealing) {
  EXPECT_EQ(days_to_next_look({.oldest_larva_days = 1}, {}), 4);
  EXPECT_EQ(days_to_next_look({.oldest_larva_days = 5}, {}), 0);
  EXPECT_EQ(days_to_next_look({.oldest_larva_days = 9}, {}), 0);
}

TEST(LookForCells, IsDueAWeekAfterTheLastLook) {
  const auto input = invented(day(2026, 5, 20));
  const auto needs = needs_of(input);
  const auto* need = find(needs, "look-cells/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_EQ(need->best, day(2026, 5, 24));
  ASSERT_FALSE(need->why.empty());
  EXPECT_EQ(need->why.front().entries, std::vector<EntryId>{EntryId("look")});
  EXPECT_FALSE(need->why.front().sources.empty());
}

TEST(LookForCells, LosesNothingBeforeTheOddsRiseAndMoreTheLaterItIs) {
  auto input = invented(day(2026, 5, 20));
  give_odds(input, facts::EventKind::swarm_preparation, 0, 0.7);
  const auto needs = needs_of(input);
  const auto& loss = find(needs, "look-cells/alder-5")->loss;
  EXPECT_TRUE(std::is_sorted(loss.by_day.begin(), loss.by_day.end()));
  EXPECT_LT(loss.by_day.front(), loss.by_day.back());
  EXPECT_LE(loss.by_day.back(), loss.never);
  EXPECT_NEAR(loss.never, 0.7 * 12, 1e-9);  // arithmetic: end odds times the price of a prime swarm
}

TEST(LookForCells, NeighboursMakeASwarmDearer) {
  auto input = invented(day(2026, 5, 20));
  give_odds(input, facts::EventKind::swarm_preparation, 0, 0.7);
  const double alone = find(needs_of(input), "look-cells/alder-5")->loss.never;
  input.sites.front().neighbours = true;
  EXPECT_GT(find(needs_of(input), "look-cells/alder-5")->loss.never, alone);
}

TEST(LookForCells, NotOutOfSeasonNorWhileAVirginIsAbout) {
  auto input = invented(day(2026, 5, 20));
  input.sites.front().swarm_season = false;
  EXPECT_EQ(find(needs_of(input), "look-cells/alder-5"), nullptr);
  input.sites.front().swarm_season = true;
  input.colonies.front().queen_lost_or_swarmed = seen(day(2026, 5, 11), 1, "swarm");
  EXPECT_EQ(find(needs_of(input), "look-cells/alder-5"), nullptr);
}

TEST(LookForCells, NotWhenItIsAnswered) {
  auto input = invented(day(2026, 5, 20));
  input.answered.insert("look-cells/alder-5");
  EXPECT_EQ(find(needs_of(input), "look-cells/alder-5"), nullptr);
}

TEST(LookForCells, NothingIsOpenedInWinter) {
  for (const int month : {11, 12, 1, 2})
    for (const auto& need : needs_of(invented(day(2026, month, 10))))
      EXPECT_NE(need.clock, facts::Clock::opening) << need.key;
}

TEST(FirstLook, ComesInSpringWhereNoneWasMadeThisYear) {
  auto input = invented(day(2026, 3, 28));
  input.sites.front().swarm_season = false;
  input.colonies.front().last_full_look = seen(day(2025, 9, 20), 0, "autumn");
  EXPECT_NE(find(needs_of(input), "first-look/alder-5"), nullptr);
  input.colonies.front().last_full_look = seen(day(2026, 3, 20), 0, "spring");
  EXPECT_EQ(find(needs_of(input), "first-look/alder-5"), nullptr);
}

}  // namespace
}  // namespace beegarth::work
