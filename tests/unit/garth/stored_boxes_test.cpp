// Boxes that nobody entered as a batch, from a fed hive into the store and out of it. Everything invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

entries::Room supers(int combs, const ColonyId& colony = alder) {
  return {.colony = colony, .super_combs = combs};
}
entries::Harvest crop(std::vector<CombsId> from = {}, const ColonyId& colony = alder) {
  return {.colony = colony, .kg = 12, .from = std::move(from)};
}
const CombsId white("white");

struct StoredBoxes : testing::Test {
  StoredBoxes() {
    book.must(day_of(5, 1), supers(10));
    book.must(day_of(5, 5), entries::Feed{.colony = alder, .kg = 3});
    book.must(day_of(6, 1), supers(-10));
  }
  ToldBook book;
};

TEST_F(StoredBoxes, stay_marked_when_they_are_put_on_again) {
  book.must(day_of(6, 10), supers(10));
  EXPECT_THAT(book.say(day_of(7, 20), crop()), HasSubstr("fed on 2026-05-05"));
}
TEST_F(StoredBoxes, stay_marked_on_another_hive) {
  book.must(day_of(6, 10), supers(10, birch));
  const std::string why = book.say(day_of(7, 20), crop({}, birch));
  EXPECT_THAT(why, HasSubstr("laid in store on 2026-06-01"));
  EXPECT_THAT(why, HasSubstr("fed on 2026-05-05"));
}
TEST_F(StoredBoxes, stay_marked_however_many_are_put_on_after_them) {
  book.must(day_of(6, 10), supers(10));
  book.must(day_of(6, 10), supers(10, birch));
  EXPECT_THAT(book.say(day_of(7, 20), crop({}, birch)), HasSubstr("not for people"))
      << "which of the two hives has them, nobody knows";
}
TEST_F(StoredBoxes, stay_marked_when_the_hive_is_told_again_with_them) {
  book.must(
      day_of(6, 10),
      entries::Hive{
          .hive = HiveId("h2"), .name = "h2", .site = SiteId("bank"), .type = "national", .super_combs = 10});
  EXPECT_THAT(book.say(day_of(7, 20), crop({}, birch)), HasSubstr("not for people"));
}
TEST_F(StoredBoxes, mark_no_new_foundation) {
  auto fresh = supers(10, birch);
  fresh.undrawn = 10;
  book.must(day_of(6, 10), fresh);
  EXPECT_THAT(book.say(day_of(7, 20), crop({}, birch)), IsEmpty());
}
TEST_F(StoredBoxes, mark_no_batch_that_was_named_apart) {
  book.must(day_of(6, 9),
            entries::Combs{.combs = white, .name = "White", .count = 10, .use = entries::CombUse::honey});
  auto named = supers(10, birch);
  named.combs = white;
  book.must(day_of(6, 10), named);
  EXPECT_THAT(book.say(day_of(7, 20), crop({}, birch)), IsEmpty());
  EXPECT_THAT(book.say(day_of(7, 20), crop({white}, birch)), IsEmpty());
}
TEST_F(StoredBoxes, mark_nothing_of_another_pattern) {
  const ColonyId cedar("cedar");
  book.must(day_of(6, 9),
            entries::Hive{.hive = HiveId("h9"), .name = "h9", .site = SiteId("bank"), .type = "Dadant"});
  book.must(
      day_of(6, 9),
      entries::ColonyBegan{
          .colony = cedar, .name = "Cedar", .hive = HiveId("h9"), .how = entries::Beginning::overwintered});
  book.must(day_of(6, 10), supers(10, cedar));
  EXPECT_THAT(book.say(day_of(7, 20), crop({}, cedar)), IsEmpty());
}
TEST_F(StoredBoxes, mark_those_of_a_hive_that_was_ever_called_by_their_pattern) {
  book.must(day_of(6, 9),
            entries::Hive{.hive = HiveId("h2"), .name = "h2", .site = SiteId("bank"), .type = "Dadant"});
  book.must(day_of(6, 10), supers(10, birch));
  EXPECT_THAT(book.say(day_of(7, 20), crop({}, birch)), HasSubstr("not for people"));
}

}  // namespace
}  // namespace beegarth::garth
