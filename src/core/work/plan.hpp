// From needs to days: where to go on which day, in which hours, in which order, and what is left undone at
// what cost.
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "base/units.hpp"
#include "facts/need.hpp"
#include "facts/odds.hpp"

namespace beegarth::work {

struct SiteFacts {
  SiteId site;
  std::string name;
  std::string grid_reference;  // printed on the sheet; empty where unknown
  std::string access;
  bool neighbours = false;
};

struct ColonyPlace {
  ColonyId colony;
  std::string name;
  SiteId site;
  int place = 0;  // order in which it is reached
};

// Travel in minutes; index 0 is home, i + 1 is sites[i]. Missing pairs are nullopt and named plainly.
struct TravelTable {
  std::vector<std::vector<std::optional<double>>> minutes;
};

// One day of the plan at one site, over all weather members.
struct SiteDay {
  // opening[h]: share of weather members in which local hour h is fit for opening a hive; daylight[h] the
  // same for light; dry: share of members in which the day is dry.
  std::array<double, 24> opening{};
  std::array<double, 24> daylight{};
  double dry = 1;
  double temperature_max_C = 15;  // median over members
  double rain_odds = 0;
  double wind_m_s = 3;
  std::string limit;  // the usual limiting factor where the day is unfit: "cold", "rain", ...
};

struct Availability {
  double start_hour = 10;
  double end_hour = 16;  // equal to start: no time that day
};

struct PlanInput {
  Date from;
  int days = 14;
  std::vector<SiteFacts> sites;  // up to eight are planned exactly
  std::vector<ColonyPlace> colonies;
  std::vector<facts::Need> needs;
  TravelTable travel;
  std::vector<std::vector<SiteDay>> weather;  // [site][day]
  std::vector<Availability> hours;            // [day]
  int people = 1;
  double price_per_hour = 2;  // what an hour is worth to the keeper, in the unit of loss (kg honey)
  double price_per_travel_minute = 0.05;  // the keeper's time and the car
  double price_of_opening = 0;            // what opening a hive costs the colony, once a visit (kg honey)
  double settle_minutes = 10;             // at each stop: park, suit, smoker, and the same to leave
  double least_odds = 0.15;               // no job is planned on a day less likely than this to allow it
};

struct PlannedJob {
  facts::Need need;
};

struct Visit {
  Date date;
  SiteId site;
  double start_hour = 0;  // local
  double end_hour = 0;
  double travel_minutes = 0;           // to get there from the stop before (home for the first)
  double opening_odds = 0;             // odds that the visit's hours are fit
  std::string weather;                 // "17 C, dry, light wind"
  std::optional<Date> fallback;        // the next best day if this one is lost
  std::optional<std::string> if_lost;  // what that costs, in words
  std::vector<PlannedJob> jobs;        // in the order in which to do them
};

struct Undone {
  facts::Need need;
  std::string because;  // "no day fit for opening before ...", "too little time", "no travel time known"
  double cost = 0;
  std::string unit;
  std::string text;           // the cost in words
  bool not_worth_it = false;  // going there, or the time it takes, costs more than it saves
};

struct Plan {
  Date from;
  Date to;
  std::vector<PlannedJob> at_home;  // telephone calls, before any visit
  std::vector<Visit> visits;
  std::vector<Undone> undone;
  double expected_loss = 0;
  double bound = 0;  // proven lower bound of the expected loss
  bool proven_optimal = false;
  std::vector<std::string> remarks;
};

// A mixed-integer minimiser, passed in by whoever owns the solver: minimise c.x, rows low <= A x <= high.
struct MipProblem {
  struct Row {
    std::vector<int> columns;
    std::vector<double> coefficients;
    double low, high;
  };
  std::vector<double> cost;
  std::vector<bool> integer;  // columns are bounded 0..1
  std::vector<Row> rows;
};
struct MipAnswer {
  bool feasible = false;
  bool proven = false;
  double value = 0, bound = 0;
  std::vector<double> x;
};
using MipSolver = std::function<MipAnswer(const MipProblem&)>;

// Every job that can be placed is a choice of day and part-day; every day a choice of the sites to see on one
// shortest round from home. All of it is decided at once, so the plan is the best one under these odds where
// `proven_optimal`. What cannot be planned is named with its reason and the rest is planned. A Problem only
// where the input contradicts itself: tables of the wrong size, or numbers that are not finite.
Expected<Plan> plan_days(const PlanInput& input, const MipSolver& solve);

// ---- the keeper's own week, scored by the same code ----

struct OwnJob {
  std::string need;  // its key
  Date date;
};

// The same needs, but each job on the day on which the keeper means to do it and none else: hours and order
// as they suit best, unlikely days not left out. expected_loss is the sum that plan_days makes least. A job
// that does not fit its day is told as undone. A Problem also where a job names no need, is there twice, or
// lies outside the plan.
Expected<Plan> plan_own(const PlanInput& input, const std::vector<OwnJob>& own, const MipSolver& solve);

}  // namespace beegarth::work
