#include <gtest/gtest.h>

#include "garth/calc/calc.hpp"

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
