// How a colony may have stood when it was first followed.
#pragma once

#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "belief/timeline.hpp"
#include "colony/colony.hpp"

namespace beegarth::belief {

inline constexpr int start_dims = 4;  // bees, brood, stores, mites
inline constexpr std::array<const char*, start_dims> start_names{"bees at the start", "brood at the start",
                                                                 "stores at the start", "mites at the start"};

// Lognormal about the usual figures of the season, or about what the keeper said.
struct StartPrior {
  colony::Start middle;
  std::array<double, start_dims> spread{};  // of the logarithm
  double queen_odds = 1;                    // that a laying queen is there
  double drone_layer_odds = 0;              // that there is one that lays drones only
};
Expected<StartPrior> start_prior(const FactTable& observation, const Timeline& timeline, bool from_split,
                                 double latitude_deg);

// `coordinates`: start_dims standard normal scores; `queen`: a uniform draw.
colony::Start start_at(const StartPrior& prior, const double* coordinates, double queen);

// Day of the year as it would be north of the equator, 1 to 366.
int northern_day_of_year(Date date, double latitude_deg);

}  // namespace beegarth::belief
