#include "base/random.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace beegarth {
namespace {

StreamKey key(std::int32_t day = 0) {
  return {.seed = 7, .colony = 11, .member = 3, .day = day};
}

TEST(Random, the_same_key_gives_the_same_draws) {
  Stream a(key());
  Stream b(key());
  for (int i = 0; i < 100; ++i) EXPECT_EQ(a.word(), b.word());
}

TEST(Random, another_day_or_purpose_gives_other_draws) {
  StreamKey other = key();
  other.purpose = Purpose::event;
  EXPECT_NE(random_words(key(0), 0), random_words(key(1), 0));
  EXPECT_NE(random_words(key(0), 0), random_words(other, 0));
}

struct Moments {
  double mean = 0;
  double variance = 0;
};

template <class Draw>
Moments moments(Draw draw, int n = 200'000) {
  double sum = 0;
  double squares = 0;
  for (int i = 0; i < n; ++i) {
    const double x = draw();
    sum += x;
    squares += x * x;
  }
  const double mean = sum / n;
  return {mean, squares / n - mean * mean};
}

// Tolerance: five standard errors of the mean of 200,000 draws.
void expect_moments(const Moments& seen, double mean, double variance) {
  const double five_errors = 5 * std::sqrt(variance / 200'000);
  EXPECT_NEAR(seen.mean, mean, five_errors);
  EXPECT_NEAR(seen.variance / variance, 1.0, 0.05);
}

TEST(Random, draws_have_the_moments_of_their_distributions) {
  Stream s(key());
  expect_moments(moments([&] { return s.uniform(); }), 0.5, 1.0 / 12);
  expect_moments(moments([&] { return s.normal(); }), 0, 1);
  expect_moments(moments([&] { return s.gamma(0.4); }), 0.4, 0.4);
  expect_moments(moments([&] { return s.gamma(6); }), 6, 6);
  expect_moments(moments([&] { return s.beta(2, 5); }), 2.0 / 7, 10.0 / (49 * 8));
  expect_moments(moments([&] { return s.poisson(3.2); }), 3.2, 3.2);
  expect_moments(moments([&] { return s.poisson(140); }), 140, 140);
  expect_moments(moments([&] { return s.binomial(300, 0.03); }), 9, 300 * 0.03 * 0.97);
}

}  // namespace
}  // namespace beegarth
