// Members fitted to what was seen, in the order of the dates.
#pragma once

#include <string>
#include <vector>

#include "belief/members.hpp"

namespace beegarth::belief {

// What was hardly to be expected from everything before.
struct Surprise {
  std::vector<std::size_t> observations;
  enum class Outcome {
    let_in,       // there are courses that go with it
    let_in_hard,  // hardly any goes with it, and what is believed is pulled by it
    left_out      // none goes with it
  } outcome = Outcome::let_in;
};

// The crowd on the morning of the newest observations, before they were let in: the start for asking what
// would be believed without one of them.
struct BeforeNewest {
  Members members;
  std::vector<double> log_weights;
  std::uint32_t next_luck = 0;
  int sweeps = 0;
};

struct Fitted {
  Members members;              // on the morning of today
  std::vector<double> weights;  // normalised
  double lowest_ess = 0;        // of all the steps
  double log_evidence = 0;      // log p(all that was seen)
  double accepted = 0;          // share of the moves that were accepted
  int sweeps = 0;
  std::uint32_t next_luck = 0;  // the first noise id that nobody has had
  std::vector<Surprise> surprises;
  std::vector<std::size_t> left_out;  // observations, for the setting of whoever asks further
  BeforeNewest before_newest;         // empty where nothing was seen
};

Fitted fit_to_entries(const Setting& setting);

// The same for a setting that leaves out one observation of the newest morning; everything before it is taken
// over from the fit with all of them, which is the same by construction.
Fitted fit_without_newest(const Setting& setting, const BeforeNewest& before);

}  // namespace beegarth::belief
