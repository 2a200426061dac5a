// The compartment model of hive bees and foragers, in closed form: Khoury, Myerscough & Barron 2011, PLoS ONE
// 6:e18491.
//   dH/dt = L N/(w + N) - H (a - s F/N)      dF/dt = H (a - s F/N) - m F      N = H + F
// It knows no brood delay, season or food: it checks the daily step and answers one question, how many
// foragers a day a colony can lose.
#pragma once

#include <optional>
#include <vector>

namespace beegarth::colony {

struct ForagerBalance {
  double laying_per_day = 2000;             // L
  double half_laying_bees = 27000;          // w: bees with which half of the brood is raised
  double recruit_max_per_day = 0.25;        // a
  double social_inhibition_per_day = 0.75;  // s
  double forager_loss_per_day = 0.24;       // m > 0
};

struct Bees {
  double hive = 0;
  double foragers = 0;
};

double foragers_per_hive_bee(const ForagerBalance& b);  // J, where a colony settles
Bees balance_of(const ForagerBalance& b);               // 0, 0 above the critical loss
std::optional<double> critical_forager_loss(
    const ForagerBalance& b);                    // none where no loss brings the colony down
double onset_age_days(const ForagerBalance& b);  // days as a hive bee before foraging

// Bees at the end of every day, the start first; fourth-order Runge-Kutta with 50 steps a day.
std::vector<Bees> course_of(const ForagerBalance& b, Bees start, int days);
// Days until fewer than `bees` are left, between the steps by a straight line; none within `days`.
std::optional<double> days_until_below(const ForagerBalance& b, Bees start, double bees, int days);

// The same with brood B and food f: Khoury, Barron & Myerscough 2013, PLoS ONE 8:e59084 (from memory).
//   dB/dt = L S - phi B      dH/dt = phi B - H R      dF/dt = H R - m F
//   df/dt = c F - eaten by bees and brood, f >= 0
//   S = f^2/(f^2 + b^2) H/(H + v)      R = a + a_hungry b^2/(b^2 + f^2) - s F/(F + H)
struct FedColony {
  double laying_per_day = 2000;
  double half_laying_hive_bees = 5000;  // v
  double emerging_per_day = 1.0 / 9;    // phi
  double recruit_max_per_day = 0.25;
  double social_inhibition_per_day = 0.75;
  double forager_loss_per_day = 0.3;
  double collected_g_per_forager = 0.1;
  double eaten_g_per_bee = 0.007;
  double eaten_g_per_brood = 0.018;
  double half_laying_food_g = 500;       // b
  double recruit_hungry_per_day = 0.25;  // a_hungry: more leave for the field where food is short
};
struct FedState {
  double hive = 0, foragers = 0, brood = 0, food_g = 0;
};
// At the end of every day, the start first; fourth-order Runge-Kutta with 50 steps a day.
std::vector<FedState> course_of(const FedColony& c, FedState start, int days);

// Where it settles with plenty of food.
struct FedBalance {
  double hive = 0, foragers = 0, brood = 0;
  double surplus_g_per_day = 0;
};
FedBalance balance_of(const FedColony& c);
// The forager loss at which the colony just feeds itself; none where it never does or always does.
std::optional<double> self_sufficient_loss(FedColony c);

}  // namespace beegarth::colony
