#include <gtest/gtest.h>

#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

TEST(Reader, names_the_path_of_the_first_fault) {
  Reader reader(Json::parse(R"({"days": 3.5, "mites": -1})"));
  reader.whole("days", 0, 10);
  reader.number("mites", 0, 10);
  const auto fault = reader.done();
  ASSERT_TRUE(fault);
  EXPECT_EQ(one_line(*fault), "$.days: 3.5 is not a whole number; give a whole number");
}

TEST(Reader, refuses_a_field_that_nobody_asked_for) {
  Reader reader(Json::parse(R"({"mites": 1, "mitez": 2})"));
  reader.number("mites", 0, 10);
  const auto fault = reader.done();
  ASSERT_TRUE(fault);
  EXPECT_EQ(fault->where, "$.mitez");
  EXPECT_EQ(fault->kind, ProblemKind::bad_input);
}

TEST(Reader, takes_null_for_a_field_that_was_not_given) {
  Reader reader(Json::parse(R"({"days": null})"));
  EXPECT_FALSE(reader.maybe_number("days", 0, 10));
  EXPECT_FALSE(reader.done());
}

TEST(RunCalc, shows_no_last_bits_where_the_figure_is_exact) {
  const auto tables = *Tables::built_in();
  const auto per_day = [&](int mites, const char* days, const char* share) {
    const auto told =
        run_calc("mite-drop",
                 R"({"date": "2026-07-10", "latitude_deg": 52, "mites": )" + std::to_string(mites) +
                     R"(, "days": )" + days + R"(, "board_share_counted": )" + share + "}",
                 tables);
    return told ? (*told)["per_day"]["mid"].dump() : one_line(told.problem());
  };
  EXPECT_EQ(per_day(30, "3", "0.1"), "100.0");
  EXPECT_EQ(per_day(30000, "3", "0.1"), "100000.0");
  EXPECT_EQ(per_day(9000, "0.3", "0.3"), "100000.0");
  EXPECT_EQ(per_day(10, "3", "1"), Json(10 * (1.0 / 3)).dump()) << "what is no short figure keeps all of it";
}

TEST(ParseJson, says_how_large_a_number_may_be) {
  EXPECT_NE(parse_json("1e999", "$").problem().remedy.find("1.8e308"), std::string::npos);
}
TEST(ParseJson, refuses_what_has_two_answers_or_is_no_json) {
  EXPECT_FALSE(parse_json(R"({"a": 1, "a": 2})", "$"));
  EXPECT_FALSE(parse_json(R"([{"b": {"a": 1, "a": 2}}])", "$"));
  EXPECT_TRUE(parse_json(R"([{"a": 1}, {"a": 2}])", "$"));
  EXPECT_FALSE(parse_json("{", "$"));
  EXPECT_FALSE(parse_json("\xff", "$"));
  EXPECT_FALSE(parse_json(R"({"a": 1e999})", "$"));
}

}  // namespace
}  // namespace beegarth::garth
