// Empty hives, land terms, and hives in one long row before winter. Everything invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "quiet_colony.hpp"

namespace beegarth::work {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::Not;

const Date june = day(2026, 6, 5);

// ---- empty hives ----
TEST(EmptyHives, withoutAnAimAskForOneAndNameWhatMayFillThem) {
  NeedsInput input = invented(june);
  EXPECT_EQ(find(needs_of(input), "empty-hives/withy"), nullptr);
  input.sites.front().empty_hives = {"Long 1 (horizontal)"};
  const auto needs = needs_of(input);
  const auto* need = find(needs, "empty-hives/withy");
  ASSERT_NE(need, nullptr);
  EXPECT_TRUE(need->at_home);
  EXPECT_THAT(need->what, HasSubstr("Long 1 (horizontal)"));
  EXPECT_THAT(need->what, HasSubstr("set bait boxes, answer swarm calls, split the strongest or buy nuclei"));
  EXPECT_LE(need->loss.never, 1) << "of low worth";
}
TEST(EmptyHives, areNamedWhereNoColonyLivesAtAll) {
  NeedsInput input = invented(day(2026, 1, 10));
  input.colonies.clear();
  input.sites.front().empty_hives = {"a", "b", "c", "d", "e"};
  const auto needs = needs_of(input);
  EXPECT_THAT(find(needs, "empty-hives/withy")->what, HasSubstr("order nuclei now"));
  EXPECT_THAT(find(needs, "empty-hives/withy")->what, HasSubstr("d and others"));
}
TEST(EmptyHives, withAnAimAreItsOwnNeed) {
  NeedsInput input = invented(june);
  input.sites.front().empty_hives = {"Box 3"};
  input.aims = {{8, 4, EntryId("aim")}};
  const auto needs = needs_of(input);
  EXPECT_EQ(find(needs, "empty-hives/withy"), nullptr);
  EXPECT_THAT(find(needs, "stocks/all/2026-8")->what,
              HasSubstr("get 3 more stocks at all sites by 1 August"));
}
TEST(EmptyHives, atASuspectSiteWait) {
  NeedsInput input = invented(june);
  input.sites.front().empty_hives = {"Box 3"};
  input.colonies.front().suspect = true;
  EXPECT_THAT(find(needs_of(input), "empty-hives/withy")->held, HasSubstr("suspect"));
}

// ---- land ----
TEST(Land, anAgreementIsRenewedSomeWeeksBeforeItEnds) {
  NeedsInput input = invented(june);
  input.sites.front().agreement = LandTerm{seen(june + 90, 0, "land"), "Orla Fenwick (invented)"};
  EXPECT_EQ(find(needs_of(input), "agreement-ends/withy/2026"), nullptr) << "six weeks ahead is soon enough";
  input.sites.front().agreement->until = seen(june + 30, 0, "land");
  const auto needs = needs_of(input);
  const auto* need = find(needs, "agreement-ends/withy/2026");
  ASSERT_NE(need, nullptr);
  EXPECT_TRUE(need->at_home);
  EXPECT_THAT(need->what, HasSubstr("it ends on 5 July 2026 (Orla Fenwick (invented))"));
  EXPECT_THAT(need->why.front().entries, Contains(EntryId("land")));
}
TEST(Land, anInsuranceThatIsOverIsStillNamed) {
  NeedsInput input = invented(june);
  input.sites.front().insurance = LandTerm{seen(june - 10, 0, "land"), "third party"};
  EXPECT_THAT(find(needs_of(input), "insurance-ends/withy/2026")->what, HasSubstr("it ended on 26 May 2026"));
  input.sites.front().insurance->until = seen(june - 400, 0, "land");
  EXPECT_EQ(find(needs_of(input), "insurance-ends/withy/2025"), nullptr);
}

// ---- hives in one long row ----
TEST(LongHive, hasItsStoresOnOneSideBeforeWinterAndAnUprightOneIsNotAsked) {
  NeedsInput input = invented(day(2026, 9, 5));
  EXPECT_EQ(find(needs_of(input), "stores-aside/alder-5/2026"), nullptr);
  input.colonies.front().dwelling.form = facts::HiveForm::horizontal;
  const auto needs = needs_of(input);
  const auto* need = find(needs, "stores-aside/alder-5/2026");
  ASSERT_NE(need, nullptr);
  EXPECT_THAT(need->what, HasSubstr("together on one side of the nest"));
  EXPECT_THAT(all_words(*need), HasSubstr("crooked comb"));
  EXPECT_THAT(need->why.front().sources, Contains(HasSubstr("stores_apart_odds")));
  NeedsInput summer = invented(june);
  summer.colonies.front().dwelling.form = facts::HiveForm::horizontal;
  EXPECT_EQ(find(needs_of(summer), "stores-aside/alder-5/2026"), nullptr);
}
TEST(LongHive, isLookedThroughWithAnEyeToStraightComb) {
  NeedsInput input = invented(june);
  input.colonies.front().last_full_look = seen(june - 7, 0, "look");
  EXPECT_THAT(all_words(*find(needs_of(input), "look-cells/alder-5")), Not(HasSubstr("leaves its bar")));
  input.colonies.front().dwelling.form = facts::HiveForm::horizontal;
  EXPECT_THAT(all_words(*find(needs_of(input), "look-cells/alder-5")), HasSubstr("leaves its bar"));
}

// ---- food by the weather to come ----
TEST(Feed, asFondantWhereNoDayToComeIsWarmEnoughForSyrup) {
  NeedsInput input = invented(day(2026, 4, 10));
  give_odds(input, facts::EventKind::stores_short, 0.4, 0.9);
  input.sites.front().day_max_C = {12, 14, 9};
  EXPECT_THAT(find(needs_of(input), "feed/alder-5")->what, HasSubstr("syrup"));
  input.sites.front().day_max_C = {7, 9, 8};
  const auto cold = needs_of(input);
  EXPECT_THAT(find(cold, "feed/alder-5")->what, HasSubstr("fondant"));
  EXPECT_THAT(all_words(*find(cold, "feed/alder-5")), HasSubstr("the days to come reach 9 C at most"));
}

}  // namespace
}  // namespace beegarth::work
