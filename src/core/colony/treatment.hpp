// What treatments add up to, and what they did beyond what would have died anyway.
#pragma once

#include <span>

namespace beegarth::colony {

struct MiteKill {
  double share_on_adults = 1;          // of the mites, when it is done
  double efficacy_on_adults = 0;       // 0..1
  double efficacy_under_cappings = 0;  // 0..1
};

// Share of all mites killed by one after the other, each on those that survived.
inline double total_efficacy(std::span<const MiteKill> kills) {
  double survive = 1;
  for (const MiteKill& k : kills) {
    survive *=
        1 - k.share_on_adults * k.efficacy_on_adults - (1 - k.share_on_adults) * k.efficacy_under_cappings;
  }
  return 1 - survive;
}

// What a trial of a treatment told: the share that died, of all mites that there were or came to be in its
// days.
struct TrialTold {
  double share_of_all = 0;          // 0..1
  double share_under_cappings = 0;  // of the mites under cappings, over the whole time
  int days = 1;
};

// The rate at which mites on adults have to be killed for that (a day leaves exp(-rate) of them), in the
// delay model of mites with brood: `invasion` of those on bees enter cells each day, and `reproduction` for
// each come out twelve days later. At most 5 a day, where even that is too little.
double kill_rate_for(const TrialTold& trial, double invasion, double reproduction);

// Abbott 1925: mortality corrected for that of the untreated, both in per cent; control below 100.
inline double abbott_pct(double treated_pct, double control_pct) {
  return 100 * (treated_pct - control_pct) / (100 - control_pct);
}

}  // namespace beegarth::colony
