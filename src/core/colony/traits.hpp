// What differs from colony to colony: one number per trait and ensemble member.
//
// A trait is kept twice: as a standard score z (0 = the usual colony) and as its natural value. The prior of
// every trait is lognormal: value = middle * exp(spread * z), z standard normal, where the row of
// tables/colony.toml gives `value` as the middle and low..high as the 5 and 95 % points, so spread = ln(high
// / low) / (2 * 1.6449). A sampler therefore walks on z, whose prior is N(0, 1) independently for all traits.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "base/random.hpp"

namespace beegarth::colony {

enum class Trait {
  laying_max,         // eggs a day at the height of the season
  forager_loss,       // foragers lost per flight hour
  collecting,         // nectar and pollen brought home, times the usual
  swarming,           // inclination to swarm, times the usual
  winter_loss,        // winter bees lost per day
  season_end,         // light at which the queen stops laying when days shorten, h (see day.hpp)
  heat_use,           // honey burnt for heat, times what the hive's loss says
  mite_reproduction,  // mites emerging per mite that entered a worker cell, the mother included
  mite_invasion,      // mites on adults entering cells per day at the usual brood to bee ratio
  mite_immigration,   // mites carried in, times what the neighbourhood offers
  treatment_effect,   // strength of treatments on the mites, times the usual kill rate
};
inline constexpr int trait_count = 11;

struct TraitInfo {
  Trait trait;
  std::string_view key;    // the row of tables/colony.toml
  std::string_view words;  // as a keeper would say it
};
const std::array<TraitInfo, trait_count>& all_traits();

// Standard scores, in the order of Trait.
struct Traits {
  std::array<float, trait_count> z{};
  float& operator[](Trait trait) { return z[static_cast<std::size_t>(trait)]; }
  float operator[](Trait trait) const { return z[static_cast<std::size_t>(trait)]; }
};

class TraitPrior {
 public:
  static Expected<TraitPrior> from(const FactTable& colony_table);

  Traits draw(Stream& stream) const;               // from a stream of Purpose::prior
  double log_density(const Traits& traits) const;  // of the standard scores
  double value(Trait trait, double z) const;       // natural value of a score
  double score(Trait trait, double value) const;   // score of a natural value > 0

 private:
  struct Row {
    double middle = 1;
    double spread = 0;  // of the logarithm; 0 where the table gives no range
  };
  std::array<Row, trait_count> rows_{};
};

}  // namespace beegarth::colony
