// What was on during feeding stays marked, whatever is told afterwards of the days before. Everything
// invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

entries::Room boxes(int combs, const ColonyId& colony = alder) {
  return {.colony = colony, .super_combs = combs};
}
const CombsId white("white");

// A batch and ten unnamed combs on Alder, which is fed on 1 April.
ToldBook fed_with_boxes_on() {
  ToldBook book;
  book.must(day_of(3, 1), entries::Combs{.combs = white,
                                         .name = "White",
                                         .count = 8,
                                         .use = entries::CombUse::honey,
                                         .colony = alder,
                                         .origin = entries::CombOrigin::own});
  book.must(day_of(3, 1), boxes(10));
  book.must(day_of(4, 1), entries::Feed{.colony = alder, .kg = 3});
  return book;
}

TEST(KeptMarks, of_a_batch_are_not_cleared_by_a_move_told_late) {
  ToldBook book = fed_with_boxes_on();
  const entries::CombsMoved off{.combs = white, .to = entries::CombsGo::into_store};
  EXPECT_THAT(book.say(day_of(3, 31), off), HasSubstr("this would clear the mark of 'White'"));
  EXPECT_THAT(book.say(day_of(4, 10), off), IsEmpty());
}
TEST(KeptMarks, of_boxes_are_not_cleared_by_taking_them_off_late) {
  ToldBook book = fed_with_boxes_on();
  EXPECT_THAT(book.say(day_of(3, 31), boxes(-10)),
              HasSubstr("this would clear the mark of the boxes on 'alder'"));
  EXPECT_THAT(book.say(day_of(4, 10), boxes(-10)), IsEmpty());
  book.must(day_of(6, 1), entries::Inspection{.colony = birch});
  EXPECT_THAT(book.say(day_of(5, 10), boxes(10)), IsEmpty()) << "late, and they go on marked";
}
TEST(KeptMarks, go_when_the_feeding_is_taken_back_first) {
  ToldBook book = fed_with_boxes_on();
  book.must(day_of(4, 2), entries::Removed{.entry = book.last()});
  EXPECT_THAT(book.say(day_of(3, 31), boxes(-10)), IsEmpty());
}
TEST(KeptMarks, go_with_the_boxes_to_a_hive_that_is_called_by_another_name) {
  ToldBook book = fed_with_boxes_on();
  book.must(day_of(4, 10), boxes(-10));
  const auto told_again = [](const char* hive, const char* type) {
    return entries::Hive{.hive = HiveId(hive), .name = hive, .site = SiteId("bank"), .type = type};
  };
  book.must(day_of(4, 20), told_again("h2", "Deep"));
  book.must(day_of(5, 1), boxes(10, birch));
  EXPECT_THAT(book.say(day_of(7, 20), entries::Harvest{.colony = birch, .kg = 9}),
              HasSubstr("may be of those"));
}

}  // namespace
}  // namespace beegarth::garth
