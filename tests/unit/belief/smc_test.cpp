#include "belief/smc.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <numeric>

#include "base/random.hpp"
#include "belief/densities.hpp"

namespace beegarth::belief {
namespace {

constexpr double never = -std::numeric_limits<double>::infinity();

TEST(Weights, are_shares_of_the_whole_whatever_their_scale) {
  const std::vector<double> logs{-1000.0, -1000.0 + std::log(3.0)};
  const auto weights = normalised(logs);
  EXPECT_NEAR(weights[0], 0.25, 1e-12);
  EXPECT_NEAR(weights[1], 0.75, 1e-12);
  EXPECT_NEAR(effective_sample_size(weights), 1 / (0.0625 + 0.5625), 1e-12);
}

TEST(Weights, that_are_all_impossible_stay_finite) {
  const std::vector<double> logs{never, never, never};
  EXPECT_TRUE(all_impossible(logs));
  EXPECT_EQ(log_sum_exp(logs), never);
  EXPECT_NEAR(effective_sample_size(normalised(logs)), 3.0, 1e-12);
}

TEST(Resampling, takes_each_member_its_share_rounded_down_or_up) {
  const std::vector<double> weights{0.5, 0.0, 0.27, 0.23};
  for (const double u : {0.001, 0.3, 0.77, 0.999}) {
    const auto ancestors = systematic_ancestors(weights, u, 10);
    std::array<int, 4> taken{};
    for (const int a : ancestors) ++taken.at(static_cast<std::size_t>(a));
    EXPECT_EQ(taken[0], 5);
    EXPECT_EQ(taken[1], 0);
    EXPECT_TRUE(taken[2] == 2 || taken[2] == 3);
    EXPECT_TRUE(taken[3] == 2 || taken[3] == 3);
  }
}

TEST(Tempering, leaves_the_wanted_number_of_members_and_is_whole_where_nothing_surprises) {
  std::vector<double> even(100, 0.0);
  std::vector<double> sharp(100);
  for (std::size_t i = 0; i < sharp.size(); ++i)
    sharp[i] = -0.5 * std::pow((static_cast<double>(i) - 80) / 2.0, 2);
  EXPECT_EQ(tempered_share(even, std::vector<double>(100, -3.0), 50), 1.0);
  const double share = tempered_share(even, sharp, 50);
  EXPECT_LT(share, 1.0);
  std::vector<double> logs(100);
  for (std::size_t i = 0; i < logs.size(); ++i) logs[i] = share * sharp[i];
  EXPECT_NEAR(effective_sample_size(normalised(logs)), 50.0, 0.01);
}

TEST(Quantiles, weigh_their_values) {
  const std::vector<double> values{3, 1, 2};
  const std::vector<double> weights{0.25, 0.25, 0.5};
  const auto order = ascending_order(values);
  EXPECT_DOUBLE_EQ(weighted_quantile(values, weights, order, 0.5), 2.0);
  EXPECT_DOUBLE_EQ(weighted_quantile(values, weights, order, 0.0), 1.0);
  EXPECT_DOUBLE_EQ(weighted_quantile(values, weights, order, 1.0), 3.0);
  const std::vector<double> alone{0, 1, 0};
  EXPECT_DOUBLE_EQ(weighted_quantile(values, alone, order, 0.1), 1.0);
}

TEST(Assimilation, says_so_where_no_member_could_have_made_the_observation) {
  std::vector<double> weights(4, 0.0);
  std::vector<double> likelihoods(4, never);
  const Crowd untouched{[](std::span<const int>) { FAIL(); }, [](double) { return std::vector<double>{}; },
                        [] { return 0.5; }};
  const auto result = assimilate(weights, likelihoods, untouched, {});
  EXPECT_FALSE(result.reconciled);
  EXPECT_EQ(weights, std::vector<double>(4, 0.0));
}

// A prior N(0, 1) and one observation 6 with sd 0.5: posterior N(4.8, 0.2), evidence N(6; 0, 1.25) (conjugate
// normal).
TEST(Assimilation, of_a_surprise_by_tempering_finds_the_conjugate_posterior) {
  constexpr int members = 4000;
  std::vector<double> x(members);
  for (int i = 0; i < members; ++i) {
    x[static_cast<std::size_t>(i)] = Stream({.seed = 5, .member = static_cast<std::uint32_t>(i)}).normal();
  }
  const auto likelihood = [](double at) { return log_normal_density(6, at, 0.5); };
  std::vector<double> log_weights(members, 0.0);
  std::vector<double> log_likelihoods(members);
  for (std::size_t i = 0; i < x.size(); ++i) log_likelihoods[i] = likelihood(x[i]);
  int round = 0;
  Stream shared({.seed = 5, .purpose = Purpose::resample});
  const Crowd crowd{[&](std::span<const int> ancestors) {
                      std::vector<double> next(x.size());
                      for (std::size_t i = 0; i < x.size(); ++i)
                        next[i] = x[static_cast<std::size_t>(ancestors[i])];
                      x = next;
                    },
                    [&](double share) {
                      ++round;
                      std::vector<double> logs(x.size());
                      for (std::size_t i = 0; i < x.size(); ++i) {
                        Stream s({.seed = 5,
                                  .member = static_cast<std::uint32_t>(i),
                                  .day = round,
                                  .purpose = Purpose::move_noise});
                        for (int step = 0; step < 5; ++step) {
                          const double to = x[i] + 0.8 * s.normal();
                          const double gain =
                              0.5 * (x[i] * x[i] - to * to) + share * (likelihood(to) - likelihood(x[i]));
                          if (std::log(s.uniform()) < gain) x[i] = to;
                        }
                        logs[i] = likelihood(x[i]);
                      }
                      return logs;
                    },
                    [&] { return shared.uniform(); }};
  const auto result = assimilate(log_weights, log_likelihoods, crowd, {});
  EXPECT_GT(result.stages, 1);
  const auto weights = normalised(log_weights);
  double mean = 0;
  double square = 0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    mean += weights[i] * x[i];
    square += weights[i] * x[i] * x[i];
  }
  // Five standard errors of 4,000 draws, doubled because the moves leave them dependent.
  EXPECT_NEAR(mean, 4.8, 10 * std::sqrt(0.2 / members));
  EXPECT_NEAR(square - mean * mean, 0.2, 10 * 0.2 * std::sqrt(2.0 / members));
  EXPECT_NEAR(result.log_evidence, log_normal_density(6, 0, std::sqrt(1.25)), 0.35);
}

}  // namespace
}  // namespace beegarth::belief
