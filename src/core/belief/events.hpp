// What each event is taken to mean, so that an inspection can confirm it.
#pragma once

#include <string>
#include <vector>

#include "belief/members.hpp"
#include "belief/trace.hpp"
#include "facts/outlook.hpp"

namespace beegarth::belief {

inline constexpr std::array<facts::EventKind, event_count> event_kinds{
    facts::EventKind::out_of_room, facts::EventKind::swarm_preparation, facts::EventKind::stores_short,
    facts::EventKind::queen_trouble, facts::EventKind::winter_mites};

inline constexpr std::size_t winter_mites_index = 4;

std::string definition_of(facts::EventKind kind, const Setting& setting, Date last_of_mites);

// Whether brood of this day becomes winter bees: 15 August to 15 October in the north, half a year later in
// the south.
bool winter_brood_day(Date date, double latitude_deg);
// The next 31 October of the north (1 May of the south) on or after the day, when the winter bees have been
// reared.
Date end_of_winter_brood(Date date, double latitude_deg);

// Watches members of one ensemble morning by morning and notes the first day of each event from `today` on.
class EventWatch {
 public:
  EventWatch(const Setting& setting, int members);
  // `which[k]`: the number of the ensemble's member k among all; empty: itself.
  void morning(int day, const colony::Ensemble& ensemble, std::span<const std::uint32_t> which, Trace& trace);
  // Winter mites alone: they are followed longer than the rest.
  void winter_brood(int day, const colony::Ensemble& ensemble, std::span<const std::uint32_t> which,
                    Trace& trace) const;

 private:
  const Setting& setting_;
  std::vector<int> days_without_queen_;
};

}  // namespace beegarth::belief
