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
