#include "belief/pareto.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "base/random.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// A Pareto tail of known shape is found again (the prior of the method pulls towards one half).
TEST(Pareto, fit_finds_a_known_shape) {
  for (const double shape : {0.2, 0.5, 0.9}) {
    std::vector<double> x;
    x.reserve(4000);
    Stream s({.seed = 3});
    for (int i = 0; i < 4000; ++i) x.push_back(2.0 * (std::pow(s.uniform(), -shape) - 1) / shape);
    std::sort(x.begin(), x.end());
    const ParetoTail tail = fit_pareto(x);
    // Five standard errors, (1 + shape) / sqrt(n) (Smith 1987).
    EXPECT_NEAR(tail.shape, shape, 5 * (1 + shape) / std::sqrt(4000.0));
    EXPECT_NEAR(tail.scale, 2.0, 0.3);
  }
}

// Members from N(0, 1), ratios for N(0.5, 1): the mean under the weights is 0.5.
TEST(Pareto, smoothing_keeps_a_mild_reweighting_right) {
  std::vector<double> x;
  std::vector<double> logs;
  Stream s({.seed = 9});
  for (int i = 0; i < 4000; ++i) {
    x.push_back(s.normal());
    logs.push_back(0.5 * x.back() - 0.125);
  }
  const auto smoothed = pareto_smoothed(logs);
  EXPECT_LT(smoothed.shape, 0.7);
  double mean = 0;
  double sum = 0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    mean += smoothed.weights[i] * x[i];
    sum += smoothed.weights[i];
  }
  EXPECT_NEAR(sum, 1.0, 1e-12);
  EXPECT_NEAR(mean, 0.5, 5 * std::sqrt(std::exp(0.25) * 1.25 / 4000));
}

// Dropping an observation that pinned a wide prior down: the shape says that it cannot be trusted.
TEST(Pareto, shape_is_high_where_reweighting_cannot_work) {
  std::vector<double> logs;
  Stream s({.seed = 9});
  for (int i = 0; i < 2000; ++i) {
    const double x = 0.1 * s.normal();
    logs.push_back(0.5 * x * x / 0.01 - 0.5 * x * x);  // from sd 0.1 back to sd 1
  }
  EXPECT_GT(pareto_smoothed(logs).shape, 0.7);
}

TEST(Pareto, equal_ratios_stay_equal) {
  const std::vector<double> logs(100, -3.0);
  const auto smoothed = pareto_smoothed(logs);
  for (const double w : smoothed.weights) EXPECT_NEAR(w, 0.01, 1e-12);
}

}  // namespace
}  // namespace beegarth::belief
