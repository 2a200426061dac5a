#include "garth/tables/tables.hpp"

#include <gtest/gtest.h>

namespace beegarth::garth {
namespace {

TEST(Tables, every_table_of_the_program_loads) {
  EXPECT_TRUE(Tables::built_in());
}

TEST(Tables, a_row_without_a_source_does_not_load) {
  const auto table = read_table("x.toml", "[[row]]\nkey = 'egg_days'\nvalue = 3\nunit = 'days'\n");
  ASSERT_FALSE(table);
  EXPECT_NE(table.problem().where.find("egg_days"), std::string::npos);
}

TEST(Tables, broken_toml_is_told_by_its_line) {
  const auto table = read_table("x.toml", "[[row]]\nkey = \n");
  ASSERT_FALSE(table);
  EXPECT_EQ(table.problem().where.substr(0, 7), "x.toml:");
}

TEST(Tables, an_unknown_field_is_refused) {
  EXPECT_FALSE(
      read_table("x.toml", "[[row]]\nkey='a'\nvalue=1\nunit='1'\nsource='common practice'\ncolour='red'\n"));
}

TEST(Tables, a_row_can_be_words) {
  const auto table =
      read_table("x.toml", "[[row]]\nkey='law'\ntext='an Order'\nunit='text'\nsource='common practice'\n");
  ASSERT_TRUE(table);
  EXPECT_EQ(*table->words("law"), "an Order");
  EXPECT_FALSE(
      read_table("x.toml", "[[row]]\nkey='law'\ntext='a'\nvalue=1\nunit='text'\nsource='common practice'\n"));
}

entries::TableOverride override_of(const char* row, double value, const char* unit) {
  return {.table = "duty_england", .row = row, .value = value, .unit = unit, .source = "the keeper's letter"};
}

TEST(Tables, what_a_law_asks_can_be_overridden_and_so_can_its_words) {
  const Tables tables = *Tables::built_in();
  const auto stop = override_of("varroa_stops_movement", 1, "yes/no");
  const auto changed = tables.with(std::span(&stop, 1));
  ASSERT_TRUE(changed);
  EXPECT_EQ(*(*changed)["duty_england"].value("varroa_stops_movement"), 1);
  const auto half = override_of("varroa_stops_movement", 0.5, "yes/no");
  EXPECT_FALSE(tables.with(std::span(&half, 1)));
  auto title = override_of("varroa_law", 0, "text");
  const auto refused = tables.with(std::span(&title, 1));
  ASSERT_FALSE(refused);
  EXPECT_EQ(one_line(refused.problem()),
            "table_override: the row 'varroa_law' is words; give its text, and 0 as the value");
  title.text = "an order of this year";
  const auto told = tables.with(std::span(&title, 1));
  ASSERT_TRUE(told);
  EXPECT_EQ(*(*told)["duty_england"].words("varroa_law"), "an order of this year");
  auto number = override_of("varroa_stops_movement", 1, "yes/no");
  number.text = "yes";
  EXPECT_FALSE(tables.with(std::span(&number, 1)));
}

}  // namespace
}  // namespace beegarth::garth
