#include "colony/treatment.hpp"

#include <array>
#include <cmath>
#include <numeric>

#include "colony/stages.hpp"

namespace beegarth::colony {
namespace {

// Mites with brood, in numbers that only their ratios matter of.
struct Mites {
  double on_bees = 1;
  std::array<double, worker_capped_days> under{};  // by days since they entered

  // Returns how many died.
  double day(double invasion, double reproduction, double stays_on_bees, double stays_under) {
    double died = on_bees * (1 - stays_on_bees);
    on_bees *= stays_on_bees;
    for (double& cohort : under) {
      died += cohort * (1 - stays_under);
      cohort *= stays_under;
    }
    const double entering = on_bees * (1 - std::exp(-invasion));
    const double emerging = under.back() * reproduction;
    for (std::size_t i = under.size() - 1; i > 0; --i) under[i] = under[i - 1];
    under.front() = entering;
    on_bees += emerging - entering;
    return died;
  }
  double all() const { return on_bees + std::accumulate(under.begin(), under.end(), 0.0); }
};

double share_that_dies(const TrialTold& trial, double invasion, double reproduction, double rate) {
  Mites mites;
  constexpr int until_steady = 200;
  for (int day = 0; day < until_steady; ++day) {
    mites.day(invasion, reproduction, 1, 1);
    const double all = mites.all();
    mites.on_bees /= all;
    for (double& cohort : mites.under) cohort /= all;
  }
  const double stays_under = std::pow(1 - trial.share_under_cappings, 1.0 / trial.days);
  double died = 0;
  for (int day = 0; day < trial.days; ++day)
    died += mites.day(invasion, reproduction, std::exp(-rate), stays_under);
  return died / (died + mites.all());
}

}  // namespace

double kill_rate_for(const TrialTold& trial, double invasion, double reproduction) {
  double low = 0, high = 5;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (share_that_dies(trial, invasion, reproduction, middle) < trial.share_of_all ? low : high) = middle;
  }
  return (low + high) / 2;
}

}  // namespace beegarth::colony
