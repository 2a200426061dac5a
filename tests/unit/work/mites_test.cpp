#include <gtest/gtest.h>

#include "invented.hpp"

namespace beegarth::work {
namespace {

TEST(MiteCount, IsByBoardWhereOneFitsAndByWashWhereNoneDoes) {
  auto input = invented(day(2026, 6, 10));
  input.colonies.front().last_mite_count = seen(day(2026, 5, 5), 2, "count");
  auto needs = needs_of(input);
  ASSERT_NE(find(needs, "count-mites/alder-5"), nullptr);
  EXPECT_NE(find(needs, "count-mites/alder-5")->what.find("board in"), std::string::npos);
  EXPECT_EQ(find(needs, "count-mites/alder-5")->clock, facts::Clock::daylight);
  input.colonies.front().dwelling.can_board = false;
  needs = needs_of(input);
  EXPECT_NE(find(needs, "count-mites/alder-5")->what.find("wash"), std::string::npos);
  EXPECT_NE(find(needs, "count-mites/alder-5")->what.find("no board fits"), std::string::npos);
  EXPECT_EQ(find(needs, "count-mites/alder-5")->clock, facts::Clock::opening);
}

TEST(MiteCount, NotBeforeAMonthIsOver) {
  EXPECT_EQ(find(needs_of(invented(day(2026, 6, 10))), "count-mites/alder-5"), nullptr);
}

TEST(CountAfter, BelongsToEveryTreatment) {
  auto input = invented(day(2026, 9, 20));
  input.colonies.front().last_treatment = seen(day(2026, 8, 10), 28, "treated");
  input.colonies.front().last_mite_count = seen(day(2026, 8, 1), 12, "count");
  const auto needs = needs_of(input);
  ASSERT_NE(find(needs, "count-after/alder-5"), nullptr);
  EXPECT_EQ(find(needs, "count-after/alder-5")->best, day(2026, 9, 21));
  EXPECT_EQ(find(needs, "count-mites/alder-5"), nullptr);
  input.colonies.front().last_mite_count = seen(day(2026, 9, 15), 1, "count");
  EXPECT_EQ(find(needs_of(input), "count-after/alder-5"), nullptr);
}

TEST(Treat, IsAskedForByTheOddsOfDamagedWinterBees) {
  auto input = invented(day(2026, 8, 10));
  give_odds(input, facts::EventKind::winter_mites, 0.2, 0.6);
  const auto needs = needs_of(input);
  const auto* need = find(needs, "treat/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_NE(all_words(*need).find("authorised"), std::string::npos);
  EXPECT_NE(all_words(*need).find("read the label first"), std::string::npos);
  EXPECT_TRUE(std::is_sorted(need->loss.by_day.begin(), need->loss.by_day.end()));
}

TEST(Treat, NeverNamesADose) {
  for (int month = 1; month <= 12; ++month) {
    auto input = invented(day(2026, month, 10));
    give_odds(input, facts::EventKind::winter_mites, 0.4, 0.9);
    for (const auto& need : needs_of(input)) {
      if (need.key.rfind("treat/", 0) != 0 && need.key.rfind("winter-treatment/", 0) != 0) continue;
      const std::string words = all_words(need);
      for (const char* unit : {" ml", " g ", " mg", " millilitre", " gram"})
        EXPECT_EQ(words.find(unit), std::string::npos) << need.key << unit;
    }
  }
}

TEST(Treat, TakesTheSupersOffAndClashesWithRoom) {
  auto input = invented(day(2026, 8, 10));
  give_odds(input, facts::EventKind::winter_mites, 0.2, 0.6);
  input.colonies.front().supers_on = seen(day(2026, 6, 1), 10, "supers");
  const auto needs = needs_of(input);
  EXPECT_NE(find(needs, "treat/alder-5")->what.find("crop off"), std::string::npos);
  EXPECT_EQ(find(needs, "treat/alder-5")->clashes, std::vector<std::string>{"room/alder-5"});
}

TEST(Treat, NotAtLowOddsNotTwiceAndNotInTheFlow) {
  auto low = invented(day(2026, 8, 10));
  give_odds(low, facts::EventKind::winter_mites, 0, 0.1);
  EXPECT_EQ(find(needs_of(low), "treat/alder-5"), nullptr);
  auto treated = invented(day(2026, 9, 10));
  give_odds(treated, facts::EventKind::winter_mites, 0.2, 0.6);
  treated.colonies.front().last_treatment = seen(day(2026, 8, 10), 28, "treated");
  EXPECT_EQ(find(needs_of(treated), "treat/alder-5"), nullptr);
  auto flow = invented(day(2026, 5, 20));
  give_odds(flow, facts::EventKind::winter_mites, 0.2, 0.6);
  EXPECT_EQ(find(needs_of(flow), "treat/alder-5"), nullptr);
}

}  // namespace
}  // namespace beegarth::work
