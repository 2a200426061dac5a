// Whatever comes in, a plan keeps its own rules: every need is told once, within its window and the keeper's
// hours.
#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "garth/plan/mip_cbc.hpp"
#include "garth/plan/plan_json.hpp"
#include "garth/plan/plan_text.hpp"
#include "reference/plan_instances.hpp"

namespace beegarth {
namespace {

work::Plan plan_of(const work::PlanInput& input) {
  auto plan = work::plan_days(input, garth::cbc_solver());
  EXPECT_TRUE(plan) << one_line(plan.problem());
  return plan ? *plan : work::Plan{};
}

std::string told(const work::Plan& plan) {
  return garth::plan_json(plan, {}).dump() + garth::plan_text(plan, {});
}

void expect_sound(const work::PlanInput& input, const work::Plan& plan) {
  std::multiset<std::string> keys;
  for (const auto& visit : plan.visits) {
    const auto& hours = input.hours[static_cast<std::size_t>(visit.date - input.from)];
    EXPECT_GE(visit.start_hour, hours.start_hour);
    EXPECT_LE(visit.end_hour, hours.end_hour + 1e-9);
    EXPECT_FALSE(visit.jobs.empty());
    for (const auto& job : visit.jobs) {
      keys.insert(job.need.key);
      EXPECT_EQ(job.need.site, visit.site);
      EXPECT_GE(visit.date, job.need.earliest);
      EXPECT_LE(visit.date, job.need.latest);
    }
    if (visit.fallback) {
      EXPECT_GT(*visit.fallback, visit.date);
    }
  }
  for (const auto& undone : plan.undone) {
    keys.insert(undone.need.key);
    EXPECT_FALSE(undone.because.empty());
    EXPECT_GE(undone.cost, 0);
  }
  EXPECT_EQ(keys.size(), input.needs.size());
  for (const auto& need : input.needs) EXPECT_EQ(keys.count(need.key), 1U) << need.key;
  EXPECT_TRUE(std::isfinite(plan.expected_loss));
  EXPECT_LE(plan.bound, plan.expected_loss + 1e-9);
  EXPECT_EQ(told(plan).find("nan"), std::string::npos);
}

TEST(PlanBehaves, AtOneToEightSites) {
  for (int sites = 1; sites <= 8; ++sites)
    for (std::uint64_t number = 1; number <= 4; ++number) {
      const auto input = reference::some_plan_input(number * 100, {sites, 5, 10});
      expect_sound(input, plan_of(input));
    }
}

TEST(PlanBehaves, TheSameInputGivesTheSamePlan) {
  const auto input = reference::some_plan_input(7, {4, 7, 14});
  EXPECT_EQ(told(plan_of(input)), told(plan_of(input)));
}

TEST(PlanBehaves, TheOrderInWhichNeedsAreGivenDoesNotMatter) {
  auto input = reference::some_plan_input(8, {3, 7, 12});
  const auto plan = plan_of(input);
  std::reverse(input.needs.begin(), input.needs.end());
  EXPECT_EQ(told(plan_of(input)), told(plan));
}

TEST(PlanBehaves, InRainEveryDayNothingIsOpened) {
  auto input = reference::some_plan_input(9, {3, 6, 10});
  for (auto& site : input.weather)
    for (auto& day : site) {
      day.opening.fill(0);
      day.dry = 0;
    }
  for (auto& need : input.needs) need.clock = facts::Clock::opening;
  const auto plan = plan_of(input);
  expect_sound(input, plan);
  EXPECT_TRUE(plan.visits.empty());
  EXPECT_EQ(plan.undone.size(), input.needs.size());
}

TEST(PlanBehaves, WithoutHoursNothingIsPlannedAndAllIsNamed) {
  auto input = reference::some_plan_input(10, {3, 6, 10});
  for (auto& hours : input.hours) hours.end_hour = hours.start_hour;
  const auto plan = plan_of(input);
  expect_sound(input, plan);
  EXPECT_TRUE(plan.visits.empty());
  EXPECT_EQ(plan.undone.size(), input.needs.size());
}

TEST(PlanBehaves, WithoutNeedsThePlanIsEmptyAndCostsNothing) {
  auto input = reference::some_plan_input(11, {3, 6, 0});
  const auto plan = plan_of(input);
  EXPECT_TRUE(plan.visits.empty());
  EXPECT_TRUE(plan.undone.empty());
  EXPECT_EQ(plan.expected_loss, 0);
  EXPECT_TRUE(plan.proven_optimal);
}

TEST(PlanBehaves, MoreTimeNeverMakesThePlanWorse) {
  for (std::uint64_t number = 300; number < 320; ++number) {
    auto input = reference::some_plan_input(number, {3, 4, 8});
    for (auto& site : input.weather)
      for (auto& day : site) day.opening.fill(0.8);
    for (auto& need : input.needs) need.clock = facts::Clock::opening;
    const double before = plan_of(input).expected_loss;
    for (auto& hours : input.hours)
      if (hours.end_hour > hours.start_hour) hours.end_hour += 1;
    EXPECT_LE(plan_of(input).expected_loss, before + 1e-6) << number;
  }
}

TEST(PlanBehaves, NineSitesArePlannedAsTheEightWithMostToLose) {
  auto input = reference::some_plan_input(12, {9, 4, 18});
  for (auto& need : input.needs)
    if (need.site == SiteId("site-4")) need.loss.never = need.loss.by_day.front();
  const auto plan = plan_of(input);
  expect_sound(input, plan);
  ASSERT_FALSE(plan.remarks.empty());
  EXPECT_NE(plan.remarks.front().find("Site 4"), std::string::npos) << plan.remarks.front();
}

}  // namespace
}  // namespace beegarth
