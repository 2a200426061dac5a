#include "belief/proposal.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace beegarth::belief {
namespace {

// A crowd with spread 0.5 about 1 and correlation: repeated steps keep the fitted normal, whatever their
// size.
TEST(Proposal, leaves_the_fitted_normal_as_it_is) {
  constexpr std::size_t members = 5000;
  std::vector<double> z(2 * members);
  Stream s({.seed = 4});
  for (std::size_t i = 0; i < members; ++i) {
    z[2 * i] = 1 + 0.5 * s.normal();
    z[2 * i + 1] = 0.8 * z[2 * i] + 0.3 * s.normal();
  }
  const std::vector<double> weights(members, 1.0 / members);
  const CrowdNormal normal(z, 2, weights);
  EXPECT_NEAR(normal.mean(0), 1.0, 0.04);
  EXPECT_NEAR(normal.variance(0), 0.25, 0.03);
  std::vector<double> at{1, 0.8};
  std::vector<double> next(2);
  double mean = 0;
  double square = 0;
  constexpr int steps = 40000;
  for (int i = 0; i < steps; ++i) {
    normal.step(at, 0.7, s, next);
    at = next;
    mean += at[0] / steps;
    square += at[0] * at[0] / steps;
  }
  EXPECT_NEAR(mean, normal.mean(0), 0.03);
  EXPECT_NEAR(square - mean * mean, 1.1 * normal.variance(0) + 1e-4, 0.03);
}

// log prior - log fit against the formula in one dimension: variance 1.1 * 0.25 + 1e-4.
TEST(Proposal, weighs_the_prior_against_the_fit) {
  const std::vector<double> z{0.5, 1.5};
  const CrowdNormal normal(z, 1, std::vector<double>{0.5, 0.5});
  const double variance = 1.1 * 0.25 + 1e-4;
  const double at = 0.3;
  EXPECT_NEAR(normal.log_prior_over_fit(std::vector<double>{at}), 0.5 * (0.7 * 0.7 / variance - at * at),
              1e-9);
}

}  // namespace
}  // namespace beegarth::belief
