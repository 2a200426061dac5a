// A fitted crowd beside its neighbours: weighed by what they say, and where too few members go with that,
// moved towards it.
#pragma once

#include "belief/filter.hpp"
#include "belief/shared.hpp"

namespace beegarth::belief {

enum class Settled {
  weighed,     // the same members with other weights, the ratios Pareto-smoothed
  moved,       // let in step by step, with moves between
  not_at_all,  // no member goes with it: the crowd is as before
};

// The weights become those of p(all that was seen of this colony) times the neighbours' ratio.
Settled settle(Fitted& fitted, const Setting& setting, const Neighbours& neighbours);

}  // namespace beegarth::belief
