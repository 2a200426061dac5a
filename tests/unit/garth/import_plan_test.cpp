#include "garth/imports/import_plan.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace beegarth::garth {
namespace {

std::string with(std::string_view fields, std::string_view kind = "inspection", std::string_view more = "") {
  return "missing = [\"NA\"]\n[date]\ncolumn = \"date\"\n[[entry]]\nkind = \"" + std::string(kind) + "\"\n" +
         std::string(more) + "[entry.fields]\n" + std::string(fields);
}

std::string refusal(std::string_view csv, const std::string& map) {
  const auto plan = plan_import(csv, "f.csv", map, "m.toml");
  if (!plan) return one_line(plan.problem());
  EXPECT_EQ(plan->ready(), plan->problems.empty());
  if (!plan->ready()) {
    EXPECT_TRUE(plan->drafts.empty());
  }
  return plan->ready() ? "" : one_line(plan->problems.front());
}

ImportPlan planned(std::string_view csv, const std::string& map) {
  auto plan = plan_import(csv, "f.csv", map, "m.toml");
  EXPECT_TRUE(plan) << one_line(plan.problem());
  if (!plan) return {};
  for (const Problem& problem : plan->problems) ADD_FAILURE() << one_line(problem);
  return *std::move(plan);
}

const std::string look = "colony = \"a\"\nlook = \"full\"\n";

TEST(ImportRefuses, a_unit_that_the_field_cannot_have) {
  EXPECT_EQ(
      refusal("date,t\n",
              with("site = \"all\"\ntemperature_max_C = { column = \"t\", unit = \"lb\" }\n", "weather")),
      "m.toml:8: temperature_max_C cannot be given in 'lb'; use one of C, F, K");
}

TEST(ImportRefuses, an_impossible_date) {
  EXPECT_EQ(refusal("date,bees\n2026-02-30,5\n", with(look + "bees = { column = \"bees\" }\n")),
            "f.csv:2, column 'date': there is no day '2026-02-30'; mend the cell");
  EXPECT_EQ(
      refusal("date,bees\n30 May,5\n", with(look + "bees = { column = \"bees\" }\n")),
      "f.csv:2, column 'date': '30 May' is no date like %Y-%m-%d; mend the cell or the format in the map");
}

TEST(ImportRefuses, negative_bees_with_line_and_column) {
  EXPECT_EQ(refusal("date,adults\n2026-05-01,900\n2026-05-02,-3\n",
                    with(look + "bees = { column = \"adults\" }\n")),
            "f.csv:3, column 'adults': bees is -3 bees; give 0 to 120000 bees");
}

TEST(ImportRefuses, text_where_a_number_should_be) {
  for (const char* cell : {"many", "1e999", "nan", "inf", "1 000", "0x10", "5kg", "--5", "+-5"}) {
    const std::string csv = "date,adults\n2026-05-01," + std::string(cell) + "\n";
    EXPECT_NE(refusal(csv, with(look + "bees = { column = \"adults\" }\n")).find("is not a number"),
              std::string::npos)
        << cell;
  }
}

TEST(ImportRefuses, a_column_the_file_has_not) {
  EXPECT_EQ(refusal("date,bees\n", with(look + "bees = { column = \"beez\" }\n")),
            "m.toml:9: f.csv has no column 'beez'; use one of date, bees");
}

TEST(ImportRefuses, kinds_fields_and_choices_nobody_knows) {
  EXPECT_EQ(refusal("date\n", with("colony = \"a\"\n", "look_inside")),
            "m.toml:4: there is no kind of entry 'look_inside'; beegarth enter BOOK --list names the kinds");
  EXPECT_NE(refusal("date\n", with(look + "wings = 4\n"))
                .find("m.toml:9: inspection has no field 'wings'; use one of colony, look"),
            std::string::npos);
  EXPECT_EQ(refusal("date\n", with("colony = \"a\"\nlook = \"deep\"\n")),
            "m.toml:8: look has no choice 'deep'; use one of full, quick, outside");
  EXPECT_NE(refusal("date\n", with(look + "bees = { column = \"date\", colour = \"red\" }\n"))
                .find("a map has no 'colour' here"),
            std::string::npos);
  EXPECT_NE(refusal("date\n", with(look + "bees = \"many\"\n")).find("bees takes a number"),
            std::string::npos);
}

TEST(ImportRefuses, a_map_that_leaves_out_what_the_kind_needs) {
  EXPECT_NE(refusal("date\n", with("colony = \"a\"\n", "weight")).find("the weight has no kg"),
            std::string::npos);
}

TEST(ImportRefuses, a_row_that_leaves_out_what_the_kind_needs) {
  EXPECT_EQ(refusal("date,w\n2026-05-01,NA\n",
                    with("colony = \"a\"\nwhat = \"whole_hive\"\nkg = { column = \"w\" }\n", "weight")),
            "f.csv:2, column 'w': the weight has no kg; fill the cell, or skip such rows with skip_when");
}

TEST(ImportRefuses, a_rule_between_fields_broken) {
  EXPECT_EQ(
      refusal("date,lo,hi\n2026-05-01,9,3\n", with("site = \"all\"\ntemperature_min_C = { column = \"lo\" "
                                                   "}\ntemperature_max_C = { column = \"hi\" }\n",
                                                   "weather")),
      "f.csv:2, column 'lo': the minimum is above the maximum; swap them or check the units");
}

TEST(ImportRefuses, broken_toml_with_its_line) {
  EXPECT_EQ(refusal("date\n", "[date\n").substr(0, 8), "m.toml:1");
}

TEST(ImportRefuses, cells_the_map_does_not_translate) {
  const std::string map = with(look + "queen = { column = \"q\", map = { seen = true } }\n");
  EXPECT_EQ(refusal("date,q\n2026-05-01,maybe\n", map),
            "f.csv:2, column 'q': the map does not translate 'maybe'; add it to the map of queen, or "
            "others_missing = true");
}

TEST(ImportRefuses, at_most_twenty_problems_and_no_entry_at_all) {
  std::string csv = "date,bees\n2026-05-01,5\n";
  for (int i = 0; i < 50; ++i) csv += "2026-05-01,-1\n";
  const auto plan = plan_import(csv, "f.csv", with(look + "bees = { column = \"bees\" }\n"), "m.toml");
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->problems.size(), 20U);
  EXPECT_TRUE(plan->drafts.empty());
}

