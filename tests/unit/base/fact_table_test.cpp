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

FactRow words(std::string key) {
  return {.key = std::move(key), .unit = "text", .source = "common practice", .note = {}, .text = "an Order"};
}

TEST(FactTable, keeps_words_and_numbers_apart) {
  const auto table = FactTable::check("t", {row("egg_days"), words("law")});
  ASSERT_TRUE(table);
  EXPECT_EQ(*table->words("law"), "an Order");
  EXPECT_EQ(one_line(table->value("law").problem()),
            "t: the row 'law' is words and no number; give a number");
  EXPECT_FALSE(table->words("egg_days"));
  EXPECT_FALSE(table->words("z"));
}

TEST(FactTable, refuses_a_row_that_is_both_words_and_a_number_or_neither) {
  FactRow number_too = words("a");
  number_too.value = 2;
  FactRow silent = words("b");
  silent.text = " ";
  FactRow in_days = words("c");
  in_days.unit = "days";
  FactRow ranged = words("d");
  ranged.low = 0;
  ranged.high = 1;
  for (const FactRow& bad : {number_too, silent, in_days, ranged}) EXPECT_FALSE(FactTable::check("t", {bad}));
}

TEST(FactTable, yes_or_no_is_one_or_nothing) {
  FactRow half = row("stops_movement");
  half.unit = "yes/no";
  half.value = 0.5;
  EXPECT_FALSE(FactTable::check("t", {half}));
  half.value = 1;
  EXPECT_TRUE(FactTable::check("t", {half}));
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
