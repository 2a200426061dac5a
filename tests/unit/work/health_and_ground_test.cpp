#include <gtest/gtest.h>

#include "quiet_colony.hpp"

namespace beegarth::work {
namespace {

TEST(Suspect, IsToldAtOnceComesLastAndEverythingElseWaits) {
  auto input = invented(day(2026, 5, 20));
  input.colonies.front().suspect = true;
  input.colonies.front().signs = {{"sunken cappings", {Date::parse("2026-05-30").value(), EntryId("look")}}};
  give_odds(input, facts::EventKind::out_of_room, 0.5, 0.9);
  give_odds(input, facts::EventKind::stores_short, 0.5, 0.9);
  const auto needs = needs_of(input);
  ASSERT_EQ(needs.size(), 2U);
  const auto* call = find(needs, "tell-inspector/alder-5");
  ASSERT_NE(call, nullptr);
  EXPECT_TRUE(call->at_home);
  EXPECT_NE(call->what.find("inspector today, before any visit"), std::string::npos);
  EXPECT_NE(all_words(*call).find("sunken cappings"), std::string::npos);
  const auto* close = find(needs, "suspect/alder-5");
  ASSERT_NE(close, nullptr);
  EXPECT_TRUE(close->last_in_round);
  EXPECT_EQ(close->clock, facts::Clock::daylight) << "nobody closes a hive in the dark";
}

TEST(Suspect, HoldsEveryOpeningAtItsSiteAndNothingElse) {
  auto input = invented(day(2026, 5, 24));
  auto ill = input.colonies.front();
  ill.colony = ColonyId("alder-6");
  ill.suspect = true;
  input.colonies.push_back(ill);
  give_odds(input, facts::EventKind::stores_short, 0.5, 0.9);
  const auto needs = needs_of(input);
  ASSERT_NE(find(needs, "look-cells/alder-5"), nullptr);
  EXPECT_NE(find(needs, "look-cells/alder-5")->held.find("inspector"), std::string::npos);
  ASSERT_NE(find(needs, "feed/alder-5"), nullptr);
  EXPECT_TRUE(find(needs, "feed/alder-5")->held.empty()) << "hunger does not wait";
  EXPECT_TRUE(find(needs, "tell-inspector/alder-6")->held.empty());
}

TEST(Suspect, NamesTheSignsThatMakeItSoAndWhenTheyWereSeen) {
  auto input = invented(day(2026, 7, 12));
  input.colonies.front().suspect = true;
  input.colonies.front().signs = {{"ropy larva", {day(2026, 7, 11), EntryId("look")}}};
  const auto needs = needs_of(input);
  const auto need = *find(needs, "tell-inspector/alder-5");
  EXPECT_NE(all_words(need).find("ropy larva on Sat 11 July"), std::string::npos) << all_words(need);
  EXPECT_EQ(need.why.front().entries, std::vector<EntryId>{EntryId("look")});
}

NeedsInput told_suspect() {
  auto input = invented(day(2026, 7, 14));
  auto& colony = input.colonies.front();
  colony.suspect = true;
  colony.signs = {{"ropy larva", {day(2026, 7, 11), EntryId("look")}}};
  colony.told_authority =
      ColonyStatus::Told{seen(day(2026, 7, 12), 0, "told"), "ann", "bee inspector", "B 12"};
  return input;
}
TEST(Suspect, OnceToldIsNotToldAgainButWaitedFor) {
  const auto needs = needs_of(told_suspect());
  EXPECT_EQ(find(needs, "tell-inspector/alder-5"), nullptr);
  const auto* wait = find(needs, "await-answer/alder-5");
  ASSERT_NE(wait, nullptr);
  EXPECT_NE(
      wait->what.find("the authority (bee inspector) was told on Sun 12 July by ann, reference B 12: wait"),
      std::string::npos)
      << wait->what;
  EXPECT_EQ(wait->why.front().entries, std::vector<EntryId>{EntryId("told")});
  EXPECT_TRUE(wait->at_home);
  EXPECT_EQ(needs.size(), 2U) << "everything else stays held";
}
TEST(Suspect, AfterANewSignItIsToldAgain) {
  auto input = told_suspect();
  input.colonies.front().signs.push_back({"greasy cappings", {day(2026, 7, 13), EntryId("look-2")}});
  const auto needs = needs_of(input);
  const auto* call = find(needs, "tell-inspector/alder-5");
  ASSERT_NE(call, nullptr);
  EXPECT_NE(all_words(*call).find("was told on Sun 12 July"), std::string::npos);
  EXPECT_EQ(find(needs, "await-answer/alder-5"), nullptr);
}

TEST(DeadOut, TellsTheStepsAtADeadHive) {
  auto input = invented(day(2026, 2, 20));
  input.outlooks.front().alive = 0.1;
  input.at_a_dead_hive = {"Close the entrance.", "Look before anything is moved."};
  EXPECT_NE(all_words(needs_of(input).front()).find("Close the entrance. Look before anything is moved."),
            std::string::npos);
}

TEST(DeadOut, IsClosedAtOnceAndWantsNothingElse) {
  auto input = invented(day(2026, 2, 20));
  input.outlooks.front().alive = 0.1;
  const auto needs = needs_of(input);
  ASSERT_EQ(needs.size(), 1U);
  EXPECT_EQ(needs.front().key, "dead-out/alder-5");
  const auto& odds = needs.front().odds.front().odds;
  EXPECT_LE(odds.low, odds.value);
  EXPECT_LE(odds.value, odds.high);
}

TEST(WinterWork, HeftsAndNamesTheSubstituteWhereAHiveCannotBeHefted) {
  auto input = invented(day(2026, 1, 20));
  input.colonies.front().last_any_look = seen(day(2026, 1, 1), 0, "heft");
  EXPECT_NE(find(needs_of(input), "heft/alder-5")->what.find("heft both sides"), std::string::npos);
  input.colonies.front().dwelling.can_heft = false;
  EXPECT_NE(find(needs_of(input), "heft/alder-5")->what.find("cannot be hefted"), std::string::npos);
}

TEST(WinterWork, MouseGuardsInOctoberAndTheBroodlessWindowAtMidwinter) {
  EXPECT_NE(find(needs_of(invented(day(2026, 10, 20))), "mouse-guard/alder-5/2026"), nullptr);
  EXPECT_NE(find(needs_of(invented(day(2026, 12, 20))), "winter-treatment/alder-5/2026"), nullptr);
  EXPECT_NE(find(needs_of(invented(day(2027, 1, 5))), "winter-treatment/alder-5/2026"), nullptr);
  EXPECT_EQ(find(needs_of(invented(day(2026, 6, 20))), "mouse-guard/alder-5/2026"), nullptr);
}

TEST(BaitBoxes, AreLookedAtWhereThereAreAny) {
  auto input = invented(day(2026, 5, 20));
  EXPECT_EQ(find(needs_of(input), "bait-box/withy"), nullptr);
  input.kit["bait box"] = 1;
  EXPECT_EQ(find(needs_of(input), "bait-box/withy"), nullptr);  // owned, but the book does not say where
  input.kit_where["bait box"] = "in the ash tree at Chalk Corner";
  EXPECT_EQ(find(needs_of(input), "bait-box/withy"), nullptr);
  input.kit_where["bait box"] = "in the ash tree at withy meadow";
  EXPECT_NE(all_words(*find(needs_of(input), "bait-box/withy")).find("ladder"), std::string::npos);
}

TEST(Gale, HivesAreStrappedBeforeIt) {
  auto input = invented(day(2026, 11, 20));
  EXPECT_EQ(find(needs_of(input), "strap/withy"), nullptr);
  input.sites.front().gust = {0.4, 0.3, 0.5};
  EXPECT_NE(find(needs_of(input), "strap/withy"), nullptr);
}

TEST(Flood, OnlyWhereASiteFloods) {
  auto input = invented(day(2026, 11, 20));
  input.sites.front().rain_next_days_mm = 90;
  EXPECT_EQ(find(needs_of(input), "flood/withy"), nullptr);
  input.sites.front().floods = true;
  EXPECT_EQ(find(needs_of(input), "flood/withy")->people, 2);
}

TEST(Needs, NothingIsSaidOfNobody) {
  EXPECT_TRUE(needs_of(NeedsInput{.today = day(2026, 5, 20)}).empty());
}

TEST(Needs, EveryLossIsFiniteAndNeverFallsWithTheDays) {
  for (int month = 1; month <= 12; ++month) {
    auto input = invented(day(2026, month, 12));
    for (const auto kind :
         {facts::EventKind::out_of_room, facts::EventKind::swarm_preparation, facts::EventKind::stores_short,
          facts::EventKind::queen_trouble, facts::EventKind::winter_mites})
      give_odds(input, kind, 0.3, 0.9);
    input.colonies.front().last_mite_count.reset();
    for (const auto& need : needs_of(input)) {
      EXPECT_TRUE(std::is_sorted(need.loss.by_day.begin(), need.loss.by_day.end())) << need.key;
      EXPECT_GE(need.loss.never, need.loss.by_day.empty() ? 0 : need.loss.by_day.back() - 1e-9) << need.key;
      EXPECT_LE(need.earliest, need.best) << need.key;
      EXPECT_LE(need.best, need.latest) << need.key;
      EXPECT_FALSE(need.why.empty()) << need.key;
    }
  }
}

TEST(WorkTable, EveryRowHasASource) {
  EXPECT_GT(work_table().rows().size(), 50U);
}

}  // namespace
}  // namespace beegarth::work
