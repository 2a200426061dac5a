// How far chance moves a share of the members, where members are kin.
//
// Members copied from one ancestor by resampling are alike. Counted as so many draws they make odds look
// better known than they are. The error is therefore summed family by family (Chan & Lai 2013, Annals of
// Statistics 41; Lee & Whiteley 2018, Biometrika 105), and is never below that of as many independent members
// as are effective.
#pragma once

#include <span>

namespace beegarth::belief {

// Standard error of sum(weights * happened): weights normalised, happened 0 or 1, family[i] of each member in
// 0..members-1.
double share_error(std::span<const double> weights, std::span<const double> happened,
                   std::span<const int> family);

// Standard error of the change from one weighting of the same members to another.
double change_error(std::span<const double> from, std::span<const double> to,
                    std::span<const double> happened, std::span<const int> family);

// How widely the members are spread, told with what kin leave unknown of it.
struct Spread {
  double variance = 0;  // with what copies hide: the variance of the mean is added
  double low = 0, high = 0;
};
// weights normalised; value of each member; family[i] as above; beyond: odds that the true variance lies
// above high, and as much that it lies below low.
Spread spread_of(std::span<const double> weights, std::span<const double> values, std::span<const int> family,
                 double beyond);

// The number of families, each counted by its weight: 1 / sum(W^2).
inline constexpr double few_families = 8;  // fewer know odds by chance only; a choice
double effective_families(std::span<const double> weights, std::span<const int> family);

// How many such errors a change must be to be beyond chance as three are where many families agree: a few
// families know their own error badly (Student's t with one degree of freedom fewer than families).
double errors_beyond_chance(double families);

}  // namespace beegarth::belief
