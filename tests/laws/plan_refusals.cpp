// What cannot be planned is named plainly, and the rest is planned all the same.
#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "garth/plan/mip_cbc.hpp"
#include "work/plan.hpp"

namespace beegarth {
namespace {

Date may(int day) {
  return *Date::from_ymd(2026, 5, day);
}

// Two sites a quarter of an hour away, two colonies each, a week of fine days, a good need at "mill" that is
// always done.
class PlanRefusals : public testing::Test {
 protected:
  PlanRefusals() {
    input_.from = may(1);
    input_.days = 7;
    for (const char* site : {"mill", "ford"}) {
      input_.sites.push_back({SiteId(site), site, "", "", false});
      for (const char* number : {"-1", "-2"})
        input_.colonies.push_back(
            {ColonyId(std::string(site) + number), site, SiteId(site), number[1] - '0'});
      work::SiteDay day;
      std::fill(day.opening.begin() + 9, day.opening.begin() + 18, 0.9);
      std::fill(day.daylight.begin() + 6, day.daylight.begin() + 20, 1.0);
      input_.weather.emplace_back(7, day);
    }
    input_.hours.assign(7, {10, 14});
    input_.travel.minutes = {{0, 15, 15}, {15, 0, 10}, {15, 10, 0}};
    input_.needs.push_back(need("good/mill-1", "mill", "mill-1"));
  }

  static facts::Need need(const std::string& key, const std::string& site, const std::string& colony) {
    facts::Need need;
    need.key = key;
    need.what = "look";
    need.site = SiteId(site);
    if (!colony.empty()) need.colony = ColonyId(colony);
    need.earliest = need.best = may(1);
    need.latest = may(7);
    need.minutes = 20;
    need.loss = {may(1), std::vector<double>{0, 1, 2, 3, 4, 5, 6}, 30, "kg honey equivalent"};
    return need;
  }

  // Plans, expects the good need to be done, and returns why `key` is not.
  std::string why_not(const std::string& key) {
    const auto plan = work::plan_days(input_, garth::cbc_solver());
    EXPECT_TRUE(plan) << one_line(plan.problem());
    if (!plan) return "";
    EXPECT_TRUE(done(*plan, "good/mill-1"));
    for (const auto& undone : plan->undone)
      if (undone.need.key == key) return undone.because;
    return "it is done";
  }

  static bool done(const work::Plan& plan, const std::string& key) {
    return std::any_of(plan.visits.begin(), plan.visits.end(), [&](const auto& visit) {
      return std::any_of(visit.jobs.begin(), visit.jobs.end(),
                         [&](const auto& job) { return job.need.key == key; });
    });
  }

