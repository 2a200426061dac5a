// Which of several ways of acting costs least, in kilograms of honey, and how sure that is.
#pragma once

#include <string>
#include <vector>

#include "base/fact_table.hpp"
#include "belief/suppose.hpp"
#include "facts/odds.hpp"

namespace beegarth::belief {

// What may come and what is done, in kg of honey: rows of tables/choices.toml and tables/work.toml.
struct Prices {
  double colony_lost = 0;
  double stock_united = 0;  // gain of the colony that another is united into
  double swarm_left = 0;
  double surplus = 0;        // gain of each kg above the nest
  double thousand_bees = 0;  // gain of each thousand bees on the last day
  double hundred_mites = 0;  // of each hundred mites on the last day
  double visit = 0;          // of each day on which something is done
  double treatment = 0;      // of each, beside the visit
  double feed = 0;           // of each kg fed
  double queen = 0;          // of each that is introduced
  double new_stock = 0;      // gain of each split
  static Expected<Prices> from(const FactTable& choices, const FactTable& work);
};

// What the deeds of a way cost, whatever comes.
double price_of_deeds(const Way& way, const ColonyId& colony, const Prices& prices);
// What came of one member, without the deeds.
double price_of(const Came& came, const Prices& prices);

struct WayJudged {
  std::size_t way = 0;  // in the order given
  double deeds_kg = 0;
  double cost_kg = 0;                        // mean over the courses; gains are below nothing
  double cost_low_kg = 0, cost_high_kg = 0;  // 80 % of the courses
  facts::Odds died, swarmed;
  double surplus_kg = 0, least_stores_kg = 0;  // means
  double bees = 0, mites = 0;                  // of the courses in which it lives; 0 where none does
  // against the way that costs least
  double dearer_kg = 0;
  double dearer_low_kg = 0, dearer_high_kg = 0;  // 80 % of the courses, each against itself
  double dearer_in = 0;  // share of the courses in which it costs more; half of those where it is the same
  double first_better = 0.5;  // odds that the first truly costs less on average: how many courses, how much
                              // weather and how many families speak for it
};

// Ascending by cost_kg; of equal ones the earlier given comes first.
std::vector<WayJudged> rank_ways(const Supposed& supposed, std::span<const Way> ways, const ColonyId& colony,
                                 const Prices& prices);

}  // namespace beegarth::belief
