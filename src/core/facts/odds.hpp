// A probability with how well it is known.
#pragma once

#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/units.hpp"

namespace beegarth::facts {

// value: the odds; low..high: an 80 % interval for them (from the finite ensemble and what is unknown of the
// colony's own traits). All in 0..1, low <= value <= high.
struct Odds {
  double value = 0;
  double low = 0;
  double high = 1;
};

// Why something is said: a plain sentence, the entries and the table rows or publications it rests on.
struct Reason {
  std::string text;
  std::vector<EntryId> entries;
  std::vector<std::string> sources;
};

}  // namespace beegarth::facts
