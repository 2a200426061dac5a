// Do the bands hold what they say? Invented colonies are drawn from the prior and live through an invented
// season; a keeper with errors writes entries; belief is fitted to these alone. 80 % bands must then cover
// the truth in 80 % of the colonies. The bound of 70 to 90 % is that of the design; the colonies are a fixed
// set.
#include <gtest/gtest.h>

#include <array>
#include <atomic>
#include <cstdio>
#include <thread>

#include "belief/forecast.hpp"
#include "calibration/synthetic.hpp"

namespace beegarth {
namespace {

constexpr int colonies_per_season = 24;
constexpr int seasons = 4;
constexpr int members = 512;
constexpr std::array<const char*, 4> quantities{"bees", "brood_cells", "stores_kg", "mites"};
constexpr std::array<int, 3> ahead{0, 14, 28};  // days after today

struct Case {
  synthetic::Colony colony;
  belief::Forcing forcing;
  std::array<std::array<bool, ahead.size()>, quantities.size()> covered{};
  std::array<std::array<double, ahead.size()>, quantities.size()>
      place{};  // of the truth among the members, 0..1
  double ess = 0;
};

double place_of(const belief::Predicted& p, double truth) {
  double below = 0;
  for (std::size_t i = 0; i < p.values.size(); ++i) {
    below += p.values[i] < truth ? p.weights[i] : p.values[i] == truth ? 0.5 * p.weights[i] : 0.0;
  }
  return below;
}

void judge(Case& one, const synthetic::Plan& plan, const belief::Tables& tables) {
  std::vector<Date> dates;
  dates.reserve(ahead.size());
  for (const int days : ahead) dates.push_back(plan.today + days);
  const belief::Options options{
      .members = members, .seed = 77, .today = plan.today, .horizon = plan.horizon, .explain = false};
  const auto forecast = belief::forecast(one.colony.history, one.forcing, tables, options, dates);
  ASSERT_TRUE(forecast) << one_line(forecast.problem());
  one.ess = forecast->effective_sample_size;
  for (const belief::Predicted& p : forecast->there) {
    for (std::size_t q = 0; q < quantities.size(); ++q) {
      if (p.quantity != quantities.at(q)) continue;
      const auto when =
          static_cast<std::size_t>(std::find(dates.begin(), dates.end(), p.date) - dates.begin());
      const double truth = one.colony.truth.on_day.at(p.date - plan.began).at(q);
      one.covered.at(q).at(when) = truth >= p.quantile(0.1) && truth <= p.quantile(0.9);
      one.place.at(q).at(when) = place_of(p, truth);
    }
  }
}

std::vector<Case> all_cases(const synthetic::Plan& plan, const belief::Tables& tables) {
  std::vector<Case> cases;
  for (std::uint64_t s = 1; s <= seasons; ++s) {
    const auto weather = synthetic::season(s, plan.began, plan.horizon);
    belief::Forcing forcing;
    for (const auto& day : weather) {
      if (day.date < plan.today) forcing.past.push_back(day);
    }
    for (std::uint64_t f = 0; f < 16; ++f)
      forcing.futures.push_back(synthetic::season(1000 * s + f, plan.today, plan.horizon));
    for (auto& colony : synthetic::draw_colonies(plan, 5000 + s, colonies_per_season, tables, weather)) {
      // A colony that is dead by today would be written off, and its bands be trivially right.
      if (colony.truth.on_day.at(plan.today - plan.began).back() < 0.5) continue;
      cases.push_back({std::move(colony), forcing});
    }
  }
  return cases;
}

TEST(Coverage, of_80_percent_bands_today_and_two_and_four_weeks_ahead) {
  const synthetic::Plan plan = synthetic::usual_plan();
  const belief::Tables tables = synthetic::tables();
  std::vector<Case> cases = all_cases(plan, tables);
  std::atomic<std::size_t> next{0};
  std::vector<std::thread> workers;
  for (unsigned t = 0; t < std::max(1U, std::thread::hardware_concurrency()); ++t) {
    workers.emplace_back([&] {
      for (std::size_t i = next++; i < cases.size(); i = next++) judge(cases[i], plan, tables);
    });
  }
  for (auto& worker : workers) worker.join();

  double ess = 0;
  double least = members;
  for (const Case& one : cases) {
    ess += one.ess / static_cast<double>(cases.size());
    least = std::min(least, one.ess);
  }
  std::printf("%zu colonies, %d members; effective sample size %.0f on average, %.0f at least\n",
              cases.size(), members, ess, least);
  for (std::size_t q = 0; q < quantities.size(); ++q) {
    int pooled = 0;
    std::printf("%-12s", quantities.at(q));
    for (std::size_t w = 0; w < ahead.size(); ++w) {
      int hits = 0;
      double mean_place = 0;
      for (const Case& one : cases) {
        hits += one.covered.at(q).at(w) ? 1 : 0;
        mean_place += one.place.at(q).at(w) / static_cast<double>(cases.size());
      }
      pooled += hits;
      std::printf("  +%2d days: %.3f (mean place %.2f)", ahead.at(w),
                  hits / static_cast<double>(cases.size()), mean_place);
    }
    const double share = pooled / static_cast<double>(cases.size() * ahead.size());
    std::printf("  all: %.3f\n", share);
    EXPECT_GE(share, 0.70) << quantities.at(q);
    EXPECT_LE(share, 0.90) << quantities.at(q);
  }
}

}  // namespace
}  // namespace beegarth
