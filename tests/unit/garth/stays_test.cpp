#include "garth/ledgers/stays.hpp"

#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

std::vector<std::string> sites_of(const ToldBook& book, const ColonyId& colony) {
  std::vector<std::string> told;
  const auto stays = stays_in(book.standing(day_of(12, 31)));
  for (const Stay& stay : stays.at(colony)) {
    told.push_back(stay.from.iso() + " " + stay.site.text());
  }
  return told;
}

TEST(Stays, a_colony_moved_into_a_hive_elsewhere_stands_there_from_that_day) {
  ToldBook book;
  book.must(day_of(6, 1), entries::ColonyMoved{.colony = alder, .hive = HiveId("h4")});
  EXPECT_EQ(sites_of(book, alder), (std::vector<std::string>{"2026-01-02 bank", "2026-06-01 yard"}));
  EXPECT_EQ(sites_of(book, birch), (std::vector<std::string>{"2026-01-02 bank"}));
}

TEST(Stays, a_hive_told_anew_at_another_site_takes_with_it_whoever_lives_in_it) {
  ToldBook book;
  book.must(day_of(7, 5),
            entries::Hive{.hive = HiveId("h2"), .name = "h2", .site = SiteId("yard"), .type = "National"});
  book.must(day_of(8, 20),
            entries::Hive{.hive = HiveId("h2"), .name = "h2", .site = SiteId("bank"), .type = "National"});
  EXPECT_EQ(sites_of(book, birch),
            (std::vector<std::string>{"2026-01-02 bank", "2026-07-05 yard", "2026-08-20 bank"}));
  EXPECT_EQ(sites_of(book, alder), (std::vector<std::string>{"2026-01-02 bank"}));
}

TEST(Stays, there_and_back_on_one_day_is_no_move) {
  ToldBook book;
  for (const char* site : {"yard", "bank"})
    book.must(day_of(7, 5),
              entries::Hive{.hive = HiveId("h2"), .name = "h2", .site = SiteId(site), .type = "National"});
  EXPECT_EQ(sites_of(book, birch), (std::vector<std::string>{"2026-01-02 bank"}));
}

TEST(Stays, a_move_within_the_site_is_none) {
  ToldBook book;
  book.must(day_of(6, 1), entries::ColonyMoved{.colony = alder, .hive = h3});
  EXPECT_EQ(sites_of(book, alder).size(), 1U);
}

TEST(Stays, a_colony_transferred_to_a_hive_elsewhere_and_one_split_off_stand_there) {
  ToldBook book;
  book.must(day_of(6, 1), entries::Transfer{.colony = alder, .hive = HiveId("h4")});
  book.must(day_of(6, 2),
            entries::Split{.colony = birch, .into = ColonyId("cedar"), .name = "Cedar", .hive = h3});
  EXPECT_EQ(sites_of(book, alder), (std::vector<std::string>{"2026-01-02 bank", "2026-06-01 yard"}));
  EXPECT_EQ(sites_of(book, ColonyId("cedar")), (std::vector<std::string>{"2026-06-02 bank"}));
}

TEST(Stays, ways_are_measured_on_the_great_circle) {
  const auto site = [](double latitude, double longitude) {
    return entries::Site{.latitude_deg = latitude, .longitude_deg = longitude};
  };
  // A minute of arc of a meridian is about a nautical mile (1.852 km); the equator's quarter about 10,007 km.
  EXPECT_NEAR(km_between(site(52, -1), site(52 + 1 / 60.0, -1)), 1.852, 0.003);
  EXPECT_NEAR(km_between(site(0, 0), site(0, 90)), 10'007, 2);
  EXPECT_EQ(km_between(site(52, -1), site(52, -1)), 0);
}

}  // namespace
}  // namespace beegarth::garth
