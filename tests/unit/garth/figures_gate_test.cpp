// What no hive holds is not kept; where the book does not know, it does not refuse. Everything invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

const Date day = day_of(6, 3);

// Alder in a hive of eleven combs of 2.2 kg, nothing on top, said so.
class Figures : public testing::Test {
 protected:
  void SetUp() override { book.must(day_of(1, 3), hive()); }
  static entries::Hive hive() {
    return {.hive = HiveId("h1"),
            .name = "Box 1",
            .site = SiteId("bank"),
            .type = "National",
            .brood_combs = 11,
            .super_combs = 0,
            .honey_kg_per_comb = 2.2};
  }
  static entries::Inspection brood(double combs) { return {.colony = alder, .brood_combs = combs}; }
  static entries::Inspection seams(double seams) { return {.colony = alder, .seams = seams}; }
  ToldBook book;
};

TEST_F(Figures, more_combs_with_brood_than_the_hive_has_are_refused_and_the_line_names_both) {
  EXPECT_EQ(book.say(day, brood(40)),
            "40 combs with brood cannot be: the hive 'Box 1' holds 11 combs on 2026-06-03");
  EXPECT_THAT(book.say(day, brood(12)), HasSubstr("12 combs with brood"));
  EXPECT_THAT(book.say(day, brood(11)), IsEmpty());
}

TEST_F(Figures, seams_may_be_one_more_than_combs) {
  EXPECT_THAT(book.say(day, seams(12)), IsEmpty());
  EXPECT_THAT(book.say(day, seams(13)), HasSubstr("13 seams of bees cannot be"));
}

TEST_F(Figures, what_was_put_on_that_day_counts_and_what_was_taken_off_counts_still) {
  EXPECT_THAT(book.say(day, brood(14)), HasSubstr("cannot be"));
  book.must(day, entries::Room{.colony = alder, .super_combs = 10});
  EXPECT_THAT(book.say(day, brood(14)), IsEmpty());
  const Date off = day_of(6, 20);
  book.must(off, entries::Room{.colony = alder, .super_combs = -10});
  EXPECT_THAT(book.say(off, brood(14)), IsEmpty());
  EXPECT_THAT(book.say(off + 1, brood(14)), HasSubstr("cannot be"));
}

TEST_F(Figures, a_box_told_later_in_the_same_breath_counts) {
  const auto tables = *Tables::built_in();
  const std::vector<book::Draft> both{
      {.happened = day, .payload = brood(14)},
      {.happened = day, .payload = entries::Room{.colony = alder, .super_combs = 10}}};
  EXPECT_TRUE(may_be_kept(book.all(), both, tables));
  EXPECT_FALSE(may_be_kept(book.all(), std::span(both).first(1), tables));
}

TEST_F(Figures, honey_beyond_all_combs_full_is_refused_as_harvest_stores_and_weight) {
  EXPECT_THAT(book.say(day, entries::Harvest{.colony = alder, .kg = 300}),
              HasSubstr("300 kg of honey cannot be"));
  EXPECT_THAT(book.say(day, entries::Weight{.colony = alder, .kg = 66, .what = entries::Weighed::stores}),
              HasSubstr("66 kg of stores cannot be"));
  EXPECT_THAT(book.say(day, entries::Inspection{.colony = alder, .stores_kg = 66}),
              HasSubstr("66 kg of stores"));
  EXPECT_THAT(book.say(day, entries::Inspection{.colony = alder, .store_combs = 12}),
              HasSubstr("12 full combs"));
  EXPECT_THAT(book.say(day, entries::Weight{.colony = alder, .kg = 250}),
              HasSubstr("250 kg for the whole hive"));
  EXPECT_THAT(book.say(day, entries::Inspection{.colony = alder, .stores_kg = 24}), IsEmpty());
  EXPECT_THAT(book.say(day, entries::Harvest{.colony = alder, .kg = 20}), IsEmpty());
}

TEST_F(Figures, boxes_off_some_days_before_may_be_what_is_extracted) {
  book.must(day_of(5, 1), entries::Room{.colony = alder, .super_combs = 20});
  book.must(day_of(7, 1), entries::Room{.colony = alder, .super_combs = -20});
  EXPECT_THAT(book.say(day_of(7, 5), entries::Harvest{.colony = alder, .kg = 60}), IsEmpty());
  EXPECT_THAT(book.say(day_of(9, 5), entries::Harvest{.colony = alder, .kg = 60}), HasSubstr("cannot be"));
}

TEST_F(Figures, a_colony_begins_with_bees) {
  entries::ColonyBegan none{.colony = ColonyId("c"), .name = "C", .hive = h3, .bees = 0};
  EXPECT_THAT(book.say(day, none), HasSubstr("no colony begins without bees"));
  none.bees = 8000;
  none.stores_kg = 119;
  EXPECT_THAT(book.say(day, none), IsEmpty()) << "the hive never said a word of boxes, nor how big a comb is";
}

