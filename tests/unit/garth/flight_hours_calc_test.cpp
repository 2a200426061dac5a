#include <gtest/gtest.h>

#include "calc_answers.hpp"

namespace beegarth::garth {
namespace {

using testing::answer;
using testing::refuses;

Json hour(const char* time, double temperature_C, double rain_mm, double wind_m_s) {
  return {{"time", time}, {"temperature_C", temperature_C}, {"rain_mm", rain_mm}, {"wind_m_s", wind_m_s}};
}
Json on_chalk(Json hours) {
  return {{"latitude_deg", 51.3}, {"longitude_deg", -1.5}, {"hours", std::move(hours)}};
}

TEST(FlightHoursCalc, names_what_limits_each_hour_under_the_agreed_names) {
  const Json out = answer(
      "flight-hours",
      on_chalk({hour("2026-06-05T06:00:00+01:00", 9, 0, 1), hour("2026-06-05T12:00:00+01:00", 22, 0, 1),
                hour("2026-06-05T13:00:00+01:00", 22, 1.2, 1), hour("2026-06-05T14:00:00+01:00", 22, 0, 12),
                hour("2026-06-05T15:00:00+01:00", 43, 0, 1), hour("2026-06-05T23:00:00+01:00", 22, 0, 1)}));
  const Json& hours = out["per_hour"];
  ASSERT_EQ(hours.size(), 6U);
  const char* limits[] = {"cold", "none", "rain", "wind", "hot", "dark"};
  for (std::size_t i = 0; i < 6; ++i) {
    EXPECT_EQ(hours[i]["flight_limit"], limits[i]);
    EXPECT_EQ(hours[i]["opening_limit"], limits[i]);
    EXPECT_EQ(hours[i]["opening"], i == 1);
    EXPECT_EQ(hours[i].size(), 5U);
  }
  EXPECT_EQ(hours[1]["flight"], 1);
  EXPECT_EQ(hours[0]["time"], "2026-06-05T06:00:00+01:00");
  EXPECT_EQ(out["flight_hours"], 1);
  EXPECT_EQ(out["opening_hours"], 1);
  EXPECT_EQ(out.size(), 3U);
}

TEST(FlightHoursCalc, counts_one_instant_alike_in_any_zone) {
  const Json home =
      answer("flight-hours", on_chalk(Json::array({hour("2026-06-05T20:30:00+01:00", 17, 0, 2)})));
  const Json utc = answer("flight-hours", on_chalk(Json::array({hour("2026-06-05T19:30:00Z", 17, 0, 2)})));
  EXPECT_EQ(home["flight_hours"], utc["flight_hours"]);
}

TEST(FlightHoursCalc, lets_dull_light_slow_flight_and_not_the_keeper) {
  Json dull = hour("2026-06-05T12:00:00+01:00", 22, 0, 1);
  dull["radiation_W_m2"] = 46;
  const Json out = answer("flight-hours", on_chalk(Json::array({dull})))["per_hour"][0];
  EXPECT_NEAR(out["flight"].get<double>(), 0.1, 1e-12);
  EXPECT_EQ(out["flight_limit"], "dull");
  EXPECT_EQ(out["opening"], true);
}

TEST(FlightHoursCalc, refuses_what_it_cannot_know) {
  EXPECT_TRUE(refuses("flight-hours", {{"latitude_deg", 51.3}, {"longitude_deg", -1.5}}));
  EXPECT_TRUE(refuses("flight-hours", on_chalk(Json::array({hour("2026-06-05 12:00", 22, 0, 1)}))));
  EXPECT_TRUE(refuses("flight-hours", on_chalk(Json::array({hour("2026-06-05T12:00:00Z", 22, -1, 1)}))));
  EXPECT_TRUE(refuses("flight-hours", on_chalk(Json::array({hour("2026-06-05T12:00:00Z", 99, 0, 1)}))));
  Json unknown = hour("2026-06-05T12:00:00Z", 22, 0, 1);
  unknown["wind_kmh"] = 3;
  EXPECT_TRUE(refuses("flight-hours", on_chalk(Json::array({unknown}))));
  Json north = on_chalk(Json::array({hour("2026-06-05T12:00:00Z", 22, 0, 1)}));
  north["latitude_deg"] = 91;
  EXPECT_TRUE(refuses("flight-hours", north));
}

}  // namespace
}  // namespace beegarth::garth
