// The fitted members' courses, from the day the colony began to the horizon and, for the mites, on to the
// autumn.
#pragma once

#include "belief/belief.hpp"
#include "belief/filter.hpp"
#include "belief/trace.hpp"

namespace beegarth::belief {

struct Projected {
  Trace trace;
  int horizon = 0;      // days since the colony began
  int last = 0;         // the last day followed, horizon or later
  int looped_from = 0;  // day from which the weather is that of other years or months; > last where none is
  std::vector<float> alive_today;
};

// What is kept of the courses: everything, or the first day of each event alone, which is quicker.
enum class Keep { courses, first_days };

// Member i goes on in future i modulo the number of futures, under no further deeds.
Projected project(const Setting& setting, const Fitted& fitted, const Forcing& forcing, Date horizon,
                  Keep keep = Keep::courses);

}  // namespace beegarth::belief
