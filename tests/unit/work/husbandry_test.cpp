// What was planted, combs with ages, and stocks that are wanted. Everything invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "quiet_colony.hpp"

namespace beegarth::work {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

// ---- plants ----
const Date june = day(2026, 6, 5);

NeedsInput with_hedge(Date today, Date planted) {
  NeedsInput input = invented(today);
  input.sites.front().plantings = {{.plant = "hawthorn",
                                    .where = "north edge",
                                    .count = 40,
                                    .planted = planted,
                                    .entry = EntryId("planted")}};
  return input;
}
Planting& hedge(NeedsInput& input) {
  return input.sites.front().plantings.front();
}

TEST(Plants, of_last_winter_are_watered_in_a_dry_june) {
  const auto needs = needs_of(with_hedge(june, day(2026, 1, 20)));
  const auto* need = find(needs, "water-plants/withy");
  ASSERT_NE(need, nullptr);
  EXPECT_THAT(need->what, HasSubstr("40 hawthorn (north edge)"));
  EXPECT_THAT(need->why.front().entries, ElementsAre(EntryId("planted")));
  EXPECT_LT(need->loss.by_day.front(), need->loss.never);
}
TEST(Plants, are_not_watered_in_a_wet_june_or_when_they_had_water_lately_or_are_old_enough) {
  NeedsInput wet = with_hedge(june, day(2026, 1, 20));
  wet.sites.front().rain_next_days_mm = 30;
  EXPECT_EQ(find(needs_of(wet), "water-plants/withy"), nullptr);
  NeedsInput watered = with_hedge(june, day(2026, 1, 20));
  hedge(watered).watered = june - 3;
  EXPECT_EQ(find(needs_of(watered), "water-plants/withy"), nullptr);
  EXPECT_EQ(find(needs_of(with_hedge(june, day(2024, 1, 20))), "water-plants/withy"), nullptr);
}
TEST(Plants, are_weeded_once_each_spring_for_three_years) {
  EXPECT_NE(find(needs_of(with_hedge(june, day(2024, 1, 20))), "weed-plants/withy"), nullptr);
  EXPECT_EQ(find(needs_of(with_hedge(june, day(2023, 1, 20))), "weed-plants/withy"), nullptr);
  NeedsInput weeded = with_hedge(june, day(2024, 1, 20));
  hedge(weeded).weeded = day(2026, 4, 2);
  EXPECT_EQ(find(needs_of(weeded), "weed-plants/withy"), nullptr);
  hedge(weeded).weeded = day(2025, 4, 2);
  EXPECT_NE(find(needs_of(weeded), "weed-plants/withy"), nullptr) << "last year's weeding is not this year's";
}
TEST(Plants, have_their_gaps_filled_in_the_first_winters_after) {
  const Date january = day(2027, 1, 10);
  EXPECT_NE(find(needs_of(with_hedge(january, day(2026, 1, 20))), "fill-gaps/withy"), nullptr);
  EXPECT_EQ(find(needs_of(with_hedge(january, day(2026, 12, 1))), "fill-gaps/withy"), nullptr)
      << "just planted";
  NeedsInput filled = with_hedge(january, day(2026, 1, 20));
  hedge(filled).gaps_filled = day(2026, 11, 20);
  EXPECT_EQ(find(needs_of(filled), "fill-gaps/withy"), nullptr) << "this winter already";
  EXPECT_EQ(find(needs_of(with_hedge(june, day(2026, 1, 20))), "fill-gaps/withy"), nullptr)
      << "not in summer";
}
TEST(Plants, south_of_the_equator_the_seasons_are_turned_round) {
  NeedsInput input = with_hedge(day(2026, 12, 10), day(2026, 7, 20));
  EXPECT_EQ(find(needs_of(input), "water-plants/withy"), nullptr);
  input.sites.front().latitude_deg = -40;
  EXPECT_NE(find(needs_of(input), "water-plants/withy"), nullptr);
  NeedsInput july = with_hedge(day(2027, 7, 10), day(2026, 7, 20));
  july.sites.front().latitude_deg = -40;
  EXPECT_NE(find(needs_of(july), "fill-gaps/withy"), nullptr);
  hedge(july).gaps_filled = day(2027, 5, 20);
  EXPECT_EQ(find(needs_of(july), "fill-gaps/withy"), nullptr);
}
TEST(Plants, beside_a_nest_are_watered_but_nobody_digs) {
  NeedsInput input = with_hedge(june, day(2026, 1, 20));
  hedge(input).nest = seen(june - 9, 0, "nest");
  hedge(input).nest_of = "bumblebee";
  const auto needs = needs_of(input);
  EXPECT_EQ(find(needs, "water-plants/withy")->held, "");
  const auto* weeding = find(needs, "weed-plants/withy");
  ASSERT_NE(weeding, nullptr);
  EXPECT_THAT(weeding->held, HasSubstr("bumblebee"));
  EXPECT_THAT(weeding->why.back().entries, ElementsAre(EntryId("nest")));
  input.sites.front().plantings.push_back(
      {.plant = "goat willow", .count = 3, .planted = day(2026, 1, 21), .entry = EntryId("willow")});
  const auto both = needs_of(input);
  const auto* rest = find(both, "weed-plants/withy");
  EXPECT_EQ(rest->held, "");
  EXPECT_THAT(rest->what, HasSubstr("3 goat willow"));
  EXPECT_THAT(rest->what, Not(HasSubstr("hawthorn")));
}

// ---- combs ----
TEST(OldCombs, are_renewed_by_a_third_in_spring) {
  NeedsInput input = invented(day(2026, 4, 5));
  input.colonies.front().brood_combs = {{"old ones", 6, 2022, EntryId("old")},
                                        {"young ones", 5, 2025, EntryId("young")}};
  const auto needs = needs_of(input);
  const auto* need = find(needs, "renew-combs/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_THAT(need->what, HasSubstr("4 old brood combs")) << "a third of eleven";
  EXPECT_THAT(need->why.front().entries, ElementsAre(EntryId("old")));
}
TEST(OldCombs, are_left_alone_in_summer_and_while_they_are_young) {
  NeedsInput input = invented(day(2026, 7, 5));
  input.colonies.front().brood_combs = {{"old ones", 6, 2020, EntryId("old")}};
  EXPECT_EQ(find(needs_of(input), "renew-combs/alder-5"), nullptr);
  input = invented(day(2026, 4, 5));
  input.colonies.front().brood_combs = {{"young ones", 6, 2024, EntryId("young")}};
  EXPECT_EQ(find(needs_of(input), "renew-combs/alder-5"), nullptr);
}
TEST(StoredCombs, are_looked_over_for_moth_in_summer_and_mice_in_winter) {
  NeedsInput input = invented(june);
  input.stored_combs = {seen(june - 100, 20, "store")};
  EXPECT_THAT(find(needs_of(input), "stored-combs/withy")->what, HasSubstr("wax moth"));
  input = invented(day(2026, 12, 5));
  input.stored_combs = {seen(june, 20, "store")};
  EXPECT_THAT(find(needs_of(input), "stored-combs/withy")->what, HasSubstr("mice"));
  input.stored_combs.clear();
  EXPECT_EQ(find(needs_of(input), "stored-combs/withy"), nullptr);
}

TEST(Plants, by_the_thousand_take_no_more_than_half_a_day_at_once) {
  NeedsInput input = with_hedge(june, june - 20);
  hedge(input).count = 5000;
  const auto needs = needs_of(input);
  const auto* need = find(needs, "guard-plants/withy");
  ASSERT_NE(need, nullptr);
  EXPECT_EQ(need->minutes, 180);
  EXPECT_THAT(need->what, HasSubstr("as many as 180 minutes allow"));
}

// ---- stocks ----
TEST(Stocks, too_few_for_the_month_ahead_are_told_from_home) {
  NeedsInput input = invented(june);
  input.sites.front().aims = {{8, 3, EntryId("aim")}};
  input.sites.front().empty_hives = {"Long 1 (horizontal)", "Box 3"};
  const auto needs = needs_of(input);
  const auto* need = find(needs, "stocks/withy/2026-8");
  ASSERT_NE(need, nullptr);
  EXPECT_TRUE(need->at_home);
  EXPECT_THAT(need->what, HasSubstr("get 2 more stocks"));
  EXPECT_THAT(need->why.front().text, HasSubstr("2 empty hives"));
}
TEST(Stocks, too_many_for_the_month_ahead_are_united_or_sold) {
  NeedsInput input = invented(june);
  input.aims = {{8, 0, EntryId("aim")}};
  EXPECT_THAT(find(needs_of(input), "stocks-over/all/2026-8")->what, HasSubstr("1 stock less"));
}
TEST(Stocks, are_neither_got_nor_given_away_at_a_suspect_site_nor_given_away_out_of_quarantine) {
  NeedsInput input = invented(june);
  input.sites.front().aims = {{8, 0, EntryId("aim")}};
  input.colonies.front().quarantine_until = seen(june + 9, 0, "swarm");
  EXPECT_THAT(find(needs_of(input), "stocks-over/withy/2026-8")->held, HasSubstr("quarantine"));
  input.sites.front().aims = {{8, 3, EntryId("aim")}};
  EXPECT_EQ(find(needs_of(input), "stocks/withy/2026-8")->held, "") << "more may come all the same";
  input.colonies.front().suspect = true;
  EXPECT_THAT(find(needs_of(input), "stocks/withy/2026-8")->held, HasSubstr("suspect"));
}
TEST(Stocks, a_wish_for_a_thousand_weighs_no_more_than_one_that_can_be_met) {
  NeedsInput input = invented(june);
  input.aims = {{8, 3, EntryId("aim")}};
  const double met = find(needs_of(input), "stocks/all/2026-8")->loss.never;
  input.aims = {{8, 1000, EntryId("aim")}};
  EXPECT_DOUBLE_EQ(find(needs_of(input), "stocks/all/2026-8")->loss.never, met);
}
TEST(Stocks, as_many_as_wanted_or_wanted_far_ahead_ask_for_nothing) {
  NeedsInput input = invented(june);
  input.sites.front().aims = {{7, 1, EntryId("enough")}, {4, 9, EntryId("far")}};
  for (const auto& need : needs_of(input)) EXPECT_NE(need.key.rfind("stocks/", 0), 0U) << need.key;
}

}  // namespace
}  // namespace beegarth::work
