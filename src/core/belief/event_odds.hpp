// Odds of an event by each day, with how well they are known.
#pragma once

#include <span>
#include <vector>

#include "facts/odds.hpp"

namespace beegarth::belief {

// The members' learnt coordinates, prepared once so that the share of an event that traits explain can be had
// for every day.
class TraitShare {
 public:
  // coordinates[member * width + d]
  TraitShare(std::span<const double> coordinates, int width, std::span<const double> weights);
  // Share of the variance of `happened` (0 or 1 by member) that a linear rule in the coordinates explains,
  // adjusted for the number of coordinates, 0..1: how far the odds would move if the colony's traits were
  // known.
  double explained(std::span<const double> happened) const;

 private:
  int dims_;
  double effective_;
  std::vector<double> weights_;
  std::vector<double> centred_;   // [member * width]
  std::vector<double> cholesky_;  // lower, of the weighted covariance
};

// Odds of a share `p` of members of total effective number `effective`, with an 80 % interval: a beta
// distribution whose variance is that of the finite ensemble and that of the unknown traits together.
facts::Odds odds_with_interval(double p, double effective, double trait_share);

// Members with their weights, and which of them are kin (see kin.hpp).
struct Weighted {
  std::span<const double> weights;
  std::span<const int> family;
};

// Odds by each day from `first` to `last`: the summed weight of members with first_day <= day. Never falls.
std::vector<facts::Odds> odds_by_day(std::span<const int> first_day, const Weighted& members, int first,
                                     int last, const TraitShare& traits);
double odds_by(std::span<const int> first_day, std::span<const double> weights, int day);

}  // namespace beegarth::belief
