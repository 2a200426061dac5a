// Log densities and log odds that the observations are judged by. None returns NaN; impossible is minus
// infinity.
#pragma once

#include <limits>

namespace beegarth::belief {

inline constexpr double minus_infinity = -std::numeric_limits<double>::infinity();
inline constexpr double ninety_percent_half_width =
    1.6448536269514722;  // of a standard normal: its quantile at 95 %

double log_normal_density(double x, double mean, double sd);

// Standard normal distribution function.
double normal_cdf(double z);

// log P(seen - half_grain <= X < seen + half_grain) where log(X + offset) is normal about log(expected +
// offset). Keepers say whole and half combs: the interval, not a point, is what was seen. half_grain > 0.
double log_grained_lognormal(double seen, double expected, double sd, double offset, double half_grain);

// The density of the same variable at a point, with respect to log(X + offset). What the variable has below
// zero is said as none, and what it has above `most` as `most`: there it is the log of the odds of all that.
double log_offset_lognormal(double seen, double expected, double sd, double offset,
                            double most = std::numeric_limits<double>::infinity());

// Negative binomial with mean and size k (variance mean + mean^2 / k), as in ecology.
double log_negative_binomial(int count, double mean, double k);

// Beta-binomial: `hits` of n, mean share p, intra-sample correlation rho in (0, 1).
double log_beta_binomial(int hits, int n, double p, double rho);

// log of (1 - share) exp(a) + share exp(b): an entry that is mistaken once in a while.
double log_mix(double a, double b, double share);

}  // namespace beegarth::belief
