// Henderson's mixed-model equations with one random effect: what part of the records goes with the
// individual, when records stand in groups that are unlike for reasons of their own, and individuals are
// akin.
#pragma once

#include <optional>
#include <vector>

#include "lines/relationship.hpp"

namespace beegarth::lines {

struct Record {
  std::size_t individual = 0;
  std::size_t group = 0;  // counted from 0 without a gap
  double value = 0;
};

struct Effect {
  double estimate = 0;
  double error_part = 0;   // variance of estimate - truth, in units of the residual variance
  double reliability = 0;  // 0 nothing known .. 1 known exactly
};

struct MixedModel {
  std::vector<Effect> individuals;
  std::vector<double> group_means;
  // Residual variance, where records leave something to estimate it from, and from how many differences.
  std::optional<double> residual_variance;
  int differences = 0;
};

// record = mean of its group + effect of its individual + residual; effects have covariance `relationship`
// times share/(1 - share) of the residual variance. 0 < share < 1. Relationship may be singular.
MixedModel solve_mixed_model(const Square& relationship, const std::vector<Record>& records, double share);

}  // namespace beegarth::lines
