#include "base/fact_table.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace beegarth {
namespace {

FactRow row(std::string key) {
  return {.key = std::move(key), .value = 2, .unit = "days", .source = "common practice", .note = {}};
}

TEST(FactTable, refuses_a_row_without_a_source) {
  FactRow bare = row("egg_days");
  bare.source = "  ";
  const auto table = FactTable::check("colony.toml", {bare});
  ASSERT_FALSE(table);
  EXPECT_EQ(one_line(table.problem()),
            "colony.toml: row 'egg_days': the row has no source; say where the value comes from");
}

TEST(FactTable, refuses_what_is_not_a_number_and_a_value_outside_its_range) {
  FactRow nan = row("a");
  nan.value = std::nan("");
  FactRow outside = row("b");
  outside.low = 3;
  outside.high = 4;
  FactRow half = row("c");
  half.low = 1;
  EXPECT_FALSE(FactTable::check("t", {nan}));
  EXPECT_FALSE(FactTable::check("t", {outside}));
  EXPECT_FALSE(FactTable::check("t", {half}));
}

TEST(FactTable, refuses_the_same_key_twice) {
  EXPECT_FALSE(FactTable::check("t", {row("a"), row("a")}));
}

TEST(FactTable, finds_rows_and_takes_overrides) {
  const auto table = FactTable::check("t", {row("b"), row("a")});
  ASSERT_TRUE(table);
  EXPECT_EQ(*table->value("a"), 2);
  EXPECT_FALSE(table->value("z"));
  FactRow own = row("a");
  own.value = 5;
  const auto changed = table->with(std::array{own});
  ASSERT_TRUE(changed);
  EXPECT_EQ(*changed->value("a"), 5);
  EXPECT_EQ(*changed->value("b"), 2);
}

}  // namespace
}  // namespace beegarth
