#include "belief/event_odds.hpp"

#include <gtest/gtest.h>

#include <boost/math/distributions/beta.hpp>
#include <cmath>

#include "base/random.hpp"
#include "belief/trace.hpp"

namespace beegarth::belief {
namespace {

TEST(Odds, of_a_finite_ensemble_have_the_beta_interval) {
  const auto odds = odds_with_interval(0.3, 100, 0);
  const boost::math::beta_distribution<> exact(30.5, 70.5);
  EXPECT_DOUBLE_EQ(odds.value, 0.3);
  EXPECT_NEAR(odds.low, boost::math::quantile(exact, 0.1), 0.002);
  EXPECT_NEAR(odds.high, boost::math::quantile(exact, 0.9), 0.002);
}

TEST(Odds, that_no_member_met_are_small_but_not_impossible) {
  const auto none = odds_with_interval(0, 200, 0);
  EXPECT_EQ(none.value, 0);
  EXPECT_EQ(none.low, 0);
  EXPECT_GT(none.high, 0);
  EXPECT_LT(none.high, 0.02);
  const auto all = odds_with_interval(1, 200, 0);
  EXPECT_EQ(all.high, 1);
  EXPECT_GT(all.low, 0.98);
}

TEST(Odds, are_less_well_known_where_unknown_traits_decide) {
  const auto chance = odds_with_interval(0.5, 400, 0);
  const auto traits = odds_with_interval(0.5, 400, 0.6);
  EXPECT_LT(traits.low, chance.low - 0.2);
  EXPECT_GT(traits.high, chance.high + 0.2);
  for (const double p : {0.0, 1e-9, 0.5, 1.0}) {
    for (const double share : {0.0, 0.5, 1.0}) {
      const auto odds = odds_with_interval(p, 1, share);
      EXPECT_LE(0, odds.low);
      EXPECT_LE(odds.low, odds.value);
      EXPECT_LE(odds.value, odds.high);
      EXPECT_LE(odds.high, 1);
    }
  }
}

// An event that is (x0 > 0): a linear rule explains 2/pi of a fair split's variance. One that is a coin:
// nothing.
TEST(TraitShare, tells_traits_from_chance) {
  constexpr std::size_t members = 4000;
  constexpr std::size_t dims = 5;
  std::vector<double> x(members * dims);
  std::vector<double> by_trait(members);
  std::vector<double> by_chance(members);
  Stream s({.seed = 2});
  for (double& v : x) v = s.normal();
  for (std::size_t i = 0; i < members; ++i) {
    by_trait[i] = x[i * dims] > 0 ? 1 : 0;
    by_chance[i] = s.uniform() < 0.5 ? 1 : 0;
  }
  const std::vector<double> weights(members, 1.0 / members);
  const TraitShare share(x, static_cast<int>(dims), weights);
  EXPECT_NEAR(share.explained(by_trait), 2 / 3.14159265, 0.04);
  EXPECT_LT(share.explained(by_chance), 0.01);
}

TEST(Odds, by_date_never_fall) {
  const std::vector<int> first{3, 5, never_happens, 4};
  const std::vector<double> weights{0.25, 0.25, 0.25, 0.25};
  const std::vector<double> x{0, 1, 2, 3};
  const std::vector<int> family{0, 1, 2, 3};
  const auto course = odds_by_day(first, {weights, family}, 2, 7, TraitShare(x, 1, weights));
  ASSERT_EQ(course.size(), 6U);
  const std::vector<double> expected{0, 0.25, 0.5, 0.75, 0.75, 0.75};
  for (std::size_t i = 0; i < course.size(); ++i) EXPECT_DOUBLE_EQ(course[i].value, expected[i]);
}

TEST(Fans, are_the_weighted_quantiles_of_every_day) {
  Trace trace(Date{}, 1, 4);
  auto& bees = trace.values[0];
  for (int member = 0; member < 4; ++member) {
    bees[trace.at(0, member)] = static_cast<float>(10 * (4 - member));
    bees[trace.at(1, member)] = static_cast<float>(member);
  }
  const std::vector<double> weights{0.25, 0.25, 0.25, 0.25};
  const auto fans = fans_of(trace, weights, 1);
  ASSERT_EQ(fans.size(), fan_count);
  EXPECT_EQ(fans[0].quantity, "bees");
  EXPECT_DOUBLE_EQ(fans[0].levels[0][3], 25);
  EXPECT_DOUBLE_EQ(fans[0].levels[1][3], 1.5);
  EXPECT_DOUBLE_EQ(fans[0].levels[1][0], 0);
  EXPECT_DOUBLE_EQ(fans[0].levels[1][6], 3);
}

}  // namespace
}  // namespace beegarth::belief
