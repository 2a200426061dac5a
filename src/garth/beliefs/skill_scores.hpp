// Scores of forecasts against what was then seen. Lower is better for each of them.
// Gneiting & Raftery 2007, Strictly proper scoring rules, prediction, and estimation, JASA 102:359-378.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beegarth::garth {

// Continuous ranked probability score of a weighted sample: the integral over x of (F(x) - [x >= seen])^2, in
// the unit of what was seen. Of a single point it is the absolute error. `values` ascend; weights sum to one.
double crps(const std::vector<double>& values, const std::vector<double>& weights, double seen);
double crps(std::vector<double> values, double seen);  // all weigh the same, in any order

// (p - [it happened])^2
double brier(double p, bool happened);

// One score of the forecast and of what it is held against, of one colony.
struct ScorePair {
  std::string colony;
  double ours = 0;
  double other = 0;
};

struct Comparison {
  int cases = 0;
  int colonies = 0;
  double ours = 0;  // mean scores over the same cases
  double other = 0;
  double low = 0;  // 80 % interval of the mean of (other - ours): above 0 the forecast is better
  double high = 0;
  std::string verdict;  // "better", "worse", "not told apart", "the same", "too few colonies"
};

// Colonies are drawn with replacement, all cases of a colony together: cases of one colony are not
// independent. `name` tells the streams of different comparisons apart.
Comparison compare(const std::vector<ScorePair>& pairs, std::string_view name, std::uint64_t seed);

}  // namespace beegarth::garth