TEST_F(Figures, no_board_shows_ten_thousand_mites_in_a_fifth_of_a_day) {
  entries::MiteCount count{.colony = alder, .mites = 10000, .days = 0.2};
  EXPECT_THAT(book.say(day, count), HasSubstr("50000 mites a day"));
  count.days = 7;
  EXPECT_THAT(book.say(day, count), IsEmpty());
}

TEST_F(Figures, bees_beyond_every_colony_are_refused_and_beyond_their_seams_only_remarked_on) {
  entries::Inspection look{.colony = alder, .bees = 110000};
  EXPECT_THAT(book.say(day, look), HasSubstr("never more than 100000"));
  look.bees = 50000;
  look.seams = 3;
  EXPECT_THAT(book.say(day, look), IsEmpty());
  entries::ColonyBegan many{.colony = ColonyId("c"), .name = "C", .hive = h3, .bees = 110000};
  EXPECT_THAT(book.say(day, many), HasSubstr("never more than 100000"));
}

TEST_F(Figures, half_as_many_mites_again_as_bees_were_exchanged) {
  entries::MiteCount wash{.colony = alder, .method = entries::MiteMethod::wash, .mites = 500, .bees = 300};
  EXPECT_THAT(book.say(day, wash), HasSubstr("500 mites on 300 bees"));
  wash.mites = 200;
  EXPECT_THAT(book.say(day, wash), IsEmpty());
}

TEST_F(Figures, a_whole_hive_weighs_something_and_stores_may_be_gone) {
  entries::Weight weight{.colony = alder, .kg = 0, .what = entries::Weighed::whole_hive};
  EXPECT_THAT(book.say(day, weight), HasSubstr("the lightest empty hive"));
  weight.what = entries::Weighed::stores;
  EXPECT_THAT(book.say(day, weight), IsEmpty());
}

TEST_F(Figures, no_queen_is_younger_than_the_day) {
  entries::Queen marked{.colony = alder, .year = day.year() + 1};
  EXPECT_THAT(book.say(day, marked), HasSubstr("has not hatched"));
  marked.year = day.year();
  EXPECT_THAT(book.say(day, marked), IsEmpty());
}

TEST_F(Figures, who_never_said_a_word_of_boxes_may_have_some_but_not_any_number) {
  entries::Inspection look{.colony = birch, .brood_combs = 14};  // h2 is a hive without super_combs
  EXPECT_THAT(book.say(day, look), IsEmpty());
  look.brood_combs = 40;
  EXPECT_THAT(book.say(day, look), HasSubstr("40 combs with brood cannot be"));
  EXPECT_THAT(book.say(day, entries::Inspection{.colony = birch, .seams = 60}), HasSubstr("60 seams"));
}

TEST_F(Figures, combs_that_nobody_can_count_refuse_nothing) {
  entries::Hive skep = hive();
  skep.combs_hang = entries::CombsHang::fixed;
  book.must(day_of(2, 1), skep);
  EXPECT_THAT(book.say(day, brood(14)), IsEmpty());
}

TEST_F(Figures, before_the_hive_was_entered_nothing_is_known_of_it) {
  EXPECT_THAT(book.say(day_of(12, 1, 2025), brood(14)), IsEmpty());
}

TEST_F(Figures, where_the_wall_between_two_colonies_stands_the_book_does_not_know) {
  entries::Hive shared = hive();
  shared.two_colonies = true;
  book.must(day_of(2, 1), shared);
  book.must(day_of(2, 2), entries::ColonyBegan{.colony = ColonyId("c"), .name = "C", .hive = HiveId("h1")});
  EXPECT_THAT(book.say(day, brood(8)), IsEmpty());
  EXPECT_THAT(book.say(day, brood(12)), HasSubstr("for two colonies"));
}

TEST_F(Figures, a_union_brings_the_combs_of_the_other) {
  book.must(day_of(5, 20), entries::Inspection{.colony = alder, .open_brood = true, .capped_brood = true});
  book.must(day_of(5, 20), entries::Inspection{.colony = birch, .open_brood = true, .capped_brood = true});
  book.must(day_of(5, 21), entries::Unite{.colony = alder, .from = birch});
  EXPECT_THAT(book.say(day, brood(14)), IsEmpty());
  EXPECT_THAT(book.say(day, brood(24)), HasSubstr("cannot be"));
}

TEST_F(Figures, a_batch_of_combs_that_hangs_there_counts) {
  book.must(day_of(5, 1),
            entries::Combs{.combs = CombsId("more"), .name = "More", .count = 5, .colony = alder});
  EXPECT_THAT(book.say(day, brood(14)), IsEmpty());
  EXPECT_THAT(book.say(day, brood(17)), HasSubstr("cannot be"));
}

}  // namespace
}  // namespace beegarth::garth
