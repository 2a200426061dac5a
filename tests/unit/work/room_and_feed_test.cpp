#include <gtest/gtest.h>

#include "invented.hpp"

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

TEST(Feed, SaysSupersOffWhereTheyAreOn) {
  auto input = invented(day(2026, 6, 10));
  give_odds(input, facts::EventKind::stores_short, 0.3, 0.9);
  input.colonies.front().supers_on = seen(day(2026, 5, 1), 10, "supers");
  EXPECT_NE(all_words(*find(needs_of(input), "feed/alder-5")).find("Supers off first"), std::string::npos);
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
