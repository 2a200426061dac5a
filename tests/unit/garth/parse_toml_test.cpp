#include "garth/tables/parse_toml.hpp"

#include <gtest/gtest.h>

#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

// The line of the fault; 0 where there is none.
std::size_t fault_line(std::string_view toml) {
  const auto fault = unfit_for_parser(toml);
  return fault ? fault->line : 0;
}

TEST(ParseToml, finds_a_letter_beyond_ascii_outside_quotes_and_comments_only) {
  EXPECT_EQ(fault_line("a = 1\nb = \xC3\xBB\n"), 2U);
  EXPECT_EQ(fault_line("# \xC3\xBB\na = '\xC3\xBB'\nb = \"\\\"\xC3\xBB\"\nc = \"\"\"\n\xC3\xBB\n\"\"\"\n"),
            0U);
  EXPECT_EQ(fault_line("a = '''\n'\xC3\xBB'''\n\xC3\xBB = 2"), 3U);
  EXPECT_EQ(fault_line("a = 'open\n\xC3\xBB"), 2U);
  EXPECT_EQ(fault_line(""), 0U);
}

TEST(ParseToml, finds_a_header_that_begins_with_no_name) {
  for (const char* header : {"[$ntry.fields]", "[[.a]]", "[]", "[ =1]", "[[[a]]]", "\t[{}]", "[#]"}) {
    EXPECT_EQ(fault_line(std::string("a = 1\n") + header + "\n"), 2U) << header;
    EXPECT_FALSE(parse_toml(std::string("a = 1\n") + header + "\n", "t.toml")) << header;
  }
  for (const char* header : {"[a]", "[[a.b]]", "[ 'a b' ]", "  [\"$\"]", "[_x]", "[9]"}) {
    EXPECT_TRUE(parse_toml(std::string(header) + "\n", "t.toml")) << header;
  }
}

TEST(ParseToml, leaves_lists_over_several_lines_alone) {
  const char* text = "a = [\n  [1, 2],\n  {b = 1}, # ]\n  [ [3], [] ],\n  [+4]\n]\n[next]\n";
  EXPECT_EQ(fault_line(text), 0U);
  EXPECT_FALSE(parse_toml("a = [\n[$]\n]\n", "t.toml")) << "refused by the parser itself";
}

TEST(ParseToml, makes_a_fault_a_plain_problem_with_its_line) {
  const auto letter = read_table("t.toml", "\xC3\xBB = 1\n");
  ASSERT_FALSE(letter);
  EXPECT_EQ(letter.problem().where, "t.toml:1");
  const auto header = read_table("t.toml", "\n\n[$row]\n");
  ASSERT_FALSE(header);
  EXPECT_EQ(header.problem().where, "t.toml:3");
}

}  // namespace
}  // namespace beegarth::garth
