// Where a member's traits might go: steps that leave a normal distribution fitted to the crowd as it is.
#pragma once

#include <span>
#include <vector>

#include "base/random.hpp"

namespace beegarth::belief {

// A normal distribution fitted to weighted members in coordinates whose prior is standard normal. A step
//   z' = m + sqrt(1 - size^2) (z - m) + size L xi
// (preconditioned Crank-Nicolson; Cotter, Roberts, Stuart & White 2013) leaves it unchanged, so that the odds
// of accepting are those of the target over the fitted normal.
class CrowdNormal {
 public:
  // coordinates[member * width + d]
  CrowdNormal(std::span<const double> coordinates, int width, std::span<const double> weights);

  void step(std::span<const double> from, double size, Stream& stream, std::span<double> to) const;
  // log of the standard normal prior over the fitted normal, up to a constant.
  double log_prior_over_fit(std::span<const double> at) const;

  double mean(int d) const { return mean_[static_cast<std::size_t>(d)]; }
  double variance(int d) const { return variance_[static_cast<std::size_t>(d)]; }

 private:
  std::vector<double> mean_;
  std::vector<double> variance_;
  std::vector<double> lower_;  // Cholesky factor, row by row
};

}  // namespace beegarth::belief
