// Every calc entry, in the order in which `calc --list` shows them.
#include <vector>

#include "garth/calc/calc.hpp"

namespace beegarth::garth {

std::span<const Calc> all_calcs() {
  // Each entry is made by a function in the file of its name: `Calc sun_position_calc();`
  static const std::vector<Calc> calcs{};
  return calcs;
}

}  // namespace beegarth::garth
