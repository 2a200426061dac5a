// Something that wants doing: the handing-over from the needs to the rounds.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/units.hpp"
#include "facts/deed.hpp"
#include "facts/odds.hpp"

namespace beegarth::facts {

// Which hours of a day a job can be done in.
enum class Clock { opening, daylight, dusk, dry_day, any };

struct EventOdds {
  std::string event;  // "swarm preparation"
  Date by;
  Odds odds;
};

// loss(day) is the expected loss, in the keeper's own money-like unit, if the need is met on that day; it
// never falls with the days. `never` is the loss if it is not met at all within the plan.
struct LossCurve {
  Date from;
  std::vector<double> by_day;  // one value per day of the plan
  double never = 0;
  std::string unit;  // what is lost: "kg honey equivalent"
};

struct Need {
  std::string key;   // stable: "look-cells/alder-5"
  std::string what;  // "look for queen cells, all combs"
  SiteId site;
  std::optional<ColonyId> colony;
  Date earliest;
  Date best;
  Date latest;  // after this day it is too late to be worth it
  Clock clock = Clock::opening;
  double temperature_min_C = 13;  // below this the job is not done
  int minutes = 10;
  int people = 1;
  LossCurve loss;
  std::vector<std::string> after;  // keys of needs that come first
  std::vector<std::string> clashes;
  std::vector<std::string> take;  // what to put in the car
  std::string write_down;         // how a note begins that tells what was done or seen: "full look, "
  std::vector<std::string> cautions;
  std::vector<Reason> why;
  std::vector<EventOdds> odds;
  std::vector<AskedDeed> asks;  // what some keepers refuse; its words leave out what this one does
  bool last_in_round = false;   // health: see to it after every other colony
  std::string held;             // why it may not be done for now; planned on no day, and named
  bool at_home = false;         // a telephone call: done from where the keeper is, before any visit
};

}  // namespace beegarth::facts
