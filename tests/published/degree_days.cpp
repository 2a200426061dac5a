// Degree days against other people's figures; what only repeats our equations is named arithmetic.
#include "almanac/degree_days.hpp"

#include <gtest/gtest.h>

namespace beegarth::almanac {
namespace {

double fahrenheit(double f) {
  return (f - 32) / 1.8;
}

// Unit test of a public degree-day package: minimum 34 F, maximum 60 F, base 50 F, single sine: 2.749 F-days.
TEST(PublishedDegreeDays, single_sine_of_a_cool_day_is_what_a_public_package_gives) {
  const DegreeDayRule rule{.base_C = fahrenheit(50), .method = DegreeDayMethod::sine};
  EXPECT_NEAR(degree_days(fahrenheit(34), fahrenheit(60), rule), 2.749 / 1.8, 5e-4);
}

// Extension note on citrus: a day with a mean of 64 F and a base of 53 F has 11 degree days (F).
TEST(PublishedDegreeDays, simple_average_of_the_extension_note) {
  const DegreeDayRule rule{.base_C = fahrenheit(53), .method = DegreeDayMethod::mean};
  EXPECT_NEAR(degree_days(fahrenheit(54), fahrenheit(74), rule), 11 / 1.8, 1e-9);
}

struct Case {
  double min_C, max_C, base_C, upper_C;  // upper_C 0: none
  double sine, triangle;
};

// Worked by hand and by a second program from the same equations (Baskerville & Emin 1969; triangle from an
// extension page), so these are arithmetic, not agreement with the world. Printed to four places.
TEST(ArithmeticDegreeDays, sine_and_triangle_with_a_horizontal_cutoff) {
  for (const Case& c : {Case{5, 20, 10, 30, 3.7712, 3.3333}, Case{-2, 12, 5, 0, 2.2282, 1.75},
                        Case{4, 16, 10, 0, 1.9099, 1.5}, Case{7, 14, 12, 33, 0.4681, 0.2857},
                        Case{14, 26, 12, 0, 8, 8}, Case{5, 35, 10, 30, 10, 10},
                        Case{12, 35, 10, 30, 12.4874, 12.9565}, Case{8, 38, 10, 32, 12.0574, 12.4667}}) {
    DegreeDayRule rule{.base_C = c.base_C};
    if (c.upper_C > 0) rule.upper_C = c.upper_C;
    EXPECT_NEAR(degree_days(c.min_C, c.max_C, rule), c.sine, 1e-4) << c.min_C << ".." << c.max_C;
    rule.method = DegreeDayMethod::triangle;
    EXPECT_NEAR(degree_days(c.min_C, c.max_C, rule), c.triangle, 1e-4) << c.min_C << ".." << c.max_C;
  }
}

TEST(ArithmeticDegreeDays, triangle_of_the_cool_day) {
  const DegreeDayRule rule{.base_C = fahrenheit(50), .method = DegreeDayMethod::triangle};
  EXPECT_NEAR(degree_days(fahrenheit(34), fahrenheit(60), rule), 1.06838, 1e-5);
}

}  // namespace
}  // namespace beegarth::almanac
