#include "belief/densities.hpp"

#include <gtest/gtest.h>

#include <boost/math/distributions/negative_binomial.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/special_functions/beta.hpp>
#include <boost/math/special_functions/binomial.hpp>
#include <cmath>

namespace beegarth::belief {
namespace {

TEST(NegativeBinomial, agrees_with_boost) {
  for (const double mean : {0.4, 3.0, 40.0}) {
    for (const double k : {0.8, 4.0}) {
      const boost::math::negative_binomial_distribution<> exact(k, k / (k + mean));
      for (const int count : {0, 1, 7, 55}) {
        EXPECT_NEAR(log_negative_binomial(count, mean, k), std::log(boost::math::pdf(exact, count)), 1e-9);
      }
    }
  }
}

// P0 = (1 + m/k)^-k: m = 3, k = 1 -> 0.25; m = 9, k = 1 -> 0.10 (closed form).
TEST(NegativeBinomial, zero_class_is_the_closed_form) {
  EXPECT_NEAR(std::exp(log_negative_binomial(0, 3, 1)), 0.25, 1e-12);
  EXPECT_NEAR(std::exp(log_negative_binomial(0, 9, 1)), 0.10, 1e-12);
  EXPECT_EQ(log_negative_binomial(0, 0, 1), 0.0);
  EXPECT_TRUE(std::isinf(log_negative_binomial(2, 0, 1)));
}

TEST(BetaBinomial, agrees_with_boost_and_sums_to_one) {
  const double p = 0.12;
  const double rho = 0.05;
  const double a = p * (1 / rho - 1);
  const double b = (1 - p) * (1 / rho - 1);
  double sum = 0;
  for (int hits = 0; hits <= 50; ++hits) {
    const double exact = boost::math::binomial_coefficient<double>(50, static_cast<unsigned>(hits)) *
                         boost::math::beta(hits + a, 50 - hits + b) / boost::math::beta(a, b);
    EXPECT_NEAR(log_beta_binomial(hits, 50, p, rho), std::log(exact), 1e-9);
    sum += std::exp(log_beta_binomial(hits, 50, p, rho));
  }
  EXPECT_NEAR(sum, 1.0, 1e-9);
  EXPECT_TRUE(std::isinf(log_beta_binomial(51, 50, p, rho)));
}

// (1-p)^n, n = 100, p = 1 % -> 36.6 % of samples without a mite; n = 300 -> 4.9 %: the limit of small
// correlation.
TEST(BetaBinomial, without_correlation_is_the_plain_chance_of_no_mite) {
  EXPECT_NEAR(std::exp(log_beta_binomial(0, 100, 0.01, 1e-7)), 0.366, 0.0005);
  EXPECT_NEAR(std::exp(log_beta_binomial(0, 300, 0.01, 1e-7)), 0.049, 0.0005);
}

TEST(Estimates, said_in_half_combs_are_intervals_that_share_out_all_odds) {
  double sum = 0;
  for (int i = 0; i <= 400; ++i) sum += std::exp(log_grained_lognormal(0.5 * i, 6.2, 0.2, 0.3, 0.25));
  EXPECT_NEAR(sum, 1.0, 1e-6);
  const boost::math::normal_distribution<> standard;
  const double low = (std::log(5.75 + 0.3) - std::log(6.5)) / 0.2;
  const double high = (std::log(6.25 + 0.3) - std::log(6.5)) / 0.2;
  EXPECT_NEAR(log_grained_lognormal(6, 6.2, 0.2, 0.3, 0.25),
              std::log(boost::math::cdf(standard, high) - boost::math::cdf(standard, low)), 1e-9);
}

TEST(Estimates, far_from_the_truth_are_unlikely_but_not_nonsense) {
  const double far = log_grained_lognormal(20, 1, 0.2, 0.3, 0.25);
  EXPECT_FALSE(std::isnan(far));
  EXPECT_LT(far, -50);
  EXPECT_FALSE(std::isnan(log_grained_lognormal(0, 20, 0.2, 0.3, 0.25)));
  EXPECT_FALSE(std::isnan(log_offset_lognormal(0, 0, 0.2, 0.3)));
}

TEST(Mix, of_a_mistake_once_in_a_while) {
  EXPECT_NEAR(log_mix(std::log(0.5), std::log(0.1), 0.02), std::log(0.98 * 0.5 + 0.02 * 0.1), 1e-12);
  EXPECT_NEAR(log_mix(-INFINITY, std::log(0.1), 0.02), std::log(0.002), 1e-12);
}

}  // namespace
}  // namespace beegarth::belief
