// What odds would be without one entry: the same members, their weights divided by what the entry multiplied
// them with, Pareto-smoothed.
#pragma once

#include <vector>

#include "base/fact_table.hpp"
#include "belief/filter.hpp"
#include "facts/odds.hpp"

namespace beegarth::belief {

// What is asked about: [what][member], 1 where it comes and 0 where it does not.
using Happened = std::vector<std::vector<double>>;

struct With {
  Happened happened;
  std::vector<double> odds;   // by what is asked
  std::vector<double> error;  // standard error, kin counted as kin
  double families = 1;        // how many the crowd has
};
With with_all(Happened happened, const Fitted& fitted);

struct Without {
  std::size_t observation = 0;
  std::vector<double> odds;
  std::vector<double> error;  // standard error of the change of the odds
  double beyond_chance = 3;   // so many errors
  double shape = 0;           // k of the weights' tail
  bool refitted = false;      // by a crowd fitted again, not by weights
};
std::vector<Without> without_each(const Setting& setting, const Fitted& fitted, const With& with);

// How far an entry moved the odds. A change that such a crowd could show by chance counts nothing (three
// standard errors, because some forty changes are asked about), nor does one by weights whose mean does not
// exist (k above 1); weights that are not to be trusted (k above 0.7) count half.
double moved(const Without& without, std::size_t what, double with);

// At most so many entries, those first that moved the odds most, by two percentage points or more, as
// reasons: "inspection of ...: <odds_of> 12 % with it, 30 % without".
std::vector<facts::Reason> movers(const Setting& setting, const std::vector<Without>& all, const With& with,
                                  std::size_t what, const char* odds_of, std::size_t most,
                                  const FactTable& observation);

}  // namespace beegarth::belief
