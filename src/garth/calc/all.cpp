// Every calc entry, in the order in which `calc --list` shows them.
#include <vector>

#include "garth/calc/calc.hpp"

namespace beegarth::garth {

// Each entry is made by a function in the file of its name.
Calc flight_hours_calc();

std::span<const Calc> all_calcs() {
  static const std::vector<Calc> calcs{
      flight_hours_calc(),
  };
  return calcs;
}

}  // namespace beegarth::garth
