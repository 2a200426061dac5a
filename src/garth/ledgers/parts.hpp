// The parts the keeper owns and the state each is in: kit with an unknown past is suspect until it was made
// safe.
#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "entries/entry.hpp"

namespace beegarth::garth {

struct PartStanding {
  entries::Part part;
  entries::PartState state = entries::PartState::suspect;
  Date since;
  EntryId said;             // the entry that put it into this state
  std::size_t grounds = 0;  // for suspicion, how many
  bool safe = false;        // never suspect, or scorched, dipped or sent away since
};

// Why a part begins as suspect: "inherited", "of unknown paint"; empty where it is usable from the start.
std::vector<std::string> grounds_for_suspicion(const entries::Part& part);

std::map<PartId, PartStanding> parts_on(std::span<const entries::Entry> standing, Date day);

// The next state, or why it cannot follow: suspect kit is made safe, then clean, then usable.
std::string why_not_now(const PartStanding& part, entries::PartState next);

}  // namespace beegarth::garth
