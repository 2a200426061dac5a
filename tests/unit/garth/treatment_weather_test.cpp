// A need to treat is judged by the days to come. Everything invented; the limits are those of the table's
// sources (trade facts: formic acid at day maxima of 10 to 29.5 C, thymol not above 30 C and weak below a
// mean of 15 C, oxalic acid not below about 3 C).
#include "garth/plan/treatment_weather.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace beegarth::garth {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

const Date august = *Date::from_ymd(2026, 8, 3);

work::NeedsInput days_of(double highest_C, double mean_C) {
  work::NeedsInput input{.today = august, .days = 14};
  work::SiteStatus site{.site = SiteId("withy"), .name = "Withy Meadow"};
  site.day_max_C.assign(14, highest_C);
  site.day_mean_C.assign(14, mean_C);
  input.sites.push_back(site);
  return input;
}

facts::Need judged(const char* key, const work::NeedsInput& input) {
  facts::Need need;
  need.key = key;
  need.site = SiteId("withy");
  need.colony = ColonyId("alder");
  need.earliest = need.best = need.latest = input.today;
  std::vector<facts::Need> needs{need};
  EXPECT_TRUE(judge_treatments(needs, input, *Tables::built_in()));
  return needs.front();
}

TEST(TreatmentWeather, saysOfEachClassWhatSpeaksAgainstItAndFromWhere) {
  const auto mild = judged("treat/alder", days_of(24, 17));
  ASSERT_FALSE(mild.why.empty());
  EXPECT_THAT(mild.why.back().text,
              HasSubstr("thymol (days of up to 24 C, mean 17 C): nothing seen against it"));
  EXPECT_THAT(mild.why.back().text, HasSubstr("The label decides"));
  EXPECT_THAT(mild.cautions, Contains(HasSubstr("By forecast and season: thymol")));
  const auto hot = judged("treat/alder", days_of(32, 22));
  EXPECT_THAT(hot.why.back().text, HasSubstr("not now, days of more than 30 C are too hot for thymol"));
  EXPECT_THAT(hot.why.back().text,
              HasSubstr("not now, days of more than 29.5 C are too hot for formic acid"));
  EXPECT_THAT(hot.why.back().sources, Not(IsEmpty()));
  EXPECT_EQ(hot.held, "") << "strips are left";
}

TEST(TreatmentWeather, holdsWhatNoClassThatIsLeftSuits) {
  auto input = days_of(32, 22);
  input.refused = {facts::Deed::synthetic_strips};
  EXPECT_THAT(judged("treat/alder", input).held, HasSubstr("the days to come suit no kind that is left"));
  input = days_of(1, -1);
  EXPECT_THAT(judged("winter-treatment/alder/2026", input).held, HasSubstr("too cold for oxalic acid"));
  EXPECT_EQ(judged("winter-treatment/alder/2026", days_of(6, 3)).held, "");
}

TEST(TreatmentWeather, namesNoClassThatTheKeeperRefuses) {
  auto input = days_of(20, 14);
  input.refused = {facts::Deed::organic_acids};
  const auto need = judged("treat/alder", input);
  EXPECT_THAT(need.why.back().text, Not(HasSubstr("formic")));
  EXPECT_THAT(need.why.back().text, HasSubstr("strips"));
}

TEST(TreatmentWeather, saysNothingOfDegreesWhereNoneAreKnownAndNothingToOtherNeeds) {
  work::NeedsInput input = days_of(20, 14);
  input.sites.front().day_max_C.clear();
  EXPECT_THAT(judged("treat/alder", input).why.back().text, Not(HasSubstr("days of up to")));
  EXPECT_THAT(judged("room/alder", days_of(40, 30)).why, IsEmpty());
}

}  // namespace
}  // namespace beegarth::garth
