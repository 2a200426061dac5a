#include "belief/kin.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

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

}  // namespace
}  // namespace beegarth::belief
