#include "garth/keep.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;

// Where the first of several drafts stands that may not be kept.
std::string where(const std::vector<book::Draft>& drafts) {
  const ToldBook book;
  const auto fit = may_be_kept(book.all(), drafts, *Tables::built_in());
  return fit ? "kept" : fit.problem().where;
}
book::Draft on(int month, int day, entries::Payload payload) {
  return {.happened = day_of(month, day), .payload = std::move(payload)};
}

TEST(Keep, of_one_entry_its_field_alone_is_named) {
  EXPECT_EQ(where({on(5, 1, entries::Note{.text = " \u00a0\n"})}), "text");
}

TEST(Keep, of_several_the_one_at_fault_is_counted_out_with_what_it_is_refused_for) {
  EXPECT_EQ(where({on(5, 1, ropy(alder)), on(5, 2, entries::Note{.text = "hot"}),
                   on(5, 3, entries::Room{.colony = alder, .super_combs = 10})}),
            "entry 3 of the 3 given, entry 1 of the 3 given");
  EXPECT_EQ(where({on(5, 2, entries::Note{.text = "hot"}), on(5, 3, entries::Feed{.colony = ColonyId("x")})}),
            "entry 2 of the 2 given, kg");
}

TEST(Keep, a_needed_text_is_not_blank_in_any_script) {
  for (const char* blank : {" ", "\t\n", "\u3000", "\u2009\u200b", "\ufeff"})
    EXPECT_EQ(where({on(5, 1, entries::Cleared{.colony = alder, .by = blank})}), "by") << blank;
  EXPECT_EQ(where({on(5, 1, entries::Cleared{.colony = alder, .by = "\u00e9"})}), "kept");
}

TEST(Keep, combs_are_not_younger_than_the_day_they_are_told_of) {
  const entries::Combs combs{.combs = CombsId("c"), .name = "c", .count = 3, .drawn_year = 2027};
  EXPECT_EQ(where({on(5, 1, combs)}), "drawn_year");
}

}  // namespace
}  // namespace beegarth::garth
