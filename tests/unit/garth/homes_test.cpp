// What a colony has lived in, told from the entries.
#include "garth/ledgers/homes.hpp"

#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

entries::Hive hive_of(const char* key, int brood_combs, bool two = false) {
  return {.hive = HiveId(key),
          .name = key,
          .site = SiteId("bank"),
          .type = "National",
          .brood_combs = brood_combs,
          .two_colonies = two};
}

Homes homes_in(const ToldBook& book, const ColonyId& colony, Date began = day_of(1, 2)) {
  return homes_of(book.standing(day_of(12, 31)), colony, began);
}

TEST(Homes, a_second_colony_that_moves_in_leaves_each_half_until_one_moves_out) {
  ToldBook book;
  book.must(day_of(1, 3), hive_of("h1", 20, true));
  book.must(day_of(4, 1), entries::Room{.colony = alder, .super_combs = 10});
  book.must(day_of(6, 1), entries::ColonyMoved{.colony = birch, .hive = HiveId("h1")});
  book.must(day_of(8, 1), entries::ColonyMoved{.colony = birch, .hive = h3});
  const auto homes = homes_in(book, alder, day_of(2, 1));
  EXPECT_EQ(homes.first.brood_combs, 20);
  EXPECT_EQ(homes.first.super_combs, 0);
  ASSERT_EQ(homes.later.size(), 2U);
  EXPECT_EQ(homes.later[0].date, day_of(6, 1));
  EXPECT_EQ(homes.later[0].dwelling.brood_combs, 10);
  EXPECT_EQ(homes.later[0].dwelling.super_combs, 5);
  EXPECT_TRUE(homes.later[0].dwelling.two_colonies);
  EXPECT_FALSE(homes.later[0].other_combs);
  EXPECT_EQ(homes.later[1].date, day_of(8, 1));
  EXPECT_EQ(homes.later[1].dwelling.brood_combs, 20);
  EXPECT_FALSE(homes.later[1].dwelling.two_colonies);
  const auto guest = homes_in(book, birch, day_of(2, 1));
  ASSERT_EQ(guest.later.size(), 2U);
  EXPECT_EQ(guest.later[0].dwelling.brood_combs, 10);
  EXPECT_TRUE(guest.later[0].other_combs);
}

TEST(Homes, a_nucleus_lives_in_its_small_box_until_it_is_moved_into_a_hive) {
  ToldBook book;
  book.must(day_of(1, 3), hive_of("h1", 5));
  book.must(day_of(1, 3), hive_of("h3", 11));
  book.must(day_of(5, 10), entries::ColonyMoved{.colony = alder, .hive = h3});
  const auto homes = homes_in(book, alder, day_of(2, 1));
  EXPECT_EQ(homes.first.brood_combs, 5);
  ASSERT_EQ(homes.later.size(), 1U);
  EXPECT_EQ(homes.later[0].date, day_of(5, 10));
  EXPECT_EQ(homes.later[0].dwelling.brood_combs, 11);
  EXPECT_TRUE(homes.later[0].other_combs);
}

TEST(Homes, room_given_before_the_colony_is_followed_is_there_and_later_room_is_left_to_its_entry) {
  ToldBook book;
  book.must(day_of(1, 3), hive_of("h1", 11));
  book.must(day_of(4, 1), entries::Room{.colony = alder, .super_combs = 10});
  book.must(day_of(5, 1), entries::Room{.colony = alder, .super_combs = 10});
  EXPECT_EQ(homes_in(book, alder, day_of(4, 15)).first.super_combs, 10);
  EXPECT_TRUE(homes_in(book, alder, day_of(4, 15)).later.empty());
  EXPECT_EQ(homes_in(book, alder, day_of(3, 1)).first.super_combs, 0);
}

TEST(Homes, a_hive_told_anew_with_other_combs_is_what_it_is_told_to_be_from_that_day) {
  ToldBook book;
  book.must(day_of(1, 3), hive_of("h1", 11));
  book.must(day_of(4, 1), entries::Room{.colony = alder, .brood_combs = 11});
  auto moved = hive_of("h1", 11);
  moved.site = SiteId("yard");
  book.must(day_of(5, 1), moved);  // nothing about its combs
  EXPECT_TRUE(homes_in(book, alder, day_of(2, 1)).later.empty());
  book.must(day_of(6, 1), hive_of("h1", 22));
  const auto homes = homes_in(book, alder, day_of(2, 1));
  ASSERT_EQ(homes.later.size(), 1U);
  EXPECT_EQ(homes.later[0].dwelling.brood_combs, 22);
}

// Belief gives the room of a day after it has changed the dwelling: both together must come to what it is.
TEST(Homes, room_given_on_the_day_of_a_move_stays_with_the_hive_it_was_given_to) {
  ToldBook book;
  book.must(day_of(1, 3), hive_of("h1", 11));
  book.must(day_of(1, 3), hive_of("h3", 11));
  book.must(day_of(5, 10), entries::Room{.colony = alder, .super_combs = 10});
  book.must(day_of(5, 10), entries::ColonyMoved{.colony = alder, .hive = h3});
  book.must(day_of(5, 10), entries::Room{.colony = alder, .super_combs = 4});
  const auto homes = homes_in(book, alder, day_of(2, 1));
  ASSERT_EQ(homes.later.size(), 1U);
  EXPECT_EQ(homes.later[0].dwelling.super_combs + 10 + 4, 4);
}

TEST(Homes, what_a_comb_holds_was_so_before_it_was_said_and_changes_nothing_on_that_day) {
  ToldBook book;
  book.must(day_of(1, 3), hive_of("h1", 11));
  auto measured = hive_of("h1", 11);
  measured.honey_kg_per_comb = 3.1;
  book.must(day_of(6, 1), measured);
  const auto homes = homes_in(book, alder, day_of(2, 1));
  EXPECT_DOUBLE_EQ(homes.first.honey_kg_per_comb, 3.1);
  EXPECT_TRUE(homes.later.empty());
}

TEST(Homes, one_that_dies_leaves_the_whole_hive_to_the_other) {
  ToldBook book;
  book.must(day_of(1, 3), hive_of("h1", 20, true));
  book.must(day_of(1, 5), entries::ColonyMoved{.colony = birch, .hive = HiveId("h1")});
  book.must(day_of(7, 1), entries::ColonyEnded{.colony = birch, .how = entries::Ending::died});
  const auto homes = homes_in(book, alder, day_of(2, 1));
  EXPECT_EQ(homes.first.brood_combs, 10);
  ASSERT_EQ(homes.later.size(), 1U);
  EXPECT_EQ(homes.later[0].date, day_of(7, 1));
  EXPECT_EQ(homes.later[0].dwelling.brood_combs, 20);
}

}  // namespace
}  // namespace beegarth::garth
