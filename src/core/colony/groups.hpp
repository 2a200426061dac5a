// Whether two groups of colonies differ: shares (who died) and means (what they brought).
#pragma once

#include "base/expected.hpp"

namespace beegarth::colony {

struct TwoShares {
  double odds_ratio = 1, low95 = 0, high95 = 0;  // of `bad` over `good`; Woolf's interval
  double chi_squared = 0, p = 1;  // Pearson's, without Yates' correction, one degree of freedom
  double share_bad = 0, share_good = 0, share_all = 0;
};
struct Counted {
  int dead = 0, alive = 0;
};
// A Problem where a row or a column is empty, so that no odds can be compared.
Expected<TwoShares> compare_shares(Counted bad, Counted good);

struct Group {
  int n = 0;  // 2 or more
  double mean = 0, sd = 0;
};
struct TwoMeans {
  double difference = 0, low95 = 0, high95 = 0;  // second less first
  double t = 0, df = 0, p = 1;                   // Welch's test, two-sided
};
// A Problem where a group is smaller than two, or neither varies.
Expected<TwoMeans> compare_means(Group first, Group second);

}  // namespace beegarth::colony
