#include "lines/scores.hpp"

#include <gmock/gmock.h>

#include <cmath>

#include "reference/queens.hpp"

namespace beegarth::lines {
namespace {

using reference::queen;
using reference::unrelated;
using testing::HasSubstr;

FactTable table(double share = 0.3) {
  return *FactTable::check(
      "lines", {{"score_share_of_queen", share, 0.1, 0.5, "1", "from memory: for this test", ""}});
}

Score score(std::size_t who, double value, const char* site = "brook", int year = 2025) {
  return {who, "calmness", site, year, value};
}

TraitEstimates estimate(const Pedigree& pedigree, const std::vector<Score>& scores, double share = 0.3) {
  const auto traits = estimate_scores(pedigree, scores, table(share));
  EXPECT_TRUE(traits);
  EXPECT_EQ(traits->size(), 1U);
  return traits->front();
}

Pedigree strangers(int count) {
  std::vector<Queen> queens;
  for (int i = 0; i < count; ++i) queens.push_back(queen("Q" + std::to_string(i)));
  return *Pedigree::of(queens);
}

// By hand: two strangers, one score each, d apart. The mean is midway, and each lies share * d/2 from it, for
// the difference of the two has variance 2 of which 2 * share is the queens'.
TEST(Scores, TwoStrangersAreDrawnToTheMeanByTheShare) {
  const auto both = estimate(strangers(2), {score(0, 5), score(1, 3)}, 0.4);
  EXPECT_NEAR(both.queens[0].estimate, 0.4, 1e-12);
  EXPECT_NEAR(both.queens[1].estimate, -0.4, 1e-12);
  EXPECT_NEAR(both.queens[0].at_low_share, 0.1, 1e-12);
  EXPECT_NEAR(both.queens[0].at_high_share, 0.5, 1e-12);
  // Reliability: half of the share, for half of what is known of a queen is taken up by the mean.
  EXPECT_NEAR(both.queens[0].reliability, 0.2, 1e-12);
  // Spread: half of the squared difference, as any variance of two.
  EXPECT_NEAR(*both.spread, std::sqrt(2.0), 1e-12);
  EXPECT_NEAR(*both.queens[0].standard_error, std::sqrt(2.0 * 0.4 * (1 - 0.2)), 1e-12);
  EXPECT_THAT(both.plainly, HasSubstr("few data"));
}

// By hand: k scores of each of two strangers at one site in one year. Means of k have variance
// share + (1 - share)/k, so a queen lies share/(share + (1 - share)/k) of d/2 from the mean.
TEST(Scores, ManyScoresSpeakForThemselves) {
  std::vector<Score> scores;
  for (int i = 0; i < 40; ++i) {
    scores.push_back(score(0, 5 + (i % 2)));
    scores.push_back(score(1, 3 + (i % 2)));
  }
  const auto both = estimate(strangers(2), scores, 0.4);
  EXPECT_NEAR(both.queens[0].estimate, 0.4 / (0.4 + 0.6 / 40), 1e-12);
}

TEST(Scores, AGoodYearOrSiteIsNobodysMerit) {
  const std::vector<Score> level{score(0, 5), score(1, 3), score(2, 4, "hill"), score(3, 2, "hill")};
  std::vector<Score> uneven = level;
  uneven[2].value += 100;
  uneven[3].value += 100;
  const auto one = estimate(strangers(4), level), other = estimate(strangers(4), uneven);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(one.queens[i].estimate, other.queens[i].estimate, 1e-10);
  std::vector<Score> years = level;
  years[2].site = years[3].site = "brook";
  years[2].year = years[3].year = 2026;
  EXPECT_EQ(estimate(strangers(4), years).queens[2].estimate, one.queens[2].estimate);
}

TEST(Scores, ASisterWithoutScoresIsJudgedByHerKin) {
  const auto family = *Pedigree::of({queen("Dora", {}, {}, {unrelated(1)}), queen("Anna", "Dora"),
                                     queen("Bess", "Dora"), queen("Edda"), queen("Fern")});
  const auto trait = estimate(family, {score(1, 5), score(3, 3)});
  EXPECT_GT(trait.queens[1].estimate, trait.queens[2].estimate);
  EXPECT_NEAR(trait.queens[2].estimate, 0.75 * trait.queens[1].estimate, 1e-12);  // super-sisters
  EXPECT_NEAR(trait.queens[0].estimate, 0.5 * trait.queens[1].estimate, 1e-12);   // mother
  EXPECT_NEAR(trait.queens[4].estimate, 0, 1e-12);
  EXPECT_NEAR(trait.queens[4].reliability, 0, 1e-12);
  EXPECT_EQ(trait.queens[2].scores, 0);
}

TEST(Scores, WhatStandsAloneTellsNothingAndSaysSo) {
  const auto alone = estimate(strangers(2), {score(0, 5), score(1, 3, "hill")});
  EXPECT_NEAR(alone.queens[0].estimate, 0, 1e-12);
  EXPECT_NEAR(alone.queens[0].reliability, 0, 1e-12);
  EXPECT_FALSE(alone.spread);
  EXPECT_FALSE(alone.queens[0].standard_error);
  EXPECT_THAT(alone.plainly, HasSubstr("nothing can be compared"));
  // One queen's two scores at one site tell no more.
  EXPECT_FALSE(estimate(strangers(2), {score(0, 5), score(0, 4)}).spread);
  const auto third = estimate(strangers(3), {score(0, 5), score(1, 3), score(2, 9, "hill")});
  EXPECT_EQ(third.uncompared, 1);
  EXPECT_THAT(third.plainly, HasSubstr("1 score has no score of another queen beside it"));
}

TEST(Scores, LikeScoresLeaveNoSpread) {
  const auto trait = estimate(strangers(2), {score(0, 4), score(1, 4)});
  EXPECT_EQ(trait.queens[0].estimate, 0);
  EXPECT_FALSE(trait.queens[0].standard_error);
}

TEST(Scores, EachTraitIsItsOwn) {
  auto scores = std::vector<Score>{score(0, 5), score(1, 3)};
  scores.push_back({0, "honey", "brook", 2025, 10});
  scores.push_back({1, "honey", "brook", 2025, 30});
  const auto traits = *estimate_scores(strangers(2), scores, table());
  ASSERT_EQ(traits.size(), 2U);
  EXPECT_EQ(traits[0].trait, "calmness");
  EXPECT_GT(traits[0].queens[0].estimate, 0);
  EXPECT_LT(traits[1].queens[0].estimate, 0);
}

TEST(Scores, AShareOfAllOrNothingIsRefused) {
  EXPECT_FALSE(
      estimate_scores(strangers(2), {score(0, 5)},
                      *FactTable::check("lines", {{"score_share_of_queen", 1, {}, {}, "1", "x", ""}})));
}

}  // namespace
}  // namespace beegarth::lines
