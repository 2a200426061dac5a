// The choice behind a plan, laid bare: jobs that may be done on some part-day, rounds that may be made, and
// what each costs. plan_program.hpp turns it into a mixed-integer program.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "work/plan.hpp"
#include "work/tours.hpp"

namespace beegarth::work {

// A part of one day's hours: from leaving home to being back.
struct Shift {
  int day = 0;
  double start_hour = 0;
  double end_hour = 0;
  double minutes() const { return (end_hour - start_hour) * 60; }
};

struct JobOption {
  int shift = 0;    // index into shifts
  double odds = 0;  // that the job can be done then
  double cost = 0;  // expected loss if planned then, with the keeper's time
};

struct Before {
  int job = 0;               // comes first
  bool another_day = false;  // on an earlier day, not merely earlier on the same one
};

struct Job {
  int need = 0;  // index into PlanInput::needs
  int site = 0;
  int minutes = 0;
  bool last = false;  // closes the round
  double never = 0;
  std::vector<JobOption> options;
  std::vector<Before> after;
  std::vector<int> clashes;  // jobs of which only one can be done; each pair once, at the lower index
};

struct RoundChoice {
  int shift = 0;
  unsigned sites = 0;  // as bits
  int last = -1;       // the site that closes the round, where one must
  double minutes = 0;  // travel and settling
  double cost = 0;
};

// One colony opened on one day (there is one round a day): the price is paid once, whatever is done in it
// then.
struct Opening {
  std::vector<std::pair<int, int>> options;  // job, and index of its option
  double cost = 0;
};

struct Model {
  int days = 0;
  std::vector<Shift> shifts;  // by day
  std::vector<Job> jobs;
  std::vector<Opening> openings;
  std::vector<RoundChoice> rounds;  // by shift
};

// A need that no choice is left for, and why.
struct SetAside {
  int need = 0;
  std::string because;
  bool costs_nothing = false;  // its time comes after the plan
};

struct Sifted {
  std::vector<int> needs;      // indices of those to plan, by key
  std::vector<int> keep_shut;  // needs of no minutes: a colony to be left alone for a while
  std::vector<int> at_home;    // what needs no way
  std::vector<SetAside> aside;
  std::vector<std::string> remarks;
  std::vector<int> site_of;  // by need, -1 where unknown
};

// Names plainly what cannot be planned at all: gone colonies, sites without travel, windows that have passed,
// circles.
Sifted sift_needs(const PlanInput& input, const Roads& roads);

Model build_model(const PlanInput& input, const Roads& roads, const Sifted& sifted);

// Odds that `need` can be done at `site` between two hours of a day; hours_reach_dusk says whether any day of
// its window lets a dusk job be done at dusk.
double job_odds(const facts::Need& need, const SiteDay& day, double start_hour, double end_hour,
                bool hours_reach_dusk);

// Mean over the hours of a stretch of a value given hour by hour.
double mean_over(const std::array<double, 24>& hourly, double start_hour, double end_hour);

// Loss if the need is met on `date`; the first and the last value go on outside the curve.
double loss_on(const facts::LossCurve& loss, Date date);

// Expected loss of a need that was rained off on `day`: the best later day, travel for it alone included, or
// never.
double loss_after_rain(const PlanInput& input, const Roads& roads, const facts::Need& need, int site,
                       int day);

double dusk_hour(const SiteDay& day);

}  // namespace beegarth::work
