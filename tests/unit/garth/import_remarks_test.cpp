#include "garth/imports/import_remarks.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

// Two keepers write on in two copies; what each wrote is then in one book, in the order of writing.
struct TwoCopies : testing::Test {
  EntryId say_there(Date day, entries::Payload payload) {
    book.keep_anyway({.happened = day, .payload = std::move(payload)});
    added.insert(book.last());
    return book.last();
  }
  void say_here(Date day, entries::Payload payload) {
    book.keep_anyway({.happened = day, .payload = std::move(payload)});
  }
  std::vector<std::string> remarks() const {
    return what_gates_would_have_refused(book.all(), added, *Tables::built_in());
  }
  ToldBook book;
  std::set<EntryId> added;
};

TEST_F(TwoCopies, that_agree_are_put_together_without_a_word) {
  say_there(day_of(5, 10), entries::Inspection{.colony = alder});
  say_here(day_of(5, 11), entries::Room{.colony = birch, .super_combs = 10});
  EXPECT_THAT(remarks(), IsEmpty());
}

TEST_F(TwoCopies, name_a_figure_that_no_hive_holds_but_not_where_the_box_was_told_after_it_that_day) {
  book.must(
      day_of(1, 3),
      entries::Hive{
          .hive = HiveId("h1"), .name = "h1", .site = SiteId("bank"), .type = "National", .super_combs = 0});
  say_there(day_of(6, 3), entries::Inspection{.colony = alder, .brood_combs = 14});
  EXPECT_THAT(remarks(), ElementsAre(HasSubstr("14 combs with brood cannot be")));
  say_there(day_of(6, 3), entries::Room{.colony = alder, .super_combs = 10});
  EXPECT_THAT(remarks(), IsEmpty());
}

TEST_F(TwoCopies, name_the_move_there_of_what_was_known_here_to_be_suspect) {
  say_here(day_of(5, 10), ropy(alder));
  const EntryId moved = say_there(day_of(5, 12), entries::ColonyMoved{.colony = alder, .hive = HiveId("h4")});
  EXPECT_THAT(remarks(),
              ElementsAre(testing::AllOf(HasSubstr("kept as said there: colony_moved of 2026-05-12"),
                                         HasSubstr(moved.text()), HasSubstr("suspect"))));
  const auto suspects = suspects_on(book.standing(day_of(5, 13)), day_of(5, 13));
  EXPECT_NE(suspects.at(SiteId("yard")), nullptr) << "the suspicion holds where it was carried to";
  EXPECT_THAT(book.say(day_of(5, 14), entries::Transfer{.colony = alder, .hive = h3}), HasSubstr("suspect"));
}

TEST_F(TwoCopies, name_the_move_here_of_what_was_known_there_to_be_suspect) {
  say_there(day_of(5, 10), ropy(alder));
  say_here(day_of(5, 12), entries::Harvest{.colony = alder, .kg = 5});
  EXPECT_THAT(remarks(), ElementsAre(HasSubstr("kept as said here: harvest of 2026-05-12")));
}

TEST_F(TwoCopies, name_more_jars_than_both_harvests_hold) {
  const LotId lot("l1");
  book.must(day_of(5, 1), entries::Room{.colony = alder, .super_combs = 10});
  book.must(day_of(7, 1), entries::Lot{.lot = lot, .name = "Summer"});
  book.must(day_of(7, 1), entries::Harvest{.colony = alder, .kg = 10, .lot = lot});
  say_here(day_of(7, 2), entries::Jars{.lot = lot, .jars = 20, .net_g = 340});
  say_there(day_of(7, 2), entries::Jars{.lot = lot, .jars = 20, .net_g = 340});
  EXPECT_THAT(remarks(), ElementsAre(HasSubstr("its jars would hold 13.6 kg")));
}

}  // namespace
}  // namespace beegarth::garth
