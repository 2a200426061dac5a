// What stands against moving bees and kit, for a book of which only the outline was read.
#pragma once

#include <map>

#include "base/expected.hpp"
#include "garth/ledgers/quarantines.hpp"
#include "garth/ledgers/suspects.hpp"
#include "garth/outline.hpp"

namespace beegarth::garth {

struct SeenHealth {
  Suspects suspects;
  std::map<ColonyId, KeptApart> kept_apart;
};

// On the outline's own day.
Expected<SeenHealth> seen_health(const Outline& outline);

// "suspect since 2026-07-11: ropy larva, sunken cappings"; empty where there is nothing.
std::string suspicion_text(const SuspectColony* suspect);
std::string kept_apart_text(const KeptApart& apart);  // "in quarantine until 2026-06-10"

}  // namespace beegarth::garth
