#include <gtest/gtest.h>

#include <algorithm>

#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

const Tables& tables() {
  static const Tables built_in = *Tables::built_in();
  return built_in;
}

Json answer(std::string_view calc, std::string_view input) {
  const auto result = run_calc(calc, input, tables());
  if (result) return *result;
  ADD_FAILURE() << one_line(result.problem());
  return {};
}

// The path that a refusal names; empty where nothing was refused.
std::string refused_at(std::string_view calc, std::string_view input) {
  const auto result = run_calc(calc, input, tables());
  if (result) return {};
  EXPECT_EQ(result.problem().kind, ProblemKind::bad_input);
  return result.problem().where;
}

// Tolerances here are those of tests/published, where the sources stand.
TEST(SunPositionCalc, answers_the_worked_example_under_the_agreed_names) {
  const Json sun = answer("sun-position",
                          R"({"latitude_deg": 39.742476, "longitude_deg": -105.1786, "elevation_m": 1830.14,
      "pressure_hPa": 820, "temperature_C": 11, "delta_t_s": 67,
      "times": ["2003-10-17T12:30:30-07:00", "2003-10-17T19:30:30Z"]})")["positions"];
  ASSERT_EQ(sun.size(), 2U);
  EXPECT_EQ(sun[0]["time"], "2003-10-17T12:30:30-07:00");
  EXPECT_NEAR(sun[0]["azimuth_deg"].get<double>(), 194.340241, 5e-4);
  EXPECT_NEAR(sun[0]["zenith_deg"].get<double>(), 50.11162, 5e-4);
  EXPECT_NEAR(sun[0]["elevation_deg"].get<double>(), 39.888378, 5e-4);
  EXPECT_NEAR(sun[0]["elevation_airless_deg"].get<double>(), 39.872046, 5e-4);
  EXPECT_EQ(sun[0].size(), 5U);
  EXPECT_EQ(sun[0]["azimuth_deg"], sun[1]["azimuth_deg"]) << "one instant, written in two zones";
}

TEST(SunPositionCalc, takes_sea_level_and_usual_air_where_nothing_is_said) {
  const char* bare = R"({"latitude_deg": 52.5, "longitude_deg": -1.9, "times": ["2021-03-20T08:00:00Z"]})";
  const char* full = R"({"latitude_deg": 52.5, "longitude_deg": -1.9, "elevation_m": 0, "pressure_hPa": 1010,
      "temperature_C": 10, "delta_t_s": 69, "times": ["2021-03-20T08:00:00Z"]})";
  EXPECT_EQ(answer("sun-position", bare), answer("sun-position", full));
}

TEST(SunPositionCalc, refuses_what_it_cannot_know) {
  const auto at = [](const char* rest) {
    return refused_at("sun-position",
                      std::string(R"({"latitude_deg": 52.5, "longitude_deg": -1.9)") + rest + "}");
  };
  EXPECT_EQ(at(""), "$.times");
  EXPECT_EQ(at(R"(, "times": [])"), "$.times");
  EXPECT_EQ(at(R"(, "times": ["2021-03-20T08:00:00Z", "2021-03-20T08:00:00"])"), "$.times[1]") << "no zone";
  EXPECT_EQ(at(R"(, "times": ["2021-02-29T08:00:00Z"])"), "$.times[0]") << "no such day";
  EXPECT_EQ(at(R"(, "times": [1616227200])"), "$.times[0]");
  EXPECT_EQ(at(R"(, "times": ["1700-03-20T08:00:00Z"])"), "$.times[0]") << "before the ephemeris";
  EXPECT_EQ(at(R"(, "times": ["2021-03-20T08:00:00Z"], "pressure_hPa": 0)"), "$.pressure_hPa");
  EXPECT_EQ(at(R"(, "times": ["2021-03-20T08:00:00Z"], "temperature_C": -273)"), "$.temperature_C");
  EXPECT_EQ(at(R"(, "times": ["2021-03-20T08:00:00Z"], "elevation": 5)"), "$.elevation") << "unknown field";
  EXPECT_EQ(refused_at("sun-position",
                       R"({"latitude_deg": 90.1, "longitude_deg": 0, "times": ["2021-03-20T08:00:00Z"]})"),
            "$.latitude_deg");
}

