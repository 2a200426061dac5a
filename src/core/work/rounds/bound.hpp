// How much any plan over several days can be worth at most. That a place is seen once only is given up for a
// price: whoever sees it pays, whoever does not gets the price for nothing. Whatever the prices, the best
// tour of each day by itself and the prices together are a bound; they are moved so that it falls (Lagrangian
// relaxation: Held & Karp 1971; the step: Polyak 1969). What limits use up is priced likewise.
#pragma once

#include <vector>

#include "work/rounds/labels.hpp"
#include "work/rounds/search.hpp"

namespace beegarth::work::rounds {

struct Priced {
  bool found = false;  // a bound within the work allowed
  Worth bound = 0;
  std::vector<Worth> net_worth;  // of each place at the best prices: its score without its price
  std::vector<Worth> best;       // of each day: of its best tour at those prices
  Worth prices = 0;              // together; bound = prices + sum of best
};

Priced price_places(const Terrain& terrain, std::vector<BestTour>& days, const Tours& known, Work& work);

}  // namespace beegarth::work::rounds
