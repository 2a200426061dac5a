#include "lines/matings.hpp"

#include <gmock/gmock.h>

#include "lines/choose_matings.hpp"
#include "reference/queens.hpp"

namespace beegarth::lines {
namespace {

using reference::drones_of;
using reference::queen;
using reference::unrelated;
using testing::ElementsAre;
using testing::HasSubstr;

FactTable table() {
  return *FactTable::check("lines",
                           {{"sex_alleles", 20, 10, 100, "alleles", "from memory: for this test", ""}});
}

// Two lines, Dora's and Edda's, with a virgin or two each and dams of both.
Pedigree yard() {
  return *Pedigree::of({queen("Dora", {}, {}, {unrelated()}), queen("Edda", {}, {}, {unrelated()}),
                        queen("Anna", "Dora"), queen("Bess", "Dora"), queen("Fern", "Edda"),
                        queen("Gwen", "Edda")});
}

std::size_t index(const char* name) {
  return *yard().find(QueenId(name));
}

DroneSet sons_of(const char* name) {
  return {std::string("sons of ") + name, *yard().look_up({drones_of(name)}, "mating")};
}

MatingQuestion question() {
  MatingQuestion asked;
  asked.virgins = {index("Anna"), index("Fern")};
  asked.sets = {sons_of("Bess"), sons_of("Gwen"), sons_of("Dora")};
  asked.scores = std::vector<double>(yard().size(), 0.0);
  return asked;
}

MatingAdvice advise(const MatingQuestion& asked) {
  const auto advice = advise_matings(yard(), asked, table());
  EXPECT_TRUE(advice) << one_line(advice.problem());
  return *advice;
}

std::vector<std::string> chosen(const MatingAdvice& advice, const MatingQuestion& asked) {
  std::vector<std::string> words;
  for (const std::size_t place : advice.choice->crosses)
    words.push_back(yard().queen(asked.virgins[advice.crosses[place].virgin]).id.text() + " with " +
                    asked.sets[advice.crosses[place].set].name);
  return words;
}

TEST(Matings, EachIsWeighed) {
  auto asked = question();
  asked.scores[index("Anna")] = 1;
  asked.scores[index("Bess")] = 2;
  const auto crosses = advise(asked).crosses;
  ASSERT_EQ(crosses.size(), 6U);
  EXPECT_EQ(crosses[0].inbreeding, 0.125);  // drones of a half sister
  EXPECT_EQ(crosses[0].score, 1.5);
  EXPECT_THAT(crosses[0].reasons, ElementsAre("Anna and Bess share Dora (Anna's mother, Bess's mother)"));
  EXPECT_EQ(crosses[1].inbreeding, 0);
  EXPECT_THAT(crosses[1].reasons, ElementsAre("no shared ancestor is written down"));
  EXPECT_EQ(crosses[2].inbreeding, 0.25);  // drones of her mother
  EXPECT_FALSE(crosses[2].allowed);
  EXPECT_THAT(crosses[2].reasons, ElementsAre("Dora is Anna's mother"));
}

// Arithmetic on the formula: 1/4 + 3/4 of 1 in 20, 1 in 100 and 1 in 10.
TEST(Matings, BroodIsLostByKinshipAndByChance) {
  const auto lost = advise(question()).crosses[2].brood_lost;
  EXPECT_NEAR(lost.share, 0.25 + 0.75 / 20, 1e-12);
  EXPECT_NEAR(lost.share_low, 0.25 + 0.75 / 100, 1e-12);
  EXPECT_NEAR(lost.share_high, 0.25 + 0.75 / 10, 1e-12);
}

// A queen carries two unlike sex alleles, so that of a mating with one drone none or half of the brood is
// lost (Mackensen 1951, from memory); with her own son half, for his is one of her two.
TEST(Matings, NoMatingCostsMoreThanHalfOfTheBrood) {
  EXPECT_EQ(diploid_drones(0.5, table())->share, 0.5);
  EXPECT_EQ(diploid_drones(0.9, table())->share, 0.5);
  EXPECT_NEAR(diploid_drones(0, table())->share, 0.05, 1e-12);
}

TEST(Matings, TheChoiceCrossesTheLines) {
  const auto asked = question();
  const auto advice = advise(asked);
  ASSERT_TRUE(advice.choice);
  EXPECT_TRUE(advice.choice->proven);
  EXPECT_THAT(chosen(advice, asked), ElementsAre("Anna with sons of Gwen", "Fern with sons of Bess"));
  EXPECT_THAT(advice.reasons[0], HasSubstr("keeps line Dora"));
}

TEST(Matings, AScoreIsFollowedAsFarAsItsWeightGoes) {
  auto asked = question();
  asked.sets = {sons_of("Gwen"), sons_of("Bess")};
  asked.scores[index("Bess")] = 1;
  asked.coancestry_per_score = 0;
  EXPECT_THAT(chosen(advise(asked), asked), ElementsAre("Anna with sons of Gwen", "Fern with sons of Bess"));
  asked.coancestry_per_score = 10;  // now kinship counts for nearly nothing, up to the limit
  EXPECT_THAT(chosen(advise(asked), asked), ElementsAre("Anna with sons of Bess", "Fern with sons of Bess"));
  asked.inbreeding_limit = 0.1;
  const auto advice = advise(asked);
  EXPECT_THAT(chosen(advice, asked), ElementsAre("Anna with sons of Gwen", "Fern with sons of Bess"));
  EXPECT_THAT(advice.reasons[0],
              HasSubstr("sons of Bess would score 0.5 against 0 but is too near of kin (0.125)"));
}

TEST(Matings, ALineWithoutFitDronesIsNamed) {
  auto asked = question();
  asked.sets = {sons_of("Dora"), sons_of("Bess")};
  asked.inbreeding_limit = 0.1;
  const auto advice = advise(asked);
  EXPECT_FALSE(advice.choice);
  EXPECT_THAT(advice.reasons,
              ElementsAre(HasSubstr("line Dora cannot be kept within the limit of 0.1: its least akin "
                                    "mating is Anna with sons of Bess at 0.125")));
}

TEST(Matings, FewerMatingsThanLinesAreRefused) {
  auto asked = question();
  asked.keep = 1;
  const auto advice = advise_matings(yard(), asked, table());
  ASSERT_FALSE(advice);
  EXPECT_EQ(advice.problem().where, "keep");
}

TEST(Matings, MoreThanThereAreVirginsIsToldPlainly) {
  auto asked = question();
  asked.keep = 3;
  const auto advice = advise(asked);
  EXPECT_FALSE(advice.choice);
  EXPECT_THAT(advice.reasons, ElementsAre(HasSubstr("fewer than 3 virgins")));
}

TEST(Matings, DronesOfUnknownDamsCarryAWarning) {
  auto asked = question();
  asked.sets = {{"the open sky", *yard().look_up({unrelated()}, "mating")}};
  EXPECT_THAT(advise(asked).crosses[0].reasons[1], HasSubstr("count as unrelated"));
}

TEST(Choice, IsCalledUnprovenWhereTheSearchWasCutShort) {
  ChoiceProblem problem;
  for (std::size_t i = 0; i < 12; ++i) problem.options.push_back({i, 0, 0.0});
  problem.coancestry = {12, std::vector<double>(144, 0.1)};
  problem.lines = 1;
  problem.keep = 6;
  const auto cut = choose(problem, 10);
  ASSERT_TRUE(cut);
  EXPECT_FALSE(cut->proven);
  EXPECT_EQ(cut->crosses.size(), 6U);
  EXPECT_TRUE(choose(problem)->proven);
}

}  // namespace
}  // namespace beegarth::lines
