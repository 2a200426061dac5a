// Figures that are written rounder than they were seen: 20,000 bees, 50 mites, 10 kg. A round figure is an
// interval about it, and how wide that is shows in its roundness only by odds (a mixture over grains, as
// Heitjan & Rubin 1990 have it for ages; from memory). The grain goes with the size of what was seen: with
// 10^k <= x < 10^(k+1) it is
//   10^(k-1), two figures (23,000);  half of 10^k (25,000);  10^k, one figure (20,000);  or as fine as is
// written at all.
#pragma once

namespace beegarth::belief {

// Shares of all figures; the rest is written as finely as can be.
struct Rounding {
  double two_figures = 0;
  double half = 0;
  double one_figure = 0;
};

// What is written of an amount above zero; `u` is one uniform draw in (0, 1). None is written as 0.
double rounded(double amount, double fine, const Rounding& rounding, double u);

// log of the odds of writing `seen`, where log(X + offset) is normal about log(expected + offset), over the
// width on that scale of the finest interval about `seen`: a density, so that figures of all sizes weigh
// alike, and one that hangs on `seen` alone. For 0 it is the log of the odds themselves.
double log_rounded_lognormal(double seen, double expected, double sd, double offset, double fine,
                             const Rounding& rounding);

// log of the odds of writing a count, negative binomial before it is rounded.
double log_rounded_count(int seen, double mean, double size, const Rounding& rounding);
// log P(count >= seen), not rounded: "more than 200", "the board was full".
double log_count_at_least(int seen, double mean, double size);

}  // namespace beegarth::belief
