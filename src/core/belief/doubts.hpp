// Looks that are likelier to have been written down wrongly than to be true: under another date, or of
// another colony. Asked of members that were fitted without the look, because those that were fitted with it
// were made to agree with it.
//
// "As written" and the other readings are weighed by how likely each made the look and by how often such
// slips happen (rows wrong_date, mixed_up of tables/observation.toml), shared out over all readings that are
// asked about. One is told where it is `sure` times likelier than "as written". By Markov's inequality a look
// that is as written and as the model thinks it is told of with odds of at most slip / sure.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "belief/colony_fit.hpp"

namespace beegarth::belief {

struct SlipOdds {
  double wrong_date = 0;
  double mixed_up = 0;
};
Expected<SlipOdds> read_slip_odds(const FactTable& observation);

// At even odds one sound book in ten was doubted, at four to one one in sixteen.
inline constexpr double sure = 10;

struct Doubt {
  std::size_t entry = 0;          // of the timeline
  std::optional<Date> meant;      // another date
  std::optional<ColonyId> other;  // another colony
  bool exchanged = false;         // with that colony's look of the same day
  double odds = 0;                // of this reading against "as written", slips being as rare as they are
};

// A fit, and the site it stands at; empty: no other stands there.
struct Standing {
  const ColonyFit* fit;
  SiteId site;
};

// By fit, in the order given; about at most one reading of each look. `each` may use several threads.
std::vector<std::vector<Doubt>> doubts_about(std::span<const Standing> all, const SlipOdds& slips,
                                             const ForEachIndex& each = one_after_another);

// "inspection of 2026-04-05 (12 seams): would fit 2026-05-05: was the date meant so?"
facts::Reason told(const Doubt& doubt, const ColonyFit& fit, const std::string& other_name);

}  // namespace beegarth::belief
