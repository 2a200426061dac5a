#include "belief/kin.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/random.hpp"

namespace beegarth::belief {
namespace {

// `ancestors` members, each copied `copies` times, and of every three ancestors one met the event.
struct Copied {
  std::vector<double> weights;
  std::vector<double> happened;
  std::vector<int> family;

  Copied(int ancestors, int copies) {
    for (int a = 0; a < ancestors; ++a) {
      for (int c = 0; c < copies; ++c) {
        weights.push_back(1.0 / (ancestors * copies));
        happened.push_back(a % 3 == 0 ? 1.0 : 0.0);
        family.push_back(a);
      }
    }
  }
};

TEST(Kin, members_that_are_no_kin_have_the_error_of_independent_draws) {
  const Copied crowd(300, 1);
  EXPECT_NEAR(share_error(crowd.weights, crowd.happened, crowd.family), std::sqrt(1.0 / 3 * 2 / 3 / 300),
              1e-12);
}

TEST(Kin, copies_count_as_one_draw_whatever_their_number) {
  const Copied crowd(30, 10);
  EXPECT_NEAR(share_error(crowd.weights, crowd.happened, crowd.family), std::sqrt(1.0 / 3 * 2 / 3 / 30),
              1e-12);
}

TEST(Kin, a_crowd_of_one_family_is_not_taken_for_certain) {
  Copied crowd(300, 1);
  std::fill(crowd.family.begin(), crowd.family.end(), 7);
  EXPECT_NEAR(share_error(crowd.weights, crowd.happened, crowd.family), std::sqrt(1.0 / 3 * 2 / 3 / 300),
              1e-12);
}

TEST(Kin, few_families_must_differ_by_more_errors_than_many) {
  const Copied crowd(30, 10);
  EXPECT_NEAR(effective_families(crowd.weights, crowd.family), 30, 1e-9);
  EXPECT_NEAR(errors_beyond_chance(1e6), 3.0, 0.001);
  EXPECT_GT(errors_beyond_chance(6),
            5);  // t table: 4.77 at 0.9975, 5.89 at 0.999 with five degrees of freedom
  EXPECT_LT(errors_beyond_chance(6), 5.9);
  EXPECT_TRUE(std::isfinite(errors_beyond_chance(0)));
}

TEST(Kin, a_change_of_weights_is_known_better_than_its_two_ends_together) {
  const Copied crowd(300, 1);
  EXPECT_EQ(change_error(crowd.weights, crowd.weights, crowd.happened, crowd.family), 0);
  std::vector<double> heavier = crowd.weights;
  for (std::size_t i = 0; i < heavier.size(); ++i) heavier[i] *= i % 2 == 0 ? 1.1 : 0.9;
  const double change = change_error(crowd.weights, heavier, crowd.happened, crowd.family);
  const double ends = std::hypot(share_error(crowd.weights, crowd.happened, crowd.family),
                                 share_error(heavier, crowd.happened, crowd.family));
  EXPECT_GT(change, 0);
  EXPECT_LT(change, 0.2 * ends);
}

// The mean of the spreads of many crowds of copies, and how often the interval holds the true one, which
// is 1.
struct Judged {
  double mean = 0, held = 0;
};
Judged spreads_of_copies(int ancestors, int copies) {
  constexpr int crowds = 2000;
  Judged judged;
  for (std::uint32_t k = 0; k < crowds; ++k) {
    Stream stream({.seed = 11, .member = k});
    std::vector<double> weights, values;
    std::vector<int> family;
    for (int a = 0; a < ancestors; ++a) {
      const double value = stream.normal();
      for (int c = 0; c < copies; ++c) {
        weights.push_back(1.0 / (ancestors * copies));
        values.push_back(value);
        family.push_back(a);
      }
    }
    const Spread spread = spread_of(weights, values, family, 0.1);
    judged.mean += spread.variance / crowds;
    judged.held += (spread.low < 1 && 1 < spread.high ? 1.0 : 0.0) / crowds;
  }
  return judged;
}

TEST(Kin, copies_hide_nothing_of_how_widely_members_are_spread) {
  for (const int ancestors : {8, 30}) {
    const Judged judged = spreads_of_copies(ancestors, 16);
    EXPECT_NEAR(judged.mean, 1, 0.03) << ancestors;
    EXPECT_GT(judged.held, 0.70) << ancestors;
    EXPECT_LT(judged.held, 0.90) << ancestors;
  }
}

TEST(Kin, members_that_are_all_alike_are_not_spread_and_nothing_is_divided_by_it) {
  const std::vector<double> weights(4, 0.25), values(4, 2.0);
  const std::vector<int> family(4, 0);
  EXPECT_EQ(spread_of(weights, values, family, 0.1).high, 0);
}

}  // namespace
}  // namespace beegarth::belief
