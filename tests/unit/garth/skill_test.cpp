// Scores against closed forms and against values worked out by hand.
#include <gtest/gtest.h>

#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <tuple>

#include "base/random.hpp"
#include "garth/beliefs/skill_reliability.hpp"
#include "garth/beliefs/skill_scores.hpp"

namespace beegarth::garth {
namespace {

TEST(Crps, of_one_point_is_the_absolute_error) {
  EXPECT_DOUBLE_EQ(crps({3.0}, 5), 2);
  EXPECT_DOUBLE_EQ(crps({3.0}, -1), 4);
  EXPECT_DOUBLE_EQ(crps({3.0}, 3), 0);
}

// By hand from E|X - y| - E|X - X'| / 2 (Gneiting & Raftery 2007, eq. 21).
TEST(Crps, of_two_points_by_hand) {
  EXPECT_DOUBLE_EQ(crps({2.0, 0.0}, 1), 1 - 1.0 / 2);  // E|X-y| = 1, E|X-X'| = 1
  EXPECT_DOUBLE_EQ(crps({0.0, 2.0}, 3), 2 - 1.0 / 2);  // beyond the sample
  EXPECT_DOUBLE_EQ(crps({0.0, 4.0}, {0.25, 0.75}, 1),
                   2.5 - 0.75);  // E|X-y| = 0.25 + 2.25, E|X-X'| = 2 * 0.1875 * 4
}

// The closed form of the uniform, by integration.
TEST(Crps, of_a_fine_sample_of_the_uniform_is_its_closed_form) {
  // Uniform on (0, 1), y within: integral of x^2 to y plus integral of (1 - x)^2 from y = (y^3 + (1 - y)^3)
  // / 3.
  std::vector<double> values;
  constexpr int n = 20000;
  values.reserve(n);
  for (int i = 0; i < n; ++i) values.push_back((i + 0.5) / n);
  for (const double y : {0.0, 0.3, 0.5, 1.0})
    EXPECT_NEAR(crps(values, y), (y * y * y + (1 - y) * (1 - y) * (1 - y)) / 3, 1.0 / n) << y;
}

// A standard normal at its own middle: (sqrt(2) - 1) / sqrt(pi) (Gneiting & Raftery 2007, the normal's closed
// form at 0).
TEST(Crps, of_draws_of_the_normal_at_its_middle_is_the_closed_form) {
  constexpr int n = 40000;
  Stream stream({.seed = 7, .purpose = Purpose::scoring});
  std::vector<double> values;
  values.reserve(n);
  for (int i = 0; i < n; ++i) values.push_back(stream.normal());
  // The score of a sample differs from its limit by at most a few times 1/sqrt(n).
  EXPECT_NEAR(crps(values, 0), (std::sqrt(2.0) - 1) / std::sqrt(3.14159265358979), 2 / std::sqrt(n));
}

// Of a normal, for any mean, spread and value: sd (z (2 Phi(z) - 1) + 2 phi(z) - 1/sqrt(pi)) (Gneiting &
// Raftery 2007, section 4.2). The sample are the n quantiles of the middles of n equal shares, so that its
// distribution function is nowhere more than 1/(2n) off: over a range of ten spreads that is at most 10 sd /
// n.
TEST(Crps, of_the_quantiles_of_a_normal_is_the_closed_form) {
  constexpr int n = 4000;
  for (const auto& [mean, sd, y] : {std::tuple{0.0, 1.0, 0.7}, {10.0, 3.0, 4.0}, {-2.0, 0.5, -2.0}}) {
    const boost::math::normal_distribution<> normal(mean, sd);
    const boost::math::normal_distribution<> standard;
    std::vector<double> values;
    values.reserve(n);
    for (int i = 0; i < n; ++i) values.push_back(boost::math::quantile(normal, (i + 0.5) / n));
    const double z = (y - mean) / sd;
    const double closed = sd * (z * (2 * boost::math::cdf(standard, z) - 1) +
                                2 * boost::math::pdf(standard, z) - 1 / std::sqrt(3.14159265358979));
    EXPECT_NEAR(crps(values, y), closed, 10 * sd / n) << mean;
  }
}

TEST(Crps, of_odds_of_yes_and_no_is_the_brier_score) {
  EXPECT_NEAR(crps({0, 1}, {0.3, 0.7}, 1), brier(0.7, true), 1e-15);
  EXPECT_NEAR(crps({0, 1}, {0.3, 0.7}, 0), brier(0.7, false), 1e-15);
}

TEST(Brier, by_hand) {
  EXPECT_DOUBLE_EQ(brier(0.75, true), 0.0625);
  EXPECT_DOUBLE_EQ(brier(0.75, false), 0.5625);
}

std::vector<ScorePair> pairs_of(double gain, int colonies) {
  std::vector<ScorePair> pairs;
  pairs.reserve(static_cast<std::size_t>(colonies));
  for (int c = 0; c < colonies; ++c)
    pairs.push_back({"c" + std::to_string(c), 1.0, 1.0 + gain + (c % 2 ? 0.1 : -0.1)});
  return pairs;
}

TEST(Comparison, a_clear_gain_is_better_and_a_clear_loss_is_worse) {
  EXPECT_EQ(compare(pairs_of(0.5, 20), "a", 1).verdict, "better");
  EXPECT_EQ(compare(pairs_of(-0.5, 20), "a", 1).verdict, "worse");
  EXPECT_EQ(compare(pairs_of(0.0, 20), "a", 1).verdict, "not told apart");
  EXPECT_EQ(compare(pairs_of(0.5, 3), "a", 1).verdict, "too few colonies");
}

TEST(Comparison, means_are_of_the_same_cases_and_nothing_is_empty_handed) {
  const auto c = compare(pairs_of(0.5, 20), "a", 1);
  EXPECT_NEAR(c.ours, 1.0, 1e-12);
  EXPECT_NEAR(c.other, 1.5, 1e-12);
  EXPECT_EQ(c.colonies, 20);
  EXPECT_EQ(compare({}, "a", 1).cases, 0);
  EXPECT_EQ(compare({}, "a", 1).low, 0);
}

TEST(Mean, holds_its_own_interval_and_keeps_the_cases_of_a_colony_together) {
  // Two colonies, a hundred cases each of 0 and of 1: either colony alone is drawn a quarter of the time.
  std::vector<CaseValue> values;
  for (int i = 0; i < 100; ++i) {
    values.push_back({"none", 0});
    values.push_back({"all", 1});
  }
  const MeanOfCases mean = mean_over_colonies(values, "a", 1);
  EXPECT_DOUBLE_EQ(mean.mean, 0.5);
  EXPECT_DOUBLE_EQ(mean.low, 0);
  EXPECT_DOUBLE_EQ(mean.high, 1);
  EXPECT_EQ(mean_over_colonies({}, "a", 1).cases, 0);
}

// Four cases: odds of 0.1, happened once of twice; odds of 0.9, happened twice of twice. Brier (0.01 + 0.81 +
// 0.01 + 0.01) / 4; reliability (0.4^2 + 0.1^2) / 2; resolution (0.25^2 + 0.25^2) / 2; uncertainty 0.75 *
// 0.25.
TEST(Reliability, by_hand) {
  const Reliability r =
      reliability_of({{"a", 0.1, false}, {"b", 0.1, true}, {"c", 0.9, true}, {"d", 0.9, true}});
  EXPECT_NEAR(r.brier, 0.21, 1e-15);
  EXPECT_NEAR(r.reliability, 0.085, 1e-15);
  EXPECT_NEAR(r.resolution, 0.0625, 1e-15);
  EXPECT_NEAR(r.uncertainty, 0.1875, 1e-15);
  EXPECT_NEAR(r.within_bins, 0, 1e-15);
  ASSERT_EQ(r.rows.size(), 2U);
  EXPECT_EQ(r.rows[0].cases, 2);
  EXPECT_DOUBLE_EQ(r.rows[0].from, 0.05);
  EXPECT_DOUBLE_EQ(r.rows[0].to, 0.2);
  EXPECT_DOUBLE_EQ(r.rows[0].mean_odds, 0.1);
  EXPECT_DOUBLE_EQ(r.rows[0].happened, 0.5);
}

// One bin, odds of 0.42 and 0.58, the wrong way round: Brier 0.58^2; both bin means 0.5. What is left over
// uncertainty is within the bin: 0.08^2 + 2 * 0.08 * 0.5.
TEST(Reliability, of_odds_that_differ_within_a_bin_by_hand) {
  const Reliability r = reliability_of({{"a", 0.42, true}, {"b", 0.58, false}});
  EXPECT_NEAR(r.brier, 0.3364, 1e-15);
  EXPECT_NEAR(r.reliability, 0, 1e-15);
  EXPECT_NEAR(r.resolution, 0, 1e-15);
  EXPECT_NEAR(r.uncertainty, 0.25, 1e-15);
  EXPECT_NEAR(r.within_bins, 0.0864, 1e-15);
}

TEST(Reliability, adds_up_to_the_brier_score_whatever_was_said) {
  Stream stream({.seed = 5, .purpose = Purpose::scoring});
  for (int n : {1, 7, 300}) {
    std::vector<OddsSaid> said{{"a", 1.0, true}, {"a", 0.0, false}, {"a", 1.0, false}};
    for (int i = 0; i < n; ++i) said.push_back({"a", stream.uniform(), stream.uniform() < 0.3});
    const Reliability r = reliability_of(said);
    EXPECT_NEAR(r.reliability - r.resolution + r.uncertainty + r.within_bins, r.brier, 1e-12);
    int cases = 0;
    for (const ReliabilityRow& row : r.rows) cases += row.cases;
    EXPECT_EQ(cases, static_cast<int>(said.size()));
  }
  EXPECT_EQ(reliability_of({}).cases, 0);
}

}  // namespace
}  // namespace beegarth::garth
