// What a keeper may have refused to do for good, and what asks for it.
#pragma once

#include <string>

namespace beegarth::facts {

// In the order of the keeper's rules.
enum class Deed {
  clipping,
  cutting_of_cells,
  feeding_of_sugar,
  synthetic_strips,
  organic_acids,
  artificial_swarms,
  uniting,
  buying_of_queens,
  cutting_of_drone_comb,
  holding_of_swarms  // looking for cells and parting stocks so that none leaves
};

// One deed among the ways to meet a need: the only one, or one that spares so much more than those without
// it.
struct AskedDeed {
  Deed deed = Deed::clipping;
  bool only_way = false;
  double worth = 0;  // in the unit of loss; of the only way it is what the need itself spares
  std::string source;
};

}  // namespace beegarth::facts