TEST(SunTimesCalc, gives_whole_seconds_with_the_offset_asked_for) {
  const Json south =
      answer("sun-times",
             R"({"latitude_deg": -35, "longitude_deg": 138.6, "date": "2022-12-22", "utc_offset_h": 10.5})");
  EXPECT_EQ(south["sunrise"].get<std::string>().size(), std::string("2022-12-22T05:58:00+10:30").size());
  EXPECT_EQ(south["sunrise"].get<std::string>().substr(0, 16), "2022-12-22T05:58");
  EXPECT_EQ(south["sunset"].get<std::string>().substr(19), "+10:30");
  EXPECT_FALSE(south.contains("polar"));
}

TEST(SunTimesCalc, says_polar_day_and_night_with_both_times_null) {
  const Json summer = answer(
      "sun-times", R"({"latitude_deg": 70, "longitude_deg": 25, "date": "2026-06-21", "utc_offset_h": 2})");
  EXPECT_EQ(summer,
            (Json{{"sunrise", nullptr}, {"sunset", nullptr}, {"daylength_h", 24.0}, {"polar", "day"}}));
  const Json winter = answer(
      "sun-times", R"({"latitude_deg": 70, "longitude_deg": 25, "date": "2026-12-21", "utc_offset_h": 1})");
  EXPECT_EQ(winter,
            (Json{{"sunrise", nullptr}, {"sunset", nullptr}, {"daylength_h", 0.0}, {"polar", "night"}}));
}

TEST(SunTimesCalc, refuses_dates_and_offsets_that_do_not_exist) {
  const auto at = [](const char* date, const char* offset) {
    return refused_at("sun-times", std::string(R"({"latitude_deg": 52, "longitude_deg": 0, "date": ")") +
                                       date + R"(", "utc_offset_h": )" + offset + "}");
  };
  EXPECT_EQ(at("2026-06-21", "0"), "");
  EXPECT_EQ(at("2026-06-31", "0"), "$.date");
  EXPECT_EQ(at("21/06/2026", "0"), "$.date");
  EXPECT_EQ(at("1850-06-21", "0"), "$.date");
  EXPECT_EQ(at("2026-06-21", "14.5"), "$.utc_offset_h");
  EXPECT_EQ(at("2026-06-21", "0.333"), "$.utc_offset_h");
  EXPECT_EQ(at("2026-06-21", "\"1\""), "$.utc_offset_h");
  EXPECT_EQ(refused_at("sun-times", R"({"latitude_deg": 52, "longitude_deg": 0, "date": "2026-06-21"})"),
            "$.utc_offset_h");
}

TEST(DaylengthCalc, takes_a_date_for_its_day_of_the_year) {
  EXPECT_EQ(answer("daylength", R"({"latitude_deg": 52.5, "date": "2024-12-20"})"),
            answer("daylength", R"({"latitude_deg": 52.5, "day_of_year": 355})"));
  EXPECT_NEAR(answer("daylength", R"({"latitude_deg": 52.5, "day_of_year": 172})")["hours"].get<double>(),
              16.833, 0.002);
  EXPECT_NEAR(answer("daylength", R"({"latitude_deg": 35, "day_of_year": 355, "horizon_deg": 0})")["hours"]
                  .get<double>(),
              9.643, 0.002);
}

TEST(DaylengthCalc, refuses_a_day_given_twice_or_not_at_all) {
  EXPECT_EQ(refused_at("daylength", R"({"latitude_deg": 52.5, "day_of_year": 172, "date": "2026-06-21"})"),
            "$.date");
  EXPECT_EQ(refused_at("daylength", R"({"latitude_deg": 52.5})"), "$.day_of_year");
  EXPECT_EQ(refused_at("daylength", R"({"latitude_deg": 52.5, "day_of_year": 367})"), "$.day_of_year");
  EXPECT_EQ(refused_at("daylength", R"({"latitude_deg": 52.5, "day_of_year": 1.5})"), "$.day_of_year");
  EXPECT_EQ(refused_at("daylength", R"({"latitude_deg": 52.5, "day_of_year": 1, "horizon_deg": 19})"),
            "$.horizon_deg");
}

