// What the book says of nests and plants, as the needs ask for it. Everything invented.
#include "garth/plan/husbandry.hpp"

#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

const SiteId bank("bank"), yard("yard");

entries::Nest nest_at(const SiteId& site, std::optional<PatchId> patch = {}) {
  return {
      .site = site, .patch = std::move(patch), .of = entries::NestOf::bumblebee, .place = "under the hedge"};
}

// A hedge in a patch at the bank, and willows at the bank that are tied to none.
ToldBook planted() {
  ToldBook book;
  book.must(day_of(1, 5), entries::Patch{.patch = PatchId("north"), .site = bank, .name = "north edge"});
  book.must(day_of(1, 5), entries::Patch{.patch = PatchId("south"), .site = bank, .name = "south edge"});
  book.must(day_of(1, 6),
            entries::Planted{.site = bank, .patch = PatchId("north"), .plant = "hawthorn", .count = 40});
  book.must(day_of(1, 6), entries::Planted{.site = bank, .plant = "goat willow", .count = 3});
  return book;
}

// Which of the plantings at the bank nobody digs beside: "hawthorn goat willow ".
std::string locked(const ToldBook& book) {
  work::NeedsInput input;
  input.sites.push_back({.site = bank});
  const auto standing = book.standing(day_of(6, 30));
  take_husbandry(standing, book::state_of(standing, day_of(6, 30)), input);
  std::string all;
  for (const auto& planting : input.sites.front().plantings)
    if (planting.nest) all += planting.plant + " ";
  return all;
}

TEST(Nests, in_a_patch_lock_that_patch_and_what_is_tied_to_none) {
  ToldBook book = planted();
  EXPECT_EQ(locked(book), "");
  book.must(day_of(5, 2), nest_at(bank, PatchId("south")));
  EXPECT_EQ(locked(book), "goat willow ");
  book.must(day_of(5, 3), nest_at(bank, PatchId("north")));
  EXPECT_EQ(locked(book), "hawthorn goat willow ");
}

TEST(Nests, tied_to_no_patch_lock_the_whole_site_until_that_nest_is_gone) {
  ToldBook book = planted();
  book.must(day_of(5, 2), nest_at(yard));
  EXPECT_EQ(locked(book), "") << "another site";
  book.must(day_of(5, 2), nest_at(bank));
  EXPECT_EQ(locked(book), "hawthorn goat willow ");
  entries::Nest gone = nest_at(bank);
  gone.gone = true;
  gone.place = "in the ditch";
  book.must(day_of(6, 1), gone);
  EXPECT_EQ(locked(book), "hawthorn goat willow ") << "another nest";
  gone.place = "under the hedge";
  book.must(day_of(6, 2), gone);
  EXPECT_EQ(locked(book), "");
}

work::NeedsInput told_of(const ToldBook& book) {
  work::NeedsInput input{.today = day_of(7, 30)};
  input.sites.push_back({.site = bank});
  const auto standing = book.standing(day_of(7, 30));
  take_husbandry(standing, book::state_of(standing, day_of(7, 30)), input);
  return input;
}

TEST(Cutting, flowers_of_a_patch_are_over_until_it_is_cut_or_blooms_again_and_what_is_left_wild_is_left) {
  const PatchId north("north");
  const auto bloom = [&](std::optional<PatchId> patch, entries::BloomStage stage) {
    return entries::Bloom{.site = bank, .patch = std::move(patch), .plant = "knapweed", .stage = stage};
  };
  ToldBook book = planted();
  book.must(day_of(7, 1), bloom({}, entries::BloomStage::over));
  EXPECT_TRUE(told_of(book).sites.front().flowers_over.empty()) << "nobody said where";
  book.must(day_of(7, 2), bloom(north, entries::BloomStage::over));
  ASSERT_EQ(told_of(book).sites.front().flowers_over.size(), 1U);
  EXPECT_EQ(told_of(book).sites.front().flowers_over.front().where, "north edge");
  book.must(day_of(7, 3), bloom(north, entries::BloomStage::full));
  EXPECT_TRUE(told_of(book).sites.front().flowers_over.empty());
  book.must(day_of(7, 9), bloom(north, entries::BloomStage::over));
  book.must(day_of(7, 20), entries::Cut{.site = bank, .patch = north, .what = "knapweed"});
  EXPECT_TRUE(told_of(book).sites.front().flowers_over.empty());
  book.must(day_of(7, 25), bloom(north, entries::BloomStage::over));
  book.must(day_of(7, 26),
            entries::Patch{.patch = north, .site = bank, .name = "north edge", .left_wild = true});
  EXPECT_TRUE(told_of(book).sites.front().flowers_over.empty());
}

TEST(Cutting, grass_is_what_was_cut_in_no_patch) {
  ToldBook book = planted();
  EXPECT_FALSE(told_of(book).sites.front().grass_cut);
  book.must(day_of(6, 1), entries::Cut{.site = bank, .what = "grass"});
  book.must(day_of(7, 1), entries::Cut{.site = bank, .patch = PatchId("north"), .what = "knapweed"});
  EXPECT_EQ(told_of(book).sites.front().grass_cut->date, day_of(6, 1));
}

TEST(Builds, are_underway_with_all_their_hours_until_they_are_finished) {
  ToldBook book = planted();
  book.must(day_of(2, 1), entries::BuildStep{.build = "long hive", .step = "walls glued", .hours = 3});
  book.must(day_of(2, 8), entries::BuildStep{.build = "long hive", .step = "floor in", .hours = 1.5});
  ASSERT_EQ(told_of(book).builds.size(), 1U);
  EXPECT_EQ(told_of(book).builds.front().step, "floor in");
  EXPECT_EQ(told_of(book).builds.front().hours, 4.5);
  book.must(day_of(2, 9), entries::BuildStep{.build = "long hive", .step = "painted", .finished = true});
  EXPECT_TRUE(told_of(book).builds.empty());
}

}  // namespace
}  // namespace beegarth::garth
