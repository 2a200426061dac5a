// The compartment models of Khoury, Myerscough & Barron 2011 (PLoS ONE 6:e18491) and Khoury, Barron &
// Myerscough 2013 (PLoS ONE 8:e59084). Only the critical loss of 0.355 is a printed figure (from memory of
// the paper); the other figures were worked out from the published equations by bisection and by a separate
// Runge-Kutta solution.
#include "colony/compartment.hpp"

#include <gtest/gtest.h>

#include <array>
#include <boost/numeric/odeint.hpp>

#include "calc_answers.hpp"

namespace beegarth {
namespace {

garth::Json khoury(double loss) {
  return {{"laying_per_day", 2000},
          {"half_laying_bees", 27000},
          {"recruit_max_per_day", 0.25},
          {"social_inhibition_per_day", 0.75},
          {"forager_loss_per_day", loss}};
}

TEST(Khoury2011, the_critical_loss_is_the_papers) {
  const auto out = testing::answer("forager-balance", khoury(0.24));
  EXPECT_NEAR(out["critical_forager_loss_per_day"], 0.355, 0.0005);  // as printed in the paper, from memory
  EXPECT_NEAR(out["critical_forager_loss_per_day"], 0.35520, 1e-4);  // closed form, confirmed by bisection
}

struct Balance {
  double loss, ratio, hive, foragers, onset_days;
};

TEST(Khoury2011, colonies_settle_where_the_equations_say) {
  constexpr std::array<Balance, 5> cases{{{0.10, 0.39116, 31721.1, 12408.2, 25.57},
                                          {0.154, 0.35293, 16840.8, 5943.7, 18.40},
                                          {0.20, 0.32666, 10261.3, 3351.9, 15.31},
                                          {0.24, 0.30723, 6470.0, 1987.8, 13.56},
                                          {0.34, 0.26845, 626.5, 168.2, 10.96}}};
  for (const Balance& c : cases) {
    const auto out = testing::answer("forager-balance", khoury(c.loss));
    EXPECT_NEAR(out["ratio_foragers_to_hive"], c.ratio, 1e-4);
    EXPECT_NEAR(out["hive_bees"], c.hive, 1);
    EXPECT_NEAR(out["foragers"], c.foragers, 1);
    EXPECT_NEAR(out["onset_age_days"], c.onset_days, 0.02);
  }
}

TEST(Khoury2011, above_the_critical_loss_nothing_is_left_and_below_it_something_is) {
  EXPECT_EQ(testing::answer("forager-balance", khoury(0.3553))["hive_bees"], 0);
  EXPECT_EQ(testing::answer("forager-balance", khoury(0.40))["foragers"], 0);
  EXPECT_GT(testing::answer("forager-balance", khoury(0.3551))["hive_bees"], 0);
}

TEST(Khoury2011, colonies_collapse_in_the_days_worked_out) {
  for (const auto& [loss, days] :
       {std::pair{0.36, 322.3}, {0.40, 182.7}, {0.50, 99.2}, {0.60, 72.2}, {0.80, 50.1}}) {
    auto input = khoury(loss);
    input["start_hive_bees"] = 16000;
    input["start_foragers"] = 8000;
    const auto out = testing::answer("forager-balance", input);
    EXPECT_NEAR(out["days_until_below_1000"], days, 0.5);
    EXPECT_EQ(out["trajectory"].size(), 366U);
  }
}

// Agreement of two solvers on the same equations: the program's Runge-Kutta and Boost.Odeint's adaptive
// Dormand-Prince.
TEST(Khoury2011, an_independent_solver_follows_the_same_course) {
  const double m = 0.3;
  const auto slope = [m](const std::array<double, 2>& x, std::array<double, 2>& dx, double) {
    const double n = x[0] + x[1];
    const double recruited = x[0] * (0.25 - 0.75 * x[1] / n);
    dx[0] = 2000 * n / (27000 + n) - recruited;
    dx[1] = recruited - m * x[1];
  };
  std::array<double, 2> x{16000, 8000};
  namespace ode = boost::numeric::odeint;
  ode::integrate_adaptive(ode::make_controlled<ode::runge_kutta_dopri5<std::array<double, 2>>>(1e-10, 1e-10),
                          slope, x, 0.0, 150.0, 0.1);
  const auto course = colony::course_of({.forager_loss_per_day = m}, colony::Bees{16000, 8000}, 150);
  EXPECT_NEAR(course.back().hive, x[0], 0.01);
  EXPECT_NEAR(course.back().foragers, x[1], 0.01);
}

// Derived from the equations with the paper's figures, which are from memory (reference of the field, 2b).
TEST(Khoury2013, a_colony_grows_from_a_start_without_brood_as_was_reckoned_elsewhere) {
  const auto course =
      colony::course_of({.forager_loss_per_day = 0.2}, colony::FedState{16000, 8000, 0, 1000}, 100);
  EXPECT_NEAR(course.back().brood, 14958, 2);
  EXPECT_NEAR(course.back().hive, 24986, 2);
  EXPECT_NEAR(course.back().foragers, 8153, 2);
  EXPECT_NEAR(course.back().food_g, 25982, 5);
}

// Agreement of two solvers on the same equations, as above.
TEST(Khoury2013, an_independent_solver_follows_the_same_course) {
  using State = std::array<double, 4>;  // hive, foragers, brood, food
  const auto slope = [](const State& x, State& dx, double) {
    const double hungry = 500.0 * 500.0 / (500.0 * 500.0 + x[3] * x[3]);
    const double recruited = x[0] * (0.25 + 0.25 * hungry - 0.75 * x[1] / (x[0] + x[1]));
    dx[2] = 2000 * (1 - hungry) * x[0] / (x[0] + 5000) - x[2] / 9;
    dx[0] = x[2] / 9 - recruited;
    dx[1] = recruited - 0.25 * x[1];
    dx[3] = 0.1 * x[1] - 0.007 * (x[0] + x[1]) - 0.018 * x[2];
  };
  State x{16000, 8000, 0, 1000};
  namespace ode = boost::numeric::odeint;
  ode::integrate_adaptive(ode::make_controlled<ode::runge_kutta_dopri5<State>>(1e-10, 1e-10), slope, x, 0.0,
                          150.0, 0.1);
  const auto course =
      colony::course_of({.forager_loss_per_day = 0.25}, colony::FedState{16000, 8000, 0, 1000}, 150);
  EXPECT_NEAR(course.back().hive, x[0], 0.01);
  EXPECT_NEAR(course.back().foragers, x[1], 0.01);
  EXPECT_NEAR(course.back().brood, x[2], 0.01);
  EXPECT_NEAR(course.back().food_g, x[3], 0.01);
}

TEST(Khoury2013, a_well_fed_colony_settles_and_breaks_even_where_the_equations_say) {
  const colony::FedBalance b = colony::balance_of(colony::FedColony{});
  EXPECT_NEAR(b.hive, 18594, 2);
  EXPECT_NEAR(b.foragers, 5254, 2);
  EXPECT_NEAR(b.brood, 14185, 2);
  EXPECT_NEAR(b.surplus_g_per_day, 103.1, 1);
  EXPECT_NEAR(*colony::self_sufficient_loss({}), 0.40103, 1e-4);
}

TEST(ForagerBalance, where_no_loss_brings_a_colony_down_the_critical_loss_is_null) {
  auto input = khoury(0.24);
  input["half_laying_bees"] = 5000;  // every hive bee can be replaced faster than it leaves
  EXPECT_TRUE(testing::answer("forager-balance", input)["critical_forager_loss_per_day"].is_null());
}

TEST(ForagerBalance, half_a_start_and_unknown_fields_are_refused) {
  auto half = khoury(0.24);
  half["start_hive_bees"] = 1000;
  EXPECT_TRUE(testing::refuses("forager-balance", half));
  auto unknown = khoury(0.24);
  unknown["bees"] = 1;
  EXPECT_TRUE(testing::refuses("forager-balance", unknown));
  EXPECT_TRUE(testing::refuses("forager-balance", khoury(0)));
}

}  // namespace
}  // namespace beegarth
