#include "garth/tables.hpp"

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

}  // namespace
}  // namespace beegarth::garth
