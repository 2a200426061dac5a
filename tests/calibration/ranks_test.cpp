// The check itself, where the answer is known: a normal mean with known variance.
#include "calibration/ranks.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace beegarth::calibration {
namespace {

constexpr int cases = 1000;
constexpr int draws = 31;
constexpr double level = 0.01;  // of false alarm

const UniformRanks& uniform() {
  static const UniformRanks ranks(cases, draws, 20'000, 1);
  return ranks;
}

// theta ~ N(0, 1), y | theta ~ N(theta, 1), so theta | y ~ N(y / 2, 1 / 2) (conjugate normal). The posterior
// is told wrong by a factor on its standard deviation and a shift in units of it.
std::vector<int> ranks_where(double too_wide, double shift, std::uint64_t seed) {
  std::vector<int> ranks;
  for (std::uint32_t i = 0; i < cases; ++i) {
    Stream s({.seed = seed, .member = i, .purpose = Purpose::synthetic_truth});
    const double theta = s.normal();
    const double y = theta + s.normal();
    int rank = 0;
    for (int d = 0; d < draws; ++d)
      rank += y / 2 + std::sqrt(0.5) * (shift + too_wide * s.normal()) < theta ? 1 : 0;
    ranks.push_back(rank);
  }
  return ranks;
}

TEST(Ranks, of_a_conjugate_normal_mean_are_uniform) {
  EXPECT_GT(uniform().odds_of(ranks_where(1, 0, 100)), level);
}

TEST(Ranks, of_a_posterior_a_fifth_too_narrow_are_found_out) {
  EXPECT_LT(uniform().odds_of(ranks_where(0.8, 0, 100)), level);
}

TEST(Ranks, of_a_posterior_a_quarter_too_wide_or_shifted_by_a_fifth_are_found_out) {
  EXPECT_LT(uniform().odds_of(ranks_where(1.25, 0, 100)), level);
  EXPECT_LT(uniform().odds_of(ranks_where(1, 0.2, 100)), level);
}

// The band holds what it says for all points together: of 1000 sets of uniform ranks one in a hundred lies
// outside. Room: four standard errors of a share of 0.01 among so many (0.0031).
TEST(Ranks, of_the_right_posterior_lie_outside_as_seldom_as_said) {
  int outside = 0;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed)
    outside += uniform().odds_of(ranks_where(1, 0, 1000 + seed)) <= level ? 1 : 0;
  EXPECT_LE(outside, 10 + 4 * 3.15);
}

// Bin(10, 1/2): P(X <= 1) = 11/1024 = 0.0107, P(X <= 0) = 0.00098, so 1 to 9 leave out 2 * 0.00098, and 2 to
// 8 leave out 2 * 0.0107 (by hand).
TEST(Room, is_the_exact_binomials) {
  EXPECT_EQ(room_for(10, 0.5, 0.02).least, 1);
  EXPECT_EQ(room_for(10, 0.5, 0.02).most, 9);
  EXPECT_EQ(room_for(10, 0.5, 0.03).least, 2);
  EXPECT_EQ(room_for(10, 0.5, 0.03).most, 8);
}

}  // namespace
}  // namespace beegarth::calibration
