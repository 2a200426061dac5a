// The best plan that can be put together from whole tours of single days: no place twice, nothing beyond the
// limits (set packing, by branch and bound on the work count).
#pragma once

#include <vector>

#include "work/rounds/bound.hpp"

namespace beegarth::work::rounds {

struct Put {
  Tours tours;            // the better of what was known and what was found
  bool finished = false;  // no plan from these tours is worth more
};

// `priced` may be absent (not found): then places have no prices and the search is less sharp.
Put put_together(const Terrain& terrain, const std::vector<Column>& columns, const Priced& priced,
                 const Tours& known, Work& work);

}  // namespace beegarth::work::rounds
