#include "garth/toml_text.hpp"

#include <gtest/gtest.h>

#include "garth/tables.hpp"

namespace beegarth::garth {
namespace {

TEST(BareLetter, is_found_by_its_line_outside_quotes_and_comments_only) {
  EXPECT_EQ(bare_letter_line("a = 1\nb = \xC3\xBB\n"), 2U);
  EXPECT_EQ(
      bare_letter_line("# \xC3\xBB\na = '\xC3\xBB'\nb = \"\\\"\xC3\xBB\"\nc = \"\"\"\n\xC3\xBB\n\"\"\"\n"),
      std::nullopt);
  EXPECT_EQ(bare_letter_line("a = '''\n'\xC3\xBB'''\n\xC3\xBB = 2"), 3U);
  EXPECT_EQ(bare_letter_line("a = 'open\n\xC3\xBB"), 2U);
  EXPECT_EQ(bare_letter_line(""), std::nullopt);
}

TEST(BareLetter, makes_a_table_a_plain_problem) {
  const auto table = read_table("t.toml", "\xC3\xBB = 1\n");
  ASSERT_FALSE(table);
  EXPECT_EQ(table.problem().where, "t.toml:1");
}

}  // namespace
}  // namespace beegarth::garth
