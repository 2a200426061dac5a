// The same filter code on a model whose answer is known exactly: annual flow of the Nile at Aswan 1871-1970
// as a local level with noise. Data: Durbin & Koopman 2012, "Time Series Analysis by State Space Methods";
// also R's `Nile`. Exact values: Kalman recursion in R 4.2.2 with Q = 1469.1, H = 15099 (Durbin & Koopman,
// ch. 2), first level N(1000, 1e5), all 100 observations.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

#include "base/random.hpp"
#include "belief/densities.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

constexpr double exact_log_likelihood = -639.300723814172;
constexpr double exact_mean_28 = 1133.12458386127;
constexpr double exact_mean_100 = 798.370292608364;
constexpr double exact_variance_100 = 4032.15794180848;
constexpr double exact_log_likelihood_with_gaps = -387.341789305553;  // observations 21-40 and 61-80 missing

constexpr std::array<double, 100> flow{
    1120, 1160, 963,  1210, 1160, 1160, 813,  1230, 1370, 1140, 995,  935,  1110, 994, 1020, 960,  1180,
    799,  958,  1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774,  840,  874, 694,  940,  833,
    701,  916,  692,  1020, 1050, 969,  831,  726,  456,  824,  702,  1120, 1100, 832, 764,  821,  768,
    845,  864,  862,  698,  845,  744,  796,  1040, 759,  781,  865,  845,  944,  984, 897,  822,  1010,
    771,  676,  649,  846,  812,  742,  801,  1040, 860,  874,  848,  890,  744,  749, 838,  1050, 918,
    986,  797,  923,  975,  815,  1020, 906,  901,  1170, 912,  746,  919,  718,  714, 740};

struct Run {
  double log_likelihood = 0;
  double mean_28 = 0;
  double mean_100 = 0;
  double variance_100 = 0;
};

bool missing(int year) {
  return (year >= 21 && year <= 40) || (year >= 61 && year <= 80);
}

Run bootstrap_filter(int members, std::uint64_t seed, bool gaps) {
  const auto n = static_cast<std::size_t>(members);
  std::vector<double> level(n);
  std::vector<double> log_weights(n, -std::log(members));
  std::vector<double> log_likelihoods(n);
  Stream noise({.seed = seed});
  for (double& a : level) a = 1000 + std::sqrt(1e5) * noise.normal();
  const Crowd crowd{[&](std::span<const int> ancestors) {
                      std::vector<double> next(n);
                      for (std::size_t i = 0; i < n; ++i)
                        next[i] = level[static_cast<std::size_t>(ancestors[i])];
                      level = next;
                    },
                    [&](double) { return std::vector<double>(n); }, [&] { return noise.uniform(); }};
  Run run;
  for (int year = 1; year <= 100; ++year) {
    if (year > 1) {
      for (double& a : level) a += std::sqrt(1469.1) * noise.normal();
    }
    if (!gaps || !missing(year)) {
      const double seen = flow.at(static_cast<std::size_t>(year - 1));
      for (std::size_t i = 0; i < n; ++i)
        log_likelihoods[i] = log_normal_density(seen, level[i], std::sqrt(15099.0));
      // One stage only: the plain bootstrap filter, whose likelihood estimate is unbiased.
      run.log_likelihood += assimilate(log_weights, log_likelihoods, crowd, {.stages_max = 1}).log_evidence;
    }
    const auto weights = normalised(log_weights);
    double mean = 0;
    double square = 0;
    for (std::size_t i = 0; i < n; ++i) {
      mean += weights[i] * level[i];
      square += weights[i] * level[i] * level[i];
    }
    if (year == 28) run.mean_28 = mean;
    if (year == 100) {
      run.mean_100 = mean;
      run.variance_100 = square - mean * mean;
    }
  }
  return run;
}

struct Spread {
  double mean = 0;
  double variance = 0;
};
Spread spread(const std::vector<double>& x) {
  Spread s;
  for (const double v : x) s.mean += v / static_cast<double>(x.size());
  for (const double v : x) s.variance += (v - s.mean) * (v - s.mean) / static_cast<double>(x.size() - 1);
  return s;
}

void expect_within_four_errors(const std::vector<double>& x, double exact) {
  const Spread s = spread(x);
  EXPECT_NEAR(s.mean, exact, 4 * std::sqrt(s.variance / static_cast<double>(x.size())));
}

TEST(ParticleFilter, likelihood_of_the_nile_is_unbiased_and_its_filtered_level_is_right) {
  std::vector<double> ratio;
  std::vector<double> mean_28;
  std::vector<double> mean_100;
  std::vector<double> variance_100;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const auto run = bootstrap_filter(1000, seed, false);
    ratio.push_back(std::exp(run.log_likelihood - exact_log_likelihood));
    mean_28.push_back(run.mean_28);
    mean_100.push_back(run.mean_100);
    variance_100.push_back(run.variance_100);
  }
  expect_within_four_errors(ratio, 1.0);
  expect_within_four_errors(mean_28, exact_mean_28);
  expect_within_four_errors(mean_100, exact_mean_100);
  expect_within_four_errors(variance_100, exact_variance_100);
}

TEST(ParticleFilter, years_without_an_observation_only_widen) {
  std::vector<double> ratio;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    ratio.push_back(
        std::exp(bootstrap_filter(1000, seed, true).log_likelihood - exact_log_likelihood_with_gaps));
  }
  expect_within_four_errors(ratio, 1.0);
}

// The variance of the log likelihood falls as one over the number of members (Del Moral 2004).
TEST(ParticleFilter, variance_falls_as_one_over_the_members) {
  const auto variance = [](int members) {
    std::vector<double> logs;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
      logs.push_back(bootstrap_filter(members, seed, false).log_likelihood);
    }
    return spread(logs).variance;
  };
  // The ratio of two variances of 60 draws lies within a factor 2.4 of its value 16 at 99.9 % (F
  // distribution).
  const double ratio = variance(250) / variance(4000);
  EXPECT_GT(ratio, 16 / 2.4);
  EXPECT_LT(ratio, 16 * 2.4);
}

}  // namespace
}  // namespace beegarth::belief
