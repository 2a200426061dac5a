// Which lots wait to be extracted, and whose wet combs nobody told of. Everything invented.
#include "garth/plan/crop_waiting.hpp"

#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

const LotId spring("spring");

work::NeedsInput waiting(const ToldBook& book, Date today) {
  work::NeedsInput input;
  input.today = today;
  input.colonies.push_back({.colony = alder, .site = SiteId("bank")});
  const auto standing = book.standing(today);
  take_crop_waiting(standing, input);
  return input;
}

TEST(CropWaiting, goes_from_the_hive_to_the_extractor_and_back_to_the_hive) {
  ToldBook book;
  book.must(day_of(6, 1), entries::Lot{.lot = spring, .name = "Spring"});
  book.must(day_of(6, 1), entries::Harvest{.colony = alder, .kg = 9, .combs = 4, .lot = spring});
  auto input = waiting(book, day_of(6, 2));
  ASSERT_EQ(input.to_extract.size(), 1U);
  EXPECT_EQ(input.to_extract.front().name, "Spring");
  EXPECT_EQ(input.to_extract.front().since.date, day_of(6, 1));

  book.must(day_of(6, 3), entries::Extraction{.lot = spring});
  input = waiting(book, day_of(6, 4));
  EXPECT_TRUE(input.to_extract.empty());
  ASSERT_EQ(input.wet_combs.size(), 1U);
  EXPECT_TRUE(input.wet_combs.front().sites.contains(SiteId("bank")));
  EXPECT_FALSE(waiting(book, day_of(6, 2)).to_extract.empty()) << "as it was the day before";
}
TEST(CropWaiting, is_over_when_the_wet_combs_are_told_of) {
  for (const bool back : {true, false}) {
    ToldBook book;
    book.must(day_of(6, 1), entries::Lot{.lot = spring, .name = "Spring"});
    book.must(day_of(6, 1), entries::Harvest{.colony = alder, .kg = 9, .combs = 4, .lot = spring});
    book.must(day_of(6, 3), entries::Extraction{.lot = spring, .wet_combs_back = back});
    const auto input = waiting(book, day_of(6, 4));
    EXPECT_TRUE(input.to_extract.empty());
    EXPECT_TRUE(input.wet_combs.empty());
  }
}

}  // namespace
}  // namespace beegarth::garth
