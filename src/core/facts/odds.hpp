// A probability with how well it is known.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
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

// The 80 % interval of a share of so many draws: Wilson 1927, z = 1.2816.
inline Odds odds_of_share(double share, double draws) {
  constexpr double z = 1.2816;
  const double n = std::max(draws, 1.0), p = std::clamp(share, 0.0, 1.0);
  const double middle = (p + z * z / (2 * n)) / (1 + z * z / n);
  const double half = z / (1 + z * z / n) * std::sqrt(p * (1 - p) / n + z * z / (4 * n * n));
  return {p, std::clamp(middle - half, 0.0, p), std::clamp(middle + half, p, 1.0)};
}

// The entry that moved odds: what it was and when.
struct Moved {
  std::string what;  // "inspection"
  Date happened;
};

// Why something is said: a plain sentence, the entries and the table rows or publications it rests on.
struct Reason {
  std::string text;
  std::vector<EntryId> entries;
  std::vector<std::string> sources;
  std::optional<Moved> moved;  // where this is an entry that moved the odds
  bool assumed = false;        // where this rests on tables alone
};

}  // namespace beegarth::facts
