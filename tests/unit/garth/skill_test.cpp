// Scores against closed forms and against values worked out by hand.
#include <gtest/gtest.h>

#include <cmath>

#include "base/random.hpp"
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

}  // namespace
}  // namespace beegarth::garth