// The factors are exact by definition; see src/garth/unit_names.cpp.
TEST(ImportUnits, become_those_of_the_book) {
  struct Case {
    const char* field;
    const char* unit;
    const char* cell;
    double wanted;
  };
  for (const Case& c :
       {Case{"temperature_max_C", "F", "50", 10}, Case{"temperature_max_C", "K", "283.15", 10},
        Case{"rain_mm", "in", "0.5", 12.7}, Case{"wind_m_s", "mph", "10", 4.4704},
        Case{"wind_m_s", "km/h", "36", 10}, Case{"sun_hours", "min", "90", 1.5}}) {
    const auto plan = planned(
        "date,x\n2026-05-01," + std::string(c.cell) + "\n",
        with("site = \"all\"\n" + std::string(c.field) + " = { column = \"x\", unit = \"" + c.unit + "\" }\n",
             "weather"));
    ASSERT_EQ(plan.drafts.size(), 1U);
    const auto& w = std::get<entries::Weather>(plan.drafts[0].payload);
    const double got = std::string_view(c.field) == "temperature_max_C" ? *w.temperature_max_C
                       : std::string_view(c.field) == "rain_mm"         ? *w.rain_mm
                       : std::string_view(c.field) == "wind_m_s"        ? *w.wind_m_s
                                                                        : *w.sun_hours;
    EXPECT_DOUBLE_EQ(got, c.wanted) << c.unit;
  }
  const auto knots =
      planned("date,x\n2026-05-01,36\n",
              with("site = \"all\"\ngust_m_s = { column = \"x\", unit = \"kn\" }\n", "weather"));
  EXPECT_DOUBLE_EQ(*std::get<entries::Weather>(knots.drafts.at(0).payload).gust_m_s, 18.52);
  const auto pounds = planned(
      "date,x\n2026-05-01,100\n",
      with("colony = \"a\"\nwhat = \"whole_hive\"\nkg = { column = \"x\", unit = \"lb\" }\n", "weight"));
  EXPECT_DOUBLE_EQ(std::get<entries::Weight>(pounds.drafts.at(0).payload).kg, 45.359237);
  const auto share =
      planned("date,x\n2026-05-01,25\n", with(look + "super_share = { column = \"x\", unit = \"%\" }\n"));
  EXPECT_DOUBLE_EQ(*std::get<entries::Inspection>(share.drafts.at(0).payload).super_share, 0.25);
}

