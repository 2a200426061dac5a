// Treatments: Abbott's correction and combination of independent kills.
#include <gtest/gtest.h>

#include "calc_answers.hpp"

namespace beegarth {
namespace {

using garth::Json;

// Calderone 1999, autumn trial in the cool: pyrethroid strip 99, thymol blend 70, formic acid 51, untreated
// 33 %. The corrected figures are arithmetic on those.
TEST(Treatment, is_corrected_for_what_died_untreated) {
  const auto corrected = [](double treated) {
    return testing::answer("treatment",
                           {{"treated_pct", treated}, {"control_pct", 33}})["corrected_efficacy_pct"]
        .get<double>();
  };
  EXPECT_NEAR(corrected(99), 98.5, 0.1);
  EXPECT_NEAR(corrected(70), 55.2, 0.1);
  EXPECT_NEAR(corrected(51), 26.9, 0.1);
}

Json kill(double share, double adults, double under) {
  return {{"share_on_adults", share}, {"efficacy_on_adults", adults}, {"efficacy_under_cappings", under}};
}

// Arithmetic: each on the survivors of the one before.
TEST(Treatment, two_kills_of_70_are_91) {
  const auto out = testing::answer("treatment", {{"kills", {kill(1, 0.7, 0), kill(1, 0.7, 0)}}});
  EXPECT_NEAR(out["total_efficacy_pct"], 91, 1e-9);
  EXPECT_FALSE(out.contains("corrected_efficacy_pct"));
}

// Apidologie 2015, 10.1007/s13592-015-0405-7: oxalic acid once with brood kills some 60 % at most; by share
// on bees 0.35 to 0.5 the sum is 33 to 48 %.
TEST(Treatment, what_does_not_reach_under_cappings_spares_the_mites_there) {
  EXPECT_NEAR(testing::answer("treatment", {{"kills", {kill(0.35, 0.95, 0)}}})["total_efficacy_pct"], 33.25,
              1e-9);
  EXPECT_NEAR(testing::answer("treatment", {{"kills", {kill(0.5, 0.95, 0)}}})["total_efficacy_pct"], 47.5,
              1e-9);
}

TEST(Treatment, nonsense_is_refused) {
  EXPECT_TRUE(testing::refuses("treatment", Json::object()));
  EXPECT_TRUE(testing::refuses("treatment", {{"treated_pct", 90}}));
  EXPECT_TRUE(testing::refuses("treatment", {{"treated_pct", 90}, {"control_pct", 100}}));
  EXPECT_TRUE(testing::refuses("treatment", {{"kills", {kill(1, 1.2, 0)}}}));
  EXPECT_TRUE(testing::refuses("treatment", {{"kills", Json::array()}}));
}

}  // namespace
}  // namespace beegarth