  work::PlanInput input_;
};

TEST_F(PlanRefusals, AGoneColony) {
  input_.needs.push_back(need("look/lost-9", "mill", "lost-9"));
  EXPECT_EQ(why_not("look/lost-9"), "no living colony lost-9 is known");
}

TEST_F(PlanRefusals, AColonyThatStandsElsewhere) {
  input_.needs.push_back(need("look/ford-1", "mill", "ford-1"));
  EXPECT_EQ(why_not("look/ford-1"), "ford-1 stands at ford, not at mill");
}

TEST_F(PlanRefusals, AnUnknownSite) {
  input_.needs.push_back(need("look/x", "nowhere", ""));
  EXPECT_EQ(why_not("look/x"), "no site nowhere is known");
}

TEST_F(PlanRefusals, AWindowThatEndsBeforeItBegins) {
  auto bad = need("look/mill-2", "mill", "mill-2");
  bad.earliest = may(5);
  bad.latest = may(3);
  input_.needs.push_back(bad);
  EXPECT_EQ(why_not("look/mill-2"), "its last day Sun 3 May lies before its first, Tue 5 May");
}

TEST_F(PlanRefusals, AWindowThatIsOverOrYetToCome) {
  auto over = need("look/mill-2", "mill", "mill-2");
  over.earliest = over.latest = may(1) - 3;
  input_.needs.push_back(over);
  EXPECT_EQ(why_not("look/mill-2"), "its time was over on Tue 28 April");
  input_.needs.back().earliest = may(20);
  input_.needs.back().latest = may(25);
  EXPECT_EQ(why_not("look/mill-2"), "its time begins Wed 20 May, after this plan");
}

TEST_F(PlanRefusals, ACircleOfWhatComesFirst) {
  auto a = need("a/mill-2", "mill", "mill-2"), b = need("b/ford-1", "ford", "ford-1");
  a.after = {"b/ford-1"};
  b.after = {"a/mill-2"};
  input_.needs.push_back(a);
  input_.needs.push_back(b);
  EXPECT_EQ(why_not("a/mill-2"), "it waits for \"look\" at ford in a circle");
  EXPECT_EQ(why_not("b/ford-1"), "it waits for \"look\" at mill in a circle");
}

TEST_F(PlanRefusals, WhatWaitsForSomethingThatCannotBeDone) {
  auto first = need("a/lost-9", "mill", "lost-9"), then = need("b/mill-2", "mill", "mill-2");
  then.after = {"a/lost-9"};
  input_.needs.push_back(first);
  input_.needs.push_back(then);
  EXPECT_EQ(why_not("b/mill-2"), "\"look\" at mill has to come first and is left undone");
}

TEST_F(PlanRefusals, ASiteWithoutTravelTime) {
  for (std::size_t i = 0; i < 3; ++i)
    if (i != 2) input_.travel.minutes[2][i] = input_.travel.minutes[i][2] = std::nullopt;
  input_.needs.push_back(need("look/ford-1", "ford", "ford-1"));
  EXPECT_EQ(why_not("look/ford-1"), "no travel time is known between home and ford");
}

TEST_F(PlanRefusals, ARoadGivenOneWayOnlyIsTakenBothWays) {
  input_.travel.minutes[2][0] = std::nullopt;
  input_.travel.minutes[1][2] = input_.travel.minutes[2][1] = std::nullopt;
  input_.needs.push_back(need("look/ford-1", "ford", "ford-1"));
  EXPECT_EQ(why_not("look/ford-1"), "it is done");
}

TEST_F(PlanRefusals, TooFewPeople) {
  input_.needs.push_back(need("lift/mill-2", "mill", "mill-2"));
  input_.needs.back().people = 2;
  EXPECT_EQ(why_not("lift/mill-2"), "it takes 2 people and there is one");
}

TEST_F(PlanRefusals, TooCold) {
  input_.needs.push_back(need("look/mill-2", "mill", "mill-2"));
  input_.needs.back().temperature_min_C = 30;
  EXPECT_EQ(why_not("look/mill-2").substr(0, 38), "no day fit for opening up to Thu 7 May");
}

TEST_F(PlanRefusals, MoreThanADayHolds) {
  input_.needs.push_back(need("long/mill-2", "mill", "mill-2"));
  input_.needs.back().minutes = 600;
  EXPECT_EQ(why_not("long/mill-2"), "the way there takes more than your hours");
}

TEST_F(PlanRefusals, WhatIsNotWorthTheWay) {
  input_.needs.push_back(need("idle/ford-1", "ford", "ford-1"));
  input_.needs.back().loss.by_day.assign(7, 0.0);
  input_.needs.back().loss.never = 0.01;
  EXPECT_EQ(why_not("idle/ford-1"), "going costs more than it saves");
}

TEST_F(PlanRefusals, WhatIsNotWorthItsMinutesWhereOneIsAnyway) {
  input_.needs.push_back(need("idle/mill-2", "mill", "mill-2"));
  input_.needs.back().loss.by_day.assign(7, 0.0);
  input_.needs.back().loss.never = 0.01;
  EXPECT_EQ(why_not("idle/mill-2"), "you are there, but the time it takes costs more than it saves");
}

TEST_F(PlanRefusals, AClashIsNamed) {
  input_.needs.push_back(need("less/mill-1", "mill", "mill-1"));
  input_.needs.back().loss.never = 10;
  input_.needs.back().clashes = {"good/mill-1"};
  EXPECT_EQ(why_not("less/mill-1"), "it clashes with \"look\" at mill, which is worth more");
}

TEST_F(PlanRefusals, NothingIsOpenedWhileAColonyIsToBeLeftShut) {
  auto shut = need("leave-shut/mill-1", "mill", "mill-1");
  shut.what = "do not open mill-1: a virgin is likely to be flying until Mon 4 May";
  shut.minutes = 0;
  shut.latest = may(4);
  shut.clashes = {"good/mill-1"};
  input_.needs.push_back(shut);
  const auto plan = work::plan_days(input_, garth::cbc_solver());
  ASSERT_TRUE(plan);
  ASSERT_EQ(plan->visits.size(), 1U);
  EXPECT_GT(plan->visits.front().date, may(4));
  ASSERT_FALSE(plan->remarks.empty());
  EXPECT_NE(plan->remarks.front().find("virgin"), std::string::npos);
}

TEST_F(PlanRefusals, TheSuspectColonyIsSeenAfterEveryOther) {
  auto ill = need("suspect/mill-1", "mill", "mill-1");
  ill.last_in_round = true;
  ill.loss.by_day.assign(7, 0.0);
  for (std::size_t day = 1; day < 7; ++day) ill.loss.by_day[day] = 50;
  ill.loss.never = 200;
  input_.needs.front() = ill;
  for (const char* colony : {"ford-1", "ford-2"})
    input_.needs.push_back(need(std::string("good/") + colony, "ford", colony));
  input_.needs.push_back(need("good/mill-2", "mill", "mill-2"));
  const auto plan = work::plan_days(input_, garth::cbc_solver());
  ASSERT_TRUE(plan);
  ASSERT_EQ(plan->visits.size(), 2U);
  EXPECT_EQ(plan->visits.front().site, SiteId("ford"));
  EXPECT_EQ(plan->visits.back().jobs.back().need.key, "suspect/mill-1");
  EXPECT_LE(plan->visits.front().end_hour, plan->visits.back().start_hour);
}

TEST_F(PlanRefusals, ACallFromHomeNeedsNoWayNoHoursAndNoWeather) {
  auto call = need("tell-inspector/ford-1", "ford", "ford-1");
  call.at_home = true;
  input_.needs.push_back(call);
  input_.hours.assign(7, {10, 10});
  const auto plan = work::plan_days(input_, garth::cbc_solver());
  ASSERT_TRUE(plan);
  ASSERT_EQ(plan->at_home.size(), 1U);
  EXPECT_EQ(plan->at_home.front().need.key, "tell-inspector/ford-1");
  EXPECT_TRUE(plan->visits.empty());
}

TEST_F(PlanRefusals, AHiveIsOpenedOnceForTwoJobsWhereOpeningHasItsPrice) {
  auto& first = input_.needs.front();
  first.loss.by_day = {0, 0, 0, 0, 0, 0, 0};
  auto room = need("room/mill-1", "mill", "mill-1");
  room.earliest = room.best = may(4);
  room.loss.by_day = {0, 0, 0, 0, 1, 2, 3};
  auto other = need("good/mill-2", "mill", "mill-2");
  other.loss.by_day = {0, 9, 9, 9, 9, 9, 9};
  input_.needs.push_back(room);
  input_.needs.push_back(other);
  const auto days_of_mill_1 = [&] {
    std::vector<Date> days;
    const auto plan = work::plan_days(input_, garth::cbc_solver());
    EXPECT_TRUE(plan);
    for (const auto& visit : plan->visits)
      for (const auto& job : visit.jobs)
        if (job.need.colony == ColonyId("mill-1")) days.push_back(visit.date);
    return days;
  };
  EXPECT_EQ(days_of_mill_1(), (std::vector<Date>{may(1), may(4)})) << "each on its best day";
  input_.price_of_opening = 0.5;
  EXPECT_EQ(days_of_mill_1(), (std::vector<Date>{may(4), may(4)})) << "together";
}

TEST_F(PlanRefusals, TheStopThatWantsDuskIsTheLaterOne) {
  for (const char* dusk_at : {"mill", "ford"}) {
    input_.needs.clear();
    for (const char* site : {"mill", "ford"}) {
      input_.needs.push_back(need(std::string("job/") + site, site, std::string(site) + "-1"));
      if (std::string(site) == dusk_at) input_.needs.back().clock = facts::Clock::dusk;
    }
    const auto plan = work::plan_days(input_, garth::cbc_solver());
    ASSERT_TRUE(plan);
    ASSERT_EQ(plan->visits.size(), 2U);
    EXPECT_EQ(plan->visits.back().site, SiteId(dusk_at));
  }
}

TEST_F(PlanRefusals, NumbersThatAreNotFiniteAndTablesOfTheWrongSizeAreProblems) {
  auto bad = input_;
  bad.needs.front().loss.never = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(work::plan_days(bad, garth::cbc_solver()));
  bad = input_;
  bad.hours.pop_back();
  EXPECT_FALSE(work::plan_days(bad, garth::cbc_solver()));
  bad = input_;
  bad.travel.minutes.pop_back();
  EXPECT_FALSE(work::plan_days(bad, garth::cbc_solver()));
  bad = input_;
  bad.travel.minutes[0][1] = -5;
  EXPECT_FALSE(work::plan_days(bad, garth::cbc_solver()));
  bad = input_;
  bad.days = 0;
  EXPECT_FALSE(work::plan_days(bad, garth::cbc_solver()));
}

}  // namespace
}  // namespace beegarth
