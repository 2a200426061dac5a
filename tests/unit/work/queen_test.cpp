#include <gtest/gtest.h>

#include "quiet_colony.hpp"

namespace beegarth::work {
namespace {

TEST(SplitOnCells, ComesBeforeTheCellsAreSealed) {
  auto input = invented(day(2026, 5, 20));
  input.colonies.front().last_charged_cells = seen(day(2026, 5, 19), 4, "cells");
  input.colonies.front().last_full_look = seen(day(2026, 5, 19), 0, "cells");
  const auto needs = needs_of(input);
  const auto* need = find(needs, "split/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_LE(need->best, day(2026, 5, 23));  // larva of a day or more: 8 - (3 + 1) days at the most
  EXPECT_EQ(need->why.front().entries, std::vector<EntryId>{EntryId("cells")});
  EXPECT_NE(all_words(*need).find("No nucleus box is ready"), std::string::npos);
  EXPECT_EQ(find(needs, "look-cells/alder-5"), nullptr);
}

TEST(SplitOnCells, ReckonsFromTheOldestLarvaOfTheLooksInARow) {
  auto input = invented(day(2026, 5, 20));
  input.colonies.front().last_charged_cells = seen(day(2026, 5, 19), 1, "second");
  input.colonies.front().last_full_look = seen(day(2026, 5, 19), 0, "second");
  const double fresh = find(needs_of(input), "split/alder-5")->loss.by_day[2];
  input.colonies.front().cells_since = seen(day(2026, 5, 14), 2, "first");
  const auto needs = needs_of(input);
  const auto* older = find(needs, "split/alder-5");
  EXPECT_GT(older->loss.by_day[2], fresh);
  EXPECT_EQ(older->why.front().entries, (std::vector<EntryId>{EntryId("second"), EntryId("first")}));
  EXPECT_NE(all_words(*older).find("1 charged queen cell on Tue 19 May, the first of them on Thu 14 May"),
            std::string::npos)
      << all_words(*older);
}

TEST(SplitOnCells, IsStillWorthGoingForTheCastsOnceThePrimeSwarmIsLikelyGone) {
  auto input = invented(day(2026, 5, 20));
  input.colonies.front().last_charged_cells = seen(day(2026, 5, 12), 3, "cells");
  input.colonies.front().last_full_look = seen(day(2026, 5, 12), 0, "cells");
  const facts::LossCurve loss = find(needs_of(input), "split/alder-5")->loss;
  EXPECT_NEAR(loss.never - loss.by_day[0], 0.8 * 6, 1e-9);  // arithmetic: the odds of a swarm times a cast
}

TEST(SplitOnCells, ACellSeenYesterdayMayBeSealedAlready) {
  auto input = invented(day(2026, 5, 20));
  input.colonies.front().last_charged_cells = seen(day(2026, 5, 19), 3, "cells");
  input.colonies.front().last_full_look = seen(day(2026, 5, 19), 0, "cells");
  const facts::LossCurve loss = find(needs_of(input), "split/alder-5")->loss;
  EXPECT_GT(loss.by_day[0], 0);
  EXPECT_LT(loss.by_day[0], loss.by_day[4]);
}

TEST(SplitOnCells, NotOfTheCellsThatTheNextQueenComesOutOf) {
  auto input = invented(day(2026, 5, 27));
  auto& colony = input.colonies.front();
  colony.queen_lost_or_swarmed = seen(day(2026, 5, 20), 2, "split");
  colony.last_sealed_cells = seen(day(2026, 5, 27), 1, "left");
  colony.last_full_look = seen(day(2026, 5, 27), 0, "left");
  EXPECT_EQ(find(needs_of(input), "split/alder-5"), nullptr);
  EXPECT_NE(find(needs_of(input), "leave-shut/alder-5"), nullptr);
}

TEST(QueenCheck, EggsOfTheOldQueenAreNotThoseOfTheNext) {
  auto input = invented(day(2026, 5, 24));
  auto& colony = input.colonies.front();
  colony.queen_lost_or_swarmed = seen(day(2026, 5, 20), 2, "split");
  colony.eggs_seen = seen(day(2026, 5, 22), 0, "old eggs");
  EXPECT_NE(find(needs_of(input), "leave-shut/alder-5"), nullptr);
  colony.eggs_seen = seen(day(2026, 5, 24), 0, "new eggs");
  EXPECT_EQ(find(needs_of(input), "leave-shut/alder-5"), nullptr);
}

TEST(QueenCheck, AnIntroducedQueenIsLeftInPeaceForAWeekAndThenLookedFor) {
  auto input = invented(day(2026, 5, 23));
  input.colonies.front().queen_lost_or_swarmed = seen(day(2026, 5, 22), 3, "introduced");
  const auto needs = needs_of(input);
  const auto* shut = find(needs, "leave-shut/alder-5");
  ASSERT_NE(shut, nullptr);
  EXPECT_EQ(shut->latest, day(2026, 5, 29));
  EXPECT_NE(shut->what.find("left in peace"), std::string::npos);
  const auto* check = find(needs, "check-queen/alder-5");
  ASSERT_NE(check, nullptr);
  EXPECT_EQ(check->best, day(2026, 5, 30));
  EXPECT_EQ(all_words(*check).find("virgin"), std::string::npos) << all_words(*check);
}

TEST(SplitOnCells, NotOnceALaterLookFoundNone) {
  auto input = invented(day(2026, 5, 20));
  input.colonies.front().last_charged_cells = seen(day(2026, 5, 10), 4, "cells");
  input.colonies.front().last_full_look = seen(day(2026, 5, 18), 0, "look");
  EXPECT_EQ(find(needs_of(input), "split/alder-5"), nullptr);
}

TEST(SplitOnCells, IsRefusedAtASuspectSite) {
  auto input = invented(day(2026, 5, 20));
  input.colonies.front().last_charged_cells = seen(day(2026, 5, 19), 4, "cells");
  input.colonies.front().last_full_look = seen(day(2026, 5, 19), 0, "cells");
  auto ill = input.colonies.front();
  ill.colony = ColonyId("alder-6");
  ill.suspect = true;
  input.colonies.push_back(ill);
  const auto needs = needs_of(input);
  EXPECT_EQ(find(needs, "split/alder-5"), nullptr);
  ASSERT_NE(find(needs, "look-cells/alder-5"), nullptr);
  EXPECT_NE(find(needs, "look-cells/alder-5")->what.find("inspector"), std::string::npos);
}

TEST(QueenCheck, AfterASwarmIsShutUntilSheLaysThenChecked) {
  auto input = invented(day(2026, 5, 20));
  input.colonies.front().queen_lost_or_swarmed = seen(day(2026, 5, 10), 1, "swarm");
  const auto needs = needs_of(input);
  const auto* shut = find(needs, "leave-shut/alder-5");
  ASSERT_NE(shut, nullptr);
  EXPECT_EQ(shut->minutes, 0);
  EXPECT_EQ(shut->latest, day(2026, 5, 28));
  EXPECT_NE(shut->what.find("virgin"), std::string::npos);
  const auto* check = find(needs, "check-queen/alder-5");
  ASSERT_NE(check, nullptr);
  EXPECT_GT(check->earliest, shut->latest);
  EXPECT_EQ(check->best, day(2026, 5, 31));
  EXPECT_NE(std::find(shut->clashes.begin(), shut->clashes.end(), check->key), shut->clashes.end());
}

TEST(QueenCheck, NotOnceNewEggsAreSeen) {
  auto input = invented(day(2026, 6, 5));
  input.colonies.front().queen_lost_or_swarmed = seen(day(2026, 5, 10), 1, "swarm");
  input.colonies.front().eggs_seen = seen(day(2026, 6, 2), 1, "eggs");
  const auto needs = needs_of(input);
  EXPECT_EQ(find(needs, "leave-shut/alder-5"), nullptr);
  EXPECT_EQ(find(needs, "check-queen/alder-5"), nullptr);
}

TEST(CombOfEggs, WhereNoEggsWereSeenAndNoQueenIsAwaited) {
  auto input = invented(day(2026, 5, 20));
  input.colonies.front().eggs_seen = seen(day(2026, 5, 3), 1, "eggs");
  input.colonies.front().no_eggs_seen = seen(day(2026, 5, 17), 0, "none");
  const auto needs = needs_of(input);
  const auto* need = find(needs, "comb-of-eggs/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_NE(all_words(*need).find("healthy"), std::string::npos);
  EXPECT_NE(all_words(*need).find("unite it only after"), std::string::npos);
}

TEST(CombOfEggs, NotBeforeTheNewQueenCanLay) {
  auto input = invented(day(2026, 5, 20));
  input.colonies.front().no_eggs_seen = seen(day(2026, 5, 17), 0, "none");
  input.colonies.front().queen_lost_or_swarmed = seen(day(2026, 5, 10), 1, "swarm");
  EXPECT_EQ(find(needs_of(input), "comb-of-eggs/alder-5"), nullptr);
}

TEST(CombOfEggs, NeverOnOddsAloneWhereEggsWereSeenLatelyOrCellsStand) {
  auto eggs = invented(day(2026, 5, 30));
  give_odds(eggs, facts::EventKind::queen_trouble, 0.7, 0.9);
  eggs.colonies.front().eggs_seen = seen(day(2026, 5, 23), 1, "eggs");
  EXPECT_EQ(find(needs_of(eggs), "comb-of-eggs/alder-5"), nullptr);
  EXPECT_EQ(find(needs_of(eggs), "look-eggs/alder-5"), nullptr);
  auto cells = invented(day(2026, 5, 30));
  give_odds(cells, facts::EventKind::queen_trouble, 0.7, 0.9);
  cells.colonies.front().last_full_look = seen(day(2026, 5, 29), 0, "cells");
  cells.colonies.front().last_charged_cells = seen(day(2026, 5, 29), 2, "cells");
  EXPECT_EQ(find(needs_of(cells), "comb-of-eggs/alder-5"), nullptr);
  EXPECT_NE(find(needs_of(cells), "split/alder-5"), nullptr);
}

TEST(CombOfEggs, OnOddsAloneEggsAreLookedForFirst) {
  auto input = invented(day(2026, 8, 20));
  give_odds(input, facts::EventKind::queen_trouble, 0.5, 0.6);
  input.colonies.front().eggs_seen = seen(day(2026, 7, 20), 1, "eggs");
  const auto needs = needs_of(input);
  EXPECT_EQ(find(needs, "comb-of-eggs/alder-5"), nullptr);
  ASSERT_NE(find(needs, "look-eggs/alder-5"), nullptr);
  EXPECT_EQ(find(needs, "look-eggs/alder-5")->why.front().entries, std::vector<EntryId>{EntryId("eggs")});
}

TEST(CombOfEggs, AQueenlessColonyIsNotLookedThroughForCellsNorFed) {
  auto input = invented(day(2026, 6, 3));
  give_odds(input, facts::EventKind::queen_trouble, 0.99, 1.0);
  give_odds(input, facts::EventKind::stores_short, 0.9, 1.0);
  auto& colony = input.colonies.front();
  colony.last_full_look = seen(day(2026, 5, 23), 0, "second");
  colony.eggs_seen = seen(day(2026, 4, 25), 1, "eggs");
  colony.no_eggs_first = seen(day(2026, 5, 9), 0, "first");
  colony.no_eggs_seen = seen(day(2026, 5, 23), 0, "second");
  const auto needs = needs_of(input);
  const auto* need = find(needs, "comb-of-eggs/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_NE(all_words(*need).find("two looks"), std::string::npos);
  EXPECT_GT(need->loss.never - need->loss.by_day.front(), 10);  // worth going for: most of 18 kg
  EXPECT_EQ(find(needs, "look-cells/alder-5"), nullptr);
  EXPECT_EQ(find(needs, "feed/alder-5"), nullptr);
}

}  // namespace
}  // namespace beegarth::work
