#include "almanac/degree_days.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace beegarth::almanac {
namespace {

constexpr DegreeDayMethod all_methods[] = {DegreeDayMethod::sine, DegreeDayMethod::triangle,
                                           DegreeDayMethod::mean};
constexpr UpperCutoff all_cutoffs[] = {UpperCutoff::horizontal, UpperCutoff::vertical};

TEST(DegreeDays, are_none_below_the_base_and_the_plain_difference_above_it) {
  for (const auto method : all_methods) {
    EXPECT_EQ(degree_days(-3, 5, {.base_C = 5, .method = method}), 0);
    EXPECT_DOUBLE_EQ(degree_days(8, 12, {.base_C = 5, .method = method}), 5);
    EXPECT_DOUBLE_EQ(degree_days(9, 9, {.base_C = 5, .method = method}), 4);
  }
}

// The definition itself, added up minute by minute: the slow and obvious way.
double minute_by_minute(double min_C, double max_C, const DegreeDayRule& rule) {
  constexpr int steps = 200'000;
  double sum = 0;
  for (int i = 0; i < steps; ++i) {
    const double phase = (i + 0.5) / steps;
    const double wave = rule.method == DegreeDayMethod::sine ? std::sin(2 * std::numbers::pi * phase)
                                                             : 1 - 4 * std::abs(phase - 0.5);
    const double now = (min_C + max_C) / 2 + (max_C - min_C) / 2 * wave;
    if (now > rule.upper_C && rule.cutoff == UpperCutoff::vertical) continue;
    sum += std::max(0.0, std::min(now, *rule.upper_C) - rule.base_C);
  }
  return sum / steps;
}

TEST(DegreeDays, agree_with_the_definition_added_up_minute_by_minute) {
  for (const auto method : {DegreeDayMethod::sine, DegreeDayMethod::triangle}) {
    for (const auto cutoff : all_cutoffs) {
      const DegreeDayRule rule{.base_C = 10, .upper_C = 30, .method = method, .cutoff = cutoff};
      for (const auto& [low, high] :
           {std::pair{5.0, 35.0}, {12.0, 35.0}, {5.0, 20.0}, {31.0, 40.0}, {0.0, 9.0}, {28.0, 32.0}}) {
        EXPECT_NEAR(degree_days(low, high, rule), minute_by_minute(low, high, rule), 2e-4)
            << low << ".." << high;
      }
    }
  }
}

TEST(DegreeDays, count_nothing_with_a_vertical_cutoff_when_all_of_the_day_is_too_hot) {
  for (const auto method : all_methods) {
    const DegreeDayRule rule{.base_C = 10, .upper_C = 30, .method = method, .cutoff = UpperCutoff::vertical};
    EXPECT_EQ(degree_days(31, 40, rule), 0);
  }
}

TEST(DegreeDays, never_fall_as_the_day_warms_when_held_at_the_upper_base) {
  for (const auto method : all_methods) {
    const DegreeDayRule rule{.base_C = 10, .upper_C = 30, .method = method};
    double before = 0;
    for (int tenth = 0; tenth < 400; ++tenth) {
      const double now = degree_days(tenth * 0.1, tenth * 0.1 + 9, rule);
      EXPECT_GE(now, before - 1e-12);
      EXPECT_LE(now, 20 + 1e-12);
      before = now;
    }
  }
}

}  // namespace
}  // namespace beegarth::almanac
