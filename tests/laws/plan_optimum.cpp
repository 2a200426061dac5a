// The plan is the best there is: its value equals that of trying everything.
#include <gtest/gtest.h>

#include "garth/plan/mip_cbc.hpp"
#include "reference/best_plan.hpp"
#include "reference/plan_instances.hpp"
#include "work/plan_model.hpp"

namespace beegarth {
namespace {

using reference::InstanceSize;

void expect_best(std::uint64_t number, const InstanceSize& size) {
  const auto input = reference::some_plan_input(number, size);
  const auto plan = work::plan_days(input, garth::cbc_solver());
  ASSERT_TRUE(plan) << one_line(plan.problem());
  const work::Roads roads(input.travel, size.sites);
  const auto sifted = work::sift_needs(input, roads);
  const auto model = work::build_model(input, roads, sifted);
  // 1e-6: the tolerance of the solver's own arithmetic on sums of this size.
  EXPECT_NEAR(plan->expected_loss, reference::BestPlan(input, model).value(), 1e-6) << "instance " << number;
  EXPECT_TRUE(plan->proven_optimal) << "instance " << number;
}

TEST(PlanOptimum, EqualsTryingEverythingAtTwoSites) {
  for (std::uint64_t number = 1; number <= 120; ++number) expect_best(number, {2, 3, 4});
}

TEST(PlanOptimum, EqualsTryingEverythingAtFourSites) {
  for (std::uint64_t number = 1001; number <= 1060; ++number) expect_best(number, {4, 3, 5});
}

TEST(PlanOptimum, EqualsTryingEverythingAtEightSites) {
  for (std::uint64_t number = 2001; number <= 2025; ++number) expect_best(number, {8, 2, 6});
}

std::vector<work::OwnJob> jobs_of(const work::Plan& plan) {
  std::vector<work::OwnJob> own;
  for (const work::Visit& visit : plan.visits)
    for (const work::PlannedJob& job : visit.jobs)
      if (job.need.minutes > 0) own.push_back({job.need.key, visit.date});
  return own;
}

TEST(OwnWeek, TheBestPlanKeptAsOnesOwnCostsWhatItCosts) {
  for (std::uint64_t number = 1; number <= 60; ++number) {
    const auto input = reference::some_plan_input(number, {3, 3, 5});
    const auto best = work::plan_days(input, garth::cbc_solver());
    ASSERT_TRUE(best);
    const auto own = work::plan_own(input, jobs_of(*best), garth::cbc_solver());
    ASSERT_TRUE(own) << one_line(own.problem());
    EXPECT_NEAR(own->expected_loss, best->expected_loss, 1e-6) << "instance " << number;
  }
}

// Each job on the first day of its window, whatever it is worth.
TEST(OwnWeek, NoWeekOfOnesOwnIsCheaperThanTheBestPlanAndWhatFitsIsDoneOnItsDay) {
  int dearer = 0, done = 0;
  for (std::uint64_t number = 1; number <= 60; ++number) {
    auto input = reference::some_plan_input(number, {3, 3, 5});
    input.least_odds = 0;  // so that both choose among the same days
    const auto best = work::plan_days(input, garth::cbc_solver());
    std::vector<work::OwnJob> jobs;
    for (const facts::Need& need : input.needs) {
      const Date day = std::max(input.from, need.earliest);
      if (day < input.from + input.days) jobs.push_back({need.key, day});
    }
    const auto own = work::plan_own(input, jobs, garth::cbc_solver());
    ASSERT_TRUE(best && own);
    EXPECT_GE(own->expected_loss, best->expected_loss - 1e-6) << "instance " << number;
    dearer += own->expected_loss > best->expected_loss + 0.01 ? 1 : 0;
    for (const work::OwnJob& kept : jobs_of(*own)) {
      const auto meant =
          std::find_if(jobs.begin(), jobs.end(), [&](const auto& job) { return job.need == kept.need; });
      ASSERT_NE(meant, jobs.end());
      EXPECT_EQ(kept.date, meant->date);
      ++done;
    }
  }
  EXPECT_GT(dearer, 30);
  EXPECT_GT(done, 60);
}

TEST(OwnWeek, GoesAsFarAsTheKeeperMeansToHoweverLittleItIsWorth) {
  work::PlanInput input{.from = *Date::from_ymd(2026, 6, 1), .days = 1};
  input.sites = {{.site = SiteId("near"), .name = "Near"}, {.site = SiteId("far"), .name = "Far"}};
  input.travel.minutes = {{0, 5, 200}, {5, 0, 200}, {200, 200, 0}};
  work::SiteDay fit;
  fit.opening.fill(1);
  fit.daylight.fill(1);
  input.weather = {{fit}, {fit}};
  input.hours = {{8, 20}};
  facts::Need need{.key = "look/far", .what = "look", .site = SiteId("far")};
  need.earliest = need.best = need.latest = input.from;
  need.loss = {.from = input.from, .by_day = {0}, .never = 0.01, .unit = "kg"};
  input.needs = {need};
  EXPECT_TRUE(work::plan_days(input, garth::cbc_solver())->visits.empty());
  const auto own = work::plan_own(input, {{"look/far", input.from}}, garth::cbc_solver());
  ASSERT_TRUE(own);
  ASSERT_EQ(own->visits.size(), 1U);
  EXPECT_GT(own->expected_loss, 10) << "the way has its price";
}

TEST(OwnWeek, NamesWhatIsNoNeedOrLiesOutside) {
  const auto input = reference::some_plan_input(1, {2, 3, 4});
  const auto problem = [&](std::vector<work::OwnJob> own) {
    const auto plan = work::plan_own(input, own, garth::cbc_solver());
    return plan ? std::string() : one_line(plan.problem());
  };
  EXPECT_NE(problem({{"job/99", input.from}}).find("job/99"), std::string::npos);
  EXPECT_NE(problem({{"job/0", input.from + 40}}).find("outside"), std::string::npos);
  EXPECT_NE(problem({{"job/0", input.from}, {"job/0", input.from + 1}}).find("twice"), std::string::npos);
}

TEST(PlanOptimum, SomeInstancesLeaveRoomForAChoice) {
  // Guards the tests above: plans that are empty, or that do everything, would prove little.
  int some_done = 0, some_undone = 0;
  for (std::uint64_t number = 1; number <= 120; ++number) {
    const auto plan = work::plan_days(reference::some_plan_input(number, {2, 3, 4}), garth::cbc_solver());
    ASSERT_TRUE(plan);
    some_done += plan->visits.empty() ? 0 : 1;
    some_undone += plan->undone.empty() ? 0 : 1;
  }
  EXPECT_GT(some_done, 60);
  EXPECT_GT(some_undone, 60);
}

}  // namespace
}  // namespace beegarth
