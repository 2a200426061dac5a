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

}  // namespace
}  // namespace beegarth::garth