TEST(ImportReads, sums_differences_scales_and_decimal_commas) {
  const std::string map =
      "separator = \";\"\ndecimal = \",\"\n" +
      with(
          "colony = \"a\"\nmethod = \"wash\"\nmites = { difference = [\"all\", \"blank\"] }\n"
          "bees = { sum = [\"workers\", \"drones\"], scale = 2, round = true }\n",
          "mite_count");
  const auto plan = planned("date;all;blank;workers;drones\n2026-05-01;9;2;150,4;1\n", map);
  const auto& count = std::get<entries::MiteCount>(plan.drafts.at(0).payload);
  EXPECT_EQ(count.mites, 7);
  EXPECT_EQ(count.bees, 303);  // 2 * 151.4 = 302.8
}

TEST(ImportReads, dates_without_a_year_that_roll_over) {
  const std::string map =
      "[date]\ncolumn = \"date\"\nformat = \"%d-%b\"\nyear = 2019\nfirst_month = 9\n[[entry]]\nkind = "
      "\"inspection\"\n"
      "[entry.fields]\n" +
      look + "bees = { column = \"bees\" }\n";
  const auto plan = planned("date,bees\n8-Feb,5\n18-Sep,9\n29-Feb,4\n", map);
  ASSERT_EQ(plan.drafts.size(), 3U);
  EXPECT_EQ(plan.drafts[0].happened.iso(), "2019-09-18");
  EXPECT_EQ(plan.drafts[1].happened.iso(), "2020-02-08");
  EXPECT_EQ(plan.drafts[2].happened.iso(), "2020-02-29");
}

TEST(ImportReads, an_entry_once_per_colony_at_its_first_date) {
  const auto plan =
      planned("date,c\n2026-06-01,a\n2026-05-01,a\n2026-05-03,b\n",
              with("colony = { column = \"c\" }\nname = { column = \"c\" }\nhive = \"h\"\nhow = \"bought\"\n",
                   "colony_began", "once_per = \"c\"\n"));
  ASSERT_EQ(plan.drafts.size(), 2U);
  EXPECT_EQ(plan.drafts[0].happened.iso(), "2026-05-01");
  EXPECT_EQ(plan.drafts[0].line, 3U);
  EXPECT_EQ(plan.drafts[1].happened.iso(), "2026-05-03");
}

TEST(ImportReads, names_into_keys) {
  const auto plan = planned(
      "date,c,bees\n2026-06-01, Town  2 ,8\n",
      with("colony = { column = \"c\", as_key = true }\nlook = \"quick\"\nbees = { column = \"bees\" }\n"));
  EXPECT_EQ(entries::colony_of(plan.drafts.at(0).payload).text(), "town-2");
}

TEST(ImportReads, a_row_that_says_nothing_makes_no_entry_and_is_told) {
  const auto plan = planned("date,bees,hue\n2026-06-01,NA,x\n2026-06-02,4,x\n2026-06-02,4,x\n",
                            with(look + "bees = { column = \"bees\" }\n"));
  EXPECT_EQ(plan.drafts.size(), 2U);
  EXPECT_EQ(plan.oddities, (std::vector<std::string>{"lines 3 and 4 both say inspection for 2026-06-02",
                                                     "1 rows say nothing for the inspection of m.toml:4",
                                                     "columns not used: hue"}));
}

TEST(ImportReads, rows_the_book_would_refuse_are_left_out_only_where_the_map_says_so) {
  const std::string fields = look + "bees = { column = \"bees\" }\n";
  const std::string csv = "date,bees\n2026-06-01,-1\n2026-06-02,4\n";
  EXPECT_NE(refusal(csv, with(fields)), "");
  const auto plan = planned(csv, with(fields, "inspection", "leave_out_refused = true\n"));
  EXPECT_EQ(plan.drafts.size(), 1U);
  EXPECT_EQ(plan.oddities.at(0), "left out: f.csv:2, column 'bees': bees is -1 bees; give 0 to 120000 bees");
}

TEST(ImportReads, missing_days_of_weather_are_told) {
  const auto plan = planned("date,t\n2026-06-01,1\n2026-06-04,1\n",
                            with("site = \"all\"\ntemperature_max_C = { column = \"t\" }\n", "weather"));
  ASSERT_FALSE(plan.oddities.empty());
  EXPECT_EQ(plan.oddities[0],
            "weather of site 'all': 2 of 4 days from 2026-06-01 to 2026-06-04 are not there");
}

}  // namespace
}  // namespace beegarth::garth
