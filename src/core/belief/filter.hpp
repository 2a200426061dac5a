// Members fitted to what was seen, in the order of the dates.
#pragma once

#include <string>
#include <vector>

#include "belief/members.hpp"

namespace beegarth::belief {

struct Surprise {
  std::size_t group = 0;
  bool reconciled = true;
  double log_evidence = 0;
};

struct Fitted {
  Members members;              // on the morning of today
  std::vector<double> weights;  // normalised
  double lowest_ess = 0;        // of all the steps
  double log_evidence = 0;      // log p(all that was seen)
  double accepted = 0;          // share of the moves that were accepted
  int sweeps = 0;
  std::vector<Surprise> surprises;
};

Fitted fit_to_entries(const Setting& setting);

}  // namespace beegarth::belief
