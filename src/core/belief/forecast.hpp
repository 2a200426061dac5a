// What is expected to be there, and to be written down, on days to come: for scoring against what was then
// seen.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "belief/belief.hpp"

namespace beegarth::belief {

// One quantity on the morning of one day: a weighted sample, one value per member, ascending.
struct Predicted {
  Date date;
  std::string quantity;  // bees, brood_cells, capped_cells, stores_kg, mites, mites_per_100_bees,
                         // infested_share, weight_kg, alive
  std::string unit;
  std::vector<double> values;
  std::vector<double> weights;

  double quantile(double level) const;
  double mean() const;
};

// A look to come, as far as what will be written hangs on how it is done.
struct LookToCome {
  Date date;
  bool by_seams = false;  // bees are counted by seams, not said outright
  int examined = 0;       // bees washed, or rolled in sugar; none: no such count
  bool rolled = false;
  int opened = 0;  // capped cells
};

struct Forecast {
  std::vector<Predicted> there;  // the truth as it is believed
  // What this keeper would write down, with the ways and the errors of the observer, slips included: bees,
  // capped_cells, stores_kg, weight_kg; and what the sample would show, if there is one and the bees are
  // alive (mites_per_100_bees, infested_share).
  std::vector<Predicted> written;
  double effective_sample_size = 0;
};

// For each of the looks, which lie from today to the horizon, in the order given.
Expected<Forecast> forecast(const History& history, const Forcing& forcing, const Tables& tables,
                            const Options& options, std::span<const LookToCome> looks);

}  // namespace beegarth::belief
