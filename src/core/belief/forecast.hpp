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

struct Forecast {
  std::vector<Predicted> there;    // the truth as it is believed
  std::vector<Predicted> written;  // what this keeper would write down: the same with the ways and the error
                                   // of the observer (bees, capped_cells, stores_kg, weight_kg)
  double effective_sample_size = 0;
};

// For each of the dates, which lie from today to the horizon, in the order given.
Expected<Forecast> forecast(const History& history, const Forcing& forcing, const Tables& tables,
                            const Options& options, std::span<const Date> dates);

}  // namespace beegarth::belief
