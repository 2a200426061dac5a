// What is believed of one colony, fitted to what was seen, and what is to come.
//
//   history + weather ──fit_to_entries──► ensemble today ──foresee──► outlook
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "entries/entry.hpp"
#include "facts/dwelling.hpp"
#include "facts/forcing.hpp"
#include "facts/outlook.hpp"

namespace beegarth::belief {

// Taken to another site, km away as the crow flies.
struct Move {
  Date date;
  double km = 0;
};

// Everything the book says about one colony up to today, oldest first. Entries later than `today` must not be
// here.
// From that day on the colony lives in something else, or in half of it or all of it.
struct Rehoused {
  Date date;
  facts::Dwelling dwelling;
  bool other_combs = false;  // a hive of its own combs, undrawn_combs of them still to draw
};

struct History {
  ColonyId colony;
  Date began;                           // first day followed
  facts::Dwelling dwelling;             // as it was on that day; `Room` entries change it
  std::vector<entries::Entry> entries;  // about this colony only, by date, then by when written
  std::vector<Move> moves;              // oldest first
  std::vector<Rehoused> rehoused;       // after that day, oldest first
  bool from_split = false;              // began as a split or swarm within the book
};

// The outside world as far as it is known, and many ways it may go on. past covers began .. today - 1 at
// least; every future starts today and reaches the horizon. Where past weather is unknown, past holds one
// drawn path.
struct Forcing {
  facts::ForcingPath past;
  std::vector<facts::ForcingPath> futures;
};

struct Options {
  int members = 512;
  int sweeps = 3;  // of moves after each resampling: more bring the crowd nearer to what is believed
  std::uint64_t seed = 1;
  Date today;
  Date horizon;
  double latitude_deg = 52;
  bool explain = true;  // leave entries out one at a time to say which moved the odds (costs time)
};

// The tables of parameters and observation errors (tables/colony.toml, tables/observation.toml), checked.
struct Tables {
  FactTable colony;
  FactTable observation;
};

Expected<facts::Outlook> foresee(const History& history, const Forcing& forcing, const Tables& tables,
                                 const Options& options);

}  // namespace beegarth::belief