TEST(DegreeDaysCalc, counts_each_day_and_adds_them_up) {
  const Json sum =
      answer("degree-days", R"({"days": [{"min_C": 5, "max_C": 35}, {"min_C": 12, "max_C": 35}], "base_C": 10,
      "upper_C": 30, "method": "triangle", "cutoff": "horizontal"})");
  ASSERT_EQ(sum["per_day"].size(), 2U);
  EXPECT_NEAR(sum["per_day"][0].get<double>(), 10, 1e-4);
  EXPECT_NEAR(sum["per_day"][1].get<double>(), 12.9565, 1e-4);
  EXPECT_DOUBLE_EQ(sum["total"].get<double>(),
                   sum["per_day"][0].get<double>() + sum["per_day"][1].get<double>());
}

TEST(DegreeDaysCalc, holds_a_hot_day_at_the_upper_base_unless_told_otherwise) {
  const auto hot = [](const char* cutoff) {
    return answer("degree-days",
                  std::string(R"({"days": [{"min_C": 31, "max_C": 40}], "base_C": 10, "upper_C": 30,
        "method": "sine")") +
                      cutoff + "}")["total"]
        .get<double>();
  };
  EXPECT_DOUBLE_EQ(hot(""), 20);
  EXPECT_DOUBLE_EQ(hot(R"(, "cutoff": "horizontal")"), 20);
  EXPECT_DOUBLE_EQ(hot(R"(, "cutoff": "vertical")"), 0);
}

TEST(DegreeDaysCalc, refuses_days_and_limits_that_are_upside_down) {
  const auto at = [](const char* fields) {
    return refused_at("degree-days", std::string("{") + fields + "}");
  };
  EXPECT_EQ(
      at(R"("days": [{"min_C": 1, "max_C": 2}, {"min_C": 9, "max_C": 2}], "base_C": 5, "method": "sine")"),
      "$.days[1].min_C");
  EXPECT_EQ(at(R"("days": [{"min_C": 1}], "base_C": 5, "method": "sine")"), "$.days[0].max_C");
  EXPECT_EQ(at(R"("days": [{"min_C": 1, "max_C": 99}], "base_C": 5, "method": "sine")"), "$.days[0].max_C");
  EXPECT_EQ(at(R"("days": [{"min_C": 1, "max_C": 2, "mean_C": 1}], "base_C": 5, "method": "sine")"),
            "$.days[0].mean_C");
  EXPECT_EQ(at(R"("days": [{"min_C": 1, "max_C": 2}], "base_C": 5, "upper_C": 5, "method": "sine")"),
            "$.upper_C");
  EXPECT_EQ(at(R"("days": [{"min_C": 1, "max_C": 2}], "base_C": 5, "method": "average")"), "$.method");
  EXPECT_EQ(at(R"("days": [{"min_C": 1, "max_C": 2}], "base_C": 5)"), "$.method");
  EXPECT_EQ(at(R"("days": [{"min_C": 1, "max_C": 2}], "base_C": 5, "method": "sine", "cutoff": "vertical")"),
            "$.cutoff");
  EXPECT_EQ(at(R"("days": [], "base_C": 5, "method": "sine")"), "$.days");
}

TEST(AlmanacCalcs, answer_their_own_examples) {
  for (const std::string_view name : {"sun-position", "sun-times", "daylength", "degree-days"}) {
    const auto calcs = all_calcs();
    const auto found =
        std::find_if(calcs.begin(), calcs.end(), [&](const Calc& calc) { return calc.name == name; });
    ASSERT_NE(found, calcs.end()) << name;
    const Json output = answer(name, found->example().dump());
    const Json schema = found->output_schema();
    for (const auto& field : schema["required"]) {
      EXPECT_TRUE(output.contains(field.get<std::string>())) << name << " " << field;
    }
  }
}

}  // namespace
}  // namespace beegarth::garth
