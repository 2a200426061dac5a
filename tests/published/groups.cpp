// Groups of colonies compared, and how many to sample; each figure with its source.
#include "colony/groups.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "calc_answers.hpp"

namespace beegarth {
namespace {

// Guzman-Novoa et al. 2010, Apidologie, Table III: 408 colonies over one winter, alive and dead by autumn
// factor. The odds ratios and chi squared are arithmetic on its counts; two of its printed p are kept.
struct Factor {
  const char* name;
  int bad_alive, bad_dead, good_alive, good_dead;
  double odds_ratio, low, high, chi_squared, p;  // p: 0 where none was printed
};
constexpr Factor factors[] = {{"population", 122, 77, 175, 34, 3.249, 2.04, 5.17, 25.89, 0},
                              {"food", 140, 75, 157, 36, 2.34, 1.48, 3.69, 13.53, 0},
                              {"varroa", 214, 95, 83, 16, 2.30, 1.28, 4.14, 8.05, 0},
                              {"tracheal mite", 13, 12, 284, 99, 2.65, 1.17, 6.00, 5.81, 0.0159},
                              {"nosema", 76, 38, 221, 73, 1.51, 0.95, 2.42, 3.00, 0.0833}};

TEST(TwoShares, of_a_winter_of_four_hundred_colonies_come_to_the_printed_tests) {
  for (const Factor& f : factors) {
    const auto out = testing::answer("two-shares", {{"bad_dead", f.bad_dead},
                                                    {"bad_alive", f.bad_alive},
                                                    {"good_dead", f.good_dead},
                                                    {"good_alive", f.good_alive}});
    EXPECT_NEAR(out["odds_ratio"], f.odds_ratio, 0.01) << f.name;
    EXPECT_NEAR(out["low95"], f.low, 0.01) << f.name;
    EXPECT_NEAR(out["high95"], f.high, 0.01) << f.name;
    EXPECT_NEAR(out["chi_squared"], f.chi_squared, 0.02) << f.name;
    if (f.p > 0) {
      EXPECT_NEAR(out["p"], f.p, 0.0002) << f.name;
    }
    EXPECT_NEAR(out["share_all"], 0.2721, 0.0001) << f.name << ": 111 of 408 died";
  }
}
TEST(TwoShares, are_not_compared_where_all_or_none_died) {
  EXPECT_FALSE(colony::compare_shares({0, 5}, {2, 3}));
  EXPECT_FALSE(colony::compare_shares({3, 0}, {2, 3}));
}

// Seeley 2002, Apidologie 33:75: gain in kg with drone comb 25.2 (sd 16.0) and without 48.8 (sd 14.8), five
// colonies each; t, df and p are arithmetic.
TEST(TwoMeans, of_colonies_with_and_without_drone_comb) {
  const auto out = testing::answer("two-means", {{"first_n", 5},
                                                 {"first_mean", 25.2},
                                                 {"first_sd", 16.0},
                                                 {"second_n", 5},
                                                 {"second_mean", 48.8},
                                                 {"second_sd", 14.8}});
  EXPECT_NEAR(out["difference"], 23.6, 1e-9);
  EXPECT_NEAR(out["t"], 2.421, 0.001);
  EXPECT_NEAR(out["df"], 7.95, 0.005);
  EXPECT_NEAR(out["p"], 0.0419, 0.0001);
}
TEST(TwoMeans, are_not_compared_where_nothing_varies) {
  EXPECT_FALSE(colony::compare_means({5, 1, 0}, {5, 2, 0}));
  EXPECT_FALSE(colony::compare_means({1, 1, 2}, {5, 2, 2}));
}

// Eight colonies, 300 bees each: plan of Lee et al. 2010, J Econ Entomol; k is assumed. And it is what counts
// drawn so come to.
TEST(CountPlan, of_eight_colonies_has_the_error_that_counts_drawn_so_have) {
  struct Case {
    double mites, k, error;
  };
  std::mt19937 chance(7);
  for (const Case& c : {Case{3, 2, 0.3227}, Case{9, 1, 0.3727}}) {
    const auto out = testing::answer("count-plan", {{"mites", c.mites}, {"k", c.k}, {"colonies", 8}});
    EXPECT_NEAR(out["error_share"], c.error, 0.001);
    std::gamma_distribution<double> level(c.k, c.mites / c.k);
    double squares = 0;
    constexpr int plans = 4000;
    for (int plan = 0; plan < plans; ++plan) {
      double sum = 0;
      for (int colony = 0; colony < 8; ++colony) sum += std::poisson_distribution<int>(level(chance))(chance);
      squares += std::pow(sum / 8 / c.mites - 1, 2);
    }
    EXPECT_NEAR(std::sqrt(squares / plans), c.error, 0.03) << c.mites;
  }
}

// Betts 1938, Bee World 106: cells to the square decimetre, both sides, by the cells in a row of 10 cm; the
// rest is the arithmetic of hexagons.
TEST(CombCells, by_their_width_are_as_many_as_were_counted) {
  EXPECT_NEAR(
      testing::answer("comb-room", {{"length_mm", 100}, {"depth_mm", 100}, {"cell_mm", 100 / 12.8}})["cells"],
      378.3, 0.5);
  EXPECT_NEAR(
      testing::answer("comb-room", {{"length_mm", 100}, {"depth_mm", 100}, {"cell_mm", 5.0}})["cells"], 923.6,
      0.5);
  const auto per_cm2_side = [](double width_mm) {
    return testing::answer("comb-room",
                           {{"length_mm", 100}, {"depth_mm", 100}, {"cell_mm", width_mm}})["cells"]
               .get<double>() /
           200;
  };
  EXPECT_NEAR(per_cm2_side(5.4), 3.96, 0.005);
  EXPECT_NEAR(per_cm2_side(7.0), 2.36, 0.005);
}

}  // namespace
}  // namespace beegarth
