// What is believed of one colony, and what is to come: the handing-over from belief/ to work/ and the faces.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/units.hpp"
#include "facts/odds.hpp"

namespace beegarth::facts {

// Every event has a definition that an inspection can confirm.
enum class EventKind {
  out_of_room,  // for a laying queen
  swarm_preparation,
  stores_short,
  queen_trouble,
  supers_full,
  surplus,           // honey that could be taken
  death,             // of the colony; it may be dead already
  winter_mites,      // of the winter bees
  small_for_winter,  // too few bees when they have been reared
};

struct OddsByDate {
  Date by;  // the event has happened on or before this day
  Odds odds;
};

struct EventOutlook {
  EventKind kind = EventKind::out_of_room;
  std::string definition;          // what an inspection would find
  std::vector<OddsByDate> course;  // today .. horizon, daily, ascending; odds never fall
  std::vector<Reason> why;         // the entries that moved it most first
};

// Quantiles of one quantity over time: 5, 10, 25, 50, 75, 90, 95 %.
inline constexpr std::array<double, 7> fan_levels{0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95};

struct Fan {
  std::string quantity;  // "bees", "brood_cells", "stores_kg", "mites", "mites_per_100_bees"
  std::string unit;
  std::vector<Date> dates;
  std::vector<std::array<double, 7>> levels;
};

// What was seen, as a mark on a fan.
struct SeenMark {
  Date date;
  std::string quantity;
  double value = 0;
  EntryId entry;
};

struct Learnt {
  std::string parameter;
  double prior_sd = 0;
  double posterior_sd = 0;
  double contraction = 0;  // 1 - posterior variance / prior variance; 0 = nothing learnt
  double contraction_low = 0,
         contraction_high = 0;  // 80 % interval for all rows together: few members know it badly
};

struct Outlook {
  ColonyId colony;
  Date today;
  int members = 0;
  double effective_sample_size = 0;
  double alive = 1;           // odds that the colony lives today
  double swarmed_unseen = 0;  // odds that a swarm has left since the last look
  std::vector<EventOutlook> events;
  std::vector<Fan> fans;  // from the first day followed to the horizon
  std::vector<SeenMark> seen;
  std::vector<Learnt> learnt;
  std::vector<Reason> remarks;    // surprises, months without a look, assumptions
  std::vector<EntryId> left_out;  // of belief, because no course of the colony goes with them
};

}  // namespace beegarth::facts
