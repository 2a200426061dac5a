// Do the members stand for what is believed, and do the bands hold what they say? Invented colonies are drawn
// from the prior and live through a season of their own; a keeper writes entries by the very model of
// observation; belief is fitted to these alone. All that is asked here follows from the definition of a
// posterior, so that the only room left is that of chance, shared out over all questions of one test: a false
// alarm of 1 % each (Bonferroni). The colonies are a fixed set. BEEGARTH_LONG asks for many more of them,
// with as many members as a keeper's.
#include <gtest/gtest.h>

#include <atomic>
#include <cstdio>
#include <cstdlib>
#include <thread>

#include "calibration/ranks.hpp"
#include "calibration/study.hpp"

#if defined(__SANITIZE_ADDRESS__)
#define BEEGARTH_SANITIZED 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define BEEGARTH_SANITIZED 1
#endif
#endif

namespace beegarth::calibration {
namespace {

constexpr double false_alarm = 0.01;

Size size() {
#ifdef BEEGARTH_SANITIZED
  return {.colonies = 48, .members = 128, .futures = 16};
#else
  const char* wish = std::getenv("BEEGARTH_LONG");
  const bool in_full = wish != nullptr && std::string(wish) == "yes";
  return in_full ? Size{.colonies = 2000, .members = 512, .futures = 48}
                 : Size{.colonies = 300, .members = 256, .futures = 48};
#endif
}

std::vector<Fitted> fit_all(const Size& of) {
  const synthetic::Plan plan = synthetic::usual_plan();
  const belief::Tables tables = synthetic::tables();
  std::vector<Fitted> all(static_cast<std::size_t>(of.colonies));
  std::atomic<int> next{0};
  std::vector<std::thread> workers;
  for (unsigned t = 0; t < std::max(1U, std::thread::hardware_concurrency()); ++t) {
    workers.emplace_back([&] {
      for (int i = next++; i < of.colonies; i = next++)
        all[static_cast<std::size_t>(i)] = fit(plan, of, 1, i, tables);
    });
  }
  for (auto& worker : workers) worker.join();
  return all;
}

void say_how_it_went(const std::vector<Fitted>& all, const Size& of) {
  double ess = 0;
  double accepted = 0;
  double families = 0;
  double least = of.members;
  const auto n = static_cast<double>(all.size());
  for (const Fitted& one : all) {
    ess += one.ess / n;
    accepted += one.accepted / n;
    families += one.families / n;
    least = std::min(least, one.ess);
  }
  std::printf(
      "%d colonies, %d members; effective sample size %.0f on average, %.0f at least; %.0f families; %.2f of "
      "the moves accepted\n",
      of.colonies, of.members, ess, least, families, accepted);
}

void expect_uniform_ranks(const std::vector<Fitted>& all) {
  const std::vector<std::string> names = rank_names();
  const UniformRanks uniform(static_cast<int>(all.size()), draws, 40'000, 9);
  std::printf(
      "%-22s odds of ranks as far from uniform; share of truths in the lowest, middle, highest quarter of "
      "the draws\n",
      "");
  for (std::size_t q = 0; q < names.size(); ++q) {
    std::vector<int> ranks;
    std::array<double, 4> quarters{};
    for (const Fitted& one : all) {
      ranks.push_back(one.ranks[q]);
      quarters.at(static_cast<std::size_t>(one.ranks[q] / ((draws + 1) / 4))) +=
          1.0 / static_cast<double>(all.size());
    }
    const double odds = uniform.odds_of(ranks);
    std::printf("%-22s %.4f   %.2f %.2f %.2f\n", names[q].c_str(), odds, quarters[0],
                quarters[1] + quarters[2], quarters[3]);
    EXPECT_GT(odds, false_alarm / static_cast<double>(names.size())) << names[q];
  }
}

void expect_bands_to_hold(const std::vector<Fitted>& all) {
  static constexpr std::array<double, 3> levels{0.5, 0.8, 0.95};
  const std::vector<std::string> names = state_names();
  const auto cases = static_cast<int>(all.size());
  const double outside = false_alarm / static_cast<double>(names.size() * days_ahead.size() * levels.size());
  for (std::size_t q = 0; q < names.size(); ++q) {
    std::printf("%-20s", names[q].c_str());
    for (std::size_t a = 0; a < days_ahead.size(); ++a) {
      std::printf("  +%2d days:", days_ahead.at(a));
      for (const double level : levels) {
        int hits = 0;
        for (const Fitted& one : all) hits += std::abs(one.places[q].at(a) - 0.5) <= level / 2 ? 1 : 0;
        std::printf(" %.3f", hits / static_cast<double>(cases));
        const Room room = room_for(cases, level, outside);
        EXPECT_TRUE(room.holds(hits))
            << names[q] << ", " << days_ahead.at(a) << " days ahead: the " << 100 * level << " % band holds "
            << hits << " of " << cases << ", room " << room.least << " to " << room.most;
      }
    }
    std::printf("\n");
  }
}

TEST(InventedColonies, have_uniform_ranks_among_their_members_and_lie_in_the_bands_as_often_as_said) {
  const Size of = size();
  const std::vector<Fitted> all = fit_all(of);
  say_how_it_went(all, of);
  expect_uniform_ranks(all);
  expect_bands_to_hold(all);
}

}  // namespace
}  // namespace beegarth::calibration
