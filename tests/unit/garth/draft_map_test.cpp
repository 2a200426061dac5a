// A map drafted from a file: what was guessed is a map that the program reads. Everything invented.
#include "garth/imports/draft_map.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "garth/imports/csv_map.hpp"

namespace beegarth::garth {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

std::string drafted(std::string_view csv, std::string_view kind) {
  const auto map = draft_map(csv, "own.csv", kind);
  return map ? *map : one_line(map.problem());
}

TEST(DraftMap, of_a_plain_file_can_be_used_as_it_is) {
  const std::string text = drafted(
      "Date,Colony,Seams,Brood combs\n2026-05-02,Alder 5,7,4\n2026-05-16,Alder 5,9,6\n", "inspection");
  const auto map = read_csv_map(text, "draft.toml");
  ASSERT_TRUE(map) << one_line(map.problem()) << text;
  EXPECT_THAT(map->date->columns, ElementsAre("Date"));
  EXPECT_EQ(map->entries.front().kind, "inspection");
  EXPECT_THAT(text, HasSubstr("colony = { column = \"Colony\", as_key = true }"));
  EXPECT_THAT(text, HasSubstr("brood_combs = { column = \"Brood combs\" }"));
}

TEST(DraftMap, sees_how_numbers_dates_and_gaps_are_written) {
  const std::string text = drafted("Tag;kg;colony\n14.05.2026;17,5;Alder\n15.05.2026;NA;Birch\n", "feed");
  EXPECT_THAT(text, HasSubstr("separator = \";\""));
  EXPECT_THAT(text, HasSubstr("decimal = \",\""));
  EXPECT_THAT(text, HasSubstr("missing = [\"NA\"]"));
  EXPECT_THAT(text, HasSubstr("format = \"%d.%m.%Y\""));
  EXPECT_THAT(text, Not(HasSubstr("other way round")));
  const auto map = read_csv_map(text, "draft.toml");
  EXPECT_TRUE(map) << one_line(map.problem()) << text;
}

TEST(DraftMap, reads_headers_as_the_trade_writes_them) {
  const std::string text = drafted(
      "Date,Hive,Frames of bees,Brood frames,bees hatched\n2026-05-02,Alder 5,4.5,3,9\n", "inspection");
  EXPECT_THAT(text, HasSubstr("colony = { column = \"Hive\", as_key = true }"));
  EXPECT_THAT(text, HasSubstr("seams = { column = \"Frames of bees\" }"));
  EXPECT_THAT(text, HasSubstr("brood_combs = { column = \"Brood frames\" }"));
  EXPECT_THAT(text, Not(HasSubstr("bees = {"))) << "covered combs are no number of bees";
  EXPECT_THAT(text, HasSubstr("#   \"bees hatched\""));
  EXPECT_THAT(drafted("when,Colony name,kg of sugar\n2026-05-02,Alder,2\n", "feed"),
              HasSubstr("column = \"Colony name\""));
}

TEST(DraftMap, says_what_it_could_not_know) {
  const std::string text = drafted("when,who,mood\n03/04/2026,Ann,\"say \"\"calm\"\"\"\n", "inspection");
  EXPECT_THAT(text, HasSubstr("the other way round"));
  EXPECT_THAT(text, HasSubstr("# Must be given, as a column or a value:\n#   colony"));
  EXPECT_THAT(text, HasSubstr("# Columns that are not used:\n#   \"who\""));
  EXPECT_THAT(drafted("when,colony\nsoon,Alder\n", "note"), HasSubstr("No column reads as a date"));
}

TEST(DraftMap, of_no_kind_or_no_csv_is_refused) {
  EXPECT_FALSE(draft_map("a,b\n1,2\n", "own.csv", "inspections"));
  EXPECT_FALSE(draft_map("a,a\n1,2\n", "own.csv", "feed"));
  EXPECT_FALSE(draft_map("a,b\n1\n", "own.csv", "feed"));
  EXPECT_FALSE(draft_map("", "own.csv", "feed"));
}

}  // namespace
}  // namespace beegarth::garth
