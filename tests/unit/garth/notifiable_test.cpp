// What stops movement and what is to be reported hangs on the country and on the keeper's own rows.
// Everything invented.
#include "garth/ledgers/notifiable.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "garth/reports_due.hpp"
#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

Tables with_row(const char* table, const char* row, double value, const char* unit, entries::Text text = {}) {
  const entries::TableOverride own{.table = table,
                                   .row = row,
                                   .value = value,
                                   .unit = unit,
                                   .source = "a letter (invented)",
                                   .text = std::move(text)};
  return *Tables::built_in()->with(std::span(&own, 1));
}
const entries::MiteCount nine_mites{
    .colony = alder, .method = entries::MiteMethod::wash, .mites = 9, .bees = 300};

TEST(Notifiable, signs_of_foulbrood_are_a_suspicion_in_every_country_that_there_is_a_table_of) {
  for (const char* country : {"England", "wales", "scotland", "anywhere else"})
    EXPECT_THAT(shipped_notifiable().signs_in(ropy(alder), country), SizeIs(2)) << country;
}

TEST(Notifiable, what_is_only_reported_is_no_suspicion) {
  EXPECT_THAT(
      shipped_notifiable().signs_in(entries::Sign{.colony = alder, .signs = {"hornet", "chalk_brood"}}),
      IsEmpty());
  EXPECT_THAT(shipped_notifiable().signs_in(nine_mites), IsEmpty());
  EXPECT_FALSE(shipped_notifiable().names_one("varroa by the thousand"));
  EXPECT_TRUE(shipped_notifiable().names_one("EFB confirmed"));
  EXPECT_FALSE(shipped_notifiable().names_one("the self-befuddled")) << "a word in a word is none";
}

TEST(Notifiable, a_row_of_the_keepers_own_stops_movement_where_it_holds_and_nowhere_else) {
  const auto kept_free = *Notifiable::from(with_row("duty_scotland", "varroa_stops_movement", 1, "yes/no"));
  EXPECT_THAT(kept_free.signs_in(nine_mites, "Scotland"), ElementsAre("varroa mites counted"));
  EXPECT_THAT(kept_free.signs_in(nine_mites, "england"), IsEmpty());
  EXPECT_THAT(kept_free.signs_in(entries::MiteCount{.colony = alder, .mites = 0}, "scotland"), IsEmpty());
}

TEST(Notifiable, a_colony_is_suspect_by_the_law_of_the_site_where_it_stands) {
  const auto kept_free = *Notifiable::from(with_row("duty_scotland", "varroa_stops_movement", 1, "yes/no"));
  ToldBook book;
  book.must(day_of(5, 1), nine_mites);
  const auto suspect = [&] {
    return suspects_on(book.standing(day_of(6, 1)), day_of(6, 1), kept_free).at(alder);
  };
  EXPECT_EQ(suspect(), nullptr);
  book.must(day_of(1, 2), entries::Site{.site = SiteId("bank"),
                                        .name = "bank",
                                        .latitude_deg = 57,
                                        .longitude_deg = -4,
                                        .country = "Scotland"});
  const auto standing = book.standing(day_of(6, 1));
  const auto suspects = suspects_on(standing, day_of(6, 1), kept_free);
  ASSERT_NE(suspects.at(alder), nullptr);
  EXPECT_EQ(suspects.at(birch), nullptr);
}

// ---- reports ----
work::SiteStatus bank_of(const ToldBook& book, const Tables& tables = *Tables::built_in()) {
  work::NeedsInput input;
  input.sites.push_back({.site = SiteId("bank"), .name = "bank"});
  const auto standing = book.standing(day_of(6, 30));
  EXPECT_TRUE(take_reports_due(standing, book::state_of(standing, day_of(6, 30)), tables, input));
  return input.sites.front();
}

TEST(ReportsDue, of_varroa_are_owed_once_for_a_place_where_the_law_asks_for_it) {
  ToldBook book;
  EXPECT_THAT(bank_of(book).reports, IsEmpty());
  book.must(day_of(1, 2), entries::Setting{.name = "country", .value = "england"});
  book.must(day_of(5, 1), nine_mites);
  const auto owed = bank_of(book).reports;
  ASSERT_THAT(owed, SizeIs(1));
  EXPECT_EQ(owed.front().what, "varroa");
  EXPECT_THAT(owed.front().why, HasSubstr("once"));
  EXPECT_THAT(owed.front().entries, ElementsAre(book.last()));
  book.must(day_of(5, 3), entries::Reported{.site = SiteId("bank"), .what = "varroa"});
  EXPECT_THAT(bank_of(book).reports, IsEmpty());
}

TEST(ReportsDue, of_a_hornet_are_owed_and_foulbrood_is_told_at_once_instead) {
  ToldBook book;
  book.must(day_of(1, 2), entries::Setting{.name = "country", .value = "england"});
  book.must(day_of(5, 1), entries::Sign{.colony = alder, .signs = {"hornet"}});
  book.must(day_of(5, 2), ropy(birch));
  const auto owed = bank_of(book).reports;
  ASSERT_THAT(owed, SizeIs(1));
  EXPECT_EQ(owed.front().what, "yellow-legged hornet");
}

TEST(ReportsDue, whom_to_tell_can_be_the_keepers_own_words) {
  const ToldBook book;
  EXPECT_EQ(
      bank_of(book, with_row("duty_general", "authority", 0, "text", "Ms Invented, bee inspector")).authority,
      "Ms Invented, bee inspector");
}

}  // namespace
}  // namespace beegarth::garth
