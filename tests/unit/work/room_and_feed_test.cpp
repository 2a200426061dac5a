#include <gtest/gtest.h>

#include "quiet_colony.hpp"

namespace beegarth::work {
namespace {

TEST(Room, IsASuperOnAnUprightHive) {
  auto input = invented(day(2026, 5, 20));
  give_odds(input, facts::EventKind::out_of_room, 0.2, 0.9);
  const auto needs = needs_of(input);
  const auto* need = find(needs, "room/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_NE(need->what.find("super"), std::string::npos);
}

TEST(Room, IsBarsAndTheFollowerInALongHiveAndNeverABox) {
  auto input = invented(day(2026, 5, 20));
  give_odds(input, facts::EventKind::out_of_room, 0.2, 0.9);
  auto& hive = input.colonies.front().dwelling;
  hive.form = facts::HiveForm::horizontal;
  hive.can_super = false;
  const auto needs = needs_of(input);
  const auto* need = find(needs, "room/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_NE(need->what.find("follower"), std::string::npos);
  EXPECT_EQ(all_words(*need).find("super"), std::string::npos);
}

TEST(Room, IsNotPutOnAHiveThatTakesNoMore) {
  auto input = invented(day(2026, 5, 20));
  give_odds(input, facts::EventKind::out_of_room, 0.2, 0.9);
  auto& hive = input.colonies.front().dwelling;
  hive.can_super = false;
  hive.brood_combs = hive.brood_combs_max = 11;
  EXPECT_NE(find(needs_of(input), "room/alder-5")->what.find("no more room"), std::string::npos);
}

TEST(Room, NotWhereTheOddsAreLowNorInAutumn) {
  auto input = invented(day(2026, 5, 20));
  give_odds(input, facts::EventKind::out_of_room, 0.0, 0.1);
  EXPECT_EQ(find(needs_of(input), "room/alder-5"), nullptr);
  auto autumn = invented(day(2026, 9, 20));
  give_odds(autumn, facts::EventKind::out_of_room, 0.5, 0.9);
  EXPECT_EQ(find(needs_of(autumn), "room/alder-5"), nullptr);
}

TEST(Room, SaysWhatOneDoes) {
  auto input = invented(day(2026, 5, 20));
  give_odds(input, facts::EventKind::out_of_room, 0.2, 0.9);
  auto& hive = input.colonies.front().dwelling;
  hive.can_super = false;
  hive.brood_combs = hive.brood_combs_max = 11;
  EXPECT_EQ(find(needs_of(input), "room/alder-5")->what.rfind("take off ripe combs", 0), 0U);
  hive.brood_combs = hive.brood_combs_max = 5;
  EXPECT_EQ(find(needs_of(input), "room/alder-5")->what.rfind("move the nucleus into a full hive", 0), 0U);
}

TEST(Room, GivesANucleusAFullHiveBeforeASuper) {
  auto input = invented(day(2026, 5, 20));
  give_odds(input, facts::EventKind::out_of_room, 0.2, 0.9);
  auto& hive = input.colonies.front().dwelling;
  hive.can_super = true;
  hive.super_combs = 0;
  hive.super_combs_max = 20;
  hive.brood_combs = hive.brood_combs_max = 5;
  EXPECT_EQ(find(needs_of(input), "room/alder-5")->what.rfind("move the nucleus into a full hive", 0), 0U);
}

TEST(Room, PutsNoSuperOnBeforeATreatmentAndItsWithdrawalAreOver) {
  auto input = invented(day(2026, 5, 20));
  give_odds(input, facts::EventKind::out_of_room, 0.2, 0.9);
  input.days = 60;
  auto& colony = input.colonies.front();
  colony.last_treatment = Sighting{day(2026, 5, 10), EntryId("strips"), 42};
  colony.treatment_withdrawal_days = 3;
  const auto needs = needs_of(input);
  const auto* need = find(needs, "room/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_EQ(need->earliest, day(2026, 6, 24));
  EXPECT_LE(need->earliest, need->best);
  EXPECT_LE(need->best, need->latest);
  EXPECT_NE(need->what.find("when the treatment and its withdrawal are over"), std::string::npos);
}

TEST(Feed, NeverSyrupInTheCold) {
  for (const int month : {10, 11, 12, 1, 2, 3}) {
    auto input = invented(day(2026, month, 10));
    give_odds(input, facts::EventKind::stores_short, 0.3, 0.9);
    const auto needs = needs_of(input);
    const auto* need = find(needs, "feed/alder-5");
    ASSERT_NE(need, nullptr) << month;
    EXPECT_NE(need->what.find("fondant"), std::string::npos);
    EXPECT_EQ(need->what.find("syrup"), std::string::npos);
  }
}

TEST(Feed, IsAtDuskInADearth) {
  auto input = invented(day(2026, 6, 10));
  give_odds(input, facts::EventKind::stores_short, 0.3, 0.9);
  EXPECT_EQ(find(needs_of(input), "feed/alder-5")->clock, facts::Clock::any);
  input.sites.front().nectar_by_month = {0, 0, 0, 1, 3, 0.1, 3, 1, 0, 0, 0, 0};
  const auto needs = needs_of(input);
  EXPECT_EQ(find(needs, "feed/alder-5")->clock, facts::Clock::dusk);
  EXPECT_NE(all_words(*find(needs, "feed/alder-5")).find("Robbing"), std::string::npos);
}

TEST(Feed, IsTheirOwnHoneyAndNoSyrupWhileSupersAreOn) {
  auto input = invented(day(2026, 6, 10));
  give_odds(input, facts::EventKind::stores_short, 0.3, 0.9);
  input.colonies.front().supers_on = seen(day(2026, 5, 1), 10, "supers");
  const auto needs = needs_of(input);
  const auto* need = find(needs, "feed/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_NE(need->what.find("own honey"), std::string::npos);
  for (const auto& item : need->take) EXPECT_EQ(item.find("syrup"), std::string::npos) << item;
  EXPECT_NE(all_words(*need).find("supers off first"), std::string::npos);
}

TEST(Feed, SavesMostOfAColonyThatIsShortAlready) {
  auto input = invented(day(2026, 6, 10));
  give_odds(input, facts::EventKind::stores_short, 1, 1);
  const auto needs = needs_of(input);
  const auto& loss = find(needs, "feed/alder-5")->loss;
  EXPECT_LT(loss.by_day.front(), 0.25 * loss.never);
  EXPECT_TRUE(std::is_sorted(loss.by_day.begin(), loss.by_day.end()));
  EXPECT_LE(loss.by_day.back(), loss.never + 1e-9);
}

TEST(Feed, InTheSeasonOnlyWhereItMayRunOutBeforeTheNextLook) {
  auto june = invented(day(2026, 6, 10));
  give_odds(june, facts::EventKind::stores_short, 0.1, 0.4);  // 16 % within a week, 22 % within two
  EXPECT_EQ(find(needs_of(june), "feed/alder-5"), nullptr);
  auto march = invented(day(2026, 3, 10));
  give_odds(march, facts::EventKind::stores_short, 0.1, 0.4);
  EXPECT_NE(find(needs_of(march), "feed/alder-5"), nullptr);
}

TEST(Feed, NotWhereStoresAreAmple) {
  auto input = invented(day(2026, 6, 10));
  give_odds(input, facts::EventKind::stores_short, 0, 0.05);
  EXPECT_EQ(find(needs_of(input), "feed/alder-5"), nullptr);
}

TEST(Dearth, IsToldBeforeItBegins) {
  auto input = invented(day(2026, 5, 25));
  input.sites.front().nectar_by_month = {0, 0, 0, 1, 3, 0.1, 3, 1, 0, 0, 0, 0};
  const auto needs = needs_of(input);
  ASSERT_NE(find(needs, "dearth/withy"), nullptr);
  EXPECT_EQ(find(needs, "dearth/withy")->best, day(2026, 6, 1));
  input.sites.front().nectar_by_month.clear();
  EXPECT_EQ(find(needs_of(input), "dearth/withy"), nullptr);
}

}  // namespace
}  // namespace beegarth::work
