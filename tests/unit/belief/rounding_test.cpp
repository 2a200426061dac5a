// A round figure is an interval about it: sums over everything that can be written, taken figure by figure.
#include "belief/rounding.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

#include "belief/densities.hpp"

namespace beegarth::belief {
namespace {

constexpr Rounding usual{.two_figures = 0.4, .half = 0.2, .one_figure = 0.1};

// The shares of the ways to write, and a draw in the middle of each.
struct Way {
  double share, u;
};
constexpr std::array<Way, 4> ways{{{0.4, 0.2}, {0.2, 0.5}, {0.1, 0.65}, {0.3, 0.85}}};

double width_of(double seen, double offset, double fine) {
  return std::log(seen + fine / 2 + offset) - std::log(seen - fine / 2 + offset);
}

TEST(Rounding, goes_with_the_size_of_what_was_seen) {
  EXPECT_EQ(rounded(23'456, 1, usual, 0.2), 23'000);
  EXPECT_EQ(rounded(23'456, 1, usual, 0.5), 25'000);
  EXPECT_EQ(rounded(23'456, 1, usual, 0.65), 20'000);
  EXPECT_EQ(rounded(23'456, 1, usual, 0.85), 23'456);
  EXPECT_EQ(rounded(96, 1, usual, 0.5), 95);
  EXPECT_EQ(rounded(98, 1, usual, 0.5), 100);
  EXPECT_NEAR(rounded(8.44, 0.1, usual, 0.2), 8.4, 1e-12);
  EXPECT_NEAR(rounded(0.32, 0.1, usual, 0.65), 0.3, 1e-12);
  EXPECT_EQ(rounded(0.02, 0.1, usual, 0.65), 0);
  EXPECT_EQ(rounded(-5, 1, usual, 0.65), 0);
}

TEST(Rounding, of_estimates_leaves_odds_that_add_up) {
  for (const double expected : {0.0, 900.0, 9'700.0, 20'000.0}) {
    constexpr double offset = 400;
    double sum = std::exp(log_rounded_lognormal(0, expected, 0.2, offset, 1, usual));
    for (int seen = 1; seen < 120'000; ++seen)
      sum +=
          std::exp(log_rounded_lognormal(seen, expected, 0.2, offset, 1, usual)) * width_of(seen, offset, 1);
    EXPECT_NEAR(sum, 1, 1e-9) << expected;
  }
  double sum = std::exp(log_rounded_lognormal(0, 9.8, 0.25, 1, 0.1, usual));
  for (int tenths = 1; tenths < 2000; ++tenths) {
    const double seen = tenths / 10.0;
    sum += std::exp(log_rounded_lognormal(seen, 9.8, 0.25, 1, 0.1, usual)) * width_of(seen, 1, 0.1);
  }
  EXPECT_NEAR(sum, 1, 1e-9);
}

TEST(Rounding, to_one_figure_is_an_interval_of_its_width) {
  constexpr Rounding only{.two_figures = 0, .half = 0, .one_figure = 1};
  const auto below = [](double bees) {
    return normal_cdf((std::log(bees + 400) - std::log(22'000.0 + 400)) / 0.2);
  };
  const double odds =
      std::exp(log_rounded_lognormal(20'000, 22'000, 0.2, 400, 1, only)) * width_of(20'000, 400, 1);
  EXPECT_NEAR(odds, below(25'000) - below(15'000), 1e-12);
  // From 15,000 nobody says 21,000, and 10,000 is said of what lies above nine and a half thousand only.
  EXPECT_EQ(log_rounded_lognormal(21'000, 22'000, 0.2, 400, 1, only), minus_infinity);
  const double ten =
      std::exp(log_rounded_lognormal(10'000, 9'000, 0.2, 400, 1, only)) * width_of(10'000, 400, 1);
  const auto under = [](double bees) { return normal_cdf((std::log(bees + 400) - std::log(9'400.0)) / 0.2); };
  EXPECT_NEAR(ten, under(15'000) - under(9'500), 1e-12);
}

// Every count that may have been there, written in every way.
TEST(Rounding, of_counts_is_the_sum_over_what_may_have_been_counted) {
  constexpr double mean = 55;
  constexpr double size = 6;
  std::vector<double> written(4000, 0.0);
  for (int there = 0; there < 2000; ++there) {
    const double odds = std::exp(log_negative_binomial(there, mean, size));
    for (const Way& way : ways)
      written[static_cast<std::size_t>(std::lround(rounded(there, 1, usual, way.u)))] += odds * way.share;
  }
  for (int seen = 0; seen < 400; ++seen) {
    const double expected = written[static_cast<std::size_t>(seen)];
    EXPECT_NEAR(std::exp(log_rounded_count(seen, mean, size, usual)), expected, 1e-12 + 1e-9 * expected)
        << seen;
  }
}

TEST(Rounding, of_so_many_or_more_is_all_that_is_not_fewer) {
  for (const int seen : {1, 20, 200}) {
    double fewer = 0;
    for (int n = 0; n < seen; ++n) fewer += std::exp(log_negative_binomial(n, 150, 6));
    EXPECT_NEAR(std::exp(log_count_at_least(seen, 150, 6)), 1 - fewer, 1e-12) << seen;
  }
  EXPECT_EQ(log_count_at_least(0, 150, 6), 0);
  EXPECT_EQ(log_count_at_least(5, 0, 6), minus_infinity);
}

}  // namespace
}  // namespace beegarth::belief
