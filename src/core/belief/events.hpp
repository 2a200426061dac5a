// What each event is taken to mean, so that an inspection can confirm it.
#pragma once

#include <string>
#include <vector>

#include "belief/members.hpp"
#include "belief/trace.hpp"
#include "facts/outlook.hpp"

namespace beegarth::belief {

inline constexpr std::array<facts::EventKind, event_count> event_kinds{
    facts::EventKind::out_of_room,   facts::EventKind::swarm_preparation, facts::EventKind::stores_short,
    facts::EventKind::queen_trouble, facts::EventKind::supers_full,       facts::EventKind::surplus,
    facts::EventKind::death,         facts::EventKind::winter_mites,      facts::EventKind::small_for_winter};

// The last two are decided in autumn: they are followed until then, and not morning by morning like the rest.
inline constexpr std::size_t death_index = 6, winter_mites_index = 7, small_for_winter_index = 8;
constexpr bool decided_in_autumn(std::size_t event) {
  return event >= winter_mites_index;
}

std::string definition_of(facts::EventKind kind, const Setting& setting, Date last_in_autumn);

// Whether brood of this day becomes winter bees: 15 August to 15 October in the north, half a year later in
// the south.
bool winter_brood_day(Date date, double latitude_deg);
// The next 31 October of the north (1 May of the south) on or after the day, when the winter bees have been
// reared.
Date end_of_winter_brood(Date date, double latitude_deg);

// The day on which what is decided in autumn is decided next, or the last of the course if that comes first;
// both counted from the day the colony began.
int autumn_day(const Setting& setting, int last);

// Watches members of one ensemble morning by morning and notes the first day of each event from `today` on.
class EventWatch {
 public:
  EventWatch(const Setting& setting, int members);
  // `which[k]`: the number of the ensemble's member k among all; empty: itself.
  void morning(int day, const colony::Ensemble& ensemble, std::span<const std::uint32_t> which, Trace& trace);
  // What is decided in autumn.
  void autumn(int day, const colony::Ensemble& ensemble, std::span<const std::uint32_t> which,
              Trace& trace) const;

 private:
  const Setting& setting_;
  std::vector<int> days_without_queen_;
};

}  // namespace beegarth::belief
