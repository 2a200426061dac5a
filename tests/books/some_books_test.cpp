// The whole way, on books that nobody wrote: whatever stands in them, a plan comes back, keeps its own rules
// and names what it leaves.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <set>

#include "garth/plan/plan.hpp"
#include "garth/plan/plan_json.hpp"
#include "garth/plan/plan_text.hpp"
#include "reference/some_book.hpp"

namespace beegarth::garth {
namespace {

using reference::BookShape;
using reference::SomeBook;
using ::testing::HasSubstr;
using ::testing::Not;

const Date today = *Date::from_ymd(2026, 5, 28);

class SomeBooks : public testing::Test {
 protected:
  void TearDown() override {
    for (const char* tail : {"", "-wal", "-shm"}) std::filesystem::remove(path_ + tail);
  }

  PlanAnswer planned(std::uint64_t seed, const BookShape& shape) {
    TearDown();
    {
      const SomeBook some(seed, shape, today);
      auto book =
          book::Book::open(path_, {.create = true, .who = "nobody (invented)"}, machine_surroundings());
      EXPECT_TRUE(book) << one_line(book.problem());
      const auto kept = book->append(some.drafts());
      EXPECT_TRUE(kept) << one_line(kept.problem());
    }
    const auto session = open_session(path_, {.today = today,
                                              .seed = seed,
                                              .members = shape.heavy_mites ? 512 : 48,
                                              .weather_members = 12,
                                              .threads = 1});
    EXPECT_TRUE(session) << one_line(session.problem());
    auto answer = plan_next_days(*session, 14);
    EXPECT_TRUE(answer) << one_line(answer.problem());
    return answer ? *answer : PlanAnswer{};
  }

  // The plan as a person and as a program read it.
  static std::string told(const PlanAnswer& answer) {
    return plan_text(answer.plan, answer.names) + plan_json(answer.plan, answer.names).dump();
  }

  static void expect_sound(const PlanAnswer& answer) {
    const work::Plan& plan = answer.plan;
    std::set<std::string> keys;
    for (const auto& visit : plan.visits) {
      EXPECT_GE(visit.date, plan.from);
      EXPECT_LE(visit.date, plan.to);
      EXPECT_GE(visit.start_hour, 10);
      EXPECT_LE(visit.end_hour, 17 + 1e-9);
      EXPECT_FALSE(visit.jobs.empty());
      for (const auto& job : visit.jobs) {
        EXPECT_TRUE(keys.insert(job.need.key).second) << job.need.key << " is planned twice";
        EXPECT_FALSE(job.need.why.empty()) << job.need.key;
        EXPECT_EQ(job.need.site, visit.site);
      }
    }
    for (const auto& undone : plan.undone) {
      EXPECT_TRUE(keys.insert(undone.need.key).second) << undone.need.key << " is told twice";
      EXPECT_FALSE(undone.because.empty());
      EXPECT_GE(undone.cost, 0);
    }
    EXPECT_TRUE(std::isfinite(plan.expected_loss));
    EXPECT_THAT(told(answer), Not(HasSubstr("nan")));
    EXPECT_THAT(told(answer), Not(HasSubstr("null")));
    for (const auto& outlook : answer.outlooks)
      for (const auto& event : outlook.events)
        for (const auto& day : event.course) {
          EXPECT_GE(day.odds.low, 0);
          EXPECT_LE(day.odds.low, day.odds.value + 1e-9);
          EXPECT_LE(day.odds.value, day.odds.high + 1e-9);
          EXPECT_LE(day.odds.high, 1);
        }
  }

  std::string path_ = (std::filesystem::temp_directory_path() /
                       ("beegarth-some-book-" + std::to_string(::getpid()) + ".garth"))
                          .string();
};

TEST_F(SomeBooks, are_planned_at_one_to_eight_sites) {
  for (int sites = 1; sites <= 8; ++sites) {
    const PlanAnswer answer = planned(static_cast<std::uint64_t>(sites), {.sites = sites});
    expect_sound(answer);
    EXPECT_EQ(answer.outlooks.size(), static_cast<std::size_t>(sites * reference::colonies_per_site));
    EXPECT_FALSE(answer.plan.visits.empty())
        << "two fortnights' worth of looks are due at " << sites << " sites";
  }
}

TEST_F(SomeBooks, without_an_hour_of_time_have_no_visit_and_name_everything) {
  const PlanAnswer answer = planned(11, {.sites = 3, .no_hours = true});
  expect_sound(answer);
  EXPECT_TRUE(answer.plan.visits.empty());
  EXPECT_FALSE(answer.plan.undone.empty());
}

TEST_F(SomeBooks, in_rain_without_end_offer_hardly_an_hour_for_opening) {
  const auto within_the_week = [](const work::Plan& plan) {
    double best = 0;
    for (const auto& visit : plan.visits)
      if (visit.date < today + 7) best = std::max(best, visit.opening_odds);
    return best;
  };
  const auto opened_within_the_week = [](const work::Plan& plan) {
    std::ptrdiff_t count = 0;
    for (const auto& visit : plan.visits)
      if (visit.date < today + 7)
        count += std::count_if(visit.jobs.begin(), visit.jobs.end(), [](const work::PlannedJob& job) {
          return job.need.clock == facts::Clock::opening && job.need.minutes > 0;
        });
    return count;
  };
  std::ptrdiff_t opened_wet = 0, opened_fair = 0;
  for (const unsigned seed : {12U, 22U, 32U, 42U, 52U, 62U}) {
    const PlanAnswer wet = planned(seed, {.sites = 3, .rain_every_day = true});
    expect_sound(wet);
    const PlanAnswer fair = planned(seed, {.sites = 3});
    EXPECT_LT(within_the_week(wet.plan), within_the_week(fair.plan));
    EXPECT_GT(wet.plan.expected_loss, fair.plan.expected_loss);
    opened_wet += opened_within_the_week(wet.plan);
    opened_fair += opened_within_the_week(fair.plan);
  }
  EXPECT_LT(opened_wet, opened_fair);
}

TEST_F(SomeBooks, with_heavy_mites_ask_for_a_treatment_of_every_colony) {
  const PlanAnswer answer = planned(13, {.sites = 2, .heavy_mites = true});
  expect_sound(answer);
  for (int site = 0; site < 2; ++site)
    for (int number = 0; number < reference::colonies_per_site; ++number)
      EXPECT_THAT(told(answer), HasSubstr("treat/" + SomeBook::colony(site, number).text()));
}

TEST_F(SomeBooks, call_a_renamed_colony_by_its_new_name_and_leave_a_dead_one_out) {
  const PlanAnswer answer = planned(14, {.sites = 2, .renamed = true, .ended = true});
  expect_sound(answer);
  EXPECT_THAT(told(answer), HasSubstr("Newly Called"));
  EXPECT_THAT(told(answer), Not(HasSubstr("Stock 0-0")));
  EXPECT_EQ(answer.outlooks.size(), 3U);
  for (const auto& visit : answer.plan.visits)
    for (const auto& job : visit.jobs) EXPECT_NE(job.need.colony, SomeBook::colony(1, 1));
}

}  // namespace
}  // namespace beegarth::garth
