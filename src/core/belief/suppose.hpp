// What would come of other deeds. The members believed in today go on under each way of acting, in the same
// weather and with the same luck (common random numbers), so that two ways differ by their deeds alone.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "belief/belief.hpp"

namespace beegarth::belief {

// A deed that is not done: on which day, and what the book would say of it.
struct Intended {
  Date date;
  entries::Payload payload;
};

struct Way {
  std::string name;
  std::vector<Intended> deeds;  // of any order; none: nothing is done
};

// What came of one member under one way, from today to the last day.
struct Came {
  bool died = false;     // by itself: starved, dwindled
  bool swarmed = false;  // a prime swarm left, today or later
  bool ended = false;    // by a deed: united into another colony
  float surplus_kg = 0;  // the most honey taken by then and above or beyond the nest, on any morning
  float bees = 0;        // on the last morning
  float mites = 0;       // likewise
  float least_stores_kg = 0;
};

struct WayFollowed {
  std::string name;
  std::vector<Came> came;          // by member
  std::vector<facts::Fan> fans;    // from today to the last day, a morning each
  double alive = 0;                // odds on the last morning
  double less_honey_there = 0;     // odds that a harvest finds less than it is to take
  std::vector<facts::Reason> why;  // the entries that moved its odds of dying and of swarming most
};

struct Supposed {
  Date today, last;
  std::vector<double> weights;  // of the members, normalised
  std::vector<int> family;      // see kin.hpp
  std::vector<int> future;      // in which weather each goes on
  double effective_sample_size = 0;
  std::vector<WayFollowed> ways;  // in the order given
};

// options.horizon is the last day. A Problem where a deed is before today or not before the last day, or does
// nothing to a colony.
Expected<Supposed> suppose(const History& history, const Forcing& forcing, const Tables& tables,
                           const Options& options, std::span<const Way> ways);

}  // namespace beegarth::belief
