// The length of the day by the CBM model, against other people's figures.
#include <gtest/gtest.h>

#include "almanac/sun.hpp"

namespace beegarth::almanac {
namespace {

// Two public implementations after Forsythe et al. 1995, Ecological Modelling 80:87; read to three places.
TEST(PublishedDaylength, is_that_of_public_implementations_of_the_cbm_model) {
  EXPECT_NEAR(daylength_h(52.5, 172), 16.833, 0.002);
  EXPECT_NEAR(daylength_h(35, 355, 0), 9.643, 0.002);
  EXPECT_EQ(daylength_h(70, 172), 24);
  EXPECT_EQ(daylength_h(-70, 172), 0);
}

// Against an independent ephemeris (astropy 5.2.1; 52.5 N, 1.9 W, 2021). The model knows the day of the year
// and not the hour, so it is off by up to most of a day's change near the equinox, where days grow by 0.066
// h; 0.02 h is the difference found when that table was made.
TEST(PublishedDaylength, is_close_to_an_independent_ephemeris) {
  EXPECT_NEAR(daylength_h(52.5, 172), 16.832, 0.02);
  EXPECT_NEAR(daylength_h(52.5, 355), 7.654, 0.02);
  EXPECT_NEAR(daylength_h(52.5, 80), 12.187, 0.02);
}

struct Row {
  double latitude_deg;
  double hours[5];  // days 1, 80, 172, 266, 355
};

// The same equation worked by a second program: arithmetic. Printed to three places.
TEST(ArithmeticDaylength, through_the_year_with_refraction_and_rim) {
  const int days[5] = {1, 80, 172, 266, 355};
  for (const Row& row :
       {Row{0, {12.121, 12.111, 12.121, 12.111, 12.121}}, Row{35, {9.840, 12.128, 14.513, 12.159, 9.798}},
        Row{43.3, {9.025, 12.142, 15.400, 12.185, 8.966}}, Row{52.5, {7.740, 12.168, 16.833, 12.227, 7.651}},
        Row{57.5, {6.702, 12.190, 18.034, 12.260, 6.583}}}) {
    for (int i = 0; i < 5; ++i) {
      EXPECT_NEAR(daylength_h(row.latitude_deg, days[i]), row.hours[i], 0.0006)
          << row.latitude_deg << " day " << days[i];
    }
  }
}

}  // namespace
}  // namespace beegarth::almanac
